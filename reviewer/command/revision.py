"""Files as a revision in git has them: read by git alone, and never checked out."""

import os
from dataclasses import dataclass
from pathlib import Path

from reviewer.command.git import asked
from reviewer.reading.folder import ENDINGS, Folder, Refused
from reviewer.reading.source import MAX_BYTES
from reviewer.reading.words import shown


@dataclass(frozen=True, slots=True)
class RevisionFolder(Folder):
    """The tree of a revision, whose files may name each other; `root` is the working folder."""

    revision: str = "HEAD"

    def holds(self, path: str | Path) -> bool:
        """Whether a path lies within the repository."""
        name = os.path.normpath(str(path)).replace(os.sep, "/")
        return name != ".." and not name.startswith(("../", "/"))

    def read(self, path: str) -> bytes:
        """The bytes of a file as the revision has it, one more than is read. Raises Refused."""
        name = os.path.normpath(path).replace(os.sep, "/")
        if not name.endswith(ENDINGS) or not self.holds(name):
            expected = f"a file of the repository, ending {' or '.join(ENDINGS)}"
            raise Refused(("this names no file of text", shown(path), expected, None))
        return blob(self.revision, name, self.root)


def split_revision(argument: str) -> tuple[str, str] | None:
    """Revision and path of REVISION:path, where no file is called so; else None."""
    if Path(argument).exists():
        return None
    revision, colon, path = argument.partition(":")
    return (revision, path) if colon and revision and path else None


def blob(revision: str, path: str, folder: Path) -> bytes:
    """A file as a revision has it, one byte more than the most that is read. Raises Refused.

    Git is asked for the object itself, so that no filter, hook or external program runs.
    """
    name = shown(f"{revision}:{path}")
    if revision.startswith("-") or "\0" in revision or "\0" in path:
        expected = "a revision that git knows, such as HEAD~1 or v1.2"
        raise Refused(("this is no revision", shown(revision), expected, None))
    try:
        status, found, told = asked(["cat-file", "blob", f"{revision}:{path}"], folder, MAX_BYTES)
    except OSError as error:
        reason = error.strerror or "it cannot be started"
        raise Refused((f"git cannot be asked: {reason}", name, "git on the path", None)) from None
    if status:
        reason = told.removeprefix("fatal: ").splitlines()[0] if told else "git found nothing"
        expected = "REVISION:path as git knows it, the path from the top of the repository"
        raise Refused((f"git has no such file: {shown(reason)}", name, expected, None))
    return found
