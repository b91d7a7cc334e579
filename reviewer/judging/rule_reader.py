"""Reading one rule of a pack: its keys, its expressions, its words."""

from collections.abc import Callable, Mapping, Sequence
from typing import TypeVar, cast

from reviewer.judging.compiled import compile_condition, judge
from reviewer.judging.finding import LEVELS, STAGES
from reviewer.judging.kinds import Names
from reviewer.judging.language import parse
from reviewer.judging.language_error import LanguageError
from reviewer.judging.limits import NO_LIMITS, Limits
from reviewer.judging.pack_reader import PackReader
from reviewer.judging.proof_reader import read_proof
from reviewer.judging.rule import LateProof, Proof, Rule, Scope
from reviewer.judging.ruled import RULED
from reviewer.judging.template import Template, check_names, parse_template
from reviewer.judging.vocabulary import fields_of, vocabulary
from reviewer.notation.nearest import nearest
from reviewer.notation.problem import Place, Problem
from reviewer.parts.kind import Kind
from reviewer.reading.names import NAME, RESERVED
from reviewer.reading.scalars import resolve
from reviewer.reading.tree import Items, Node, Scalar, Table

KEYS = (
    *("rule", "for", "pairs", "question", "behind", "when", "require", "level", "stage"),
    *("hazard", "says", "because", "change", "source", "proof", "tolerance", "note"),
)
REQUIRED = ("rule", "level", "stage", "says", "because", "source", "proof")
NAME_PARTS = 2

Found = TypeVar("Found")


def read_template(text: str, names: Names) -> Template:
    """The words of a rule with their places for numbers. Raises LanguageError."""
    template = parse_template(text)
    check_names(template, names)
    return template


class RuleReader(PackReader):
    """Reads the rules of one pack and gathers everything that is wrong with them."""

    def __init__(
        self,
        path: str,
        lines: Sequence[str],
        kinds: Mapping[str, Kind],
        problems: list[Problem],
        limits: Limits = NO_LIMITS,
        *,
        trusted: bool = False,
    ) -> None:
        """Read rules for some kinds of part, under some limits; problems go to the list given.

        Proofs of a trusted pack, one that comes with the project, are read when they are used.
        Where there are some already, a key that is missing may be one that could not be read.
        """
        super().__init__(path, lines, problems)
        self.torn = bool(problems)
        self.kinds = {**kinds, **RULED}
        self.limits = limits
        self.trusted = trusted
        self._names_by_scope: dict[Scope, Names] = {}

    def _proof(self, table: Table, names: Names) -> Proof | LateProof | None:
        """The proof of a rule; of a pack that comes with the project, not before it is used."""
        asks = table.get("require") is None
        place = cast(Node, table.get("proof")).place
        if self.trusted:
            return LateProof(lambda: read_proof(self, table, names, asks=asks), place)
        return read_proof(self, table, names, asks=asks)

    def _names_in(self, scope: Scope) -> Names:
        """The names that rules of a scope may use; made once for all rules of the pack."""
        if scope not in self._names_by_scope:
            self._names_by_scope[scope] = vocabulary(scope, self.kinds, self.limits)
        return self._names_by_scope[scope]

    def rule(self, node: Node) -> Rule | None:
        """One rule, or None where something is wrong with it."""
        before = len(self.problems)
        if not isinstance(node, Table):
            self.refuse(node.place, "this is not a rule", "no table", "a table of keys")
            return None
        strange = [key for key, _ in node.entries if key.text not in KEYS]
        for key in strange:
            self.refuse_key(key, KEYS, "a rule")
        meant = {nearest(key.text, KEYS) for key in strange}
        for name in REQUIRED:
            if node.get(name) is None and name not in meant and not self.torn:
                self.refuse(node.place, f"a rule lacks {name}", "nothing", f"the key {name}")
        if len(self.problems) > before or any(node.get(name) is None for name in REQUIRED):
            return None
        rule = self._rule(node)
        return rule if len(self.problems) == before else None

    def _rule(self, table: Table) -> Rule | None:
        name = self.text(table, "rule")
        scope = self._scope(table, name)
        if scope is None:
            return None
        names = self._names_in(scope)
        require = self._expression(table, "require", lambda text: judge(parse(text), names))
        when = self._expression(table, "when", lambda text: compile_condition(parse(text), names))
        says = self._expression(table, "says", lambda text: read_template(text, names))
        proof = self._proof(table, names)
        rule_place = cast(Scalar, table.get("rule")).place
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
            requires="" if require is None else self.text(table, "require"),
            tolerance=self._flag(table, "tolerance"),
        )

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

    def _flag(self, table: Table, key: str) -> bool:
        node = table.get(key)
        if node is None:
            return False
        value = resolve(node) if isinstance(node, Scalar) else None
        if not isinstance(value, bool):
            found = node.text if isinstance(node, Scalar) else "a list or table"
            self.refuse(node.place, f"{key} is true or false", found, "true or false")
        return value is True

    def _names(self, table: Table, key: str) -> tuple[str, ...]:
        return tuple(scalar.text for scalar in self._scalars(table, key))

    def _scalars(self, table: Table, key: str) -> tuple[Scalar, ...]:
        """The names of a key, one or a list of them."""
        node = table.get(key)
        if node is None:
            return ()
        items = node.items if isinstance(node, Items) else (node,)
        found = tuple(item for item in items if isinstance(item, Scalar))
        if len(found) < len(items):
            what, expected = f"{key} is not a list of names", "a list of names"
            self.refuse(node.place, what, "a list or table", expected)
        return found

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

    def _scope(self, table: Table, name: str) -> Scope | None:
        """The parts that a rule is for: by its name's first word, or by `for` and `pairs`."""
        node = table.get("for")
        if "." not in name or len(name.split(".")) != NAME_PARTS:
            place = cast(Scalar, table.get("rule")).place
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
            if not NAME.fullmatch(key.text) or key.text in RESERVED:
                what = "this cannot be what a rule calls a part"
                expected = "small letters, digits and _, and no word with a meaning of its own"
                self.refuse(key.place, what, key.text, expected)
                return None
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
        given = {
            f"{binder}.{path}" if binder else path
            for binder, kind in scope.binders
            for path in fields_of(self.kinds[kind], self.kinds)
        }
        fields = self._scalars(table, "change")
        for field in fields:
            if field.text not in given:
                near = nearest(field.text, given)
                self.refuse(field.place, "change names a field that no design can give", field.text,
                            "a field of the kind", near and f"write {near}")  # fmt: skip
        return tuple(field.text for field in fields)
