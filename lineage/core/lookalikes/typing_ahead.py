"""Words by how they begin, for answering while somebody types."""

from array import array
from bisect import bisect_left
from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from .keys import joined
from .prepared import Prepared

Rows = NDArray[np.int32]
Scores = NDArray[np.float32]

_EXACT, _BEGINS, _SLIP = 1.0, 0.9, 0.6
_SHORTEST_SLIP = 3
_FIRST_WORD = 0.08
_CLOSENESS = 0.1
_LETTERS = "abcdefghijklmnopqrstuvwxyz"
_AFTER_ALL = "\U0010ffff"
_FEW_NEW = 512


class PrefixRows:
    """Rows by word, in one sorted list, so that all words with one beginning are one slice.

    New entries wait beside the sorted list until there are many, or somebody asks for the first time.
    """

    def __init__(self) -> None:
        self._words: list[str] = []
        self._ends = np.zeros(1, dtype=np.int64)
        self._rows: Rows = np.zeros(0, dtype=np.int32)
        self._new: list[tuple[str, int]] = []
        self._new_sorted = True

    def add(self, word: str, row: int) -> None:
        """Enter a row under a word."""
        self._new.append((word, row))
        self._new_sorted = False

    def starting(self, beginning: str) -> Rows:
        """Rows of all words that begin so; a row may come twice."""
        return self._between(beginning, beginning + _AFTER_ALL)

    def exactly(self, word: str) -> Rows:
        """Rows of that very word."""
        return self._between(word, word + "\0")

    def begins_any(self, beginning: str) -> bool:
        """Does any word begin so?"""
        at = bisect_left(self._words, beginning)
        if at < len(self._words) and self._words[at].startswith(beginning):
            return True
        at = bisect_left(self._new, (beginning, -1))
        return at < len(self._new) and self._new[at][0].startswith(beginning)

    def settle(self) -> None:
        """Bring the lists into order; before asking."""
        if len(self._new) > max(_FEW_NEW, len(self._words) // 8):
            self._merge()
        elif not self._new_sorted:
            self._new.sort()
        self._new_sorted = True

    def _between(self, low: str, high: str) -> Rows:
        first, last = bisect_left(self._words, low), bisect_left(self._words, high)
        old = self._rows[self._ends[first] : self._ends[last]]
        if not self._new:
            return old
        first, last = bisect_left(self._new, (low, -1)), bisect_left(self._new, (high, -1))
        new = np.array([row for _, row in self._new[first:last]], dtype=np.int32)
        return np.concatenate([old, new])

    def _merge(self) -> None:
        counts = np.diff(self._ends)
        old_words = [word for word, times in zip(self._words, counts, strict=True) for _ in range(times)]
        entries = sorted([*zip(old_words, self._rows.tolist(), strict=True), *self._new])
        self._rows = np.array([row for _, row in entries], dtype=np.int32)
        self._words, ends = [], [0]
        for at, (word, _) in enumerate(entries):
            if not self._words or word != self._words[-1]:
                self._words.append(word)
                ends.append(at)
            ends[-1] = at + 1
        self._ends = np.array(ends, dtype=np.int64)
        self._new = []


class Starts:
    """The words of every row, and the first word of every row."""

    def __init__(self) -> None:
        self._words = PrefixRows()
        self._first = PrefixRows()
        self._lengths = array("i")

    def add(self, row: int, name: Prepared) -> None:
        """Enter a name's words, their folded forms, and the whole run together."""
        words = name.versions[-1]
        texts = {word.text for word in words} | {word.form for word in words}
        if len(words) > 1:
            texts.add(joined(words))
        for text in texts:
            self._words.add(text, row)
        if words:
            self._first.add(words[0].text, row)
        self._lengths.append(len(joined(words)))

    def score(self, parts: list[str], allowed: NDArray[np.bool_], enough: int) -> Scores:
        """A score 0..1 for every row: 0 where some part begins no word.

        Slips are looked for only where fewer than ``enough`` allowed rows fit as typed.
        """
        self._words.settle()
        self._first.settle()
        found = [self._as_typed(part, len(allowed)) for part in parts]
        fits = self._fits(found, allowed)
        if np.count_nonzero(fits) < enough:
            found = [
                np.maximum(scores, self._slipped(part, len(allowed)))
                for part, scores in zip(parts, found, strict=True)
            ]
            fits = self._fits(found, allowed)
        typed = sum(map(len, parts))
        rows = np.nonzero(fits)[0]
        scores = np.zeros(len(allowed), dtype=np.float32)
        lengths = np.maximum(np.frombuffer(self._lengths, dtype=np.int32)[rows], 1)
        first = np.zeros(len(allowed), dtype=np.float32)
        first[self._first.starting(parts[0])] = _FIRST_WORD
        mean = np.sum([part_scores[rows] for part_scores in found], axis=0) / len(parts)
        scores[rows] = (1 - _CLOSENESS - _FIRST_WORD) * mean + first[rows]
        scores[rows] += _CLOSENESS * np.minimum(typed / lengths, 1.0)
        return scores

    def _fits(self, found: list[Scores], allowed: NDArray[np.bool_]) -> NDArray[np.bool_]:
        fits = allowed
        for scores in found:
            fits = fits & (scores > 0)
        return fits

    def _as_typed(self, part: str, count: int) -> Scores:
        scores = np.zeros(count, dtype=np.float32)
        scores[self._words.starting(part)] = _BEGINS
        scores[self._words.exactly(part)] = _EXACT
        return scores

    def _slipped(self, part: str, count: int) -> Scores:
        scores = np.zeros(count, dtype=np.float32)
        for beginning in self._one_slip(part):
            scores[self._words.starting(beginning)] = _SLIP
        return scores

    def _one_slip(self, part: str) -> Iterator[str]:
        """Every beginning there is that is one letter away from what was typed."""
        if len(part) < _SHORTEST_SLIP:
            return
        for at in range(len(part) + 1):
            before, after = part[:at], part[at:]
            if not self._words.begins_any(before):
                return  # the slip stands before this letter, or there is none
            variants = [before + after[1:], before + after[1:2] + after[:1] + after[2:]]
            for letter in _LETTERS:
                if self._words.begins_any(before + letter):
                    variants += [before + letter + after, before + letter + after[1:]]
            yield from (
                variant for variant in variants if len(variant) >= _SHORTEST_SLIP - 1 and variant != part
            )
