"""reviewer rules: the rules in force, or whether each shows both ways what it says."""

import os
import sys
from collections.abc import Sequence

from reviewer.command.outputs import Written, format_of
from reviewer.command.packs import packs_of
from reviewer.command.ready import Ready
from reviewer.command.status import FAILS, HOLDS, UNREAD
from reviewer.command.terminal import complain, say, style_of
from reviewer.command.usage import Parser, UsageError, one_of
from reviewer.judging.in_force import InForce
from reviewer.judging.ruled import RULED
from reviewer.notation.nearest import nearest
from reviewer.notation.problem import render
from reviewer.reporting.words import counted, sentence

FORMATS = ("text", "markdown")
GRAPHS = {".svg": "svg", ".dot": "dot"}


def parser() -> Parser:
    """The options of the command."""
    options = Parser(
        "rules",
        "List the rules in force with their limits and sources, or prove them.",
        "reviewer rules --prove --rules our_shop.yaml",
    )
    options.add_argument(
        "--rules", action="append", default=[], metavar="FILE", help="more rules; repeatable"
    )
    options.add_argument(
        "--shop", default=None, metavar="FILE", help="a shop's file: its rules too"
    )
    options.add_argument(
        "--prove", action="store_true", help="judge each rule on its own proof, both ways"
    )
    options.add_argument(
        "--format", type=one_of(FORMATS), default="text", metavar="FORMAT",
        help="text, or markdown: the catalogue",
    )  # fmt: skip
    options.add_argument(
        "--graph", default=None, metavar="FILE",
        help=f"draw which rule stands behind which, in a file ending {' or '.join(GRAPHS)}",
    )  # fmt: skip
    options.add_argument(
        "--names", default=None, metavar="KIND", help="the names that a rule on a kind may use"
    )
    return options


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    options = parser().read(arguments)
    if options.graph:
        format_of(options.graph, GRAPHS)
    in_force = packs_of(options.rules, options.shop, prove=not options.prove).of()
    for problem in in_force.problems:
        complain(render(problem))
    if options.graph:
        status = _draw(in_force, options.graph)
    elif options.names:
        status = _name(in_force, options.names)
    else:
        status = _prove(in_force) if options.prove else _list(in_force, options.format)
    return UNREAD if in_force.problems else status


def _draw(in_force: InForce, path: str) -> int:
    from reviewer.reporting.rules_graph import rules_dot, rules_svg

    draw = rules_svg if format_of(path, GRAPHS) == "svg" else rules_dot
    output = Written(path, Ready(draw(in_force.rules)))
    output.close()
    return HOLDS


def _list(in_force: InForce, kind: str) -> int:
    if kind == "markdown":
        from reviewer.reporting.catalogue import catalogue

        say(catalogue(in_force))
        return HOLDS
    from reviewer.reporting.rules_text import rules_text

    say(rules_text(in_force.rules, style_of(sys.stdout, os.environ)))
    return HOLDS


def _name(in_force: InForce, wanted: str) -> int:
    from reviewer.reporting.names_text import names_text

    kinds = {**in_force.kinds, **RULED}
    kind = kinds.get(wanted)
    if kind is None:
        near = nearest(wanted, kinds)
        raise UsageError(
            "there is no such kind of part",
            wanted,
            f"one of {', '.join(sorted(kinds))}",
            f"write {near}" if near else "",
        )
    say(names_text(kind, in_force.limits, style_of(sys.stdout, os.environ)))
    return HOLDS


def _prove(in_force: InForce) -> int:
    from reviewer.judging.proof import prove_all

    flaws = prove_all(in_force.packs)
    for told in dict.fromkeys(render(flaw) for flaw in flaws):
        complain(told)
    count = sum(len(pack.rules) for pack in in_force.packs)
    found = counted(len(flaws), "proof does", "proofs do") + " not hold" if flaws else "all hold"
    left = "; what could not be read is not among them" if in_force.problems else ""
    say(sentence(f"{counted(count, 'rule')} proved both ways, {found}{left}") + "\n")
    return FAILS if flaws else HOLDS
