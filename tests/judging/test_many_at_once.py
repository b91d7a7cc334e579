"""Many designs reviewed at once are what each comes to alone: the same text, to the last digit."""

import random
import sys
from pathlib import Path

import pytest

from reviewer.judging.in_force import builtin_in_force
from reviewer.reporting.data import JsonReport
from reviewer.reporting.sheet import Style
from reviewer.reporting.text import TextReport
from reviewer.reviewing import review_under
from reviewer.reviewing_many import Task, review_many

sys.path.insert(0, str(Path(__file__).parents[1] / "bench"))
from many_designs import FROM, SPECIMENS, write_designs

Source = tuple[bytes, str]


@pytest.fixture(scope="module")
def sources(tmp_path_factory: pytest.TempPathFactory) -> list[Source]:
    """Distinct designs in no order, and specimens of which each has a structure of its own."""
    folder = tmp_path_factory.mktemp("many")
    paths = [*write_designs(folder / "varied", 24), *(SPECIMENS / name for name in FROM[:3])]
    found = [(path.read_bytes(), path.name) for path in paths]
    random.Random(11).shuffle(found)
    return found


def pieces(found: list[object]) -> list[list[object]]:
    in_force = builtin_in_force()
    reports = [JsonReport(), TextReport(Style(80), in_force.questions, everything=True)]
    return [[report.piece(each) for report in reports] for each in found]  # type: ignore[arg-type]


def at_once(sources: list[Source]) -> list[list[object]]:
    in_force = builtin_in_force()
    return pieces(list(review_many([Task(in_force, *each) for each in sources])))


def test_each_review_is_that_of_its_design_alone(sources: list[Source]) -> None:
    alone = [review_under(builtin_in_force(), *each) for each in sources]
    assert at_once(sources) == pieces(list(alone))


def test_the_order_of_the_files_changes_nothing(sources: list[Source]) -> None:
    assert at_once(sources[::-1]) == at_once(sources)[::-1]


def test_a_design_that_cannot_be_read_or_stacked_is_among_them(sources: list[Source]) -> None:
    """Of two designs alike in structure, one leaves a value unknown that an object is made of."""
    text = (SPECIMENS / "first_design.yaml").read_text("utf-8")
    more = [
        text.replace("birch plywood", "MDF"),
        text.replace("thickness: 18", "thickness: unknown"),
        text.replace("diameter: 400", "diameter: 400 mn"),
        text.replace("count: 8", "count: 7").replace("gap: 0.2}", "gap: 0.1}"),
        text.replace("mass: 30 kg", "mass: 3000 kg"),
    ]
    mixed = [*sources[:3], *((each.encode(), f"m{k}.yaml") for k, each in enumerate(more))]
    alone = [review_under(builtin_in_force(), *each) for each in mixed]
    assert at_once(mixed) == pieces(list(alone))


def test_what_a_study_asks_of_one_of_many_is_there(sources: list[Source]) -> None:
    """Remedies are searched on the values of the one design, which are computed when asked for."""
    from reviewer.studying.remedy import with_remedies

    in_force = builtin_in_force()
    many = review_many([Task(in_force, *each) for each in sources])
    failing = [
        number
        for number, each in enumerate(many)
        if each is not None and any(one.verdict == "fail" for one in each.findings)
    ][:1]
    assert failing
    for number in failing:
        alone = review_under(in_force, *sources[number])
        found = [
            with_remedies(each, in_force.rules, in_force.tables)
            for each in (alone, many[number])
            if each is not None
        ]
        assert pieces([found[0]]) == pieces([found[1]])
