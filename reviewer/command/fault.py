"""Internal faults: one line that says what to report, and a traceback only for who asks."""

import os
import traceback

from reviewer.notation.plain import plain

FAULT = 3
VARIABLE = "REVIEWER_TRACEBACK"


def told_fault(fault: Exception, path: str | None = None) -> str:
    """A fault of the program in one line, with its traceback where the variable asks for it."""
    from reviewer.command.version import version  # not wanted on the path without a fault

    where = f" while reviewing {plain(path)}" if path else ""
    what = plain(f"{type(fault).__name__}: {fault}", 300)
    line = (
        f"reviewer: an internal fault{where}: {what}. Please report this line with the file "
        f"(reviewer {version()}; {VARIABLE}=1 shows where)"
    )
    if os.environ.get(VARIABLE) == "1":
        return "".join(traceback.format_exception(fault)) + line
    return line
