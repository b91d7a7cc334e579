"""Where reviews are kept from one run to the next."""

import os
from collections.abc import Mapping
from pathlib import Path

VARIABLE = "REVIEWER_CACHE"
OFF = "off"


def cache_folder(option: str | None, environment: Mapping[str, str]) -> Path | None:
    """Where reviews are kept: as an option or the environment says, else by convention."""
    said = option or environment.get(VARIABLE)
    if said:
        return None if said == OFF else Path(said)
    home = environment.get("XDG_CACHE_HOME") or environment.get("LOCALAPPDATA")
    if home and os.path.isabs(home):
        return Path(home, "reviewer")
    user = environment.get("HOME")
    return Path(user, ".cache", "reviewer") if user and os.path.isabs(user) else None
