"""Headings are found and understood however a society words them."""

from pathlib import Path

import pytest
from django.conf import settings

from frondkeep.desk.importing.headings import understand
from frondkeep.desk.importing.intake import Sheet, read_file
from tests.desk.importing.sheets import tables

DEMO = Path(settings.BASE_DIR) / "demo_data"


@pytest.mark.parametrize(
    ("file", "kind", "row"),
    [
        ("members.xlsx", "members", 3),
        ("meetings.csv", "meetings", 1),
        ("names.csv", "names", 1),
        ("plants.csv", "plants", 1),
        ("pieces.xlsx", "pieces", 1),
        ("sowings.csv", "sowings", 1),
        ("crosses.csv", "crosses", 1),
    ],
)
def test_every_list_of_the_demo_is_recognised_whole(file: str, kind: str, row: int) -> None:
    (sheet,) = read_file(file, (DEMO / file).read_bytes())
    table = understand(sheet)
    assert (table.kind, table.heading_row) == (kind, row)
    assert table.is_recognised
    assert len(table.columns) == sum(bool(cell) for cell in table.headings)


def test_headings_with_slips_accents_and_signs_are_understood() -> None:
    (table,) = tables(list="Acc. Nr.,Tag sayss,Keeper,Reçeived from\nF1,x,Ada,Jo")
    assert table.columns == {"number": 0, "label": 1, "keeper": 2, "from_whom": 3}


def test_a_title_above_the_headings_is_passed_over() -> None:
    (table,) = tables(plants="Our plants in 2026\n\nNo,Tag,Kept by\nF1,x,Ada")
    assert table.heading_row == 2 or table.heading_row == 3
    assert [cells["number"] for _, cells in table.records()] == ["F1"]


def test_a_sheet_about_something_else_is_not_recognised() -> None:
    (table,) = tables(bills="what,how much\nlamps,12")
    assert not table.is_recognised


def test_a_kind_and_a_row_of_headings_given_by_hand_are_kept() -> None:
    sheet = Sheet("x.csv", "", (("Tag", "No"), ("No", "Pup of"), ("D1", "F1")))
    table = understand(sheet, kind="pieces", heading_row=2)
    assert (table.kind, table.heading_row, table.columns) == ("pieces", 2, {"number": 0, "parent": 1})


def test_rows_are_numbered_as_the_spreadsheet_shows_them() -> None:
    (table,) = tables(plants="No,Tag,Kept by\nF1,x,Ada\n,,\nF2,y,Ada")
    assert [number for number, _ in table.records()] == [2, 4]
