"""What is said after saving: what was kept, and the dates as they were understood."""

from __future__ import annotations

from collections.abc import Sequence

from django.contrib import messages
from django.http import HttpRequest

from specimens.naming.dates import PartialDate, echo_date


def say_saved(request: HttpRequest, words: str, date: PartialDate | None = None) -> None:
    """A message for the next page; the date's bounds follow where words were read as one."""
    messages.success(request, f"{words} {echo_of(date)}".strip())


def echo_of(date: PartialDate | None) -> str:
    """“We will store …” said of what has been stored; '' where no date was given."""
    return echo_date(date).replace("We will store", "We stored", 1) if date and date.words else ""


def listed_codes(codes: Sequence[str]) -> str:
    """“2026-0142-E and 2026-0143-B”."""
    if len(codes) < 2:
        return "".join(codes)
    return f"{', '.join(codes[:-1])} and {codes[-1]}"
