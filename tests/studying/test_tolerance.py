"""Tolerances against closed forms, against scipy, and against every sample computed exactly."""

from collections.abc import Callable
from datetime import date
from math import sqrt
from pathlib import Path

import numpy as np
import pytest
from scipy import stats

from reviewer.judging.builtin import builtin_limits
from reviewer.judging.pack import Pack, in_order, read_pack
from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.judging.scatter import Scatter
from reviewer.parts.registry import KINDS
from reviewer.reviewing import review_source
from reviewer.studying.bands import Band, bands_of
from reviewer.studying.blocks import job_of
from reviewer.studying.normal import normal_quantile
from reviewer.studying.screening import screened
from reviewer.studying.study import FAILS, PASSES
from reviewer.studying.tolerance import KEPT, sampled_over, with_scatter

Reviewed = Callable[[str], Review]
DESIGNS = Path(__file__).parent / "designs"
STACK = """\
- rule: gap.stack
  question: Does the stack of three fit?
  require: least + most + depth <= 100 mm
  level: must
  stage: cutting
  says: The stack is {demand}; {capacity} is allowed.
  because: It has to go in.
  source: geometry
  proof:
    holds: {least: 20 mm, most: 30 mm, depth: 40 mm}
    fails: {least: 40 mm, most: 30 mm, depth: 40 mm}
"""
DESIGN = """\
design: Stack
parts:
  stack: {{kind: gap, least: {least}, most: {most}, depth: {depth}}}
"""
LIMIT = 100.0


@pytest.fixture(scope="session")
def stack() -> Pack:
    """A rule on the sum of three lengths."""
    pack = read_pack(STACK, "stack.yaml", KINDS, builtin_limits())
    assert pack.problems == ()
    return pack


def scatter(pack: Pack, least: str, most: str, depth: str, samples: int = 20_000) -> Scatter:
    text = DESIGN.format(least=least, most=most, depth=depth)
    review = review_source(text, "stack.yaml", [pack], date(2026, 11, 25))
    assert review.problems == ()
    found = with_scatter(review, in_order([pack])[0], samples).findings[0].scatter
    assert found is not None
    return found


def test_a_linear_stack_of_normal_parts(stack: Pack) -> None:
    # Nominal 99.5 mm; worst case 99.5 + 0.3 + 0.6 + 0.9; sigma by root sum of squares, limits at 3.
    found = scatter(stack, "20 mm ± 0.3 mm", "30 mm ± 0.6 mm", "49.5 mm ± 0.9 mm")
    sigma = sqrt(0.3**2 + 0.6**2 + 0.9**2) / 3
    assert found.corner == pytest.approx((99.5 + 1.8) / LIMIT)
    assert found.corner_fails is True
    assert found.share == pytest.approx(stats.norm.sf(0.5 / sigma), rel=0.03)
    assert found.samples == 20_000
    assert found.band == "stack.depth"
    assert found.part == pytest.approx(0.9**2 / (0.3**2 + 0.6**2 + 0.9**2))


def test_a_stack_within_its_worst_case_never_fails(stack: Pack) -> None:
    found = scatter(stack, "20 mm ± 0.1 mm", "30 mm ± 0.1 mm", "49.7 mm ± 0.1 mm")
    assert found.corner == pytest.approx(1.0)
    assert (found.corner_fails, found.share, found.unknown) == (
        False,
        pytest.approx(0, abs=1e-3),
        0,
    )


def test_a_sum_of_uniform_parts(stack: Pack) -> None:
    # Irwin-Hall: the sum of three uniform numbers, by scipy.
    found = scatter(stack, "20 mm ± 1 mm uniform", "30 mm ± 1 mm uniform", "49 mm ± 1 mm uniform")
    exact = stats.irwinhall(3, loc=99 - 3, scale=2).sf(LIMIT)
    assert found.share == pytest.approx(float(exact), rel=0.03)


def test_one_sided_limits(stack: Pack) -> None:
    # Between 98.8 mm and 100.3 mm, so with its mean in the middle of the band.
    found = scatter(stack, "20 mm +0.8/-0.7 mm", "30 mm", "49.5 mm")
    sigma = 1.5 / 6
    assert found.corner == pytest.approx(100.3 / LIMIT)
    assert found.share == pytest.approx(stats.norm.sf((LIMIT - 99.55) / sigma), rel=0.03)
    assert (found.band, found.part) == ("stack.least", pytest.approx(1.0))


def test_the_same_on_every_run(stack: Pack) -> None:
    sizes = ("20 mm ± 0.3 mm", "30 mm ± 0.6 mm", "49.5 mm ± 0.9 mm")
    assert scatter(stack, *sizes) == scatter(stack, *sizes)


def bands(stack: Pack, *sizes: str) -> tuple[Band, ...]:
    text = DESIGN.format(**dict(zip(("least", "most", "depth"), sizes, strict=True)))
    review = review_source(text, "stack.yaml", [stack], date(2026, 11, 25))
    assert review.derived is not None
    return bands_of(review.derived)


def test_a_new_band_leaves_the_draws_of_the_others(stack: Pack) -> None:
    (alone,) = bands(stack, "20 mm", "30 mm ± 0.6 mm", "49.5 mm")
    both = bands(stack, "20 mm ± 0.3 mm", "30 mm ± 0.6 mm", "49.5 mm")
    assert [each.name for each in both] == ["stack.least", "stack.most"]
    assert np.array_equal(alone.samples(500), both[1].samples(500))


@pytest.mark.parametrize("count", [1, 2, 7, 1000])
def test_samples_are_spread_evenly_and_begin_with_the_nominal_one(stack: Pack, count: int) -> None:
    (band,) = bands(stack, "20 mm", "30 mm ± 0.6 mm", "49.5 mm")
    samples = band.samples(count)
    assert samples[0] == 0.030
    strata = np.sort(np.floor(stats.norm.cdf(samples[1:], 0.030, 0.0002) * (count - 1)))
    assert np.array_equal(strata, np.arange(count - 1))


def test_samples_stay_within_the_bounds_of_the_field(stack: Pack) -> None:
    (band,) = bands(stack, "20 mm", "30 mm", "0.1 mm ± 0.09999 mm")
    assert band.samples(20_000).min() > 0


def test_quantiles_of_the_normal_distribution() -> None:
    # scipy.stats.norm.ppf as the oracle, into both tails.
    share = np.concatenate(
        [np.linspace(1e-6, 1 - 1e-6, 2001), 10.0 ** -np.arange(2, 300, 7), [0.075, 0.5, 0.925]]
    )
    expected = stats.norm.ppf(share)
    assert normal_quantile(share) == pytest.approx(expected, rel=1e-13, abs=1e-14)


RING = """\
design: Plant stand
lengths: mm
parts:
  foot: {kind: base, feet: {count: 3, circle: 500 ± 5}, height: 100, mass: 12 kg ± 0.5 kg}
  ring:
    kind: slewing_ring
    carried_by: foot
    plate: {material: birch plywood, thickness: 11.2 ± 0.5, diameter: 400 ± 1}
    carry: {bearing: "608", count: 6, circle: 340 ± 2}
    hold_down: {bearing: "608", count: 3, circle: 340 ± 2, gap: 0.3 ± 0.25,
      allowed_load: 38 N}
    side: {bearing: "608", count: 3}
loads:
  pot: {mass: 60 kg, on: ring}
  hand: {force: 270 N ± 20 N, on: ring, at: rim, all_round: true}
"""


def test_screening_finds_the_verdict_of_every_sample(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    # Against all samples computed exactly, in every case.
    derived = reviewed(RING).derived
    assert derived is not None
    found = bands_of(derived)
    keys = [
        (f"slewing_ring.{rule}", "ring", ()) for rule in ("rim_sinks", "track_holds", "uplift_held")
    ]
    samples = 2600
    columns = {band.given.field: band.samples(samples) for band in found}
    scaled = np.stack(
        [(columns[band.given.field] - band.nominal) / (band.high - band.nominal) for band in found],
        axis=1,
    )
    job = job_of(derived, rules, keys, KEPT)
    guessed = screened(job, columns, scaled)
    exact = job.in_every_case.run(columns, np.arange(samples))
    for key in keys:
        assert np.isin(exact[key].verdict, (PASSES, FAILS)).all()
        assert np.array_equal(guessed[key].verdict, exact[key].verdict)
    shares = {key[0]: float(np.mean(exact[key].verdict == FAILS)) for key in keys}
    assert sum(0 < share < 1 for share in shares.values()) == 2, shares


def test_each_sample_is_what_a_whole_review_says(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    text = (DESIGNS / "weak_arm.yaml").read_text(encoding="utf-8")
    loose = text.replace("reach: 700", "reach: 560 ± 20").replace("200 N", "200 N ± 10 N")
    review = reviewed(loose)
    assert review.derived is not None
    found = bands_of(review.derived)
    key = ("arm.bending", "arm", ())
    course = sampled_over(review.derived, rules, found, [key], 50)[key]
    columns = {band.name: band.samples(50) for band in found}
    for index in (0, 1, 17, 49):
        at = text.replace("reach: 700", f"reach: {float(columns['arm.reach'][index]) * 1e3!r}")
        at = at.replace("200 N", f"{float(columns['lamp.force'][index])!r} N")
        whole = next(each for each in reviewed(at).findings if each.name == "arm.bending")
        assert course.utilisation[index] == pytest.approx(whole.utilisation, rel=1e-9)


def test_what_no_tolerance_touches_has_no_scatter(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    text = (DESIGNS / "weak_arm.yaml").read_text(encoding="utf-8")
    assert all(each.scatter is None for each in with_scatter(reviewed(text), rules, 100).findings)
    loose = with_scatter(reviewed(text.replace("200 N", "200 N ± 10 N")), rules, 100)
    touched = {each.name for each in loose.findings if each.scatter is not None}
    assert "arm.bending" in touched
    assert "post.feet_level" not in touched
