"""Revise a pedigree: check all, then recompute what lies below the change and nothing else."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping

import numpy as np

from lineage.core.comparing import Before, changed_rows
from lineage.core.computing import State, compute, compute_classes
from lineage.core.growing import compact, revisable, write_rows
from lineage.core.index import Index, Key
from lineage.core.nodes import Id, Node, PedigreeError
from lineage.core.parentage import FOUNDER, normal_parentage
from lineage.core.rows import APOGAMOUS, CROSS, DIVISION, MIXED, SELF, check_node
from lineage.core.walk import founder_facts

# More changes than this, or than a 500th of all plants, and everything is computed anew.
MANY = 64


def check_revision(index: Index, changes: Mapping[Id, Node], removed: Collection[Id]) -> None:
    """Raise `PedigreeError` unless every node can be and no parent goes missing; cycles apart."""
    ids = index.state.rows.ids
    for id in removed:
        row = ids.row_of(id)
        if row is None:
            raise PedigreeError(f"{id!r} is not in this pedigree.", (id,))
        for child in index.children.of(row):
            orphan = ids.id_of(child)
            if orphan not in removed and orphan not in changes:
                raise PedigreeError(f"{orphan!r}: its parent {id!r} is missing.", (orphan, id))
    known = _Known(index, changes, removed)
    for node in changes.values():
        if node.id is None:
            raise PedigreeError("None stands for a plant not known and cannot be an id.", (None,))
        check_node(node, known)
    if not changes and len(removed) == len(index.state.rows.present()):
        raise PedigreeError("A pedigree has at least one node.")


class _Known:
    """The ids there are after a revision."""

    def __init__(self, index: Index, changes: Mapping[Id, Node], removed: Collection[Id]) -> None:
        self._ids, self._changes, self._removed = index.state.rows.ids, changes, removed

    def __contains__(self, id: object) -> bool:
        return id in self._changes or (id not in self._removed and self._ids.row_of(id) is not None)


def must_rebuild(index: Index, changes: Mapping[Id, Node], removed: Collection[Id]) -> bool:
    """Tell whether the change is too large, or touches or makes a cycle, to be followed step by step."""
    state = index.state
    plants = len(state.rows.ids)
    if len(changes) + len(removed) > max(MANY, plants // 500):
        return True
    rows = {state.rows.ids.row_of(id) for id in (*changes, *removed)}
    if rows & state.tangled:
        return True
    named = {parent for node in changes.values() for parent in node.parents}
    return any(
        _closes_cycle(index, changes, node)
        for node in changes.values()
        if node.id in named or _has_children(index, node.id)
    )


def _has_children(index: Index, id: Id) -> bool:
    row = index.state.rows.ids.row_of(id)
    return row is not None and bool(index.children.of(row))


def _closes_cycle(index: Index, changes: Mapping[Id, Node], node: Node) -> bool:
    """Follow all links upward, dropped ones too; only plants of its own level and above can lie below a plant."""
    rows, ids = index.state.rows, index.state.rows.ids
    row = ids.row_of(node.id)
    lowest = _level(index, row) if row is not None and len(changes) == 1 else 0
    seen: set[Id] = set()
    waiting = [node]
    while waiting:
        for parent in waiting.pop().parents:
            if parent == node.id:
                return True
            if parent is None or parent in seen:
                continue
            seen.add(parent)
            place = ids.row_of(parent)
            if parent in changes:
                waiting.append(changes[parent])
            elif place is not None and _level(index, place) >= lowest:
                above = tuple(ids.id_of(p) if p >= 0 else None for p in rows.parents_of(place))
                waiting.append(Node(parent, "unknown", above))
    return False


def _level(index: Index, row: int) -> int:
    state = index.state
    return int(state.table.level[state.parentages.class_of[state.clones.root[row]]])


def rebuild(state: State, changes: Mapping[Id, Node], removed: Collection[Id]) -> tuple[State, list[int]]:
    """Return the state computed anew with the changes, and its rows whose facts are others than before."""
    rows = revisable(state.rows)
    write_rows(rows, changes, removed)
    fresh, former = compact(rows)
    new = compute(fresh)
    return new, changed_rows(state, new, former).tolist()


class Revision:
    """One revision of a state, in the order of its methods; nothing in it can fail once it is checked."""

    def __init__(self, index: Index) -> None:
        self._index = index
        self._state = index.state
        # Of each row its former ortet, steps and line (none if it is new); of each ortet its former class.
        self._moved: dict[int, tuple[int, int, int] | None] = {}
        self._former_class: dict[int, int] = {}
        self._new_classes: dict[int, None] = {}

    def apply(self, changes: Mapping[Id, Node], removed: Collection[Id]) -> set[int]:
        """Apply checked changes that close no cycle; return the rows whose facts changed."""
        size = len(self._state.rows.ids)
        gone, written = write_rows(self._state.rows, changes, removed)
        self._index.make_room(len(self._state.rows.ids))
        for row in written:
            self._index.children.note(row)
        self._move_clones(gone, written, size)
        self._classify(gone, written)
        affected = self._affected()
        before = Before(self._state.table, {*affected, *self._former_class.values()} - {-1})
        self._compute(affected)
        return self._changed(before, affected)

    def _move_clones(self, gone: Iterable[int], written: Iterable[int], size: int) -> None:
        clones = self._state.clones
        for row in gone:
            clones.root[row], clones.steps[row], clones.line[row] = row, 0, row
        for row in written:
            if row >= size:
                self._moved[row] = None
                clones.root[row], clones.steps[row], clones.line[row] = row, 0, row
        waiting = list(written)
        while waiting:
            row = waiting.pop()
            old = int(clones.root[row]), int(clones.steps[row]), int(clones.line[row])
            new = self._clone_place(row)
            if new != old:
                self._moved.setdefault(row, old)
                clones.root[row], clones.steps[row], clones.line[row] = new
                waiting += [
                    child for child in self._index.children.of(row) if self._clone_parent(child) == row
                ]

    def _clone_parent(self, row: int) -> int | None:
        rows = self._state.rows
        if rows.origin[row] not in (DIVISION, APOGAMOUS) or row in self._state.dropped:
            return None
        (parent,) = rows.parents_of(row)
        return parent if parent >= 0 else None

    def _clone_place(self, row: int) -> tuple[int, int, int]:
        rows, clones = self._state.rows, self._state.clones
        parent = self._clone_parent(row)
        if parent is None:
            return row, 0, row
        steps = int(clones.steps[parent]) + (not rows.by_name[row])
        return int(clones.root[parent]), steps, row if rows.sport[row] else int(clones.line[parent])

    def _classify(self, gone: Iterable[int], written: Iterable[int]) -> None:
        """Give every ortet whose parentage may have changed its class, and empty classes up."""
        suspects = {*written, *self._moved}
        for row, old in self._moved.items():
            if old is not None and old[0] != self._state.clones.root[row]:
                suspects.update(self._index.children.of(row))
        for row in gone:
            self._set_class(row, -1)
        for row in suspects:
            self._set_class(row, self._class(row))
        self._state.contradictory -= set(gone)
        for k in self._new_classes:
            self._index.link(k)
        for ortet, former in self._former_class.items():
            self._index.note_ortet(ortet)
            if former >= 0 and not self._index.sizes.get(former, 1):
                self._index.unlink(former)

    def _set_class(self, row: int, k: int) -> None:
        class_of, sizes = self._state.parentages.class_of, self._index.sizes
        former = int(class_of[row])
        if former == k:
            return
        self._former_class[row] = former
        class_of[row] = k
        for each, step in ((former, -1), (k, 1)):
            if each >= 0:
                sizes[each] += step

    def _class(self, row: int) -> int:
        self._state.contradictory.discard(row)
        if self._state.clones.root[row] != row:
            return -1
        key, contradictory = self._parentage(row)
        if contradictory:
            self._state.contradictory.add(row)
        k = self._index.class_of(key)
        if not self._index.sizes[k]:
            self._new_classes[k] = None
            if key[0] == FOUNDER:
                self._state.table.put(k, founder_facts(self._state.rows.mixtures[key[2][0]]))
        return k

    def _parentage(self, row: int) -> tuple[Key, bool]:
        rows, root = self._state.rows, self._state.clones.root
        origin = int(rows.origin[row])
        if origin not in (SELF, CROSS, MIXED):
            return (FOUNDER, 0, (int(rows.mixture[row]),)), False
        kind, mode, parents, contradictory = normal_parentage(
            origin=origin,
            selfing=int(rows.selfing[row]),
            selfs_excluded=bool(rows.selfs_excluded[row]),
            genets=[int(root[parent]) if parent >= 0 else -1 for parent in rows.parents_of(row)],
        )
        return (kind, mode, parents), contradictory

    def _affected(self) -> dict[int, int]:
        """Return the classes to compute, parents first, each with its level."""
        index, count = self._index, self._state.parentages.count
        start = [k for k in self._new_classes if count[k] and index.sizes.get(k)]
        for ortet in self._former_class:
            start += index.below_genet(ortet)
        below: dict[int, set[int]] = {}
        waiting = list(start)
        while waiting:
            k = waiting.pop()
            if k not in below:
                below[k] = index.below_class(k)
                waiting += below[k]
        return self._levels(below)

    def _levels(self, below: Mapping[int, set[int]]) -> dict[int, int]:
        missing = dict.fromkeys(below, 0)
        for children in below.values():
            for child in children:
                missing[child] += 1
        parentages, table = self._state.parentages, self._state.table
        ready = [k for k, count in missing.items() if not count]
        levels: dict[int, int] = {}
        for k in ready:
            above = parentages.classes(np.array(parentages.parents_of(k))).tolist()
            levels[k] = 1 + max(levels[each] if each in levels else int(table.level[each]) for each in above)
            for child in below[k]:
                missing[child] -= 1
                if not missing[child]:
                    ready.append(child)
        return levels

    def _compute(self, affected: Mapping[int, int]) -> None:
        classes = np.array(list(affected), dtype=np.int64)
        self._state.table.level[classes] = list(affected.values())
        compute_classes(self._state, classes)

    def _changed(self, before: Before, affected: Mapping[int, int]) -> set[int]:
        table, class_of = self._state.table, self._state.parentages.class_of
        clones, index = self._state.clones, self._index
        changed = {
            row
            for row, old in self._moved.items()
            if old != (int(clones.root[row]), int(clones.steps[row]), int(clones.line[row]))
        }
        for former, ortets in self._reclassed().items():
            differs = {
                now: before.differs(former, table, now) for now in {int(class_of[ortet]) for ortet in ortets}
            }
            for row in index.rows_of_genets(ortets, former):
                index.note_row(row)
                if differs[int(class_of[clones.root[row]])]:
                    changed.add(row)
        for row in self._moved:
            index.note_row(row)
        # Plants that came to a class now have just been compared with what they were.
        for k in before.changed(table):
            if k in affected and k not in self._new_classes:
                rows = index.rows_of(k)
                roots = clones.root[rows].tolist()
                stayed = (
                    row for row, root in zip(rows, roots, strict=True) if root not in self._former_class
                )
                changed.update(stayed)
        return changed

    def _reclassed(self) -> dict[int, list[int]]:
        """Return by former class the ortets that are now of another."""
        found: dict[int, list[int]] = {}
        for ortet, former in self._former_class.items():
            if former >= 0 and self._state.parentages.class_of[ortet] >= 0:
                found.setdefault(former, []).append(ortet)
        return found
