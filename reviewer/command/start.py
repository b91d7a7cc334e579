"""reviewer start: a small complete design to begin from."""

from collections.abc import Sequence
from pathlib import Path

from reviewer.command.terminal import say
from reviewer.command.usage import Parser, UsageError
from reviewer.notation.plain import plain

FIRST_DESIGN = Path(__file__).with_name("first_design.yaml")
NEXT = """\
Wrote {path}: a book stand that turns on a ring of bearings.

To review it:
  reviewer check {path}
To see where a number comes from:
  reviewer trace {path} ring.carry.peak_load
To let an editor complete and explain its keys:
  reviewer schema > design.schema.json
  and put this first in {path}:
  # yaml-language-server: $schema=design.schema.json

Then change it into what you build.
"""


def parser() -> Parser:
    """The options of the command."""
    options = Parser(
        "start",
        "Write a small complete design to begin from. A file that exists is never touched.",
        "reviewer start book_stand.yaml",
    )
    options.add_argument(
        "file", metavar="FILE", nargs="?", default="design.yaml", help="design.yaml if left out"
    )
    return options


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    path = parser().read(arguments).file
    text = FIRST_DESIGN.read_bytes()
    try:
        with Path(path).open("xb") as file:
            file.write(text)
    except FileExistsError:
        raise UsageError(
            "the file is there already, and is left as it is",
            path,
            "the name of a file that does not exist yet",
            "name another, as in reviewer start second.yaml",
        ) from None
    except OSError as error:
        reason = error.strerror or "it cannot be opened"
        raise UsageError(f"the file cannot be written: {reason}", path) from None
    say(NEXT.format(path=plain(path)))
    return 0
