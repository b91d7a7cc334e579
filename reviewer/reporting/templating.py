"""How templates of HTML are read: texts are escaped, and a name that is not there fails."""

from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from jinja2 import Environment


def environment_of(folder: Path, **more: Any) -> "Environment":
    """The templates of a folder, with more settings of their own."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    return Environment(
        loader=FileSystemLoader(folder),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        **more,
    )
