"""Templates at full size into a folder: whole files or none, and nothing of anybody else's lost."""

import os
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from reviewer.command.outputs import file_mask
from reviewer.command.terminal import complain, say
from reviewer.command.usage import UsageError
from reviewer.judging.reviewed import Review
from reviewer.notation.plain import plain

if TYPE_CHECKING:
    from reviewer.reporting.templates.template import Template

PAPERS = ("A4", "Letter")
MOST_SHEETS = 200  # of paper for one template; a table of 3 m takes some 170
LARGEST = 64 * 2**20  # bytes; no template is larger, so that such a file is somebody else's


class _File(NamedTuple):
    """A file to write."""

    path: Path
    data: bytes


def write_templates(folder: str, review: Review, paper: str) -> bool:
    """Write SVG, DXF and PDF of every template of a design that was read; tell what was written.

    A file of the same name is replaced only where it is a template, and that is told. Whether any
    was written. Raises UsageError where one cannot be, and before any file is touched where one is
    in the way.
    """
    from reviewer.reporting.templates.making import templates_of

    found = templates_of(review)
    for part, reason in found.untold:
        complain(f"there is no template of {plain(part)}: {plain(reason, 400)}")
    if not found.templates:
        complain("there is no template: no part is flat, and no circle is divided")
        return False
    where = Path(folder)
    try:
        where.mkdir(exist_ok=True)
    except OSError as error:
        raise _unwritable(where, error) from None
    files = [file for template in found.templates for file in _files(where, template, paper)]
    before = {file.path: _known(file.path) for file in files}
    for file in files:
        _write(file, before[file.path])
    return True


def _files(where: Path, template: "Template", paper: str) -> Iterator[_File]:
    from reviewer.reporting.templates.as_dxf import as_dxf
    from reviewer.reporting.templates.as_pdf import as_pdf
    from reviewer.reporting.templates.as_svg import as_svg
    from reviewer.reporting.templates.tiles import PAPERS as SIZES
    from reviewer.reporting.templates.tiles import tiling_of

    yield _File(where / f"{template.name}.svg", as_svg(template).encode("utf-8"))
    yield _File(where / f"{template.name}.dxf", as_dxf(template).encode("utf-8"))
    sheets = len(tiling_of(template, SIZES[paper]).tiles)
    if sheets > MOST_SHEETS:
        name = plain(template.name)
        complain(f"there is no PDF of {name}: it would take {sheets} sheets; print its SVG or DXF")
    else:
        yield _File(where / f"{template.name}.pdf", as_pdf(template, SIZES[paper]))


def _known(path: Path) -> bytes | None:
    """What a file of this name says now, or None. Raises UsageError where it is no template."""
    from reviewer.reporting.templates.template import MADE_BY

    if not path.exists() and not path.is_symlink():
        return None
    try:
        data = path.read_bytes() if path.is_file() and path.stat().st_size <= LARGEST else b""
    except OSError as error:
        raise _unwritable(path, error) from None
    if MADE_BY.encode() not in data:
        expected = "a folder in which no other file has the name of a template"
        raise UsageError("this is no template, and is not overwritten", str(path), expected)
    return data


def _write(file: _File, before: bytes | None) -> None:
    """Write a file beside its place, and move it there when it is whole."""
    shown = plain(str(file.path), 400)
    if before == file.data:
        say(f"unchanged {shown}\n")
        return
    try:
        handle, name = tempfile.mkstemp(prefix=".reviewer-", dir=file.path.parent)
        beside = Path(name)
        with os.fdopen(handle, "wb") as stream:
            stream.write(file.data)
        beside.chmod(0o666 & ~file_mask())
        beside.replace(file.path)
    except OSError as error:
        raise _unwritable(file.path, error) from None
    say(f"{'written' if before is None else 'replaced'} {shown}\n")


def _unwritable(path: Path, error: OSError) -> UsageError:
    reason = error.strerror or "it cannot be opened"
    what = f"the templates cannot be written: {reason}"
    return UsageError(what, str(path), "a folder that can be written")
