"""Finds the characters our fonts cannot print, before anything is printed.

The fonts are those inside the compiler's package (Libertinus Serif, New Computer Modern, DejaVu Sans
Mono): Latin, Greek, Cyrillic, Hebrew and signs, but no Chinese, Japanese, Korean, Thai or pictures.
"""

import re
import unicodedata
from collections.abc import Iterable

from frondkeep.sheets.errors import SheetError
from frondkeep.sheets.press import Refused, press

STAND_IN = "\N{WHITE SQUARE}"
# What is asked nearly always is known without asking; a test compares it with the fonts.
SURELY_PRINTABLE = frozenset(map(chr, [*range(0x20, 0x7F), *range(0xC0, 0x17F), *map(ord, "×‘’–·")]))
_NAMED = re.compile(r"the text `\"((?:[^\"\\]|\\.)*)\"` could not be displayed")
_ESCAPED = re.compile(r"\\(u\{([0-9a-f]+)\}|.)")
_SHORT = {"n": "\n", "r": "\r", "t": "\t", "0": "\0"}


def missing_characters(texts: Iterable[str]) -> tuple[str, ...]:
    """Return the characters of these texts that cannot be printed, each once, in order of appearance.

    A character counts as printable when upright, italic and bold are all there. Line breaks and tabs
    are printed as spaces and are never missing; other control characters always are.

    >>> missing_characters(["Platycerium × elemaria", "‘Hula Hands’"])
    ()
    """
    asked = dict.fromkeys(character for text in texts for character in one_line(text))
    doubtful = [character for character in asked if character not in SURELY_PRINTABLE]
    unwritable = {character for character in doubtful if unicodedata.category(character) in ("Cc", "Cs")}
    for_the_press = [character for character in doubtful if character not in unwritable]
    missing = unwritable | (_refused(for_the_press) if for_the_press else set())
    return tuple(character for character in asked if character in missing)


def one_line(text: str) -> str:
    """Return the text with every run of white space turned into one space."""
    return re.sub(r"[\s\x1c-\x1f]+", " ", text)


def named_in(diagnostic: str) -> set[str]:
    """Return the characters a refusal of the compiler names; empty when it is about something else."""
    return {character for escaped in _NAMED.findall(diagnostic) for character in _unescaped(escaped)}


def describe_characters(characters: Iterable[str]) -> str:
    """Name characters for a person: itself where it can be shown, its number, its name.

    >>> describe_characters(["蕨", chr(0x200D)])
    '“蕨” (U+8568), U+200D (zero width joiner)'
    """
    return ", ".join(map(_described, characters))


def _described(character: str) -> str:
    number = f"U+{ord(character):04X}"
    name = unicodedata.name(character, "a control character").lower()
    if unicodedata.category(character)[0] in "CMZ":
        return f"{number} ({name})"
    return f"“{character}” ({number})" if name.startswith("cjk") else f"“{character}” ({number}, {name})"


def _refused(characters: list[str]) -> set[str]:
    try:
        press("glyph_probe.typ", {"characters": characters}, timestamp=0)
    except Refused as refusal:
        missing = named_in(str(refusal))
        if not missing:
            raise SheetError("the fonts could not be looked at") from refusal
        return missing
    return set()


def _unescaped(escaped: str) -> str:
    def character(match: re.Match[str]) -> str:
        return chr(int(match[2], 16)) if match[2] else _SHORT.get(match[1], match[1])

    return _ESCAPED.sub(character, escaped)
