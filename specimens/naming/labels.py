"""What a tag says, kept letter for letter."""

import re
import unicodedata

LONGEST_LABEL = 500
_LINE_ENDS = re.compile("\r\n|[\n\r\t\v\f\x85\u2028\u2029]")
_DIRECTION_MARKS = re.compile("[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]")


class LabelTooLong(ValueError):
    """The text is longer than a label may be; `str()` says by how much."""


def clean_label(text: str) -> str:
    """`text` as it is kept: every printable character, in its place, as written.

    The end of a line or a tab becomes a space; what cannot be printed (control characters, halves of
    surrogate pairs) becomes U+FFFD, so that one sees something stood there; marks that turn the direction
    of writing go, because they can make a label read as another; white space around the whole goes.
    Raises `LabelTooLong` beyond 500 characters.

    >>> clean_label(' "Silver  Tassel"\\n ex Mrs. B ')
    '"Silver  Tassel"  ex Mrs. B'
    """
    flat = _DIRECTION_MARKS.sub("", _LINE_ENDS.sub(" ", text))
    kept = "".join("\ufffd" if unicodedata.category(each) in ("Cc", "Cs") else each for each in flat).strip()
    if len(kept) > LONGEST_LABEL:
        raise LabelTooLong(f"This is {len(kept)} characters long; a label holds {LONGEST_LABEL}.")
    return kept
