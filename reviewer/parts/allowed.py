"""What a part may do at most, where its file does not say: from the named limits of the packs."""

from reviewer.mechanics.formula import Number


def stated(limit: Number) -> Number:
    """What the limit says.

    The limit's own source.
    """
    return limit


def share_of(length: Number, divisor: Number) -> Number:
    """The part of a length that the limit allows: one divisor-th.

    The limit's own source.
    """
    return length / divisor


def times(length: Number, limit: Number) -> Number:
    """So many times a length as the limit says.

    The limit's own source.
    """
    return length * limit
