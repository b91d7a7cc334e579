"""What holds for every table: a source in each row, names that lead back, units that are right."""

import math
from dataclasses import fields

import pint
import pytest

from reviewer.stock import reader
from reviewer.stock.bearings import bearings
from reviewer.stock.fasteners import bolt_strengths, threads
from reviewer.stock.friction import frictions
from reviewer.stock.materials import materials
from reviewer.stock.panels import panel_thicknesses
from reviewer.stock.reader import in_si, read_records
from reviewer.stock.screws import wood_screws
from reviewer.stock.sections import sections
from reviewer.stock.sheets import sheets
from reviewer.stock.table import StockError

TABLES = (
    *(materials, panel_thicknesses, bearings, threads, bolt_strengths, sheets, sections),
    *(frictions, wood_screws),
)
# What a source may rest on; whoever adds a row says which.
HOW_SEEN = (
    *("as transcribed", "as reprinted", "as seen", "from memory", "common practice", "computed"),
    *("an estimate",),
)


@pytest.mark.parametrize("table", TABLES)
def test_every_row_says_where_it_is_from_and_how_that_was_seen(table):
    for row in table():
        assert any(each in row.source for each in HOW_SEEN), row
        assert "{" not in row.source, row


@pytest.mark.parametrize("table", TABLES)
def test_every_name_and_alias_leads_to_its_own_row(table):
    for row in table():
        for name in (row.name, *row.aliases):
            assert table().find(name) is row


@pytest.mark.parametrize("table", TABLES)
def test_a_table_is_loaded_once_and_always_the_same(table):
    again = table.__wrapped__()
    assert table() is table()
    assert again.rows == table().rows
    assert again.names == table().names


@pytest.mark.parametrize("table", TABLES)
def test_numbers_are_finite_or_unknown(table):
    for row in table():
        for field in fields(row):
            value = getattr(row, field.name)
            assert not isinstance(value, float) or not math.isinf(value), row


@pytest.mark.parametrize(
    ("unit", "in_pint"),
    [
        *(("mm", "mm"), ("um", "um"), ("in", "inch"), ("g", "g"), ("kg/m3", "kg/m**3")),
        *(("N", "N"), ("kN", "kN"), ("lbf", "lbf"), ("MPa", "MPa"), ("GPa", "GPa")),
        *(("psi", "psi"), ("1e6 psi", "megapsi"), ("1", "dimensionless")),
    ],
)
def test_units_of_the_files_are_those_of_pint(unit, in_pint):
    expected = pint.UnitRegistry().Quantity(7.3, in_pint).to_base_units()
    mass = 1e-3 if expected.units == "gram" else 1.0
    assert in_si("7.3", unit) == pytest.approx(expected.magnitude * mass, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("name\tsource\nbirch\n", "wrong.tsv:2: 1 cells; expected 2, one a column"),
        (
            "name\tdensity [kg/m3]\tsource\n\nbirch\theavy\tscales\n",
            "wrong.tsv:3: could not convert string to float: 'heavy'",
        ),
        ("name\tsource\nbirch\t{WH}\n", "wrong.tsv:2: 'WH'"),
    ],
)
def test_error_of_a_data_file_names_file_and_line(tmp_path, monkeypatch, text, message):
    (tmp_path / "wrong.tsv").write_text(text, encoding="utf-8")
    monkeypatch.setattr(reader, "FOLDER", str(tmp_path))
    with pytest.raises(StockError) as error:
        read_records("wrong.tsv")
    assert str(error.value) == message
