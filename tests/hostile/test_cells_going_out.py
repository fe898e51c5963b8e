"""A cell that a spreadsheet program would run goes out as text, and comes back as it was."""

from __future__ import annotations

import csv
import io
from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from frondkeep.desk.importing.headings import understand
from frondkeep.desk.importing.intake import read_file
from frondkeep.desk.inert_cells import inert, revive
from tests.cast import make_plant

pytestmark = pytest.mark.django_db
RUN = (
    "=1+1",
    "+1",
    "-1",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    "＝1+1",
    "−1",
    '=HYPERLINK("http://x")',
    "'=1",
    "''=1",
)
STARTS = tuple("=+-@\t\r\n\0＝−")


def table(reply) -> list[list[str]]:
    return list(csv.reader(io.StringIO(reply.getvalue().decode("utf-8-sig"), newline="")))


def test_a_cell_that_starts_with_nul_is_made_inert() -> None:
    # Not by way of a record: no label keeps a NUL, and PostgreSQL takes none.
    assert not inert("\0=1").startswith(STARTS)
    assert revive(inert("\0=1")) == "\0=1"


def test_no_cell_of_the_table_starts_a_formula(world: SimpleNamespace) -> None:
    for words in RUN:
        make_plant(world.people["member"], label_text=words, society_number=words[:40])
    rows = table(world.clients["curator"].get("/plants.csv"))
    assert len(rows) > len(RUN)
    assert not [cell for row in rows for cell in row if cell.startswith(STARTS)]


def test_our_own_table_is_read_back_as_it_was(world: SimpleNamespace) -> None:
    typed = [words for words in RUN if words.isprintable()]
    for words in typed:
        make_plant(world.people["member"], label_text=words)
    sent = world.clients["curator"].get("/plants.csv").getvalue()
    (sheet,) = read_file("plants.csv", sent)
    read = [cells["label"] for _, cells in understand(sheet).records()]
    assert set(typed) <= set(read)


@given(st.text(max_size=12))
def test_any_text_goes_out_and_comes_back(text: str) -> None:
    assert not inert(text).startswith(STARTS)
    assert revive(inert(text)) == text
