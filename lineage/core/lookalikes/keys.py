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


def exact_keys(prepared: Prepared) -> set[str]:
    """Every key of a name but for initials; two names that share one are worth comparing."""
    keys: set[str] = set()
    for words in prepared.versions:
        keys.update(_keys_of(words))
        shorter = without_group_word(words)
        if shorter:
            keys.update(_keys_of(shorter))
    return keys


def _keys_of(words: Words) -> Iterator[str]:
    yield "f " + " ".join(sorted_forms(words))
    yield "j " + joined(words)
    yield "s " + " ".join(sorted(skeleton(word.form) for word in words))


def initial_keys(prepared: Prepared) -> Iterator[tuple[str, bool]]:
    """One word down to its first letter, the rest in full; and whether that word is cut short in this name.

    Two names that share one, cut short in either, are worth comparing.
    """
    for words in prepared.versions:
        if len(words) < 2:
            continue
        for at, word in enumerate(words):
            cut_short = word.kind == "initial" or word.dotted
            if cut_short or at == 0 or word.kind == "given":
                rest = sorted(other.form for place, other in enumerate(words) if place != at)
                yield f"i {word.text[0]} {' '.join(rest)}", cut_short


def letters_out(text: str) -> list[str]:
    """The text, and the text with each letter left out once: texts one slip apart share one of these.

    Digits stay: another number is another plant.
    """
    return [text, *(text[:at] + text[at + 1 :] for at, letter in enumerate(text) if not letter.isdigit())]
