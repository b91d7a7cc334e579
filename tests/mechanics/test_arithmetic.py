"""Every formula of machine elements: silent, alike one by one and batched, and NaN travels."""

import importlib
import inspect
import warnings

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

MODULES = [
    *("bearings", "bearing_life", "rollers", "contact", "contact_yield", "elliptical", "track"),
    *("bolts", "bolt_assembly", "bolt_limits", "threads", "clamps", "clamp_forces", "strip"),
    *("rings", "ring_loads", "ring_edges", "ramps", "screws", "followers", "guides", "slots"),
    *("stops", "hub", "bolt_shear", "lever_travel", "endurance"),
]
# A profile needs at least two points.
LEFT_OUT = {"slopes_of_profile"}


def formulas():
    for name in MODULES:
        module = importlib.import_module(f"reviewer.mechanics.{name}")
        for function_name, function in inspect.getmembers(module, inspect.isfunction):
            own = function.__module__ == module.__name__ and not function_name.startswith("_")
            if own and function_name not in LEFT_OUT:
                yield pytest.param(function, id=f"{name}.{function_name}")


def answers(function, arguments):
    """All outputs of a formula, by rows."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        found = function(*arguments)
    outputs = found if isinstance(found, tuple) else (found,)
    shape = np.broadcast_shapes(*(np.shape(argument) for argument in arguments))
    return np.array([np.broadcast_to(np.asarray(output, float), shape) for output in outputs])


NUMBERS = st.one_of(
    st.sampled_from([-1.0, 0.0, 1e-9, 1.0, 1e9, np.inf, np.nan]), st.floats(1e-4, 1e4)
)


@pytest.mark.parametrize("function", list(formulas()))
@settings(max_examples=25, deadline=None)
@given(data=st.data())
def test_one_at_a_time_is_batched_to_the_bit(function, data):
    count = len(inspect.signature(function).parameters)
    rows = data.draw(st.lists(st.tuples(*[NUMBERS] * count), min_size=1, max_size=9))
    batched = answers(function, [np.array(column) for column in zip(*rows, strict=True)])
    for index, row in enumerate(rows):
        single = answers(function, row)
        assert np.array_equal(single, batched[:, index], equal_nan=True), row


@pytest.mark.parametrize("function", list(formulas()))
def test_one_number_gives_a_plain_float(function):
    found = function(*[0.3] * len(inspect.signature(function).parameters))
    for output in found if isinstance(found, tuple) else (found,):
        assert type(output) is float


@pytest.mark.parametrize("function", list(formulas()))
def test_unknown_inputs_make_the_answer_unknown(function):
    names = list(inspect.signature(function).parameters)
    for name in names:
        found = function(*[np.nan if other == name else 0.3 for other in names])
        outputs = found if isinstance(found, tuple) else (found,)
        assert any(np.isnan(output) for output in outputs), name
