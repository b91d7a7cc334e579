"""The largest gap along a travel: closed forms by hand, and random mechanisms against a scan."""

from math import pi, sqrt

import numpy as np
import pytest

from reviewer.geometry.bounds import Encounter
from reviewer.geometry.chain import Fixed, Slide, Turn
from reviewer.geometry.course import Course, Table
from reviewer.geometry.edges import edges_of
from reviewer.geometry.intervals import Path, gap_curve
from reviewer.geometry.largest import SHARE, TOLERANCE, largest_gap
from reviewer.geometry.outline import Disc, Rectangle
from tests.geometry.mechanisms import any_mechanism, encounter_of

ALONG = Path(0, (0.0,))


def whole(amount: float) -> Course:
    return Course(0, Table(((0.0, 0.0), (1.0, amount))))


def test_a_disc_that_slides_by() -> None:
    """From x = -300 to 400 mm at y = 200: farthest at the end, by Pythagoras. By hand."""
    chain = (Fixed(-0.3, 0.2), Slide(whole(0.7)))
    encounter = Encounter(edges_of(Disc(0.1)), edges_of(Disc(0.05)), chain, 1)
    expected = sqrt(0.4 * 0.4 + 0.2 * 0.2) - 0.15
    assert largest_gap(encounter, ALONG) == pytest.approx(expected, rel=SHARE)


def test_a_square_that_turns_beside_a_post() -> None:
    """From corner to corner: widest half way, where its flat side is 200 mm from the middle."""
    chain = (Fixed(azimuth=pi / 4), Turn(whole(pi / 2)))
    encounter = Encounter(
        edges_of(Disc(0.03)), edges_of(Rectangle(0.4, 0.4)), (Fixed(-0.325), *chain), 1
    )
    assert largest_gap(encounter, ALONG) == pytest.approx(0.325 - 0.2 - 0.03, abs=TOLERANCE)


@pytest.mark.parametrize("number", range(40))
def test_no_scan_finds_a_larger_one(number: int) -> None:
    mechanism = any_mechanism(np.random.default_rng((7, number)))
    encounter = encounter_of(mechanism)
    scanned = float(gap_curve(encounter, ALONG, 4001).gap.max())
    found = largest_gap(encounter, ALONG)
    enough = max(TOLERANCE, SHARE * scanned)
    assert scanned - enough <= found <= scanned + 1e-3
