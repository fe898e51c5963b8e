"""Names compared: how fast and in how much memory, against plain rapidfuzz in the same run.

python -m tests.benchmarks lookalikes_speed --names 100000
"""

import argparse
import random
import resource
import time
from collections.abc import Callable, Iterable

import numpy as np
from rapidfuzz import fuzz, process

from lineage.core.lookalikes import NameIndex, candidate_pairs

from .lookalikes_data import Row, plant_partners, prefix_of

ROWS_AT_ONCE = 1000
QUERIES = 300


def main(arguments: list[str]) -> None:
    """Measure bulk candidates, one new name, and typing, each as a ratio to rapidfuzz."""
    parser = argparse.ArgumentParser(prog="lookalikes_speed", description=__doc__)
    parser.add_argument("--names", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", choices=["bulk", "index"])
    options = parser.parse_args(arguments)
    report_speed(options.names, options.seed, only=options.only)


def report_speed(count: int, seed: int, *, only: str | None = None) -> None:
    """Print each measure beside its goal."""
    rows, partners = plant_partners(count, seed)
    print(f"{len(rows)} names, {len(partners)} planted partners, seed {seed}")
    if only != "index":
        report_bulk(rows, partners)
    if only != "bulk":
        report_index(rows, partners, random.Random(seed))


def say(measure: str, value: float, goal: str) -> None:
    print(f"  {measure:58} {value:10.4f}   goal {goal}", flush=True)


def seconds(work: Callable[[], object]) -> float:
    """Wall time of one run."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def report_bulk(rows: list[Row], partners: dict[int, int]) -> None:
    """Candidates of the whole list against an all-pairs ``cdist`` with ``fuzz.ratio``."""
    found: list[tuple[int, int, float]] = []
    took = seconds(lambda: found.extend(candidate_pairs(rows, cutoff=0.75)))
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    pairs = {(a, b) for a, b, _ in found}
    caught = sum((min(a, b), max(a, b)) in pairs for a, b in partners.items())
    say("planted partners among the candidates", caught / len(partners), ">= 0.96")
    say("candidates a name", 2 * len(pairs) / len(rows), "<= 10")
    say("peak memory, MB", peak, "<= 1024")
    floor = seconds(lambda: all_pairs([text for _, text, _ in rows]))
    say("seconds", took, f"(rapidfuzz cdist took {floor:.1f})")
    say("ratio to all-pairs cdist", took / floor, "<= 0.35")


def all_pairs(texts: list[str]) -> int:
    """How many pairs reach a ratio of 85, every name with every name, two threads."""
    count = 0
    for start in range(0, len(texts), ROWS_AT_ONCE):
        block = texts[start : start + ROWS_AT_ONCE]
        scores = process.cdist(block, texts, scorer=fuzz.ratio, score_cutoff=85, dtype=np.uint8, workers=2)
        count += int(np.count_nonzero(scores))
    return count


def report_index(rows: list[Row], partners: dict[int, int], dice: random.Random) -> None:
    """One new name, and a name being typed, against ``process.extract``."""
    texts = [text for _, text, _ in rows]
    by_id = {name_id: (text, genus) for name_id, text, genus in rows}
    held_back = dict(dice.sample(sorted(partners.items()), min(QUERIES, len(partners))))
    index: list[NameIndex] = []
    built = seconds(lambda: index.append(NameIndex(row for row in rows if row[0] not in held_back)))
    say("seconds to build the index", built, "-")
    names = index[0]
    names.suggest("a")
    _report_like(names, texts, by_id, held_back)
    _report_typing(names, texts, by_id, dice)


def _report_like(
    names: NameIndex, texts: list[str], by_id: dict[int, tuple[str, str]], held_back: dict[int, int]
) -> None:
    hits, ours, floor = 0, [], []
    for new, partner in held_back.items():
        text, genus = by_id[new]
        found: list[tuple[int, float]] = []
        ours.append(seconds(lambda: found.extend(names.like(text, genus=genus, limit=10))))  # noqa: B023
        hits += partner in {name_id for name_id, _ in found}
        floor.append(seconds(lambda: process.extract(text, texts, scorer=fuzz.ratio, limit=10)))  # noqa: B023
    say("one new name: true partner in the first ten", hits / len(held_back), ">= 0.94")
    say("one new name: p95, ms", p95(ours) * 1000, f"(process.extract {p95(floor) * 1000:.1f})")
    say("one new name: ratio of p95", p95(ours) / p95(floor), "<= 0.66")


def _report_typing(
    names: NameIndex, texts: list[str], by_id: dict[int, tuple[str, str]], dice: random.Random
) -> None:
    wanted = dice.sample([name_id for name_id in sorted(by_id) if name_id in names], QUERIES)
    for heading, slip, goal in (
        ("a beginning", False, ">= 0.99"),
        ("a beginning with a slip", True, ">= 0.90"),
    ):
        hits, ours, floor = 0, [], []
        for name_id in wanted:
            typed = prefix_of(by_id[name_id][0], dice, slip=slip)
            found: list[tuple[int, float]] = []
            ours.append(seconds(lambda: found.extend(names.suggest(typed, limit=10))))  # noqa: B023
            hits += name_id in {found_id for found_id, _ in found}
            floor.append(seconds(lambda: process.extract(typed, texts, scorer=fuzz.partial_ratio, limit=10)))  # noqa: B023
        say(f"typing {heading}: found in the first ten", hits / len(wanted), goal)
        say(f"typing {heading}: p95, ms", p95(ours) * 1000, f"(process.extract {p95(floor) * 1000:.1f})")
        say(f"typing {heading}: ratio of p95", p95(ours) / p95(floor), "<= 0.10")


def p95(times: Iterable[float]) -> float:
    """The time that one in twenty takes longer than."""
    return float(np.percentile(list(times), 95))
