"""A gap between parts that move past or towards each other, or an opening."""

from reviewer.parts.gap_hazards import entrant_rows, reach_rows
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Flag, Measure, PartName, Row

GAP = Kind(
    name="gap",
    says="a gap between parts that move, or an opening",
    carries_load=False,
    rows=(
        Row("between", "", "the parts on its two sides", PartName(several=True)),
        Row("width", "m", "width of a gap that does not change", Measure(at_least=0.0)),
        Row(
            "least",
            "m",
            "smallest width over the whole travel",
            Measure(at_least=0.0, example="0 mm"),
            formula=lambda width: width,
            needs={"width": "width"},
        ),
        Row(
            "most",
            "m",
            "largest width over the whole travel",
            Measure(at_least=0.0, example="30 mm"),
            formula=lambda width: width,
            needs={"width": "width"},
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
