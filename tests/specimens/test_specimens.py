"""What the review says of each specimen, whole; and that `check` leaves with the right status."""

from collections import Counter

import pytest

from reviewer.command.main import main

PASSING = {"pass", "not applicable"}

# Specimen, what it is told, how many rules hold. Verdicts other than these are as bad as a miss.
SOUND = {
    "potting_bench/revision_c": (
        {
            "base.load_test": "review",
            "base.on_its_feet": "fail",  # a note: leaned on, one foot of five carries little
            "lift.crush": "review",
            "middle_seam.seam_guarded": "review",
            "ring.draws_in": "review",
            "ring.edge_in_damp_air": "fail",  # a note: its edge swells towards the side rollers
        },
        26,
    ),
    "stage_turntable": (
        {
            "disc.draws_in": "review",
            "edge_gap.shears": "review",
            "disc.turns_by_hand": "fail",  # a note: with so many people on it
        },
        9,
    ),
    "book_stand": ({"ring.draws_in": "review", "shelf.free_to_move": "review"}, 13),
    "lift_shelf": (
        {
            "frame.load_test": "review",
            "left_shaft.crush": "review",
            "right_shaft.crush": "review",
            "under_shelf.kept_out": "review",
        },
        13,
    ),
    "inch_stand": ({"head.draws_in": "review", "legs.load_test": "review"}, 15),
    "first_design": (
        {
            "box.load_test": "review",
            "box.on_its_feet": "fail",
            "ring.draws_in": "review",
        },
        11,
    ),
}

# Each fault that is drawn into revision A on purpose, by the finding that must name it.
FAULTS = {
    "apron.sags": "40 mm high, and a sack hangs on it",
    "apron.thick_enough": "one layer of 6 mm between five supports",
    "arms.bending": "a tube of 30 x 30 x 1.5",
    "base.stands": "feet too close together under too light a frame",
    "between_trays.fingers": "a gap from 12 mm on",
    "drains.holes": "a hole of 9 mm",
    "far_clamp.holds": "one M5 tightened by hand",
    "hose_arm.tip_sinks": "a long pipe, strong but soft",
    "lift.lifts_level": "16 mm over 520 mm",
    "near_clamp.long_enough": "12 mm of a shaft of 16 mm",
    "pot_ring.hold_downs_fit": "hold-downs half off the plate",
    "pot_ring.rollers_fit": "rollers half off the plate",
    "ring.centred": "two side rollers",
    "ring.rim_play": "a gap of 3 mm at the hold-downs",
    "ring.rim_sinks": "soft rollers",
    "ring.roller_load": "bolts of M5 4.6",
    "ring.rollers_close_enough": "six rollers under 12 mm",
    "ring.track_holds": "bearings 6 mm wide",
    "ring.uplift_held": "three hold-downs on narrow bearings",
    "tool_ring.stays_down": "no hold-downs, rollers far inside",
    "trays.edge_sags": "9 mm that overhangs 230 mm",
    "trays.stays_on_arm": "slid out past its middle",
    "under_middle.hands": "comes down to 40 mm with 380 N",
}

# Notes that come with the faults, and with wood.
REMARKS = ("ring.edge_in_damp_air", "ring.track_settles")

# What stands behind a fault has no verdict, and says behind which one.
HELD_BACK = {
    "apron.sags_for_years": "apron.sags",
    "apron.strong_enough": "apron.thick_enough",
    "arms.tip_sinks": "arms.bending",
    "base.on_its_feet": "base.stands",
    "near_clamp.does_not_crush": "near_clamp.long_enough",
    "near_clamp.holds": "near_clamp.long_enough",
    "trays.side_sags": "trays.edge_sags",
    "pot_ring.roller_load": "pot_ring.rollers_fit",
    "pot_ring.rollers_close_enough": "pot_ring.rollers_fit",
    "pot_ring.track_holds": "pot_ring.rollers_fit",
    "pot_ring.track_settles": "pot_ring.rollers_fit",
    "pot_ring.turns_by_hand": "pot_ring.rollers_fit",
    "pot_ring.uplift_held": "pot_ring.hold_downs_fit",
    "tool_ring.rim_sinks": "tool_ring.stays_down",
    "tool_ring.roller_load": "tool_ring.stays_down",
    "tool_ring.track_holds": "tool_ring.stays_down",
    "tool_ring.turns_by_hand": "tool_ring.stays_down",
}

ASKED_OF_A_PERSON = {
    "base.load_test",
    "lift.crush",
    "pot_ring.draws_in",
    "ring.draws_in",
    "tool_ring.draws_in",
}


def told(found) -> dict[str, str]:
    """The verdict of every finding that is not pass or not applicable, by its name."""
    assert not found.problems
    assert len({each.name for each in found.findings}) == len(found.findings)
    return {each.name: each.verdict for each in found.findings if each.verdict not in PASSING}


@pytest.mark.parametrize("name", SOUND)
def test_a_sound_specimen_is_told_this_and_no_more(name, review_of):
    found = review_of(name)
    expected, holds = SOUND[name]
    assert told(found) == expected
    assert Counter(each.verdict for each in found.findings)["pass"] >= holds


@pytest.mark.parametrize("name", SOUND)
def test_a_sound_specimen_fails_no_more_than_a_note(name, review_of):
    failed = [each.level for each in review_of(name).findings if each.verdict == "fail"]
    assert set(failed) <= {"note"}


def test_every_fault_of_revision_a_is_found_and_nothing_else(review_of):
    verdicts = (
        dict.fromkeys((*FAULTS, *REMARKS), "fail")
        | dict.fromkeys(HELD_BACK, "open")
        | dict.fromkeys(ASKED_OF_A_PERSON, "review")
    )
    assert told(review_of("potting_bench/revision_a")) == verdicts


def test_what_stands_behind_a_fault_of_revision_a_names_it(review_of):
    reasons = {
        each.name: each.open_because
        for each in review_of("potting_bench/revision_a").findings
        if each.verdict == "open"
    }
    assert reasons == {name: (f"{fault} fails",) for name, fault in HELD_BACK.items()}


def test_revision_a_marks_each_fault_in_its_text(text_of):
    assert text_of("potting_bench/revision_a").count("# Fault:") == len(FAULTS)


@pytest.mark.parametrize(
    ("name", "status"), [*((name, 0) for name in SOUND), ("potting_bench/revision_a", 1)]
)
def test_the_status_of_check(name, status, capsys, text_of, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "design.yaml").write_text(text_of(name), encoding="utf-8")
    assert main(["check", "design.yaml", "--fail-at", "should"]) == status
    assert capsys.readouterr().err == ""
