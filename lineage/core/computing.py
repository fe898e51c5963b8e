"""From rows to facts: the state of a pedigree, computed whole."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from lineage.core.blocks import Block, blocks_of
from lineage.core.bounds import half_plus_half
from lineage.core.clones import Clones, follow_clones
from lineage.core.compositions import sweep_compositions
from lineage.core.cycles import links_on_cycles
from lineage.core.facts import ClassTable
from lineage.core.frontier import CAP, Frontier
from lineage.core.kinship import PairByPair, Plant, TooManyPairs
from lineage.core.levels import class_levels
from lineage.core.nodes import Interval
from lineage.core.parentage import MIXED, Parentages, read_parentages
from lineage.core.rows import Rows
from lineage.core.sweep import sweep_generations, sweep_inbreeding
from lineage.core.walk import founder_facts, spore_facts

Ints = npt.NDArray[np.int64]

# Below so many classes a level, one class at a time is faster than one level at a time.
NARROW = 8
# A question that meets more pairs goes on level by level; so do eight classes that do on top of that.
FEW_PAIRS = 100


@dataclass(slots=True)
class State:
    """All that is known of a pedigree.

    ``dropped`` are the rows whose by-name link lay on a cycle, ``tangled`` all rows on those cycles;
    ``contradictory`` the rows whose exclusion of selfs was dropped.
    """

    rows: Rows
    dropped: set[int]
    tangled: set[int]
    contradictory: set[int]
    clones: Clones
    parentages: Parentages
    table: ClassTable


def compute(rows: Rows) -> State:
    """Return the state of rows; `PedigreeError` for a cycle that is left without by-name links."""
    dropped: set[int] = set()
    tangled: set[int] = set()
    settled = _settle(rows, dropped)
    if settled is None:
        dropped, tangled = links_on_cycles(rows)
        settled = _settle(rows, dropped)
    assert settled is not None  # noqa: S101  what is left of the links has no cycle
    clones, parentages, level = settled
    contradictory = set(parentages.contradictory.tolist())
    table = ClassTable.blank(level)
    state = State(rows, dropped, tangled, contradictory, clones, parentages, table)
    for k in np.flatnonzero(parentages.mixture >= 0).tolist():
        state.table.put(k, founder_facts(rows.mixtures[int(parentages.mixture[k])]))
    compute_classes(state, np.flatnonzero(parentages.count > 0), whole=True)
    return state


def _settle(rows: Rows, dropped: set[int]) -> tuple[Clones, Parentages, Ints] | None:
    clones = follow_clones(rows, dropped)
    if clones is None:
        return None
    parentages = read_parentages(rows, clones)
    level = class_levels(parentages)
    return None if level is None else (clones, parentages, level)


def compute_classes(state: State, classes: Ints, *, whole: bool = False) -> None:
    """Compute the facts of classes raised from spores, whose levels stand; all others must be up to date.

    ``whole`` says that no class raised from spores is left out.
    """
    if not len(classes):
        return
    level = state.table.level[classes]
    if len(classes) < NARROW * len(np.unique(level)):
        try:
            walk_classes(state, classes[np.argsort(level, kind="stable")])
            return
        except TooManyPairs:
            pass
    _sweep_classes(state, classes, whole=whole)


def walk_classes(state: State, classes: Ints) -> None:
    """Compute classes one at a time, in the order given, parents before offspring."""
    parentages, table = state.parentages, state.table
    kinship = pair_by_pair(state, cap=FEW_PAIRS * (1 + len(classes) // 8))
    for k in classes.tolist():
        facts = spore_facts(
            kind=int(parentages.kind[k]),
            mode=int(parentages.mode[k]),
            parents=parentages.parents_of(k),
            facts_of=lambda row: table.facts(int(parentages.class_of[row]) if row >= 0 else 0),
            kinship=kinship.between,
        )
        table.put(k, facts)


def _sweep_classes(state: State, classes: Ints, *, whole: bool) -> None:
    table = state.table
    blocks = blocks_of(state.parentages, table.level, classes)
    sweep_generations(table, blocks)
    entries = sweep_compositions(table.compositions, blocks, len(table.level))
    if whole:
        table.compositions.put_bulk(entries)
    else:
        table.compositions.put_entries(entries)
    compute_inbreeding(state, blocks)


def compute_inbreeding(state: State, blocks: Sequence[Block], cap: int = CAP) -> None:
    """Compute F of the members of the blocks, which ascend by level, in as few goes as the cap allows.

    Where the pairs one class alone rests on are more than the cap, its F is given the widest bounds that
    are always true: from 0 to the kinship of the most inbred parent with itself (of an unsettled plant: 1).
    """
    todo = [list(blocks)]
    while todo:
        some = todo.pop()
        frontier = Frontier(state.parentages, state.table.level, state.table.f_lo, state.table.f_hi, cap)
        try:
            sweep_inbreeding(state.table, some, state.parentages.mode, frontier)
        except TooManyPairs:
            halves = list(_halves(some))
            if halves:
                todo.extend(reversed(halves))
            else:
                _widest(state, some[0])


def _halves(blocks: list[Block]) -> Iterator[list[Block]]:
    middle = len(blocks) // 2
    if middle:
        yield blocks[:middle]
        yield blocks[middle:]
    elif len(blocks[0].members) > 1:
        block, half = blocks[0], len(blocks[0].members) // 2
        for part in (slice(None, half), slice(half, None)):
            yield [
                replace(
                    block, members=block.members[part], parents=block.parents[part], above=block.above[part]
                )
            ]


def _widest(state: State, block: Block) -> None:
    table, k = state.table, block.members[0]
    highest = half_plus_half((0.0, float(table.f_hi[block.above].max())))[1]
    table.f_lo[k], table.f_hi[k] = 0.0, 1.0 if block.kind == MIXED else highest


def pair_by_pair(state: State, cap: int) -> PairByPair:
    """Return kinship one pair at a time, over the facts of a state."""
    parentages, table = state.parentages, state.table
    class_of, level, kind = parentages.class_of, table.level, parentages.kind

    def plant(row: int) -> Plant:
        k = int(class_of[row])
        return int(level[k]), int(kind[k]), parentages.parents_of(k)

    def inbreeding(row: int) -> Interval:
        k = class_of[row]
        return float(table.f_lo[k]), float(table.f_hi[k])

    return PairByPair(plant, inbreeding, cap)


def kinship_of(state: State, a: int, b: int, cap: int = CAP) -> Interval:
    """Return the bounds of kinship of two ortet rows.

    A pair that rests on more pairs than the cap is given the widest bounds that are always true: from 0 to
    the kinship of the more inbred of the two with itself.
    """
    try:
        return pair_by_pair(state, min(cap, FEW_PAIRS)).between(a, b)
    except TooManyPairs:
        pass
    table = state.table
    frontier = Frontier(state.parentages, table.level, table.f_lo, table.f_hi, cap)
    try:
        asked = frontier.ask(np.array([a]), np.array([b]))
        frontier.sweep(lambda level: None)
    except TooManyPairs:
        highest = float(table.f_hi[state.parentages.class_of[[a, b]]].max())
        return 0.0, half_plus_half((0.0, highest))[1]
    low, high = frontier.answer(asked)
    return float(low[0]), float(high[0])
