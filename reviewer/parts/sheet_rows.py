"""Rows of what is sawn from a sheet: what the sheet is called, and what it measures."""

from reviewer.parts.row import Measure, Row

NO_SHEET = "is not known: no sheet of this material is called so, or measures so"
THICKNESS = Measure(above=0.0, example="18 mm", sheet=True)


def sheet_sizes(prefix: str = "") -> tuple[Row, ...]:
    """What the sheet of a part's thickness is called and measures; the tree gives the first row."""
    sizes = (
        ("nominal", "by which thickness the sheet is called", "largest"),
        ("actual", "what a sheet that is called so measures in the mean", "least"),
        ("low", "what such a sheet measures at least", "least"),
        ("high", "what such a sheet measures at most", "largest"),
    )
    return (
        Row(f"{prefix}sheet", "", "the sheet of this thickness", built=True),
        *(
            Row(
                f"{prefix}sheet.{name}",
                "m",
                says,
                needs={"solution": f"{prefix}sheet"},
                take=name,
                because=NO_SHEET,
                governs="least" if governs == "least" else "largest",
            )
            for name, says, governs in sizes
        ),
    )
