"""A travel: a named movement from 0 to 1 that drives what moves by it, or follows another one."""

from reviewer.parts.kind import Kind
from reviewer.parts.row import Measure, PartName, Points, Row

WHOLE = Measure(at_least=0.0, at_most=1.0)
TRAVEL = Kind(
    name="travel",
    says="a movement from 0 to 1 that drives parts",
    carries_load=False,
    implied=True,
    rows=(
        Row("follows", "", "the travel that takes it along", PartName(of="travel")),
        Row("after", "", "the travel that has to be at its end first", PartName(of="travel")),
        Row(
            "from",
            "1",
            "where it begins, of the travel that it follows",
            Measure(at_least=0.0, below=1.0, default="0"),
        ),
        Row(
            "to",
            "1",
            "where it ends, of the travel that it follows",
            Measure(above=0.0, at_most=1.0, default="1"),
        ),
        Row(
            "profile",
            "",
            "where it stands at places of the travel that it follows",
            Points(
                (
                    Row("leader", "1", "place of its leader", WHOLE),
                    Row("own", "1", "its own", WHOLE),
                )
            ),
        ),
        Row(
            "position",
            "1",
            "where it stands, from 0 to 1; a configuration may set it",
            Measure(at_least=0.0, at_most=1.0, default="0"),
        ),
        Row("now", "1", "where it stands in a configuration", built=True),
        Row("unseen", "text", "parts that move against others and have no shape", built=True),
        Row("lead", "", "its course over the travel that leads it in the end", built=True),
    ),
)
