"""No test keeps reviews but those of the cache, in folders of their own."""

import os

os.environ["REVIEWER_CACHE"] = "off"
