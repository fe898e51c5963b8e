"""Clues in a few words for a row of a list, and as bars for a page."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

FEW_WORDS = {
    ("spelling", "same"): "written the same",
    ("spelling", "near"): "written nearly the same",
    ("spelling", "sounds alike"): "they sound alike",
    ("spelling", "lexicon"): "they mean the same",
    ("spelling", "far"): "names not alike",
    ("clone", "one clone"): "pieces of one plant under both",
    ("genotype", "same"): "the same by DNA",
    ("genotype", "different"): "different by DNA",
    ("parents", "same two"): "same parents",
    ("parents", "same kinds"): "parents of the same kinds",
    ("parents", "share one"): "a parent in common",
    ("parents", "none shared"): "other parents",
    ("raiser", "same raiser, near years"): "same raiser and years",
    ("raiser", "same raiser"): "same raiser",
    ("raiser", "different raisers"): "other raisers",
    ("traits", "agree"): "traits agree",
    ("traits", "mostly agree"): "most traits agree",
    ("traits", "conflict"): "traits differ",
    ("traits", "stable conflict"): "lasting traits differ",
    ("photo", "one picture"): "one picture under both",
    ("keepers", "grown as two"): "somebody grows both",
}
# Less than this is not worth a word in a row.
LITTLE = 0.5
IN_A_ROW = 4
# As many bits as fill a whole half of a bar.
LONGEST = 12.0


@dataclass(frozen=True, slots=True)
class Bar:
    """One clue as the page draws it; `length` 0 to 100 of its half."""

    sentence: str
    side: str
    strength: str
    length: int


def in_few_words(summands: Iterable[dict[str, Any]]) -> str:
    """“written the same · same parents · but lasting traits differ”: the weightiest, those against last."""
    telling = [each for each in summands if abs(each["bits"]) >= LITTLE][:IN_A_ROW]
    speaks_for = [_few(each) for each in telling if each["bits"] > 0]
    against = [_few(each) for each in telling if each["bits"] < 0]
    return " · ".join([*speaks_for, *(f"but {words}" for words in against)])


def _few(summand: dict[str, Any]) -> str:
    level = str(summand["level"])
    return FEW_WORDS.get((str(summand["witness"]), level), level)


def bars(summands: Iterable[dict[str, Any]]) -> list[Bar]:
    """Clues that say something, the longest bar first."""
    return [
        Bar(
            sentence=each["sentence"],
            side="for" if each["bits"] > 0 else "against",
            strength=each["strength"],
            length=min(100, max(2, round(100 * abs(each["bits"]) / LONGEST))),
        )
        for each in summands
        if each["bits"]
    ]


def silent(summands: Iterable[dict[str, Any]]) -> list[str]:
    """Sentences of the clues that say nothing."""
    return [each["sentence"] for each in summands if not each["bits"]]


def likely_words(in_a_hundred: int) -> str:
    """“about 92 in 100”."""
    return f"about {in_a_hundred} in 100"
