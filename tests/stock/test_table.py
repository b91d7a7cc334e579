"""A table finds rows by any spelling of a name, grows by copying, and refuses what cannot stand."""

import math
import pickle
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.stock.materials import Material, materials
from reviewer.stock.table import StockError, Table, UnknownStock, fold

OWN = Material(name="shop birch", family="plywood", source="weighed in the shop", density=655.0)


@given(st.text(max_size=40))
def test_folding_twice_is_folding_once(name):
    assert fold(fold(name)) == fold(name)


@pytest.mark.parametrize(
    "spelling",
    ["birch plywood", "Birch Plywood", "  birch   plywood ", "birch-plywood", "baltic birch"],
)
def test_case_spaces_and_hyphens_do_not_count(spelling):
    assert materials().find(spelling).name == "birch plywood"
    assert spelling in materials()


def test_rows_are_added_to_a_new_table_only():
    table = materials().with_rows([OWN])
    assert table.find("Shop Birch") == OWN
    assert len(table) == len(materials()) + 1
    assert "shop birch" not in materials()


def test_a_row_is_the_same_choice_after_a_journey_to_another_process():
    for row in materials():
        copy = pickle.loads(pickle.dumps(row))
        assert copy is not row
        assert copy == row
        assert hash(copy) == hash(row)
    assert replace(OWN, density=656.0) != OWN
    assert OWN != "shop birch"


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (
            {"name": " "},
            "a material has no name; expected the name it is sold by",
        ),
        (
            {"source": ""},
            'material "shop birch" has no source; expected a standard, a handbook table, '
            'a measurement or "common practice"',
        ),
        (
            {"density": 0.655},
            'material "shop birch": density is 0.655; expected 50 to 20000 in SI units, '
            "or nothing where it is unknown",
        ),
        (
            {"modulus": math.inf},
            'material "shop birch": modulus is inf; expected 1e+06 to 1e+12 in SI units, '
            "or nothing where it is unknown",
        ),
        (
            {"aliases": ("Beech",)},
            'material "shop birch": the name "beech" is taken by "beech"; '
            "give the new row a name of its own",
        ),
    ],
)
def test_error_of_a_row_that_cannot_stand(change, message):
    with pytest.raises(StockError) as error:
        materials().with_rows([replace(OWN, **change)])
    assert str(error.value) == message


@pytest.mark.parametrize(
    ("name", "message"),
    [
        (
            "brich",
            'no material is called "brich"; the nearest is "birch" or "beech"',
        ),
        (
            "6063-T7",
            'no material is called "6063-T7"; the nearest is "6063-T6" or "6063-T5" or "6063T6"',
        ),
        (
            "\x1b[31mred",
            'no material is called "\\x1b[31mred"; the table has red oak, white oak, sugar maple, '
            "red maple, silver maple, yellow birch, black walnut, black cherry and 64 more",
        ),
    ],
)
def test_error_of_an_unknown_name(name, message):
    with pytest.raises(UnknownStock) as error:
        materials().find(name)
    assert str(error.value) == message
    assert error.value.name == name


def test_error_of_an_unknown_name_that_is_very_long():
    with pytest.raises(UnknownStock) as error:
        materials().find("x" * 100_000)
    assert len(str(error.value)) < 300
    assert error.value.nearest == ()


def test_error_of_an_empty_table():
    with pytest.raises(UnknownStock) as error:
        Table("sheet", []).find("18 mm birch plywood")
    assert str(error.value) == 'no sheet is called "18 mm birch plywood"; the table has no rows'


def test_error_of_an_unknown_name_survives_another_process():
    with pytest.raises(UnknownStock) as error:
        materials().find("brich")
    assert str(pickle.loads(pickle.dumps(error.value))) == str(error.value)
