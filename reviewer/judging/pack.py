"""Packs: files of rules, read and checked whole before any design is."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

import networkx as nx

from reviewer.judging.rule import Rule
from reviewer.judging.rule_reader import RuleReader
from reviewer.notation.nearest import nearest
from reviewer.notation.problem import Place, Problem, problems_in_order
from reviewer.parts.kind import Kind
from reviewer.reading.events import read_yaml
from reviewer.reading.tree import Items, Node, Scalar, Table

HEADER = ("pack", "about", "note", "rules")


@dataclass(frozen=True, slots=True)
class Pack:
    """A file of rules: where it is, the rules that could be read, and what is wrong with it."""

    path: str
    rules: tuple[Rule, ...]
    problems: tuple[Problem, ...]
    lines: tuple[str, ...] = ()


def read_pack(source: bytes | str, path: str, kinds: Mapping[str, Kind]) -> Pack:
    """Read a pack: a list of rules, or a table that holds one under `rules`.

    Nothing is raised; all problems of the file are told at once.
    """
    document = read_yaml(source, path, None)
    problems = list(document.problems)
    if document.root is None:
        return Pack(path, (), document.problems, document.lines)
    reader = RuleReader(path, document.lines, kinds, problems)
    rules = [
        rule
        for node in _rule_nodes(document.root, reader)
        if (rule := reader.rule(node)) is not None
    ]
    return Pack(path, tuple(rules), tuple(problems_in_order(problems)), document.lines)


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
    found = "text" if isinstance(root, Scalar) else "a table without a list under rules"
    reader.refuse(root.place, "this is not a pack of rules", found, "a list of rules", None)
    return ()


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
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(sorted(by_name))
    for name, rule in sorted(by_name.items()):
        graph.add_edges_from((before, name) for before in rule.behind if before in by_name)
    try:
        return tuple(by_name[name] for name in nx.lexicographical_topological_sort(graph))
    except nx.NetworkXUnfeasible:
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
