"""Castors under a cart: a kind of part that a shop's own package brings to Reviewer."""

from collections.abc import Iterator
from importlib.resources import files
from typing import Any

from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.plug_in import brings
from reviewer.parts.row import Count, Measure, Row
from reviewer.stock.materials import Material, materials


def castor_load(force: Any, touching: Any) -> Any:
    """Load of the busiest castor, when only some of them touch the floor.

    Statics; on an uneven floor three of four touch (common practice).

    Parameters
    ----------
    force : load on all of them [N]
    touching : how many touch the floor [1]

    Returns
    -------
    load : load of the busiest castor [N]
    """
    return force / touching


def castors_touching(count: int, lost: Any) -> Any:
    """How many castors touch an uneven floor.

    Common practice.
    """
    return count - lost


CASTORS = Kind(
    name="castors",
    says="castors under a cart or a bench",
    rows=(
        *tree(),
        *(row for row in single() if row.path != "count"),
        Row("count", "", "how many there are", Count(default=4, at_least=3, at_most=8)),
        Row("height", "m", "height over all", Measure(above=0.0, example="125 mm")),
        Row("rating", "N", "load that one may carry", Measure(above=0.0, example="800 N")),
        Row(
            "touching",
            "1",
            "how many touch an uneven floor",
            formula=castors_touching,
            needs={"count": "count", "lost": "limit.castors_lost"},
        ),
        Row(
            "load",
            "N",
            "load of the busiest castor",
            formula=castor_load,
            needs={"force": "bears.force", "touching": "touching"},
        ),
    ),
)


@brings("kinds")
def kinds() -> Iterator[Kind]:
    """The kinds of this package."""
    yield CASTORS


@brings("materials")
def our_materials() -> Iterator[Material]:
    """A panel that the tables lack, like one that they have."""
    like = materials().find("birch plywood")
    yield Material(
        name="film faced ply",
        family="plywood",
        density=700.0,
        modulus=like.modulus,
        source="our own scales; modulus as birch plywood",
    )


@brings("packs")
def packs() -> Iterator[Any]:
    """The rules for castors."""
    yield files(__package__) / "castors.yaml"
