"""The pedigree: nodes in, facts out."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, Required, TypedDict, Unpack

import numpy as np
import numpy.typing as npt

from lineage.core.children import Children
from lineage.core.computing import State, compute, kinship_of
from lineage.core.index import Index
from lineage.core.intake import rows_from_columns
from lineage.core.nodes import Contradiction, Fact, Id, Interval, Node, PedigreeError, Species
from lineage.core.relatives import reach
from lineage.core.revision import Revision, check_revision, must_rebuild, rebuild
from lineage.core.rows import rows_from_nodes

Ints = npt.NDArray[np.int64]
Column = npt.NDArray[Any]


class Columns(TypedDict, total=False):
    """What `Pedigree.from_columns` takes, by name."""

    id: Required[Column]
    origin: Required[Column]
    parent_start: Required[Column]
    parents: Required[Column]
    species: Required[Column]
    selfing: Required[Column]
    selfs_excluded: Column | None
    sport: Column | None
    by_name: Column | None
    mix_start: Column | None
    mix_species: Column | None
    mix_share: Column | None


class Pedigree:
    """Plants with their parents, and all that follows from them.

    Every bound is exact where a float can be, else rounded outward. Bounds of inbreeding and kinship that would
    rest on more pairs of ancestors than memory allows (`lineage.core.frontier.CAP`) are the widest that are
    always true: from 0 to the kinship of the most inbred of the plants concerned with itself.

    Parameters
    ----------
    nodes
        At least one `Node`, in any order; every parent is among them.

    Raises
    ------
    PedigreeError
        No nodes, an id given twice, a parent that is missing, a wrong number of parents, a cycle.

    Examples
    --------
    >>> pedigree = Pedigree([
    ...     Node("A", "founder", composition={"andinum": 1}),
    ...     Node("B", "unknown"),
    ...     Node("C", "cross", parents=("A", "B")),
    ... ])
    >>> pedigree.fact("C").composition
    {'andinum': (0.5, 1.0), None: (0.5, 0.5)}
    >>> pedigree.kinship("A", "C")
    (0.25, 0.25)
    """

    _state: State
    _index: Index | None
    _children: Children | None

    def __init__(self, nodes: Iterable[Node]) -> None:
        self._set(compute(rows_from_nodes(nodes)))

    def fact(self, id: Id) -> Fact:
        """Return what is known of one plant; `PedigreeError` if it is not here."""
        row = self._row(id)
        clones, id_of = self._state.clones, self._state.rows.ids.id_of
        root = int(clones.root[row])
        facts = self._state.table.facts(int(self._state.parentages.class_of[root]))
        return Fact(
            genet=id_of(root),
            ortet=id_of(root),
            clone_line=id_of(int(clones.line[row])),
            clonal_steps=int(clones.steps[row]),
            gen_min=facts.gen_min,
            gen_max=facts.gen_max,
            eq_generations=facts.eq,
            completeness=facts.completeness,
            composition=facts.composition,
            inbreeding=facts.inbreeding,
        )

    def kinship(self, a: Id, b: Id) -> Interval:
        """Return the bounds of the coefficient of kinship of two plants.

        Founders are taken as unrelated and not inbred. The bounds are valid, not always attained. Of two
        plants of one genet, and of a plant with itself: (1 + F) / 2.
        """
        root = self._state.clones.root
        return kinship_of(self._state, int(root[self._row(a)]), int(root[self._row(b)]))

    @property
    def dropped_links(self) -> list[tuple[Id, Id]]:
        """By-name clone links that lay on a cycle, as (child, parent); those children count as unknown plants."""
        rows, id_of = self._state.rows, self._state.rows.ids.id_of
        return [(id_of(row), id_of(rows.parents_of(row)[0])) for row in sorted(self._state.dropped)]

    @property
    def contradictions(self) -> list[Contradiction]:
        """Plants whose selfs are excluded though all their candidates are one genet; computed as its selfs."""
        parentages, id_of = self._state.parentages, self._state.rows.ids.id_of
        kind = "selfs excluded, one genet"
        return [
            Contradiction(kind, id_of(row), id_of(parentages.parents_of(int(parentages.class_of[row]))[0]))
            for row in sorted(self._state.contradictory)
            if parentages.class_of[row] >= 0
        ]

    def ancestors(self, id: Id) -> set[Id]:
        """Return all plants above one by recorded links, candidates and clones too; itself not among them."""
        return self._ids(reach(self._row(id), self._links_up))

    def descendants(self, id: Id) -> set[Id]:
        """Return all plants below one by recorded links, itself not among them."""
        return self._ids(reach(self._row(id), self._links_down))

    def revise(self, nodes: Iterable[Node] = (), removed: Iterable[Id] = ()) -> set[Id]:
        """Replace, add and remove nodes; return the ids whose facts changed.

        New ids are among them, removed ones are not. All or nothing: on a `PedigreeError` the pedigree is as
        before. The outcome is that of a pedigree made anew. Cost: that of the genets below the change; the
        first revision also indexes the pedigree.

        Raises
        ------
        PedigreeError
            As for a new pedigree; an id given twice, or not here and removed.
        """
        changes, gone = _read_changes(nodes, removed)
        index = self._make_index()
        check_revision(index, changes, gone)
        if must_rebuild(index, changes, gone):
            state, rows = rebuild(self._state, changes, gone)
            self._set(state)
            return self._ids(rows)
        return self._ids(Revision(index).apply(changes, gone))

    @classmethod
    def from_columns(cls, **columns: Unpack[Columns]) -> Pedigree:
        """Return a pedigree of n nodes given as numpy columns, one row a node, in any order.

        Parameters
        ----------
        id
            int64, n, unique, sparse; -1 is none.
        origin
            uint8, n: a place in `ORIGINS`.
        parent_start, parents
            int64: the parents of row i are ``parents[parent_start[i]:parent_start[i + 1]]``, ids, -1 for a
            plant not known.
        species
            int32, n: the code of a founder, else -1. A founder without is of unknown species.
        selfing
            uint8, n: 0 not known, 1 within one prothallus, 2 between two.
        selfs_excluded, sport, by_name
            bool, n; all false where left out.
        mix_start, mix_species, mix_share
            Founders that are mixtures, in the same way as parents: dyadic shares that sum to 1.

        Raises
        ------
        PedigreeError
            As for nodes, and for columns that do not fit together.
        """
        rows = rows_from_columns(**columns)
        pedigree = cls.__new__(cls)
        pedigree._set(compute(rows))
        return pedigree

    def columns(self) -> dict[str, Column]:
        """Return the facts as numpy columns, one row a node in the order given, added ones last.

        ``id``, ``genet``, ``clone_line`` (ids: int64 if all are integers, else objects), ``clonal_steps``,
        ``gen_min``, ``gen_max``, ``parentage_class`` (int64), ``eq_lo``, ``eq_hi``, ``completeness`` (NaN
        where undefined), ``f_lo``, ``f_hi`` (float64). Ask `class_composition` for the rest.
        """
        clones, ids, table = self._state.clones, self._state.rows.ids, self._state.table
        rows = self._state.rows.present()
        root = clones.root[rows]
        k = self._state.parentages.class_of[root]
        return {
            "id": ids.column(rows),
            "genet": ids.column(root),
            "clone_line": ids.column(clones.line[rows]),
            "clonal_steps": clones.steps[rows],
            "gen_min": table.gen_min[k],
            "gen_max": table.gen_max[k],
            "eq_lo": table.eq_lo[k],
            "eq_hi": table.eq_hi[k],
            "completeness": table.completeness[k],
            "f_lo": table.f_lo[k],
            "f_hi": table.f_hi[k],
            "parentage_class": k,
        }

    def class_composition(self, k: int) -> dict[Species | None, Interval]:
        """Return the composition of parentage class ``k``, as numbered in `columns`."""
        if not 0 < k < len(self._state.table.level):
            raise PedigreeError(f"There is no parentage class {k}.")
        return self._state.table.compositions.of(int(k))

    def _row(self, id: Id) -> int:
        row = self._state.rows.ids.row_of(id)
        if row is None:
            raise PedigreeError(f"{id!r} is not in this pedigree.", (id,))
        return row

    def _ids(self, rows: Iterable[int]) -> set[Id]:
        id_of = self._state.rows.ids.id_of
        return {id_of(row) for row in rows}

    def _links_up(self, row: int) -> list[int]:
        if row in self._state.dropped:
            return []
        return [parent for parent in self._state.rows.parents_of(row) if parent >= 0]

    def _links_down(self, row: int) -> list[int]:
        if self._children is None:
            self._children = Children(self._state.rows)
        return [child for child in self._children.of(row) if child not in self._state.dropped]

    def _make_index(self) -> Index:
        if self._index is None:
            self._index = Index(self._state)
            self._children = self._index.children
        return self._index

    def _set(self, state: State) -> None:
        self._state = state
        self._index = None
        self._children = None


def _read_changes(nodes: Iterable[Node], removed: Iterable[Id]) -> tuple[dict[Id, Node], set[Id]]:
    changes: dict[Id, Node] = {}
    gone = set(removed)
    for node in nodes:
        if node.id in changes or node.id in gone:
            raise PedigreeError(f"{node.id!r} is given twice.", (node.id,))
        changes[node.id] = node
    return changes, gone
