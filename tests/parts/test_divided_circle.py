"""Divided circles end to end: which mark is out, by how much, which way, and what is in doubt.

Lengths are those of marks placed by Pythagoras; ISO 273 and ASME Y14.5 for what is permitted.
"""

import math

import pytest

COUNT, CIRCLE = 10, 460.0
RING = """
  ring:
    kind: slewing_ring
    carried_by: base
    plate: {material: birch plywood, thickness: 18, diameter: 560}
    carry: {bearing: "6001", count: 10, circle: 460, from: 9 deg}
    hold_down: {bearing: "6000", count: 5, circle: 440, gap: 0.15}
    side: {bearing: "6000", count: 5, gap: 0.05}
"""


def places(offsets, outward=()):
    """Marks in millimetres, some of them off along the circle and some across it."""
    found = []
    for mark in range(1, COUNT + 1):
        angle = 2 * math.pi * (mark - 1) / COUNT + dict(offsets).get(mark, 0.0) / (CIRCLE / 2)
        radius = CIRCLE / 2 + dict(outward).get(mark, 0.0)
        found.append((radius * math.cos(angle), radius * math.sin(angle)))
    return found


def measured(offsets=(), outward=(), steps=(3,), misread=0.0):
    """What is measured between such marks: chords, and diagonals over some marks."""
    at = places(offsets, outward)
    chords = [math.dist(at[k], at[(k + 1) % COUNT]) for k in range(COUNT)]
    chords[4] += misread
    across = [
        f"[{k + 1}, {(k + step) % COUNT + 1}, {math.dist(at[k], at[(k + step) % COUNT]):.4f}]"
        for step in steps
        for k in range(COUNT)
    ]
    diagonals = f", diagonals: [{', '.join(across)}]" if across else ""
    return f"measured: {{chords: [{', '.join(f'{each:.4f}' for each in chords)}]{diagonals}}}"


def marks(*more: str) -> str:
    fields = ", ".join(("kind: divided_circle", f"count: {COUNT}", f"circle: {CIRCLE}", *more))
    return f"\n  marks: {{{fields}}}\n"


def test_chord_of_ten_marks(asked):
    """D sin 18 deg."""
    found = asked(marks())
    assert found("marks.chord") == pytest.approx(0.46 * math.sin(math.pi / 10), rel=1e-12)
    assert found("marks.step") == pytest.approx(math.radians(36))


def test_count_and_circle_follow_from_the_part(asked):
    found = asked(RING + "  marks: {kind: divided_circle, of: ring, group: carry}\n")
    assert found("marks.circle") == 0.46
    assert found("marks.from") == pytest.approx(math.radians(9))
    assert found("marks.chord") == pytest.approx(0.46 * math.sin(math.pi / 10))
    other = asked(RING + "  marks: {kind: divided_circle, of: ring, group: hold_down}\n")
    assert other("marks.chord") == pytest.approx(0.44 * math.sin(math.pi / 5))
    none = asked(RING + "  marks: {kind: divided_circle, of: ring}\n")
    assert none.reasons("marks.circle")


def test_what_is_permitted_is_what_the_holes_leave(asked):
    """ISO 273: M12 in 13.5 mm; half of H - F as a radius. Without a bolt the limit says it."""
    assert asked(marks("bolt: M12x50"))("marks.permitted") == pytest.approx(0.75e-3)
    assert asked(marks("bolt: M8x50", "holes: fine"))("marks.permitted") == pytest.approx(0.2e-3)
    assert asked(marks())("marks.permitted") == pytest.approx(0.5e-3)
    assert asked(marks())("marks.chord_within") == pytest.approx(1e-3)


def test_set_directly_or_stepped_off(asked):
    """sqrt(2) 0.3 mm, and nine steps of 0.3 mm over cos 18 deg."""
    direct, stepped = asked(marks()), asked(marks("set_by: stepped"))
    assert direct("marks.setting.error") == pytest.approx(0.3e-3 * math.sqrt(2))
    assert direct.verdict("marks.can_be_set") == "pass"
    assert stepped("marks.setting.error") == pytest.approx(9 * 0.3e-3 / math.cos(math.pi / 10))
    assert stepped.verdict("marks.can_be_set") == "fail"
    asks = stepped("marks.setting.asked")
    mended = asked(marks("set_by: stepped", f"set_within: {asks * 999:.5f} mm"))
    assert mended.verdict("marks.can_be_set") == "pass"


def test_marks_in_place_pass(asked):
    found = asked(marks(measured(), "permitted: 0.6"))
    for rule in ("lengths_agree", "marks_in_place"):
        assert found.verdict(f"marks.{rule}") == "pass"
    assert found.verdict("marks.marks_in_doubt") == "not applicable"
    assert found("marks.worst.error") == pytest.approx(0.0, abs=1e-7)


@pytest.mark.parametrize(("mark", "off", "towards"), [(4, 1.6, 3), (1, 1.6, 10), (10, -1.4, 1)])
def test_a_mark_along_the_circle_is_named_with_the_way_back(asked, mark, off, towards):
    found = asked(marks(measured({mark: off})))
    assert found.verdict("marks.marks_in_place") == "fail"
    assert found("marks.worst.mark") == mark
    assert found("marks.worst.along") == pytest.approx(abs(off) * 1e-3, rel=0.02)
    assert found("marks.worst.towards") == towards
    assert found("marks.out") == 1
    assert f"Mark {mark} stands" in found.says("marks.marks_in_place")
    assert f"towards mark {towards}" in found.says("marks.marks_in_place")


@pytest.mark.parametrize(("off", "way"), [(2.5, "inward"), (-2.5, "outward")])
def test_a_mark_off_the_circle_is_moved_across_it(asked, off, way):
    """Where the scribed circle is hardly trusted; 2/n of it is taken for a shift of all."""
    trusted = "scribed: {marks_within: 3, radius_within: 1}"
    found = asked(marks(measured(outward={6: off}, steps=(2, 3, 4)), trusted))
    assert found.verdict("marks.marks_in_place") == "fail"
    assert found("marks.worst.mark") == 6
    assert found("marks.worst.across") == pytest.approx(2.5e-3 * (1 - 2 / COUNT), rel=0.01)
    assert f" {way}. " in found.says("marks.marks_in_place")


def test_two_marks_out_do_not_accuse_the_others(asked):
    found = asked(marks(measured({3: 2.0, 8: 1.5})))
    assert found("marks.out") == 2
    assert found("marks.doubtful") == 0
    assert "Marks out of place: 3 and 8, of 10." in found.says("marks.marks_in_place")


def test_a_mark_near_the_limit_is_for_a_person(asked):
    found = asked(marks(measured({4: 0.6})))
    assert found.verdict("marks.marks_in_place") == "pass"
    assert found.verdict("marks.marks_in_doubt") == "review"
    assert found("marks.doubtful") == 1
    sharper = marks(measured({4: 0.6}).replace("chords", "within: 0.05, scale: 0, chords"),
                    "scribed: {marks_within: 0.05, radius_within: 0}")  # fmt: skip
    assert asked(sharper).verdict("marks.marks_in_place") == "fail"


def test_a_misread_chord_is_no_mark_out_of_place(asked):
    found = asked(marks(measured(misread=4.0)))
    assert found.verdict("marks.lengths_agree") == "fail"
    assert found.verdict("marks.marks_in_place") == "open"
    assert "Measure again the length from mark 5 to mark 6" in found.says("marks.lengths_agree")


def test_chords_alone_cannot_tell_which_was_misread(asked):
    found = asked(marks(measured(steps=(), misread=8.0)))
    assert found.verdict("marks.lengths_agree") == "fail"
    assert "every length" in found.says("marks.lengths_agree")


def test_lengths_that_do_not_fit_the_marks_leave_it_open(asked):
    few = asked(marks("measured: {chords: [142, 142, 142]}"))
    assert few.verdict("marks.marks_in_place") == "open"
    assert any("as many chords as there are marks" in each for each in
               few.reasons("marks.worst.error"))  # fmt: skip
    strange = asked(marks("measured: {diagonals: [[1, 11, 300]]}"))
    assert strange.verdict("marks.marks_in_place") == "open"


def test_diagonals_alone_that_settle_nothing_leave_it_open(asked):
    found = asked(marks("measured: {diagonals: [[1, 4, 372]]}"))
    assert found.verdict("marks.marks_in_place") == "open"
    assert any("is not settled by the lengths" in each for each in
               found.reasons("marks.worst.error"))  # fmt: skip


def test_nothing_measured_is_not_judged(asked):
    found = asked(marks())
    for rule in ("lengths_agree", "marks_in_place", "marks_in_doubt"):
        assert found.verdict(f"marks.{rule}") == "not applicable"
