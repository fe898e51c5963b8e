"""Two words side by side: how likely they are one word, and why."""

import math

from rapidfuzz.distance import OSA

from .endings import stem
from .sounding import skeleton, sound
from .words import Tables, Word

DIFFERENT = 0.12
"""The most that a pair of different words leaves of a score."""

PairScore = tuple[float, str]
_REMEMBERED = 500_000


def pair_words(left: Word, right: Word, known: Tables) -> PairScore:
    """Score 0..1 and the key of its reason; the same whichever stands left."""
    if left.text == right.text:
        return (1.0, "same")
    memory = known.pairs
    key = (left, right) if (left.text, left.dotted) <= (right.text, right.dotted) else (right, left)
    found = memory.get(key)
    if found is None:
        if len(memory) >= _REMEMBERED:
            memory.clear()
        found = memory[key] = _pair(*key, known)
    return found


def _pair(left: Word, right: Word, known: Tables) -> PairScore:
    kinds = {left.kind, right.kind}
    if "number" in kinds:
        return (1.0, "same") if left.form == right.form and kinds == {"number"} else (0.06, "number")
    if "initial" in kinds:
        return _pair_initial(left, right)
    if frozenset((left.form, right.form)) in known.opposites:
        return (0.04, "opposite")
    if left.form == right.form:
        return _pair_same_form(left, right)
    special = _pair_kinds(left, right, known)
    return special or _pair_spelling(left, right, known)


def _pair_initial(left: Word, right: Word) -> PairScore:
    short, full = sorted((left, right), key=lambda word: len(word.text))
    if len(full.text) == 1 or not full.text.startswith(short.text):
        return (0.08, "first-name") if len(full.text) == 1 else (DIFFERENT / 2, "different-word")
    return (0.96, "initial") if full.kind == "given" or short.dotted else (0.85, "initial")


def _pair_same_form(left: Word, right: Word) -> PairScore:
    if left.meaning is None or right.meaning is None or left.meaning is not right.meaning:
        return (1.0, "ending")
    if left.meaning.kind == "translation" and stem(left.text) == stem(right.text):
        return (1.0, "ending")
    return {"translation": (0.97, "translation"), "nickname": (0.94, "nickname")}.get(
        left.meaning.kind, (0.99, "abbreviation")
    )


def _pair_kinds(left: Word, right: Word, known: Tables) -> PairScore | None:
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


def _pair_spelling(left: Word, right: Word, known: Tables) -> PairScore:
    a, b = left.text, right.text
    if a + "s" == b or b + "s" == a:
        return (0.97, "plural")
    if same_romanised(a) == same_romanised(b):
        return (0.98, "spelling")
    if _english_stem(a) == _english_stem(b):
        return (0.95, "ending")
    alike_in_sound = sound(a) == sound(b)
    distance = OSA.distance(a, b)
    length = max(len(a), len(b))
    if distance > 0.5 * length and not alike_in_sound:
        return (DIFFERENT * (1 - distance / length), "different-word")
    chance = slip_chance(a, b, distance, known)
    if a in known.known and b in known.known:
        return (min(chance, 0.3) * 0.6, "two-words")
    if chance < 0.35:
        return (max(chance, DIFFERENT * (1 - distance / length)), "different-word")
    return (chance, "sound" if skeleton(a) == skeleton(b) else "slip")


def same_romanised(word: str) -> str:
    """ü, ue and u; ō, oo and ou: one spelling."""
    for written, plain in (("ae", "a"), ("oe", "o"), ("ue", "u"), ("uu", "u"), ("oo", "o"), ("ou", "o")):
        word = word.replace(written, plain)
    return word


def _english_stem(word: str) -> str:
    base = stem(word)
    if base == word:
        base = word[:-2] if word.endswith("ed") else word[:-1] if word.endswith("e") else word
    return base if len(base) >= 5 else word


def slip_chance(a: str, b: str, distance: int, known: Tables) -> float:
    """How likely one word is a slip of the other, from their letters and sounds."""
    length = max(len(a), len(b))
    odds = (
        2.6
        - 2.2 * (min(distance, 2 if sound(a) == sound(b) else distance) - 1)
        + 0.25 * (min(length, 11) - 6)
    )
    odds -= 1.3 if a[0] != b[0] else 0.0
    odds += 1.5 if sound(a) == sound(b) else 0.8 if skeleton(a) == skeleton(b) else 0.0
    odds -= 0.8 * ((a in known.known) + (b in known.known) - 1)
    return 0.97 / (1 + math.exp(-odds))
