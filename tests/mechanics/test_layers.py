"""Layered strips: the gamma method between loose and glued, where both are known."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.mechanics.layers import (
    connection_efficiency,
    glued_layers_stiffness,
    loose_layers_stiffness,
    slipping_layers_stiffness,
)

SIZE = st.floats(0.5, 5.0)
LAYER = st.tuples(SIZE, SIZE, SIZE)  # modulus, width, thickness


def by_parallel_axes(upper, middle, lower):
    """Bending stiffness of glued layers about their common centroid."""
    layers = np.array([upper, middle, lower])
    axial = layers.prod(axis=1)
    depth = np.cumsum(layers[:, 2]) - layers[:, 2] / 2
    centroid = (axial * depth).sum() / axial.sum()
    return (axial * (layers[:, 2] ** 2 / 12 + (depth - centroid) ** 2)).sum()


@given(LAYER, LAYER, LAYER)
def test_a_stiff_joint_is_glued(upper, middle, lower):
    found = slipping_layers_stiffness(*middle, *upper, 1.0, *lower, 1.0)
    assert found == pytest.approx(by_parallel_axes(upper, middle, lower))


@given(LAYER, LAYER, LAYER)
def test_no_joint_is_loose(upper, middle, lower):
    found = slipping_layers_stiffness(*middle, *upper, 0.0, *lower, 0.0)
    loose = sum(loose_layers_stiffness(*layer, 1.0) for layer in (upper, middle, lower))
    assert found == pytest.approx(loose)


@given(LAYER, LAYER, LAYER, st.floats(0.01, 0.99), st.floats(0.01, 0.99))
def test_between_loose_and_glued(upper, middle, lower, above, below):
    found = slipping_layers_stiffness(*middle, *upper, above, *lower, below)
    glued = by_parallel_axes(upper, middle, lower)
    assert slipping_layers_stiffness(*middle, *upper, 0.0, *lower, 0.0) < found < glued


def test_equal_layers():
    layer = (2.0, 3.0, 4.0)
    assert glued_layers_stiffness(*layer, 3.0) == pytest.approx(by_parallel_axes(*[layer] * 3))


def test_efficiency_goes_from_loose_to_glued():
    slip = np.array([1e-9, 1.0, 1e12])
    gamma = connection_efficiency(1e3, slip, 1.0, 1.0)
    assert gamma[0] == pytest.approx(0.0, abs=1e-9)
    assert gamma[2] == pytest.approx(1.0, abs=1e-6)
    assert (np.diff(gamma) > 0).all()
