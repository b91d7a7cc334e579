"""Bench tests that stand in for a modulus, on a board and on a shaft, by their closed forms."""

from math import pi, radians

import pytest

from reviewer import review

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2
PANEL = """\
design: Shelf
lengths: mm
parts:
  base: {kind: base, feet: {count: 4, circle: 900}, height: 700, mass: 60 kg}
  shelf:
    kind: panel
    carried_by: base
    material: birch plywood
    thickness: 18
    length: 900
    width: 400
    %s
loads:
  books: {force: 200 N, over: shelf}
"""
SHAFT = """\
design: Lift
lengths: mm
parts:
  base: {kind: base, feet: {count: 4, circle: 900}, height: 700, mass: 60 kg}
  bar:
    kind: shaft
    carried_by: base
    diameter: 20
    length: 300
    material: C45
    lever: {length: 60}
    %s
loads:
  lid: {force: 200 N, on: bar}
"""
STRIP = "bench_test: {mass: 20 kg, span: 800, width: 100, sags: 4.5}"
TWISTED = "bench_test: {mass: 20 kg, at: 250, length: 600, twists: 1.3 deg}"
# F L^3 / (48 I sag), Gere and Goodno (2009), table G-2 case 4
TESTED = 20 * G * 0.8**3 / (48 * 0.1 * 0.018**3 / 12 * 0.0045)
# F a L / (J theta), Gere and Goodno (2009), 3.3
TWIST = 20 * G * 0.25 * 0.6 / (pi * 0.02**4 / 32 * radians(1.3))


def number(text: str, part: str, path: str) -> float:
    found = review(text)
    assert found.problems == ()
    values = found.derived.values
    slot = values.plan.slots[part, path]
    return max(values.at(slot, case) for case in range(values.cases))


@pytest.mark.parametrize("path", ["modulus", "span_modulus"])
def test_a_strip_of_the_board_gives_its_modulus(path: str) -> None:
    assert number(PANEL % STRIP, "shelf", path) == pytest.approx(TESTED, rel=1e-12)
    assert number(PANEL % "", "shelf", path) != pytest.approx(TESTED, rel=0.01)


def test_the_sag_of_the_board_is_that_of_the_test() -> None:
    stock = number(PANEL % "", "shelf", "span_modulus")
    sags = [number(PANEL % each, "shelf", "sag") for each in ("", STRIP)]
    assert sags[1] / sags[0] == pytest.approx(stock / TESTED, rel=1e-9)


def test_a_test_that_is_not_told_in_full_counts_for_nothing() -> None:
    part = STRIP.replace(", sags: 4.5", "")
    assert number(PANEL % part, "shelf", "modulus") == number(PANEL % "", "shelf", "modulus")


def test_a_twisted_piece_gives_the_shear_modulus_of_a_shaft() -> None:
    assert number(SHAFT % TWISTED, "bar", "shear_modulus") == pytest.approx(TWIST, rel=1e-12)
    lags = [number(SHAFT % each, "bar", "lag") for each in ("", TWISTED)]
    stock = number(SHAFT % "", "bar", "shear_modulus")
    assert lags[1] / lags[0] == pytest.approx(stock / TWIST, rel=1e-9)


def test_a_force_stands_for_the_mass() -> None:
    force = STRIP.replace("mass: 20 kg", f"force: {20 * G} N")
    assert number(PANEL % force, "shelf", "modulus") == pytest.approx(TESTED, rel=1e-12)
