"""What kind of thing a number measures: exponents of length, mass, time and temperature."""

from dataclasses import dataclass
from fractions import Fraction

Exponent = int | Fraction


@dataclass(frozen=True, slots=True)
class Dimension:
    """A product of powers of length, mass, time and temperature, or an angle.

    An angle is a plain number to physics (SI Brochure, 9th edition, 2.3.3) but a degree written
    where a ratio is due is a slip, so it is kept apart. It lasts only while everything around it is
    a plain number: angle x number is an angle, angle / angle a number, length x angle a length.

    >>> LENGTH * ANGLE == LENGTH, ANGLE / ANGLE == NUMBER, ANGLE == NUMBER
    (True, True, False)
    >>> AREA ** Fraction(1, 2) == LENGTH
    True
    """

    length: Exponent = 0
    mass: Exponent = 0
    time: Exponent = 0
    temperature: Exponent = 0
    angle: bool = False

    def __post_init__(self) -> None:
        if self.angle and any(self.exponents):
            raise ValueError("an angle has no length, mass, time or temperature")

    @property
    def exponents(self) -> tuple[Exponent, Exponent, Exponent, Exponent]:
        """The exponents of length, mass, time and temperature."""
        return (self.length, self.mass, self.time, self.temperature)

    def __mul__(self, other: "Dimension") -> "Dimension":
        plain = not any(self.exponents) and not any(other.exponents)
        return Dimension(
            self.length + other.length,
            self.mass + other.mass,
            self.time + other.time,
            self.temperature + other.temperature,
            plain and self.angle != other.angle,
        )

    def __truediv__(self, other: "Dimension") -> "Dimension":
        plain = not any(self.exponents) and not any(other.exponents)
        return Dimension(
            self.length - other.length,
            self.mass - other.mass,
            self.time - other.time,
            self.temperature - other.temperature,
            plain and self.angle and not other.angle,
        )

    def __pow__(self, power: Exponent) -> "Dimension":
        exact = Fraction(power)
        length, mass, time, temperature = (each * exact for each in self.exponents)
        return Dimension(length, mass, time, temperature, self.angle and exact == 1)


NUMBER = Dimension()
ANGLE = Dimension(angle=True)
LENGTH = Dimension(length=1)
AREA = LENGTH**2
VOLUME = LENGTH**3
SECTION_MODULUS = VOLUME
SECOND_MOMENT = LENGTH**4
CURVATURE = NUMBER / LENGTH
MASS = Dimension(mass=1)
TIME = Dimension(time=1)
TEMPERATURE = Dimension(temperature=1)
FREQUENCY = NUMBER / TIME
SPEED = LENGTH / TIME
ACCELERATION = SPEED / TIME
FORCE = MASS * ACCELERATION
MOMENT = FORCE * LENGTH
ENERGY = MOMENT
POWER = ENERGY / TIME
PRESSURE = FORCE / AREA
STIFFNESS = FORCE / LENGTH
LINE_LOAD = STIFFNESS
COMPLIANCE = LENGTH / FORCE
BED_MODULUS = PRESSURE / LENGTH
FLEXURAL_RIGIDITY = PRESSURE * SECOND_MOMENT
DENSITY = MASS / VOLUME
LINE_DENSITY = MASS / LENGTH
SURFACE_DENSITY = MASS / AREA
EXPANSION = NUMBER / TEMPERATURE

_WORDS = {
    NUMBER: "a plain number",
    ANGLE: "an angle",
    LENGTH: "a length",
    AREA: "an area",
    VOLUME: "a volume or section modulus",
    SECOND_MOMENT: "a second moment of area",
    MASS: "a mass",
    TIME: "a time",
    TEMPERATURE: "a temperature",
    FREQUENCY: "a frequency or speed of rotation",
    SPEED: "a speed",
    ACCELERATION: "an acceleration",
    FORCE: "a force",
    MOMENT: "a moment or energy",
    POWER: "a power",
    PRESSURE: "a pressure or stress",
    STIFFNESS: "a stiffness or line load",
    DENSITY: "a density",
    SURFACE_DENSITY: "a mass per area",
    LINE_DENSITY: "a mass per length",
}


def words(dimension: Dimension) -> str:
    """Name a dimension in a reader's words, or by its SI unit where it has no name.

    >>> words(PRESSURE), words(FORCE * AREA)
    ('a pressure or stress', 'a quantity in N m^2')
    """
    return _WORDS.get(dimension) or f"a quantity in {si_symbol(dimension)}"


def si_symbol(dimension: Dimension) -> str:
    """Write the coherent SI unit of a dimension, with the newton in it where that is shorter.

    >>> si_symbol(PRESSURE), si_symbol(FREQUENCY), si_symbol(DENSITY), si_symbol(ANGLE)
    ('N/m^2', '1/s', 'kg/m^3', 'rad')
    """
    if dimension.angle:
        return "rad"
    length, mass, time, temperature = dimension.exponents
    symbols = [("kg", mass), ("m", length), ("s", time), ("K", temperature)]
    if mass and time == -2 * mass:
        symbols = [("N", mass), ("m", length - mass), ("K", temperature)]
    over = [_power(symbol, power) for symbol, power in symbols if power > 0]
    under = [_power(symbol, -power) for symbol, power in symbols if power < 0]
    return "/".join([" ".join(over) or "1", *under])


def _power(symbol: str, power: Exponent) -> str:
    if power == 1:
        return symbol
    whole = Fraction(power).denominator == 1
    return f"{symbol}^{power}" if whole else f"{symbol}^({power})"
