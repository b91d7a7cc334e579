"""Which tests hold each public formula against something from outside the project."""

import ast
import importlib
import importlib.util
import inspect
from pathlib import Path

TESTS = Path(__file__).parents[1]
# Values printed or computed apart; general-purpose libraries; statics by hand and scipy.
FOLDERS = ("published", "reference", "mechanics")
PACKAGE = "reviewer.mechanics"
# Files under tests/mechanics that hold a formula against something, and against what. A file that
# is not here (properties, units, arrays, docstrings) counts for nothing.
BY_HAND = {
    "test_bolts.py": "energy, beam tables, thread profile of ISO 68-1, a formula turned round",
    "test_clamps.py": "pressure and friction integrated by scipy; Castigliano; moments",
    "test_contact.py": "elliptic integrals, roots and quadrature by scipy; work",
    "test_disc_series.py": "numpy's Chebyshev sums; the closed form, itself against elements",
    "test_guides.py": "equilibrium solved, roots, quadrature and motion followed by scipy",
    "test_load_path_mechanics.py": "statics by hand; ISO 80000-3",
    "test_panel_average.py": "the turned stiffness (Jones) averaged over 360 directions",
    "test_ramps.py": "equilibrium solved; work and virtual work by scipy",
    "test_rings.py": "linear programming and quadrature by scipy; geometry searched",
    "test_rollers.py": "statics; catalogue examples",
    "test_strip.py": "the differential equation solved by scipy; Biot",
}


def name_of(function):
    """Module and name of a formula, seen through what a test wraps around it."""
    inner = inspect.unwrap(function)
    return f"{inner.__module__.removeprefix(PACKAGE + '.')}.{inner.__name__}"


def formulas():
    """Every public formula, as the test of docstrings walks them."""
    path = TESTS / "mechanics" / "test_docstrings.py"
    spec = importlib.util.spec_from_file_location("loaded_test_docstrings", path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return sorted(name_of(case.values[0]) for case in module.ALL)


def resolved(module, name):
    """The formula behind an import, which may come by way of a module that hands it on."""
    found = getattr(importlib.import_module(module), name)
    return name_of(found) if inspect.isfunction(found) else None


def used_in(path):
    """Formulas that a test file imports and then names in its code."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    imported = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith(PACKAGE + "."):
            for alias in node.names:
                imported[alias.asname or alias.name] = resolved(node.module, alias.name)
    named = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
    return {formula for name, formula in imported.items() if formula and name in named}


def coverage():
    """For each folder, the test files that name each formula."""
    found = {folder: {} for folder in FOLDERS}
    for folder in FOLDERS:
        for path in sorted((TESTS / folder).glob("test_*.py")):
            if folder == "mechanics" and path.name not in BY_HAND:
                continue
            for formula in used_in(path):
                found[folder].setdefault(formula, []).append(f"{folder}/{path.name}")
    return found


def unchecked():
    """Formulas that no test holds against anything from outside."""
    found = coverage()
    return [name for name in formulas() if not any(name in found[folder] for folder in FOLDERS)]


def lines(tabled):
    """The part of README.md on libraries, and on the formulas that have no row in its tables."""
    found = coverage()
    every = formulas()
    library = [name for name in every if name in found["reference"]]
    left = [name for name in every if name not in tabled and name not in library]
    here = [name for name in left if name in found["published"]]
    hand = [name for name in left if name not in here]
    yield from section("Checked in this folder, in a test of another shape", here, "published")
    yield from section(
        "Checked against PyNiteFEA, scikit-fem, sectionproperties or scipy", library, "reference"
    )
    yield from section(
        "Only checked against a general-purpose library or statics by hand", hand, "mechanics"
    )
    yield from ["", "Against what:", ""]
    yield from (f"- `mechanics/{name}`: {what}" for name, what in BY_HAND.items())


def section(heading, names, folder):
    """A heading and a line for each formula with the tests that hold it."""
    files = coverage()[folder]
    yield from ["", f"## {heading}", ""]
    yield from (f"- `{name}`: {', '.join(files[name])}" for name in names)
