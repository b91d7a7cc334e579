"""Installed packages that bring kinds, stock and packs of rules; nothing else may bring code.

A package marks functions without arguments by what they bring, and names the module in its entry
points:

    [project.entry-points."mechanism_reviewer.packs"]
    carriages = "our_carriages"

Marking only sets an attribute. What is brought is checked when a shop asks for the package, before
any design is read.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

from reviewer.notation.nearest import nearest
from reviewer.parts.documented import signature_of
from reviewer.parts.kind import Kind
from reviewer.stock.bearings import Bearing
from reviewer.stock.fasteners import Thread
from reviewer.stock.materials import Material
from reviewer.stock.sheets import Sheet

if TYPE_CHECKING:
    from importlib.metadata import EntryPoint

GROUP = "mechanism_reviewer.packs"
MARK = "__reviewer_brings__"
BRINGS: Mapping[str, type | None] = {
    "kinds": Kind,
    "materials": Material,
    "bearings": Bearing,
    "fasteners": Thread,
    "sheets": Sheet,
    "packs": None,
}
LARGEST_PACK = 1 << 20

Definition = TypeVar("Definition", bound=Callable[..., Any])


def brings(what: str) -> Callable[[Definition], Definition]:
    """Mark a function: it returns what its package brings.

    `what` is kinds, materials, bearings, fasteners, sheets or packs; of packs the function returns
    their paths, as `importlib.resources.files` gives them. The function stays as it is.
    """

    def mark(definition: Definition) -> Definition:
        setattr(definition, MARK, what)
        return definition

    return mark


class Fault(NamedTuple):
    """What is wrong with a definition of a package, what was found, and the mend."""

    definition: str
    what: str
    found: str
    mend: str


class PlugInError(Exception):
    """A package that cannot be used: its name, and everything that is wrong with it."""

    def __init__(self, plug_in: str, faults: Iterable[Fault]) -> None:
        """Keep name and faults."""
        self.plug_in = plug_in
        self.faults = tuple(faults)
        super().__init__("; ".join(f"{plug_in}, {each.definition}: {each.what}" for each in faults))


@dataclass(frozen=True)
class Brought:
    """What an installed package brings; `packs` are texts by the path that they are called by."""

    name: str
    stock: Mapping[str, tuple[Any, ...]] = field(default_factory=dict)
    kinds: tuple[Kind, ...] = ()
    packs: tuple[tuple[bytes, str], ...] = ()


def installed() -> dict[str, tuple["EntryPoint", ...]]:
    """The entry points of installed packages that bring something, by name; mostly one a name."""
    from importlib.metadata import entry_points  # slow to import, and seldom wanted

    found: dict[str, dict[str, EntryPoint]] = {}
    for each in sorted(entry_points(group=GROUP), key=lambda each: (each.name, each.value)):
        found.setdefault(each.name, {}).setdefault(each.value, each)
    return {name: tuple(points.values()) for name, points in found.items()}


def load(name: str) -> Brought:
    """Import an installed package and take what it brings. Raises PlugInError."""
    known = installed()
    if name not in known:
        near = nearest(name, known)
        mend = f"write {near}" if near else "install the package into the same environment"
        names = ", ".join(known) or "none is installed"
        raise PlugInError(name, [Fault("entry point", "no such package is installed", names, mend)])
    entry, *others = known[name]
    if others:
        found = " and ".join(each.value for each in known[name])
        mend = "take one of the packages out of the environment"
        raise PlugInError(name, [Fault("entry point", "two packages have this name", found, mend)])
    try:
        module = entry.load()
    except Exception as fault:  # whatever a package does when it is imported
        mend = "mend the package, or take it out of packs"
        what = "it cannot be imported"
        raise PlugInError(name, [Fault(entry.value, what, _told(fault), mend)]) from fault
    return brought_by(module, name)


def brought_by(module: Any, name: str) -> Brought:
    """What the marked functions of a module bring. Raises PlugInError with every fault of them."""
    faults: list[Fault] = []
    found: dict[str, list[Any]] = {what: [] for what in BRINGS}
    marked = list(_marked(module))
    for definition, function, what in marked:
        fault = _misfit(definition, function, what)
        if fault:
            faults.append(fault)
            continue
        faults += _take(definition, function, what, found[what])
    if not marked:
        what = "it brings nothing"
        mend = 'mark a function, as @brings("kinds")'
        faults.append(Fault(str(getattr(module, "__name__", name)), what, "no mark", mend))
    packs = tuple(_read(found.pop("packs"), name, faults))
    if faults:
        raise PlugInError(name, faults)
    kinds = tuple(found.pop("kinds"))
    return Brought(name, {table: tuple(rows) for table, rows in found.items()}, kinds, packs)


def _marked(module: Any) -> Iterator[tuple[str, Any, Any]]:
    """The marked definitions of a module, in order of name."""
    for definition, value in sorted(vars(module).items()):
        what = getattr(value, MARK, None)
        if what is not None:
            yield definition, value, what


def _misfit(definition: str, function: Any, what: Any) -> Fault | None:
    if what not in BRINGS:
        near = nearest(str(what), BRINGS)
        mend = f'write @brings("{near}")' if near else f"bring one of {', '.join(BRINGS)}"
        return Fault(definition, "it brings what nobody knows", str(what), mend)
    if not callable(function):
        return Fault(definition, "a mark is for a function", type(function).__name__, "mark one")
    if signature_of(function).required:
        found = ", ".join(sorted(signature_of(function).required))
        return Fault(definition, "it takes arguments", found, "take none")
    return None


def _take(definition: str, function: Any, what: str, into: list[Any]) -> Iterator[Fault]:
    """Call a marked function, and keep what it returns where that is of the right kind."""
    try:
        returned = tuple(function())
    except Exception as fault:  # a fault of the package, told as such
        yield Fault(definition, "it fails when it is called", _told(fault), "mend the package")
        return
    wanted = BRINGS[what]
    for each in returned:
        if wanted is not None and not isinstance(each, wanted):
            mend = f"return {wanted.__name__}s"
            yield Fault(definition, f"it returns something else than {what}", _type(each), mend)
        elif wanted is None and not hasattr(each, "read_bytes"):
            mend = "return paths, as importlib.resources.files gives them"
            yield Fault(definition, "it returns something else than paths", _type(each), mend)
        else:
            into.append(each)


def _read(paths: list[Any], name: str, faults: list[Fault]) -> Iterator[tuple[bytes, str]]:
    for path in paths:
        try:
            yield path.read_bytes()[: LARGEST_PACK + 1], f"{name}/{path.name}"
        except OSError as error:
            what, mend = "a pack of it cannot be read", "ship the file with the package"
            faults.append(Fault(str(path.name), what, error.strerror or "an error", mend))


def _told(fault: Exception) -> str:
    return f"{type(fault).__name__}: {fault}"


def _type(value: object) -> str:
    return f"a {type(value).__name__}"
