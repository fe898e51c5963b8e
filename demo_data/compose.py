"""Write the society's spreadsheets next to this file: ``python -m demo_data.compose [FOLDER]``."""

import sys
from pathlib import Path

from demo_data.chance import Chance
from demo_data.contradictions import Contradictions
from demo_data.crosses import cross_rows
from demo_data.cultivars import name_rows
from demo_data.divisions import keep_division_book, piece_rows, spread
from demo_data.founders import plant_founders
from demo_data.ledger import decide_fates, number_all, plant_rows
from demo_data.meetings import meeting_rows
from demo_data.people import MERGED_HEADINGS, member_rows
from demo_data.planted import planted_rows
from demo_data.plants import Garden
from demo_data.show import ENTRY_HEADINGS, PROBLEM_HEADINGS, Entries, schedule_rows
from demo_data.special_cases import add_hidden_and_shared, divide_on_purpose
from demo_data.spores import pot_up_together, sow, sowing_rows
from demo_data.spreadsheets import csv_bytes, xlsx_bytes
from demo_data.tags import write_tags

SEED = 1863


def grow() -> tuple[Garden, Contradictions]:
    """Return the finished garden and what was made to disagree in it."""
    garden = Garden(Chance(SEED))
    plant_founders(garden)
    divide_on_purpose(garden)
    spread(garden, 75)
    sow(garden)
    pot_up_together(garden, 10)
    write_tags(garden.plants, garden.chance)
    keep_division_book(garden, 149)
    wrong = Contradictions(garden)
    wrong.plant_all()
    write_tags(garden.plants, garden.chance)
    decide_fates(garden)
    number_all(garden)
    add_hidden_and_shared(garden)
    return garden, wrong


def compose() -> dict[str, bytes]:
    """Return every file's bytes by its name."""
    garden, wrong = grow()
    entries = Entries(garden)
    entries.fill()
    return {
        "members.xlsx": xlsx_bytes(member_rows(), sheet="Members", merged=MERGED_HEADINGS),
        "names.csv": csv_bytes(name_rows(Chance(SEED)), encoding="cp1252", delimiter=";"),
        "planted.csv": csv_bytes(planted_rows()),
        "plants.csv": csv_bytes(plant_rows(garden), encoding="utf-8-sig"),
        "pieces.xlsx": xlsx_bytes(piece_rows(garden), sheet="Pups and divisions"),
        "sowings.csv": csv_bytes(sowing_rows(garden)),
        "crosses.csv": csv_bytes(cross_rows(garden)),
        "meetings.csv": csv_bytes(meeting_rows(Chance(SEED))),
        "schedule.csv": csv_bytes(schedule_rows()),
        "entries.csv": csv_bytes([ENTRY_HEADINGS, *entries.rows]),
        "contradictions.csv": csv_bytes(wrong.rows()),
        "show_problems.csv": csv_bytes([PROBLEM_HEADINGS, *entries.problems]),
    }


def main(folder: Path) -> None:
    """Write all the files into the folder."""
    for name, content in compose().items():
        (folder / name).write_bytes(content)


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).parent)
