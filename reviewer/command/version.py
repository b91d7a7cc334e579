"""The version of the project that is installed."""

from importlib.metadata import PackageNotFoundError
from importlib.metadata import version as installed

DISTRIBUTION = "mechanism-reviewer"


def version() -> str:
    """The version, or a word where the package is used without being installed."""
    try:
        return installed(DISTRIBUTION)
    except PackageNotFoundError:
        return "not installed"
