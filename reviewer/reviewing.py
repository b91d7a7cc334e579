"""A review of one design: read, derive, judge. It prints nothing and keeps no state."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

from reviewer.deriving.derived import derive
from reviewer.judging.concession import with_concessions
from reviewer.judging.in_force import InForce, builtin_in_force, put_in_force
from reviewer.judging.judge import judge
from reviewer.judging.limits import with_limits
from reviewer.judging.measured import Tested
from reviewer.judging.pack import Pack
from reviewer.judging.reviewed import Review
from reviewer.judging.shop_packs import in_force_near
from reviewer.judging.shop_ways import with_shop
from reviewer.notation.plain import plain
from reviewer.notation.problem import Place, Problem
from reviewer.reading.design import Design
from reviewer.reading.folder import Folder, Refused
from reviewer.reading.read_design import read_design

__all__ = ["Review", "review", "review_source", "unreadable"]

MOST_BYTES = 1 << 20


def review(
    path_or_text: Path | str, packs: Sequence[Pack] | None = None, on: date | None = None
) -> Review:
    """Review a design file, or a design given as text (a string with a line break in it).

    `packs` are the packs of rules to judge by; where none are given, those that come with the
    project and what the shop adds to whose folder the file belongs. `on` is the day on which
    concessions must still hold, today where none is given. Problems of the file, of a pack or of
    the shop are in the result, not raised.
    """
    if isinstance(path_or_text, str) and "\n" in path_or_text:
        return review_source(path_or_text, "design.yaml", packs, on)
    path = Path(path_or_text)
    try:
        with path.open("rb") as file:
            source = file.read(MOST_BYTES + 1)
    except OSError as error:
        return Review(str(path), (unreadable(str(path), error),))
    folder = Folder.around(path)
    in_force = in_force_near(str(path), folder) if packs is None else put_in_force(packs)
    return review_under(in_force, source, str(path), folder, on)


def review_source(
    source: bytes | str,
    path: str,
    packs: Sequence[Pack] | None = None,
    on: date | None = None,
) -> Review:
    """Review a design that has been fetched already; `path` is what places call it.

    It stands alone: no shop is looked for, and it can be based on no other file.
    """
    in_force = builtin_in_force() if packs is None else put_in_force(packs)
    return review_under(in_force, source, path, None, on)


def review_under(
    in_force: InForce,
    source: bytes | str,
    path: str,
    folder: Folder | None = None,
    on: date | None = None,
) -> Review:
    """Review a design under what is in force; nothing is reviewed where that has problems.

    `folder` is the tree of folders in which the design may be based on another file.
    """
    begun, design = begin(in_force, source, path, folder)
    if design is None:
        return begun
    derived = derive(design)
    tests: tuple[Tested, ...] = ()
    if design.measured:
        from reviewer.studying.measured import held_against  # not wanted by most designs

        derived, tests = held_against(derived, _finder(in_force, folder))
    findings = judge(derived.design, derived.values, derived.cases, in_force.rules)
    if tests:
        from reviewer.studying.calibrating import with_calibrations
        from reviewer.studying.measured_findings import findings_of

        findings = with_calibrations(findings, derived, tests)
        findings += findings_of(tests, derived.design, in_force.rules)
    conceded = with_concessions(findings, design, on or date.today())
    return replace(begun, findings=conceded, derived=derived, tests=tests)


def begin(
    in_force: InForce, source: bytes | str, path: str, folder: Folder | None
) -> tuple[Review, Design | None]:
    """The review of a design before anything is computed, and the design if it could be read."""
    under = Review(
        path,
        in_force.problems,
        shop=in_force.shop,
        changes=in_force.changes,
        packs=in_force.packs,
        rules=in_force.rules,
    )
    if in_force.problems:
        return under, None
    finds = in_force.tables.finds
    design, problems = read_design(source, path, in_force.kinds, stock=finds, folder=folder)
    begun = replace(under, problems=problems)
    return begun, None if design is None else _known(design, in_force)


def _finder(in_force: InForce, folder: Folder | None) -> Callable[[str, str | None], Design | str]:
    """Finds the design in another file; a text says why it cannot be read.

    `beside` is the file that names it; a file of the design's own family is called by its path.
    """

    def find(name: str, beside: str | None) -> Design | str:
        if folder is None:
            return f"{plain(name)} cannot be looked at: a design that comes as text stands alone"
        try:
            path = name if beside is None else folder.path(name, beside)
            source = folder.read(path)
        except Refused as refused:
            return f"{plain(name)} cannot be looked at: {refused.words[0]}"
        finds = in_force.tables.finds
        design, problems = read_design(source, path, in_force.kinds, stock=finds, folder=folder)
        if design is None:
            return f"{plain(name)} has {len(problems)} problems of its own: check that file"
        return _known(design, in_force)

    return find


def _known(design: Design, in_force: InForce) -> Design:
    """A design that knows the limits which hold for it, and the shop in which it is made."""
    return with_shop(with_limits(design, in_force.limits), in_force.shop, in_force.tables)


def unreadable(path: str, error: OSError) -> Problem:
    """A file that could not be opened, as a problem."""
    reason = error.strerror or "it cannot be opened"
    return Problem(Place(path, 1, 1, 2), f"this file cannot be read: {reason}", "", "", None, None)
