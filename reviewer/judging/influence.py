"""What moves a finding: one given value, and how much a little more of it changes."""

from dataclasses import dataclass

from reviewer.notation.problem import Place


@dataclass(frozen=True, slots=True)
class Influence:
    """How far one per cent more of a given value moves the utilisation of a finding.

    `text` is the value as the file gives it, at `place`. `effect` is the change of the utilisation
    and `elasticity` the same as per cent of it: -3 where a deflection falls with the cube.
    """

    part: str
    field: str
    text: str
    place: Place
    effect: float
    elasticity: float

    @property
    def name(self) -> str:
        """The name by which a person asks for the value."""
        return f"{self.part}.{self.field}"
