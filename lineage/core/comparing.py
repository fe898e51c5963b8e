"""Which facts differ: of classes before and after a revision, of rows before and after a rebuild."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import numpy.typing as npt

from lineage.core.compositions import Composition
from lineage.core.computing import State
from lineage.core.facts import ClassTable
from lineage.core.rows import Ints

_SHOWN = ("gen_min", "gen_max", "eq_lo", "eq_hi", "completeness", "f_lo", "f_hi")


def _numbers(table: ClassTable, classes: Ints) -> npt.NDArray[np.float64]:
    shown = np.stack([getattr(table, name)[classes] for name in _SHOWN], axis=1).astype(np.float64)
    return np.nan_to_num(shown, nan=-1.0)


class Before:
    """The facts of some classes as they are now, to be compared with later ones."""

    def __init__(self, table: ClassTable, classes: Iterable[int]) -> None:
        self._place = {k: place for place, k in enumerate(classes)}
        self._numbers = _numbers(table, np.array(list(self._place), dtype=np.int64))
        self._compositions = {k: table.compositions.held(k) for k in self._place}

    def differs(self, old: int, table: ClassTable, new: int) -> bool:
        """Tell whether class ``new`` now has other facts than class ``old`` had."""
        now = _numbers(table, np.array([new]))[0]
        if not np.array_equal(self._numbers[self._place[old]], now):
            return True
        return self._composition(old, table) != table.compositions.of(new)

    def changed(self, table: ClassTable) -> list[int]:
        """Return those of the classes whose facts are now others."""
        classes = np.array(list(self._place), dtype=np.int64)
        same = (self._numbers == _numbers(table, classes)).all(axis=1).tolist()
        return [
            k
            for k, equal in zip(self._place, same, strict=True)
            if not equal or self._composition(k, table) != table.compositions.of(k)
        ]

    def _composition(self, k: int, table: ClassTable) -> Composition:
        held = self._compositions[k]
        return table.compositions.computed(k) if held is None else held


def changed_rows(old: State, new: State, former: Ints) -> Ints:
    """Return the rows of ``new`` whose facts differ from those in ``old``, and the new rows.

    ``former[i]`` is the number row i had in ``old``; new rows come last and have numbers ``old`` has not in use.
    """
    in_use = old.rows.present()
    known = former[np.isin(former, in_use)]
    row = np.arange(len(known))
    k_old = old.parentages.class_of[old.clones.root[known]]
    k_new = new.parentages.class_of[new.clones.root[row]]
    changed = former[new.clones.root[row]] != old.clones.root[known]
    changed |= former[new.clones.line[row]] != old.clones.line[known]
    changed |= new.clones.steps[row] != old.clones.steps[known]
    changed |= (_numbers(old.table, k_old) != _numbers(new.table, k_new)).any(axis=1)
    width = len(new.table.level)
    pairs, pair = np.unique(k_old * width + k_new, return_inverse=True)
    of_old, of_new = old.table.compositions.of, new.table.compositions.of
    differs = [of_old(key // width) != of_new(key % width) for key in pairs.tolist()]
    changed |= np.array(differs, dtype=np.bool_)[pair]
    return np.concatenate([np.flatnonzero(changed), np.arange(len(known), len(former))])
