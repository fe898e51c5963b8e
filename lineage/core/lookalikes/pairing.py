"""Two words side by side: how likely they are one word, and why."""

import math
from functools import lru_cache

from .endings import stem
from .slips import slip_distance, slip_odds
from .sounding import skeleton, sound
from .words import Tables, Word

DIFFERENT = 0.12
"""The most that a pair of different words leaves of a score."""

SURE = 0.95
"""The score of a slip nobody could doubt."""
DOUBTFUL = 0.6
"""Below this two spellings are called two words."""

TWO_WORDS = 0.55
"""The most two words score that are both known, however alike."""

_BENEFIT_OF_DOUBT = 1.5  # a pair not looked at is lost, a pair looked at in vain costs a minute
_SUPPORT = 1.2
_NO_SLIP = -9.0

PairScore = tuple[float, str]


def pair_words(left: Word, right: Word, known: Tables, *, supported: bool = False) -> PairScore:
    """Score 0..1 and the key of its reason; the same whichever stands left.

    ``supported``: another word of the two names agrees, which makes a slip likelier.
    """
    if left.text == right.text:
        return (1.0, "same")
    swapped = (left.text, left.dotted) > (right.text, right.dotted)
    key = (right, left, supported) if swapped else (left, right, supported)
    return known.pairs.get_or_make(key, lambda pair: _pair(pair[0], pair[1], known, pair[2]))


def _pair(left: Word, right: Word, known: Tables, supported: bool) -> PairScore:
    kinds = {left.kind, right.kind}
    if "number" in kinds:
        return (1.0, "same") if left.form == right.form and kinds == {"number"} else (0.06, "number")
    if "initial" in kinds:
        return _pair_initial(left, right, known)
    if frozenset((left.form, right.form)) in known.opposites:
        return (0.04, "opposite")
    if left.form == right.form:
        return _pair_same_form(left, right)
    return _pair_kinds(left, right) or _pair_spelling(left, right, known, supported)


def _pair_initial(left: Word, right: Word, known: Tables) -> PairScore:
    short, full = sorted((left, right), key=lambda word: len(word.text))
    if len(full.text) == 1:
        return (0.08, "first-name")
    if not full.text.startswith(short.text):
        return (DIFFERENT / 2, "different-word")
    if full.kind in ("given", "title", "place"):
        return (0.97, "initial")
    if full.text in known.given:
        return (0.96, "initial")
    if known.knows(full.text):
        return (0.3, "initial")
    return (0.9 if short.dotted else 0.8, "initial")


def _pair_same_form(left: Word, right: Word) -> PairScore:
    if left.meaning is None or right.meaning is None or left.meaning is not right.meaning:
        return (1.0, "ending")
    if left.meaning.kind == "translation" and stem(left.text) == stem(right.text):
        return (1.0, "ending")
    return {"translation": (0.97, "translation"), "nickname": (0.965, "nickname")}.get(
        left.meaning.kind, (0.99, "abbreviation")
    )


def _pair_kinds(left: Word, right: Word) -> PairScore | None:
    """What the kinds of two words settle before their letters are looked at."""
    if left.kind == right.kind in ("title", "place"):
        return (0.06, left.kind)
    if left.dotted or right.dotted:
        short, full = sorted((left, right), key=lambda word: len(word.text))
        if short.dotted and len(short.text) > 1 and full.text.startswith(short.text):
            return (0.96, "abbreviation")
    if left.kind == right.kind == "given":
        return (0.07, "first-name")
    if {left.kind, right.kind} == {"given", "title"}:
        return (0.08, "title")
    return None


def _pair_spelling(left: Word, right: Word, known: Tables, supported: bool) -> PairScore:
    a, b = left.text, right.text
    if a + "s" == b or b + "s" == a:
        return (0.97, "plural")
    known_words = known.knows(a) + known.knows(b)
    if known_words < 2 and _same_romanised(a) == _same_romanised(b):
        return (0.98, "spelling")
    if _english_stem(a) == _english_stem(b):
        return (0.95 if known_words < 2 else 0.6, "ending")
    odds = _odds(a, b, known, known_words)
    if left.kind == right.kind == "latin" and left.form != a and right.form != b:
        odds = max(odds, _odds(left.form, right.form, known, known_words))
    chance = SURE * _logistic(odds + _BENEFIT_OF_DOUBT + _SUPPORT * supported)
    if known_words == 2:
        chance = min(chance, TWO_WORDS)
    if chance < DOUBTFUL:
        nearness = DIFFERENT * max(0.0, 1 - slip_distance(a, b) / max(len(a), len(b)))
        return (
            max(chance, nearness),
            "two-words" if known_words == 2 and odds > _NO_SLIP else "different-word",
        )
    return (chance, "sound" if skeleton(a) == skeleton(b) else "slip")


def _odds(a: str, b: str, known: Tables, known_words: int) -> float:
    distance = slip_distance(a, b)
    if sound(a) == sound(b):
        distance = min(distance, 2)
    if distance > 0.5 * max(len(a), len(b)):
        return _NO_SLIP
    return slip_odds(a, b, distance=distance, known=known_words, shapes=known.shapes)


def _logistic(odds: float) -> float:
    return 1 / (1 + math.exp(-odds))


@lru_cache(maxsize=65536)
def _same_romanised(word: str) -> str:
    """ü, ue and u; ō, oo and ou: one spelling."""
    for written, plain in (("ae", "a"), ("oe", "o"), ("ue", "u"), ("uu", "u"), ("oo", "o"), ("ou", "o")):
        word = word.replace(written, plain)
    return word


@lru_cache(maxsize=65536)
def _english_stem(word: str) -> str:
    base = stem(word)
    if base == word:
        base = word[:-2] if word.endswith("ed") else word[:-1] if word.endswith("e") else word
    return base if len(base) >= 5 else word
