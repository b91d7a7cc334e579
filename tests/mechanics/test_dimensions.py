"""Formulas hold in any units: scaled lengths and forces scale the answers as documented.

Left out are the empirical ones, whose constants hold in millimetres or inches only.
"""

import importlib.util
import inspect
import re
from pathlib import Path

import numpy as np
import pytest

from reviewer.mechanics.disc import disc_deflection, disc_uniform_deflection
from reviewer.mechanics.panel_disc import (
    panel_disc_compliance,
    panel_disc_uniform,
    panel_rigidities,
)

EMPIRICAL = {
    "bearing_area_factor",
    "density",
    "en_board_bolt_embedment",
    "en_bolt_slip_modulus",
    "en_bolt_spacing",
    "en_head_pull_through",
    "en_nail_slip_modulus",
    "en_screw_withdrawal",
    "en_yield_moment",
    "equilibrium_moisture",
    "insert_withdrawal_estimate",
    "lag_screw_withdrawal",
    "machined_surface_factor",
    "nail_withdrawal",
    "natural_frequency",
    "nds_bearing_across",
    "nds_bearing_along",
    "nds_double_shear",
    "nds_head_pull_through",
    "nds_lag_screw_withdrawal",
    "nds_nail_withdrawal",
    "nds_single_shear",
    "nds_slip_modulus",
    "nds_small_bearing",
    "nds_wood_screw_withdrawal",
    "en_bolt_embedment",
    "en_nail_embedment",
    "en_plywood_bolt_embedment",
    "en_plywood_nail_embedment",
    "perpendicular_capacity",
    "size_factor",
    "steel_endurance",
    "washer_capacity",
    "washer_pressure",
    "wood_screw_withdrawal",
}
LENGTH, FORCE = 1.7, 3.1
SCALES = {"m": LENGTH, "N": FORCE, "Pa": FORCE / LENGTH**2, "rad": 1.0, "1": 1.0, "s": 1.0}
ENTRY = re.compile(r"(\w+) : \S.* \[([^\[\]]+)\]")


def scale(unit):
    """What one of this unit becomes."""
    top, *bottom = unit.split("/")
    total = 1.0
    for text, power in [(top, 1), *((text, -1) for text in bottom)]:
        for symbol in text.split():
            name, _, exponent = symbol.partition("^")
            total *= SCALES[name] ** (power * int(exponent or 1))
    return total


def units(formula, heading):
    text = inspect.getdoc(formula)
    found = re.search(rf"^{heading}\n-+\n(.*?)(?:\n\n|\Z)", text, re.DOTALL | re.MULTILINE)
    joined = re.sub(r"\n\s+", " ", found.group(1)).splitlines()
    return [ENTRY.fullmatch(line).group(2) for line in joined]


def published():
    path = Path(__file__).parent / "test_structure_and_wood_on_arrays.py"
    spec = importlib.util.spec_from_file_location("on_arrays", path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return [case for case in module.ALL if case.id not in EMPIRICAL]


POINTS = (np.array([0.9, 0.7]), np.array([0.0, 1.0]))
PANEL = (1.0, 0.2, 1.1, 0.9, 0.1, 0.2)
CASES = [
    *published(),
    pytest.param(disc_deflection, (0.9, 0.7, 1.0, 1.0, 0.2, 1.0, 0.3), id="disc"),
    pytest.param(disc_uniform_deflection, (0.9, 1.0, 0.2, 1.0, 0.3), id="disc, even"),
    pytest.param(panel_rigidities, (10.0, 8.0, 0.6, 0.1, 2.0), id="panel"),
    pytest.param(panel_disc_compliance, (*POINTS, *PANEL), id="panel disc"),
    pytest.param(panel_disc_uniform, (*POINTS, *PANEL), id="panel disc, even"),
]


@pytest.mark.parametrize(("formula", "inputs"), CASES)
def test_answers_scale_as_their_units_do(formula, inputs):
    given, returned = units(formula, "Parameters"), units(formula, "Returns")
    scaled = [value * scale(unit) for value, unit in zip(inputs, given, strict=False)]
    before, after = formula(*inputs), formula(*scaled)
    if not isinstance(before, tuple):
        before, after = (before,), (after,)
    for one, other, unit in zip(before, after, returned, strict=True):
        assert other == pytest.approx(one * scale(unit), rel=1e-9, abs=1e-300, nan_ok=True)
