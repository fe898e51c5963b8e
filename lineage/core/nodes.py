"""The values that go into a pedigree and come out of it."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

Id = Hashable
Species = Hashable
Interval = tuple[float, float]

#: What a plant came from. The order is the code used in columns.
ORIGINS = ("founder", "division", "self", "cross", "mixed", "apogamous", "unknown")
#: How a plant selfed: not known, within one prothallus, between two prothalli of one parent.
SELFINGS = (None, "intra", "inter")

_PARENT_COUNTS = {
    "founder": (0, 0),
    "division": (1, 1),
    "self": (1, 1),
    "cross": (2, 2),
    "mixed": (1, None),
    "apogamous": (1, 1),
    "unknown": (0, 0),
}


class PedigreeError(ValueError):
    """A pedigree that cannot be: a cycle, a missing parent, a wrong number of parents.

    ``members`` holds the ids concerned: the plants of the cycle in order (each followed by a parent of
    it), or the node and the parent it misses.
    """

    def __init__(self, message: str, members: Iterable[Id | None] = ()) -> None:
        super().__init__(message)
        self.members = tuple(members)


@dataclass(frozen=True, slots=True)
class Node:
    """One plant of a pedigree.

    Parameters
    ----------
    id
        Any hashable but ``None``.
    origin
        One of `ORIGINS`.
    parents
        None for ``founder`` and ``unknown``; one for ``division``, ``apogamous`` and ``self``; two for
        ``cross``; one or more candidates for ``mixed``. ``None`` stands for a plant not known, a new
        one at each mention.
    composition
        Of a founder: species to share, dyadic shares that sum to 1. Without it its species is not known.
    selfing
        Of a ``self``: ``"intra"`` (one prothallus), ``"inter"`` (two prothalli) or ``None`` (not known).
    selfs_excluded
        Of a ``mixed``: the plant is known to be a cross of two of the candidates.
    sport
        Of a clone: it mutated, and starts a clone line of its own.
    by_name
        Of a clone: the link rests on the name alone. It joins the genet and adds no clonal step.
    """

    id: Id
    origin: str
    parents: tuple[Id | None, ...] = ()
    composition: Mapping[Species | None, int | float | Fraction] | None = None
    selfing: str | None = None
    selfs_excluded: bool = False
    sport: bool = False
    by_name: bool = False


@dataclass(frozen=True, slots=True)
class Fact:
    """What a pedigree says about one plant. A pair is a closed interval, equal ends are exact.

    ``genet`` and ``ortet`` are the id of the first plant of the clone, ``clone_line`` that of the nearest
    sport or the ortet. ``completeness`` is ``None`` where unsettled parents make it undefined. A species
    without a key in ``composition`` lies within ``(0, composition[None][1])``, or is absent without that key.
    """

    genet: Id
    ortet: Id
    clone_line: Id
    clonal_steps: int
    gen_min: int
    gen_max: int
    eq_generations: Interval
    completeness: float | None
    composition: dict[Species | None, Interval]
    inbreeding: Interval


class Contradiction(NamedTuple):
    """Two records of one plant that cannot both be right.

    ``kind`` is ``"selfs excluded, one genet"``: ``node`` is said to be a cross of two candidates, but
    all of them are pieces of the one plant ``genet``; it is computed as a self.
    """

    kind: str
    node: Id
    genet: Id


def check_parent_count(node: Id, origin: str, count: int) -> None:
    """Raise `PedigreeError` unless a plant of this origin may have ``count`` parents."""
    least, most = _PARENT_COUNTS[origin]
    if count < least or (most is not None and count > most):
        wanted = f"{least}" if most == least else f"at least {least}"
        raise PedigreeError(f"{node!r}: a {origin} has {wanted} parents, not {count}.", (node,))


def check_candidates(
    node: Id, origin: str, parents: Sequence[object], selfs_excluded: bool, nobody: object
) -> None:
    """Raise `PedigreeError` for a cross of two of one candidate who is not known."""
    if origin == "mixed" and selfs_excluded and len(parents) == 1 and parents[0] == nobody:
        raise PedigreeError(f"{node!r}: a cross of two of one candidate, who is not known.", (node,))


def read_composition(
    node: Id, shares: Mapping[Species | None, int | float | Fraction] | None
) -> dict[Species | None, float]:
    """Return a founder's shares as floats; raise `PedigreeError` unless they are dyadic and sum to 1."""
    if shares is None:
        return {None: 1.0}
    exact = {species: Fraction(share) for species, share in shares.items()}
    if sum(exact.values()) != 1 or min(exact.values()) < 0:
        raise PedigreeError(f"{node!r}: the shares of a founder are at least 0 and sum to 1.", (node,))
    if any(Fraction(float(share)) != share for share in exact.values()):
        raise PedigreeError(f"{node!r}: the shares of a founder are dyadic, as 1/2 or 3/8.", (node,))
    return {species: float(share) for species, share in exact.items()}
