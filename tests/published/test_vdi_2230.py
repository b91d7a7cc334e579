"""VDI 2230: assembly preload and torque, class 8.8. `seen`: how each number was reached."""

import pytest

from reviewer.mechanics.bolt_assembly import assembly_preload, assembly_torque
from reviewer.mechanics.bolts import tightening_factor

FINE = "VDI 2230 Part 1, tables of fine threads, 8.8, as reprinted"
COARSE = "VDI 2230 Part 1, coarse threads, 8.8, by script"
HEADS = {5: (6.88, 5.5), 6: (8.88, 6.6), 8: (11.63, 9.0), 10: (14.63, 11.0), 12: (16.63, 13.5)}

# fmt: off
# d, P in mm, friction, FM in kN, MA in N m, tolerance
VALUES = [
    *[(8, 1.0, mu, f, t, 1e-2, FINE, "print")
      for mu, f, t in [(0.10, 20.7, 22.8), (0.12, 20.2, 26.1), (0.14, 19.7, 29.2)]],
    *[(10, 1.25, mu, f, t, 1.5e-2, FINE, "print")
      for mu, f, t in [(0.10, 32.4, 44), (0.12, 31.6, 51), (0.14, 30.8, 57)]],
    *[(12, 1.25, mu, f, t, 1.5e-2, FINE, "print")
      for mu, f, t in [(0.10, 49.1, 79), (0.12, 48.0, 90), (0.14, 46.8, 101)]],
    *[(d, p, 0.12, f, t, 1.5e-2, COARSE, "computed")
      for d, p, f, t in [(5, 0.8, 7.2, 5.8), (6, 1.0, 10.2, 10.1), (8, 1.25, 18.6, 24.5),
                         (10, 1.5, 29.6, 48.3), (12, 1.75, 43.1, 83.4)]],
]

ROWS = [
    *[(assembly_preload, (d * 1e-3, p * 1e-3, 640e6, mu), f * 1e3, tolerance, source, seen)
      for d, p, mu, f, t, tolerance, source, seen in VALUES],
    *[(assembly_torque, (f * 1e3, d * 1e-3, p * 1e-3, mu, mu, *(x * 1e-3 for x in HEADS[d])), t,
       tolerance, source, seen) for d, p, mu, f, t, tolerance, source, seen in VALUES],
    (assembly_preload, (12e-3, 1.75e-3, 640e6, 0.14), 41.9e3, 5e-3,
     "VDI 2230 Part 1, coarse M12, as reprinted", "print"),
    (tightening_factor, (0.3,), 1.857, 1e-3, "definition of alpha A, by hand", "computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
