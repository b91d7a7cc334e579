"""Every refusal of a shop's file, as the whole message that a reader gets."""

from collections.abc import Callable

import pytest

# The shop's file behind its first line, and what is told of it.
REFUSALS = [
    (
        "ruls: {}\n",
        """\
shop.yaml:2:1: a shop has no field ruls
    found ruls
    expected one of shop, currency, lengths, allowances, cutters, \
limits, packs, prices, rules and stock
    mend: write rules
    ruls: {}
    ^^^^""",
    ),
    (
        "rules:\n  top.edge_sag: {silence: true, by: Ada, why: so}\n",
        """\
shop.yaml:3:3: there is no such rule in force
    found top.edge_sag
    expected the name of a rule in force
    mend: write top.edge_sags
      top.edge_sag: {silence: true, by: Ada, why: so}
      ^^^^^^^^^^^^""",
    ),
    (
        "rules:\n  top.edge_sags: {silence: true}\n",
        """\
shop.yaml:3:3: a change of a rule says by and why
    found no by or why
    expected all of them
      top.edge_sags: {silence: true}
      ^^^^^^^^^^^^^""",
    ),
    (
        "rules:\n  top.edge_sags: {by: Ada, why: so}\n",
        """\
shop.yaml:3:3: a change of a rule does one thing
    found none of them
    expected silence, tighten, loosen or level; a level may go with tighten or loosen
      top.edge_sags: {by: Ada, why: so}
      ^^^^^^^^^^^^^""",
    ),
    (
        "rules:\n  top.edge_sags: {silence: false, by: Ada, why: so}\n",
        """\
shop.yaml:3:28: a rule counts unless it is silenced
    found silence: false
    expected silence: true
    mend: take the change out
      top.edge_sags: {silence: false, by: Ada, why: so}
                               ^^^^^""",
    ),
    (
        "rules:\n  top.edge_sags: {tighten: 1.2, by: Ada, why: so}\n",
        """\
shop.yaml:3:28: tighten is out of its bounds
    found 1.2
    expected more than 0 and less than 1
      top.edge_sags: {tighten: 1.2, by: Ada, why: so}
                               ^^^""",
    ),
    (
        "rules:\n  top.lifted_by_hand: {loosen: 1.2, by: Ada, why: so}\n",
        """\
shop.yaml:3:3: top.lifted_by_hand has no limit
    found a question to a person
    expected silence, level, or a rule with a limit
      top.lifted_by_hand: {loosen: 1.2, by: Ada, why: so}
      ^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "limits:\n  dents: {value: 0.2 mm, by: Ada, why: so}\n",
        """\
shop.yaml:3:3: there is no such limit in force
    found dents
    expected the name of a limit in force
    mend: write dent
      dents: {value: 0.2 mm, by: Ada, why: so}
      ^^^^^""",
    ),
    (
        "limits:\n  dent: {value: 2 kg, by: Ada, why: so}\n",
        """\
shop.yaml:3:17: a mass stands where a length is due
    found 2 kg
    expected a length, such as 18 mm
    mend: write a length with its unit
      dent: {value: 2 kg, by: Ada, why: so}
                    ^^^^""",
    ),
    (
        "limits:\n  dent: {value: 0.2 mm, for: everybody, by: Ada, why: so}\n",
        """\
shop.yaml:3:30: for does not take this word
    found everybody
    expected a list of children, public, private and shop, or one of them
      dent: {value: 0.2 mm, for: everybody, by: Ada, why: so}
                                 ^^^^^^^^^""",
    ),
    (
        "packs: [nothing.yaml]\n",
        """\
shop.yaml:2:9: there is no such file
    found nothing.yaml
    expected the path of a file
    packs: [nothing.yaml]
            ^^^^^^^^^^^^""",
    ),
    (
        "packs: [/etc/passwd]\n",
        """\
shop.yaml:2:9: this is no path within the folder
    found /etc/passwd
    expected a path such as ../base.yaml
    packs: [/etc/passwd]
            ^^^^^^^^^^^""",
    ),
    (
        "packs: [{install: it}]\n",
        """\
shop.yaml:2:9: this names no pack
    found a table
    expected a list of paths, or of {installed: NAME}
    packs: [{install: it}]
            ^""",
    ),
    (
        "packs: [{installed: no_such_package}]\n",
        """\
shop.yaml:2:21: the installed package no_such_package, entry point: no such package is installed
    found none is installed
    expected what reviewer.parts.plug_in describes
    mend: install the package into the same environment
    packs: [{installed: no_such_package}]
                        ^^^^^^^^^^^^^^^""",
    ),
    (
        "stock:\n  materials:\n    gaboon: {like: birch plywood, density: 480 kg/m^3}\n",
        """\
shop.yaml:4:5: a material of the shop says source
    found no source
    expected all of them
        gaboon: {like: birch plywood, density: 480 kg/m^3}
        ^^^^^^""",
    ),
    (
        "stock:\n  materials:\n    gaboon: {like: birch plywod, source: ours}\n",
        """\
shop.yaml:4:5: the material is not in the tables
    found birch plywod
    expected a name of the tables
    mend: write birch plywood or birch ply or fir plywood
        gaboon: {like: birch plywod, source: ours}
        ^^^^^^""",
    ),
    (
        'stock:\n  bearings:\n    "608": {bore: 8 mm, outer: 22 mm, width: 7 mm, source: ours}\n',
        """\
shop.yaml:4:5: this row cannot stand in the tables
    found bearing "608": the name "608" is taken by "608"
    expected give the new row a name of its own
        "608": {bore: 8 mm, outer: 22 mm, width: 7 mm, source: ours}
        ^^^^^""",
    ),
    (
        "stock:\n  materials:\n    gaboon: {family: plywood, density: 480 g/cm^3, source: ours}\n",
        """\
shop.yaml:4:5: this row cannot stand in the tables
    found material "gaboon": density is 480000
    expected 50 to 20000 in SI units, or nothing where it is unknown
        gaboon: {family: plywood, density: 480 g/cm^3, source: ours}
        ^^^^^^""",
    ),
    (
        "cutters: [long]\n",
        """\
shop.yaml:2:1: cutters is a table of cutters by name
    found a list
    expected cutters: {NAME: {...}}
    cutters: [long]
    ^^^^^^^""",
    ),
    (
        "allowances: {kerf: 3.2}\n",
        """\
shop.yaml:2:20: the number has no unit
    found 3.2
    expected a length, such as 18 mm
    mend: write 3.2 mm, if that is its unit, or declare lengths: mm at the top of the file
    allowances: {kerf: 3.2}
                       ^^^""",
    ),
]


@pytest.mark.parametrize(("shop", "message"), REFUSALS, ids=[text for text, _ in REFUSALS])
def test_refusal(told: Callable[..., str], shop: str, message: str) -> None:
    assert told(shop) == message
