"""A ring glued up of straight pieces: mitres, lengths, and the wood that is left."""

from reviewer.mechanics.segments import mitre_angle, mitre_area, sagitta, side_length
from reviewer.parts.blanks import measured, off_by, stacked
from reviewer.parts.from_stock import density_of
from reviewer.parts.groups import same, single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.plate import plate_mass
from reviewer.parts.ring_pieces import (
    AFTER,
    BEFORE,
    NEVER,
    angle_of_grain,
    area_of,
    band_of,
    boards_for,
    glued_faces,
    half,
    lap_of,
    least_width,
    outer_flat,
    run_for,
    wood_beside,
    wood_inside,
    wood_outside,
)
from reviewer.parts.row import Choice, Count, Flag, Measure, Row, Stock

RING = {"outer": "outer.radius", "inner": "inner.radius"}
SHAPE = {"sides": "sides", "rounded": "rounded"}
CUT = {
    "pieces": "pieces",
    "length": "piece.length",
    "width": "board.width",
    "kerf": "shop.kerf",
    "sides": "sides",
}


def _fields() -> tuple[Row, ...]:
    return (
        Row("diameter", "m", "diameter outside, of a straight one across the flats",
            Measure(above=0.0, example="640 mm")),
        Row("opening", "m", "diameter inside, of a straight one across the flats",
            Measure(above=0.0, example="520 mm")),
        Row("sides", "", "pieces in a layer", Count(at_least=3, at_most=200)),
        Row("layers", "", "layers", Count(default=1, at_most=50)),
        Row("staggered", "", "whether the joints of a layer lie over the middles of the one below",
            Flag(default=True)),
        Row("rounded", "", "when it is cut round: after gluing, before, or never",
            Choice((AFTER, BEFORE, NEVER), default=AFTER)),
        Row("faced", "", "whether its faces are machined flat once it is glued up", Flag()),
        Row("grain", "", "whether the grain runs along the pieces or across them",
            Choice(("along", "across"), default="along")),
        Row("joint", "", "what holds the ends of the pieces beside the glue",
            Choice(("nothing", "spline", "dowels", "screws"), default="nothing")),
        Row("board.material", "", "material of the pieces", Stock("materials", example="beech")),
        Row("board.thickness", "m", "what the board is called that they are cut from",
            Measure(above=0.0, example="20 mm")),
        Row("board.width", "m", "width of the pieces", Measure(above=0.0, example="75 mm")),
        Row("board.length", "m", "length of the boards that are there",
            Measure(above=0.0, example="2400 mm")),
        Row("bears.outer", "m", "outside diameter of what sits on it", Measure(above=0.0)),
        Row("bears.inner", "m", "inside diameter of what sits on it", Measure(above=0.0)),
        Row("parallel_within", "m", "how far its faces may be off parallel",
            Measure(above=0.0, example="0.3 mm")),
    )  # fmt: skip


def _pieces() -> tuple[Row, ...]:
    return (
        Row("outer.radius", "m", "radius outside", formula=half, needs={"diameter": "diameter"}),
        Row("inner.radius", "m", "radius inside", formula=half, needs={"diameter": "opening"}),
        Row("rim.radius", "m", "radius of its rim", formula=same, needs={"place": "outer.radius"}),
        Row("mitre", "rad", "angle of each end from square",
            formula=mitre_angle, needs={"sides": "sides"}),
        Row("sagitta.outer", "m", "how far the outer arc stands off its chord",
            formula=sagitta, needs={"radius": "outer.radius", "sides": "sides"}),
        Row("sagitta.inner", "m", "how far the inner arc stands off its chord",
            formula=sagitta, needs={"radius": "inner.radius", "sides": "sides"}),
        Row("board.needed", "m", "least width of the pieces",
            formula=least_width, needs={**RING, **SHAPE}),
        Row("outer.flat", "m", "from the middle to the outer edges of the pieces",
            formula=outer_flat,
            needs={"outer": "outer.radius", "width": "board.width", "needed": "board.needed",
                   "rounded": "rounded"}),
        Row("inner.flat", "m", "from the middle to the inner edges of the pieces",
            formula=lambda outer, width: outer - width,
            needs={"outer": "outer.flat", "width": "board.width"}),
        Row("piece.length", "m", "long edge of a piece, from point to point",
            formula=side_length, needs={"apothem": "outer.flat", "sides": "sides"}),
        Row("piece.short", "m", "short edge of a piece",
            formula=side_length, needs={"apothem": "inner.flat", "sides": "sides"}),
        Row("pieces", "1", "pieces in all layers",
            formula=lambda sides, layers: float(sides * layers),
            needs={"sides": "sides", "layers": "layers"}),
        Row("board.run", "m", "length of board that they take, every other one turned over",
            formula=run_for, needs=CUT),
        Row("board.count", "1", "how many boards they take",
            formula=boards_for, needs={**CUT, "board": "board.length"}),
    )  # fmt: skip


def _wood() -> tuple[Row, ...]:
    return (
        Row("wood.outer", "m", "radius up to which there is wood all round",
            formula=wood_outside,
            needs={"outer": "outer.radius", "flat": "outer.flat", "rounded": "rounded"}),
        Row("wood.inner", "m", "radius from which there is wood all round",
            formula=wood_inside,
            needs={"inner": "inner.radius", "flat": "inner.flat", **SHAPE}),
        Row("wood.beside", "m", "least wood beside what sits on it",
            formula=wood_beside, governs="least",
            needs={"outer": "wood.outer", "inner": "wood.inner",
                   "bears_outer": "bears.outer", "bears_inner": "bears.inner"}),
        Row("glue.joint", "m^2", "glued area of one joint between two pieces",
            formula=mitre_area,
            needs={"width": "board.width", "thickness": "board.thickness", "sides": "sides"}),
        Row("glue.faces", "m^2", "glued area between the layers",
            formula=glued_faces, needs={"area": "area", "layers": "layers"}),
        Row("lap", "m", "how far a piece laps over the joint below it",
            formula=lap_of, governs="least",
            needs={**RING, "sides": "sides", "layers": "layers", "staggered": "staggered"}),
        Row("grain.angle", "rad", "greatest angle between the grain and the rim",
            formula=angle_of_grain, needs={"mitre": "mitre", "grain": "grain"}),
    )  # fmt: skip


def _stack() -> tuple[Row, ...]:
    return (
        Row("board.sheet", "", "what such a board measures", formula=measured,
            needs={"thickness": "board.thickness", "material": "board.material",
                   "stocked": "shop.sheets"}),
        Row("board.actual", "m", "what such a board measures, mean",
            needs={"solution": "board.sheet"}, take="actual"),
        Row("board.low", "m", "what such a board measures at least",
            needs={"solution": "board.sheet"}, take="low"),
        Row("board.high", "m", "what such a board measures at most",
            needs={"solution": "board.sheet"}, take="high"),
        Row("made.mean", "m", "thickness of the layers together, mean", formula=stacked,
            needs={"each": "board.actual", "layers": "layers"}),
        Row("made.low", "m", "least thickness of the layers together", formula=stacked,
            needs={"each": "board.low", "layers": "layers"}),
        Row("made.high", "m", "greatest thickness of the layers together", formula=stacked,
            needs={"each": "board.high", "layers": "layers"}),
        Row("thickness", "m", "thickness of the whole ring", Measure(above=0.0, example="36 mm"),
            formula=stacked, needs={"each": "board.thickness", "layers": "layers"}),
        Row("made.off", "m", "how far the layers are in the mean from what is drawn",
            formula=off_by, needs={"drawn": "thickness", "mean": "made.mean"}),
        Row("parallel", "m", "how far its faces can be off parallel", formula=band_of,
            needs={"low": "made.low", "high": "made.high", "faced": "faced"}),
        Row("height", "m", "height above its carrier", Measure(at_least=0.0), formula=same,
            needs={"place": "thickness"}),
        Row("density", "kg/m^3", "density", formula=density_of,
            needs={"material": "board.material"}),
        Row("area", "m^2", "area in plan", formula=area_of, needs={**RING, **SHAPE}),
    )  # fmt: skip


GLUED_RING = Kind(
    name="glued_ring",
    says="a ring glued up of straight pieces with mitred ends",
    rows=(
        *tree(),
        *single(plate_mass, {"area": "area", "thickness": "thickness", "density": "density"}),
        *_fields(),
        *_pieces(),
        *_wood(),
        *_stack(),
    ),
)
