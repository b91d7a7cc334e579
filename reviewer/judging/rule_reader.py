"""Reading one rule of a pack: its keys, its expressions, its words."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TypeVar, cast

from reviewer.judging.compiled import compile_condition, judge
from reviewer.judging.finding import LEVELS, STAGES
from reviewer.judging.kinds import Names
from reviewer.judging.language import parse
from reviewer.judging.language_error import LanguageError
from reviewer.judging.proof_reader import read_proof
from reviewer.judging.rule import Rule, Scope
from reviewer.judging.template import Template, check_names, parse_template
from reviewer.judging.vocabulary import vocabulary
from reviewer.notation.nearest import nearest
from reviewer.notation.problem import Place, Problem
from reviewer.parts.facts import FACTS
from reviewer.parts.kind import Kind
from reviewer.reading.tree import Items, Node, Scalar, Table

KEYS = (
    *("rule", "for", "pairs", "question", "behind", "when", "require", "level", "stage"),
    *("hazard", "says", "because", "change", "source", "proof", "note"),
)
REQUIRED = ("rule", "level", "stage", "says", "because", "source", "proof")
NAME_PARTS = 2

Found = TypeVar("Found")


def read_template(text: str, names: Names) -> Template:
    """The words of a rule with their places for numbers. Raises LanguageError."""
    template = parse_template(text)
    check_names(template, names)
    return template


class RuleReader:
    """Reads the rules of one pack and gathers everything that is wrong with them."""

    def __init__(
        self,
        path: str,
        lines: Sequence[str],
        kinds: Mapping[str, Kind],
        problems: list[Problem],
    ) -> None:
        """Read rules for some kinds of part; problems go to the list given."""
        self.path = path
        self.lines = lines
        self.kinds = {**kinds, FACTS.name: FACTS}
        self.problems = problems

    def refuse(
        self, place: Place, what: str, found: str, expected: str, mend: str | None = None
    ) -> None:
        """Note a problem, with the line on which it stands."""
        line = self.lines[place.line - 1] if 0 < place.line <= len(self.lines) else None
        self.problems.append(Problem(place, what, found, expected, mend, line))

    def refuse_key(self, key: Scalar, known: Iterable[str], owner: str) -> None:
        """Note a key that nobody knows."""
        names = list(known)
        near = nearest(key.text, names)
        mend = f"write {near}" if near else None
        self.refuse(
            key.place, f"{owner} has no such key", key.text, f"one of {', '.join(names)}", mend
        )

    def rule(self, node: Node) -> Rule | None:
        """One rule, or None where something is wrong with it."""
        before = len(self.problems)
        if not isinstance(node, Table):
            self.refuse(node.place, "this is not a rule", "no table", "a table of keys")
            return None
        for key, _ in node.entries:
            if key.text not in KEYS:
                self.refuse_key(key, KEYS, "a rule")
        for name in REQUIRED:
            if node.get(name) is None:
                self.refuse(node.place, f"a rule lacks {name}", "nothing", f"the key {name}")
        if len(self.problems) > before:
            return None
        rule = self._rule(node)
        return rule if len(self.problems) == before else None

    def _rule(self, table: Table) -> Rule | None:
        name = self.text(table, "rule")
        scope = self._scope(table, name)
        if scope is None:
            return None
        names = vocabulary(scope, self.kinds)
        require = self._expression(table, "require", lambda text: judge(parse(text), names))
        when = self._expression(table, "when", lambda text: compile_condition(parse(text), names))
        says = self._expression(table, "says", lambda text: read_template(text, names))
        proof = read_proof(
            self, table, names, asks="require" not in {k.text for k, _ in table.entries}
        )
        rule_place = cast(Scalar, table.key("rule")).place
        if says is None or proof is None:
            return None
        return Rule(
            name=name,
            scope=scope,
            behind=self._names(table, "behind"),
            when=when,
            require=require,
            level=self._word(table, "level", LEVELS),
            stage=self._word(table, "stage", STAGES),
            hazard=self.text(table, "hazard") or None,
            question=self.text(table, "question"),
            says=says,
            because=self.text(table, "because"),
            change=self._change(table, scope, names),
            source=self.text(table, "source"),
            proof=proof,
            place=rule_place,
            requires=self.text(table, "require"),
        )

    def text(self, table: Table, key: str) -> str:
        """The text of a key; nothing where it is not there."""
        node = table.get(key)
        if node is None:
            return ""
        if not isinstance(node, Scalar):
            self.refuse(node.place, f"{key} is not a text", "a list or table", "a text")
            return ""
        return node.text

    def _word(self, table: Table, key: str, words: tuple[Found, ...]) -> Found:
        text = self.text(table, key)
        if text not in words:
            names = [str(word) for word in words]
            near = nearest(text, names)
            node = cast(Node, table.get(key))
            mend = f"write {near}" if near else None
            self.refuse(node.place, f"there is no such {key}", text or "nothing",
                        f"one of {', '.join(names)}", mend)  # fmt: skip
        return cast(Found, text)

    def _names(self, table: Table, key: str) -> tuple[str, ...]:
        node = table.get(key)
        if node is None:
            return ()
        if isinstance(node, Scalar):
            return (node.text,)
        if isinstance(node, Items) and all(isinstance(item, Scalar) for item in node.items):
            return tuple(cast(Scalar, item).text for item in node.items)
        self.refuse(node.place, f"{key} is not a list of names", "a table", "a list of names")
        return ()

    def _expression(self, table: Table, key: str, read: Callable[[str], Found]) -> Found | None:
        node = table.get(key)
        if node is None:
            return None
        if not isinstance(node, Scalar):
            self.refuse(node.place, f"{key} is not an expression", "a list or table", "a text",
                        "put it in quotes")  # fmt: skip
            return None
        try:
            return read(node.text)
        except LanguageError as error:
            self.refuse_in(node, error)
            return None

    def refuse_in(self, scalar: Scalar, error: LanguageError) -> None:
        """Note an error of the language at its place within a scalar."""
        place = scalar.place
        line = self.lines[place.line - 1] if place.line <= len(self.lines) else ""
        at = line.find(scalar.text, place.column - 1)
        if at >= 0:
            start, end = error.span
            first = at + 1 + start
            place = Place(place.path, place.line, first, max(first + 1, at + 1 + end))
        self.refuse(place, error.what, error.found, error.expected, error.mend)

    def _scope(self, table: Table, name: str) -> Scope | None:
        """The parts that a rule is for: by its name's first word, or by `for` and `pairs`."""
        node = table.get("for")
        if "." not in name or len(name.split(".")) != NAME_PARTS:
            place = cast(Scalar, table.key("rule")).place
            self.refuse(place, "a rule is named by its kind and its own name", name,
                        "a name like arm.bending")  # fmt: skip
            return None
        if node is None or isinstance(node, Scalar):
            kind = node.text if node is not None else name.split(".")[0]
            place = (node or cast(Scalar, table.get("rule"))).place
            return Scope((("", kind),)) if self._is_kind(kind, place) else None
        if not isinstance(node, Table) or not node.entries:
            self.refuse(node.place, "for names no kind", "a list", "a kind, or a table of binders")
            return None
        return self._binders(table, node)

    def _binders(self, table: Table, node: Table) -> Scope | None:
        binders: list[tuple[str, str]] = []
        every = False
        for key, value in node.entries:
            text = value.text if isinstance(value, Scalar) else ""
            kind = text.removeprefix("every ").strip()
            every = every or text.startswith("every ")
            if not self._is_kind(kind, value.place):
                return None
            binders.append((key.text, kind))
        how = "every" if every else self.text(table, "pairs")
        if how not in ("every", "each", "neighbours"):
            self.refuse(node.place, "a rule on several parts must say how they pair",
                        how or "nothing", "pairs: each or neighbours, or every KIND",
                        "add pairs: each")  # fmt: skip
            return None
        return Scope(tuple(binders), how)

    def _is_kind(self, kind: str, place: Place) -> bool:
        if kind in self.kinds:
            return True
        near = nearest(kind, self.kinds)
        known = ", ".join(sorted(self.kinds))
        self.refuse(place, "there is no such kind of part", kind or "nothing",
                    f"one of {known}", near and f"write {near}")  # fmt: skip
        return False

    def _change(self, table: Table, scope: Scope, names: Names) -> tuple[str, ...]:
        """The fields that could mend a fail: each must be one that a design may give."""
        fields = self._names(table, "change")
        given = {
            f"{binder}.{row.path}" if binder else row.path
            for binder, kind in scope.binders
            for row in self.kinds[kind].given_rows()
        }
        for field in fields:
            if field not in given:
                near = nearest(field, given)
                node = cast(Node, table.get("change"))
                self.refuse(node.place, "change names a field that no design can give", field,
                            "a field of the kind", near and f"write {near}")  # fmt: skip
        return fields
