"""What a sweep comes to, in sentences."""

from reviewer.reporting.words import joined
from reviewer.studying.sweep import Span, Sweep

HELD_WORDS = ("n/a", "", "ask", "open", "held", "")  # by the constants of a study


def span_words(sweep: Sweep) -> str:
    """Where everything holds that depends on the value, and ever does."""
    if not sweep.concerned:
        return "No rule depends on it."
    if not sweep.spans:
        return "At no size does all hold that must or should hold and depends on it."
    what = "Apart from what never does, all" if sweep.standing else "All"
    spans = joined([_span(sweep, span) for span in sweep.spans])
    return f"{what} that must or should hold and depends on it holds {spans}."


def _span(sweep: Sweep, span: Span) -> str:
    low, high = span.first, span.last
    if low.size == high.size:
        return f"at {low.text}"
    if high.size >= sweep.stops[-1].size:
        return f"from {low.text} on" if low.size > sweep.stops[0].size else "at every size"
    if low.size <= sweep.stops[0].size:
        return f"up to {high.text}"
    return f"from {low.text} to {high.text}"
