"""Stretches of italic and upright text, and how words are set side by side."""

from collections.abc import Iterable
from typing import Literal, NamedTuple

Style = Literal["italic", "roman"]


class Run(NamedTuple):
    """A stretch of text in one style. The spaces between words belong to the runs."""

    text: str
    style: Style


Word = tuple[Run, ...]
"""Runs that stand together without a space, as × and the epithet it belongs to."""


def italic(text: str, *, hybrid: bool = False) -> Word:
    """A Latin word, with × directly before it if it names a hybrid (ICN Rec. H.3A.1)."""
    word = Run(text, "italic")
    return (Run("×", "roman"), word) if hybrid else (word,)


def roman(text: str) -> Word:
    """An upright word."""
    return (Run(text, "roman"),)


def join_words(words: Iterable[Word]) -> tuple[Run, ...]:
    """The words with single spaces between; neighbours of one style become one run.

    A space between two styles is upright.
    """
    joined: list[Run] = []
    for word in words:
        for place, run in enumerate(word):
            _append(joined, run, gap=" " if joined and place == 0 else "")
    return tuple(joined)


def plain(runs: Iterable[Run]) -> str:
    """The text of the runs without their styles."""
    return "".join(run.text for run in runs)


def _append(joined: list[Run], run: Run, *, gap: str) -> None:
    if not joined:
        joined.append(run)
    elif joined[-1].style == run.style:
        joined[-1] = Run(joined[-1].text + gap + run.text, run.style)
    elif run.style == "roman":
        joined.append(Run(gap + run.text, "roman"))
    else:
        joined[-1] = Run(joined[-1].text + gap, "roman")
        joined.append(run)
