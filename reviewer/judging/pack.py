"""Packs: files of rules, read and checked whole before any design is."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from reviewer.judging.limit_reader import read_limits
from reviewer.judging.limits import NO_LIMITS, Limit, Limits
from reviewer.judging.pack_reader import PackReader
from reviewer.judging.rule import Rule
from reviewer.judging.rule_reader import RuleReader
from reviewer.notation.nearest import nearest
from reviewer.notation.ordering import Circle, ordered
from reviewer.notation.problem import Place, Problem, problems_in_order
from reviewer.parts.kind import Kind
from reviewer.reading.events import read_yaml
from reviewer.reading.tree import Document, Items, Node, Scalar, Table
from reviewer.reading.words import MAX_PROBLEMS

HEADER = ("pack", "about", "note", "limits", "rules")


@dataclass(frozen=True, slots=True)
class Pack:
    """A file of rules: where it is, what it states, and what is wrong with it."""

    path: str
    rules: tuple[Rule, ...]
    problems: tuple[Problem, ...]
    lines: tuple[str, ...] = ()
    limits: tuple[Limit, ...] = ()


def read_pack(
    source: bytes | str, path: str, kinds: Mapping[str, Kind], limits: Limits = NO_LIMITS
) -> Pack:
    """Read a pack: a list of rules, or a table that holds one under `rules`.

    `limits` are those that the rules may name beside the pack's own. Nothing is raised; all
    problems of the file are told at once.
    """
    return read_packs([(source, path)], kinds, limits)[0]


def read_packs(
    sources: Iterable[tuple[bytes | str, str]],
    kinds: Mapping[str, Kind],
    limits: Limits = NO_LIMITS,
    *,
    trusted: bool = False,
) -> tuple[Pack, ...]:
    """Read some packs, each given by its text and path; their rules may name each other's limits.

    `trusted` puts off the proofs of packs that come with the project until they are used.
    A limit that is stated twice is a problem of the pack that states it last.
    """
    known = dict(limits.by_name)
    begun = [_begin(source, path, known) for source, path in sources]
    return tuple(_finish(each, kinds, Limits(known), trusted) for each in begun)


@dataclass(frozen=True, slots=True)
class _Begun:
    """A pack whose limits have been read."""

    document: Document
    problems: list[Problem]
    limits: tuple[Limit, ...]


def _begin(source: bytes | str, path: str, known: dict[str, Limit]) -> _Begun:
    document = read_yaml(source, path, None)
    problems = list(document.problems)
    reader = PackReader(path, document.lines, problems)
    limits = tuple(read_limits(document.root, reader))
    for limit in limits:
        first = known.setdefault(limit.name, limit)
        if first is not limit:
            where = f"{first.place.path}:{first.place.line}"
            mend = f"rename one of them; the other is at {where}"
            what, expected = "two limits have the same name", "a name of its own"
            reader.refuse(limit.place, what, limit.name, expected, mend)
    return _Begun(document, problems, limits)


def _finish(begun: _Begun, kinds: Mapping[str, Kind], limits: Limits, trusted: bool) -> Pack:
    document, problems = begun.document, begun.problems
    rules: list[Rule] = []
    if document.root is not None:
        reader = RuleReader(document.path, document.lines, kinds, problems, limits, trusted=trusted)
        for node in _rule_nodes(document.root, reader):
            rule = reader.rule(node)
            rules += [] if rule is None else [rule]
            if len(problems) > MAX_PROBLEMS:
                break
    return Pack(document.path, tuple(rules), _told(problems), document.lines, begun.limits)


def _told(problems: list[Problem]) -> tuple[Problem, ...]:
    """The problems in order of place; what is over the limit becomes one notice."""
    told = problems_in_order(problems[:MAX_PROBLEMS])
    for more in problems[MAX_PROBLEMS : MAX_PROBLEMS + 1]:
        what, found = "too many problems to list", f"more than {MAX_PROBLEMS}"
        mend = f"mend the {MAX_PROBLEMS} above first"
        told.append(
            Problem(more.place, what, found, "a pack that can be read", mend, more.source_line)
        )
    return tuple(told)


def _rule_nodes(root: Node, reader: RuleReader) -> Sequence[Node]:
    if isinstance(root, Items):
        return root.items
    if isinstance(root, Table):
        for key, _ in root.entries:
            if key.text not in HEADER:
                reader.refuse_key(key, HEADER, "a pack")
        rules = root.get("rules")
        if isinstance(rules, Items):
            return rules.items
        if rules is None and isinstance(root.get("limits"), Table):
            return ()
    found = "text" if isinstance(root, Scalar) else "a table without a list under rules"
    reader.refuse(root.place, "this is not a pack of rules", found, "a list of rules", None)
    return ()


def limits_of(packs: Iterable[Pack]) -> Limits:
    """The limits that some packs state."""
    return Limits({limit.name: limit for pack in packs for limit in pack.limits})


def in_order(packs: Iterable[Pack]) -> tuple[tuple[Rule, ...], tuple[Problem, ...]]:
    """All rules of some packs, each after those that it stands behind, and what does not fit.

    A rule named twice, a rule that stands behind one that does not exist, and rules that stand
    behind each other in a circle are problems.
    """
    packs = list(packs)
    lines = {pack.path: pack.lines for pack in packs}
    problems: list[Problem] = []
    by_name: dict[str, Rule] = {}
    for rule in (rule for pack in packs for rule in pack.rules):
        first = by_name.setdefault(rule.name, rule)
        if first is not rule:
            where = f"{first.place.path}:{first.place.line}"
            _add(problems, rule, lines, "two rules have the same name", rule.name,
                 "a name of its own", f"rename one of them; the other is at {where}")  # fmt: skip
    for rule in by_name.values():
        for name in rule.behind:
            if name not in by_name:
                near = nearest(name, by_name)
                _add(problems, rule, lines, "it stands behind a rule that does not exist", name,
                     "the name of a rule in force", near and f"write {near}")  # fmt: skip
    return _sorted(by_name, problems, lines), tuple(problems_in_order(problems))


def _sorted(
    by_name: Mapping[str, Rule], problems: list[Problem], lines: Mapping[str, tuple[str, ...]]
) -> tuple[Rule, ...]:
    pairs = [
        (before, name)
        for name, rule in sorted(by_name.items())
        for before in rule.behind
        if before in by_name
    ]
    try:
        return tuple(by_name[name] for name in ordered(sorted(by_name), pairs))
    except Circle:
        import networkx as nx

        graph: nx.DiGraph[str] = nx.DiGraph()
        graph.add_nodes_from(sorted(by_name))
        graph.add_edges_from(pairs)
        circle = [name for name, _ in nx.find_cycle(graph)]
        rule = by_name[circle[0]]
        _add(problems, rule, lines, "rules stand behind each other in a circle",
             " before ".join([*circle, circle[0]]), "an order without a circle",
             "take one of them out of `behind`")  # fmt: skip
        return ()


def _add(
    problems: list[Problem],
    rule: Rule,
    lines: Mapping[str, tuple[str, ...]],
    what: str,
    found: str,
    expected: str,
    mend: str | None,
) -> None:
    place: Place = rule.place
    source = lines.get(place.path, ())
    line = source[place.line - 1] if place.line <= len(source) else None
    problems.append(Problem(place, what, found, expected, mend, line))
