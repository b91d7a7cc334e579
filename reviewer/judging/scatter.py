"""How a finding scatters when the values with tolerances lie anywhere within their limits."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Scatter:
    """What tolerances make of one finding.

    `corner` is the utilisation where every value stands at the end of its band that is worse, and
    `corner_fails` whether the finding fails there; both are unknown (NaN, None) where it cannot be
    judged. `share` is the part of the samples that fail and `unknown` the part that could not be
    judged, out of `samples`. `band` names the value whose tolerance contributes most to the
    scatter, and `part` how much of its variance; nothing where none moves it.
    """

    corner: float
    corner_fails: bool | None
    share: float
    unknown: float
    samples: int
    band: str | None
    part: float
