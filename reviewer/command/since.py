"""The designs that have changed since a revision in git, or of which a file changed they need.

Files are compared with the objects that git keeps; git looks at no file of the working folder.
"""

import hashlib
import os
from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field, replace
from pathlib import Path

from reviewer.command.git import asked
from reviewer.command.inputs import STANDARD_INPUT, Input
from reviewer.command.packs import Packs
from reviewer.command.usage import UsageError
from reviewer.notation.plain import plain
from reviewer.reading.folder import ENDINGS, REPOSITORY, Refused
from reviewer.reading.noted import Noted, note_file, noting
from reviewer.reporting.words import counted
from reviewer.reviewing import begin

MOST = 64 << 20  # bytes of git's list of files
LINK = "120000"
AS_IN = "a revision that git knows, such as main, HEAD~1 or v1.2"
MOST_NAMES = 20  # of what was left out


@dataclass(frozen=True, slots=True)
class Tree:
    """The files of a revision by their path from the top: mode and object, of texts alone."""

    top: Path
    files: Mapping[str, tuple[str, str]]


@dataclass(frozen=True, slots=True)
class Selection:
    """Designs to review, what changed of each that is reviewed for another file, and the rest."""

    inputs: tuple[Input, ...]
    because: Mapping[str, tuple[str, ...]]
    left_out: tuple[str, ...]

    def told(self, revision: str) -> Iterator[str]:
        """What is reviewed for the sake of another file, and what is not reviewed, in words."""
        for path, files in self.because.items():
            names = ", ".join(plain(each) for each in files)
            yield f"{plain(path)} is reviewed because of what it depends on: {names}"
        if not self.left_out:
            return
        names = ", ".join(plain(each) for each in self.left_out[:MOST_NAMES])
        more = len(self.left_out) - MOST_NAMES
        rest = f" and {more} more" if more > 0 else ""
        yield (
            f"{counted(len(self.left_out), 'design')} left out, of which nothing has changed since "
            f"{plain(revision)}: {names}{rest}"
        )


@dataclass
class Since:
    """A revision, in each repository that a command line reaches into."""

    revision: str
    packs: Packs
    _trees: dict[Path, Tree] = field(default_factory=dict)
    _same: dict[str, bool] = field(default_factory=dict)

    def select(self, inputs: Sequence[Input]) -> Selection:
        """The designs to review. Raises UsageError where git does not know the revision."""
        chosen: list[Input] = []
        because: dict[str, tuple[str, ...]] = {}
        left_out: list[str] = []
        for each in inputs:
            if each.problem is not None or each.path == STANDARD_INPUT:
                chosen.append(each)
                continue
            changed = [path for path in needed(each, self.packs) if not self._is_same(path, each)]
            if not changed:
                left_out.append(each.path)
                continue
            chosen.append(each)
            if each.path not in changed:
                because[each.path] = tuple(changed)
        return Selection(tuple(chosen), because, tuple(left_out))

    def _is_same(self, path: str, each: Input) -> bool:
        if path not in self._same:
            folder = each.folder
            assert folder is not None
            self._same[path] = is_same(self._tree(folder.root, each.path), path)
        return self._same[path]

    def _tree(self, top: Path, path: str) -> Tree:
        if top not in self._trees:
            self._trees[top] = tree_of(self.revision, top, path)
        return self._trees[top]


def needed(each: Input, packs: Packs) -> list[str]:
    """The paths on which a review depends, the design's own first; also of what is not there."""
    read: Noted = {}
    with noting(read):
        in_force = replace(packs.of(each.path, each.folder), problems=())
        with suppress(OSError):  # it will be told when it is reviewed
            _, design = begin(in_force, each.read(), each.path, each.folder)
            for test in design.measured if design is not None else ():
                if test.of is not None and each.folder is not None:
                    with suppress(Refused):
                        path = each.folder.path(test.of, test.place.path)
                        note_file(path, b"")
    return list(dict.fromkeys([each.path, *sorted(read)]))


def tree_of(revision: str, top: Path, path: str) -> Tree:
    """The files of a revision, in the repository of a path. Raises UsageError."""
    if not (top / REPOSITORY).exists():
        raise UsageError("this is in no git repository", path, "a file in a git repository")
    if revision.startswith("-") or "\0" in revision or not revision.strip():
        raise UsageError("this is no revision", revision, AS_IN)
    commit = _answer(["rev-parse", "--verify", "--quiet", f"{revision}^{{commit}}"], top, revision)
    listed = _answer(["ls-tree", "-r", "-z", "--full-tree", commit.decode().strip()], top, revision)
    files = {}
    for line in listed.split(b"\0"):
        head, _, name = line.partition(b"\t")
        text = os.fsdecode(name)
        if text.endswith(ENDINGS):
            mode, _, thing = head.decode().split(" ")
            files[text] = mode, thing
    return Tree(top, files)


def _answer(words: list[str], top: Path, revision: str) -> bytes:
    try:
        status, found, told = asked(words, top, MOST)
    except OSError as error:
        reason = error.strerror or "it cannot be started"
        raise UsageError(f"git cannot be asked: {reason}", "", "git on the path") from None
    if status or not found:
        reason = told.removeprefix("fatal: ").splitlines()[0] if told else "there is none"
        raise UsageError(f"git knows no such revision: {reason}", revision, AS_IN)
    if len(found) > MOST:
        raise UsageError("the revision has too many files", revision, f"a list of {MOST} bytes")
    return found


def is_same(tree: Tree, path: str) -> bool:
    """Whether what is at a path now is what the revision has: a file, a folder's names, nothing."""
    places = {Path(path).parent.resolve() / Path(path).name, Path(path).resolve()}
    inside = [each for each in places if each.is_relative_to(tree.top)]
    return all(_is_same(tree, each) for each in inside)


def _is_same(tree: Tree, place: Path) -> bool:
    name = place.relative_to(tree.top).as_posix()
    if place.is_dir():
        now = {each.name for each in place.iterdir() if each.name.endswith(ENDINGS)}
        before = "" if name == "." else f"{name}/"
        return now == {
            file.removeprefix(before)
            for file in tree.files
            if file.startswith(before) and "/" not in file.removeprefix(before)
        }
    known = tree.files.get(name)
    if known is None or not os.path.lexists(place):
        return known is None and not os.path.lexists(place)
    mode, thing = known
    try:
        if place.is_symlink() or mode == LINK:
            return mode == LINK and _object(os.fsencode(os.readlink(place)), thing) == thing
        content = place.read_bytes()
    except OSError:
        return False
    return thing in (_object(content, thing), _object(content.replace(b"\r\n", b"\n"), thing))


def _object(content: bytes, like: str) -> str:
    """The name under which git would keep a content, by the kind of a known one."""
    kind = hashlib.sha1 if len(like) == 40 else hashlib.sha256
    return kind(b"blob %d\0" % len(content) + content).hexdigest()
