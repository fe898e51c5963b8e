"""The facts of parentage classes, a block of classes at a time, level by level."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

import numpy as np
import numpy.typing as npt

from lineage.core.blocks import Block, inherit
from lineage.core.facts import ClassTable
from lineage.core.frontier import Asked, Frontier
from lineage.core.parentage import CROSS, MIXED, MIXED_CROSS, SELF
from lineage.core.rounding_columns import add_down, add_up, mean_down, mean_up
from lineage.core.walk import DEPTH, FAR, INTER, INTRA

Ints = npt.NDArray[np.int64]
Floats = npt.NDArray[np.float64]

_ONE = np.ones(())


def sweep_generations(table: ClassTable, blocks: Sequence[Block]) -> None:
    """Compute generations, equivalent generations and completeness of the members of the blocks."""
    for block in blocks:
        into, above = block.members, block.above
        table.gen_min[into] = 1 + table.gen_min[above].min(axis=1)
        table.gen_max[into] = 1 + table.gen_max[above].max(axis=1)
        low, high = add_down(_ONE, table.eq_lo[above]), add_up(_ONE, table.eq_hi[above])
        table.eq_lo[into], table.eq_hi[into] = inherit(block.kind, low, high)
        _sweep_completeness(table, block)


def _sweep_completeness(table: ClassTable, block: Block) -> None:
    into = block.members
    mother = table.recorded[block.above[:, 0]]
    father = table.recorded[block.above[:, -1]]
    table.recorded[into, 1:] = (mother[:, :-1] + father[:, :-1]) / 2
    table.recorded[into, 0] = 1
    distance = np.minimum(FAR, 1 + table.unsettled[block.above].min(axis=1))
    table.unsettled[into] = 0 if block.kind >= MIXED else distance
    a, b = mother.sum(axis=1), father.sum(axis=1)
    both = (a > 0) & (b > 0)
    share = np.where(both, 2 * a * b / (DEPTH * np.where(both, a + b, 1)), 0.0)
    table.completeness[into] = np.where(table.unsettled[into] > DEPTH, share, np.nan)


def sweep_inbreeding(table: ClassTable, blocks: Sequence[Block], modes: Ints, frontier: Frontier) -> None:
    """Compute F of the members of the blocks; the frontier reads F of their ancestors from the table."""
    waiting: dict[int, list[tuple[Block, Asked | None]]] = {}
    for block in blocks:
        asked = None if block.kind == SELF else _ask(block, frontier)
        waiting.setdefault(block.level, []).append((block, asked))

    def at_level(level: int) -> None:
        for block, asked in waiting.get(level, ()):
            into = block.members
            if asked is None:
                table.f_lo[into], table.f_hi[into] = _of_selfs(table, block, modes[into])
            else:
                table.f_lo[into], table.f_hi[into] = _of_pairs(table, block, *frontier.answer(asked))

    frontier.sweep(at_level, max(waiting, default=0))


def _ask(block: Block, frontier: Frontier) -> Asked:
    pairs = np.array(list(combinations(range(block.parents.shape[1]), 2)), dtype=np.int64).reshape(-1, 2)
    return frontier.ask(block.parents[:, pairs[:, 0]].ravel(), block.parents[:, pairs[:, 1]].ravel())


def _of_selfs(table: ClassTable, block: Block, modes: Ints) -> tuple[Floats, Floats]:
    parent = block.above[:, 0]
    low = np.where(modes == INTRA, 1.0, mean_down(_ONE, table.f_lo[parent]))
    return low, np.where(modes == INTER, mean_up(_ONE, table.f_hi[parent]), 1.0)


def _of_pairs(table: ClassTable, block: Block, low: Floats, high: Floats) -> tuple[Floats, Floats]:
    low, high = (ends.reshape(len(block.members), -1) for ends in (low, high))
    if block.kind in (CROSS, MIXED_CROSS):
        return low.min(axis=1), high.max(axis=1)
    selfs = mean_down(_ONE, table.f_lo[block.above]).min(axis=1)
    return np.minimum(selfs, low.min(axis=1, initial=1.0)), np.ones(len(block.members))
