"""What a formula says of itself: the names of its parameters, and the units in its docstring."""

import re
from collections.abc import Callable, Mapping
from functools import cache
from inspect import Parameter, cleandoc, signature, unwrap
from typing import Any, NamedTuple

_VARIADIC = 0x04 | 0x08  # flags of a code object: *args, **kwargs
_ENTRY = re.compile(r"^(\w+) : (?:[^\[\n]|\n(?=[ \t]))*\[([^\[\]\n]+)\]", re.MULTILINE)


class Signature(NamedTuple):
    """The parameters of a formula; `anything` where it takes any name."""

    required: frozenset[str]
    optional: frozenset[str]
    anything: bool


@cache
def signature_of(formula: Callable[..., Any]) -> Signature:
    """The names that a formula may be called with.

    Read off the code object where there is one: `inspect.signature` would take several times as
    long as all else that is checked of a kind, each time that the program starts.
    """
    inner = unwrap(formula)
    code = getattr(inner, "__code__", None)
    if code is None or code.co_flags & _VARIADIC or not hasattr(inner, "__defaults__"):
        return _inspected(formula)
    names = code.co_varnames[: code.co_argcount]
    only = code.co_varnames[code.co_argcount : code.co_argcount + code.co_kwonlyargcount]
    free = {*names[len(names) - len(inner.__defaults__ or ()) :], *(inner.__kwdefaults__ or ())}
    if hasattr(inner, "__self__"):
        names = names[1:]
    known = frozenset((*names, *only))
    return Signature(known - free, known & free, False)


def _inspected(formula: Callable[..., Any]) -> Signature:
    """The same, of anything that can be called."""
    parameters = signature(formula).parameters.values()
    named = [each for each in parameters if each.kind not in _ANY]
    required = frozenset(each.name for each in named if each.default is Parameter.empty)
    optional = frozenset(each.name for each in named) - required
    return Signature(required, optional, any(each.kind in _ANY for each in parameters))


_ANY = (Parameter.VAR_POSITIONAL, Parameter.VAR_KEYWORD)


@cache
def units_of(formula: Callable[..., Any] | None, heading: str) -> Mapping[str, str]:
    """The units in brackets under a heading of a docstring, by name; none where it has none.

    >>> from reviewer.mechanics.weight import weight
    >>> units_of(weight, "Parameters"), units_of(weight, "Returns")
    ({'mass': 'kg', 'count': '1'}, {'weight': 'N'})
    """
    text = formula.__doc__ or ""
    if heading not in text:
        return {}
    section = re.search(rf"^{heading}\n-+\n(.*?)(?:\n\n|\Z)", cleandoc(text), re.DOTALL | re.M)
    return dict(_ENTRY.findall(section.group(1))) if section else {}
