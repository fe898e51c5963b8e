"""The rows a sheet is made of: plain words and numbers, nothing that knows a database."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from frondkeep.sheets.errors import SheetError

PAPERS = {"a4": "a4", "letter": "us-letter"}
STYLES = ("italic", "roman")

Runs = tuple[tuple[str, str], ...]
"""A name in pieces, each with its style: "italic" (and marked as Latin) or "roman"."""


def check_styles(runs: Runs) -> None:
    """Refuse a style we cannot print."""
    for _, style in runs:
        if style not in STYLES:
            raise SheetError(f"“{style}” is no style of a name; use one of {', '.join(STYLES)}")


def check_language(language: str) -> None:
    """Refuse what is no language tag of one or two parts."""
    if not re.fullmatch(r"[A-Za-z]{2,3}(-[A-Za-z]{2})?", language):
        raise SheetError(f"“{language}” is no language we can print; write it as “en” or “en-GB”")


@dataclass(frozen=True, kw_only=True)
class EntryRow:
    """One entry of one class.

    Attributes
    ----------
    number
        The entry number, as it stands on the tag.
    name_runs
        The plant's name in pieces, each with its style: "italic" (and marked as Latin) or "roman".
    exhibitor_number, exhibitor
        Printed on the committee's list only; may be empty.
    plants
        How many plants are staged; printed when it is more than one.
    note
        The committee's remark; never on the judges' copy, for it may name somebody.
    """

    number: int | str
    name_runs: Runs
    exhibitor_number: int | str = ""
    exhibitor: str = ""
    plants: int = 1
    note: str = ""

    def __post_init__(self) -> None:
        check_styles(self.name_runs)

    @property
    def name(self) -> str:
        """The name as one text, without its styles."""
        return "".join(text for text, _ in self.name_runs)


@dataclass(frozen=True, kw_only=True)
class ClassRows:
    """One class of the schedule with its entries, in the order they are printed."""

    number: int | str
    title: str
    section: str = ""
    entries: tuple[EntryRow, ...] = ()


@dataclass(frozen=True, kw_only=True)
class EntryList:
    """All classes of a show, ready to print.

    `printed_at` is printed as given; a datetime is written out ("27 November 2026, 21:04").
    `language` is the tag (BCP 47, "en" or "en-GB") by which a screen reader chooses its voice.
    `large_print` sets everything in 17 points.
    """

    society: str
    show: str
    date_words: str
    venue: str
    printed_at: str | datetime
    classes: tuple[ClassRows, ...]
    paper: str = "a4"
    language: str = "en"
    large_print: bool = False

    def __post_init__(self) -> None:
        if self.paper not in PAPERS:
            raise SheetError(f"we have no paper called “{self.paper}”; use one of {', '.join(PAPERS)}")
        check_language(self.language)

    def rows(self) -> Iterator[tuple[ClassRows, EntryRow]]:
        """Every entry with its class, in printed order."""
        return ((class_, entry) for class_ in self.classes for entry in class_.entries)

    def printed_words(self) -> str:
        """When the sheet was printed, in words."""
        if isinstance(self.printed_at, str):
            return self.printed_at
        return f"{self.printed_at.day} {self.printed_at:%B %Y, %H:%M}"
