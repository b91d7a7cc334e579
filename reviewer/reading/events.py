"""From text to a marked tree of a strict YAML 1.2, with everything that is wrong with the text."""

from reviewer.notation.problem import Place, Problem
from reviewer.reading.parsers import PARSER, ParserOf
from reviewer.reading.source import read_source
from reviewer.reading.tree import Document, Items, Node, Scalar, Table
from reviewer.reading.walk import Walk
from reviewer.reading.words import MAX_PROBLEMS

__all__ = ["Document", "Items", "Node", "Place", "Problem", "Scalar", "Table", "read_yaml"]


def read_yaml(
    source: bytes | str,
    path: str,
    root: type[Table] | type[Items] | None = Table,
    parser_of: ParserOf = PARSER,
) -> Document:
    """Read a YAML 1.2 text strictly, as a tree of tables, lists and scalars with their places.

    `root` is what the whole file must be; None leaves that open. `parser_of` makes the parser to
    walk over. Nothing is raised: everything wrong is in the document's problems, in order of place,
    each once. Of more than 100 problems the first 100 are told, then that there are more.

    >>> document = read_yaml(b"lengths: mm\\nparts: {arm: {reach: 430}}\\n", "bench.yaml")
    >>> reach = document.root.get("parts").get("arm").get("reach")
    >>> reach.text, reach.place
    ('430', Place(path='bench.yaml', line=2, column=22, end_column=25))
    """
    read = read_source(source, path, MAX_PROBLEMS)
    if not read.is_text:
        return Document(None, read.problems, read.lines, path)
    walk = Walk(read)
    tree = walk.run(parser_of, root)
    return Document(tree, walk.gathered.in_order(), read.lines, path)
