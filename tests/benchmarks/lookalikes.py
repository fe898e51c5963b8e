"""Names compared: how well, how fast, in how much memory.

python -m tests.benchmarks lookalikes --pairs FILE.csv     quality on pairs (name_a,name_b,genus,label,kind)
python -m tests.benchmarks lookalikes --made 40            quality on pairs made by rule, --show for the worst
python -m tests.benchmarks lookalikes --names 100000       speed against plain rapidfuzz in the same run
"""

import argparse
import csv
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path

from lineage.core.lookalikes import Likeness, Vocabulary, compare_names

from .lookalikes_data import with_words_withheld
from .lookalikes_pairs_data import NamePair, make_pairs

GOALS = {"average precision": 0.955, "best F1": 0.92, "precision at recall 0.90": 0.93}


def main(arguments: list[str]) -> None:
    """Run what the options ask for."""
    options = _options(arguments)
    if options.pairs:
        report_quality(
            f"pairs of {options.pairs.name}", read_pairs(options.pairs), Vocabulary.default(), options
        )
    if options.made:
        pairs = list(make_pairs(options.seed, each=options.made))
        vocabulary = with_words_withheld(Vocabulary.default(), options.withheld, options.seed)
        title = f"{len(pairs)} pairs made by rule, seed {options.seed}, {options.withheld:.0%} of the words withheld"
        report_quality(title, pairs, vocabulary, options)
    if options.names:
        from .lookalikes_speed import report_speed

        report_speed(options.names, options.seed)


def _options(arguments: list[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="lookalikes", description=__doc__)
    parser.add_argument("--pairs", type=Path, help="a CSV file of labelled pairs")
    parser.add_argument("--made", type=int, default=0, help="pairs made by rule, so many of each kind")
    parser.add_argument("--names", type=int, default=0, help="names made by rule, to measure speed")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument(
        "--withheld", type=float, default=0.35, help="share of known words held back from made pairs"
    )
    parser.add_argument("--show", type=int, default=0, help="print so many of the worst pairs on each side")
    parser.add_argument("--odds", type=float, default=0, help="count different pairs as so many a same one")
    options = parser.parse_args(arguments)
    if not (options.pairs or options.made or options.names):
        parser.error("ask for --pairs FILE, --made COUNT or --names COUNT")
    return options


def read_pairs(path: Path) -> list[NamePair]:
    """Labelled pairs of a CSV file; a genus of the form A|B gives each name its own."""
    with path.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    genera = [row["genus"].split("|") for row in rows]
    return [
        NamePair(row["name_a"], row["name_b"], genus[0], genus[-1], row["label"] == "1", row["kind"])
        for row, genus in zip(rows, genera, strict=True)
    ]


@dataclass(frozen=True)
class Scored:
    """A pair and what the comparison made of it."""

    pair: NamePair
    likeness: Likeness


def score(pairs: Iterable[NamePair], vocabulary: Vocabulary) -> list[Scored]:
    """All pairs compared, best score first."""
    found = [
        Scored(
            pair,
            compare_names(pair.a, pair.b, genus_a=pair.genus_a, genus_b=pair.genus_b, vocabulary=vocabulary),
        )
        for pair in pairs
    ]
    return sorted(found, key=lambda one: -one.likeness.score)


def quality(scored: list[Scored], odds: float = 0) -> dict[str, float]:
    """Average precision, best F1, best precision where recall is 0.90 or more; ties count together."""
    same = sum(one.pair.same for one in scored)
    weight = odds * same / (len(scored) - same) if odds else 1.0
    found, seen, recall_before, average, f1, at_ninety = 0, 0.0, 0.0, 0.0, 0.0, 0.0
    for _, ties in groupby(scored, key=lambda one: one.likeness.score):
        for one in ties:
            found += one.pair.same
            seen += 1.0 if one.pair.same else weight
        precision, recall = found / seen, found / same
        average += precision * (recall - recall_before)
        f1 = max(f1, 2 * precision * recall / (precision + recall) if found else 0.0)
        at_ninety = max(at_ninety, precision if recall >= 0.9 else 0.0)
        recall_before = recall
    return {"average precision": average, "best F1": f1, "precision at recall 0.90": at_ninety}


def report_quality(
    title: str, pairs: Iterable[NamePair], vocabulary: Vocabulary, options: argparse.Namespace
) -> dict[str, float]:
    """Print the measures beside their goals, and the worst pairs if asked."""
    scored = score(pairs, vocabulary)
    measured = quality(scored, options.odds)
    print(title)
    for name, value in measured.items():
        print(f"  {name:28} {value:.4f}   goal {GOALS[name]}")
    same = [one for one in scored if one.pair.same]
    different = [one for one in scored if not one.pair.same]
    for heading, worst in (("same, scored lowest", same[::-1]), ("different, scored highest", different)):
        if options.show:
            print(f"  {heading}")
        for one in worst[: options.show]:
            why = " ".join(reason.key for reason in one.likeness.reasons)
            print(f"    {one.likeness.score:.3f} {one.pair.kind}: {one.pair.a} | {one.pair.b} ({why})")
    return measured
