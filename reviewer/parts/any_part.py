"""The rows that every part has which carries load, for rules that are for all of them."""

from reviewer.parts.blanks import BLANK_ROWS
from reviewer.parts.carried import CARRIED
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind

ANY = Kind(
    name="part",
    says="any part that carries load, in rules alone",
    rows=(
        *tree(),
        *(row for row in single() if row.path in ("mass", "weight")),
        CARRIED,
        *BLANK_ROWS,
    ),
)
