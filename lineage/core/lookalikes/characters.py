"""From what somebody wrote to plain small letters."""

import re
import unicodedata

LONGEST_READ = 400
"""Characters of a label that are read; nobody's plant name is longer, and a pasted essay costs nothing."""

_QUOTES = dict.fromkeys(map(ord, "'‘’‚‛\"“”„‟«»‹›`´′″ʹʺʻʼʽˈ＇＂「」『』〝〞〟❛❜❝❞"), "'")
_DASHES = dict.fromkeys(map(ord, "-‐‑‒–—―−_/\\·•~+=|"), " ")
_LETTERS = {"ä": "ae", "ö": "oe", "ü": "ue", "ø": "oe", "æ": "ae", "œ": "oe", "ł": "l", "đ": "d", "ð": "d"}
_IN_TWO_LETTERS = str.maketrans(_LETTERS | {"þ": "th", "ı": "i"})
_INVISIBLE = ("Cc", "Cf", "Cs", "Co", "Cn")


def tidy(text: str) -> str:
    """Text with every quote as ``'``, every space plain, nothing invisible; at most LONGEST_READ long.

    >>> tidy("  «Silver\\u00a0 Tassel»\\u200b")
    "'Silver Tassel'"
    """
    if text.isascii() and text.isprintable():  # most labels; the long way gives the same
        return " ".join(text[: 2 * LONGEST_READ].translate(_QUOTES).split())[:LONGEST_READ].strip()
    quoted = unicodedata.normalize("NFKC", text[: 2 * LONGEST_READ].translate(_QUOTES)).translate(_QUOTES)
    visible = "".join(c if unicodedata.category(c) not in _INVISIBLE else _gap(c) for c in quoted)
    return " ".join(visible.split())[:LONGEST_READ].strip()


def _gap(character: str) -> str:
    return " " if character in "\t\n\r\v\f" else ""


def small(text: str) -> str:
    """Small letters without accents: ü is written ue, ū is written u.

    >>> small("Müller's Ryūsei")
    "mueller's ryusei"
    """
    if text.isascii():
        return text.lower()
    lowered = unicodedata.normalize("NFC", text.casefold()).translate(_IN_TWO_LETTERS)
    apart = unicodedata.normalize("NFD", lowered)
    return unicodedata.normalize("NFC", re.sub("[\u0300-\u036f]", "", apart))


_RUN_ON = re.compile(r"(?<=[a-zß-öø-ÿ]{2})(?=[A-ZÀ-ÖØ-Þ])")
_NAME_PREFIX = re.compile(r"\b(Mc|Mac|O'|D'|De|Di|La|Le|Van|Fitz) (?=[A-Z])")
_COUNT = re.compile(r"(?:#|№)\s*(?=\d)|\b(?:no|nr|num|number|numero|nummer)\b\s*\.?\s*(?=\d)", re.IGNORECASE)
_COUNT_MISWRITTEN = re.compile(
    r"(?<=\s)(?:n[^\W\d_]|[^\W\d_]o|n|[^\W\d_]no|no[^\W\d_])\.\s*(?=\d)", re.IGNORECASE
)
_LETTER_DIGIT = re.compile(r"(?<=[^\W\d_])(?=\d)|(?<=\d)(?=[^\W\d_])")
_DIGIT = re.compile(r"\d")
_WORD = re.compile(r"[^\W_][\w']*\.?")


def split_words(text: str) -> list[str]:
    """Words of tidied text in small letters, run-on capitals split, a point kept where one stood.

    >>> split_words("BronzeDuchess-No. 26")
    ['bronze', 'duchess', '26']
    >>> split_words("Mrs. O'Brien's Best")
    ['mrs.', "o'brien's", 'best']
    """
    apart = _RUN_ON.sub(" ", text)
    if apart is not text:
        apart = _NAME_PREFIX.sub(r"\1", apart)
    apart = apart.translate(_DASHES)
    if _DIGIT.search(apart) is None:
        return [found.replace("''", "'") for found in _WORD.findall(small(apart))]
    counted = _LETTER_DIGIT.sub(" ", _COUNT_MISWRITTEN.sub(" ", _COUNT.sub(" ", apart)))
    return [found.replace("''", "'") for found in _WORD.findall(small(counted))]
