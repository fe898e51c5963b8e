"""The society's plants as a table for a spreadsheet: what the page shows, and nothing it does not."""

from __future__ import annotations

import codecs
import csv
import io
import logging
from collections.abc import Iterable, Iterator
from itertools import islice

from django.db.models import QuerySet

from frondkeep.desk.inert_cells import inert
from frondkeep.desk.plant_lists import ListedPlant, listed
from frondkeep.society.models import User
from specimens.models import Specimen
from specimens.services.shown_names import shown_name

exports = logging.getLogger("frondkeep.exports")
A_BATCH = 500
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


def plants_csv(plants: QuerySet[Specimen], *, reader: User) -> Iterator[bytes]:
    """The table a batch of plants at a time, so that neither memory nor patience depends on how many there are.

    UTF-8 with a byte-order mark, which spreadsheet programs need to read ‘ and ×. A fixed number of queries
    a batch.
    """
    yield codecs.BOM_UTF8 + lines([COLUMNS])
    written = plants.with_page_parts().iterator(chunk_size=A_BATCH)
    count = 0
    while batch := list(islice(written, A_BATCH)):
        count += len(batch)
        yield lines(
            [inert(cell) for cell in cells(row)] for row in listed(batch, reader=reader, photos=False)
        )
    exports.info("plants as CSV: %d rows by user %d", count, reader.pk)


def lines(rows: Iterable[Iterable[str]]) -> bytes:
    out = io.StringIO()
    csv.writer(out).writerows(rows)
    return out.getvalue().encode()


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
