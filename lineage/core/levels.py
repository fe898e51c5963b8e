"""The order in which parentage classes can be computed: parents first."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from lineage.core.parentage import Parentages

Ints = npt.NDArray[np.int64]


def class_levels(parentages: Parentages) -> Ints | None:
    """Return for each class the longest path down from a founder; ``None`` if classes run in a circle."""
    above = parentages.classes(parentages.parents)
    children = _children(above, parentages.count)
    missing = parentages.count.tolist()
    level = [0] * len(missing)
    ready = [k for k, count in enumerate(missing) if not count]
    for k in ready:
        below = level[k] + 1
        for child in children[k]:
            level[child] = max(level[child], below)
            missing[child] -= 1
            if not missing[child]:
                ready.append(child)
    return np.array(level, dtype=np.int64) if len(ready) == len(level) else None


def _children(above: Ints, count: Ints) -> list[list[int]]:
    found: list[list[int]] = [[] for _ in range(len(count))]
    owners = np.repeat(np.arange(len(count)), count)
    for parent, owner in zip(above.tolist(), owners.tolist(), strict=True):
        found[parent].append(owner)
    return found
