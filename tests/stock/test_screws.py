"""Screws for wood against the sizes of the NDS."""

import pytest

from reviewer.stock.screws import wood_screws


@pytest.mark.parametrize(
    ("name", "diameter", "root", "source"),
    [
        ("#8 wood screw", 0.164, 0.131, "NDS Appendix L3, from memory"),
        ("#10 wood screw", 0.190, 0.152, "NDS Appendix L3, from memory"),
        ("1/4 lag", 0.250, 0.173, "NDS Appendix L2, from memory"),
        ("1/2 lag", 0.500, 0.371, "NDS Appendix L2, from memory"),
    ],
)
def test_wood_screws(name, diameter, root, source):
    row = wood_screws().find(name)
    assert row.diameter / 0.0254 == pytest.approx(diameter, abs=1e-3)
    assert row.root_diameter / 0.0254 == pytest.approx(root, abs=1e-3)


def test_the_tip_of_a_half_inch_lag_screw():
    """AWC example E2.3, as transcribed: 4 in less 1.5 in of side piece and the tip is 2.1875 in."""
    tip = wood_screws().find("1/2 in lag screw").tip / 0.0254
    assert 4 - 1.5 - tip == pytest.approx(2.1875, abs=5e-5)


def test_wood_screws_are_sound():
    for row in wood_screws():
        assert 0.5 < row.root_diameter / row.diameter < 0.85, row.name
        assert row.head_diameter > 1.4 * row.diameter, row.name
