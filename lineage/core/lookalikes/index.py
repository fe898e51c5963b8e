"""Names kept ready for two questions: what does this name look like, and what is being typed?"""

from array import array
from collections import defaultdict
from collections.abc import Iterable
from typing import Any

import numpy as np
from numpy.typing import NDArray

from .characters import split_words, tidy
from .keys import exact_keys, initial_keys, joined
from .likeness import compare_prepared
from .prepared import Prepared, prepare
from .reading import read_name
from .typing_ahead import Starts
from .vocabulary import Vocabulary

Id = Any
_LOOKED_AT = 48
_LEAST_SHARED = 0.34


class NameIndex:
    """Names by id. Adding one by one gives the same answers as giving all at once.

    names: (id, name, genus); ids are any keys that can be sorted and hashed. Not safe for writing from several
    threads at once.

    >>> index = NameIndex([(1, "Silver Tassel", "Platycerium"), (2, "Wavy Fan", "Asplenium")])
    >>> index.suggest("silv tas")[0][0], index.like("Silvered Tassle", genus="Platycerium")[0][0]
    (1, 1)
    """

    def __init__(
        self, names: Iterable[tuple[Id, str, str | None]] = (), *, vocabulary: Vocabulary | None = None
    ) -> None:
        self.vocabulary = vocabulary or Vocabulary.default()
        self._row_of: dict[Id, int] = {}
        self._ids: list[Id] = []
        self._names: list[Prepared | None] = []
        self._sizes = array("i")
        self._alive = bytearray()
        self._genera: dict[frozenset[str], int] = {}
        self._genus_codes = array("i")
        self._grams: dict[str, array[int]] = defaultdict(lambda: array("i"))
        self._keys: dict[str, list[int]] = defaultdict(list)
        self._starts = Starts()
        for name_id, text, genus in names:
            self.add(name_id, text, genus)

    def __len__(self) -> int:
        return len(self._row_of)

    def __contains__(self, name_id: object) -> bool:
        return name_id in self._row_of

    def add(self, name_id: Id, text: str, genus: str | None = None) -> None:
        """Take a name in; a name already there under that id is replaced."""
        self.remove(name_id)
        name = prepare(text, genus or None, self.vocabulary)
        row = len(self._ids)
        self._row_of[name_id] = row
        self._ids.append(name_id)
        self._names.append(name)
        self._alive.append(1)
        self._genus_codes.append(self._genera.setdefault(name.possible_genera, len(self._genera)))
        grams = _grams(joined(name.versions[0]))
        self._sizes.append(len(grams))
        for gram in grams:
            self._grams[gram].append(row)
        for key in _all_keys(name):
            self._keys[key].append(row)
        self._starts.add(row, name)

    def remove(self, name_id: Id) -> None:
        """Forget a name; an id that is not there is no error."""
        row = self._row_of.pop(name_id, None)
        if row is None:
            return
        self._alive[row] = 0
        self._names[row] = None
        if len(self._ids) > 64 and len(self._row_of) < len(self._ids) // 2:
            self._pack()

    def _pack(self) -> None:
        """Drop the rows of forgotten names."""
        kept = [(self._ids[row], self._names[row]) for row in sorted(self._row_of.values())]
        self.__init__(vocabulary=self.vocabulary)  # type: ignore[misc]
        for name_id, name in kept:
            if name is not None:
                self.add(name_id, name.reading.text, name.known_genus)

    def like(self, text: str, *, genus: str | None = None, limit: int = 10) -> list[tuple[Id, float]]:
        """Names most like a text: (id, score of ``compare_names``), best first, ties by id.

        genus: only names of that genus (moves of species and genera allowed for) and names without one. Text
        that reads as nothing gives [].
        """
        wanted = prepare(text, genus or None, self.vocabulary)
        if not wanted.folded or limit < 1 or not self._ids:
            return []
        allowed = self._allowed(wanted)
        rows = {row for key in _all_keys(wanted) for row in self._keys.get(key, ()) if allowed[row]}
        rows = set(sorted(rows, key=lambda row: self._ids[row])[: 4 * _LOOKED_AT])
        rows.update(self._nearest_by_grams(wanted, allowed))
        scored = [
            (self._ids[row], compare_prepared(wanted, name, self.vocabulary).score)
            for row in rows
            if (name := self._names[row]) is not None
        ]
        return sorted(scored, key=lambda found: (-found[1], found[0]))[:limit]

    def _allowed(self, wanted: Prepared) -> NDArray[np.bool_]:
        """Rows that are not forgotten, and may be of the genus wanted."""
        fitting = [
            not (wanted.possible_genera and genera and wanted.possible_genera.isdisjoint(genera))
            for genera in self._genera
        ]
        codes = np.frombuffer(self._genus_codes, dtype=np.int32)
        return np.array(fitting, dtype=np.bool_)[codes] & (np.frombuffer(self._alive, dtype=np.uint8) > 0)

    def _nearest_by_grams(self, wanted: Prepared, allowed: NDArray[np.bool_]) -> list[int]:
        grams = _grams(joined(wanted.versions[0]))
        postings = [_view(self._grams[gram]) for gram in grams if gram in self._grams]
        if not postings:
            return []
        shared = np.bincount(np.concatenate(postings), minlength=len(self._ids))
        rows = np.nonzero((shared >= 0.25 * len(grams)) & allowed)[0]
        shares = 2.0 * shared[rows] / (_view(self._sizes)[rows] + len(grams))
        near = shares >= _LEAST_SHARED
        return self._best(rows[near], shares[near], _LOOKED_AT)

    def _best(self, rows: NDArray[np.intp], scores: NDArray[np.float64], count: int) -> list[int]:
        """The ``count`` best rows, ties by id, whatever order the rows came in."""
        if len(rows) > count:
            least = np.partition(scores, len(scores) - count)[len(scores) - count]
            rows, scores = rows[scores >= least], scores[scores >= least]
        ranked = sorted(
            zip(-scores, (self._ids[row] for row in rows), rows, strict=True), key=lambda r: r[:2]
        )
        return [int(row) for _, _, row in ranked[:count]]

    def suggest(self, typed: str, *, limit: int = 10, genus: str | None = None) -> list[tuple[Id, float]]:
        """Names somebody may be typing: (id, score 0..1), best first, ties by id.

        Every typed word must begin a word of the name, in any order, with a slip allowed where too few names fit
        exactly. A genus and species typed before the name are taken as such where nothing fits with them. Nothing
        typed gives [].
        """
        found = self._suggest_parts(_parts(tidy(typed)), genus, limit)
        if found or not typed.strip():
            return found
        reading = read_name(typed, genus=genus, vocabulary=self.vocabulary)
        return self._suggest_parts(_parts(reading.epithet or reading.species), reading.genus, limit)

    def _suggest_parts(self, parts: list[str], genus: str | None, limit: int) -> list[tuple[Id, float]]:
        if not parts or limit < 1 or not self._ids:
            return []
        allowed = self._allowed(prepare("", genus or None, self.vocabulary))
        scores = self._starts.score(parts, allowed, limit).astype(np.float64)
        rows = np.nonzero(scores > 0)[0]
        best = self._best(rows, scores[rows], limit)
        return [(self._ids[row], round(float(scores[row]), 4)) for row in best]


def _parts(typed: str) -> list[str]:
    return [part.rstrip(".").replace("'", "") for part in split_words(typed)]


def _view(posting: "array[int]") -> NDArray[np.int32]:
    return np.frombuffer(posting, dtype=np.int32)


def _all_keys(name: Prepared) -> set[str]:
    return exact_keys(name) | {key for key, _ in initial_keys(name)}


def _grams(text: str) -> set[str]:
    padded = f"  {text} "
    return {padded[at : at + 3] for at in range(len(padded) - 2)}
