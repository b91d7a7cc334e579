"""The streams of the command line: their width, their colour, and what they cannot print."""

import os
import sys
from collections.abc import Mapping
from typing import TextIO

from reviewer.reporting.sheet import Style

WIDTH = 80
NARROWEST, WIDEST = 40, 100


def style_of(stream: TextIO, environment: Mapping[str, str]) -> Style:
    """Width and colour for a stream, by what the environment says and whether it is a terminal."""
    on_terminal = stream.isatty()
    width = width_of(stream, environment) if on_terminal else WIDTH
    return Style(min(max(width, NARROWEST), WIDEST), wants_colour(on_terminal, environment))


def width_of(stream: TextIO, environment: Mapping[str, str]) -> int:
    """How many columns a terminal has."""
    columns = environment.get("COLUMNS", "")
    if columns.isdecimal() and len(columns) < 6 and int(columns):
        return int(columns)
    try:
        return os.get_terminal_size(stream.fileno()).columns or WIDTH
    except OSError:
        return WIDTH


def wants_colour(on_terminal: bool, environment: Mapping[str, str]) -> bool:
    """Whether to print in colour: NO_COLOR decides first, then FORCE_COLOR, then the stream."""
    if environment.get("NO_COLOR"):
        return False
    if environment.get("FORCE_COLOR"):
        return True
    return on_terminal and environment.get("TERM") != "dumb"


def prepare_streams() -> None:
    """Let no character stop a report: what a stream cannot encode becomes a question mark."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")


def mute(stream: TextIO) -> None:
    """Point a stream whose reader has gone at nothing, so that leaving does not fail either."""
    nothing = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nothing, stream.fileno())
    os.close(nothing)


def say(text: str) -> None:
    """Print to standard output; once its reader has gone, nothing more is printed, and quietly."""
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except BrokenPipeError:
        mute(sys.stdout)


def complain(text: str) -> None:
    """Print to standard error, quietly if nobody reads it."""
    try:
        sys.stderr.write(f"{text}\n")
        sys.stderr.flush()
    except BrokenPipeError:
        mute(sys.stderr)
