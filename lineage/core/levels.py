"""The order in which parentage classes can be computed: parents first."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from lineage.core.parentage import Parentages, spans

Ints = npt.NDArray[np.int64]

# So many levels are taken whole; a deeper pedigree is most likely narrow, and goes on class by class.
_WHOLE_LEVELS = 64


def class_levels(parentages: Parentages) -> Ints | None:
    """Return for each class the longest path down from a founder; ``None`` if classes run in a circle.

    Classes are taken away once all their parents are (Kahn 1962, Commun. ACM 5:558–562).
    """
    above = parentages.classes(parentages.parents)
    missing, level = parentages.count.copy(), np.zeros(len(parentages.count), dtype=np.int64)
    children = np.repeat(np.arange(len(missing)), missing)[np.argsort(above)]
    number = np.bincount(above, minlength=len(missing))
    begin = np.cumsum(number) - number
    ready = np.flatnonzero(missing == 0)
    for depth in range(1, _WHOLE_LEVELS + 1):
        below = children[spans(begin[ready], number[ready])]
        level[below] = depth
        np.subtract.at(missing, below, 1)
        ready = np.unique(below[missing[below] == 0])
        if not len(ready):
            return None if missing.any() else level
    return _go_on(ready.tolist(), level, missing, begin, children)


def _go_on(ready: list[int], level: Ints, missing: Ints, begin: Ints, children: Ints) -> Ints | None:
    levels, left, below = level.tolist(), missing.tolist(), children.tolist()
    bounds = [*begin.tolist(), len(below)]
    for k in ready:
        for child in below[bounds[k] : bounds[k + 1]]:
            levels[child] = max(levels[child], levels[k] + 1)
            left[child] -= 1
            if not left[child]:
                ready.append(child)
    return None if any(left) else np.array(levels, dtype=np.int64)
