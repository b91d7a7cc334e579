"""How a skirt bends: its layers and its grain, flat and on edge, straight and curved."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.beams import beam_deflection
from reviewer.mechanics.curved import arc_middle_load
from reviewer.mechanics.fixed_beams import fixed_beam_deflection
from reviewer.mechanics.formula import Number
from reviewer.mechanics.layers import (
    connection_efficiency,
    glued_layers_stiffness,
    loose_layers_stiffness,
    slipping_layers_stiffness,
)
from reviewer.mechanics.sections import rectangle_torsion
from reviewer.mechanics.wood import off_axis_modulus
from reviewer.stock.materials import Material
from reviewer.stock.panels import panel_modulus
from reviewer.stock.sheets import thicknesses

MOST_SCREWED = 3  # layers that EN 1995-1-1, Annex B holds for


class OnEdge(NamedTuple):
    """Sag [m] and greatest moment [N m] of a skirt under a load on its edge, midway on a span."""

    sag: Number
    moment: Number


def strip_modulus(material: Material, layer: Number, angle: Number) -> Number:
    """Modulus along the strip, of a layer's thickness, cut at an angle to the grain of its face.

    Jones, Mechanics of Composite Materials (1999), 2.6; the stock row's own source.

    Notes
    -----
    1/E = c^4/E1 + (1/G - 2 nu/E1) s^2 c^2 + s^4/E2; along the grain E1 itself.
    """
    along, across = panel_modulus(material, layer)
    turned = off_axis_modulus(along, across, material.shear_modulus, material.poisson, angle)
    return np.where(np.equal(angle, 0.0), along, turned)


def flat_stiffness(
    modulus: Number,
    height: Number,
    thickness: Number,
    count: int,
    bonded: str,
    slip_modulus: Number,
    spacing: Number,
    span: Number,
) -> Number:
    """Bending stiffness against a push on the face, by how its layers are bonded.

    Gere and Goodno, Mechanics of Materials (2009), 5.5; screwed: EN 1995-1-1:2004, Annex B.

    Notes
    -----
    Glued E h t^3/12, loose 1/n^2 of it, screwed in between: two or three layers.
    """
    layer = thickness / count
    if bonded == "glued" or count == 1:
        return glued_layers_stiffness(modulus, height, layer, float(count))
    if bonded == "loose":
        return loose_layers_stiffness(modulus, height, layer, float(count))
    if count > MOST_SCREWED:
        return np.nan
    gamma = connection_efficiency(modulus * height * layer, slip_modulus, spacing, span)
    own = (modulus, height, layer)
    lower = own if count == MOST_SCREWED else (modulus, 0.0 * height, 0.0 * layer)
    return slipping_layers_stiffness(*own, *own, gamma, *lower, gamma)


def upright_stiffness(modulus: Number, height: Number, thickness: Number) -> Number:
    """Bending stiffness against a load on its edge; layers side by side add up.

    Gere and Goodno, Mechanics of Materials (2009), 12.4.

    Notes
    -----
    E t h^3 / 12: the cube of the height.
    """
    return modulus * thickness * height * height * height / 12


def twisting_stiffness(
    shear_modulus: Number, height: Number, thickness: Number, count: int, bonded: str
) -> Number:
    """Stiffness against twisting of the strip; layers that slide twist each for itself.

    Timoshenko and Goodier, Theory of Elasticity (1970), art. 109.

    Notes
    -----
    G J of the rectangle, or n G J of one layer.
    """
    together = 1 if bonded == "glued" else count
    section = rectangle_torsion(thickness / together, height)
    return together * shear_modulus * section.torsion_constant


def wave_of(push: Number, span: Number, stiffness: Number, ends: str) -> Number:
    """How far a push midway bends the strip between two supports, taken as straight.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 4; Roark, table 8.1 case 1d.

    Notes
    -----
    F L^3 / (48 E I), an upper bound: the curve and the neighbouring spans stiffen it. Fixed at the
    supports, F L^3 / (192 E I).
    """
    middle = span / 2
    if ends == "fixed":
        return fixed_beam_deflection(push, middle, middle, span, stiffness)
    return beam_deflection(push, middle, middle, span, stiffness)


def least_thickness(thickness: Number, wave: Number, allowed: Number) -> Number:
    """The thickness at which a push bends it just as far as allowed, with as many layers.

    The same beam formula, solved for the thickness.

    Notes
    -----
    t (wave / allowed)^(1/3): doubling the span asks for twice the thickness.
    """
    return thickness * np.cbrt(wave / allowed)


def on_edge(
    force: Number,
    span: Number,
    diameter: Number | None,
    bending: Number,
    twisting: Number,
    ends: str,
) -> OnEdge:
    """Sag and moment under a load on the edge, midway between two supports.

    Gere and Goodno (2009), table G-2 case 4; Young and Budynas, Roark's Formulas (2002), 9.5.

    Notes
    -----
    Free: a straight beam, F L^3 / (48 E I) and F L / 4. Fixed: an arc that bends and twists, by E I
    and G J; without a curve F L^3 / (192 E I) and F L / 8.
    """
    middle = span / 2
    if ends == "free":
        sag = beam_deflection(force, middle, middle, span, bending)
        return OnEdge(sag, force * span / 4)
    if diameter is None:
        sag = fixed_beam_deflection(force, middle, middle, span, bending)
        return OnEdge(sag, force * span / 8)
    radius = diameter / 2
    arc = arc_middle_load(force, radius, span / radius, bending, twisting)
    return OnEdge(arc.deflection, np.maximum(arc.middle_moment, np.abs(arc.end_moment)))


def skirt_stress(
    push: Number,
    span: Number,
    upright_moment: Number,
    height: Number,
    thickness: Number,
    count: int,
    bonded: str,
    ends: str,
) -> Number:
    """Bending stress of a push on the face and a load on the edge together.

    Gere and Goodno, Mechanics of Materials (2009), 5.5.

    Notes
    -----
    M / W of both added. Layers that are not glued share the push, each by h (t/n)^2 / 6.
    """
    moment = push * span / (8 if ends == "fixed" else 4)
    layers = 1 if bonded == "glued" else count
    flat = layers * moment * 6 / (height * thickness * thickness)
    return flat + upright_moment * 6 / (thickness * height * height)


def next_stock_thickness(
    material: Material, layer: Number, count: int, lengths: str | None
) -> Number:
    """The next thickness with as many layers of the next thicker sheet in stock.

    The stock table's own sources; inch sheets where the file counts in inches.
    """
    ladder = np.array([*thicknesses(material, inches=lengths == "in"), np.nan])
    place = np.searchsorted(ladder[:-1], np.asarray(layer) * (1 + 1e-9) + 1e-6, side="right")
    found: Number = count * ladder[place]
    return np.where(np.isnan(layer), np.nan, found)
