"""One word written badly, or two words? Odds from the letters, the sound, and what words look like."""

import math
import tomllib
from collections import Counter
from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from itertools import groupby

from rapidfuzz.distance import OSA

from .remembering import Remembered
from .sounding import skeleton, sound

_REMEMBERED = 200_000
_LETTERS = 27
_SMOOTHING = 0.05
_VOWELS = frozenset("aeiouy")
_USUAL_LENGTH, _LONGEST_LENGTH = 7, 12


class WordShapes:
    """How often letters follow each other in known words."""

    def __init__(self, words: Iterable[str]) -> None:
        self._threes: Counter[str] = Counter()
        self._twos: Counter[str] = Counter()
        self._strangeness = Remembered[str, float](_REMEMBERED)
        for word in words:
            padded = f"^^{word}$"
            for at in range(len(padded) - 2):
                self._threes[padded[at : at + 3]] += 1
                self._twos[padded[at : at + 2]] += 1

    def strangeness(self, word: str) -> float:
        """Mean surprise a letter in nats, given the two letters before it; higher is less like a word."""
        return self._strangeness.get_or_make(word, self._mean_surprise)

    def _mean_surprise(self, word: str) -> float:
        padded = f"^^{word}$"
        surprise = [self._surprise(padded[at : at + 3]) for at in range(len(padded) - 2)]
        return sum(surprise) / len(surprise)

    def _surprise(self, three: str) -> float:
        seen, before = self._threes[three], self._twos[three[:2]]
        return -math.log((seen + _SMOOTHING) / (before + _SMOOTHING * _LETTERS))


@cache
def _table() -> dict[str, float]:
    return tomllib.loads((files(__package__) / "shipped" / "slips.toml").read_text("utf-8"))


def slip_odds(a: str, b: str, *, distance: int, known: int, shapes: WordShapes) -> float:
    """Log odds that ``a`` and ``b``, ``distance`` slips apart, are one word; ``known``: how many are known words."""
    odds = _table()
    longer = max(len(a), len(b))
    total = odds["base"] + odds["share"] * distance / longer
    total += odds["length"] * (min(longer, _LONGEST_LENGTH) - _USUAL_LENGTH)
    total += odds["two"] * (distance >= 2) + odds["more"] * max(distance - 2, 0)
    total += odds["first_letter"] * (a[0] != b[0])
    total += odds["same_sound"] * (sound(a) == sound(b)) + odds["same_skeleton"] * (
        skeleton(a) == skeleton(b)
    )
    total += odds["both_known"] * (known == 2) + odds["neither_known"] * (known == 0)
    strange = sorted((shapes.strangeness(a), shapes.strangeness(b)))
    total += odds["strangeness"] * strange[1] + odds["uneven"] * (strange[1] - strange[0])
    return total + (sum(odds[kind] for kind in _kinds_of_slip(a, b)) if distance == 1 else 0.0)


def _kinds_of_slip(a: str, b: str) -> list[str]:
    """What the one slip between two words is."""
    if len(a) != len(b):
        runs_alike = [letter for letter, _ in groupby(a)] == [letter for letter, _ in groupby(b)]
        return ["missing", "doubled"] if runs_alike else ["missing"]
    differing = [pair for pair in zip(a, b, strict=True) if pair[0] != pair[1]]
    if len(differing) == 2:
        return ["swapped"]
    return ["vowel"] if differing and _VOWELS.issuperset(differing[0]) else []


def slip_distance(a: str, b: str) -> int:
    """Letters put in, left out, changed, or swapped with a neighbour: the restricted Damerau distance."""
    return OSA.distance(a, b)
