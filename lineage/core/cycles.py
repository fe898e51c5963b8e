"""Cycles: found on the graph of all parent links, clone and candidate links included.

Every plant of a genet but its ortet has one link, and it stays inside the genet. So a circle of genets
is a circle of plants, and the strongly connected components of the plants tell which links lie on one.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from lineage.core.nodes import PedigreeError
from lineage.core.rows import APOGAMOUS, DIVISION, Rows

Links = list[list[int]]


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
    flat = rows.parents.tolist()
    bounds = rows.start.tolist()
    return [[p for p in flat[a:b] if p >= 0] for a, b in pairwise(bounds)]


def _components(links: Links) -> Iterator[set[int]]:
    """Yield the strongly connected components that hold a cycle (Tarjan 1972, SIAM J. Comput. 1:146–160)."""
    order: list[int] = [0] * len(links)
    low: list[int] = [0] * len(links)
    done = [False] * len(links)
    counter = 0
    open_: list[int] = []
    for start in range(len(links)):
        if order[start]:
            continue
        path = [(start, iter(links[start]))]
        counter += 1
        order[start] = low[start] = counter
        open_.append(start)
        while path:
            row, rest = path[-1]
            for parent in rest:
                if not order[parent]:
                    counter += 1
                    order[parent] = low[parent] = counter
                    open_.append(parent)
                    path.append((parent, iter(links[parent])))
                    break
                if not done[parent]:
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


def _close(open_: list[int], row: int, done: list[bool]) -> set[int]:
    component = set()
    while True:
        member = open_.pop()
        done[member] = True
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
