"""Ancestors and descendants by recorded links, clone and candidate links included."""

from __future__ import annotations

from collections.abc import Callable, Iterable


def reach(row: int, neighbours: Callable[[int], Iterable[int]]) -> set[int]:
    """Return the rows reached from a row, itself not among them."""
    seen = {row}
    waiting = [row]
    while waiting:
        for other in neighbours(waiting.pop()):
            if other not in seen:
                seen.add(other)
                waiting.append(other)
    seen.discard(row)
    return seen
