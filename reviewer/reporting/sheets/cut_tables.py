"""How cuts are made: settings of router and saw, and rings of straight pieces."""

from collections.abc import Iterator
from math import cos, isnan

from reviewer.notation.show import show
from reviewer.notation.units import parse_unit
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import Caution, Check, Checks, Column, Section, Table

CUTTERS = Caution(
    "cutters",
    "Keep both hands on the tool and away from the cutter, feed against the turn of the cutter, "
    "and let it stop before you lift it. This sheet is no licence and no training: the "
    "instructions of the machine and someone who is trained on it decide.",
)


def router_section(values: Quantities, cuts: list[str]) -> Section:
    """Grooves and circles: which cutter, how deep, in how many passes, from which face."""
    unit = values.length.symbol
    rows = tuple(
        (
            cut,
            values.named(cut, "of"),
            values.bare(values.number(cut, "width"), "m") or "as the cutter",
            values.bare(values.number(cut, "depth"), "m"),
            _cutter(values, cut),
            _passes(values, cut),
            values.named(cut, "rides_on"),
        )
        for cut in cuts
    )
    columns = (
        Column("cut"),
        Column("in"),
        Column("width", unit, "right"),
        Column("depth", unit, "right"),
        Column("cutter"),
        Column("passes", side="right"),
        Column("depth from"),
    )
    pivots = [cut for cut in cuts if not isnan(values.number(cut, "circle"))]
    blocks = (
        Table("Router cuts", columns, rows),
        *((_pivots(values, pivots),) if pivots else ()),
        *_router_cautions(values, cuts),
    )
    return Section("cut with the router", blocks)


def _cutter(values: Quantities, cut: str) -> str:
    return values.named(cut, "tool.name") or "no shop's file says"


def _passes(values: Quantities, cut: str) -> str:
    found, step = values.number(cut, "passes"), values.number(cut, "depth")
    if isnan(found) or found <= 0:
        return ""
    return f"{found:.0f} of {values.shown(step / found, 'm')}"


def _pivots(values: Quantities, cuts: list[str]) -> Table:
    """Circles about a pin: where the pin stands from the middle, and from the edge, of the cutter.

    Measured from the pin's middle to the edge of the cutter that is nearest to the line, which is
    half the diameter of the circle itself.
    """
    unit = values.length.symbol
    rows = tuple(
        (
            cut,
            values.bare(values.number(cut, "circle"), "m"),
            "the disc" if values.number(cut, "side") > 0 else "the hole",
            "outside" if values.number(cut, "side") > 0 else "inside",
            values.bare(values.number(cut, "pivot.radius"), "m", 5) or "unknown",
            values.bare(values.number(cut, "circle") / 2, "m", 5),
            _pin(values, cut),
        )
        for cut in cuts
    )
    columns = (
        Column("cut"),
        Column("circle", unit, "right"),
        Column("kept"),
        Column("cutter runs"),
        Column("pin to cutter's middle", unit, "right"),
        Column("pin to cutter's near edge", unit, "right"),
        Column("pin hole"),
    )
    return Table("Circles about a pivot", columns, rows)


def _pin(values: Quantities, cut: str) -> str:
    """The hole for the pin; it stays in a disc, so it need not go through."""
    pin, depth = (values.told(cut, path) for path in ("pivot.pin", "pivot.depth"))
    if not pin:
        return "as the trammel has it"
    return f"{pin}, {depth} deep" if depth else pin


def _router_cautions(values: Quantities, cuts: list[str]) -> Iterator[Caution]:
    for cut in cuts:
        if values.choice(cut, "climbs") is True:
            yield Caution(
                "climb cut",
                f"{cut} is fed with the turn of the cutter: the router pulls itself along. Take it "
                "off in passes of a millimetre on a machine that holds the work and the router, "
                "never by hand.",
            )
        depth, reach = values.number(cut, "depth"), values.number(cut, "tool.reach")
        if depth > 0.9 * reach:
            yield Caution(
                "cutter at full reach",
                f"{cut} is {values.shown(depth, 'm')} deep and its cutter reaches "
                f"{values.shown(reach, 'm')}: it rings and wanders. Take light passes and slow the "
                "feed, or use a longer cutter.",
            )
        yield from _small(values, cut)


def _small(values: Quantities, cut: str) -> Iterator[Caution]:
    piece, least = values.number(cut, "piece"), values.number("limit", "short_piece")
    if piece < least:
        yield Caution(
            "small part",
            f"The piece of {cut} is {values.shown(piece, 'm')}, too small to be held by hand: cut "
            "it from a larger piece and part it off last, or clamp it in a jig or sled.",
        )


def saw_section(values: Quantities, cuts: list[str]) -> Section:
    """Saw cuts: tilt, mitre, how high the blade stands."""
    unit = values.length.symbol
    rows = tuple(
        (
            cut,
            values.named(cut, "of"),
            str(values.choice(cut, "count") or 1),
            values.shown(values.number(cut, "tilt"), "rad"),
            values.shown(values.number(cut, "mitre"), "rad"),
            values.bare(_square_height(values, cut), "m"),
            values.named(cut, "tool.name") or "no shop's file says",
        )
        for cut in cuts
    )
    columns = (
        Column("cut"),
        Column("of"),
        Column("how many", side="right"),
        Column("tilt", side="right"),
        Column("mitre", side="right"),
        Column("height over the table", unit, "right"),
        Column("saw"),
    )
    cautions = (caution for cut in cuts for caution in _small(values, cut))
    return Section(
        "cut with the saw",
        (Table("Saw cuts", columns, rows), *cautions),
    )


def _square_height(values: Quantities, cut: str) -> float:
    """How high the tips stand, measured square to the table."""
    return values.number(cut, "height") * cos(values.number(cut, "tilt"))


def ring_section(values: Quantities, ring: str) -> Section:
    """A ring of straight pieces: what to set the saw to, and the order of work."""
    unit = values.length.symbol
    joint = values.named(ring, "joint")
    rows = (
        ("pieces, all layers", f"{values.number(ring, 'pieces'):.0f}"),
        ("mitre at each end, from square", values.told(ring, "mitre", 4)),
        ("width of the pieces", values.told(ring, "board.width")),
        ("long edge, point to point", values.told(ring, "piece.length", 4)),
        ("short edge", values.told(ring, "piece.short", 4)),
        ("outer arc over its chord", values.told(ring, "sagitta.outer")),
        ("inner arc over its chord", values.told(ring, "sagitta.inner")),
        ("board that they take", values.told(ring, "board.run")),
        ("boards", _boards(values, ring)),
        ("glued area of a joint", _area(values, ring, "glue.joint")),
        ("glued area between layers", _area(values, ring, "glue.faces")),
        ("lap over the joint below", values.told(ring, "lap")),
    )
    table = Table(
        f"{ring}: {values.choice(ring, 'layers')} layers of {values.choice(ring, 'sides')} pieces, "
        f"{values.bare(values.number(ring, 'diameter'), 'm')} by "
        f"{values.bare(values.number(ring, 'opening'), 'm')} {unit}",
        (Column("what"), Column("measure", side="right")),
        tuple(row for row in rows if row[1]),
    )
    return Section(f"glue up {ring}", (table, Checks(tuple(_work(values, ring, joint)))))


def _area(values: Quantities, ring: str, path: str) -> str:
    """An area that glue is spread on, in the square of a unit that fits a hand."""
    unit = "in^2" if values.length.symbol == "in" else "cm^2"
    return show(values.number(ring, path), parse_unit(unit))


def _boards(values: Quantities, ring: str) -> str:
    count = values.number(ring, "board.count")
    return "" if isnan(count) else f"{count:.0f} of {values.told(ring, 'board.length')}"


def _work(values: Quantities, ring: str, joint: str) -> Iterator[Check]:
    """Glue up before machining, and face before rounding."""
    mitre = values.told(ring, "mitre", 4)
    yield Check(f"Set the mitre to {mitre}, saw a test ring of scrap, and close it dry")
    yield Check("Saw against a stop, every other piece turned over, off long boards")
    if joint not in ("", "nothing"):
        yield Check(f"Cut the joints for {joint}")
    yield Check("Glue up each layer flat, and let it dry; size the end grain first")
    if (values.choice(ring, "layers") or 1) > 1:
        yield Check("Glue the layers together, turned by half a piece")
    if values.choice(ring, "faced") is True:
        yield Check(
            "Flatten one face, then the other parallel to it; thickness", values.length.symbol
        )
    if values.named(ring, "rounded") != "never":
        yield Check("Only then cut it round, inside and outside about one pivot")
