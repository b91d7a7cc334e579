"""Small kinds of the tests' own, and designs of them judged by small packs."""

from collections.abc import Callable, Mapping
from datetime import date
from textwrap import dedent

import pytest

from reviewer.deriving.derived import derive
from reviewer.judging.concession import with_concessions
from reviewer.judging.finding import Finding
from reviewer.judging.judge import judge
from reviewer.judging.pack import in_order, read_pack
from reviewer.notation.problem import render
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.register import register
from reviewer.parts.row import Choice, Count, Flag, Measure, Row
from reviewer.reading.read_design import read_design

LENGTH = Measure(above=0.0, example="400 mm")

CRATE = Kind(
    name="crate",
    says="a box that other boxes stand on",
    rows=(
        *tree(),
        *single(),
        Row("height", "m", "its height", Measure(at_least=0.0, default="300 mm")),
        Row("length", "m", "its length", LENGTH),
        Row("width", "m", "its width", LENGTH),
        Row("slats", "", "how many slats it has", Count(default=4)),
        Row("strength", "N", "load that breaks it", Measure(above=0.0, example="900 N")),
        Row("wood", "", "what it is made of", Choice(("birch", "oak"), default="birch")),
        Row("sealed", "", "whether it is nailed shut", Flag()),
        Row(
            "area",
            "m^2",
            "area of its lid",
            formula=lambda length, width: length * width,
            needs={"length": "length", "width": "width"},
        ),
    ),
)
LID = Kind(
    name="lid",
    says="a lid that lies on a crate",
    rows=(*tree(), *single(), Row("length", "m", "its length", LENGTH)),
)
KINDS = register((CRATE, LID), plug_in="tests")

Found = dict[str, Finding]


def pack(*rules: str) -> str:
    """A pack of rules, of each only what it is about: the other keys are filled in."""
    filled = []
    for rule in rules:
        lines = dedent(rule).strip().splitlines()
        keys = {line.partition(":")[0] for line in lines}
        asks = "require" not in keys
        one, other = ("asks", "rests") if asks else ("holds", "fails")
        defaults = {
            "level": "must",
            "stage": "cutting",
            "says": "look at it" if asks else "it is {demand} of {capacity}",
            "because": "it breaks",
            "source": "common practice",
            "proof": f"{{{one}: {{length: 1 m}}, {other}: {{length: 2 m}}}}",
        }
        lines += [f"{key}: {value}" for key, value in defaults.items() if key not in keys]
        filled.append("- " + "\n  ".join(lines))
    return "\n".join(filled) + "\n"


def judged(
    rules: str, sections: str, on: str = "2026-11-25", lengths: str = "lengths: mm\n"
) -> Found:
    """The findings of a pack on a design, by name; a design's file is bench.yaml."""
    read = read_pack(rules, "pack.yaml", KINDS)
    ordered, misfits = in_order([read])
    problems = (*read.problems, *misfits)
    assert not problems, "\n".join(render(problem) for problem in problems)
    text = f"design: crates\n{lengths}{sections}"
    design, wrong = read_design(text, "bench.yaml", KINDS)
    assert design is not None, "\n".join(render(problem) for problem in wrong)
    derived = derive(design)
    findings = judge(design, derived.values, derived.cases, ordered)
    conceded = with_concessions(findings, design, date.fromisoformat(on))
    named: Found = {}
    for finding in conceded:
        name = "/".join([finding.name, *finding.others])
        named[f"{name} again" if name in named else name] = finding
    return named


def refused(*packs: str) -> str:
    """What is wrong with some packs, as a person reads it."""
    read = [read_pack(text, f"pack{number or ''}.yaml", KINDS) for number, text in enumerate(packs)]
    problems = [problem for each in read for problem in each.problems]
    if not problems:
        problems = list(in_order(read)[1])
    return "\n".join(render(problem) for problem in problems)


@pytest.fixture(scope="session")
def judge_crates() -> Callable[..., Found]:
    return judged


@pytest.fixture(scope="session")
def pack_of() -> Callable[..., str]:
    return pack


@pytest.fixture(scope="session")
def refusal_of() -> Callable[..., str]:
    return refused


@pytest.fixture(scope="session")
def kinds() -> Mapping[str, Kind]:
    return KINDS
