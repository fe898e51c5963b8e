"""Names and notes on the lines of a box: nothing is cut short, a long one takes more lines."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from specimens.naming.names import Run

# A word with the spaces before it, which fall away at the start of a line.
WORD = re.compile(r"\s*\S+|\s+")


def wrapped(runs: Iterable[Run], letters: int) -> tuple[tuple[Run, ...], ...]:
    """The runs on as many lines as they need, each at most `letters` long; broken between words.

    Only a word that is longer than a whole line is broken within itself.
    """
    lines: list[list[Run]] = [[]]
    room = letters
    for word in _words(runs, letters):
        text = word.text
        if len(text) > room and lines[-1]:
            lines.append([])
            room = letters
        if not lines[-1]:
            text = text.lstrip()
        if text:
            lines[-1].append(Run(text, word.style))
            room -= len(text)
    return tuple(_joined(line) for line in lines if line)


def wrapped_words(words: str, letters: int) -> tuple[str, ...]:
    """Plain words on lines, as `wrapped` breaks them."""
    return tuple("".join(run.text for run in line) for line in wrapped((Run(words, "roman"),), letters))


def _words(runs: Iterable[Run], letters: int) -> Iterator[Run]:
    for run in runs:
        for word in WORD.findall(run.text):
            for start in range(0, len(word), letters):
                yield Run(word[start : start + letters], run.style)


def _joined(line: list[Run]) -> tuple[Run, ...]:
    """Words of one style beside each other as one run again."""
    joined: list[Run] = []
    for run in line:
        if joined and joined[-1].style == run.style:
            joined[-1] = Run(joined[-1].text + run.text, run.style)
        else:
            joined.append(run)
    return tuple(joined)
