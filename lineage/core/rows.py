"""Rows: the nodes of a pedigree as columns, parents as row numbers."""

from __future__ import annotations

from collections.abc import Container, Iterable
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from lineage.core.ids import Ids, NamedIds
from lineage.core.nodes import (
    ORIGINS,
    SELFINGS,
    Id,
    Node,
    PedigreeError,
    Species,
    check_candidates,
    check_parent_count,
    read_composition,
)

Ints = npt.NDArray[np.int64]
Codes = npt.NDArray[np.uint8]
Bools = npt.NDArray[np.bool_]
Mixture = dict[Species | None, float]

FOUNDER, DIVISION, SELF, CROSS, MIXED, APOGAMOUS, UNKNOWN = range(len(ORIGINS))


@dataclass(slots=True)
class Rows:
    """The nodes as columns, in the order given.

    ``parents[start[i]:start[i + 1]]`` are the rows of the parents of row i, -1 for a plant not known.
    ``mixture`` is the place in ``mixtures`` of a founder's composition (of a clone's too, should it lose its
    link), -1 for a plant raised from spores. ``late`` holds the parents of rows revised since, and ``gone``
    the rows that are no more or not yet used.
    """

    ids: Ids
    origin: Codes
    start: Ints
    parents: Ints
    selfing: Codes
    selfs_excluded: Bools
    sport: Bools
    by_name: Bools
    mixture: Ints
    mixtures: list[Mixture]
    late: dict[int, list[int]] = field(default_factory=dict)
    gone: Bools | None = None

    def present(self) -> Ints:
        """Return the rows that are in use, in order."""
        return np.arange(len(self.origin)) if self.gone is None else np.flatnonzero(~self.gone)

    def parents_of(self, row: int) -> list[int]:
        """Return the parent rows of a row, -1 for a plant not known."""
        if row in self.late:
            return self.late[row]
        found: list[int] = self.parents[self.start[row] : self.start[row + 1]].tolist()
        return found


def rows_from_nodes(nodes: Iterable[Node]) -> Rows:
    """Return the nodes as columns; raise `PedigreeError` for each that cannot be."""
    given = list(nodes)
    if not given:
        raise PedigreeError("A pedigree has at least one node.")
    ids = NamedIds([node.id for node in given])
    row_of = {node.id: row for row, node in enumerate(given)}
    for node in given:
        check_node(node, row_of)
    mixtures, mixture = _mixtures(given)
    counts = [len(node.parents) for node in given]
    return Rows(
        ids=ids,
        origin=_codes([ORIGINS.index(node.origin) for node in given]),
        start=np.concatenate([[0], np.cumsum(counts)]).astype(np.int64),
        parents=_ints([-1 if p is None else row_of[p] for node in given for p in node.parents]),
        selfing=_codes([SELFINGS.index(node.selfing) for node in given]),
        selfs_excluded=_flags([node.selfs_excluded for node in given]),
        sport=_flags([node.sport for node in given]),
        by_name=_flags([node.by_name for node in given]),
        mixture=_ints(mixture),
        mixtures=mixtures,
    )


def check_node(node: Node, known: Container[Id]) -> None:
    """Raise `PedigreeError` unless the node can be, and its parents are in ``known``."""
    if node.origin not in ORIGINS:
        raise PedigreeError(f"{node.id!r}: {node.origin!r} is no origin ({', '.join(ORIGINS)}).", (node.id,))
    if node.selfing not in SELFINGS:
        raise PedigreeError(f"{node.id!r}: selfing is 'intra', 'inter' or None.", (node.id,))
    check_parent_count(node.id, node.origin, len(node.parents))
    check_candidates(node.id, node.origin, node.parents, node.selfs_excluded, nobody=None)
    if node.composition is not None and node.origin != "founder":
        raise PedigreeError(f"{node.id!r}: only a founder carries a composition.", (node.id,))
    mixture_key(node)
    for parent in node.parents:
        if parent is not None and parent not in known:
            raise PedigreeError(f"{node.id!r}: its parent {parent!r} is missing.", (node.id, parent))


def mixture_key(node: Node) -> frozenset[tuple[Species | None, float]]:
    """Return the composition of a founder, and of a clone should it lose its link."""
    if node.composition is None:
        return _UNKNOWN
    return frozenset(read_composition(node.id, node.composition).items())


_UNKNOWN: frozenset[tuple[Species | None, float]] = frozenset({(None, 1.0)})


def mixture_place(mixtures: list[Mixture], node: Node) -> int:
    """Return the place of a node's composition in ``mixtures``, where it is added if it is new."""
    if node.origin in {"self", "cross", "mixed"}:
        return -1
    mixture: Mixture = dict(mixture_key(node))
    if mixture not in mixtures:
        mixtures.append(mixture)
    return mixtures.index(mixture)


def _mixtures(nodes: list[Node]) -> tuple[list[Mixture], list[int]]:
    places: dict[frozenset[tuple[Species | None, float]], int] = {}
    column = []
    for node in nodes:
        raised = node.origin in {"self", "cross", "mixed"}
        column.append(-1 if raised else places.setdefault(mixture_key(node), len(places)))
    return [dict(key) for key in places], column


def _ints(values: list[int]) -> Ints:
    return np.array(values, dtype=np.int64)


def _codes(values: list[int]) -> Codes:
    return np.array(values, dtype=np.uint8)


def _flags(values: list[bool]) -> Bools:
    return np.array(values, dtype=np.bool_)
