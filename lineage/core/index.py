"""What a revision must find fast: children, rows of a class, classes below a genet, the class of a parentage."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from lineage.core.children import Children
from lineage.core.computing import State
from lineage.core.growing import grown, revisable
from lineage.core.parentage import FOUNDER, Ints

#: Kind, mode, and the parents as ortet rows; of a founder the place of its mixture instead.
Key = tuple[int, int, tuple[int, ...]]

_CLASS_COLUMNS = (
    "level",
    "gen_min",
    "gen_max",
    "eq_lo",
    "eq_hi",
    "recorded",
    "unsettled",
    "completeness",
    "f_lo",
    "f_hi",
)


class Index:
    """Indexes over a state, which is made revisable in place. Cost: two sorts of all rows, once."""

    def __init__(self, state: State) -> None:
        self.state = state
        state.rows = revisable(state.rows)
        self.children = Children(state.rows)
        parentages = state.parentages
        self._used_classes = len(parentages.kind)
        self._used_parents = len(parentages.parents)
        class_of_row = parentages.class_of[state.clones.root]
        self._rows = np.argsort(class_of_row)
        self._begin = np.searchsorted(class_of_row[self._rows], np.arange(self._used_classes + 1))
        self._late_rows: dict[int, set[int]] = {}
        of_ortets = parentages.class_of[parentages.class_of >= 0]
        self.sizes = dict(enumerate(np.bincount(of_ortets, minlength=self._used_classes).tolist()))
        self._below: dict[int, set[int]] = {}
        self._parents_in: dict[int, set[int]] = {}
        self._class_of_key: dict[Key, int] = {}
        self._link_all()
        self.make_room(len(state.rows.origin))

    def _link_all(self) -> None:
        parentages = self.state.parentages
        flat, classes = parentages.parents.tolist(), parentages.classes(parentages.parents).tolist()
        columns = (parentages.kind, parentages.mode, parentages.mixture, parentages.begin, parentages.count)
        rows = zip(*(column.tolist() for column in columns), strict=True)
        for k, (kind, mode, mixture, begin, count) in enumerate(rows):
            parents = (mixture,) if kind == FOUNDER else tuple(flat[begin : begin + count])
            self._class_of_key[kind, mode, parents] = k
            for place in range(begin, begin + count):
                if flat[place] >= 0:
                    self._below.setdefault(flat[place], set()).add(k)
                    self._parents_in.setdefault(classes[place], set()).add(flat[place])

    def _key(self, k: int) -> Key:
        parentages = self.state.parentages
        kind = int(parentages.kind[k])
        parents = (int(parentages.mixture[k]),) if kind == FOUNDER else tuple(parentages.parents_of(k))
        return kind, int(parentages.mode[k]), parents

    def make_room(self, rows: int) -> None:
        """Let the columns of clones have so many rows; new ones are no ortets of any class."""
        clones, parentages = self.state.clones, self.state.parentages
        clones.root = grown(clones.root, rows)
        clones.steps = grown(clones.steps, rows)
        clones.line = grown(clones.line, rows)
        parentages.class_of = grown(parentages.class_of, rows, -1)

    def class_of(self, key: Key) -> int:
        """Return the class of a parentage, a new one if need be; `link` it when its parents have theirs."""
        k = self._class_of_key.get(key)
        return self._new_class(key) if k is None else k

    def _new_class(self, key: Key) -> int:
        k = self._used_classes
        self._used_classes += 1
        self._class_of_key[key] = k
        self.sizes[k] = 0
        parentages, table = self.state.parentages, self.state.table
        for name in ("kind", "mode", "mixture", "begin", "count"):
            setattr(parentages, name, grown(getattr(parentages, name), k + 1))
        for name in _CLASS_COLUMNS:
            setattr(table, name, grown(getattr(table, name), k + 1))
        parentages.kind[k], parentages.mode[k], parents = key
        founder = key[0] == FOUNDER
        parentages.mixture[k] = parents[0] if founder else -1
        parentages.begin[k] = self._used_parents
        parentages.count[k] = 0 if founder else len(parents)
        if not founder:
            self._used_parents += len(parents)
            parentages.parents = grown(parentages.parents, self._used_parents)
            parentages.parents[self._used_parents - len(parents) : self._used_parents] = parents
        return k

    def link(self, k: int) -> None:
        """Enter a class below its parents."""
        for parent in self.state.parentages.parents_of(k):
            if parent >= 0:
                self._below.setdefault(parent, set()).add(k)
                self.note_ortet(parent)

    def unlink(self, k: int) -> None:
        """Forget a class that has no plants left."""
        del self._class_of_key[self._key(k)]
        del self.sizes[k]
        for parent in self.state.parentages.parents_of(k):
            if parent >= 0:
                self._below[parent].discard(k)

    def note_ortet(self, ortet: int) -> None:
        """Take notice of the class of an ortet that may be a parent."""
        self._parents_in.setdefault(int(self.state.parentages.class_of[ortet]), set()).add(ortet)

    def below_genet(self, ortet: int) -> set[int]:
        """Return the classes that have this genet as a parent."""
        return self._below.get(ortet, set())

    def below_class(self, k: int) -> set[int]:
        """Return the classes that have a genet of this class as a parent."""
        class_of = self.state.parentages.class_of
        ortets = [ortet for ortet in self._parents_in.get(k, ()) if class_of[ortet] == k]
        return set().union(*(self.below_genet(ortet) for ortet in ortets))

    def rows_of(self, k: int) -> list[int]:
        """Return the rows of all plants of a class."""
        rows = self._candidates(k)
        class_of_row = self.state.parentages.class_of[self.state.clones.root[rows]]
        found: list[int] = rows[class_of_row == k].tolist()
        return found

    def rows_of_genets(self, ortets: Iterable[int], k: int) -> list[int]:
        """Return the rows of genets that were of class k when they were last noted."""
        rows = self._candidates(k)
        found: list[int] = rows[np.isin(self.state.clones.root[rows], list(ortets))].tolist()
        return found

    def _candidates(self, k: int) -> Ints:
        late = np.array(sorted(self._late_rows.get(k, ())), dtype=np.int64)
        if k + 1 >= len(self._begin):
            return late
        early = self._rows[self._begin[k] : self._begin[k + 1]]
        return np.union1d(early, late) if len(late) else early

    def note_row(self, row: int) -> None:
        """Take notice of the class a row now belongs to."""
        k = int(self.state.parentages.class_of[self.state.clones.root[row]])
        self._late_rows.setdefault(k, set()).add(row)
