"""Files made to break the program: how each is called, what it is read as, and its text."""

import random
from collections.abc import Iterator
from typing import NamedTuple

MEBIBYTE = 1 << 20
PART = (
    "design: d\nlengths: mm\nparts:\n  b: {kind: base, feet: {count: 4, circle: 800}, mass: 9 kg}\n"
)
RING = PART + (
    "  r:\n    kind: slewing_ring\n    carried_by: b\n"
    "    plate: {material: birch plywood, thickness: 24, diameter: 420}\n"
    '    carry: {bearing: "6001", count: 10, circle: 340, bolt: M12x50}\n'
    '    hold_down: {bearing: "608", count: 6, circle: 340, gap: 0.1, bolt: M8x40}\n'
    '    side: {bearing: "608", count: 4, gap: 0.2}\n    height: 52\n'
)


class Hostile(NamedTuple):
    """A text, and what it is read as: a design, a pack, a shop or a file of a folder."""

    name: str
    kind: str
    text: bytes


def rule(**keys: str) -> str:
    """A pack of one rule, some of whose keys are given."""
    told = {
        "rule": "gap.x",
        "question": "Is it?",
        "require": "most <= 9 mm",
        "level": "must",
        "stage": "cutting",
        "says": "Said.",
        "because": "So.",
        "source": "ours",
        "proof": "{holds: {most: 8 mm}, fails: {most: 10 mm}}",
        **keys,
    }
    return "- " + "\n  ".join(f"{key}: {value}" for key, value in told.items()) + "\n"


def quoted(text: str) -> str:
    """A text in double quotes as YAML takes it."""
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


EXPRESSIONS = {
    "parentheses": "(" * 1_900,
    "nots": "not " * 400 + "moves",
    "a tower of powers": "9^9^9^9^9^9^9 > 1",
    "a huge power": "(2 mm)^1000000000 > 1 mm",
    "a fine power": "most^(1/99999999999) > 1 mm",
    "a number without end": "most < 1" + "0" * 1_900 + " mm",
    "an exponent without end": "most < 1e99999999999 mm",
    "a long sum": "+".join(["most"] * 300) + " < 1 mm",
    "calls in calls": "abs(" * 300 + "most" + ")" * 300 + " < 1 mm",
    "a table of many points": f"table(most, [{', '.join(f'{n} mm: {n}' for n in range(200))}]) < 1",
    "class of nothing": "().__class__.__mro__[1].__subclasses__()",
    "attributes": "most.__class__.__init__.__globals__ < 1",
    "an import": '__import__("os").system("id") == 0',
    "a lambda": "(lambda: most)() < 1",
    "a comprehension": "sum(x for x in [1]) < 1",
    "a walrus": "(x := most) < 1 mm",
    "a subscript": 'design["service"] == "public"',
    "an f string": 'f"{most}" == "1"',
    "Cyrillic letters": "mоst <= 9 mm",
    "full width letters": "ｍost <= 9 mm",
    "a Greek question mark": "most <= 9 mm;",
    "a minus of typographers": "most − 1 mm <= 9 mm",
    "a zero of another script": "most <= ９ mm",
    "an invisible letter": "mo\u200bst <= 9 mm",
    "backwards": "most <= \u202e9 mm",
    "an escape": "most <= \x9b31m 9 mm",
    "nothing": "",
    "spaces": " " * 1_999,
    "quotes": '"' * 501,
    "a regular expression": 'most == "' + "(a+)+" * 300 + '"',
}
TEMPLATES = {
    "braces": "{" * 999,
    "attributes in a text": "{most.__class__}",
    "a conversion": "{most!r}",
    "a width": "{most:>9999999999}",
    "an index": "{0}{1}{most[0]}",
    "many places": "{most}" * 300,
    "a long text": "x" * 100_000,
}
YAML = {
    "brackets": "[" * 100_000,
    "braces": "{a: " * 5_000,
    "nested blocks": "\n".join(" " * n + "a:" for n in range(1_000)),
    "nested lists": "- " * 5_000 + "1",
    "billion laughs": "a0: &a0 [lol]\n"
    + "".join(f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" for n in range(1, 12)),
    "an alias of itself": "design: &a [*a]\n",
    "a merge of itself": "design: &a {<<: *a}\n",
    "merged tables": "a: &a {b: 1}\nc: {<<: [*a, *a, *a]}\n",
    "a Python object": "design: !!python/object/apply:os.system ['id']\n",
    "a tag": "%TAG ! tag:yaml.org,2002:\n---\ndesign: !!set {a, b}\n",
    "binary": "design: !!binary R0lGODlhDAAMAIQAAP\n",
    "many documents": "---\ndesign: d\n" * 5_000,
    "one long line": "design: " + "x" * (MEBIBYTE - 100),
    "one long key": "x" * (MEBIBYTE - 100) + ": 1\n",
    "more than a mebibyte": "a: 1\n" * 300_000,
    "keys without end": "".join(f"k{n}: 1\n" for n in range(60_000)),
    "the same key again and again": "design: d\n" * 60_000,
    "keys that are lists": "? [a, b]\n: 1\n" * 2_000,
    "a comment without end": "#" * MEBIBYTE,
    "tabs": "\t" * 100_000,
    "quotes that never end": "design: '" + "''" * 200_000,
    "a number of a million digits": "design: d\nrevision: " + "9" * 1_000_000 + "\n",
    "escapes": 'design: "\\e[2J\\e]0;owned\\a\\x9b31m\\u202e"\nparts: {"\\e[2J": {}}\n',
    "escapes unescaped": "design: \x1b[2J\x1b]8;;http://x\x07\n",
    "nothing": "",
    "zeros": "\0" * 100_000,
    "deep keys": "design: d\nparts: " + "{a: " * 49 + "1" + "}" * 49 + "\n",
}
DESIGNS = {
    "a quantity of many words": PART.replace("9 kg", "1 " * 50_000 + "kg"),
    "a quantity of many signs": PART.replace("9 kg", "9 kg " + "± 1 kg " * 20_000),
    "a fraction of fractions": PART.replace("9 kg", "1/" * 50_000 + "1 kg"),
    "a tower of powers": PART.replace("9 kg", "9**9**9**9 kg"),
    "a huge exponent": PART.replace("9 kg", "1e999999999 kg"),
    "a huge count": PART.replace("count: 4", f"count: {'9' * 5_000}"),
    "a part that is called a class": PART + "  __class__: {kind: base}\n",
    "names that look alike": PART + "".join(f"  pаrt{n}: {{kind: base}}\n" for n in range(2_000)),
    "ten thousand parts": PART + "".join(f"  p{n}: {{kind: basse}}\n" for n in range(4_500)),
    "a circle of parts": "design: d\nparts:\n"
    + "".join(f"  p{n}: {{kind: base, carried_by: p{(n + 1) % 2_500}}}\n" for n in range(2_500)),
    "everybody carries everybody": "design: d\nparts:\n"
    + "".join(
        f"  p{n}: {{kind: top, carried_by: [{', '.join(f'p{m}' for m in range(130) if m != n)}]}}\n"
        for n in range(130)
    ),
    "a tower of parts": PART
    + "".join(
        f"  t{n}: {{kind: top, carried_by: {f't{n - 1}' if n else 'b'}, material: MDF,"
        f" thickness: 9, diameter: 90}}\n"
        for n in range(300)
    ),
    "cases without end": RING
    + "loads:\n  w: {force: 9 N, on: r}\n"
    + "configurations:\n"
    + "".join(f"  c{n}: {{}}\n" for n in range(1_000))
    + "combinations:\n"
    + "".join(f"  k{n}: {{w: 1.5}}\n" for n in range(1_000)),
    "loads without end": RING
    + "loads:\n"
    + "".join(f"  w{n}: {{force: 9 N, on: r, at: rim, all_round: true}}\n" for n in range(1_500)),
    "rollers without end": RING.replace("count: 10", "count: 200").replace("340", "4000"),
    "stock that is no stock": PART
    + "  t: {kind: top, carried_by: b, material: "
    + quoted("\x1b[2J" + "a" * 5_000)
    + "}\n",
    "concessions without end": PART
    + "concessions:\n"
    + "  - {rule: a.b, part: b, by: x, why: y}\n" * 3_000,
    "based on a device": "based_on: /dev/zero\n",
    "based on a password": "based_on: ../../../../etc/passwd\n",
    "based on an address": "based_on: file:///etc/passwd\n",
    "based on a drive": "based_on: C:\\secret.yaml\n",
    "based on nothing": 'based_on: ""\n',
    "based on a zero": 'based_on: "a\\0b.yaml"\n',
    "based on a long path": "based_on: " + "a/" * 100_000 + "b.yaml\n",
}
FOLDERS = {
    "based on a pipe": "based_on: pipe.yaml\n",
    "based on a link that leaves": "based_on: leaves.yaml\n",
    "based on a link to itself": "based_on: circle.yaml\n",
    "based on a folder": "based_on: folder.yaml\n",
    "based on itself": "based_on: design.yaml\n",
    "based on a large file": "based_on: large.yaml\n",
}
SHOPS = {
    "packs that leave": "shop: x\npacks: [/etc/passwd, ../../x.yaml, pipe.yaml, leaves.yaml, .]\n",
    "packs without end": "shop: x\npacks: [" + "a.yaml, " * 9_000 + "a.yaml]\n",
    "a package called by its path": "shop: x\npacks: [{installed: ../../evil}]\n",
    "a package that is a module": "shop: x\npacks: [{installed: os}]\n",
    "rules without end": "shop: x\nrules:\n"
    + "".join(f"  gap.r{n}: {{silence: true, by: a, why: b}}\n" for n in range(2_500)),
    "stock without end": "shop: x\nstock:\n  materials:\n"
    + "".join(f"    m{n}: {{like: birch plywod{n}, source: x}}\n" for n in range(2_500)),
    "escapes in a reason": 'shop: "\\e[2J"\n'
    'rules: {gap.hands: {silence: true, by: "\\e[1m", why: "\\a"}}\n',
}


def hostile() -> Iterator[Hostile]:
    """Everything on the list."""
    for name, text in EXPRESSIONS.items():
        for key in ("require", "when"):
            yield Hostile(f"{key}: {name}", "pack", rule(**{key: quoted(text)}).encode())
    for name, text in TEMPLATES.items():
        yield Hostile(f"says: {name}", "pack", rule(says=quoted(text)).encode())
    for name, text in YAML.items():
        for kind in ("design", "pack", "shop"):
            yield Hostile(f"{kind}: {name}", kind, text.encode())
    for kind, texts in (("design", DESIGNS), ("folder", FOLDERS), ("shop", SHOPS)):
        for name, text in texts.items():
            yield Hostile(f"{kind}: {name}", kind, text.encode())
    yield Hostile("pack: rules without end", "pack", many_rules().encode())
    yield Hostile("pack: limits without end", "pack", many_limits().encode())
    for kind in ("design", "pack", "shop"):
        yield Hostile(f"{kind}: UTF-16", kind, "design: d\n".encode("utf-16"))
        yield Hostile(f"{kind}: no text at all", kind, random.Random(1).randbytes(100_000))


def many_rules() -> str:
    """As many rules as a mebibyte holds, each with a name that is nearly known."""
    one = rule(require="mostt <= 9 mm")
    return "".join(one.replace("gap.x", f"gap.x{n}") for n in range(1_000))


def many_limits() -> str:
    """As many limits as the reader takes, each with a level that is nearly known."""
    limit = "{says: s, value: 1 mm, why: w, source: s, for: {publick: {}}}"
    return "limits:\n" + "".join(f"  l{n}: {limit}\n" for n in range(1_500)) + "rules: []\n"
