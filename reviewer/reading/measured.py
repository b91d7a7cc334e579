"""What was measured on the thing that was built: the list `measured` of a design."""

from collections.abc import Mapping

from reviewer.notation.nearest import nearest
from reviewer.parts.measurement import MEASUREMENT, OWN_WEIGHT
from reviewer.parts.row import Measure, Row
from reviewer.reading.context import Context, kind_of, listed, nearest_name, write
from reviewer.reading.design import GivenValue, Measured
from reviewer.reading.fields import read_entry, read_fields
from reviewer.reading.measured_on import (
    MeasuredOn,
    named_quantity,
    read_calibrates,
    read_fingerprint,
)
from reviewer.reading.names import check_name
from reviewer.reading.scalars import is_null
from reviewer.reading.tree import Items, Node, Scalar, Table
from reviewer.reading.words import shown

SECTION = "measured"
REQUIRED = ("quantity", "value", "by", "on")
READ_HERE = frozenset(("value", "under"))
MOST = 60
FACTORS = {"half": 0.5, "full": 1.0}
FORM = "{quantity: PART.QUANTITY, under: LOAD, value: 1.5 mm ± 0.1 mm, by: ..., on: ...}"


def read_measured(root: Table, on: MeasuredOn, context: Context) -> tuple[Measured, ...]:
    """Read `measured`: a list of tables."""
    value, key = root.get(SECTION), root.key(SECTION)
    if value is None or key is None:
        return ()
    if not isinstance(value, Items):
        what = "measured is a list of tables"
        context.refuse(key.place, what, kind_of(value), f"a list: [{FORM}]")
        return ()
    if len(value.items) > MOST:
        what, found = "there are too many measurements", f"{len(value.items)} of them"
        context.refuse(key.place, what, found, f"at most {MOST}", "keep those of this revision")
        return ()
    read = [
        _read_one(item, number, on, context)
        for number, item in enumerate(value.items, 1)
        if not context.is_full
    ]
    return tuple(each for each in read if each is not None)


def _read_one(item: Node, number: int, on: MeasuredOn, context: Context) -> Measured | None:
    """Read one measurement; None where anything of it is wrong, which is then told."""
    if not isinstance(item, Table):
        context.refuse(item.place, "a measurement is a table", kind_of(item), FORM)
        return None
    before = len(context.problems)
    given = read_fields(item, MEASUREMENT, context, READ_HERE)
    missing = [path for path in REQUIRED if item.get(path) is None]
    if missing and not any(path in context.lost for path in missing):
        what, found = f"a measurement says {listed(REQUIRED)}", f"no {listed(missing, 'or')}"
        context.refuse(item.place, what, found, "all of them")
    name = _name(given.get("test"), number, on, context)
    quantity = named_quantity(given.get("quantity"), on, context)
    value = _value(item, quantity[1], context) if quantity else None
    under = _under(item, on, context)
    configuration = _configuration(item, given.get("configuration"), on, context)
    factor = _factor(item, given, context)
    calibrates = read_calibrates(item, given, on, context)
    fingerprint = read_fingerprint(given.get("fingerprint"), context)
    if len(context.problems) > before or quantity is None or value is None or missing:
        return None
    return Measured(
        name=name,
        part=quantity[0],
        path=quantity[1].path,
        under=under,
        configuration=configuration,
        step=_word(given, "step", "full"),
        factor=factor,
        zeroed=_word(given, "zero", "nothing") == OWN_WEIGHT,
        value=value,
        by=_word(given, "by", ""),
        on=_word(given, "on", ""),
        revision=_word(given, "revision", "") or None,
        of=_word(given, "of", "") or None,
        fingerprint=fingerprint,
        proven=bool(given["proven"].value) if "proven" in given else False,
        calibrates=calibrates,
        place=item.place,
    )


def _word(given: Mapping[str, GivenValue], path: str, default: str) -> str:
    return str(given[path].value) if path in given else default


def _name(given: GivenValue | None, number: int, on: MeasuredOn, context: Context) -> str:
    """The name of a measurement; refused where it is no name, or another has it."""
    name = f"{SECTION}_{number}" if given is None else given.text
    if given is None:
        on.taken.add(name)
        return name
    scalar = Scalar(given.text, False, given.place)
    if check_name(scalar, "measurement", context):
        if name in on.parts or name in on.loads or name in on.taken:
            what = "a measurement has a name of its own"
            expected = "a name that no part, load or other measurement has"
            context.refuse(given.place, what, shown(name), expected)
        on.taken.add(name)
    return name


def _value(item: Table, quantity: Row, context: Context) -> GivenValue | None:
    """Read the value in the dimension of what was measured."""
    node, key = item.get("value"), item.key("value")
    if node is None or key is None:
        return None
    row = Row("value", quantity.unit, f"the {quantity.says} that was read", Measure())
    return read_entry(row, key, node, context)


def _under(item: Table, on: MeasuredOn, context: Context) -> tuple[str, ...]:
    """Read the loads, or the one combination, that stood on it."""
    node, key = item.get("under"), item.key("under")
    if node is None or key is None:
        return ()
    expected = "a load, a list of loads, or one combination"
    items = node.items if isinstance(node, Items) else (node,)
    if not items or (isinstance(node, Scalar) and is_null(node)):
        context.refuse(key.place, "under names nothing", kind_of(node), expected)
        return ()
    named = {each.name for each in on.combinations or ()}
    found: list[str] = []
    for each in items:
        text = each.text if isinstance(each, Scalar) else ""
        single = len(items) == 1 and (text in named or text == OWN_WEIGHT)
        if not isinstance(each, Scalar):
            context.refuse(each.place, "under lists loads", kind_of(each), expected)
        elif text in found:
            context.refuse(each.place, "under names a load twice", shown(text), "each once")
        elif single or text in on.loads:
            found.append(text)
        elif text in named:
            what = "a combination stands alone"
            context.refuse(each.place, what, shown(text), "loads, or one combination")
        elif text not in context.lost:
            known = (*on.loads, *named, OWN_WEIGHT)
            mend = write(nearest_name(text, known))
            what = "no load and no combination has this name"
            context.refuse(each.place, what, shown(text), f"one of {listed(known)}", mend)
    return () if found == [OWN_WEIGHT] else tuple(found)


def _configuration(item: Table, given: GivenValue | None, on: MeasuredOn, context: Context) -> int:
    """Which configuration it was measured in; it has to be told where there are several."""
    names = [each.name for each in on.configurations]
    if given is not None and given.text in names:
        return names.index(given.text)
    if given is not None:
        mend = write(nearest(given.text, names))
        expected = f"one of {listed(names)}" if any(names) else "no configuration: there is one"
        what = "no configuration has this name"
        context.refuse(given.place, what, shown(given.text), expected, mend)
    elif len(names) > 1 and item.get("configuration") is None:
        what, expected = "a measurement says in which configuration", listed(names, "or")
        mend = f"add configuration: {names[0]}"
        context.refuse(item.place, what, "no key configuration", expected, mend)
    return 0


def _factor(item: Table, given: Mapping[str, GivenValue], context: Context) -> float | None:
    """The factor of the step; None of a proof step that does not tell it."""
    step = _word(given, "step", "full")
    factor, key = given.get("factor"), item.key("factor")
    if step in FACTORS and factor is not None and key is not None:
        what = f"the step {step} has its own factor"
        expected = f"no factor: of {step} it is {FACTORS[step]:g}"
        context.refuse(key.place, what, shown(factor.text), expected, "write step: proof")
    if step in FACTORS:
        return FACTORS[step]
    return None if factor is None else float(factor.value)
