"""A gap between parts that move past or towards each other, or an opening."""

from reviewer.mechanics.formula import Number
from reviewer.parts.gap_course import Swept
from reviewer.parts.gap_hazards import entrant_rows, reach_rows
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Flag, Measure, PartName, Row

FROM_SIDES = {"width": "width?", "swept": "swept?"}
NOT_TOLD = "needs a width, or two sides that move against each other and whose shape is told"


def least_of(width: Number | None, swept: Swept | None) -> Number | None:
    """The least gap: its width where it does not change, else that of the travel of its sides.

    Geometry.
    """
    return width if width is not None or swept is None else swept.least


def most_of(width: Number | None, swept: Swept | None) -> Number | None:
    """The largest gap: its width where it does not change, else that of the travel of its sides.

    Geometry.
    """
    return width if width is not None or swept is None else swept.most


GAP = Kind(
    name="gap",
    says="a gap between parts that move, or an opening",
    carries_load=False,
    rows=(
        Row("between", "", "the parts on its two sides", PartName(several=True)),
        Row("width", "m", "width of a gap that does not change", Measure(at_least=0.0)),
        Row("swept", "", "how it goes over the travel of its two sides", built=True),
        Row(
            "least",
            "m",
            "smallest width over the whole travel",
            Measure(at_least=0.0, example="0 mm"),
            formula=least_of,
            needs=FROM_SIDES,
            because=NOT_TOLD,
        ),
        Row(
            "most",
            "m",
            "largest width over the whole travel",
            Measure(at_least=0.0, example="30 mm"),
            formula=most_of,
            needs=FROM_SIDES,
            because=NOT_TOLD,
            governs="largest",
        ),
        Row("depth", "m", "how deep it is", Measure(at_least=0.0)),
        Row("moves", "", "whether its sides move", Flag(default=True)),
        Row(
            "acts",
            "",
            "what its sides do to what is in between",
            Choice(("crush", "shear"), default="crush"),
        ),
        Row(
            "shape",
            "",
            "a slot between parts, or a hole or tube",
            Choice(("slot", "hole"), default="slot"),
        ),
        Row("must_close", "", "whether it closes on purpose, as a seam does", Flag()),
        Row("driven_by", "", "the part that drives it shut", PartName()),
        Row(
            "closing_force",
            "N",
            "force with which it closes",
            Measure(at_least=0.0),
            built=True,
            because="needs the force, or a part on one of its sides that a drive moves",
        ),
        *reach_rows(),
        *entrant_rows(),
        Row(
            "guard",
            "",
            "what keeps hands out of it",
            Choice(
                ("none", "covered", "soft edges", "two-hand drive", "slow and light"),
                default="none",
            ),
        ),
    ),
)
