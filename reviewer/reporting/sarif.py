"""Reviews as a log of SARIF 2.1.0 (OASIS, 27 March 2020): one run, the same text on every run.

Results are written design by design; what they refer to by number (rules, files, folders) follows
them, so that the log of many designs need not be held. One result stands on a line.
"""

from collections import Counter
from pathlib import Path
from typing import Any

from reviewer.judging.finding import ByShop, Finding
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import Problem
from reviewer.reporting.data import dumped
from reviewer.reporting.measured_words import calibrations_told
from reviewer.reporting.sarif_result import result
from reviewer.reporting.sarif_rules import (
    CALIBRATED,
    CAUTION,
    INPUT,
    SHOP,
    descriptor,
    descriptor_of,
    notification,
    tool,
)
from reviewer.reporting.sarif_text import FILE, OUTSIDE, Data, Places, bases
from reviewer.reporting.versions import version_words, versions
from reviewer.reporting.words import cautions, conceded_first

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json"
HOLDING = ("pass", "not applicable")
HEAD = f'{{"$schema": {dumped(SCHEMA)}, "version": "2.1.0", "runs": [{{"results": ['


class SarifReport:
    """A log under way.

    `start` is the folder that paths are relative to. `everything` writes the results of what holds
    and of what does not apply too: viewers show every result that they get.
    """

    def __init__(
        self, version: str, start: Path | None = None, *, everything: bool = False
    ) -> None:
        """Begin a log of a version of the program."""
        self.version = version
        self.start = start or Path.cwd()
        self.everything = everything
        self._begun = False
        self._results = 0
        self._failed = False
        self._files = _Numbered()
        self._rules = _Numbered()
        self._outside: dict[str, str] = {}
        self._notes: tuple[_Numbered, _Numbered] = (_Numbered(), _Numbered())
        self._versions = _Numbered()

    def piece(self, review: Review) -> Data:
        """Results and notes of one design, which number files and rules among themselves."""
        places = Places(self.start, _paths(review))
        stream = ("standardStream",) if review.path == "-" else ()
        places.number(review.path, ("analysisTarget", *stream))
        if review.shop is not None:
            places.number(review.shop.path, ("userSpecifiedConfiguration",))
        rules = {rule.name: rule for rule in review.rules}
        findings = [each for each in conceded_first(review.findings) if self._is_told(each)]
        described: dict[str, Data] = {}
        results, twins = [], Counter[tuple[str, ...]]()
        for finding in findings:
            rule = rules.get(finding.rule)
            key = (finding.rule, finding.part, *finding.others)
            question = rule.question if rule else ""
            results.append(result(finding, review, question, places, twins[key]))
            twins[key] += 1
            described.setdefault(
                finding.rule, descriptor(rule, places) if rule else descriptor_of(finding)
            )
        execution = [_problem(each, places) for each in review.problems]
        execution += [notification(CAUTION, "note", each) for each in cautions(review.findings)]
        return {
            "results": results,
            "rules": list(described.values()),
            "execution": execution,
            "configuration": [
                *(_change(each, places) for each in review.changes),
                *(
                    notification(CALIBRATED, "note", places.relative(each))
                    for each in calibrations_told(review.tests, review.path)
                ),
            ],
            "versions": [places.relative(version_words(each)) for each in versions(review)],
            "failed": bool(review.problems),
            "files": places.files,
        }

    def put(self, piece: Data) -> str:
        """The results of a design behind those before them, numbered as the whole log does."""
        files = [self._file(each) for each in piece["files"]]
        numbers = [self._rules.number(each) for each in piece["rules"]]
        by_name = dict(zip((each["id"] for each in piece["rules"]), numbers, strict=True))
        for notes, found in zip(self._notes, (piece["execution"], piece["configuration"]),
                                strict=True):  # fmt: skip
            for note in found:
                notes.number(_settled(note, files))
        for each in piece["versions"]:
            self._versions.number(each)
        self._failed = self._failed or piece["failed"]
        told = []
        for each in piece["results"]:
            before = "\n" if not self._results else ",\n"
            numbered = {**_settled(each, files), "ruleIndex": by_name[each["ruleId"]]}
            told.append(before + dumped(numbered))
            self._results += 1
        return self._head() + "".join(told)

    def end(self) -> str:
        """What the results refer to, and how the run went."""
        execution, configuration = self._notes
        invocation = {
            "executionSuccessful": not self._failed,
            "toolExecutionNotifications": execution.found,
            "toolConfigurationNotifications": configuration.found,
        }
        rest = {
            "tool": tool(self.version, self._rules.found),
            "invocations": [invocation],
            "artifacts": self._files.found,
            "originalUriBaseIds": bases(self._outside),
            "columnKind": "unicodeCodePoints",
            "newlineSequences": ["\r\n", "\n", "\r"],
            "defaultEncoding": "utf-8",
            "language": "en",
            "properties": {"reviewedUnder": self._versions.found},
        }
        lines = [f"{dumped(key)}: {dumped(value)}" for key, value in rest.items()]
        return self._head() + "\n], " + ",\n".join(lines) + "}]}\n"

    def _head(self) -> str:
        head = "" if self._begun else HEAD
        self._begun = True
        return head

    def _is_told(self, finding: Finding) -> bool:
        return self.everything or finding.verdict not in HOLDING

    def _file(self, file: Data) -> Data:
        """Where a file is, with its number in the whole log; a folder outside gets a name."""
        location = dict(file["location"])
        folder = location.pop("outside", None)
        if folder is not None:
            count = len(self._outside)
            name = self._outside.setdefault(folder, f"{OUTSIDE}_{count + 1}")
            location["uriBaseId"] = name
        index = self._files.number({"location": location, "roles": file["roles"]}, location)
        address = {key: value for key, value in location.items() if key != "description"}
        return {**address, "index": index}


class _Numbered:
    """Things in the order of their first coming, each once."""

    def __init__(self) -> None:
        self.found: list[Any] = []
        self._numbers: dict[str, int] = {}

    def number(self, thing: Any, key: Any = None) -> int:
        """The number of a thing; of a file that is known, its roles are added up."""
        text = dumped(thing if key is None else key)
        number = self._numbers.setdefault(text, len(self.found))
        if number == len(self.found):
            self.found.append(thing)
        elif key is not None:
            roles = self.found[number]["roles"]
            roles += [role for role in thing["roles"] if role not in roles]
        return number


def _settled(node: Any, files: list[Data]) -> Any:
    """A part of a piece in which files have the numbers of the whole log."""
    if isinstance(node, list):
        return [_settled(each, files) for each in node]
    if not isinstance(node, dict):
        return node
    if node.keys() == {FILE}:
        return files[node[FILE]]
    return {key: _settled(value, files) for key, value in node.items()}


def _paths(review: Review) -> set[str]:
    """Every path that a text of a review may name."""
    found = {review.path, *(pack.path for pack in review.packs)}
    found |= set(review.design.files) if review.design else set()
    found |= {each.place.path for each in review.problems}
    found |= {each.place.path for each in review.findings}
    return found if review.shop is None else {*found, review.shop.path}


def _problem(problem: Problem, places: Places) -> Data:
    """What is wrong with a file: the run did not review all that it was to (3.20.21)."""
    told = (
        f"{problem.what}.",
        f"Found {problem.found}." if problem.found else "",
        f"Expected {problem.expected}." if problem.expected else "",
        f"Mend: {problem.mend}." if problem.mend else "",
    )
    location = places.location(problem.place)
    note = notification(INPUT, "error", places.relative(" ".join(filter(None, told))))
    return {**note, "locations": [location]}


def _change(change: ByShop, places: Places) -> Data:
    """What a shop made of a rule or a limit."""
    location = places.location(change.place)
    told = f"{change.subject.capitalize()} {change.name}: {change.does}. {change.by}: {change.why}"
    return {**notification(SHOP, "note", places.relative(told)), "locations": [location]}
