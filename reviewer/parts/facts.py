"""What a design says of itself: its name, its revision, who will meet it."""

from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Choices, Count, Measure, Row, Text
from reviewer.parts.shop_facts import SHOP, SHOP_ROWS

LIMIT = "limit"  # the scope of named limits, which packs state and rules and rows refer to
WITHIN_DESIGN = (LIMIT, SHOP)  # scopes whose rows stand among the design's, by their full path
LEVELS = ("children", "public", "private", "shop")  # whom a limit is for; the first that fits holds

FACTS = Kind(
    name="design",
    says="one revision of one thing to be built",
    rows=(
        Row("design", "", "name of the design", Text()),
        Row("revision", "", "mark of this revision", Text()),
        Row(
            "lengths",
            "",
            "unit of bare numbers where a length is due",
            Choice(("mm", "cm", "m", "in")),
        ),
        Row(
            "service",
            "",
            "where it will stand and who uses it",
            Choice(("public", "private", "shop"), default="private"),
        ),
        Row(
            "service_class",
            "",
            "service class of EN 1995-1-1: 1 dry, 2 damp under a roof, 3 in the open",
            Count(default=1, at_least=1, at_most=3),
        ),
        Row(
            "reached_by",
            "",
            "who can put a hand to it",
            Choices(("adults", "children"), default=("adults",)),
        ),
        Row(
            "children",
            "truth",
            "whether children can put a hand to it",
            formula=lambda reached_by: "children" in reached_by,
            needs={"reached_by": "reached_by"},
        ),
        *(
            Row(
                f"humidity.{which}",
                "1",
                f"relative humidity of the air {when}",
                Measure(at_least=0.0, at_most=0.95, default=usual),
            )
            for which, when, usual in (
                ("least", "at its driest", "30 %"),
                ("most", "at its dampest", "65 %"),
                ("assembling", "where gaps are set", "50 %"),
            )
        ),
        Row(
            "doorway",
            "m",
            "clear width of the narrowest doorway on its way",
            Measure(above=0.0, example="760 mm"),
        ),
        Row(
            "way_in",
            "m",
            "clear width through which it must be carried",
            formula=lambda own, usual: usual if own is None else own,
            needs={"own": "doorway?", "usual": f"{LIMIT}.doorway"},
        ),
        Row(
            "load_count",
            "1",
            "how many loads the design gives",
            formula=lambda cases: float(len(cases.factors)),
            needs={"cases": "cases"},
        ),
        Row("cases", "", "combinations of loads in each configuration"),
        *SHOP_ROWS,
    ),
    carries_load=False,
)
