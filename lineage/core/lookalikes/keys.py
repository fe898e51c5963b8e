"""Keys under which two ways of writing one name meet exactly."""

from collections.abc import Iterator

from .likeness import is_group_word
from .prepared import Prepared
from .sounding import skeleton
from .words import Word

Words = tuple[Word, ...]


def sorted_forms(words: Words) -> tuple[str, ...]:
    """The folded words in one order: meets other word orders, endings, translations."""
    return tuple(sorted(word.form for word in words))


def joined(words: Words) -> str:
    """All letters in one: meets names run together or split."""
    return "".join(word.text for word in words)


def without_group_word(words: Words) -> Words | None:
    """The words after a leading Group word; None when there is no such word."""
    return words[1:] if len(words) >= 3 and is_group_word(words[0], words) else None


def exact_keys(prepared: Prepared) -> Iterator[str]:
    """Every key of a name; two names that share one are worth comparing. Some come twice."""
    for words in prepared.versions:
        yield from _keys_of(words)
        shorter = without_group_word(words)
        if shorter:
            yield from _keys_of(shorter)


def _keys_of(words: Words) -> Iterator[str]:
    yield "f " + " ".join(sorted_forms(words))
    yield "j " + joined(words)
    yield "s " + " ".join(sorted(skeleton(word.form) for word in words))
    if len(words) > 1:
        yield from _initial_keys(words)


def _initial_keys(words: Words) -> Iterator[str]:
    """One first name, title or point-marked word down to its first letter; the rest in full."""
    for at, word in enumerate(words):
        if word.kind in ("initial", "given") or word.dotted or at == 0:
            rest = sorted(other.form for place, other in enumerate(words) if place != at)
            yield f"i {word.text[0]} {' '.join(rest)}"


def letters_out(text: str) -> Iterator[str]:
    """The text with each letter left out once, and whole: texts one slip apart share one of these."""
    yield text
    for at in range(len(text)):
        yield text[:at] + text[at + 1 :]
