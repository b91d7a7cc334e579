"""Files that name other files: each must lie in the same tree of folders, links followed.

The tree is the repository's, or where there is none that of the folder that was asked for. What a
file of it names is untrusted: nothing outside the tree is opened, and nothing that is no file.
"""

import os
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from reviewer.notation.nearest import nearest
from reviewer.reading.noted import note_file, note_names
from reviewer.reading.source import MAX_BYTES
from reviewer.reading.words import Words, shown

ENDINGS = (".yaml", ".yml")
REPOSITORY = ".git"
LONGEST = 400
ELSEWHERE = re.compile(r"[\\\x00-\x1f\x7f]|^[/~]|^[A-Za-z]:|^[a-z][a-z0-9+.-]*://")


class Refused(Exception):
    """A path that may not be followed or cannot be read: what, found, expected, mend."""

    def __init__(self, words: Words) -> None:
        """Keep the words."""
        super().__init__(words[0])
        self.words = words


@dataclass(frozen=True, slots=True)
class Folder:
    """The tree of folders whose files may name each other; `root` has its links followed."""

    root: Path

    @classmethod
    def around(cls, file: str | Path, asked: str | Path | None = None) -> "Folder":
        """The tree around a file: of its repository, else of the folder asked for, else its own."""
        home = Path(file).resolve().parent
        for each in (home, *home.parents):
            if (each / REPOSITORY).exists():
                return cls(each)
        root = Path(asked).resolve() if asked is not None else home
        return cls(root if home.is_relative_to(root) else home)

    def path(self, name: str, beside: str) -> str:
        """The path of what a file names, as the file itself is called. Raises Refused."""
        if not name.strip() or len(name) > LONGEST or ELSEWHERE.search(name):
            what, expected = "this is no path within the folder", "a path such as ../base.yaml"
            raise Refused((what, shown(name), expected, None))
        path = os.path.normpath(os.path.join(os.path.dirname(beside), name))
        if not self.holds(path):
            what = "the path leaves the folder that is reviewed"
            expected = "a file of the same repository, or of the folder that was asked for"
            raise Refused((what, shown(name), expected, None))
        return path

    def holds(self, path: str | Path) -> bool:
        """Whether a path lies in the tree, all links followed."""
        try:
            return Path(path).resolve().is_relative_to(self.root)
        except (OSError, RuntimeError, ValueError):  # a circle of links, or no path at all
            return False

    def read(self, path: str) -> bytes:
        """The bytes of a file of the tree, one more than the most that is read. Raises Refused."""
        if not path.endswith(ENDINGS):
            expected = f"a file ending {' or '.join(ENDINGS)}"
            raise Refused(("this names no file of text", shown(path), expected, None))
        if not self.holds(path) or not Path(path).is_file():
            note_file(path, None)
            near = _near(path) if self.holds(os.path.dirname(path) or os.curdir) else None
            raise Refused(("there is no such file", shown(path), "the path of a file", near))
        try:
            with Path(path).open("rb") as file:
                content = file.read(MAX_BYTES + 1)
        except OSError as error:
            reason = error.strerror or "it cannot be opened"
            what = f"this file cannot be read: {reason}"
            raise Refused((what, shown(path), "a file that can be read", None)) from None
        note_file(path, content)
        return content

    def files_of(self, path: str) -> Iterator[str]:
        """The files of text directly in a folder of the tree, in order of name. Raises Refused."""
        found = sorted(Path(path).iterdir())
        note_names(path, (each.name for each in found))
        for each in found:
            if not each.name.endswith(ENDINGS):
                continue
            if not self.holds(each):
                note_file(str(each), None)
                what = "a file of this folder leads out of the folder that is reviewed"
                expected = "files of the same repository, or of the folder that was asked for"
                raise Refused((what, shown(each.name), expected, None))
            if each.is_file():
                yield os.path.join(path, each.name)

    def above(self, file: str) -> Iterator[str]:
        """The folders above a file, its own first, up to the root of the tree."""
        folder = os.path.dirname(file) or os.curdir
        while self.holds(folder):
            yield folder
            if Path(folder).resolve() == self.root:
                return
            folder = os.path.normpath(os.path.join(folder, os.pardir))


def _near(path: str) -> str | None:
    """The mend that names the file of the same folder that was probably meant."""
    folder, name = os.path.split(path)
    try:
        beside = [each for each in Path(folder or os.curdir).iterdir() if each.suffix in ENDINGS]
    except OSError:
        return None
    stems = {each.stem: each.name for each in sorted(beside)}
    near = nearest(os.path.splitext(name)[0], stems)
    return f"write {stems[near]}" if near else None
