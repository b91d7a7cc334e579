"""Rules as SARIF describes them, and the tool that judges by them."""

from collections.abc import Sequence

from reviewer.judging.finding import Finding, Level
from reviewer.judging.rule import Rule
from reviewer.reporting.sarif_text import Data, Places, message
from reviewer.reporting.words import HOLD_WORDS, STAGE_WORDS, sentence

LEVELS: dict[Level, str] = {"must": "error", "should": "warning", "note": "note"}
INPUT, SHOP, CAUTION = "input_not_read", "changed_by_shop", "caution"
CALIBRATED = "calibrated"
NOTIFICATIONS = (
    (INPUT, "A file, or a part of one, could not be read, so that it was not reviewed."),
    (SHOP, "A shop has its own way with a rule or a limit."),
    (CAUTION, "What a computed review does not see."),
    (CALIBRATED, "A measurement stands in for a value of the file."),
)
ABOUT = (
    "Reviews designs of moving furniture and shop machines before the wood is cut. It computes how "
    "a design will behave and says what holds, what fails and by how much, and what mends it."
)


def descriptor(rule: Rule, places: Places) -> Data:
    """A rule: what it asks, why, what to change, by what source, and when it matters."""
    change = f"To change: {', '.join(rule.change)}." if rule.change else ""
    requires = f"Requires {rule.requires}." if rule.requires else "A person must judge it."
    told = (
        sentence(f"It {HOLD_WORDS[rule.level]} {STAGE_WORDS[rule.stage]}"),
        requires,
        rule.because,
        change,
        f"Source: {rule.source}",
    )
    return {
        "id": rule.name,
        "shortDescription": message(rule.question or rule.because),
        "fullDescription": message(rule.because),
        "help": message(" ".join(filter(None, told))),
        "defaultConfiguration": {"level": LEVELS[rule.level]},
        "properties": {
            "stage": rule.stage,
            "hazard": rule.hazard,
            "source": rule.source,
            "requires": rule.requires or None,
            "behind": list(rule.behind),
            "pack": places.relative(rule.place.path),
            "tags": [STAGE_WORDS[rule.stage], *filter(None, [rule.hazard])],
        },
    }


def descriptor_of(finding: Finding) -> Data:
    """What a finding says of a rule that is in no pack."""
    return {
        "id": finding.rule,
        "shortDescription": message(finding.because),
        "fullDescription": message(finding.because),
        "help": message(f"{finding.because} Source: {finding.source}"),
        "defaultConfiguration": {"level": LEVELS[finding.level]},
        "properties": {"stage": finding.stage, "hazard": finding.hazard, "source": finding.source},
    }


def tool(version: str, rules: Sequence[Data]) -> Data:
    """The program, the rules of its results and its kinds of notes."""
    notifications = [
        {"id": name, "shortDescription": message(says)} for name, says in NOTIFICATIONS
    ]
    return {
        "driver": {
            "name": "Reviewer",
            "version": version,
            "language": "en",
            "shortDescription": message(ABOUT.split(". ")[0] + "."),
            "fullDescription": message(ABOUT),
            "rules": list(rules),
            "notifications": notifications,
        }
    }


def notification(name: str, level: str, text: str) -> Data:
    """A note on the run, of one of the kinds that the tool describes."""
    index = [known for known, _ in NOTIFICATIONS].index(name)
    return {
        "descriptor": {"id": name, "index": index},
        "level": level,
        "message": message(text),
    }
