"""The ledger of a sheet: every number behind its findings once, with what it comes from."""

from collections.abc import Iterator
from dataclasses import dataclass, field

from reviewer.notation.show import show
from reviewer.notation.units import Unit
from reviewer.reporting.trace_text import shown
from reviewer.studying.trace import Step

Key = tuple[str, str]


@dataclass
class Line:
    """One number: what it is, how it is reckoned, where it is given, and which it comes from."""

    number: int
    name: str
    value: str
    says: str
    formula: str
    source: str
    place: str
    inputs: list["Line"] = field(default_factory=list)


class Ledger:
    """Lines in the order of their first coming; the same number in another case is another line."""

    def __init__(self, own: str) -> None:
        """Begin a ledger of a design; a number that another file gives is told with that file."""
        self.own = own
        self.lines: list[Line] = []
        self._known: dict[Key, Line] = {}

    def enter(self, step: Step) -> Line:
        """The line of a number, with all that is behind it."""
        key = (step.name, shown(step))
        known = self._known.get(key)
        if known is not None:
            if step.inputs and not known.inputs:
                self._fill(known, step)
            return known
        line = Line(
            len(self.lines) + 1,
            step.name,
            key[1],
            step.says,
            step.formula if step.formula != step.says else "",
            step.source,
            self._place(step),
        )
        self.lines.append(line)
        self._known[key] = line
        self._fill(line, step)
        return line

    def find(self, name: str, value: float, unit: Unit) -> Line | None:
        """The line of a number that a finding tells, if it is in the ledger."""
        return self._known.get((name, show(value, unit)))

    def _fill(self, line: Line, step: Step) -> None:
        line.inputs = list(self._entered(step))
        line.formula = line.formula or (step.formula if step.formula != step.says else "")
        line.source = line.source or step.source

    def _entered(self, step: Step) -> Iterator[Line]:
        seen: set[int] = set()
        for each in step.inputs:
            line = self.enter(each)
            if line.number not in seen:
                seen.add(line.number)
                yield line

    def _place(self, step: Step) -> str:
        if step.line is None:
            is_default = step.value is not None and not step.formula and not step.inputs
            return "by default" if is_default and not step.again else ""
        elsewhere = f" of {step.path}" if step.path not in (None, self.own) else ""
        return f"line {step.line}{elsewhere}"
