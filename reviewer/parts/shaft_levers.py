"""The levers of a shaft, its bearings out of line, and what the next diameter would buy."""

import numpy as np

from reviewer.mechanics.beams import beam_moment
from reviewer.mechanics.formula import Number
from reviewer.mechanics.lever_shafts import beam_row_moment, lever_row_twist, misalignment_moment
from reviewer.mechanics.sections import SectionProperties, pipe_section, round_section
from reviewer.mechanics.shafts import misalignment_force, twist
from reviewer.parts.groups import same
from reviewer.parts.row import Choice, Count, Measure, Row
from reviewer.stock.sections import diameters


def shaft_section(diameter: Number, wall: Number | None) -> SectionProperties:
    """Section of a shaft, solid unless a wall is given."""
    return round_section(diameter) if wall is None else pipe_section(diameter, wall)


def shaft_moment(
    force: Number, span: Number, length: Number, count: int, share: str, at: Number | None
) -> Number:
    """Largest bending moment of a shaft between its bearings.

    Gere and Goodno, Mechanics of Materials (2009), 4.5.

    Notes
    -----
    One lever with all of the load: P a b / L, or F L / 4 where its place is not given, an upper
    bound. Levers that carry alike: each a share, evenly spaced, in the middle of the span.
    """
    if share == "alike" and count > 1:
        first = (span - length) / 2 if at is None else at
        steps = np.linspace(0.0, 1.0, count)
        places = np.asarray(first)[..., None] + np.asarray(length)[..., None] * steps
        return beam_row_moment(force / count, places, span)
    return force * span / 4 if at is None else beam_moment(force, at, span)


def shaft_twist(
    torque: Number,
    length: Number,
    count: int,
    share: str,
    shear_modulus: Number,
    torsion_constant: Number,
) -> Number:
    """Twist from the first to the last lever, driven at the first.

    Gere and Goodno, Mechanics of Materials (2009), 3.3 and 3.4.

    Notes
    -----
    T L / (G J) where all of the load may stand over the last lever, half of it where all carry
    alike.
    """
    if share == "alike" and count > 1:
        return lever_row_twist(torque, length, count, shear_modulus, torsion_constant)
    return twist(torque, length, shear_modulus, torsion_constant)


def misfit_force(
    offset: Number | None, left: Number, right: Number, bending_stiffness: Number
) -> Number:
    """Force with which a bearing out of line bends the shaft; none where all stand in line.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 5, solved for the force.

    Notes
    -----
    3 E I (a + b) e / (a^2 b^2): a shaft of twice the diameter is forced sixteen times as hard.
    """
    if offset is None:
        return 0.0 * left
    return misalignment_force(offset, left, right, bending_stiffness)


def next_stock_diameter(diameter: Number, wall: Number | None) -> Number:
    """The next larger diameter in which round bars, or tubes, are stocked.

    The stock table's own sources.
    """
    ladder = np.array(diameters("round bar" if wall is None else "round tube"))
    place = np.searchsorted(ladder, np.asarray(diameter) + 1e-6, side="right")
    found = np.append(ladder, np.nan)[place]
    return np.where(np.isnan(diameter), np.nan, found)


def next_twist(turned: Number, diameter: Number, following: Number, wall: Number | None) -> Number:
    """Twist with the next diameter, all else alike.

    Gere and Goodno, Mechanics of Materials (2009), 3.3.

    Notes
    -----
    The twist times J / J of the next.
    """
    now, then = shaft_section(diameter, wall), shaft_section(following, wall)
    return turned * now.torsion_constant / then.torsion_constant


def next_force(force: Number, diameter: Number, following: Number, wall: Number | None) -> Number:
    """Force of a bearing out of line with the next diameter, all else alike.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 5.

    Notes
    -----
    The force times I of the next / I.
    """
    now, then = shaft_section(diameter, wall), shaft_section(following, wall)
    return force * then.second_moment / now.second_moment


def levers() -> tuple[Row, ...]:
    """The levers that a shaft turns, and how they share its load."""
    return (
        Row(
            "lever.length",
            "m",
            "length of the levers that it turns",
            Measure(above=0.0, example="80 mm"),
        ),
        Row(
            "lever.count",
            "",
            "levers on it, evenly spaced from the first to the last",
            Count(default=1, at_most=100),
        ),
        Row(
            "lever.share",
            "",
            "whether one of them may have all of the load, or all carry alike",
            Choice(("one", "alike"), default="one"),
        ),
        Row(
            "lever.at",
            "m",
            "distance from a bearing to the lever, or to the first of them",
            Measure(at_least=0.0),
        ),
    )


def in_line() -> tuple[Row, ...]:
    """A middle bearing out of line with the outer two, and what it does to the shaft."""
    places = {"left": "supports.left", "right": "supports.right"}
    return (
        Row(
            "supports.offset",
            "m",
            "how far a middle bearing stands out of line",
            Measure(at_least=0.0, example="0.5 mm"),
        ),
        Row(
            "supports.left",
            "m",
            "from the middle bearing to the one on its left",
            Measure(above=0.0),
            lambda span: span / 2,
            {"span": "span"},
        ),
        Row(
            "supports.right",
            "m",
            "from the middle bearing to the one on its right",
            Measure(above=0.0),
            lambda span, left: span - left,
            {"span": "span", "left": "supports.left"},
        ),
        Row(
            "supports.force",
            "N",
            "force with which that bearing bends the shaft",
            formula=misfit_force,
            needs={
                "offset": "supports.offset?",
                **places,
                "bending_stiffness": "bending_stiffness",
            },
        ),
        Row(
            "supports.moment",
            "N m",
            "bending moment that it puts into the shaft",
            formula=misalignment_moment,
            needs={"force": "supports.force", **places},
        ),
        Row(
            "supports.allowed_force",
            "N",
            "force that a bearing out of line may cause",
            Measure(above=0.0),
            same,
            {"place": "bears.force"},
        ),
    )


def next_size() -> tuple[Row, ...]:
    """What the next diameter in stock would buy."""
    return (
        Row(
            "next_diameter",
            "m",
            "next larger diameter in stock",
            formula=next_stock_diameter,
            needs={"diameter": "diameter", "wall": "wall?"},
            because="has none larger in stock",
        ),
        Row(
            "next_diameter_twist",
            "rad",
            "twist with that diameter",
            formula=next_twist,
            needs={
                "turned": "twist",
                "diameter": "diameter",
                "following": "next_diameter",
                "wall": "wall?",
            },
        ),
        Row(
            "next_diameter_lag",
            "m",
            "lag with that diameter",
            formula=lambda lag, turned, then: lag * then / turned,
            needs={"lag": "lag", "turned": "twist", "then": "next_diameter_twist"},
        ),
        Row(
            "next_diameter_force",
            "N",
            "force of a bearing out of line with that diameter",
            formula=next_force,
            needs={
                "force": "supports.force",
                "diameter": "diameter",
                "following": "next_diameter",
                "wall": "wall?",
            },
        ),
    )
