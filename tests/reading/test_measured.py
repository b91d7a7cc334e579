"""Measurements as a design writes them: read, refused, and never more than that."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.reading.design import Measured

BENCH = """\
design: Bench
revision: B
lengths: mm
parts:
  ring: {kind: wheel, plate: {material: birch plywood, thickness: 18}, offset: 5}
  stand: {kind: wheel}
configurations: {shut: {}, open: {ring.offset: 12}}
loads:
  lean: {force: 500 N, on: ring}
  soil: {force: 300 N, on: ring}
combinations: {both: {lean: 1, soil: 1.2}}
measured:
  - {%s}
"""
SOUND = (
    "test: first, quantity: ring.offset, under: lean, configuration: open, value: 12.1 ± 0.1, "
    "by: Us, on: 2026-11-20"
)


@pytest.fixture
def one(read):
    """Reads a design with one measurement."""

    def measured(words: str) -> Measured:
        design, problems = read(BENCH % words)
        assert problems == ""
        return design.measured[0]

    return measured


def test_what_is_read(one):
    found = one(f"{SOUND}, revision: B, note: warm")
    assert (found.name, found.quantity, found.under) == ("first", "ring.offset", ("lean",))
    assert (found.configuration, found.step, found.factor, found.zeroed) == (1, "full", 1.0, False)
    quantity = found.value.quantity
    assert (quantity.low, quantity.value, quantity.high) == pytest.approx((0.012, 0.0121, 0.0122))
    assert (found.by, found.on, found.revision, found.of) == ("Us", "2026-11-20", "B", None)
    assert (found.proven, found.calibrates, found.fingerprint) == (False, None, {})
    assert found.place.line == 13


def test_what_else_may_be_said(one):
    more = 'step: proof, factor: 1.1, zero: own weight, of: a.yaml, fingerprint: "ring 0a1b2c"'
    found = one(f"{SOUND}, {more}, proven: true, calibrates: ring.offset")
    assert (found.step, found.factor, found.zeroed, found.of) == ("proof", 1.1, True, "a.yaml")
    assert (found.fingerprint, found.calibrates) == ({"ring": "0a1b2c"}, ("ring", "offset"))


@pytest.mark.parametrize(
    ("words", "under"),
    [
        ("under: [lean, soil]", ("lean", "soil")),
        ("under: both", ("both",)),
        ("under: own weight", ()),
        ("step: full", ()),
    ],
)
def test_what_stood_on_it(words, under, one):
    assert one(SOUND.replace("under: lean", words)).under == under


def test_without_a_name_it_is_called_by_its_number(one):
    assert one(SOUND.replace("test: first, ", "")).name == "measured_1"


def test_a_proof_without_a_factor_takes_the_limit(one):
    assert one(f"{SOUND}, step: proof").factor is None


REFUSED = {
    "no list": ("", "measured is a list of tables"),
    "a quantity that there is not": ("ring.offset -> ring.ofset", "ring has no such quantity"),
    "a part that there is not": ("ring.offset -> rnig.offset", "no part has this name"),
    "a quantity that is no number": ("ring.offset -> ring.plate.material", "is no number"),
    "another dimension": ("12.1 ± 0.1 -> 12 kg", "mass"),
    "a load that there is not": ("under: lean -> under: laen", "no load and no combination"),
    "a load twice": ("under: lean -> under: [lean, lean]", "under names a load twice"),
    "a combination among loads": ("under: lean -> under: [lean, both]", "stands alone"),
    "no load at all": ("under: lean -> under: []", "under names nothing"),
    "which configuration": ("configuration: open, -> ", "says in which configuration"),
    "no such configuration": ("open -> opne", "no configuration has this name"),
    "a day that there is not": ("2026-11-20 -> 2026-11-31", "not a day of the calendar"),
    "a name that is taken": ("first -> lean", "a measurement has a name of its own"),
    "no name": ("first -> First One", "cannot be the name of a measurement"),
    "a step that there is not": ("test: -> step: fulll, test:", "step does not take this word"),
    "a factor of half": ("test: -> step: half, factor: 0.4, test:", "the step half has its own"),
    "not proven": ("test: -> calibrates: ring.offset, test:", "only a proven measurement"),
    "computed": ("test: -> proven: true, calibrates: ring.rollers.peak_load, test:", "is computed"),
    "no fingerprint": ("test: -> fingerprint: 12345, test:", "this is no fingerprint"),
    "no reader": ("by: Us, -> ", "a measurement says quantity, value, by and on"),
    "a strange key": ("test: -> value_of: 3, test:", "a measurement has no field value_of"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_what_is_refused(name, read):
    change, told = REFUSED[name]
    text = BENCH % SOUND
    if change:
        before, after = change.split(" -> ")
        assert before in text
        first, second = text.split("measured:")
        text = f"{first}measured:{second.replace(before, after, 1)}"
    else:
        text = text.replace("- {", "only: {")
    design, problems = read(text)
    assert design is None
    assert told in problems
    assert set(re.findall(r"^bench\.yaml:(\d+):", problems, re.MULTILINE)) <= {"12", "13"}


def test_there_are_not_too_many(read):
    one_more = "".join(f"  - {{{SOUND.replace('first', f'no_{count}')}}}\n" for count in range(60))
    _, problems = read(BENCH % SOUND + one_more)
    assert "there are too many measurements" in problems


def test_the_nearest_right_spelling(read):
    _, problems = read(BENCH % SOUND.replace("ring.offset", "ring.rollers.peek_load"))
    assert "mend: write ring.rollers.peak_load" in problems


WORDS = st.lists(
    st.sampled_from([*re.split(r"[,:] ", SOUND), *("[", "]", "}", "null", "true", "3 kg", "zero")]),
    min_size=2,
    max_size=16,
)


@settings(max_examples=60, deadline=None)
@given(WORDS)
def test_nothing_that_is_written_there_breaks_the_reading(words):
    from reviewer.parts.registry import KINDS
    from reviewer.reading.read_design import read_design

    both = zip(words[::2], words[1::2], strict=False)
    pairs = ", ".join(f"{key}: {value}" for key, value in both)
    text = (BENCH % pairs).replace("kind: wheel", "kind: slewing_ring")
    design, problems = read_design(text, "d.yaml", KINDS)
    assert (design is None) == bool(problems)
    for each in problems:
        assert each.what
        assert each.expected


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 10**6), st.integers(0, 10**4))
def test_a_value_is_the_number_that_is_written(micrometres, band):
    from reviewer.parts.registry import KINDS
    from reviewer.reading.read_design import read_design

    text = """\
design: Lid
parts: {lid: {kind: gap, least: 30 mm}}
measured: [{quantity: lid.least, value: %s mm ± %s mm, by: Us, on: 2026-11-20}]
"""
    design, problems = read_design(text % (micrometres / 1e3, band / 1e3), "d.yaml", KINDS)
    assert not problems
    quantity = design.measured[0].value.quantity
    assert quantity.value == pytest.approx(micrometres * 1e-6, rel=1e-12)
    assert quantity.high - quantity.value == pytest.approx(band * 1e-6, rel=1e-9, abs=1e-15)
