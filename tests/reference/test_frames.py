"""Arcs, ring beams, levers and portals against frames of straight pieces (PyNiteFEA)."""

from math import cos, pi, radians, sin

import pytest

from reviewer.mechanics.cantilevers import cantilever_deflection
from reviewer.mechanics.curved import arc_cantilever_deflection, arc_middle_load, arc_uniform
from reviewer.mechanics.racking import leg_sway_stiffness, portal_sway_stiffness
from reviewer.mechanics.ring_beams import ring_beam, ring_squeeze
from reviewer.mechanics.shafts import lever_end_deflection

pynite = pytest.importorskip("Pynite")

SIX = ("DX", "DY", "DZ", "RX", "RY", "RZ")


def frame(stiff=1.0, twist=1.0, other=1.0):
    """An empty frame of E = 1 whose pieces bend with E I = stiff under a load along y."""
    model = pynite.FEModel3D()
    model.add_material("stuff", 1.0, 1.0, 0.3, 1.0)
    model.add_section("piece", 1e6, other, stiff, twist)
    return model


def hold(model, node, held=SIX):
    model.def_support(node, **{f"support_{name}": True for name in held})


def arc(model, angle, pieces):
    """A chain of straight pieces along an arc of radius 1 in the plane x-z; its node names."""
    names = []
    for i in range(pieces + 1):
        turn = angle * i / pieces
        model.add_node(f"n{i}", cos(turn), 0.0, sin(turn))
        names.append(f"n{i}")
    for i in range(pieces):
        model.add_member(f"m{i}", names[i], names[i + 1], "stuff", "piece")
    return names


def spread(model, names, angle, pieces):
    """An even load of 1 per length of arc, on the nodes."""
    for i, name in enumerate(names):
        share = angle / pieces * (0.5 if i in (0, pieces) else 1.0)
        model.add_node_load(name, "FY", -share)


@pytest.mark.parametrize("ratio", [1.3, 10.0])
@pytest.mark.parametrize("degrees", [45, 120, 180])
def test_fixed_arc(degrees, ratio):
    angle, pieces = radians(degrees), 60
    found = {}
    for case in ("force", "even"):
        model = frame(twist=1 / ratio)
        names = arc(model, angle, pieces)
        hold(model, names[0])
        hold(model, names[-1])
        if case == "force":
            model.add_node_load(names[pieces // 2], "FY", -1.0)
        else:
            spread(model, names, angle, pieces)
        model.analyze(check_stability=False)
        found[case] = -model.nodes[names[pieces // 2]].DY["Combo 1"]
    force = arc_middle_load(1.0, 1.0, angle, 1.0, 1 / ratio)
    even = arc_uniform(1.0, 1.0, angle, 1.0, 1 / ratio)
    assert force.deflection == pytest.approx(found["force"], rel=2e-3)
    assert even.deflection == pytest.approx(found["even"], rel=3e-3)


@pytest.mark.parametrize(("degrees", "ratio"), [(45, 1.3), (90, 3.0), (180, 1.3)])
def test_arc_cantilever(degrees, ratio):
    model = frame(twist=1 / ratio)
    names = arc(model, radians(degrees), 60)
    hold(model, names[0])
    model.add_node_load(names[-1], "FY", -1.0)
    model.analyze(check_stability=False)
    tip = -model.nodes[names[-1]].DY["Combo 1"]
    formula = arc_cantilever_deflection(1.0, 1.0, radians(degrees), 1.0, 1 / ratio)
    assert formula == pytest.approx(tip, rel=1e-3)


@pytest.mark.parametrize("count", [3, 4, 6])
def test_ring_beam(count):
    pieces = 24 * count
    model = frame(twist=1 / 1.3)
    for i in range(pieces):
        turn = 2 * pi * i / pieces
        model.add_node(f"n{i}", cos(turn), 0.0, sin(turn))
        model.add_node_load(f"n{i}", "FY", -2 * pi / pieces)
    for i in range(pieces):
        model.add_member(f"m{i}", f"n{i}", f"n{(i + 1) % pieces}", "stuff", "piece")
    for i in range(count):
        hold(model, f"n{24 * i}", ("DY",))
    hold(model, "n0", ("DX", "DY", "DZ", "RY"))
    model.analyze(check_stability=False)
    sag = -model.nodes["n12"].DY["Combo 1"]
    assert ring_beam(1.0, 1.0, count, 1.0, 1 / 1.3).deflection == pytest.approx(sag, rel=5e-3)


@pytest.mark.parametrize("count", [2, 3, 5])
def test_ring_squeeze(count):
    pieces = 30 * count
    model = frame()
    for i in range(pieces):
        turn = 2 * pi * i / pieces
        model.add_node(f"n{i}", cos(turn), 0.0, sin(turn))
        if i % 30 == 0:
            model.add_node_load(f"n{i}", "FX", cos(turn))
            model.add_node_load(f"n{i}", "FZ", sin(turn))
    for i in range(pieces):
        model.add_member(f"m{i}", f"n{i}", f"n{(i + 1) % pieces}", "stuff", "piece")
    hold(model, "n0")
    for i in range(1, pieces):
        hold(model, f"n{i}", ("DY", "RX", "RZ"))
    model.analyze(check_stability=False)
    # The mean over the forces is free of how the ring as a whole is held.
    outwards = [
        model.nodes[f"n{30 * i}"].DX["Combo 1"] * cos(2 * pi * i / count)
        + model.nodes[f"n{30 * i}"].DZ["Combo 1"] * sin(2 * pi * i / count)
        for i in range(count)
    ]
    squeeze = ring_squeeze(1.0, 1.0, count, 1.0)
    assert squeeze.deflection == pytest.approx(sum(outwards) / count, rel=5e-3)


def test_lever_on_a_shaft():
    model = frame(stiff=1.0, twist=2.0)
    for name, x, z in (("root", 0, 0), ("hub", 0.4, 0), ("end", 0.4, 0.3)):
        model.add_node(name, x, 0.0, z)
    model.add_member("shaft", "root", "hub", "stuff", "piece")
    model.add_member("lever", "hub", "end", "stuff", "piece")
    hold(model, "root")
    model.add_node_load("end", "FY", -1.0)
    model.analyze(check_stability=False)
    end = -model.nodes["end"].DY["Combo 1"]
    assert lever_end_deflection(1.0, 0.3, 0.4, 1.0, 1.0, 2.0) == pytest.approx(end, rel=1e-6)


def test_portal():
    model = frame(stiff=1.0, other=1.0)
    model.add_section("apron", 1e6, 3.0, 3.0, 1.0)
    for name, x, y in (("a", 0, 0), ("b", 0, 2), ("c", 3, 2), ("d", 3, 0)):
        model.add_node(name, x, y, 0.0)
    model.add_member("left", "a", "b", "stuff", "piece")
    model.add_member("top", "b", "c", "stuff", "apron")
    model.add_member("right", "c", "d", "stuff", "piece")
    hold(model, "a", ("DX", "DY", "DZ", "RX", "RY"))
    hold(model, "d", ("DX", "DY", "DZ", "RX", "RY"))
    model.add_node_load("b", "FX", 0.5)
    model.add_node_load("c", "FX", 0.5)
    model.analyze(check_stability=False)
    sway = model.nodes["b"].DX["Combo 1"]
    stiffness = portal_sway_stiffness(2.0, 3.0, 1.0, 3.0, 1e12)
    assert 1 / stiffness == pytest.approx(sway, rel=1e-4)
    assert leg_sway_stiffness(2.0, 1.0, 1e12) == pytest.approx(
        1 / cantilever_deflection(1.0, 2.0, 2.0, 1.0), rel=1e-9
    )
