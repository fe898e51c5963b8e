"""Eight years of meetings."""

from dataclasses import dataclass
from datetime import date

from demo_data.calendar_words import full_words
from demo_data.chance import Chance
from demo_data.spreadsheets import Row

PLACES = (
    "Marrowmere Institute, upper room",
    "Sedgeby drill hall",
    "Harthollow village room",
    "the society's glasshouse",
)


@dataclass(frozen=True)
class Meeting:
    """One meeting, under the name the sheets call it by."""

    name: str
    day: date
    place: str


def _meetings() -> tuple[Meeting, ...]:
    seasons = (("Spring meeting", 3, 9), ("Summer garden day", 6, 14), ("Autumn sale evening", 10, 8))
    found = []
    for year in range(2019, 2027):
        for place, (name, month, first) in enumerate(seasons):
            day = date(year, month, first + (year * 5) % 7)
            where = "by post" if year == 2020 and place < 2 else PLACES[(year + 2 * place) % len(PLACES)]
            found.append(Meeting(f"{name} {year}", day, where))
    return tuple(found)


MEETINGS = _meetings()


def meeting_rows(chance: Chance) -> list[Row]:
    """The meetings with their headings."""
    return [
        ["Meeting", "Held on", "Place"],
        *([m.name, full_words(m.day, chance), m.place] for m in MEETINGS),
    ]
