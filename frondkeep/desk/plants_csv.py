"""The society's plants as a table for a spreadsheet: what the page shows, and nothing it does not."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable

from frondkeep.desk.inert_cells import inert
from frondkeep.desk.plant_lists import ListedPlant
from specimens.services.shown_names import shown_name

COLUMNS = (
    "code",
    "name",
    "what the tag says",
    "how sure",
    "how do you know",
    "how it came",
    "came from",
    "when it came",
    "earliest day",
    "latest day",
    "kept by",
    "state",
    "the society’s old number",
)


def plants_csv(plants: Iterable[ListedPlant]) -> bytes:
    """UTF-8 with a byte-order mark, which spreadsheet programs need to read ‘ and ×."""
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(COLUMNS)
    for plant in plants:
        writer.writerow([inert(cell) for cell in cells(plant)])
    return out.getvalue().encode("utf-8-sig")


def cells(row: ListedPlant) -> list[str]:
    plant, thought = row.plant, row.plant.identification
    return [
        plant.code,
        shown_name(plant).plain,
        plant.label_text,
        thought.get_qualifier_display() if thought and thought.qualifier else "",
        thought.get_ground_display() if thought else "",
        plant.get_came_display(),
        row.origin,
        plant.acquired.words,
        day(plant.acquired.earliest),
        day(plant.acquired.latest),
        row.keeper,
        plant.get_state_display(),
        plant.society_number,
    ]


def day(value: object) -> str:
    return str(value or "")
