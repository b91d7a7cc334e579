"""Small kinds of the tests' own: reading must not depend on the kinds that come with Reviewer."""

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from reviewer.notation.problem import Problem, render
from reviewer.notation.units import UNITS
from reviewer.parts.kind import Kind
from reviewer.parts.row import (
    Choice,
    Choices,
    Count,
    Date,
    Flag,
    Measure,
    PartName,
    Row,
    Shape,
    Stock,
    Text,
)
from reviewer.reading.context import Context
from reviewer.reading.design import Design, GivenValue
from reviewer.reading.events import read_yaml
from reviewer.reading.fields import read_fields
from reviewer.reading.read_design import read_design
from reviewer.reading.tree import Table

SHAPES = (
    ("tube", ("section.width", "section.height", "section.wall")),
    ("round", ("section.diameter",)),
)
SIDES = ("width", "height", "wall", "diameter")

WHEEL = Kind(
    name="wheel",
    says="a plate that turns on rollers",
    turns=True,
    rows=(
        Row("carried_by", "", "what carries it", PartName(several=True)),
        Row("plate.material", "", "its board", Stock("materials", example="birch plywood")),
        Row("plate.thickness", "m", "thickness", Measure(above=0.0, at_most=0.1, example="18 mm")),
        Row("plate.diameter", "m", "diameter", Measure(above=0.0)),
        Row("rollers.count", "", "how many rollers", Count(default=8, at_least=3, at_most=24)),
        Row("rollers.bearing", "", "roller", Stock("bearings", example='"6001"')),
        Row(
            "rollers.gap",
            "m",
            "gap under a roller",
            Measure(
                default="0.1 mm",
                at_least=0.0,
                at_most=0.005,
                words=(("touching", "0 mm"),),
                unknown=("0.1 mm", "0.3 mm"),
            ),
        ),
        Row("rollers.peak_load", "N", "load of the busiest roller"),
        Row("bolt", "", "bolt of a roller", Stock("fasteners", example="M8x40")),
        Row("friction", "1", "friction", Measure(at_least=0.0, below=1.0, example="0.3")),
        Row("modulus", "Pa", "modulus", Measure(above=0.0, example="9 GPa")),
        Row("turned", "rad", "azimuth of the first roller", Measure(default="0 deg")),
        Row("room", "K", "temperature", Measure(at_least=253.15, at_most=323.15)),
        Row("drive", "", "what turns it", Choice(("hand", "crank"), default="hand")),
        Row("users", "", "who uses it", Choices(("adults", "children"), default=("adults",))),
        Row("covered", "", "whether it is covered", Flag()),
        Row("checked", "", "day of the last check", Date()),
        Row("label", "", "what is written on it", Text()),
        Row("beside", "", "its neighbour", PartName()),
        Row("section", "", "cross-section of its ring", Shape(SHAPES)),
        *(Row(f"section.{side}", "m", side, Measure(above=0.0), only=True) for side in SIDES),
        Row("at", "", "where it stands", Choice(("middle", "edge"), default="middle")),
        Row("at.x", "m", "plan position", Measure()),
        Row("offset", "m", "travel", Measure(at_least=0.0)),
    ),
)
SLOT = Kind(
    name="slot",
    says="an opening between parts",
    carries_load=False,
    rows=(
        Row("between", "", "its sides", PartName(several=True)),
        Row("width", "m", "width", Measure(at_least=0.0, example="6 mm")),
    ),
)
FACTS = Kind(
    name="design",
    says="one revision of one thing",
    rows=(
        Row("design", "", "its name", Text()),
        Row("revision", "", "its revision", Text()),
        Row("lengths", "", "unit of bare numbers", Choice(("mm", "cm", "m", "in"))),
        Row("service", "", "who uses it", Choice(("public", "private"), default="private")),
    ),
)
LOAD = Kind(
    name="load",
    says="a force on a part",
    rows=(
        Row("force", "N", "size", Measure(at_least=0.0, example="500 N")),
        Row("mass", "kg", "mass", Measure(at_least=0.0, example="60 kg")),
        Row("on", "", "the part that it stands on", PartName()),
        Row("over", "", "the part that it is spread over", PartName()),
        Row("at", "", "where", Choice(("rim", "centre"), default="centre")),
        Row("at.radius", "m", "radius", Measure(at_least=0.0)),
        Row("at.azimuth", "rad", "azimuth", Measure()),
        Row("at.x", "m", "plan position", Measure()),
        Row("at.y", "m", "plan position", Measure()),
        Row("all_round", "", "whether from all sides", Flag()),
    ),
)
KINDS = {"wheel": WHEEL, "slot": SLOT}

ReadTable = Callable[..., tuple[dict[str, GivenValue], str]]
ReadDesign = Callable[[str | bytes], tuple[Design | None, str]]


Refusal = tuple[str, str]
CATALOGUES = {"test_fields": "fields", "test_read_design": "design"}


def refusals(name: str) -> dict[str, Refusal]:
    """The catalogue of whole messages: by name, a text of `> ` lines and what is said of it."""
    catalogue = {}
    for block in (
        (Path(__file__).parent / "refusals" / f"{name}.txt").read_text("utf-8").split("\n\n")
    ):
        title, *lines = block.rstrip("\n").split("\n")
        text = "".join(f"{line[2:]}\n" for line in lines if line.startswith("> "))
        message = "\n".join(line for line in lines if not line.startswith("> "))
        catalogue[title.removeprefix("# ")] = (text, message)
    return catalogue


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """Give a test that asks for a refusal every one of the catalogue named as its file is."""
    module = metafunc.module.__name__.rpartition(".")[2]
    if "refusal" in metafunc.fixturenames and module in CATALOGUES:
        catalogue = refusals(CATALOGUES[module])
        metafunc.parametrize("refusal", catalogue.values(), ids=catalogue.keys())


def rendered(problems: tuple[Problem, ...] | list[Problem]) -> str:
    """All problems as a person reads them."""
    return "\n".join(render(problem) for problem in problems)


@pytest.fixture(scope="session")
def kinds() -> Mapping[str, Kind]:
    return KINDS


@pytest.fixture(scope="session")
def facts() -> Kind:
    return FACTS


@pytest.fixture(scope="session")
def load() -> Kind:
    return LOAD


@pytest.fixture(scope="session")
def read_wheel() -> ReadTable:
    """Read a text as the table of a wheel beside a part called base."""

    def read(text: str, lengths: str | None = None) -> tuple[dict[str, GivenValue], str]:
        document = read_yaml(text, "wheel.yaml")
        assert isinstance(document.root, Table)
        assert not document.problems
        unit = UNITS[lengths] if lengths else None
        context = Context("wheel.yaml", document.lines, lengths=unit, parts=("base", "bench"))
        return read_fields(document.root, WHEEL, context), rendered(context.problems)

    return read


@pytest.fixture(scope="session")
def read() -> ReadDesign:
    """Read a text as a design of wheels and slots."""

    def read_text(text: str | bytes) -> tuple[Design | None, str]:
        design, problems = read_design(text, "bench.yaml", KINDS, facts=FACTS, load=LOAD)
        return design, rendered(problems)

    return read_text
