"""A load in a maker's words: how much, in which weights, and where it is put."""

from math import ceil

from reviewer.mechanics.weight import weight
from reviewer.notation.plain import plain
from reviewer.reporting.sheets.quantities import Quantities

LARGEST_WEIGHT = 10.0  # kg, that one person sets down softly


def load_words(values: Quantities, load: str, factor: float) -> str:
    """What to put on for a load at the full step, and where."""
    force = factor * values.number(load, "force")
    name = plain(load)
    size = values.shown(force, "N")
    direction = values.named(load, "direction")
    if direction != "down":
        return (
            f"{name}: {size} {direction}, pulled or pushed with a spring balance,"
            f" {_where(values, load)}."
        )
    mass = force / float(weight(1.0))
    bags = ceil(mass / LARGEST_WEIGHT)
    pieces = "one weight" if bags < 2 else f"at least {bags} weights"
    return (
        f"{name}: {size}, that is {values.shown(mass, 'kg')} in {pieces}, {_where(values, load)}."
    )


def _where(values: Quantities, load: str) -> str:
    over = values.named(load, "over")
    if over:
        return f"spread evenly over {plain(over)}"
    place = f"on {plain(values.named(load, 'on'))}"
    if values.count(values.named(load, "on")) > 1:
        place = f"on one of the {plain(values.named(load, 'on'))}"
    if values.named(load, "at") == "rim":
        inset = values.told(load, "inset")
        inside = f", {inset} inside it" if values.number(load, "inset") > 0 else ""
        place += f", at the rim{inside}"
    elif values.number(load, "radius") > 0:
        place += f", {values.told(load, 'radius')} from its middle"
    else:
        place += ", in its middle"
    return place + (", where it is worst all round" if values.choice(load, "all_round") else "")
