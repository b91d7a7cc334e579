"""How many cases of load a design asks for: each is reckoned by itself, so there is a most."""

from reviewer.reading.context import Context
from reviewer.reading.design import Design
from reviewer.reading.tree import Table

MOST_CASES = 500
OF_EACH_LOAD = 2  # where no combinations are named: with the whole own weight, and with 0.9 of it
BESIDE = 3  # own weight alone, and all loads together in two ways


def case_count(design: Design) -> int:
    """How many cases there are: combinations in configurations, doubled by spread loads.

    As the deriving makes them, or a few more.
    """
    if design.combinations is None:
        combinations = OF_EACH_LOAD * len(design.loads) + BESIDE
    else:
        combinations = len(design.combinations)
    spread = any("over" in load.given for load in design.loads.values())
    return combinations * len(design.configurations) * (2 if spread else 1)


def check_cases(root: Table, design: Design, context: Context) -> None:
    """Refuse a design that would be reckoned for more cases than anybody reads."""
    count = case_count(design)
    if count <= MOST_CASES:
        return
    sections = ("combinations", "loads", "configurations")
    place = next((key.place for each in sections if (key := root.key(each))), root.place)
    what, found = "there are too many cases of load", f"about {count}"
    expected = f"at most {MOST_CASES} combinations of loads, in all configurations together"
    mend = "name in combinations those that matter, or split the design"
    context.refuse(place, what, found, expected, mend)
