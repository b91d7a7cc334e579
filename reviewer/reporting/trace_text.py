"""A trace as a chain that a person follows: each number, and below it what it came from."""

from reviewer.notation.show import show
from reviewer.reading.context import article
from reviewer.reporting.sheet import Sheet, Style
from reviewer.studying.trace import Step

INDENT = 2


def trace_text(step: Step, path: str, style: Style) -> str:
    """The chain behind a step, of a design file at `path`."""
    sheet = Sheet(style)
    sheet.put(f"{step.name} = {shown(step)}", look="strong")
    reckoning = [text for text in _reckoning(step) if text != step.says]
    for text in (step.says, f'under "{step.case}"' if step.case else "", *reckoning):
        if text:
            sheet.put(text, INDENT)
    if step.line is not None:
        sheet.put(f"{step.path or path}:{step.line}", INDENT)
    for reason in step.open_because:
        sheet.put(f"unknown, because {reason}", INDENT)
    if step.inputs:
        sheet.gap()
    for each in step.inputs:
        _put(sheet, each, INDENT, path)
    return sheet.text()


def part_text(part: Step, path: str, style: Style) -> str:
    """What a part has: each quantity with what it is, those of the file first."""
    sheet = Sheet(style)
    sheet.put(
        f"{part.name}, {article(str(part.value).replace('_', ' '))}: {part.says}", look="strong"
    )
    sheet.put(f"{part.path or path}:{part.line}", INDENT)
    sheet.gap()
    for each in part.inputs:
        is_left_out = each.value is None and not each.formula
        value = "not given" if is_left_out else f"{shown(each)}{_origin(each, path)}"
        sheet.put(f"{each.name} = {value}", INDENT)
        sheet.put(each.says, 3 * INDENT)
    return sheet.text()


def _put(sheet: Sheet, step: Step, indent: int, own: str) -> None:
    """A step, and indented below it what it was computed from."""
    sheet.put(f"{step.name} = {shown(step)}{_origin(step, own)}", indent)
    for text in _reckoning(step):
        sheet.put(text, indent + 2 * INDENT)
    for each in step.inputs:
        _put(sheet, each, indent + INDENT, own)


def _origin(step: Step, own: str) -> str:
    """Where a value without a formula is from; its file too, where that is not the design's own."""
    if step.again:
        return ", listed above"
    if step.line is not None:
        elsewhere = f" of {step.path}" if step.path not in (None, own) else ""
        by = f", calibrated by {step.calibrated_by}" if step.calibrated_by else ""
        written = f" ({step.written})" if step.written else ""
        return f"{written}, line {step.line}{elsewhere}{by}"
    is_default = step.value is not None and not step.formula and not step.inputs
    return ", default" if is_default else ""


def _reckoning(step: Step) -> list[str]:
    """The formula of a step and its source; what it is, where its formula has no words."""
    source = f"[{step.source.rstrip('.')}]" if step.source else ""
    text = " ".join(filter(None, [step.formula or (step.says if step.inputs else ""), source]))
    return [text] if text else []


def shown(step: Step) -> str:
    """The value of a step as a reader reads it."""
    if step.value is None:
        return "unknown"
    if isinstance(step.value, bool):
        return "yes" if step.value else "no"
    if isinstance(step.value, str):
        return step.value
    return show(step.value, step.unit) if step.unit else f"{step.value:g}"
