"""A report that is ready before it is asked for, so that it goes where all reports go."""

from reviewer.judging.reviewed import Review


class Ready:
    """A text as a report of its own."""

    def __init__(self, text: str) -> None:
        """Keep the text."""
        self._text = text

    def piece(self, review: Review) -> None:
        """No design adds to it."""

    def put(self, piece: None) -> str:
        """No design adds to it."""
        return ""

    def end(self) -> str:
        """All of it."""
        return self._text
