"""Lineage of a society of a million plants: ``python -m tests.benchmarks lineage [--plants N] [--clock cpu]``.

The floor is reading ``id, kind, parent1, parent2`` of every plant from SQLite into a list, in the same run;
what a rebuild costs is judged as a multiple of it, what one change or question costs in milliseconds. On a
machine that is busy with other things the clock that counts is that of the processor.
"""

import argparse
import gc
import json
import random
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import frondkeep  # noqa: F401  its SQLite library stands in for the standard one

# isort: split
import sqlite3

import numpy as np

from lineage.core import Node, Pedigree
from tests.benchmarks.lineage_data import (
    DIVISION,
    SELF,
    chain_of,
    dense_crosses,
    every_quantity,
    read,
    society,
    write,
)
from tests.benchmarks.lineage_request import RequestEdits

ROUNDS = 5
CLOCKS = {"wall": time.perf_counter, "cpu": time.process_time}
clock = "wall"


def main(arguments: list[str]) -> None:
    """Print each measure with its goal beside it."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks lineage")
    parser.add_argument("--plants", type=int, default=1_000_000)
    parser.add_argument("--alone", choices=ALONE, help="one measure in a process of its own, as JSON")
    parser.add_argument("--file", type=Path, help="a society written before")
    parser.add_argument("--clock", choices=CLOCKS, default="wall")
    chosen = parser.parse_args(arguments)
    global clock
    clock = chosen.clock
    if chosen.alone:
        print(json.dumps(ALONE[chosen.alone](chosen.file)))
        return
    with tempfile.TemporaryDirectory() as folder:
        measure(Path(folder) / "society.sqlite3", chosen.plants)


def measure(path: Path, plants: int) -> None:
    """Make a society, and print what everything takes."""
    columns = society(plants)
    write(path, columns)
    # Floor and work take turns, so that a busy spell meets both.
    turns = [
        (timed(lambda: rows_as_list(path)), timed(lambda: every_quantity(columns))) for _ in range(ROUNDS)
    ]
    floor, memory = (min(each) for each in zip(*turns, strict=True))
    line("plants", f"{len(columns['id']):,}", "")
    line("floor: reading the rows into a list", f"{floor:.3f} s", "")
    line("every quantity, rows in memory", ratio(memory, floor), "≤ 1.0 × floor")
    alone = in_own_process("read", path)
    line(
        "read + every quantity, peak memory",
        f"{ratio(alone['seconds'], floor)}, {alone['megabytes']:.0f} MB",
        "≤ 3.0 × floor, ≤ 350 MB",
    )
    measure_edits(path, columns)
    dense = in_own_process("dense", path)
    line(
        "20,000 crosses among 400 parents a generation",
        f"{dense['seconds']:.2f} s, {dense['megabytes']:.0f} MB",
        "≤ 2 s, ≤ 400 MB",
    )
    clones, sown = chain_of(DIVISION, 1_000_000), chain_of(SELF, 5_000)
    line("a clone chain of 1,000,000", f"{best(lambda: every_quantity(clones)):.2f} s", "< 1 s")
    line("5,000 spore generations", f"{best(lambda: every_quantity(sown)):.2f} s", "< 1 s")
    tenth = society(plants // 10)
    took = timed(lambda: three_by_networkx(tenth))
    line("networkx, three quantities (of a tenth, × 10)", ratio(10 * took, floor), "")


def measure_edits(path: Path, columns: dict[str, np.ndarray]) -> None:
    """One change at a time: with the state in memory, and from a database."""
    pedigree = Pedigree.from_columns(**columns)
    gc.collect()
    gc.freeze()  # what the benchmark itself holds is no part of a web process
    draw = random.Random(4)
    raised = np.flatnonzero(columns["parent_start"][1:] - columns["parent_start"][:-1] > 0)
    ids = columns["id"].tolist()
    sown = [row for row in raised.tolist() if columns["origin"][row] != DIVISION]
    pairs = [(ids[draw.choice(sown)], ids[draw.choice(sown)]) for _ in range(2_000)]
    line(
        "kinship of any two, p95 / worst", spread(lambda a, b: pedigree.kinship(a, b), pairs), "≤ 5 / ≤ 20 ms"
    )
    requests = RequestEdits(path)
    asked = [(ids[draw.choice(sown)],) for _ in range(300)]
    line("one edit from a web request, p95 / worst", spread(requests.revise, asked), "worst ≤ 100 ms")
    line("indexing before the first edit", f"{timed(pedigree.revise) * 1000:.0f} ms", "")
    edits = [(edit(columns, row, ids[draw.randrange(len(ids))]),) for row in draw.sample(sown, 2_000)]
    took = spread(lambda node: pedigree.revise([node]), [e for e in edits if not closes_cycle(pedigree, *e)])
    line("one parentage edit, state in memory, p95 / worst", took, "≤ 5 / ≤ 50 ms")


def edit(columns: dict[str, np.ndarray], row: int, other: int) -> Node:
    """A claim that a sporeling is a cross of its first parent and some plant of the society."""
    first = int(columns["parents"][columns["parent_start"][row]])
    return Node(int(columns["id"][row]), "cross", parents=(first, other))


def closes_cycle(pedigree: Pedigree, node: Node) -> bool:
    """Tell whether the edit would be refused."""
    return any(parent == node.id or node.id in pedigree.ancestors(parent) for parent in node.parents)


def rows_as_list(path: Path) -> list[tuple[int, int, int | None, int | None]]:
    """Read what any computing needs at the least."""
    database = sqlite3.connect(path)
    rows = database.execute("SELECT id, kind, parent1, parent2 FROM plant").fetchall()
    database.close()
    return rows


def three_by_networkx(columns: dict[str, np.ndarray]) -> tuple[dict, dict, dict]:
    """Ortets, generations at most and equivalent generations, with a general-purpose graph library."""
    import networkx as nx  # here, so that it does not weigh on the measures of memory

    ids, start = columns["id"].tolist(), columns["parent_start"].tolist()
    parents = columns["parents"].tolist()
    kinds = dict(zip(ids, columns["origin"].tolist(), strict=True))
    graph = nx.DiGraph()
    graph.add_nodes_from(ids)
    graph.add_edges_from(
        (p, ids[row]) for row in range(len(ids)) for p in parents[start[row] : start[row + 1]]
    )
    ortet, generations, equivalent = {}, {}, {}
    for plant in nx.topological_sort(graph):
        above = list(graph.predecessors(plant))
        if kinds[plant] == DIVISION:
            ortet[plant] = ortet[above[0]]
            generations[plant], equivalent[plant] = generations[above[0]], equivalent[above[0]]
        else:
            ortet[plant] = plant
            generations[plant] = 1 + max((generations[p] for p in above), default=-1)
            equivalent[plant] = sum(1 + equivalent[p] for p in above) / max(1, len(above))
    return ortet, generations, equivalent


def read_alone(path: Path) -> dict[str, float]:
    """Read a society and compute everything."""
    return measured(lambda: every_quantity(read(path)))


def dense_alone(_path: Path) -> dict[str, float]:
    """Compute a pedigree of dense crosses."""
    columns = dense_crosses()
    return measured(lambda: every_quantity(columns))


ALONE = {"read": read_alone, "dense": dense_alone}


def measured(work) -> dict[str, float]:
    """Seconds, and the most memory the process ever had."""
    seconds = timed(work)
    return {"seconds": seconds, "megabytes": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024}


def in_own_process(name: str, path: Path) -> dict[str, float]:
    """Run one measure in processes of its own; the fastest, with its memory."""
    command = [
        sys.executable,
        "-m",
        "tests.benchmarks",
        "lineage",
        "--alone",
        name,
        "--file",
        str(path),
        "--clock",
        clock,
    ]
    found = [
        json.loads(subprocess.run(command, check=True, capture_output=True).stdout) for _ in range(ROUNDS)
    ]
    return min(found, key=lambda each: each["seconds"])


def timed(work) -> float:
    """Seconds of one go."""
    now = CLOCKS[clock]
    start = now()
    work()
    return now() - start


def best(work) -> float:
    """Seconds of the fastest of a few goes."""
    return min(timed(work) for _ in range(ROUNDS))


def spread(work, cases: list[tuple]) -> str:
    """The 95th percentile and the worst over all cases, in milliseconds."""
    took = sorted(timed(lambda case=case: work(*case)) for case in cases)
    return f"{took[int(len(took) * 0.95)] * 1000:.1f} / {took[-1] * 1000:.1f} ms"


def ratio(seconds: float, floor: float) -> str:
    """A time and how many floors it is."""
    return f"{seconds:.2f} s = {seconds / floor:.2f} × floor"


def line(what: str, found: str, goal: str) -> None:
    """Print one line of the table."""
    print(f"{what:<50} {found:<32} {goal}", flush=True)
