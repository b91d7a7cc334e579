"""The problems of one file, gathered up to a limit."""

from reviewer.notation.problem import Place, Problem, problems_in_order
from reviewer.reading import words
from reviewer.reading.source import Source
from reviewer.reading.words import MAX_PROBLEMS, Words


class Enough(Exception):
    """Reading stops: a limit is reached, and what it is stands among the problems."""


class Gathering:
    """What is wrong with a text, as far as it has been read."""

    def __init__(self, source: Source) -> None:
        """Begin with what is wrong with the characters of the text."""
        self.source = source
        self.problems: list[Problem] = list(source.problems)

    def check(self) -> None:
        """Stop where there are more problems than anybody reads."""
        if len(self.problems) > MAX_PROBLEMS:
            raise Enough

    def report(self, problem: Problem) -> None:
        """Note a problem, and stop where there are too many."""
        self.problems.append(problem)
        self.check()

    def refuse(self, place: Place, said: Words) -> None:
        """Note a problem at a place."""
        self.report(self.source.problem(place.line, (place.column, place.end_column), said))

    def report_new(self, problem: Problem) -> None:
        """Note a problem unless one is known at the same character."""
        known = {(each.place.line, each.place.column) for each in self.problems}
        if (problem.place.line, problem.place.column) not in known:
            self.report(problem)

    def in_order(self) -> tuple[Problem, ...]:
        """Return the problems in order of place; what is over the limit becomes one notice."""
        told = problems_in_order(self.problems[:MAX_PROBLEMS])
        for more in self.problems[MAX_PROBLEMS : MAX_PROBLEMS + 1]:
            columns = (more.place.column, more.place.end_column)
            told.append(self.source.problem(more.place.line, columns, words.TOO_MANY_PROBLEMS))
        return tuple(told)
