"""A date of which only part may be known: the words somebody wrote, and the days it lies between."""

from dataclasses import dataclass
from datetime import date


class DateNotRead(ValueError):
    """The words could not be read as a date; `str()` says in plain words what would be understood."""


@dataclass(frozen=True, slots=True)
class PartialDate:
    """Words as typed, and the earliest and latest day they allow; None leaves that end open.

    No date at all is empty words and two open ends, as in ``PartialDate()``; words with two open ends say
    that the date is not known. Refuses an earliest day after the latest.
    """

    words: str = ""
    earliest: date | None = None
    latest: date | None = None

    def __post_init__(self) -> None:
        if self.earliest and self.latest and self.earliest > self.latest:
            raise ValueError(f"The earliest day, {self.earliest}, is after the latest, {self.latest}.")

    @property
    def is_known(self) -> bool:
        """Whether anything is known of it: at least one end is closed."""
        return self.earliest is not None or self.latest is not None

    @property
    def is_exact(self) -> bool:
        """Whether it is one day."""
        return self.earliest is not None and self.earliest == self.latest

    def surely_before(self, other: "PartialDate") -> bool:
        """Whether every day this may be comes before every day the other may be."""
        return self.latest is not None and other.earliest is not None and self.latest < other.earliest

    def surely_after(self, other: "PartialDate") -> bool:
        """Whether every day this may be comes after every day the other may be."""
        return other.surely_before(self)


def from_columns(words: str | None, earliest: date | None, latest: date | None) -> PartialDate:
    """The partial date kept in three columns."""
    return PartialDate(words or "", earliest, latest)
