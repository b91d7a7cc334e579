"""The flexible disc on springs against finite elements (scikit-fem, Argyris triangles)."""

import numpy as np
import pytest

from reviewer.mechanics.annular_plates import annular_simple_uniform
from reviewer.mechanics.disc import disc_deflection, disc_uniform_deflection
from reviewer.mechanics.panel_disc import panel_disc_compliance, panel_disc_uniform
from reviewer.mechanics.plates import simple_plate_uniform_deflection

skfem = pytest.importorskip("skfem")

from skfem.helpers import dd  # noqa: E402  (behind importorskip)

POISSON = 0.3
ALIKE = (1.0, 1.0, 0.3, 0.35)
PLYWOOD = (1.15, 0.86, 0.05, 0.075)  # birch of 18 mm, over the mean bending stiffness


def mesh(hole, rings, around):
    """Triangles of a disc or an annulus of radius 1, its nodes on circles."""
    first = 0 if hole else 1
    radii = np.linspace(hole, 1.0, rings + 1)[first:]
    turns = 2 * np.pi * np.arange(around) / around
    nodes = [(r * np.cos(t), r * np.sin(t)) for r in radii for t in turns]
    triangles = []
    for k in range(len(radii) - 1):
        for i in range(around):
            a, b = k * around + i, k * around + (i + 1) % around
            triangles += [(a, b, a + around), (b, b + around, a + around)]
    if not hole:
        nodes.append((0.0, 0.0))
        triangles += [(i, (i + 1) % around, len(nodes) - 1) for i in range(around)]
    return skfem.MeshTri(np.array(nodes).T, np.array(triangles).T)


def plate(hole, rings, around, panel=ALIKE):
    """Mesh, stiffness of a panel (D11, D22, D12, D66), load of a pressure, deflection dofs."""
    triangles = mesh(hole, rings, around)
    basis = skfem.Basis(triangles, skfem.ElementTriArgyris())
    along, across, coupling, twisting = panel

    @skfem.BilinearForm
    def bending(u, v, _):
        a, b = dd(u), dd(v)
        bent = along * a[0][0] * b[0][0] + across * a[1][1] * b[1][1]
        bent += coupling * (a[0][0] * b[1][1] + a[1][1] * b[0][0])
        return bent + 4 * twisting * a[0][1] * b[0][1]

    @skfem.LinearForm
    def pressure(v, _):
        return 1.0 * v

    return triangles, bending.assemble(basis), pressure.assemble(basis), basis.nodal_dofs[0]


def node_at(triangles, radius, angle):
    point = np.array([[radius * np.cos(angle)], [radius * np.sin(angle)]])
    found = np.argmin(((triangles.p - point) ** 2).sum(axis=0))
    place = triangles.p[:, found]
    return found, np.hypot(*place), np.arctan2(place[1], place[0])


def on_springs(radii, angles, load, stiffness, hole, even, panel):
    """Forces of equal springs at all points but the last, and the sink of the last, loaded one."""
    r, t = np.array(radii), np.array(angles)
    if panel == ALIKE:
        c = disc_deflection(r[:, None], r, t[:, None] - t, 1.0, hole, 1.0, POISSON)
        flat = disc_uniform_deflection(r, 1.0, hole, 1.0, POISSON)
    else:
        c = panel_disc_compliance(r, t, 1.0, hole, *panel)
        flat = panel_disc_uniform(r, t, 1.0, hole, *panel)
    count = len(r) - 1
    area = np.pi * (1 - hole * hole)
    sag = c[:, -1] * load + even * flat
    rigid = np.stack((np.ones_like(r), r * np.cos(t), r * np.sin(t)), axis=1)
    matrix = np.zeros((count + 3, count + 3))
    matrix[:count, :count] = c[:count, :count] + np.eye(count) / stiffness
    matrix[:count, count:] = -rigid[:count]
    matrix[count:, :count] = rigid[:count].T
    side = np.r_[sag[:count], rigid[-1] * load + np.array([even * area, 0.0, 0.0])]
    answer = np.linalg.solve(matrix, side)
    forces, movement = answer[:count], answer[count:]
    sink = rigid[-1] @ movement + sag[-1] - c[-1, :count] @ forces
    return forces, sink


CASES = [
    # hole, circle of the springs, their count, stiffness over D/a^2, load radius, even load
    (0.0, 0.8, 10, 2000.0, 0.5, 1.0),
    (0.3, 0.85, 8, 500.0, 1.0, 0.0),
    (0.5, 0.7, 12, 3000.0, 0.9, 0.5),
]


@pytest.mark.parametrize("panel", [ALIKE, PLYWOOD], ids=["alike", "plywood"])
@pytest.mark.parametrize(("hole", "circle", "count", "stiffness", "reach", "even"), CASES)
def test_disc_on_springs(hole, circle, count, stiffness, reach, even, panel):
    triangles, matrix, pressure, dofs = plate(hole, 8, 60, panel)
    turns = 2 * np.pi * np.arange(count) / count
    places = [node_at(triangles, circle, t) for t in turns]
    places.append(node_at(triangles, reach, 0.2))
    nodes, radii, angles = zip(*places, strict=True)
    matrix = matrix.tolil()
    for node in nodes[:-1]:
        matrix[dofs[node], dofs[node]] += stiffness
    load = even * pressure
    load[dofs[nodes[-1]]] += 1.0
    bent = skfem.solve(matrix.tocsr(), load)
    forces, sink = on_springs(radii, angles, 1.0, stiffness, hole, even, panel)
    expected = stiffness * bent[dofs[list(nodes[:-1])]]
    assert sink == pytest.approx(bent[dofs[nodes[-1]]], rel=0.01)
    assert forces == pytest.approx(expected, abs=0.01 * np.abs(expected).max())


@pytest.mark.parametrize("hole", [0.0, 0.3])
def test_plates_that_rest_on_their_edge(hole):
    """Held at the 48 corners of the mesh alone, so that its straight edges turn freely."""
    triangles, matrix, pressure, dofs = plate(hole, 6, 48)
    reach = np.hypot(*triangles.p)
    edge = dofs[np.flatnonzero(np.isclose(reach, 1.0))]
    bent = skfem.solve(*skfem.condense(matrix, pressure, D=edge))
    inner = dofs[np.argmin(reach)]
    if hole:
        expected = annular_simple_uniform(1.0, hole, 1.0, 1.0, POISSON).deflection
    else:
        expected = simple_plate_uniform_deflection(1.0, 1.0, 1.0, POISSON)
    assert expected == pytest.approx(bent[inner], rel=0.03)
