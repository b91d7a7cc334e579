"""Every remedy offered is made in the file's own text, which is then reviewed as a whole."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from reviewer.judging.finding import Finding
from reviewer.judging.remedies import Remedy
from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.reviewing import review
from reviewer.stock.sections import inch_sections, sections_of
from reviewer.studying.remedy import is_searched, with_remedies
from reviewer.studying.rewriting import rewritten
from reviewer.studying.study import key_of

Reviewed = Callable[[str], Review]
DESIGNS = Path(__file__).parent / "designs"
SPECIMENS = Path(__file__).parents[2] / "specimens"
STALE = "design.concession_stands"

TEXTS = {
    path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
    for folder in (DESIGNS, SPECIMENS)
    for path in sorted(folder.rglob("*.yaml"))
    if "shop" not in path.parts
    and path.name != "shop.yaml"  # those are of folders
    and "\nbased_on:" not in path.read_text(encoding="utf-8")  # a text alone is based on no file
}
WEAK_ARM = TEXTS["weak_arm.yaml"]
THIN_SKIRT = TEXTS["thin_skirt.yaml"]
INCH_SHAFT = TEXTS["inch_shaft.yaml"]
LATE_SLIDE = TEXTS["late_slide.yaml"]


def failed(review: Review) -> dict[tuple[str, str, tuple[str, ...]], Finding]:
    return {
        key_of(each): each
        for each in review.findings
        if each.verdict == "fail" and each.rule != STALE
    }


@pytest.mark.parametrize("name", TEXTS)
def test_each_remedy_made_in_the_file_mends_and_breaks_nothing(
    name: str, rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    text = TEXTS[name]
    before = reviewed(text)
    for finding in with_remedies(before, rules).findings:
        assert (finding.remedies is not None) == is_searched(finding)
        for remedy in finding.remedies.offered if finding.remedies else ():
            after = reviewed(rewritten(text, remedy.changes))
            mended = next(each for each in after.findings if key_of(each) == key_of(finding))
            assert mended.verdict == "pass"
            assert mended.utilisation == pytest.approx(remedy.utilisation, rel=1e-9)
            assert failed(after).keys() < failed(before).keys()


@pytest.mark.parametrize("name", TEXTS)
def test_what_is_rejected_mends_and_breaks_what_it_names(
    name: str, rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    text = TEXTS[name]
    before = reviewed(text)
    for finding in with_remedies(before, rules).findings:
        for remedy in finding.remedies.rejected if finding.remedies else ():
            after = reviewed(rewritten(text, remedy.changes))
            mended = next(each for each in after.findings if key_of(each) == key_of(finding))
            assert mended.verdict == "pass"
            broken = {
                each.name
                for each in after.findings
                if each.verdict == "fail" and key_of(each) not in failed(before)
            }
            opened = {
                each.name
                for each, was in zip(after.findings, before.findings, strict=False)
                if each.verdict == "open" and was.verdict in ("pass", "review", "not applicable")
            }
            assert broken <= set(remedy.breaks) <= broken | opened
            assert remedy.breaks


def offered(text: str, name: str, rules: tuple[Rule, ...], reviewed: Reviewed) -> list[Remedy]:
    review = with_remedies(reviewed(text), rules)
    finding = next(each for each in review.findings if each.name == name)
    assert finding.remedies is not None
    return list(finding.remedies.offered)


def written(remedy: Remedy) -> list[tuple[str, str, str]]:
    return [(each.field, each.old, each.new) for each in remedy.changes]


def mends(text: str, name: str, before: str, reviewed: Reviewed) -> bool:
    """Whether a finding passes in a changed file, and nothing fails that did not before."""
    after = reviewed(text)
    found = next(each for each in after.findings if each.name == name)
    return found.verdict == "pass" and failed(after).keys() <= failed(reviewed(before)).keys()


def test_a_tube_becomes_the_lightest_one_that_is_sold_and_does(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    # Against every tube of the table, each reviewed as a whole: of those that are no lighter than
    # the present one, the offered one is the lightest that mends.
    def area(sides: tuple[float, float, float]) -> float:
        width, height, wall = sides
        return width * height - (width - 2 * wall) * (height - 2 * wall)

    def with_tube(sides: tuple[float, float, float]) -> str:
        listed = ", ".join(f"{each:g}" for each in sides)
        return WEAK_ARM.replace("tube: [30, 30, 1.5]", f"tube: [{listed}]")

    tubes = sorted(
        {
            (*sides, row.wall * 1e3)
            for shape in ("square tube", "rectangular tube")
            for row in sections_of(shape)
            for sides in ((row.width * 1e3, row.height * 1e3), (row.height * 1e3, row.width * 1e3))
        },
        key=area,
    )
    heavier = [each for each in tubes if area(each) >= area((30, 30, 1.5))]
    lightest = next(
        each for each in heavier if mends(with_tube(each), "arm.bending", WEAK_ARM, reviewed)
    )
    found = offered(WEAK_ARM, "arm.bending", rules, reviewed)
    best = next(each for each in found if each.changes[0].field.startswith("section"))
    assert area(lightest) == 25 * 50 - 21 * 46
    assert rewritten(WEAK_ARM, best.changes) == with_tube(lightest)


def test_a_tube_in_inches_becomes_one_that_is_sold_in_inches(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    inches = WEAK_ARM.replace("tube: [30, 30, 1.5]", "tube: [1 in, 1 in, 1/16 in]")
    found = offered(inches, "arm.bending", rules, reviewed)
    best = next(each for each in found if each.changes[0].field.startswith("section"))
    sold = {
        frozenset((row.width, row.height))
        for shape in ("square tube", "rectangular tube")
        for row in sections_of(shape, inch_sections())
    }
    text = rewritten(inches, best.changes)
    given = reviewed(text).design.parts["arm"].given
    sides = frozenset(given[f"section.{each}"].value for each in ("width", "height"))
    assert any(pytest.approx(sorted(each)) == sorted(sides) for each in sold)
    assert " in" in best.changes[0].new


def test_a_length_goes_only_as_far_as_it_must(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    found = offered(WEAK_ARM, "arm.bending", rules, reviewed)
    reach = next(each for each in found if each.changes[0].field == "reach")
    size = int(reach.changes[0].new)
    assert size % 5 == 0
    shorter, longer = (
        WEAK_ARM.replace("reach: 700", f"reach: {each}") for each in (size, size + 5)
    )
    assert mends(shorter, "arm.bending", WEAK_ARM, reviewed)
    assert not mends(longer, "arm.bending", WEAK_ARM, reviewed)


def test_a_skirt_needs_the_next_sheet_and_keeps_its_tolerance_and_quotes(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    # Thickness by the formula of the beam, (F L^3 / (4 E h w))^(1/3), is between 9 mm and 12 mm.
    found = offered(THIN_SKIRT, "apron.thick_enough", rules, reviewed)
    assert written(found[0]) == [("thickness", "6 mm ± 0.3 mm", "12 mm ± 0.3 mm")]
    assert 'thickness: "12 mm ± 0.3 mm"' in rewritten(THIN_SKIRT, found[0].changes)


def test_inches_stay_inches(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    review = with_remedies(reviewed(INCH_SHAFT), rules)
    changes = [
        change
        for finding in review.findings
        if finding.remedies
        for remedy in finding.remedies.offered
        for change in remedy.changes
    ]
    assert [change.new for change in changes if change.field == "diameter"] == ["7/8"]
    thinner = INCH_SHAFT.replace("diameter: 1/2", "diameter: 3/4")
    assert not mends(thinner, "rod.strong_enough", INCH_SHAFT, reviewed)
    assert all(re.fullmatch(r"\d+|\d+/\d+|\d+ \d+/\d+", change.new) for change in changes)


def test_a_value_that_a_configuration_gives_is_changed_where_it_stands(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    found = offered(LATE_SLIDE, "trays.stays_on_arm", rules, reviewed)
    offset = next(each for each in found if each.changes[0].field == "offset")
    assert offset.changes[0].place.line == len(LATE_SLIDE.splitlines())
    assert "trays.offset: " in rewritten(LATE_SLIDE, offset.changes).splitlines()[-1]


def test_what_a_part_calls_fixed_stays(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    held = WEAK_ARM.replace("    reach: 700\n", "    reach: 700\n    fixed: reach, section\n")
    review = with_remedies(reviewed(held), rules)
    finding = next(each for each in review.findings if each.name == "arm.bending")
    assert finding.remedies is not None
    assert finding.remedies.offered == ()
    assert "the file gives none of the values" in finding.remedies.why


def test_a_sound_design_is_left_alone(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    sound = reviewed(WEAK_ARM.replace("200 N", "2 N"))
    assert not any(is_searched(each) for each in sound.findings)
    assert with_remedies(sound, rules) is sound


def test_a_value_of_a_file_that_the_design_is_based_on_is_changed_there(
    tmp_path: Path, rules: tuple[Rule, ...]
) -> None:
    base, longer = tmp_path / "base.yaml", tmp_path / "longer.yaml"
    base.write_text(WEAK_ARM, encoding="utf-8")
    variant = "design: Longer lamp arm\nbased_on: base.yaml\nparts:\n  arm: {reach: 800 mm}\n"
    longer.write_text(variant, encoding="utf-8")
    before = with_remedies(review(longer), rules)
    finding = next(each for each in before.findings if each.name == "arm.bending")
    assert finding.remedies is not None
    files = {
        Path(change.place.path).name
        for remedy in finding.remedies.offered
        for change in remedy.changes
    }
    assert files == {"base.yaml", "longer.yaml"}
    for remedy in finding.remedies.offered:
        for path, text in ((base, WEAK_ARM), (longer, variant)):
            own = [each for each in remedy.changes if Path(each.place.path).name == path.name]
            path.write_text(rewritten(text, own), encoding="utf-8")
        mended = next(each for each in review(longer).findings if each.name == "arm.bending")
        assert mended.verdict == "pass"
        assert mended.utilisation == pytest.approx(remedy.utilisation, rel=1e-9)
