"""Which row of the drawing each plant stands in, and in what order.

Layers and barycentres, after Sugiyama, Tagawa & Toda 1981, IEEE Trans. Syst. Man Cybern. 11:109–125. A line
that passes rows between a parent and a child keeps a place free in each of them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from typing import NamedTuple

from lineage.services.ancestry import Relative, Step


class Spot(NamedTuple):
    """A place in a row: a plant (`id`); a plant not known, or a passing line, of a child's n-th parent.

    `level` counts passing places only; it is 0 for whatever has a box.
    """

    id: int | None
    child: int = 0
    place: int = 0
    level: int = 0

    @property
    def is_passing(self) -> bool:
        return self.level > 0


@dataclass(frozen=True, slots=True)
class Way:
    """One step from parent to child, with the places it passes, from the child's side upward."""

    child: Spot
    parent: Spot
    step: Step
    passing: tuple[Spot, ...]

    @property
    def spots(self) -> tuple[Spot, ...]:
        return (self.child, *self.passing, self.parent)


def rows_and_ways(relatives: Mapping[int, Relative]) -> tuple[list[list[Spot]], list[Way]]:
    """Rows from the plant itself upward, each in its order, and the ways between them."""
    levels = _levels(relatives)
    ways = list(_ways(relatives, levels))
    rows: list[list[Spot]] = [[] for _ in range(max(levels.values()) + 1)]
    for spot, level in levels.items():
        rows[level].append(spot)
    for way in ways:
        for spot in way.passing:
            rows[spot.level].append(spot)
    return _ordered(rows, ways), ways


def _above(child: int, relative: Relative) -> Iterator[tuple[int, Step, Spot]]:
    for place, step in enumerate(relative.steps):
        spot = Spot(step.parent) if step.parent is not None else Spot(None, child, place)
        yield place, step, spot


def _levels(relatives: Mapping[int, Relative]) -> dict[Spot, int]:
    """How far above the plant itself each one stands: above every child of it."""
    levels: dict[Spot, int] = {}
    waiting = [(Spot(next(iter(relatives))), 0)]
    while waiting:
        spot, level = waiting.pop()
        if levels.get(spot, -1) >= level:
            continue
        levels[spot] = level
        if spot.id is not None:
            waiting += [(above, level + 1) for _, _, above in _above(spot.id, relatives[spot.id])]
    return levels


def _ways(relatives: Mapping[int, Relative], levels: Mapping[Spot, int]) -> Iterator[Way]:
    for child, relative in relatives.items():
        for place, step, parent in _above(child, relative):
            between = range(levels[Spot(child)] + 1, levels[parent])
            yield Way(Spot(child), parent, step, tuple(Spot(None, child, place, level) for level in between))


def _ordered(rows: list[list[Spot]], ways: list[Way]) -> list[list[Spot]]:
    """Each row in the order of what its spots lead down to (the barycentre of it)."""
    below: dict[Spot, list[tuple[Spot, int]]] = {}
    for number, way in enumerate(ways):
        for lower, upper in zip(way.spots, way.spots[1:], strict=False):
            below.setdefault(upper, []).append((lower, number))
    across: dict[Spot, float] = {}
    ordered = []
    for row in rows:
        wish = {
            spot: sum(across[lower] + number / 1e6 for lower, number in below[spot]) / len(below[spot])
            for spot in row
            if spot in below
        }
        placed = sorted(row, key=partial(_wish_of, wish))
        across |= {spot: (place + 0.5) / len(placed) for place, spot in enumerate(placed)}
        ordered.append(placed)
    return ordered


def _wish_of(wishes: Mapping[Spot, float], spot: Spot) -> float:
    return wishes.get(spot, 0.0)
