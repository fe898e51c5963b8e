"""Seeded chance that gives the same picks under every Python."""

import random
from collections.abc import Sequence
from typing import TypeVar

Item = TypeVar("Item")


class Chance:
    """Picks from a seed.

    Python promises an unchanging sequence for ``random()`` alone, not for ``choice`` or ``shuffle``:
    everything here is made of ``random()``.
    """

    def __init__(self, seed: int) -> None:
        self._stream = random.Random(seed)  # noqa: S311 (composing a demo, keeping no secret)

    def happens(self, share: float) -> bool:
        """True in ``share`` of the calls."""
        return self._stream.random() < share

    def between(self, first: int, last: int) -> int:
        """Return a whole number from ``first`` to ``last``, both included."""
        return first + int(self._stream.random() * (last - first + 1))

    def one_of(self, items: Sequence[Item]) -> Item:
        """Return one item; an empty sequence is an IndexError."""
        return items[self.between(0, len(items) - 1)]

    def some_of(self, items: Sequence[Item], count: int) -> list[Item]:
        """Return ``count`` different places of ``items`` in drawn order (all of them if there are fewer)."""
        left = list(items)
        return [left.pop(self.between(0, len(left) - 1)) for _ in range(min(count, len(left)))]
