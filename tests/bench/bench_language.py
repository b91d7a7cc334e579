"""How long the language takes: to read a rule, to check it, to judge it. Run as a program."""

from timeit import repeat

import numpy as np

from reviewer.judging.compiled import judge
from reviewer.judging.kinds import Names
from reviewer.judging.language import parse
from reviewer.judging.template import parse_template
from reviewer.notation.dimension import FORCE, LENGTH, PRESSURE

NAMES = Names(
    {
        "hold_down.peak_load": FORCE,
        "hold_down.allowed_load": FORCE,
        "gap": LENGTH,
        "web.area": LENGTH**2,
        "web.strength": PRESSURE,
    }
)
RULES = (
    "hold_down.peak_load <= hold_down.allowed_load",
    "hold_down.peak_load > 0 N",
    "5 mm <= gap <= 8 mm",
    "hold_down.peak_load / web.area <= 0.8 * web.strength and gap >= 2 mm",
)
SAYS = "The ring lifts under {case}; its busiest hold-down takes {demand} of {capacity}."
TIMES, ROUNDS = 2_000, 5


def microseconds(run: object) -> float:
    """The least time of one call."""
    return min(repeat(run, number=TIMES, repeat=ROUNDS)) / TIMES * 1e6  # type: ignore[arg-type]


def main() -> None:
    """Print a table of times."""
    one = dict.fromkeys(NAMES, 2.0)
    cases = dict.fromkeys(NAMES, np.full((1, 12), 2.0))
    print(f"{'microseconds':72} {'read':>6} {'check':>6} {'judge 1':>8} {'12':>6}")
    for text in RULES:
        tree = parse(text)
        rule = judge(tree, NAMES)
        times = (
            microseconds(lambda text=text: parse(text)),
            microseconds(lambda tree=tree: judge(tree, NAMES)),
            microseconds(lambda rule=rule: rule.judge(one.get)),
            microseconds(lambda rule=rule: rule.judge(cases.get)),
        )
        print(f"{text:72} {times[0]:6.1f} {times[1]:6.1f} {times[2]:8.1f} {times[3]:6.1f}")
    print(f"{SAYS:72.72} {microseconds(lambda: parse_template(SAYS)):6.1f}")


if __name__ == "__main__":
    main()
