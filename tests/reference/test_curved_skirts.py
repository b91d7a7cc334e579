"""Curved skirts on edge against solid finite elements, and arms against frames.

scikit-fem: bricks with curved edges left straight, quadratic, so that nothing of the theory of
beams is in them. PyNiteFEA: straight pieces under several loads.
"""

import numpy as np
import pytest

from reviewer.mechanics.cantilevers import cantilever_deflection
from reviewer.mechanics.curved import arc_middle_load, arc_uniform
from reviewer.mechanics.sections import box_section, rectangle_section

skfem = pytest.importorskip("skfem")
pynite = pytest.importorskip("Pynite")

from skfem.helpers import ddot, eye, sym_grad, trace  # noqa: E402  (behind importorskip)

MODULUS, POISSON = 10e9, 0.3
SHEAR = MODULUS / (2 * (1 + POISSON))
WITHIN = 0.03  # of the finite elements


def strip(radius, height, thickness, angle, pieces=24):
    """A strip on edge along an arc, clamped at both ends: sink of its middle under two loads."""
    turns = np.linspace(-angle / 2, angle / 2, pieces + 1)
    up = np.linspace(-height / 2, height / 2, 4)
    out = np.array([radius - thickness / 2, radius + thickness / 2])
    flat = skfem.MeshHex.init_tensor(turns, up, out)
    turn, z, r = flat.p
    mesh = skfem.MeshHex(np.array([r * np.cos(turn), r * np.sin(turn), z]), flat.t)
    basis = skfem.Basis(mesh, skfem.ElementVector(skfem.ElementHex2()), intorder=4)

    @skfem.BilinearForm
    def stiffness(u, v, _):
        strain, other = sym_grad(u), sym_grad(v)
        lame = MODULUS * POISSON / ((1 + POISSON) * (1 - 2 * POISSON))
        return ddot(lame * eye(trace(strain), 3) + 2 * SHEAR * strain, other)

    @skfem.LinearForm
    def weight(v, _):
        return -v[2]

    clamped = basis.get_dofs(lambda x: np.isclose(np.abs(np.arctan2(x[1], x[0])), angle / 2))
    middle = np.flatnonzero(np.isclose(flat.p[0], 0.0))
    down = basis.nodal_dofs[2][middle]
    force = np.zeros(basis.N)
    force[down] = -1.0 / len(middle)
    even = weight.assemble(basis) / (thickness * height)  # 1 N for each metre
    matrix = stiffness.assemble(basis)
    loads = np.stack([force, even], axis=1)
    free = np.setdiff1d(np.arange(basis.N), clamped.all())
    from scipy.sparse.linalg import splu

    answer = np.zeros_like(loads)
    answer[free] = splu(matrix[free][:, free].tocsc()).solve(loads[free])
    return -answer[down].mean(axis=0)


# radius, height, thickness [m], angle between two supports [deg]
SKIRTS = [(0.60, 0.030, 0.012, 72.0), (0.45, 0.040, 0.015, 90.0), (0.60, 0.025, 0.018, 120.0)]


@pytest.mark.parametrize(("radius", "height", "thickness", "degrees"), SKIRTS)
def test_a_curved_skirt_bends_and_twists(radius, height, thickness, degrees):
    angle = np.radians(degrees)
    section = rectangle_section(thickness, height)
    bending = MODULUS * thickness * height * height * height / 12
    twisting = SHEAR * section.torsion_constant
    under_force, under_weight = strip(radius, height, thickness, angle)
    force = arc_middle_load(1.0, radius, angle, bending, twisting).deflection
    even = arc_uniform(1.0, radius, angle, bending, twisting).deflection
    assert force == pytest.approx(under_force, rel=WITHIN)
    assert even == pytest.approx(under_weight, rel=WITHIN)


def test_an_arm_under_its_loads():
    """A tube of 40 x 40 x 2 mm, 430 mm long: a lean near its tip, a tray on its middle, itself."""
    modulus, reach = 68.9e9, 0.430
    tube = box_section(0.040, 0.040, 0.002)
    stiffness = modulus * tube.second_moment
    loads = {0.400: 300.0, 0.215: 80.0}
    model = pynite.FEModel3D()
    model.add_material("metal", modulus, modulus / 2.66, 0.33, 1.0)
    model.add_section("tube", tube.area, tube.second_moment, tube.second_moment, 1e-7)
    model.add_node("root", 0, 0, 0)
    model.add_node("tip", reach, 0, 0)
    model.add_member("arm", "root", "tip", "metal", "tube")
    model.def_support("root", *[True] * 6)
    for at, load in loads.items():
        model.add_member_pt_load("arm", "Fy", -load, at)
    model.add_member_dist_load("arm", "Fy", -8.0, -8.0)
    model.analyze(check_stability=False)
    sinks = sum(cantilever_deflection(load, at, reach, stiffness) for at, load in loads.items())
    sinks += 8.0 * reach**4 / (8 * stiffness)  # Gere and Goodno (2009), table G-1 case 1
    assert -model.nodes["tip"].DY["Combo 1"] == pytest.approx(sinks, rel=1e-6)
