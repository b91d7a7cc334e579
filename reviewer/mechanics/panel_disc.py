"""The flexible disc cut from a panel with a grain: plywood bends and twists unlike a metal plate.

Plywood is several times softer in twist than a plate of the same bending stiffness that is alike in
all directions, and a rim between its supports twists. So the disc's compliance is found here with
four rigidities, by energy (Ritz) on functions of the radius times cosines and sines; what these few
functions miss of a point force is taken from the exact answer for a plate alike in all directions.
"""

from typing import Any

import numpy as np

from reviewer.mechanics import _panel_ritz as ritz
from reviewer.mechanics._panel_ritz import PanelRigidity
from reviewer.mechanics.disc import disc_deflection, disc_uniform_deflection
from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when

_POISSON = 0.3  # of the plate alike in all directions that completes the answer
_PANEL = "the rigidities must be above zero, and coupling below the mean of along and across"
_HOLE = "the hole must be smaller than the plate"


@valid_when(
    lambda along_modulus, across_modulus, poisson: (
        (poisson >= 0) & (poisson * poisson * across_modulus < along_modulus)
    ),
    "Poisson's ratio must not be negative, and possible for these moduli",
)
@defined(positive="along_modulus across_modulus shear_modulus thickness")
def panel_rigidities(
    along_modulus: Number,
    across_modulus: Number,
    shear_modulus: Number,
    poisson: Number,
    thickness: Number,
) -> PanelRigidity:
    """Rigidities of a panel whose grain makes it stiffer one way than the other.

    Jones, Mechanics of Composite Materials (1999), 5.2; bending moduli of the panel.

    Parameters
    ----------
    along_modulus : bending modulus along the face grain [Pa]
    across_modulus : bending modulus across the face grain [Pa]
    shear_modulus : shear modulus in the panel's plane [Pa]
    poisson : Poisson's ratio for a load along the face grain [1]
    thickness : thickness of the panel [m]

    Returns
    -------
    along : D11, bending along the face grain [N m]
    across : D22, bending across the face grain [N m]
    coupling : D12, moment across from curvature along [N m]
    twisting : D66, half of the twisting moment per twist [N m]

    Notes
    -----
    E1 t^3/(12 (1 - nu12 nu21)), E2 likewise, nu12 D22, G t^3/12.

    >>> [round(float(d)) for d in panel_rigidities(10e9, 7.5e9, 0.62e9, 0.05, 0.018)]
    [4869, 3652, 183, 301]
    """
    cube = thickness * thickness * thickness / 12
    inner = 1 - poisson * poisson * across_modulus / along_modulus
    across = across_modulus * cube / inner
    return PanelRigidity(
        along_modulus * cube / inner, across, poisson * across, shear_modulus * cube
    )


def _is_panel(along: Any, across: Any, coupling: Any, twisting: Any) -> Any:
    return (
        (along > 0)
        & (across > 0)
        & (twisting > 0)
        & (coupling >= 0)
        & (coupling * coupling < along * across)
    )


def _has_plate(radius: Any, hole_radius: Any) -> Any:
    return (radius > 0) & (hole_radius >= 0) & (hole_radius < radius)


@valid_when(_has_plate, _HOLE)
@valid_when(_is_panel, _PANEL)
@silent
def panel_disc_compliance(
    radii: Number,
    angles: Number,
    radius: Number,
    hole_radius: Number,
    along: Number,
    across: Number,
    coupling: Number,
    twisting: Number,
) -> Number:
    """Compliance of a free round panel with a grain between any of a set of points.

    Ritz on Kirchhoff's plate; as in Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells
    (1959), art. 84 and 85.

    Parameters
    ----------
    radii : radius of each point, shape (n,) [m]
    angles : angle of each point from the face grain, shape (n,) [rad]
    radius : radius of the panel's free edge [m]
    hole_radius : radius of the hole's free edge, zero for none [m]
    along : D11, bending along the face grain [N m]
    across : D22, bending across the face grain [N m]
    coupling : D12 [N m]
    twisting : D66 [N m]

    Returns
    -------
    compliance : deflection at the first point per force at the second, shape (n, n) [m/N]

    Notes
    -----
    Rigid movements are left open, alike for panel_disc_uniform. Scales as radius^2 over the
    rigidities. One panel at a time. Within 1 % of finite elements for a birch panel on springs.

    >>> stiff = panel_disc_compliance(np.array([0.9, 0.9]), np.array([0.0, 0.8]), 1.0, 0.0,
    ...                               1.0, 1.0, 0.3, 0.35)
    >>> round(float(stiff[0, 1]), 5) == round(
    ...     float(disc_deflection(0.9, 0.9, 0.8, 1.0, 0.0, 1.0, 0.3)), 5)
    True
    """
    r, t = np.asarray(radii, float), np.asarray(angles, float)
    panel = PanelRigidity(along, across, coupling, twisting)
    even = ritz.alike(panel)
    hole = _inside(hole_radius / radius)
    missed: Any = 0.0
    for sine in (False, True):
        family = ritz.family(hole, sine)
        shape = ritz.at_points(family, r / radius, t)
        for rigidity, sign in ((panel, 1.0), (_plain(even), -1.0)):
            bent = np.linalg.solve(ritz.stiffness(family, rigidity), shape)
            missed = missed + sign * np.einsum("ki,kj->ij", shape, bent)
    exact = disc_deflection(r[:, None], r, t[:, None] - t, radius, hole_radius, even, _POISSON)
    compliance: Number = missed * radius * radius + exact
    return compliance


def _inside(hole: Any) -> Any:
    """Keep a hole that leaves no plate off what is singular; the answer is masked there."""
    return np.clip(hole, 0.0, 0.999)


def _plain(rigidity: Any) -> PanelRigidity:
    """Rigidities of a plate alike in all directions."""
    return PanelRigidity(rigidity, rigidity, _POISSON * rigidity, (1 - _POISSON) / 2 * rigidity)


@valid_when(_has_plate, _HOLE)
@valid_when(_is_panel, _PANEL)
@silent
def panel_disc_uniform(
    radii: Number,
    angles: Number,
    radius: Number,
    hole_radius: Number,
    along: Number,
    across: Number,
    coupling: Number,
    twisting: Number,
) -> Number:
    """Deflection of a free round panel with a grain under a unit pressure, as from its own weight.

    Ritz on Kirchhoff's plate; as in Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells
    (1959), art. 84 and 85.

    Parameters
    ----------
    radii : radius of each point, shape (n,) [m]
    angles : angle of each point from the face grain, shape (n,) [rad]
    radius : radius of the panel's free edge [m]
    hole_radius : radius of the hole's free edge, zero for none [m]
    along : D11, bending along the face grain [N m]
    across : D22, bending across the face grain [N m]
    coupling : D12 [N m]
    twisting : D66 [N m]

    Returns
    -------
    deflection : deflection per pressure at each point, shape (n,) [m/Pa]

    Notes
    -----
    Rigid movements are left open, alike for panel_disc_compliance.

    >>> flat = panel_disc_uniform(np.array([0.0, 1.0]), np.zeros(2), 1.0, 0.0, 1.0, 1.0, 0.3, 0.35)
    >>> round(float(flat[0] - flat[1]), 5)
    0.0637
    """
    r, t = np.asarray(radii, float), np.asarray(angles, float)
    panel = PanelRigidity(along, across, coupling, twisting)
    even = ritz.alike(panel)
    family = ritz.family(_inside(hole_radius / radius), False)
    shape, load = ritz.at_points(family, r / radius, t), ritz.even_load(family)
    missed: Any = 0.0
    for rigidity, sign in ((panel, 1.0), (_plain(even), -1.0)):
        bent = np.linalg.solve(ritz.stiffness(family, rigidity), load)
        missed = missed + sign * np.einsum("ki,k->i", shape, bent)
    size = radius * radius
    exact = disc_uniform_deflection(r, radius, hole_radius, even, _POISSON)
    deflection: Number = missed * size * size + exact
    return deflection
