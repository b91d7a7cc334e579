"""What a shop's file may say, as rows: the shop itself, its stock, cutters, allowances, changes."""

from collections.abc import Mapping
from types import MappingProxyType

from reviewer.parts.facts import LEVELS
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Choices, Count, Entry, Flag, Measure, Row, Text
from reviewer.parts.shop_facts import ALLOWANCES as SHOP_ALLOWANCES
from reviewer.stock.materials import FAMILIES

LARGEST_CHANGE = 10.0
STRENGTHS = ("characteristic", "mean", "product minimum", "specified minimum", "typical")
DURATIONS = ("MDF", "OSB", "particleboard", "plywood", "solid timber")
SHAPES = ("straight", "ball nose", "vee", "rebate", "round over", "drill", "saw")
NOTHING: Mapping[str, str] = MappingProxyType({})
SOURCE = Row("source", "", "where its numbers are from: a standard, a table, a test", Text())


def _words(name: str) -> str:
    return name.replace("_", " ")


def _numbers(
    units: Mapping[str, str], example: Mapping[str, str], says: Mapping[str, str] = NOTHING
) -> tuple[Row, ...]:
    """A row for each number of a stock row; its table checks what is plausible."""
    return tuple(
        Row(
            name,
            unit,
            says.get(name, _words(name)),
            Measure(at_least=0.0, example=example.get(name, "")),
        )
        for name, unit in units.items()
    )


def _kind(name: str, says: str, *rows: Row) -> Kind:
    return Kind(name=name, says=says, rows=rows, carries_load=False)


MATERIAL = _kind(
    "material",
    "a material that the shop has in stock",
    SOURCE,
    Row("like", "", "a material of the tables, whose numbers hold where none are given", Text()),
    Row("family", "", "what it is", Choice(FAMILIES)),
    Row("strength_basis", "", "what its strengths are", Choice(STRENGTHS)),
    Row("duration_class", "", "which factors of EN 1995-1-1 hold for it", Choice(DURATIONS)),
    *_numbers(
        {
            "density": "kg/m^3",
            **dict.fromkeys(("modulus", "modulus_across", "modulus_through"), "Pa"),
            **dict.fromkeys(("shear_modulus", "planar_shear_modulus"), "Pa"),
            "poisson": "1",
            **dict.fromkeys(("bending_strength", "bending_strength_across"), "Pa"),
            **dict.fromkeys(("tensile_strength", "compression_strength"), "Pa"),
            **dict.fromkeys(("compression_across", "shear_strength"), "Pa"),
            **dict.fromkeys(("planar_shear_strength", "yield_strength"), "Pa"),
            "hardness_janka": "N",
            **dict.fromkeys(("movement_radial", "movement_tangential"), "1"),
            **dict.fromkeys(("movement_along", "movement_thickness", "partial_factor"), "1"),
        },
        {"density": "680 kg/m^3", "modulus": "9.5 GPa", "movement_along": "0.02 %"},
    ),
)

BEARING = _kind(
    "bearing",
    "a deep groove ball bearing that the shop has in stock",
    SOURCE,
    *_numbers(
        {
            **dict.fromkeys(("bore", "outer", "width", "corner"), "m"),
            **dict.fromkeys(("dynamic_rating", "dynamic_rating_high"), "N"),
            **dict.fromkeys(("static_rating", "static_rating_high"), "N"),
            "f0": "1",
            "ball_diameter": "m",
            "mass": "kg",
        },
        {"bore": "12 mm", "static_rating": "2.4 kN", "mass": "22 g"},
    ),
    Row("balls", "", "how many balls it has", Count(at_least=3, at_most=60)),
)

FASTENER = _kind(
    "fastener",
    "a thread that the shop has in stock, with what is screwed on it",
    SOURCE,
    Row(
        "series",
        "",
        "the standard that its thread follows",
        Choice(("ISO metric coarse", "UNC"), default="ISO metric coarse"),
    ),
    *_numbers(
        dict.fromkeys(
            (
                *("diameter", "pitch", "hex_width", "hex_height", "hex_face", "socket_head"),
                *("socket_height", "nut_height", "lock_nut_height", "washer_hole"),
                *("washer_outer", "washer_thickness", "wide_washer_hole", "wide_washer_outer"),
                *("wide_washer_thickness", "hole_fine", "hole_medium", "hole_coarse"),
            ),
            "m",
        ),
        {"diameter": "7 mm", "pitch": "1 mm"},
    ),
)

SHEET = _kind(
    "sheet",
    "a sheet or board that the shop has in stock",
    SOURCE,
    Row("material", "", "a material of the tables or of the shop", Text()),
    *_numbers(
        dict.fromkeys(("nominal", "actual", "low", "high", "length", "width"), "m"),
        {"nominal": "18 mm", "actual": "17.6 mm", "length": "2440 mm"},
    ),
)

CUTTER = _kind(
    "cutter",
    "a cutter, bit or blade of the shop",
    Row("shape", "", "its shape", Choice(SHAPES, default="straight")),
    *_numbers(
        dict.fromkeys(("diameter", "cutting_length", "length", "shank", "kerf", "depth"), "m"),
        {"diameter": "12 mm", "cutting_length": "38 mm", "kerf": "3.2 mm"},
    ),
    Row("angle", "rad", "angle of its point or of its cut", Measure(example="45 deg")),
)

ALLOWANCES = _kind(
    "allowances",
    "what the shop leaves for its own ways of working",
    *_numbers(
        dict.fromkeys(SHOP_ALLOWANCES, "m"),
        {"kerf": "3.2 mm", "trim": "10 mm", "clearance": "0.5 mm"},
        SHOP_ALLOWANCES,
    ),
)

PRICE = _kind(
    "price",
    "what the shop pays for a sheet, a bearing, a bolt or a material",
    Row("each", "1", "the price, in the shop's currency", Measure(at_least=0.0, example="74.50")),
    Row(
        "per",
        "",
        "what it is the price of",
        Choice(("piece", "sheet", "metre", "kilogram"), default="piece"),
    ),
)

REASON = (
    Row("by", "", "who decided it", Text()),
    Row("why", "", "why it is so in this shop; every report shows it", Text()),
)


def _factor(name: str, says: str, entry: Entry) -> Row:
    return Row(name, "1", says, entry)


RULE = _kind(
    "change of a rule",
    "what a shop makes of a rule that comes with a pack",
    Row("silence", "", "the rule counts for nothing", Flag(default=None)),
    _factor(
        "tighten",
        "the share of its limit that the shop allows",
        Measure(above=0.0, below=1.0, example="0.8"),
    ),
    _factor(
        "loosen",
        "how many times its limit the shop allows",
        Measure(above=1.0, at_most=LARGEST_CHANGE, example="1.2"),
    ),
    Row("level", "", "the level that it has in this shop", Choice(("must", "should", "note"))),
    *REASON,
)

LIMIT = _kind(
    "change of a limit",
    "what a shop makes of a named limit",
    Row("value", "", "the limit in this shop, with its unit", Text()),
    Row("for", "", "the levels that it is for; all where none is named", Choices(LEVELS)),
    *REASON,
)

SHOP = _kind(
    "shop",
    "the ways of a shop: its stock, cutters, allowances and rules",
    Row("shop", "", "name of the shop", Text()),
    Row("currency", "", "what its prices are in", Text()),
    Row(
        "lengths",
        "",
        "unit of bare numbers where a length is due",
        Choice(("mm", "cm", "m", "in")),
    ),
)
STOCK = {"materials": MATERIAL, "bearings": BEARING, "fasteners": FASTENER, "sheets": SHEET}
