"""Layouts on sheets: nothing overlaps, all lies within the margins, cuts go through a kerf wide."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.geometry.packing import (
    MOST_PIECES,
    Blank,
    Layout,
    Piece,
    Placed,
    TooMany,
    fewest,
    pack,
)

SHEET = Blank(2.44, 1.22, trim=0.01, kerf=0.003)


def pieces(*sizes: tuple[float, float], turns: bool = True) -> list[Piece]:
    return [Piece(f"p{number}", *size, turns) for number, size in enumerate(sizes)]


KNOWN = [
    (pieces((2.42, 1.2)), SHEET, 1, 1, "one that fills it within its margins"),
    (pieces(*[(1.2085, 0.5985)] * 4), SHEET, 1, 1, "quarters, a kerf of 3 mm less each"),
    (pieces(*[(1.209, 0.599)] * 4), SHEET, 4, 2, "a hair more: the area no longer suffices"),
    (pieces(*[(1.0, 0.61)] * 4), Blank(2.44, 1.22), 1, 1, "four on a bare sheet"),
    (pieces(*[(0.9, 0.9)] * 3), SHEET, 2, 2, "two discs of 900 lie side by side"),
    (pieces(*[(1.3, 1.1)] * 3), SHEET, 3, 2, "3300 mm of lesser sides, 2423 to a row"),
    (pieces((0.5, 0.4), (0.3, 0.2)), Blank(0.5, 0.6), 1, 1, "one below the other"),
]


@pytest.mark.parametrize(("asked", "blank", "sheets", "least", "why"), KNOWN)
def test_layouts_by_hand(asked, blank, sheets: int, least: int, why: str) -> None:
    found = pack(asked, blank)
    assert found is not None
    assert least <= found.fewest <= len(found.sheets) <= sheets, why


def test_what_cannot_share_a_sheet_is_counted() -> None:
    """Lesser sides of 1230 mm are together longer than 2420 mm, so each takes its own."""
    square = Blank(2.44, 1.3, trim=0.01)
    assert fewest(pieces(*[(1.23, 1.23)] * 3), square) == 3
    assert fewest(pieces(*[(1.2, 1.2)] * 3), square) == 2


def test_grain_keeps_a_piece_from_being_turned() -> None:
    assert pack(pieces((1.0, 2.0)), SHEET) is not None
    assert pack(pieces((1.0, 2.0), turns=False), SHEET) is None


def test_a_piece_that_fits_nowhere() -> None:
    assert pack(pieces((2.43, 0.1)), SHEET) is None


def test_too_many_pieces_are_refused() -> None:
    with pytest.raises(TooMany):
        pack(pieces(*[(0.1, 0.1)] * (MOST_PIECES + 1)), SHEET)


def test_the_share_that_becomes_pieces() -> None:
    found = pack(pieces((1.22, 1.22)), Blank(2.44, 1.22))
    assert found is not None
    assert found.used == pytest.approx(0.5)


SIDES = st.floats(0.05, 1.2)
ASKED = st.lists(st.tuples(SIDES, SIDES, st.booleans()), min_size=1, max_size=25)


@settings(max_examples=150, deadline=None)
@given(ASKED, st.floats(0, 0.02), st.floats(0, 0.006))
def test_every_piece_lies_once_within_the_margins_a_kerf_apart(sizes, trim, kerf) -> None:
    asked = [Piece(f"p{i}", *each) for i, each in enumerate(sizes)]
    blank = Blank(2.5, 1.25, trim, kerf)
    found = pack(asked, blank)
    assert found is not None
    assert sorted(each.name for sheet in found.sheets for each in sheet) == sorted(
        each.name for each in asked
    )
    assert found.fewest <= len(found.sheets)
    assert len(found.sheets) * (2.5 - 2 * trim) * (1.25 - 2 * trim) >= sum(
        each.length * each.width for each in asked
    )
    by_name = {each.name: each for each in asked}
    for sheet in found.sheets:
        for each in sheet:
            _check_place(each, by_name[each.name], blank)
        assert _can_be_sawn(list(sheet), kerf)
    assert pack(list(reversed(asked)), blank) == found


def _check_place(placed: Placed, piece: Piece, blank: Blank) -> None:
    assert placed.x >= blank.trim - 1e-9
    assert placed.y >= blank.trim - 1e-9
    assert placed.x + placed.length <= blank.length - blank.trim + 1e-8
    assert placed.y + placed.width <= blank.width - blank.trim + 1e-8
    lies = math.isclose(placed.length, piece.length) and math.isclose(placed.width, piece.width)
    turned = math.isclose(placed.length, piece.width) and math.isclose(placed.width, piece.length)
    assert lies or (turned and piece.turns)


def _can_be_sawn(sheet: list[Placed], kerf: float) -> bool:
    """Whether cuts from edge to edge, each as wide as the kerf, part all pieces; by trying all."""
    if len(sheet) <= 1:
        return True
    for low, size in ((0, 2), (1, 3)):
        for end in sorted({each[1 + low] + each[1 + size] for each in sheet}):
            before = [each for each in sheet if each[1 + low] + each[1 + size] <= end + 1e-9]
            after = [each for each in sheet if each[1 + low] >= end + kerf - 1e-9]
            if before and after and len(before) + len(after) == len(sheet):
                return _can_be_sawn(before, kerf) and _can_be_sawn(after, kerf)
    return False


def test_a_layout_knows_its_blank() -> None:
    found = pack(pieces((0.3, 0.2)), SHEET)
    assert isinstance(found, Layout)
    assert found.blank is SHEET
