"""A shop's file: its stock, cutters and allowances, packs to add, and changes of rules and limits.

What is sound in it counts even where something else is not: every problem is told.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from reviewer.notation.problem import Place, Problem
from reviewer.parts.kind import Kind
from reviewer.reading.context import Context, kind_of, listed
from reviewer.reading.design import GivenValue
from reviewer.reading.events import read_yaml
from reviewer.reading.fields import read_fields
from reviewer.reading.notes import NOTE, read_note
from reviewer.reading.read_design import declared_lengths, told
from reviewer.reading.shop_kinds import ALLOWANCES, CUTTER, LIMIT, PRICE, RULE, SHOP, STOCK
from reviewer.reading.tree import Items, Node, Scalar, Table

SHOP_FILE = "shop.yaml"
SECTIONS = frozenset(("stock", "cutters", "allowances", "prices", "packs", "rules", "limits"))
MOST_PACKS = 50
REASONS = ("by", "why")
CHANGES = ("silence", "tighten", "loosen", "level")

Given = Mapping[str, GivenValue]


@dataclass(frozen=True, slots=True)
class Entry:
    """A named entry of a shop's file, with what it gives."""

    name: str
    given: Given
    place: Place

    def text(self, path: str) -> str:
        """A value as it is given; nothing where it is not."""
        found = self.given.get(path)
        return str(found.value) if found else ""


@dataclass(frozen=True, slots=True)
class PackName:
    """A pack that a shop adds: a file, a folder of files, or one of an installed package."""

    name: str
    installed: bool
    place: Place


@dataclass(frozen=True)
class Shop:
    """The ways of a shop, as its file gives them.

    `stock` are entries by table; `rules` and `limits` the changes of those that packs bring.
    """

    path: str
    facts: Given
    stock: Mapping[str, tuple[Entry, ...]] = field(default_factory=dict)
    cutters: tuple[Entry, ...] = ()
    allowances: Given = field(default_factory=dict)
    prices: tuple[Entry, ...] = ()
    packs: tuple[PackName, ...] = ()
    rules: tuple[Entry, ...] = ()
    limits: tuple[Entry, ...] = ()
    lines: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """The shop's name."""
        given = self.facts.get("shop")
        return str(given.value) if given else self.path


def read_shop(source: bytes | str, path: str) -> tuple[Shop, tuple[Problem, ...]]:
    """Read a shop's file: what is sound in it, and everything that is wrong with it.

    Nothing is raised.
    """
    document = read_yaml(source, path)
    root = document.root
    if not isinstance(root, Table):
        return Shop(path, {}), document.problems
    context = Context(
        path, document.lines, lengths=declared_lengths(root), problems=list(document.problems)
    )
    facts = read_fields(root, SHOP, context, SECTIONS)
    if root.get("shop") is None and not document.problems:
        context.refuse(root.place, "the shop has no name", "no key shop", "shop: and its name")
    shop = Shop(
        path,
        facts,
        stock=_stock(root, context),
        cutters=tuple(_entries(root, "cutters", CUTTER, context)),
        allowances=_allowances(root, context),
        prices=tuple(_entries(root, "prices", PRICE, context)),
        packs=tuple(_packs(root, context)),
        rules=tuple(_rules(root, context)),
        limits=tuple(_changes(root, "limits", LIMIT, context)),
        lines=document.lines,
    )
    return shop, told(context)


def _stock(root: Table, context: Context) -> dict[str, tuple[Entry, ...]]:
    section, key = root.get("stock"), root.key("stock")
    if section is None or key is None:
        return {}
    if not isinstance(section, Table):
        expected = f"a table of {listed(STOCK)}"
        context.refuse(key.place, "stock is a table of tables", kind_of(section), expected)
        return {}
    for name, value in section.entries:
        if name.text == NOTE:
            read_note(value, name, context)
        elif name.text not in STOCK:
            expected = f"one of {listed(STOCK)}"
            context.refuse(name.place, "there is no such table of stock", name.text, expected)
    return {name: tuple(_entries(section, name, kind, context)) for name, kind in STOCK.items()}


def _entries(root: Table, section: str, kind: Kind, context: Context) -> Iterator[Entry]:
    """The entries of a section by their names, each that nothing is wrong with."""
    value, key = root.get(section), root.key(section)
    if value is None or key is None:
        return
    if not isinstance(value, Table):
        what = f"{section} is a table of {kind.name}s by name"
        context.refuse(key.place, what, kind_of(value), f"{section}: {{NAME: {{...}}}}")
        return
    for name, node in value.entries:
        if context.is_full:
            return
        if name.text == NOTE and isinstance(node, Scalar):
            continue
        if not isinstance(node, Table):
            what = f"{name.text} is a table of its fields"
            context.refuse(name.place, what, kind_of(node), f"{name.text}: {{...}}")
            continue
        before = len(context.problems)
        given = read_fields(node, kind, context)
        if len(context.problems) == before:
            yield Entry(name.text, given, name.place)


def _allowances(root: Table, context: Context) -> Given:
    value, key = root.get("allowances"), root.key("allowances")
    if value is None or key is None:
        return {}
    if isinstance(value, Table):
        return read_fields(value, ALLOWANCES, context)
    context.refuse(key.place, "allowances is a table", kind_of(value), "allowances: {kerf: 3.2 mm}")
    return {}


def _packs(root: Table, context: Context) -> Iterator[PackName]:
    value, key = root.get("packs"), root.key("packs")
    if value is None or key is None:
        return
    expected = "a list of paths, or of {installed: NAME}"
    if not isinstance(value, Items):
        context.refuse(key.place, "packs is a list", kind_of(value), expected)
        return
    if len(value.items) > MOST_PACKS:
        what, found = "there are too many packs", str(len(value.items))
        mend = "put them into a folder, and name the folder"
        context.refuse(key.place, what, found, f"at most {MOST_PACKS}", mend)
        return
    for item in value.items:
        name = item if isinstance(item, Scalar) else _installed(item)
        if name is None or not name.text.strip():
            found = kind_of(item)
            context.refuse(item.place, "this names no pack", found, expected)
        else:
            yield PackName(name.text, name is not item, name.place)


def _installed(item: Node) -> Scalar | None:
    if isinstance(item, Table) and len(item.entries) == 1:
        name = item.get("installed")
        return name if isinstance(name, Scalar) else None
    return None


def _changes(root: Table, section: str, kind: Kind, context: Context) -> Iterator[Entry]:
    """The changes that a shop makes, each with the name of who made it and the reason."""
    for entry in _entries(root, section, kind, context):
        missing = [each for each in REASONS if each not in entry.given]
        if kind is LIMIT and "value" not in entry.given:
            missing.insert(0, "value")
        if missing:
            what = f"a {kind.name} says {listed(('value', *REASONS) if kind is LIMIT else REASONS)}"
            context.refuse(entry.place, what, f"no {listed(missing, 'or')}", "all of them")
        else:
            yield entry


def _rules(root: Table, context: Context) -> Iterator[Entry]:
    return (entry for entry in _changes(root, "rules", RULE, context) if _is_one(entry, context))


def _is_one(entry: Entry, context: Context) -> bool:
    """Hold a change of a rule to one thing that it does; a level may go with another."""
    given = [each for each in CHANGES if each in entry.given]
    silent = entry.given.get("silence")
    if silent is not None and silent.value is False:
        what, mend = "a rule counts unless it is silenced", "take the change out"
        context.refuse(silent.place, what, "silence: false", "silence: true", mend)
        return False
    at_odds = ("silence" in given and len(given) > 1) or {"tighten", "loosen"} <= {*given}
    if given and not at_odds:
        return True
    found = listed(given) if given else "none of them"
    expected = "silence, tighten, loosen or level; a level may go with tighten or loosen"
    context.refuse(entry.place, "a change of a rule does one thing", found, expected)
    return False
