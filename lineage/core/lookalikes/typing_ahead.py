"""Words by how they begin, for answering while somebody types."""

from array import array
from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray
from rapidfuzz.distance import OSA

from .keys import joined
from .prepared import Prepared

_EXACT, _BEGINS, _SLIP = 1.0, 0.9, 0.6
_SHORTEST_SLIP = 3
_FIRST_WORD = 0.08
_CLOSENESS = 0.1


class Starts:
    """A sorted list of words, the rows each word stands in, and the words each pair of letters stands in."""

    def __init__(self) -> None:
        self._words: list[str] = []
        self._sorted = True
        self._rows: dict[str, array[int]] = {}
        self._first: dict[str, array[int]] = {}
        self._pairs: dict[str, set[str]] = defaultdict(set)
        self._lengths = array("i")

    def add(self, row: int, name: Prepared) -> None:
        """Enter a name's words, their folded forms, and the whole run together."""
        words = name.versions[-1]
        texts = {word.text for word in words} | {word.form for word in words}
        if len(words) > 1:
            texts.add(joined(words))
        for text in sorted(texts):
            self._enter(text, row)
        if words:
            self._first.setdefault(words[0].text, array("i")).append(row)
        self._lengths.append(len(joined(words)))

    def _enter(self, text: str, row: int) -> None:
        if text not in self._rows:
            self._rows[text] = array("i")
            self._words.append(text)
            self._sorted = False
            for pair in _first_pairs(text):
                self._pairs[pair].add(text)
        self._rows[text].append(row)

    def score(self, parts: list[str], alive: NDArray[np.uint8]) -> NDArray[np.float64]:
        """A score for every row: 0 where some part begins no word."""
        total = np.ones(len(alive), dtype=np.float64)
        weakest = None
        for part in parts:
            found = self._score_part(part, len(alive), slips=False)
            if not np.any((found > 0) & (total > 0)):
                found = np.maximum(found, self._score_part(part, len(alive), slips=True))
            total = np.where(found > 0, np.minimum(total, found), 0.0)
            weakest = found if weakest is None else weakest + found
        assert weakest is not None  # noqa: S101 - there is a part
        typed = sum(map(len, parts))
        lengths = np.maximum(np.frombuffer(self._lengths, dtype=np.int32), 1)
        closeness = _CLOSENESS * np.minimum(typed / lengths, 1.0)
        mean = (weakest / len(parts)) * (1 - _CLOSENESS - _FIRST_WORD)
        first = self._begins_name(parts[0], len(alive)) * _FIRST_WORD
        return np.where((total > 0) & (alive > 0), mean + closeness + first, 0.0)

    def _score_part(self, part: str, count: int, *, slips: bool) -> NDArray[np.float64]:
        scores = np.zeros(count, dtype=np.float64)
        matches = self._slipped(part) if slips else self._beginning(part)
        for word, value in sorted(matches, key=lambda match: match[1]):
            scores[np.frombuffer(self._rows[word], dtype=np.int32)] = value
        return scores

    def _begins_name(self, part: str, count: int) -> NDArray[np.float64]:
        flags = np.zeros(count, dtype=np.float64)
        for word, _ in self._beginning(part):
            if word in self._first:
                flags[np.frombuffer(self._first[word], dtype=np.int32)] = 1.0
        return flags

    def _beginning(self, part: str) -> Iterator[tuple[str, float]]:
        if not self._sorted:
            self._words.sort()
            self._sorted = True
        at = bisect_left(self._words, part)
        while at < len(self._words) and self._words[at].startswith(part):
            yield self._words[at], _EXACT if self._words[at] == part else _BEGINS
            at += 1

    def _slipped(self, part: str) -> Iterator[tuple[str, float]]:
        if len(part) < _SHORTEST_SLIP:
            return
        allowed = 1 if len(part) < 7 else 2
        seen: dict[str, int] = defaultdict(int)
        for pair in _first_pairs(part):
            for word in self._pairs.get(pair, ()):
                seen[word] += 1
        needed = max(1, len(part) - 1 - 2 * allowed)
        for word, shared in seen.items():
            if shared >= needed:
                distance = min(
                    OSA.distance(part, word[: len(part) + more], score_cutoff=allowed) for more in (-1, 0, 1)
                )
                if distance <= allowed:
                    yield word, _SLIP - 0.1 * (distance - 1)


def _first_pairs(text: str) -> set[str]:
    return {text[at : at + 2] for at in range(min(len(text), 12) - 1)}
