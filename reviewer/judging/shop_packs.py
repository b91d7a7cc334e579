"""Finding a shop's file and reading the packs that it adds, from its own tree or installed."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from reviewer.judging.builtin import builtin_limits, builtin_packs
from reviewer.judging.in_force import InForce, builtin_in_force, put_in_force
from reviewer.judging.pack import Pack, read_packs
from reviewer.notation.problem import Place, Problem
from reviewer.parts.kind import Kind
from reviewer.parts.plug_in import Brought, PlugInError, load
from reviewer.parts.register import KindError, register
from reviewer.parts.registry import KINDS
from reviewer.reading.folder import Folder, Refused
from reviewer.reading.noted import NO_FILE, note_all, note_file
from reviewer.reading.shop import SHOP_FILE, PackName, Shop, read_shop
from reviewer.reading.shop_stock import Tables, with_stock
from reviewer.stock.table import StockError

Source = tuple[bytes | str, str]


def shop_of(path: str, folder: Folder) -> str | None:
    """The shop's file for a design: beside it, or in the nearest folder above, within its tree."""
    for above in folder.above(path):
        file = Path(above) / SHOP_FILE
        if file.is_file():
            return str(file)
        note_file(str(file), None)
    return None


def in_force_near(path: str, folder: Folder, base: Sequence[Pack] | None = None) -> InForce:
    """What is in force for a design at a path: the base, and the shop that it belongs to."""
    shop = shop_of(path, folder)
    packs = builtin_packs() if base is None else base
    if shop is None:
        return builtin_in_force() if base is None else put_in_force(packs)
    try:
        return in_force_for(folder.read(shop), shop, folder, packs)
    except Refused as refused:
        problem = Problem(Place(shop, 1, 1, 2), *refused.words)
        return put_in_force(packs, problems=[problem])


@dataclass
class _Gathered:
    """What a shop adds, while it is gathered."""

    shop: Shop
    tables: Tables
    kinds: Mapping[str, Kind] = field(default_factory=lambda: KINDS)
    sources: list[Source] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    places: dict[str, Place] = field(default_factory=dict)

    def refuse(
        self, place: Place, what: str, found: str, expected: str, mend: str | None = None
    ) -> None:
        """Note a problem in the shop's file."""
        lines = self.shop.lines
        line = lines[place.line - 1] if 0 < place.line <= len(lines) else None
        self.problems.append(Problem(place, what, found, expected, mend, line))


def in_force_for(
    source: bytes | str,
    path: str,
    folder: Folder,
    base: Sequence[Pack] | None = None,
    more: Iterable[Source] = (),
    before: Iterable[Problem] = (),
    prove: bool = True,
) -> InForce:
    """What is in force under a shop's file: its packs after those of the base, and `more` packs.

    `base` are the packs that come with the project where none are given, `before` problems that
    were found already. A rule that does not fail under its own proof is refused, if `prove` is on.
    """
    shop, problems = read_shop(source, path)
    gathered = _Gathered(shop, Tables(), problems=[*before, *problems])
    for name in shop.packs:
        if name.installed:
            _take_installed(name, gathered)
        else:
            _take_files(name, folder, gathered)
    tables, misfits = with_stock(gathered.tables, shop)
    gathered.problems += misfits
    packs = read_packs([*gathered.sources, *more], gathered.kinds, builtin_limits())
    return put_in_force(
        (*(builtin_packs() if base is None else base), *packs),
        shop,
        kinds=gathered.kinds,
        tables=tables,
        problems=gathered.problems,
        places=gathered.places,
        prove=prove,
    )


def _take_files(name: PackName, folder: Folder, gathered: _Gathered) -> None:
    """Take a pack by its path, or all those of a folder."""
    try:
        path = folder.path(name.name, gathered.shop.path)
        files = list(folder.files_of(path)) if Path(path).is_dir() else [path]
        if not files:
            expected = "files ending .yaml with rules in them"
            gathered.refuse(name.place, "there is no pack in this folder", name.name, expected)
        known = {path for _, path in gathered.sources}
        gathered.sources += [(folder.read(file), file) for file in files if file not in known]
    except Refused as refused:
        gathered.refuse(name.place, *refused.words)


def _take_installed(name: PackName, gathered: _Gathered) -> None:
    """Take what an installed package brings, or tell all that is wrong with it."""
    note_all({f"installed package {name.name}": NO_FILE})
    try:
        brought = load(name.name)
        kinds = register(brought.kinds, plug_in=name.name, beside=gathered.kinds)
        gathered.tables = _with_brought(gathered.tables, brought)
    except PlugInError as error:
        for fault in error.faults:
            what = f"the installed package {name.name}, {fault.definition}: {fault.what}"
            expected = "what reviewer.parts.plug_in describes"
            gathered.refuse(name.place, what, fault.found, expected, fault.mend)
    except KindError as error:
        for wrong in error.faults:
            row = f", row {wrong.row}" if wrong.row else ""
            what = f"the installed package {name.name}, kind {wrong.kind}{row}"
            gathered.refuse(name.place, what, wrong.what, "a kind that fits", wrong.mend)
    except StockError as error:
        what = f"the installed package {name.name} brings a row that cannot stand"
        gathered.refuse(name.place, what, str(error), "a row that the tables can take")
    else:
        gathered.kinds = kinds
        gathered.places.update((kind.name, name.place) for kind in brought.kinds)
        gathered.sources += brought.packs


def _with_brought(tables: Tables, brought: Brought) -> Tables:
    """The tables with a package's rows. Raises StockError."""
    rows = {name: more for name, more in brought.stock.items() if more}
    return replace(
        tables, **{name: getattr(tables, name).with_rows(more) for name, more in rows.items()}
    )
