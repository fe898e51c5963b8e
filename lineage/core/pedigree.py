"""The pedigree: nodes in, facts out."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import numpy as np
import numpy.typing as npt

from lineage.core.clones import Clones, follow_clones
from lineage.core.cycles import links_on_cycles
from lineage.core.intake import rows_from_columns
from lineage.core.kinship import PairByPair, Parentage
from lineage.core.levels import class_levels
from lineage.core.nodes import Contradiction, Fact, Id, Interval, Node, PedigreeError, Species
from lineage.core.parentage import Parentages, read_parentages
from lineage.core.relatives import reach
from lineage.core.rows import Rows, rows_from_nodes
from lineage.core.walk import NOBODY_FACTS, ClassFacts, founder_facts, spore_facts

Ints = npt.NDArray[np.int64]
Column = npt.NDArray[Any]


class Pedigree:
    """Plants with their parents, and all that follows from them.

    Parameters
    ----------
    nodes
        At least one `Node`, in any order; every parent is among them.

    Raises
    ------
    PedigreeError
        No nodes, an id given twice, a parent that is missing, a wrong number of parents, a cycle.

    Attributes
    ----------
    dropped_links : list of (child, parent)
        By-name clone links that lay on a cycle. They count nowhere; those children are computed as
        unknown plants.
    contradictions : list of Contradiction
        Plants whose selfs are excluded though all their candidates are one genet.

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

    dropped_links: list[tuple[Id, Id]]
    contradictions: list[Contradiction]

    def __init__(self, nodes: Iterable[Node]) -> None:
        given = list(nodes)
        self._build(rows_from_nodes(given))
        self._nodes = {node.id: node for node in given}

    def fact(self, id: Id) -> Fact:
        """Return what is known of one plant; `PedigreeError` if it is not here."""
        row = self._row(id)
        root = int(self._clones.root[row])
        facts = self._facts[int(self._parentages.class_of[root])]
        return Fact(
            genet=self._rows.ids.id_of(root),
            ortet=self._rows.ids.id_of(root),
            clone_line=self._rows.ids.id_of(int(self._clones.line[row])),
            clonal_steps=int(self._clones.steps[row]),
            gen_min=facts.gen_min,
            gen_max=facts.gen_max,
            eq_generations=facts.eq,
            completeness=facts.completeness,
            composition=dict(facts.composition),
            inbreeding=facts.inbreeding,
        )

    def kinship(self, a: Id, b: Id) -> Interval:
        """Return the bounds of the coefficient of kinship of two plants.

        Founders are taken as unrelated and not inbred. The bounds are valid, not always attained. Of two
        plants of one genet, and of a plant with itself: (1 + F) / 2.
        """
        root_a = int(self._clones.root[self._row(a)])
        root_b = int(self._clones.root[self._row(b)])
        return self._kin.between(root_a, root_b)

    def ancestors(self, id: Id) -> set[Id]:
        """Return all plants above one by recorded links, candidates and clones too; itself not among them."""
        return {self._rows.ids.id_of(row) for row in reach(self._row(id), self._links_up)}

    def descendants(self, id: Id) -> set[Id]:
        """Return all plants below one by recorded links, itself not among them."""
        children: dict[int, list[int]] = {}
        for row in range(len(self._rows.ids)):
            for parent in self._links_up(row):
                children.setdefault(parent, []).append(row)
        return {self._rows.ids.id_of(row) for row in reach(self._row(id), lambda row: children.get(row, []))}

    def revise(self, nodes: Iterable[Node] = (), removed: Iterable[Id] = ()) -> set[Id]:
        """Replace, add and remove nodes; return the ids whose facts changed.

        New ids are among them, removed ones are not. All or nothing: on a `PedigreeError` the
        pedigree is as before.
        """
        changes = {node.id: node for node in nodes}
        gone = set(removed)
        for id in gone:
            self._row(id)
        after = {id: node for id, node in {**self._nodes, **changes}.items() if id not in gone}
        fresh = Pedigree(after.values())
        changed = {id for id in after if id not in self._nodes or fresh.fact(id) != self.fact(id)}
        self.__dict__.update(fresh.__dict__)
        return changed

    @classmethod
    def from_columns(
        cls,
        *,
        id: Column,
        origin: Column,
        parent_start: Column,
        parents: Column,
        species: Column,
        selfing: Column,
        selfs_excluded: Column | None = None,
        sport: Column | None = None,
        by_name: Column | None = None,
        mix_start: Column | None = None,
        mix_species: Column | None = None,
        mix_share: Column | None = None,
    ) -> Pedigree:
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
        rows = rows_from_columns(
            id=id,
            origin=origin,
            parent_start=parent_start,
            parents=parents,
            species=species,
            selfing=selfing,
            selfs_excluded=selfs_excluded,
            sport=sport,
            by_name=by_name,
            mix_start=mix_start,
            mix_species=mix_species,
            mix_share=mix_share,
        )
        pedigree = cls.__new__(cls)
        pedigree._build(rows)
        return pedigree

    def columns(self) -> dict[str, Column]:
        """Return the facts as numpy columns, one row a node in the order given, added ones last.

        ``id``, ``genet``, ``clone_line`` (ids: int64 if all are integers, else objects), ``clonal_steps``,
        ``gen_min``, ``gen_max``, ``parentage_class`` (int64), ``eq_lo``, ``eq_hi``, ``completeness`` (NaN
        where undefined), ``f_lo``, ``f_hi`` (float64). Ask `class_composition` for the rest.
        """
        clones, ids = self._clones, self._rows.ids
        k = self._parentages.class_of[clones.root]
        facts = [self._facts[each] for each in range(len(self._facts))]
        completeness = [np.nan if f.completeness is None else f.completeness for f in facts]
        return {
            "id": ids.column(np.arange(len(ids))),
            "genet": ids.column(clones.root),
            "clone_line": ids.column(clones.line),
            "clonal_steps": clones.steps.copy(),
            "gen_min": np.array([f.gen_min for f in facts])[k],
            "gen_max": np.array([f.gen_max for f in facts])[k],
            "eq_lo": np.array([f.eq[0] for f in facts])[k],
            "eq_hi": np.array([f.eq[1] for f in facts])[k],
            "completeness": np.array(completeness, dtype=np.float64)[k],
            "f_lo": np.array([f.inbreeding[0] for f in facts])[k],
            "f_hi": np.array([f.inbreeding[1] for f in facts])[k],
            "parentage_class": k,
        }

    def class_composition(self, k: int) -> dict[Species | None, Interval]:
        """Return the composition of parentage class ``k``, as numbered in `columns`."""
        return dict(self._facts[k].composition)

    def _row(self, id: Id) -> int:
        row = self._rows.ids.row_of(id)
        if row is None:
            raise PedigreeError(f"{id!r} is not in this pedigree.", (id,))
        return row

    def _links_up(self, row: int) -> list[int]:
        if row in self._dropped:
            return []
        return [parent for parent in self._rows.parents_of(row) if parent >= 0]

    def _build(self, rows: Rows) -> None:
        dropped = np.array([], dtype=np.int64)
        settled = _settle(rows, dropped)
        if settled is None:
            dropped = links_on_cycles(rows)
            settled = _settle(rows, dropped)
        assert settled is not None  # noqa: S101  what is left of the links has no cycle
        self._rows = rows
        self._dropped = set(dropped.tolist())
        self._clones, self._parentages, self._levels = settled
        self.dropped_links = [
            (rows.ids.id_of(row), rows.ids.id_of(rows.parents_of(row)[0])) for row in dropped.tolist()
        ]
        self.contradictions = [self._contradiction(row) for row in self._parentages.contradictory.tolist()]
        self._walk()

    def _contradiction(self, row: int) -> Contradiction:
        genet = self._parentage(row)[1][0]
        return Contradiction(
            "selfs excluded, one genet", self._rows.ids.id_of(row), self._rows.ids.id_of(genet)
        )

    def _parentage(self, ortet: int) -> Parentage:
        return self._class_parentage(int(self._parentages.class_of[ortet]))

    def _class_parentage(self, k: int) -> Parentage:
        start = self._parentages.start
        return int(self._parentages.kind[k]), self._parentages.parents[start[k] : start[k + 1]].tolist()

    def _walk(self) -> None:
        facts: dict[int, ClassFacts] = {0: NOBODY_FACTS}
        self._facts = facts
        class_of = self._parentages.class_of
        self._kin = PairByPair(
            self._parentage,
            lambda row: int(self._levels[class_of[row]]),
            lambda row: facts[int(class_of[row])].inbreeding,
        )
        for k in np.argsort(self._levels, kind="stable").tolist():
            kind, parents = self._class_parentage(k)
            if k and parents:
                facts[k] = spore_facts(
                    kind=kind,
                    mode=int(self._parentages.mode[k]),
                    parents=parents,
                    facts_of=lambda row: facts[int(class_of[row]) if row >= 0 else 0],
                    kinship=self._kin.between,
                )
            elif k:
                facts[k] = founder_facts(self._rows.mixtures[int(self._parentages.mixture[k])])


def _settle(rows: Rows, dropped: Ints) -> tuple[Clones, Parentages, Ints] | None:
    clones = follow_clones(rows, dropped)
    if clones is None:
        return None
    parentages = read_parentages(rows, clones)
    levels = class_levels(parentages)
    return None if levels is None else (clones, parentages, levels)
