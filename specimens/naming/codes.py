"""The codes of plants, packets, sowings and pans: year, number and a check letter, as in ``2026-0142-E``.

The letter is ISO/IEC 7064 MOD 27,26 over the digits of year and number written A to J, so it is always a
letter. It finds every wrong digit. It finds all but about seven in a thousand swaps of two neighbours;
for the rest, `next_code` never hands out both codes of such a pair, so a swap never names another plant.
"""

import re
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from string import ascii_uppercase

from stdnum.iso7064 import mod_37_36

_AS_LETTERS = str.maketrans("0123456789", "ABCDEFGHIJ")
_SHOWN = re.compile(
    r"(?P<year>\d{4})[ -]*(?P<number>\d{1,8}?)(?:[ -]*(?P<letter>[A-Z])|[ -]+(?P<digit>[01]))?", re.ASCII
)
_UNDIVIDED = re.compile(r"(?P<year>\d{4})-*(?P<number>0\d{3})(?P<digit>[01])", re.ASCII)
_DASHES = re.compile(r"[\s\-_\u2010-\u2015\u2212\u00ad\ufe58\ufe63\uff0d]+")
_PLAUSIBLE_YEARS = range(1900, 2100)
_LOOKS_LIKE = "A code looks like 2026-0142-E."
_LARGEST_NUMBER = 99_999_999


class CodeNotRead(ValueError):
    """The text is no code. `str()` says so in plain words; `did_you_mean` holds codes one slip away."""

    def __init__(self, message: str, did_you_mean: tuple["Code", ...] = ()) -> None:
        super().__init__(message)
        self.did_you_mean = did_you_mean


@dataclass(frozen=True, order=True, slots=True)
class Code:
    """A code: a year of four digits and a number from 1 up.

    >>> str(Code(2026, 142))
    '2026-0142-E'
    """

    year: int
    number: int

    def __post_init__(self) -> None:
        if not 1000 <= self.year <= 9999:
            raise ValueError(f"A code's year has four digits, not {self.year}.")
        if not 1 <= self.number <= _LARGEST_NUMBER:
            raise ValueError(f"A code's number runs from 1 to {_LARGEST_NUMBER}, not {self.number}.")

    @property
    def letter(self) -> str:
        """The check letter, A to Z."""
        return _letter_for(self._digits)

    @property
    def _digits(self) -> str:
        return f"{self.year}{self.number:04d}"

    def __str__(self) -> str:
        return f"{self.year}-{self.number:04d}-{self.letter}"


def read_code(text: str) -> Code:
    """The code typed in `text`, with or without its letter, dashes and spaces; case does not matter.

    A 1 or 0 in the letter's place is read I or O. Raises `CodeNotRead` when it is no code or the letter
    does not fit; a slip that keeps the letter is answered with the codes it may have been.

    >>> read_code("2026 142")
    Code(year=2026, number=142)
    """
    tidy = _DASHES.sub("-", unicodedata.normalize("NFKC", text).strip().upper()).strip("-")
    found = _UNDIVIDED.fullmatch(tidy) or _SHOWN.fullmatch(tidy)
    if not found:
        raise CodeNotRead(f"We could not read “{text.strip()[:40]}” as a code. {_LOOKS_LIKE}")
    return _checked(found["year"], found["number"], _letter_typed(found))


def _checked(year: str, number: str, letter: str) -> Code:
    digits, shown = year + number.zfill(4), f"{year}-{number.zfill(4)}"
    if year < "1000" or not int(number):
        raise CodeNotRead(f"There is no code {shown}. {_LOOKS_LIKE}", _ending_in(letter, _slips(digits)))
    code = Code(int(year), int(number))
    # A nought in front of a long number may be a swap, and the letter of the number without it fit by chance.
    padded = len(number) > 4 and number[0] == "0"
    if letter and (padded or letter != code.letter):
        near = _ending_in(letter, [code, *_slips(digits)] if padded else _slips(digits))
        raise CodeNotRead(f"{shown} does not end in {letter}. Please look at the tag again.", near)
    return code


def one_slip_away(code: Code, *, letter: str) -> tuple[Code, ...]:
    """Codes ending in `letter` that differ from `code` by one digit or by two swapped neighbours.

    Sorted, codes of the years 1900 to 2099 first. The code itself is not among them.
    """
    return _ending_in(letter, _slips(code._digits))


def _ending_in(letter: str, codes: Iterable[Code]) -> tuple[Code, ...]:
    fitting = {code for code in codes if code.letter == letter}
    return tuple(sorted(fitting, key=lambda code: (code.year not in _PLAUSIBLE_YEARS, code)))


def may_be_handed_out(code: Code) -> bool:
    """Whether no swap of two neighbours turns the code into a smaller one that ends in the same letter.

    Of two such codes the smaller alone may be on a tag, or a swap would name another plant unnoticed. About one
    number in fifty is left out.
    """
    return all(twin > code for twin in _swaps(code._digits) if twin.letter == code.letter)


def next_code(year: int, last: int = 0) -> Code:
    """The first code after number `last` of `year` that may be handed out."""
    code = Code(year, last + 1)
    while not may_be_handed_out(code):
        code = Code(year, code.number + 1)
    return code


def _letter_typed(found: re.Match[str]) -> str:
    groups = found.groupdict()
    digit = groups.get("digit")
    return {"1": "I", "0": "O"}[digit] if digit else groups.get("letter") or ""


def _letter_for(digits: str) -> str:
    return mod_37_36.calc_check_digit(digits.translate(_AS_LETTERS), alphabet=ascii_uppercase)


def _slips(digits: str) -> Iterator[Code]:
    for place, digit in enumerate(digits):
        for other in "0123456789".replace(digit, ""):
            yield from _code_of(digits[:place] + other + digits[place + 1 :])
    yield from _swaps(digits)


def _swaps(digits: str) -> Iterator[Code]:
    for place, (left, right) in enumerate(pairwise(digits)):
        if left != right:
            yield from _code_of(digits[:place] + right + left + digits[place + 2 :])


def _code_of(digits: str) -> Iterator[Code]:
    """The code with these digits, if there is one: a long number has no zero in front."""
    year, number = digits[:4], digits[4:]
    if year[0] != "0" and int(number) and not (len(number) > 4 and number[0] == "0"):
        yield Code(int(year), int(number))
