"""A guide: what keeps a slide straight while it is pushed in or pulled out."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.guides import (
    GuideReactions,
    guide_reactions,
    guide_tilt,
    largest_offset,
    overlap,
    share_of_push,
)
from reviewer.parts.allowed import stated
from reviewer.parts.figures import LIES, figure
from reviewer.parts.groups import same, single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.row import Measure, Row
from reviewer.parts.rubbing import rubbing


def overhang_of_load(length: Number, travel: Number) -> Number:
    """How far the middle of an evenly loaded slide stands beyond the end of its guide.

    Geometry.

    Notes
    -----
    travel - L/2, nothing while the middle is inside.
    """
    return np.maximum(travel - length / 2, 0.0)


def bearing_reactions(force: Number, reach: Number, engaged: Number) -> GuideReactions:
    """Forces at both ends of what is still engaged.

    Statics: moments about the ends of the overlap.
    """
    return guide_reactions(force, reach, engaged)


def drag_of(front: Number, rear: Number, friction: Number) -> Number:
    """Friction of the slide in its guide, as large as it may be.

    Coulomb friction on the forces at both ends.

    Notes
    -----
    mu (front + rear).
    """
    return friction * (front + rear)


def hand_on_slide(drag: Number, share: Number) -> Number:
    """Force of the hand, of which only a share arrives at an offset.

    Statics: two-point contact; Beer and Johnston, Vector Mechanics, 8.1.

    Notes
    -----
    Drag over share; where the slide jams no force moves it.
    """
    return np.where(share > 0, drag / np.where(share > 0, share, 1.0), np.nan)


def droop_of(clearance: Number, engaged: Number, travel: Number) -> Number:
    """How far the front of a slide sinks by its play in the guide.

    Geometry: its rear end touches above, the guide's end below.

    Notes
    -----
    c/2 + c/L travel: half of the tilt from stop to stop.
    """
    return clearance / 2 + guide_tilt(clearance, engaged) / 2 * travel


def _reaction(path: str, says: str, take: str) -> Row:
    return Row(path, "N", says, needs={"solution": "reactions"}, take=take)


GUIDE = Kind(
    name="guide",
    says="what keeps a slide straight while it is pushed in or pulled out",
    rows=(
        *tree(),
        LIES,
        figure("guide", "length", "travel", "azimuth"),
        *single(),
        Row("length", "m", "length engaged at rest", Measure(above=0.0, example="300 mm")),
        Row("travel", "m", "how far it is pulled out", Measure(default="0 mm", at_least=0.0)),
        Row(
            "engaged",
            "m",
            "length that is still engaged",
            formula=overlap,
            needs={"length": "length", "travel": "travel"},
            governs="least",
        ),
        Row(
            "least_engaged",
            "m",
            "length that must stay engaged",
            Measure(above=0.0),
            formula=lambda length, share: length * share,
            needs={"length": "length", "share": "limit.guide_share"},
        ),
        *rubbing(),
        Row(
            "offset",
            "m",
            "how far beside the middle of the guide the hand pushes",
            Measure(default="0 mm", at_least=0.0),
        ),
        Row(
            "largest_offset",
            "m",
            "offset at which the slide jams",
            formula=largest_offset,
            needs={"length": "engaged", "friction": "friction.largest"},
            governs="least",
        ),
        Row(
            "share",
            "1",
            "share of the push that arrives",
            formula=share_of_push,
            needs={"offset": "offset", "length": "engaged", "friction": "friction.largest"},
            governs="least",
        ),
        Row(
            "load",
            "N",
            "weight on the slide, its own included",
            Measure(at_least=0.0, example="100 N"),
            formula=same,
            needs={"place": "bears.force"},
        ),
        Row(
            "reach",
            "m",
            "from the end of the guide to the middle of the load on the slide",
            Measure(at_least=0.0),
            formula=overhang_of_load,
            needs={"length": "length", "travel": "travel"},
        ),
        Row(
            "moment",
            "N m",
            "moment of the load about the end of the guide",
            formula=lambda load, reach: load * reach,
            needs={"load": "load", "reach": "reach"},
        ),
        Row(
            "reactions",
            "",
            "forces at both ends of what is engaged",
            formula=bearing_reactions,
            needs={"force": "load", "reach": "reach", "engaged": "engaged"},
        ),
        _reaction("front", "force at the end of the guide, upward", "front"),
        _reaction("rear", "force at the rear end of the slide, downward", "rear"),
        Row(
            "drag",
            "N",
            "friction of the slide in its guide",
            formula=drag_of,
            needs={"front": "front", "rear": "rear", "friction": "friction.largest"},
        ),
        Row(
            "hand_force",
            "N",
            "force of the hand that moves the slide",
            formula=hand_on_slide,
            needs={"drag": "drag", "share": "share"},
            because="is pushed so far beside its middle that it jams",
        ),
        Row(
            "allowed_hand_force",
            "N",
            "force that a hand may be asked for",
            Measure(above=0.0),
            formula=stated,
            needs={"limit": "limit.hand_force"},
        ),
        Row("clearance", "m", "play of the slide in its guide", Measure(at_least=0.0)),
        Row(
            "droop",
            "m",
            "how far the front of the slide sinks by its play",
            formula=droop_of,
            needs={"clearance": "clearance", "engaged": "engaged", "travel": "travel"},
            because="is pulled out of its guide",
            read="at the front of the slide, pulled out, as a hand lifts and presses it",
        ),
        Row(
            "allowed_droop",
            "m",
            "how far the front of the slide may sink by its play",
            Measure(above=0.0),
            formula=stated,
            needs={"limit": "limit.droop"},
        ),
    ),
)
