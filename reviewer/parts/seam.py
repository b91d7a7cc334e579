"""A seam: where two flat parts meet, how wide it stands and how flush, closed and open."""

from reviewer.parts.groups import same
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Measure, PartName, Row
from reviewer.parts.seam_sums import (
    ACROSS,
    ALONG,
    closing,
    opening,
    stepping,
    swelling_apart,
    thickness_off,
    turned,
)

FROM_SIDES = {"solution": "sides"}


def _of_sides(path: str, says: str, take: str) -> Row:
    """A contributor that follows from the parts on both sides, if it is not told."""
    return Row(path, "m", says, Measure(example="0.5 mm"), needs=FROM_SIDES, take=take)


def _sums(path: str, says: str) -> tuple[Row, ...]:
    solution = {"solution": path}
    return (
        Row(f"{path}.worst", "m", f"{says}, at worst", needs=solution, take="worst"),
        Row(f"{path}.likely", "m", f"{says}, as is likely", needs=solution, take="likely"),
        Row(
            f"{path}.largest",
            "text",
            f"what contributes most to {says}",
            needs=solution,
            take="largest",
        ),
        Row(f"{path}.most", "m", "how much that is, of both sides", needs=solution, take="most"),
    )


def _width() -> tuple[Row, ...]:
    errors = {"radial": "radial.error", "angular": "angular.offset"}
    return (
        Row(
            "width",
            "m",
            "how wide it is set when it is assembled, in each position of the mechanism",
            Measure(at_least=0.0, example="1.5 mm"),
        ),
        Row(
            "radial.error",
            "m",
            "how far each side may stand nearer or farther than drawn",
            Measure(at_least=0.0, example="0.3 mm"),
        ),
        Row(
            "angular.error",
            "rad",
            "how far each side may be turned out of its place",
            Measure(at_least=0.0, example="0.05 deg"),
        ),
        Row(
            "angular.radius",
            "m",
            "radius at which that counts: the farther rim, if it is not told",
            Measure(at_least=0.0),
            needs=FROM_SIDES,
            take="radius",
        ),
        Row(
            "angular.offset",
            "m",
            "how far each side stands out of place by that",
            formula=turned,
            needs={"error": "angular.error", "radius": "angular.radius"},
        ),
        _of_sides("movement.damp", "how far both sides grow into it in the dampest air", "damp"),
        _of_sides("movement.dry", "how far they do in the driest air, below zero", "dry"),
        Row(
            "closing",
            "",
            "how far it may close",
            formula=closing,
            needs={**errors, "damp": "movement.damp"},
        ),
        *_sums("closing", "how far it may close"),
        Row(
            "opening",
            "",
            "how far it may open",
            formula=opening,
            needs={**errors, "dry": "movement.dry"},
        ),
        *_sums("opening", "how far it may open"),
        Row(
            "widest",
            "m",
            "how wide it may stand, as is likely",
            formula=lambda width, more: width + more,
            needs={"width": "width", "more": "opening.likely"},
        ),
    )


def _step() -> tuple[Row, ...]:
    return (
        _of_sides("sag", "how far one side sags under what stands on it alone", "sag"),
        _of_sides("tilt", "how far what carries one side alone lets it sink", "tilt"),
        _of_sides("play", "how far the play of what carries one side alone lets it drop", "play"),
        _of_sides("lag", "how much later a lift shaft raises one end of one side", "lag"),
        _of_sides(
            "swelling.damp", "how much more one side thickens in the dampest air", "thick_damp"
        ),
        _of_sides("swelling.dry", "how much more one side thins in the driest air", "thick_dry"),
        Row(
            "thickness.error",
            "m",
            "how far the thickness of each side may be off",
            Measure(at_least=0.0, example="0.3 mm"),
            formula=thickness_off,
            needs={"sides": "sides"},
            because="needs a thickness with its limits, or one that a sheet is called by",
        ),
        Row(
            "swelling",
            "m",
            "how much more one side changes its thickness over the seasons",
            formula=swelling_apart,
            needs={"damp": "swelling.damp", "dry": "swelling.dry"},
        ),
        Row(
            "step",
            "",
            "how far one side stands above the other",
            formula=stepping,
            needs={
                "sag": "sag",
                "tilt": "tilt",
                "play": "play",
                "lag": "lag",
                "thickness": "thickness.error",
                "swelling": "swelling",
            },
        ),
        *_sums("step", "how far one side stands above the other"),
        Row(
            "allowed_step",
            "m",
            "how far one side may stand above the other",
            Measure(above=0.0),
            formula=same,
            needs={"place": "limit.seam_step"},
        ),
    )


SEAM = Kind(
    name="seam",
    says="where two flat parts meet",
    carries_load=False,
    rows=(
        Row(
            "between",
            "",
            "the two parts on its sides, or one of which several lie side by side",
            PartName(several=True),
        ),
        Row(
            "meets",
            "",
            "whether its sides grow into it across their grain, or lie along it",
            Choice((ACROSS, ALONG), default=ACROSS),
        ),
        Row("sides", "", "what both sides bring to it", built=True),
        *_width(),
        *_step(),
    ),
)
