"""The errors of names and values that do not fit where they stand."""

from reviewer.judging.expression import Comparison, Expression, Name, Quantity, Span, Text
from reviewer.judging.kinds import Collection, One, Texts, Vocabulary, said
from reviewer.judging.language_error import LanguageError
from reviewer.judging.writing import number, write
from reviewer.notation.dimension import ANGLE, FORCE, MASS, NUMBER, Dimension
from reviewer.notation.nearest import nearest
from reviewer.notation.show import unit_for

_MEETING = {
    "compares": "compares {} with {}",
    "adds": "adds {1} to {0}",
    "subtracts": "subtracts {1} from {0}",
}


def unknown_name(node: Name, lookup: Vocabulary) -> LanguageError:
    """Return the error for a name that stands for nothing, with the one most like it."""
    meant = nearest(node.path, lookup.known())
    return LanguageError(
        node.span,
        "the name is not known",
        node.path,
        "the name of a quantity",
        f"write {meant}" if meant else None,
    )


def dimensions(
    verb: str, left: tuple[Expression, Dimension], right: tuple[Expression, Dimension], span: Span
) -> LanguageError:
    """Return the error for two numbers of different dimensions that meet."""
    shown = [f"{write(node)}, {said(kind)}" for node, kind in (left, right)]
    return LanguageError(
        span,
        _MEETING[verb].format(said(left[1]), said(right[1])),
        f"{shown[0]}, and {shown[1]}",
        "two values of one dimension",
        _mend(left, right) or _mend(right, left),
    )


def _mend(one: tuple[Expression, Dimension], other: tuple[Expression, Dimension]) -> str | None:
    """Return how to make one number like the other, where that is plain."""
    node, kind = one
    wanted = other[1]
    if kind == NUMBER and isinstance(node, Quantity) and not node.unit:
        return f"write {number(node.number)} {unit_for(wanted, {}).symbol}"
    if (kind, wanted) == (NUMBER, ANGLE):
        return "multiply the plain number by (1 rad)"
    if (kind, wanted) == (MASS, FORCE):
        return "multiply the mass by 9.80665 m/s^2 for its weight"
    return None


def argument(function: str, node: Expression, kind: Dimension, takes: Dimension) -> LanguageError:
    """Return the error for a function of angles or of ratios that is given something else."""
    mend = None
    if (kind, takes) == (NUMBER, ANGLE):
        unit = isinstance(node, Quantity)
        mend = f"write {write(node)} deg" if unit else "multiply the plain number by (1 rad)"
    elif (kind, takes) == (ANGLE, NUMBER):
        mend = "divide the angle by (1 rad)"
    return LanguageError(
        node.span,
        f"{function} is taken of {said(kind)}",
        f"{write(node)}, {said(kind)}",
        said(takes),
        mend,
    )


def point_on_a_scale(node: Quantity) -> LanguageError:
    """Return the error for reckoning with a temperature whose zero is not nothing."""
    return LanguageError(
        node.span,
        "a point on a scale can be compared, but not reckoned with",
        write(node),
        "a difference",
        f"write {number(node.number)} K for a difference, "
        f"or {number(round(node.value, 6))} K for the point",
    )


def not_a_number(node: Expression, kind: One) -> LanguageError:
    """Return the error for a text or a condition where a number is due."""
    return LanguageError(
        node.span, f"{said(kind)} stands where a number is due", write(node), "a number", None
    )


def not_a_text(node: Expression, kind: One) -> LanguageError:
    """Return the error for a number or a condition that is looked up in a list of texts."""
    return LanguageError(
        node.span,
        f"looks {said(kind)} up in a list of texts",
        f"{write(node)}, {said(kind)}",
        "a text",
    )


def not_a_condition(node: Expression, kind: One) -> LanguageError:
    """Return the error for a number or a text where a condition is due."""
    return LanguageError(
        node.span,
        f"{said(kind)} stands where a condition is due",
        write(node),
        "a comparison, or another condition",
        "compare it with its limit" if isinstance(kind, Dimension) else None,
    )


def not_gathered(node: Expression, kind: Collection) -> LanguageError:
    """Return the error for a condition on each of a collection, with no word on how many."""
    return LanguageError(
        node.span,
        f"the condition has an answer for each of {kind.over}",
        write(node),
        "one answer",
        "write every before it, or largest of, least of or sum of before the value",
    )


def no_collection(word: str, node: Expression) -> LanguageError:
    """Return the error for gathering one value."""
    return LanguageError(
        node.span,
        f"{word!r} is taken of one value",
        write(node),
        "a value of each member of a collection",
        f"leave {word} out, or name the collection in the rule's for",
    )


def two_collections(over: str, other: str, span: Span) -> LanguageError:
    """Return the error for values of two collections that would have to be paired."""
    return LanguageError(
        span,
        "two collections are joined member by member",
        f"{over} and {other}",
        "values of one collection",
        "take the largest, the least or the sum of one of them first",
    )


def text_with_other(node: Comparison, left: One, right: One) -> LanguageError:
    """Return the error for a text that is compared with something else, or in a range."""
    return LanguageError(
        node.span,
        f"compares {said(left)} with {said(right)}",
        write(node),
        'two texts, as in material == "beech"',
    )


def texts_in_order(node: Comparison) -> LanguageError:
    """Return the error for texts that are compared by size."""
    return LanguageError(
        node.span, "a text is neither more nor less", node.operators[0], "== or !=", "write =="
    )


def check_word(text: Text, kind: Texts) -> None:
    """Refuse a text that a name can never be, so that a slip does not silence a rule."""
    if not kind.known or text.text in kind.known:
        return
    meant = nearest(text.text, kind.known)
    raise LanguageError(
        text.span,
        "the text is none that the name can have",
        text.text,
        f"one of {', '.join(sorted(kind.known))}",
        f"write {meant}" if meant else None,
    )
