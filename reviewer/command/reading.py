"""One design of a command line, read and reviewed under what is in force."""

from datetime import date

from reviewer.command.inputs import Input
from reviewer.judging.in_force import InForce
from reviewer.judging.reviewed import Review
from reviewer.reviewing import review_under, unreadable


def read_review(each: Input, in_force: InForce, on: date | None = None) -> Review:
    """The review of a design on a day, or the problem of a file that cannot be opened."""
    if each.problem is not None:
        return Review(each.path, (each.problem,))
    try:
        source = each.read()
    except OSError as error:
        return Review(each.path, (unreadable(each.path, error),))
    return review_under(in_force, source, each.path, each.folder, on)
