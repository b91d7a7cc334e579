"""Regular polygons: Machinery's Handbook, constants from memory, and the geometry of the circle.

`seen` says how each number reached this table; what is exact follows from the definitions alone.
"""

import numpy as np
import pytest

from reviewer.mechanics.cutting import (
    blade_height,
    cutter_reach,
    passes,
    pivot_radius,
    share_of_sheet,
)
from reviewer.mechanics.segments import (
    board_width,
    corner_radius,
    mitre_angle,
    mitre_area,
    pieces_in_board,
    run_of_pieces,
    sagitta,
    side_length,
)

HANDBOOK = "Machinery's Handbook, regular polygons, side from the inscribed circle"
CORNERS = "Machinery's Handbook, regular polygons, circumscribed from the inscribed circle"
GAUGE = "mitre of an n-sided frame, 180/n, woodworkers' tables"
ROUND = "chord and sagitta of the circle, by hand"

# fmt: off
ROWS = [
    *[(side_length, (1.0, n), side, HANDBOOK, "memory")
      for n, side in [(3, 3.4641), (4, 2.0), (5, 1.4531), (6, 1.1547), (8, 0.8284), (10, 0.6498),
                      (12, 0.5359), (16, 0.3978)]],
    *[(corner_radius, (1.0, n), radius, CORNERS, "memory")
      for n, radius in [(3, 2.0), (4, 1.4142), (5, 1.2361), (6, 1.1547), (8, 1.0824),
                        (10, 1.0515), (12, 1.0353)]],
    *[(mitre_angle, (n,), np.radians(angle), GAUGE, "computed")
      for n, angle in [(3, 60), (4, 45), (5, 36), (6, 30), (8, 22.5), (12, 15), (16, 11.25)]],
    *[(sagitta, (0.3, n), sag, ROUND, "computed")
      for n, sag in [(8, 0.022836), (12, 0.010222), (16, 0.005764)]],
    *[(side_length, (0.3, n), side, ROUND, "computed")
      for n, side in [(8, 0.24853), (12, 0.16077), (16, 0.11935)]],
    (board_width, (0.32, 0.26, 8), 0.32 - 0.26 * np.cos(np.pi / 8), ROUND, "computed"),
    (board_width, (1.0, 0.0, 8), 1.0, "a disc takes pieces as wide as its radius", "computed"),
    (mitre_area, (0.06, 0.02, 4), 0.06 * 0.02 * 2**0.5, "a joint at 45 degrees", "computed"),
    (mitre_area, (0.06, 0.02, 3), 0.06 * 0.02 * 2, "a joint at 60 degrees", "computed"),
    (run_of_pieces, (1, 0.4, 0.1, 0.003, 4), 0.4, "one piece is as long as itself", "computed"),
    (run_of_pieces, (2, 0.4, 0.1, 0.0, 4), 0.7, "two turned, at 45 degrees", "computed"),
    (run_of_pieces, (2, 0.4, 0.1, 0.003, 4), 0.7 + 0.003 * 2**0.5, "and a kerf aslant", "computed"),
    (pieces_in_board, (0.7, 0.4, 0.1, 0.0, 4), 2, "two turned, at 45 degrees", "computed"),
    (pieces_in_board, (0.699, 0.4, 0.1, 0.0, 4), 1, "a millimetre less", "computed"),
    (blade_height, (0.05, np.radians(45)), 0.0707107, "the diagonal of a square of 50 mm",
     "computed"),
    (pivot_radius, (0.6, 0.012, 1), 0.306, "half of the disc and half of the cutter", "computed"),
    (pivot_radius, (0.6, 0.012, -1), 0.294, "half of the hole less half of the cutter", "computed"),
    (cutter_reach, (0.025, 0.07, 0.008, 0.012, 0.02), 0.05,
     "a shank of 8 mm in a cut of 12: 70 mm long less 20 in the collet", "computed"),
    (cutter_reach, (0.025, 0.07, 0.012, 0.012, 0.02), 0.025,
     "a shank as thick as the cut: its edges of 25 mm", "computed"),
    (cutter_reach, (0.025, 0.04, 0.008, 0.012, 0.02), 0.025,
     "all that stands out of the collet is edges", "computed"),
    (passes, (0.018, 0.006), 3, "18 mm in steps of 6 mm", "computed"),
    (passes, (0.0181, 0.006), 4, "a tenth more takes one more", "computed"),
    (share_of_sheet, (1.22, 0.61, 2.44, 1.22, 0.0), 0.5, "a quarter of a sheet", "computed"),
    (share_of_sheet, (0.61, 2.44, 2.44, 1.22, 0.0), 1.0, "a strip, turned", "computed"),
    (share_of_sheet, (1.2, 1.2, 2.44, 1.22, 0.01), 1.0, "1220 less two margins of 10", "computed"),
]
# fmt: on
PRINTED = 0.00005  # half of the fourth decimal, which the handbook prints


@pytest.mark.parametrize(("formula", "given", "expected", "source", "seen"), ROWS)
def test_published_values(formula, given, expected, source, seen):
    tolerance = PRINTED if seen == "memory" else 5e-6 if expected < 0.3 else 1e-6
    assert np.asarray(formula(*given)) == pytest.approx(expected, abs=tolerance)


@pytest.mark.parametrize("sides", [3, 6, 8, 12, 30])
def test_the_round_ring_lies_within_pieces_of_that_width_and_no_narrower(sides):
    """Against shapely: the pieces as polygons, and the ring cut out of their union."""
    shapely = pytest.importorskip("shapely")
    outer, inner = 0.32, 0.25

    def uncovered(width):
        turns = 2 * np.pi * np.arange(sides) / sides
        corners = 1 / np.cos(np.pi / sides) * np.exp(1j * (turns + np.pi / sides))
        flat = [shapely.Polygon([(r * c.real, r * c.imag) for c in corners])
                for r in (outer, outer - width)]  # fmt: skip
        wood = flat[0].difference(flat[1])
        fine = shapely.Point(0, 0).buffer(1.0, quad_segs=4000)
        ring = shapely.affinity.scale(fine, outer, outer, origin=(0, 0)).difference(
            shapely.affinity.scale(fine, inner, inner, origin=(0, 0))
        )
        return ring.difference(wood).area

    least = board_width(outer, inner, sides)
    assert uncovered(least + 1e-6) == pytest.approx(0.0, abs=1e-9)
    assert uncovered(least - 1e-3) > 1e-9


@pytest.mark.parametrize("pieces", [1, 2, 7, 20])
def test_as_many_pieces_as_a_board_gives_are_no_longer_than_it(pieces):
    given = (0.16, 0.06, 0.0032, 12)
    run = run_of_pieces(pieces, *given)
    assert pieces_in_board(run, *given) == pieces
    assert pieces_in_board(run - 1e-4, *given) in (pieces - 1, pytest.approx(np.nan, nan_ok=True))
