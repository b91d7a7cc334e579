"""The command `reviewer`: finds the command that is asked for, and loads nothing else."""

import gc
import os
import sys
from collections.abc import Sequence
from contextlib import suppress
from importlib import import_module
from typing import NoReturn

from reviewer.command.fault import FAULT, told_fault
from reviewer.command.terminal import complain, prepare_streams, say
from reviewer.command.usage import Parser, UsageError
from reviewer.notation.nearest import nearest

WRONG_INPUT = 2
# Loading a program makes objects that stay; looking for garbage among them each 700 costs a tenth.
SELDOM = 200_000
INTERRUPTED = 130  # 128 and the number of SIGINT, as shells count

COMMANDS = {
    "check": "review designs: what to change, what to judge, what was not reviewed",
    "trace": "follow one number back to the lines of the file",
    "compare": "compare two files or two revisions: what got better, what got worse",
    "size": "sweep a value over its sizes, or scale the whole design",
    "sheet": "sheets for the shop floor: cutting, assembly, inspection, load test",
    "draw": "draw a design to scale, with what is found of it numbered",
    "rules": "list the rules in force, or prove them",
    "start": "write a small complete design to begin from",
    "schema": "print the JSON Schema of a design file, for editors",
    "completion": "print what makes a shell complete commands, options and files",
}


def console() -> NoReturn:
    """Run the command line of the process, and leave as soon as all is written.

    Taking a finished program apart object by object costs a fifth of a review; the system does it
    at once.
    """
    status = main()
    for stream in (sys.stdout, sys.stderr):
        with suppress(OSError, ValueError):  # the reader has gone, or the stream is closed
            stream.flush()
    os._exit(status)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command line, and return the exit status."""
    gc.set_threshold(SELDOM)
    prepare_streams()
    words = list(sys.argv[1:] if arguments is None else arguments)
    name = words[0] if words and words[0] in COMMANDS else ""
    try:
        return _run(name, words)
    except UsageError as error:
        complain(error.told(f"reviewer {name}".strip()))
        return WRONG_INPUT
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as fault:
        complain(told_fault(fault))
        return FAULT


def parser_of(name: str) -> Parser:
    """The options of a command."""
    found: Parser = import_module(f"reviewer.command.{name}").parser()
    return found


def _run(name: str, words: Sequence[str]) -> int:
    if not name:
        return _without_command(words)
    command = import_module(f"reviewer.command.{name}")
    try:
        return int(command.run(words[1:]))
    except SystemExit as leaving:  # argparse leaves after it has printed the help
        return int(leaving.code or 0)


def _without_command(words: Sequence[str]) -> int:
    if not words or words[0] in ("-h", "--help", "help"):
        say(help_text())
        return 0 if words else WRONG_INPUT
    if words[0] == "--version":
        from reviewer.command.version import version

        say(f"reviewer {version()}\n")
        return 0
    near = nearest(words[0], COMMANDS)
    raise UsageError(
        "there is no such command",
        words[0],
        f"one of {', '.join(COMMANDS)}",
        f"write reviewer {near}" if near else "",
    )


def help_text() -> str:
    """What `reviewer --help` prints."""
    widest = max(map(len, COMMANDS))
    lines = [
        "usage: reviewer COMMAND ...",
        "",
        "Reviews designs of moving furniture and shop machines before the wood is cut.",
        "",
        *(f"  {name:<{widest}}  {says}" for name, says in COMMANDS.items()),
        "",
        "  reviewer COMMAND --help    options of a command",
        "  reviewer --version",
        "",
        "examples, one of each; to begin, reviewer start:",
        *(f"  {parser_of(name).example}" for name in COMMANDS),
    ]
    return "".join(f"{line}\n" for line in lines)
