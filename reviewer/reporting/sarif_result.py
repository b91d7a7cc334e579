"""A finding as a result of SARIF 2.1.0."""

from collections.abc import Iterator
from hashlib import sha256
from math import isnan

from reviewer.judging.finding import Finding, Verdict
from reviewer.judging.remedies import Change, Remedy
from reviewer.judging.reviewed import Review
from reviewer.reporting.data import finding_data
from reviewer.reporting.limits import shown_ratio
from reviewer.reporting.remedy_words import reached_words, remedy_words, wanting_words
from reviewer.reporting.sarif_flow import code_flow
from reviewer.reporting.sarif_rules import LEVELS
from reviewer.reporting.sarif_text import Data, Places, message
from reviewer.reporting.study_words import told_of
from reviewer.reporting.text_finding import (
    NOT_SEARCHED,
    hazard_of,
    measure,
    what_to_change,
)
from reviewer.reporting.words import HOLD_WORDS, LEVEL_WORDS, STAGE_WORDS, sentence
from reviewer.studying.trace import trace_of

KINDS: dict[Verdict, str] = {
    "fail": "fail",
    "open": "open",
    "review": "review",
    "pass": "pass",
    "not applicable": "notApplicable",
}
FINGERPRINT = "rulePartAndOthers/v1"
PROPERTIES = ("part", "with", "verdict", "stage", "hazard", "utilisation", "demand", "capacity",
              "case", "no_remedy", "open_because", "tolerance")  # fmt: skip


def result(finding: Finding, review: Review, question: str, places: Places, twin: int) -> Data:
    """A finding of a review; `twin` counts those before it of the same rule on the same parts.

    The level is "none" unless the kind is "fail" (3.27.10). Passes have no flow: nobody follows
    the numbers of all that holds.
    """
    holds = finding.verdict in ("pass", "not applicable")
    words = _words(finding, review.path, question)
    logical = {"logicalLocations": [{"fullyQualifiedName": finding.part, "kind": "object"}]}
    others = list(_others(finding, review, places))
    suppressions = list(_suppressions(finding, places))
    fixes = [] if finding.concession else list(_fixes(finding, review.path, places))
    flows = [] if holds else _flows(finding, review, places)
    return {
        "ruleId": finding.rule,
        "kind": KINDS[finding.verdict],
        "level": LEVELS[finding.level] if finding.verdict == "fail" else "none",
        "message": message(places.relative(words)),
        "locations": [{**places.location(finding.place), **logical}],
        **({"relatedLocations": others} if others else {}),
        **({"codeFlows": flows} if flows else {}),
        **({"suppressions": suppressions} if suppressions else {}),
        **({"fixes": fixes} if fixes else {}),
        "partialFingerprints": {FINGERPRINT: _fingerprint(finding, twin)},
        "properties": {key: value for key, value in finding_data(finding).items()
                       if key in PROPERTIES},
    }  # fmt: skip


def _words(finding: Finding, own: str, question: str) -> str:
    """What a person reads, the sentence to act on first."""
    if finding.verdict == "pass":
        ratio = finding.utilisation
        used = "" if isnan(ratio) else f"{shown_ratio(ratio)} of the limit is used. "
        return f"Holds. {used}{finding.message}"
    if finding.verdict == "not applicable":
        return f"Does not apply here. {question}"
    if finding.verdict == "open":
        reasons = "; ".join(finding.open_because) or "no reason is known"
        holds = f"It {HOLD_WORDS[finding.level]} {STAGE_WORDS[finding.stage]}{hazard_of(finding)}."
        return f"Not reviewed: {reasons}. {question} {holds}"
    if finding.verdict == "review":
        asked = f"A person must judge this {STAGE_WORDS[finding.stage]}{hazard_of(finding)}."
        return " ".join([question, finding.message, _why(finding), asked])
    return " ".join(filter(None, _of_fail(finding, own)))


def _of_fail(finding: Finding, own: str) -> Iterator[str]:
    concession, by_shop = finding.concession, finding.by_shop
    remedies = finding.remedies or NOT_SEARCHED
    if concession is not None:
        until = f"until {concession.until}" if concession.until else "with no end"
        yield f"{concession.by} accepts this {until}: {sentence(concession.why)}"
    elif by_shop is not None and by_shop.silences:
        yield f"{by_shop.by} has silenced this: {sentence(by_shop.why)}"
    else:
        yield f"{what_to_change(finding, own)}."
        for other in remedies.offered[1:]:
            yield f"Or {remedy_words(other, own)}."
    yield finding.message
    yield _why(finding)
    level = f"{LEVEL_WORDS[finding.level]} {STAGE_WORDS[finding.stage]}{hazard_of(finding)}"
    yield sentence(": ".join(filter(None, [level, measure(finding)])))
    yield reached_words(remedies)
    yield from wanting_words(remedies, own)
    yield from told_of(finding)


def _why(finding: Finding) -> str:
    return f"Why: {finding.because}" if finding.because else ""


def _others(finding: Finding, review: Review, places: Places) -> Iterator[Data]:
    """The other parts that a finding is of."""
    for name in finding.others:
        part = review.design.parts.get(name) if review.design else None
        if part is not None:
            yield {**places.location(part.place), "message": message(name)}


def _flows(finding: Finding, review: Review, places: Places) -> list[Data]:
    """The chain of numbers behind it, if there is one."""
    step = trace_of(review, finding)
    return [code_flow(step, places)] if step.inputs else []


def _suppressions(finding: Finding, places: Places) -> Iterator[Data]:
    """A concession stands in the design itself; what a shop silences, in a file beside it."""
    concession, by_shop = finding.concession, finding.by_shop
    if concession is not None:
        until = f" (until {concession.until})" if concession.until else ""
        yield {
            "kind": "inSource",
            "status": "accepted",
            "justification": f"{concession.by}: {concession.why}{until}",
            "location": places.location(concession.place),
        }
    if by_shop is not None and by_shop.silences:
        yield {
            "kind": "external",
            "status": "accepted",
            "justification": f"{by_shop.by}: {by_shop.why}",
            "location": places.location(by_shop.place),
        }


def _fixes(finding: Finding, own: str, places: Places) -> Iterator[Data]:
    """Each remedy that is a change of one value, as what to write in its place."""
    for remedy in finding.remedies.offered if finding.remedies else ():
        if len(remedy.changes) == 1:
            yield _fix(remedy, remedy.changes[0], own, places)


def _fix(remedy: Remedy, change: Change, own: str, places: Places) -> Data:
    found = places.location(change.place)["physicalLocation"]
    inserted = {"text": f"{change.quote}{change.new}{change.quote}"}
    replacement = {"deletedRegion": found["region"], "insertedContent": inserted}
    return {
        "description": message(places.relative(f"Change {remedy_words(remedy, own)}.")),
        "artifactChanges": [
            {"artifactLocation": found["artifactLocation"], "replacements": [replacement]}
        ],
    }


def _fingerprint(finding: Finding, twin: int) -> str:
    """What stays the same when lines move: the rule, the part, the others of a pair."""
    parts = [finding.rule, finding.part, *finding.others, *([str(twin)] if twin else [])]
    return sha256("\n".join(parts).encode("utf-8", "surrogatepass")).hexdigest()
