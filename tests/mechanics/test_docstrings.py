"""Every public formula is written in the form that the graph and the documentation read."""

import doctest
import importlib
import inspect
import pkgutil
import re
import typing

import pytest

import reviewer.mechanics

# What makes a formula rather than being one, and the resultants that the load path hands down. The
# inside of the supports solver, which hands on state and not quantities, is a package of its own.
NOT_FORMULAS = {"domain", "formula", "placing", "resultant", "sharing"}

SYMBOL = r"(m|N|Pa|kg|s|K|rad)(\^\d+)?"
UNIT = re.compile(rf"1|(1|{SYMBOL}( {SYMBOL})*)(/{SYMBOL}(/{SYMBOL})*)?")
ENTRY = re.compile(r"(\w+) : \S.* \[([^\[\]]+)\]")


def formulas():
    for module in pkgutil.iter_modules(reviewer.mechanics.__path__):
        if module.ispkg or module.name in NOT_FORMULAS or module.name.startswith("_"):
            continue
        found = importlib.import_module(f"reviewer.mechanics.{module.name}")
        for name, function in sorted(inspect.getmembers(found, inspect.isfunction)):
            if not name.startswith("_") and function.__module__ == found.__name__:
                yield pytest.param(function, id=f"{module.name}.{name}")


ALL = list(formulas())


def paragraphs(function):
    return inspect.getdoc(function).split("\n\n")


def entries(function, heading):
    """Name and unit of each entry under a heading; an entry may run over several lines."""
    text = inspect.getdoc(function)
    found = re.search(rf"^{heading}\n-+\n(.*?)(?:\n\n|\Z)", text, re.DOTALL | re.MULTILINE)
    assert found, f"no {heading}"
    joined = re.sub(r"\n\s+", " ", found.group(1)).splitlines()
    parsed = [ENTRY.fullmatch(line) for line in joined]
    assert all(parsed), f"{heading}: not `name : text [unit]`: {joined}"
    return [(match.group(1), match.group(2)) for match in parsed]


def test_there_are_formulas():
    assert len(ALL) > 100


@pytest.mark.parametrize("function", ALL)
def test_parameters_are_documented_in_order(function):
    documented = [name for name, _ in entries(function, "Parameters")]
    assert documented == list(inspect.signature(function).parameters)


@pytest.mark.parametrize("function", ALL)
def test_every_unit_is_a_product_of_si_symbols(function):
    for name, unit in entries(function, "Parameters") + entries(function, "Returns"):
        assert UNIT.fullmatch(unit), f"{name} [{unit}]"


@pytest.mark.parametrize("function", ALL)
def test_returns_are_the_fields_of_the_named_tuple(function):
    documented = [name for name, _ in entries(function, "Returns")]
    returned = typing.get_type_hints(inspect.unwrap(function))["return"]
    if isinstance(returned, type) and issubclass(returned, tuple):
        assert documented == list(returned._fields)
    else:
        assert len(documented) == 1


@pytest.mark.parametrize("function", ALL)
def test_summary_then_reference(function):
    summary, reference = paragraphs(function)[:2]
    assert summary.endswith(".")
    assert not reference.startswith(("Parameters", "Returns", "Notes", ">>>"))


@pytest.mark.parametrize("function", ALL)
def test_there_is_a_doctest(function):
    assert doctest.DocTestParser().get_examples(inspect.getdoc(function))
