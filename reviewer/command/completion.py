"""reviewer completion: what makes a shell complete commands, options, choices and files."""

import argparse
from collections.abc import Mapping, Sequence
from importlib import import_module
from typing import Any

from reviewer.command.terminal import say
from reviewer.command.usage import OneOf, Parser, UsageError, one_of

SHELLS = ("bash", "zsh", "tcsh")
FILES = ("FILE", "PATH", "OLD", "NEW")  # what an argument is called that names a file


def parser() -> Parser:
    """The options of the command."""
    options = Parser(
        "completion",
        "Print what makes a shell complete commands, options, choices and files.",
        "reviewer completion bash > ~/.local/share/bash-completion/completions/reviewer",
    )
    options.add_argument(
        "shell", metavar="SHELL", nargs="?", type=one_of(SHELLS), help=" or ".join(SHELLS)
    )
    return options


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    options = parser().read(arguments)
    if options.shell is None:
        raise UsageError("no shell is named", "", f"one of {', '.join(SHELLS)}")
    import shtab

    from reviewer.command.main import COMMANDS

    say(shtab.complete(_tree(COMMANDS, shtab.FILE), shell=options.shell))
    return 0


def _tree(commands: Mapping[str, str], file: Any) -> argparse.ArgumentParser:
    """All commands below one another, as a completion is made of them."""
    tree = argparse.ArgumentParser(prog="reviewer")
    tree.add_argument("--version", action="store_true", help="the version of the program")
    below = tree.add_subparsers()
    for name, says in commands.items():
        options = import_module(f"reviewer.command.{name}").parser()
        for action in options._actions:
            if action.metavar in FILES:
                action.complete = file
            if isinstance(action.type, OneOf):
                action.choices = action.type.words
        below.add_parser(name, help=says, parents=[options], add_help=False)
    return tree
