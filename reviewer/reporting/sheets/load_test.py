"""The load-test sheet: what to load in which steps, what to expect on each gauge, when to stop."""

from collections.abc import Iterator, Sequence
from math import ceil, isnan, pi

from reviewer.judging.reviewed import Review
from reviewer.mechanics.weight import weight
from reviewer.reporting.sheets.loads_told import load_words
from reviewer.reporting.sheets.making import Maker
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.record import record_lines
from reviewer.reporting.sheets.sheet import (
    BLANK,
    Block,
    Body,
    Caution,
    Check,
    Checks,
    Column,
    NoSheet,
    Section,
    Table,
    Verbatim,
)
from reviewer.reporting.words import joined
from reviewer.studying.load_test import LoadTest, Step, load_tests

HOLD = {"half": 5, "full": 15, "proof": 15}  # minutes, common practice
STOP = 1.25  # times the upper end of what is expected, common practice
LEAST_STOP = 0.1e-3  # m, beyond it
STAYS = 0.10  # of the full reading that may stay when the load is off, common practice
LEAST = 0.02e-3  # m, as finely as a dial gauge on its stand is trusted
DECIMALS = {"mm": 2, "in": 3}  # a line of its dial
LETTERS = "ABCDEFGH"
LEAST_BLOCK = 3e-3  # m, of air above a catch block
LARGEST_WEIGHT = 10.0  # kg, that one person sets down softly


def load_test_body(review: Review) -> Body | NoSheet:
    """The load tests of a design, one after the other."""
    assert review.derived is not None
    if not review.derived.design.loads:
        return NoSheet("the design gives no load")
    tests = load_tests(review.derived)
    if not tests:
        return NoSheet("no load moves anything that a shop can read with a gauge")
    values = Quantities(review)
    return Body(tuple(_sections(values, tests)), CAUTIONS)


CAUTIONS = (
    Caution(
        "load test",
        "Never use a person as the load. Nobody stands under it, beside it, or in the way in which"
        " it could tip; gauges are read from afar, by a camera or a glass.",
    ),
    Caution(
        "load test",
        "Catch blocks stand just under what is loaded before the first weight is on. Weights are"
        " small, chocked, and set down softly, from the side that cannot fall.",
    ),
)


def _sections(values: Quantities, tests: Sequence[LoadTest]) -> Iterator[Section]:
    yield Section("before the first weight", (_before(values, tests),))
    yield Section("how to go on", (_steps_told(tests[0].steps), _stop_told()))
    for number, test in enumerate(tests, 1):
        yield Section(f"test {number}: {_title(values, test)}", tuple(_test(values, test)))
    yield Section("what a short test does not prove", tuple(_not_proven()))
    yield Section("what to write into the design", tuple(_record(values, tests)))


def _before(values: Quantities, tests: Sequence[LoadTest]) -> Checks:
    most = max(each.expected[-1].most for test in tests for each in test.readings)
    air = values.shown(ceil(max(LEAST_BLOCK, 2 * most) * 1000) / 1000, "m")
    weight = values.shown(LARGEST_WEIGHT, "kg")
    return Checks(
        (
            Check(f"Catch blocks under every loaded edge and arm, with {air} of air above them"),
            Check(f"Weights in bags or cans of at most {weight}, wedged so that none slides"),
            Check("Gauges on the floor or on a beam of their own, none on what is loaded"),
            Check("Half of the first load on and off again once, so that everything has settled"),
            Check("Every gauge set to zero under the own weight alone"),
            Check("A strip of paper under every foot"),
            Check("Air in the shop", "%"),
        )
    )


def _steps_told(steps: Sequence[Step]) -> str:
    told = "; ".join(f"{_step(each)}, held for {HOLD[each.name]} minutes" for each in steps)
    proof = next(each for each in steps if each.name == "proof").factor
    return (
        f"Each test goes up in steps: {told}. Then all of it comes off. The last step is {proof:g}"
        " times the load by the limit proof_load, which a shop may set otherwise. Read each gauge"
        " when the step is on, and again at the end of the hold. Steps, holds and the reading after"
        " unloading are as in EN 380:1993, from memory; the minutes are common practice."
    )


def _step(step: Step) -> str:
    if step.name == "half":
        return "half of the load"
    return "the full load" if step.name == "full" else f"{step.factor:g} times the load"


def _stop_told() -> str:
    return (
        f"Stop, and take the load off from afar, when a gauge passes its stop value ({STOP:g} times"
        " the upper end of what is expected), when a reading still grows by more than a twentieth"
        " over the second half of a hold, when anything cracks, creaks anew or slips, when a foot"
        " comes free that should not, or when something touches a catch block. When it is unloaded,"
        f" wait as long as it was held: more than a tenth of the full reading that stays is a"
        " permanent set, and the test is not passed."
    )


def _test(values: Quantities, test: LoadTest) -> Iterator[Block]:
    if len(test.factors) > 1:
        yield "All of these together, each in its place:"
    yield from (load_words(values, load, factor) for load, factor in test.factors.items())
    if not isnan(test.direction) and any(each.path == "lift" for each in test.readings):
        azimuth = values.shown(test.direction % (2 * pi), "rad")
        yield f"On the ring it is worst at an azimuth of {azimuth}; turn it there."
    if test.foot_lifts is not None:
        yield _feet(test)
    yield _where(test)
    yield _table(values, test)


def _title(values: Quantities, test: LoadTest) -> str:
    every = len(test.under) > 1 and set(test.under) == set(values.design.loads)
    where = f", {test.configuration}" if test.configuration else ""
    return f"{'all loads' if every else joined(test.under)}{where}"


def _feet(test: LoadTest) -> str:
    lifts = zip(test.steps, test.foot_lifts or (), strict=True)
    lifting = [_step(step) for step, lifted in lifts if lifted]
    if not lifting:
        return "Every foot holds its strip of paper at every step."
    return f"A foot may let go of its strip of paper under {joined(lifting)}; it must not rise."


def _where(test: LoadTest) -> Table:
    rows = tuple(
        (letter, each.quantity, each.says, each.where)
        for letter, each in zip(LETTERS, test.readings, strict=False)
    )
    heads = ("gauge", "reads", "that is", "put")
    return Table("The gauges", tuple(Column(each) for each in heads), rows)


def _table(values: Quantities, test: LoadTest) -> Table:
    unit = values.unit("m").symbol
    rows = [
        row
        for index, step in enumerate(test.steps)
        for row in _step_rows(values, test, index, step)
    ]
    stays = [_told(values, max(STAYS * each.expected[1].most, LEAST)) for each in test.readings]
    rows += [
        ("all off" if number == 0 else "", LETTERS[number], f"at most {each}", "", BLANK, BLANK)
        for number, each in enumerate(stays)
    ]
    return Table(
        "What to expect, from zero under own weight",
        (
            Column("step"),
            Column("gauge"),
            Column("expect", unit, "right"),
            Column("stop at", "", "right"),
            Column("read", unit, fill=True),
            Column("after hold", fill=True),
        ),
        tuple(rows),
    )


def _step_rows(
    values: Quantities, test: LoadTest, index: int, step: Step
) -> Iterator[tuple[str, ...]]:
    for number, each in enumerate(test.readings):
        expected = each.expected[index]
        ends = " to ".join(_told(values, end) for end in (expected.least, expected.most))
        stop = max(STOP * expected.most, expected.most + LEAST_STOP)
        told = f"{step.name}: {_force(values, test, step)}" if number == 0 else ""
        yield told, LETTERS[number], ends, _told(values, stop), BLANK, BLANK


def _told(values: Quantities, length: float) -> str:
    """A length as a dial gauge reads it."""
    unit = values.unit("m")
    decimals = DECIMALS.get(unit.symbol)
    return values.bare(length, "m") if decimals is None else f"{length / unit.factor:.{decimals}f}"


def _force(values: Quantities, test: LoadTest, step: Step) -> str:
    """The force of a step, where there is one load; else its factor on each."""
    if len(test.factors) > 1:
        return f"{step.factor:g} of each"
    load, factor = next(iter(test.factors.items()))
    force = step.factor * factor * values.number(load, "force")
    return f"{values.shown(force, 'N')}, {values.shown(force / float(weight(1.0)), 'kg')}"


def _not_proven() -> Iterator[str]:
    yield (
        "How long it lasts. What wood bears for minutes it does not bear for years: about two"
        " thirds of it (k_mod 0.9 for a short load and 0.6 for one that stays, EN 1995-1-1, table"
        " 3.1, service class 1), and what it sags it sags again by creep."
    )
    yield (
        "What many loads do. Wear, fatigue of metal, bolts that work loose and tracks that are"
        " rolled in need use, and a look at them after a month of it."
    )
    yield (
        "Other air. Gaps, seams and glued joints were tested in the air of that day, and close and"
        " open with the damp of the year."
    )
    yield "The next one. Another board and another hand make another thing: test each."


def _record(values: Quantities, tests: Sequence[LoadTest]) -> Iterator[Block]:
    yield (
        "Copy this below the design, fill in what was read under the full load, and take out what"
        " was not. For another step write step: half or step: proof. The fingerprint lets Reviewer"
        " tell when something behind a reading has changed since."
    )
    yield Verbatim(tuple(record_lines(values, tests)))


LOAD_TEST = Maker("load_test", "Load test", load_test_body)
