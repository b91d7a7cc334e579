"""The version of the project that is installed."""

DISTRIBUTION = "mechanism-reviewer"


def version() -> str:
    """The version, or a word where the package is used without being installed."""
    from importlib import metadata  # with its email and sockets, 15 ms that few reports want

    try:
        return metadata.version(DISTRIBUTION)
    except metadata.PackageNotFoundError:
        return "not installed"
