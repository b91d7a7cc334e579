"""A frame on legs: its sway under a level push, and how it stands on an uneven floor."""

from reviewer.mechanics.bending import bending_stress
from reviewer.mechanics.racking import uneven_floor_tilt
from reviewer.parts.allowed import share_of, stated
from reviewer.parts.bars import bar_material, section
from reviewer.parts.figures import figure
from reviewer.parts.frame_sway import (
    by_braces,
    by_joints,
    by_panels,
    critical_load,
    held_by,
    least_side,
    leg_mass,
    leg_moment,
    rocking_at_top,
    sway_under_load,
)
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Count, Flag, Measure, Row, Stock
from reviewer.parts.sheet_rows import THICKNESS


def _joints() -> tuple[Row, ...]:
    return (
        Row(
            "joint_stiffness",
            "N m",
            "moment for each radian that the joint of leg and apron gives",
            Measure(above=0.0, example="10 kN m"),
        ),
        Row("span", "m", "distance between legs along the push", Measure(above=0.0)),
        Row(
            "apron.second_moment",
            "m^4",
            "second moment of area of the apron along the push",
            Measure(above=0.0),
        ),
        Row(
            "bending_stiffness",
            "N m^2",
            "modulus times second moment of area of a leg",
            formula=lambda modulus, second_moment: modulus * second_moment,
            needs={"modulus": "modulus", "second_moment": "section.second_moment"},
        ),
        Row(
            "apron.stiffness",
            "N m^2",
            "modulus times second moment of area of the apron",
            Measure(above=0.0),
            formula=lambda modulus, second_moment: modulus * second_moment,
            needs={"modulus": "modulus", "second_moment": "apron.second_moment"},
        ),
        Row(
            "stiffness.joints",
            "N/m",
            "push for each metre of sway against stiff joints",
            formula=by_joints,
            needs={
                "count": "legs",
                "height": "height",
                "bending_stiffness": "bending_stiffness",
                "joint_stiffness": "joint_stiffness",
                "span": "span?",
                "apron": "apron.stiffness?",
            },
            governs="least",
        ),
    )


def _braces() -> tuple[Row, ...]:
    return (
        Row("brace.reach", "m", "reach of a brace along the push", Measure(above=0.0)),
        Row("brace.rise", "m", "rise of a brace", Measure(above=0.0)),
        Row("brace.area", "m^2", "area of a brace", Measure(above=0.0)),
        Row("brace.modulus", "Pa", "modulus of elasticity of a brace", Measure(above=0.0)),
        Row("brace.working", "", "braces that work at a time", Count(default=1)),
        Row(
            "stiffness.braces",
            "N/m",
            "push for each metre of sway against braces",
            formula=by_braces,
            needs={
                "reach": "brace.reach",
                "rise": "brace.rise",
                "area": "brace.area",
                "modulus": "brace.modulus",
                "working": "brace.working",
                "height": "height",
            },
            governs="least",
        ),
    )


def _panels() -> tuple[Row, ...]:
    return (
        Row(
            "panel.material",
            "",
            "material of the panels in the frame",
            Stock("materials", example="birch plywood"),
        ),
        Row("panel.width", "m", "width of a panel along the push", Measure(above=0.0)),
        Row("panel.height", "m", "height of a panel", Measure(above=0.0)),
        Row("panel.thickness", "m", "thickness of a panel", THICKNESS),
        Row("panel.count", "", "panels along the push", Count(default=1)),
        Row(
            "stiffness.panels",
            "N/m",
            "push for each metre of sway against panels",
            formula=by_panels,
            needs={
                "material": "panel.material",
                "width": "panel.width",
                "rise": "panel.height",
                "thickness": "panel.thickness",
                "count": "panel.count",
                "height": "height",
            },
            governs="least",
        ),
    )


def _sway() -> tuple[Row, ...]:
    loaded = {"push": "push", "height": "height", "load": "bears.force"}
    return (
        Row(
            "held_by",
            "",
            "what keeps it from swaying",
            Choice(("joints", "braces", "panels"), default="joints"),
        ),
        Row(
            "stiffness",
            "N/m",
            "push for each metre of sway",
            Measure(above=0.0),
            formula=held_by,
            needs={
                "how": "held_by",
                "joints": "stiffness.joints?",
                "braces": "stiffness.braces?",
                "panels": "stiffness.panels?",
            },
            because="needs the measures of what keeps it from swaying",
            governs="least",
        ),
        Row(
            "push",
            "N",
            "level push at its top",
            Measure(at_least=0.0, example="200 N"),
            formula=stated,
            needs={"limit": "limit.frame_push"},
        ),
        Row(
            "critical_load",
            "N",
            "load on top under which it falls over sideways",
            formula=critical_load,
            needs={"stiffness": "stiffness", "height": "height"},
            governs="least",
        ),
        Row(
            "sway",
            "m",
            "sway at its top under the push and what it carries",
            formula=sway_under_load,
            needs={**loaded, "stiffness": "stiffness"},
            because="has no end under a load that makes it fall over",
            read="at its top, from a wall or a post that stands apart",
        ),
        Row(
            "allowed_sway",
            "m",
            "sway that it may have",
            Measure(above=0.0),
            formula=share_of,
            needs={"length": "height", "divisor": "limit.frame_height_over_sway"},
        ),
        Row(
            "leg_moment",
            "N m",
            "bending moment at the top of a leg",
            formula=leg_moment,
            needs={**loaded, "count": "legs", "sway": "sway"},
        ),
        Row(
            "bending_stress",
            "Pa",
            "bending stress at the top of a leg",
            formula=bending_stress,
            needs={"moment": "leg_moment", "section_modulus": "section.section_modulus"},
        ),
    )


def _floor() -> tuple[Row, ...]:
    return (
        Row("feet.length", "m", "distance between feet", Measure(above=0.0)),
        Row("feet.width", "m", "distance between feet, the other way", Measure(above=0.0)),
        Row("feet.adjust", "", "whether feet adjust to the floor", Flag()),
        Row(
            "floor.gap",
            "m",
            "gap under the fourth foot on the floor as it is",
            Measure(at_least=0.0, example="3 mm"),
            formula=stated,
            needs={"limit": "limit.floor_gap"},
        ),
        Row(
            "feet.side",
            "m",
            "shorter side of the rectangle of feet",
            formula=least_side,
            needs={"length": "feet.length", "width": "feet.width"},
            governs="least",
        ),
        Row(
            "floor.tilt",
            "rad",
            "tilt between its two ways of standing",
            formula=uneven_floor_tilt,
            needs={"gap": "floor.gap", "side": "feet.side"},
        ),
        Row(
            "floor.rocking",
            "m",
            "how far its top moves as it rocks",
            formula=rocking_at_top,
            needs={"tilt": "floor.tilt", "height": "height", "legs": "legs"},
        ),
        Row(
            "floor.allowed",
            "m",
            "how far its top may move as it rocks",
            Measure(at_least=0.0, example="2 mm"),
            formula=stated,
            needs={"limit": "limit.frame_rocking"},
        ),
    )


SHAPE = (
    *("height", "legs", "feet.length", "feet.width"),
    *("section.width", "section.height"),
)

FRAME = Kind(
    name="frame",
    says="a frame on legs",
    rows=(
        *tree(),
        figure("frame", *SHAPE),
        *single(
            leg_mass,
            {
                "area": "section.area",
                "height": "height",
                "density": "density",
                "count": "legs",
            },
        ),
        Row(
            "height",
            "m",
            "height of the legs, to the joint at their top",
            Measure(above=0.0, example="700 mm"),
        ),
        Row("legs", "", "legs that stand in it", Count(default=4)),
        *section(),
        *bar_material("beech"),
        *_joints(),
        *_braces(),
        *_panels(),
        *_sway(),
        *_floor(),
    ),
)
