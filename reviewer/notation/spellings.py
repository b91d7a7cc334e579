"""What people write for a unit of the table, and what must not be taken for one."""

from collections.abc import Mapping

# Only to point a writer to the right symbol; none of it is read.
SPELLINGS: Mapping[str, str] = {
    **dict.fromkeys(["inch", "inches", "ins"], "in"),
    **dict.fromkeys(["foot", "feet"], "ft"),
    **dict.fromkeys(["µm", "μm", "micron", "microns"], "um"),
    **dict.fromkeys(["millimetre", "millimetres", "millimeter", "millimeters"], "mm"),
    **dict.fromkeys(["metre", "metres", "meter", "meters"], "m"),
    **dict.fromkeys(["kilo", "kilos", "kilogram", "kilograms"], "kg"),
    **dict.fromkeys(["pound", "pounds", "lbs", "lbm"], "lb"),
    **dict.fromkeys(["newton", "newtons"], "N"),
    **dict.fromkeys(["°", "º", "degree", "degrees"], "deg"),
    **dict.fromkeys(["°C", "ºC", "C", "℃", "celsius"], "degC"),
    **dict.fromkeys(["°F", "ºF", "F", "℉", "fahrenheit"], "degF"),
    **dict.fromkeys(["percent", "pct"], "%"),
    **dict.fromkeys(["L", "litre", "litres", "liter", "liters"], "l"),
    **dict.fromkeys(["sec", "second", "seconds"], "s"),
    **dict.fromkeys(["hr", "hrs", "hour", "hours"], "h"),
    "minute": "min",
    "minutes": "min",
    "days": "day",
    "tonne": "t",
    "tonnes": "t",
    "Nm": "N m",
    "kNm": "kN m",
    "Nmm": "N mm",
}

# Words that are no slip, so that the nearest symbol would mislead; each with what is wrong.
TRAPS: Mapping[str, str] = {
    "mil": "mil may be a thousandth of an inch or a millimetre",
    "mils": "mil may be a thousandth of an inch or a millimetre",
    "thou": "the unit is not known",
}
