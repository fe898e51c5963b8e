"""All pairs of a list of names that are worth a person's look, without comparing all with all."""

from array import array
from collections import defaultdict
from collections.abc import Iterable, Iterator
from itertools import chain, combinations, product
from typing import Any

import numpy as np
from rapidfuzz.distance import OSA
from rapidfuzz.process import cdist

from .keys import exact_keys, initial_keys, joined, letters_out, sorted_forms, without_group_word
from .likeness import compare_prepared
from .pairing import pair_words
from .prepared import Prepared, prepare
from .vocabulary import Vocabulary
from .words import Tables, Word, tables

Id = Any
"""Any key that can be sorted and hashed."""

_WIDEST_SLIP = 2
_MOST_VARIANTS = 96
_MOST_IN_KEY = 60
_ROWS_AT_ONCE = 512


def candidate_pairs(
    names: Iterable[tuple[Id, str, str | None]],
    *,
    cutoff: float = 0.75,
    vocabulary: Vocabulary | None = None,
) -> Iterator[tuple[Id, Id, float]]:
    """Pairs (id_a, id_b, score) of names of one genus that score ``cutoff`` or more; id_a < id_b, sorted.

    names: (id, name, genus); a name without any genus is held against the names of every genus. The score is
    that of ``compare_names``. Names that read as nothing are left out. A key shared by more than 60 names of one
    genus brings up no pairs but of equal folded forms.

    Raises ValueError for an id given twice, or a cutoff outside 0..1. Cost: about linear in the names, and
    quadratic in the different words of a genus.

    >>> list(candidate_pairs([(1, "Silver Tassel", "Platycerium"), (2, "Sliver Tassel", "Platycerium")]))[0][:2]
    (1, 2)
    """
    if not 0 <= cutoff <= 1:
        raise ValueError(f"A cutoff is a score between 0 and 1, not {cutoff}.")
    vocabulary = vocabulary or Vocabulary.default()
    ids, prepared = _prepare_all(names, vocabulary)
    order = sorted(range(len(ids)), key=lambda row: ids[row])
    ids, prepared = [ids[row] for row in order], [prepared[row] for row in order]
    found: dict[tuple[int, int], float] = {}
    for rows in _blocks(prepared):
        for pair in _Block(prepared, rows, vocabulary, cutoff).pairs():
            if pair not in found:
                score = compare_prepared(prepared[pair[0]], prepared[pair[1]], vocabulary).score
                if score >= cutoff:
                    found[pair] = score
    for pair in sorted(found):
        yield ids[pair[0]], ids[pair[1]], found[pair]


def _prepare_all(
    names: Iterable[tuple[Id, str, str | None]], vocabulary: Vocabulary
) -> tuple[list[Id], list[Prepared]]:
    ids, prepared, seen = [], [], set()
    for name_id, text, genus in names:
        if name_id in seen:
            raise ValueError(f"The id {name_id!r} was given to two names.")
        seen.add(name_id)
        ready = prepare(text, genus or None, vocabulary)
        if ready.folded:
            ids.append(name_id)
            prepared.append(ready)
    return ids, prepared


def _blocks(prepared: list[Prepared]) -> Iterator[list[int]]:
    by_genus: dict[str, list[int]] = defaultdict(list)
    without = []
    for row, name in enumerate(prepared):
        for genus in name.possible_genera:
            by_genus[genus].append(row)
        if not name.possible_genera:
            without.append(row)
    for genus in sorted(by_genus):
        yield by_genus[genus] + without
    if not by_genus:
        yield without


class _Block:
    """The names of one genus."""

    def __init__(
        self, prepared: list[Prepared], rows: list[int], vocabulary: Vocabulary, cutoff: float
    ) -> None:
        self.known = tables(vocabulary)
        self.cutoff = cutoff
        self.prepared = prepared
        self.rows = rows

    def pairs(self) -> set[tuple[int, int]]:
        found: set[tuple[int, int]] = set()
        for group in chain(self._exact_groups(), self._one_letter_apart()):
            found.update(combinations(sorted(set(group)), 2))
        for row, others in chain(self._initials(), self._variants()):
            found.update((min(row, other), max(row, other)) for other in others if other != row)
        return found

    def _exact_groups(self) -> Iterator[list[int]]:
        groups: dict[str, list[int]] = defaultdict(list)
        for row in self.rows:
            for key in exact_keys(self.prepared[row]):
                groups[key].append(row)
        for key, group in groups.items():
            if 1 < len(group) <= _MOST_IN_KEY or (len(group) > 1 and key.startswith("f ")):
                yield group

    def _one_letter_apart(self) -> Iterator[list[int]]:
        """Names that, written in one, differ by one letter.

        Keys are kept as hashes in flat arrays: there are as many as letters. Two keys of one hash bring up a pair
        in vain, no more.
        """
        hashes, rows = array("q"), array("q")
        for row in self.rows:
            for words in self.prepared[row].versions:
                keys = letters_out(joined(words))
                hashes.extend([hash(key) for key in keys])
                rows.extend([row] * len(keys))
        order = np.argsort(np.frombuffer(hashes, dtype=np.int64), kind="stable")
        ordered = np.frombuffer(hashes, dtype=np.int64)[order]
        named = np.frombuffer(rows, dtype=np.int64)[order]
        starts = np.flatnonzero(np.append(True, ordered[1:] != ordered[:-1]))
        ends = np.append(starts[1:], len(ordered))
        sizes = ends - starts
        for at in np.flatnonzero((sizes > 1) & (sizes <= _MOST_IN_KEY)):
            yield named[starts[at] : ends[at]].tolist()

    def _initials(self) -> Iterator[tuple[int, list[int]]]:
        """Names with a word cut short, and the names it may stand for."""
        short: dict[str, list[int]] = defaultdict(list)
        full: dict[str, list[int]] = defaultdict(list)
        keys = [(row, *found) for row in self.rows for found in initial_keys(self.prepared[row])]
        for row, key, cut_short in keys:
            if cut_short:
                short[key].append(row)
        for row, key, _ in keys:
            if key in short:
                full[key].append(row)
        for key, rows in short.items():
            if len(full[key]) <= _MOST_IN_KEY:
                yield from ((row, full[key]) for row in rows)

    def _variants(self) -> Iterator[tuple[int, list[int]]]:
        """Names that become another by putting like words for words."""
        by_forms: dict[tuple[str, ...], list[int]] = defaultdict(list)
        versions: list[tuple[int, tuple[Word, ...]]] = []
        for row in self.rows:
            for words in self.prepared[row].versions:
                for kept in filter(None, (words, without_group_word(words))):
                    by_forms[sorted_forms(kept)].append(row)
                    versions.append((row, kept))
        near = near_forms({word for _, words in versions for word in words}, self.known, self.cutoff)
        for row, words in versions:
            choices = [[word.form, *near.get(word.form, ())] for word in words]
            if np.prod([len(choice) for choice in choices]) > _MOST_VARIANTS:
                choices = [choice[:3] for choice in choices[:4]] + [choice[:1] for choice in choices[4:]]
            for variant in product(*choices):
                others = by_forms.get(tuple(sorted(variant)))
                if others and len(others) <= _MOST_IN_KEY:
                    yield row, others


def near_forms(words: Iterable[Word], known: Tables, cutoff: float) -> dict[str, list[str]]:
    """For each folded word the others whose pair scores ``cutoff`` or more, best first."""
    by_text = {word.text: word for word in words if word.kind not in ("number", "initial")}
    texts = sorted(by_text, key=lambda text: (len(text), text))
    scored: dict[str, dict[str, float]] = defaultdict(dict)
    for left, right in _close_texts(texts):
        a, b = by_text[left], by_text[right]
        if a.form == b.form:
            continue
        score, _ = pair_words(a, b, known, supported=True)
        if score >= cutoff:
            scored[a.form][b.form] = max(score, scored[a.form].get(b.form, 0.0))
            scored[b.form][a.form] = scored[a.form][b.form]
    return {
        form: sorted(others, key=lambda other: (-others[other], other)) for form, others in scored.items()
    }


def _close_texts(texts: list[str]) -> Iterator[tuple[str, str]]:
    """Pairs of texts at most two slips apart; ``texts`` sorted by length."""
    lengths = np.array([len(text) for text in texts])
    for start in range(0, len(texts), _ROWS_AT_ONCE):
        block = texts[start : start + _ROWS_AT_ONCE]
        end = int(np.searchsorted(lengths, len(block[-1]) + _WIDEST_SLIP, side="right"))
        distances = cdist(
            block, texts[start:end], scorer=OSA.distance, score_cutoff=_WIDEST_SLIP, dtype=np.uint8, workers=2
        )
        for i, j in zip(*np.nonzero(distances <= _WIDEST_SLIP), strict=True):
            if j > i:
                yield block[i], texts[start + j]
