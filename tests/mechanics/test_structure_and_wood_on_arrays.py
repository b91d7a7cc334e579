"""What must hold of every formula of structure and wood: arrays, unknowns, and no warning ever.

The inputs are those of the published check values, so that each formula is tried where it holds.
"""

import importlib.util
import inspect
from pathlib import Path

import numpy as np
import pytest

PUBLISHED = Path(__file__).parent.parent / "published"
FILES = (
    "afnor_vpcs",
    "bow_girders",
    "en_1995",
    "fine_woodworking",
    "finite_elements",
    "finnish_plywood",
    "gere",
    "kaw",
    "khurmi",
    "kleinlogel",
    "nds",
    "rao",
    "ring_girders",
    "roark_plates",
    "roark_rings",
    "shigley",
    "statics",
    "timoshenko_elasticity",
    "timoshenko_plates",
    "wood_handbook",
)
STRANGE = (0.0, -1.0, 1e-200, 1e200, np.inf, -np.inf)


def rows(name):
    spec = importlib.util.spec_from_file_location(name, PUBLISHED / f"test_{name}.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module.ROWS


def formulas():
    """Each formula once, with inputs for which a published value is known."""
    found = {}
    for name in FILES:
        for shown, inputs, *_ in rows(name):
            # What a test wraps may take inputs of its own; `of` passes a formula's on.
            formula = shown
            while formula.__code__.co_filename.startswith(str(PUBLISHED)):
                if shown.__code__.co_name != "value" or not hasattr(formula, "__wrapped__"):
                    break
                formula = formula.__wrapped__
            if not formula.__code__.co_filename.startswith(str(PUBLISHED)):
                found.setdefault(formula.__name__, (formula, inputs))
    return [pytest.param(*found[name], id=name) for name in sorted(found)]


ALL = formulas()
pytestmark = pytest.mark.filterwarnings("error")


def values(answer):
    return answer if isinstance(answer, tuple) else (answer,)


def test_most_formulas_are_here():
    assert len(ALL) > 90


@pytest.mark.parametrize(("formula", "inputs"), ALL)
def test_one_and_many_agree_to_the_bit(formula, inputs):
    alone = values(formula(*inputs))
    together = values(formula(*(np.full(5, value) for value in inputs)))
    for one, many in zip(alone, together, strict=True):
        assert isinstance(one, float)
        assert (np.broadcast_to(many, 5) == one).all() or np.isnan(one)


@pytest.mark.parametrize(("formula", "inputs"), ALL)
def test_a_single_number_broadcasts_against_an_array(formula, inputs):
    alone = values(formula(*inputs))
    for place in range(len(inputs)):
        mixed = [np.full((2, 3), value) if i == place else value for i, value in enumerate(inputs)]
        for one, many in zip(alone, values(formula(*mixed)), strict=True):
            assert (np.broadcast_to(many, (2, 3)) == one).all() or np.isnan(one)


@pytest.mark.parametrize(("formula", "inputs"), ALL)
def test_an_unknown_input_makes_something_unknown(formula, inputs):
    for place in range(len(inputs)):
        unknown = [float("nan") if i == place else value for i, value in enumerate(inputs)]
        found = values(formula(*unknown))
        assert any(np.isnan(value) for value in found), list(inspect.signature(formula).parameters)[
            place
        ]


@pytest.mark.parametrize(("formula", "inputs"), ALL)
def test_strange_inputs_neither_raise_nor_warn(formula, inputs):
    for place in range(len(inputs)):
        for strange in STRANGE:
            odd = [strange if i == place else value for i, value in enumerate(inputs)]
            assert all(isinstance(value, float) for value in values(formula(*odd)))
