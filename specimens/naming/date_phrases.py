"""Phrases about dates: between, or, before, after, about, early, late; and the dates inside them."""

import re
import unicodedata
from datetime import timedelta

from specimens.naming import calendar_spans as calendar
from specimens.naming.calendar_spans import Days, Span
from specimens.naming.date_points import Asking, Reading, read_point, say_day
from specimens.naming.partial_date import DateNotRead
from specimens.naming.relative_dates import read_relative

NOT_KNOWN = "date not known"
_NOT_KNOWN_WORDS = re.compile(
    r"\?{1,3}|--?|n/?a|n[/.]? ?d|nil|none|forgotten|unk|(?:date )?(?:unknown|not known|not recorded)"
    r"|undated|no (?:date|idea)|don'?t know"
)
_LEADING = re.compile(r"(?:in|on|at|during|dated|some ?time in|some time|of) (?!or )")
_ABOUT_BEFORE = re.compile(
    r"(?:(?:about|around|circa|roughly|approximately|approx\.?|ca\.?|c\.) ?|~ ?|c ?(?=\d))"
)
_ABOUT_AFTER = re.compile(r"(?: ?~|[ -]?ish| or so| approx\.?| or thereabouts)$")
_PERHAPS_BEFORE = re.compile(r"(?:probably|perhaps|maybe|possibly|i think|\?) ?")
_PERHAPS_AFTER = re.compile(r"(?: ?\(?\?\)?| probably| perhaps| maybe| i think| ?%)$")
_BEFORE = re.compile(r"(?:before|pre-?|earlier than|prior to) ?")
_AFTER = re.compile(r"(?:after|post-?|later than) ?")
_UNTIL = re.compile(r"(?:by|until|till|up to|on or before|in or before|not later than|no later than) ")
_SINCE = re.compile(r"(?:since|on or after|in or after|not earlier than|not before|from) ")
_OR_EARLIER = re.compile(r" (?:or (?:earlier|before)|and earlier)$")
_OR_LATER = re.compile(r" (?:or (?:later|after)|and later|onwards?)$")
_PART = re.compile(
    r"(?:the )?(?P<part>early|mid|middle|late|beginning|start|end)(?: part)?[ -]"
    r"(?:of |in )?(?:the )?(?P<rest>.+)"
)
_PARTS = {"early": 0, "beginning": 0, "start": 0, "mid": 1, "middle": 1, "late": 2, "end": 2}
_PART_SAID = ("early", "mid", "late")
_STANDARD_LENGTHS = frozenset([28, 29, 30, 31, 90, 91, 92, 365, 366, 3652, 3653])
_BETWEEN = re.compile(
    r"(?:between|from|any time between) (?P<left>.+?) (?:and|to|until|till|-) (?P<right>.+)"
)
_TO = re.compile(
    r"(?P<left>.+?)(?: to | - | until | till |(?<=\d{4})-(?=\d{4}$)|(?<=[a-z])-(?=[a-z]))(?P<right>.+)"
)
_EITHER = re.compile(r"(?:either )?(?P<left>.+?) or (?P<right>.+)")
_EDTF_SIDE = r"(?:\d{2}(?:\d\d|\dx|xx)(?:-(?:\d\d|xx)(?:-(?:\d\d|xx))?)?[?~%]?|\.\.|)"
_EDTF_INTERVAL = re.compile(rf"(?P<left>{_EDTF_SIDE})/(?P<right>{_EDTF_SIDE})", re.ASCII)
_DAY_ALONE = r"\d{1,2}(?:st|nd|rd|th)?"
_MOST_WORDS = 18
_ONE_DAY = timedelta(days=1)


def tidy_words(text: str) -> str:
    """The words in lower case with plain dashes, quotes and single spaces."""
    plain = unicodedata.normalize("NFKC", text).lower()
    plain = re.sub("[\u2010-\u2015\u2212]", "-", plain)
    plain = re.sub("[‘’ʼ`´]", "'", plain).replace("-to-", " to ")
    return " ".join(plain.split()).strip(' .,;:!"“”[]').removeprefix("(").removesuffix(")")


def read_words(text: str, asking: Asking) -> Reading | None:
    """The days that words, as somebody wrote them, may mean, or None if we can read no date in them.

    Raises `DateNotRead` for a day the calendar lacks and for words that may mean two things.
    """
    tidy = tidy_words(text)
    # Nested doubts are tried in several orders, which costs twice as much with every further one.
    return read_phrase(tidy, asking) if tidy.count(" ") < _MOST_WORDS else None


def read_phrase(text: str, asking: Asking) -> Reading | None:
    """The days tidied `text` may mean, or None if it says nothing about days that we can read."""
    if _NOT_KNOWN_WORDS.fullmatch(text):
        return Reading(Span(None, None), NOT_KNOWN)
    return (
        _edtf_interval(text, asking)
        or read_point(text, asking)
        or read_relative(text, asking)
        or _doubtful(text, asking)
        or _between(text, asking)
        or _bounded(text, asking)
        or _part(text, asking)
        or _without_leading_word(text, asking)
    )


def _without_leading_word(text: str, asking: Asking) -> Reading | None:
    found = _LEADING.match(text)
    return read_phrase(text[found.end() :], asking) if found else None


def _inside(text: str, asking: Asking) -> Reading | None:
    """What a phrase speaks of, if its span has two ends."""
    text = text.strip()
    read = read_phrase(text, asking) if text else None
    return read if read and None not in read.span else None


def _closed(read: Reading) -> Days:
    earliest, latest = read.span
    if earliest is None or latest is None:
        raise DateNotRead("We could not read a date with an open end here.")
    return Days(earliest, latest)


def _doubtful(text: str, asking: Asking) -> Reading | None:
    for before, after, word in (
        (_ABOUT_BEFORE, _ABOUT_AFTER, "about"),
        (_PERHAPS_BEFORE, _PERHAPS_AFTER, "perhaps"),
    ):
        found, ending = before.match(text), after.search(text)
        if not found and not ending:
            continue
        rest = text[found.end() :] if found else text[: ending.start()] if ending else ""
        read = _inside(rest, asking)
        if read:
            days = _closed(read) if read.rough else calendar.around(_closed(read))
            return Reading(Span(*days), f"{word} {read.said}" if read.said else "", rough=True)
    return None


def _bounded(text: str, asking: Asking) -> Reading | None:
    for pattern, make in (
        (_BEFORE, _before),
        (_AFTER, _after),
        (_UNTIL, _until),
        (_SINCE, _since),
        (_OR_EARLIER, _until),
        (_OR_LATER, _since),
    ):
        found = pattern.search(text) if pattern.pattern.endswith("$") else pattern.match(text)
        read = _inside(text[: found.start()] + text[found.end() :], asking) if found else None
        if read:
            return make(read)
    return None


def _before(read: Reading) -> Reading:
    first, last = _closed(read)
    return Reading(Span(None, last if read.rough else first - _ONE_DAY), read.said and f"before {read.said}")


def _after(read: Reading) -> Reading:
    first, last = _closed(read)
    return Reading(Span(first if read.rough else last + _ONE_DAY, None), read.said and f"after {read.said}")


def _until(read: Reading) -> Reading:
    return Reading(Span(None, _closed(read).last), read.said and f"{read.said} or earlier")


def _since(read: Reading) -> Reading:
    return Reading(Span(_closed(read).first, None), read.said and f"{read.said} or later")


def _part(text: str, asking: Asking) -> Reading | None:
    found = _PART.fullmatch(text)
    read = _inside(found["rest"], asking) if found else None
    if not found or not read:
        return None
    days, which = _closed(read), _PARTS[found["part"]]
    if (days.last - days.first).days + 1 not in _STANDARD_LENGTHS:
        return None
    return Reading(Span(*calendar.third(days, which)), read.said and f"{_PART_SAID[which]} {read.said}")


def _between(text: str, asking: Asking) -> Reading | None:
    found = _BETWEEN.fullmatch(text) or _TO.fullmatch(text)
    either = None if found else _EITHER.fullmatch(text)
    match = found or either
    if not match:
        return None
    right = _inside(match["right"], asking)
    left = _left(match["left"].strip(), match["right"].strip(), asking) if right else None
    if not left or not right:
        return None
    return _either(left, right) if either else _from_to(left, right)


def _from_to(left: Reading, right: Reading) -> Reading:
    first, last = _closed(left).first, _closed(right).last
    if first > last:
        raise DateNotRead(f"This ends before it begins: from {say_day(first)} to {say_day(last)}.")
    said = f"between {_shortened(left.said, right.said)} and {right.said}"
    return Reading(Span(first, last), said if left.said and right.said else "")


def _either(left: Reading, right: Reading) -> Reading:
    days = (*_closed(left), *_closed(right))
    said = f"{_shortened(left.said, right.said)} or {right.said}"
    # Said first, "about" would be read as of both.
    sayable = left.said and right.said and not left.rough
    return Reading(Span(min(days), max(days)), said if sayable else "")


def _shortened(left: str, right: str) -> str:
    """`June 1992` as `June` where `July 1992` follows."""
    year = re.fullmatch(r"(?P<rest>(?:\d+ )?[A-Z][a-z]+)(?P<year> \d{4})", left)
    same = year and re.fullmatch(rf"(?:\d+ )?[A-Z][a-z]+{year['year']}", right)
    return year["rest"] if year and same else left


def _left(left: str, right: str, asking: Asking) -> Reading | None:
    """The first of two dates; it may leave out what the second says, as in `3 to 5 June 1992`."""
    part, right_part = left.rstrip("-"), _PART.fullmatch(right)
    if part in _PARTS:
        return _inside(f"{part} {right_part['rest']}", asking) if right_part else None
    try:
        read = _inside(left, asking)
    except DateNotRead:
        return _completed(left, right, asking)
    return read or _completed(left, right, asking)


def _completed(left: str, right: str, asking: Asking) -> Reading | None:
    """The first date with the month and year, or the year, of the second."""
    day = re.fullmatch(_DAY_ALONE, left)
    rest = re.fullmatch(rf"{_DAY_ALONE}(?P<rest> (?:of )?[a-z].*)", right)
    if day and rest:
        return _inside(left + rest["rest"], asking)
    year = re.search(r"(?:\d{4}|'?\d\d)$", right, re.ASCII)
    return _inside(f"{left} {year[0]}", asking) if year else None


def _edtf_interval(text: str, asking: Asking) -> Reading | None:
    """`2004-06/2006`, `../1985`, `1985/` (EDTF level 1). An empty side and `..` both leave that end open."""
    found = _EDTF_INTERVAL.fullmatch(text)
    if not found or len(text) < 5:
        return None
    left, right = (_side(found[name], asking) for name in ("left", "right"))
    if left and right:
        return _from_to(left, right)
    if left:
        return _since(left)
    return _until(right) if right else None


def _side(text: str, asking: Asking) -> Reading | None:
    return None if text in ("", "..") else _inside(text, asking)
