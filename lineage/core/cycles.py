"""Cycles: found on the graph of all parent links, clone and candidate links included.

Every plant of a genet but its ortet has one link, and it stays inside the genet. So a circle of genets
is a circle of plants, and the strongly connected components of the plants tell which links lie on one.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import numpy.typing as npt

from lineage.core.nodes import PedigreeError
from lineage.core.parentage import spans
from lineage.core.rows import APOGAMOUS, DIVISION, Rows

Links = dict[int, list[int]]
Ints = npt.NDArray[np.int64]
Bools = npt.NDArray[np.bool_]

# Links off all cycles are peeled off so many times; what a deep pedigree has more is only slower.
_ROUNDS = 64


def links_on_cycles(rows: Rows) -> tuple[set[int], set[int]]:
    """Return the rows whose by-name clone link lies on a cycle, and all rows of cycles with such links.

    Raises
    ------
    PedigreeError
        If a cycle is left without those links; ``members`` are its plants, none of their descendants.
    """
    links = _links(rows)
    dropped: set[int] = set()
    tangled: set[int] = set()
    for component in _components(links):
        inside = {row for row in component if _is_by_name(rows, row) and links[row][0] in component}
        dropped |= inside
        tangled |= component if inside else set()
    for row in dropped:
        links[row] = []
    for component in _components(links):
        raise_cycle(rows, _one_cycle(links, component))
    return dropped, tangled


def _is_by_name(rows: Rows, row: int) -> bool:
    return (
        bool(rows.by_name[row]) and rows.origin[row] in (DIVISION, APOGAMOUS) and rows.parents_of(row)[0] >= 0
    )


def raise_cycle(rows: Rows, cycle: list[int]) -> None:
    """Raise the error that names the plants of a cycle."""
    members = [rows.ids.id_of(row) for row in cycle]
    shown = " ← ".join(repr(member) for member in [*members[:10], *members[:1]][:11])
    raise PedigreeError(f"A plant would be its own ancestor: {shown}.", members)


def _links(rows: Rows) -> Links:
    """Return the known parents of all rows that may lie on a cycle, as far as those may, too."""
    child = np.repeat(np.arange(len(rows.start) - 1), np.diff(rows.start))[rows.parents >= 0]
    parent = rows.parents[rows.parents >= 0]
    left = np.ones(len(rows.start) - 1, dtype=np.bool_)
    _peel(left, child, parent)
    _peel(left, parent, child)
    both = left[child] & left[parent]
    links: Links = {row: [] for row in np.flatnonzero(left).tolist()}
    for row, above in zip(child[both].tolist(), parent[both].tolist(), strict=True):
        links[row].append(above)
    return links


def _peel(left: Bools, near: Ints, far: Ints) -> None:
    """Take rows without links out of ``left``, then those that had links to them alone, and so on a while."""
    both = left[near] & left[far]
    near, far = near[both], far[both]
    missing = np.bincount(near, minlength=len(left))
    order = np.argsort(far)
    near, number = near[order], np.bincount(far, minlength=len(left))
    begin = np.cumsum(number) - number
    ready = np.flatnonzero(left & (missing == 0))
    for _ in range(_ROUNDS):
        left[ready] = False
        below = near[spans(begin[ready], number[ready])]
        np.subtract.at(missing, below, 1)
        ready = np.unique(below[missing[below] == 0])


def _components(links: Links) -> Iterator[set[int]]:
    """Yield the strongly connected components that hold a cycle (Tarjan 1972, SIAM J. Comput. 1:146–160)."""
    order: dict[int, int] = {}
    low: dict[int, int] = {}
    done: set[int] = set()
    counter = 0
    open_: list[int] = []
    for start in links:
        if start in order:
            continue
        path = [(start, iter(links[start]))]
        counter += 1
        order[start] = low[start] = counter
        open_.append(start)
        while path:
            row, rest = path[-1]
            for parent in rest:
                if parent not in order:
                    counter += 1
                    order[parent] = low[parent] = counter
                    open_.append(parent)
                    path.append((parent, iter(links[parent])))
                    break
                if parent not in done:
                    low[row] = min(low[row], order[parent])
            else:
                path.pop()
                if path:
                    above = path[-1][0]
                    low[above] = min(low[above], low[row])
                if low[row] == order[row]:
                    component = _close(open_, row, done)
                    if len(component) > 1 or row in links[row]:
                        yield component


def _close(open_: list[int], row: int, done: set[int]) -> set[int]:
    component = set()
    while True:
        member = open_.pop()
        done.add(member)
        component.add(member)
        if member == row:
            return component


def _one_cycle(links: Links, component: set[int]) -> list[int]:
    """Return one cycle of a component: follow the first link that stays inside until a plant comes again."""
    row = min(component)
    place: dict[int, int] = {}
    path: list[int] = []
    while row not in place:
        place[row] = len(path)
        path.append(row)
        row = next(parent for parent in links[row] if parent in component)
    return path[place[row] :]
