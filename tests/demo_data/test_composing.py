"""The spreadsheets come out of the composer byte for byte, whatever the machine."""

import io
import os
import subprocess
import sys
import zipfile
from pathlib import Path

import openpyxl
import pytest

from demo_data.compose import compose, main
from tests.demo_data.files import FOLDER


@pytest.fixture(scope="module")
def composed() -> dict[str, bytes]:
    return compose()


def test_composing_again_gives_the_kept_files(composed: dict[str, bytes]) -> None:
    for name, content in composed.items():
        assert (FOLDER / name).read_bytes() == content, f"{name} is not what the composer writes"


def test_no_spreadsheet_is_kept_that_the_composer_does_not_write(composed: dict[str, bytes]) -> None:
    kept = {path.name for path in FOLDER.iterdir() if path.suffix in (".csv", ".xlsx")}
    assert kept == set(composed)


def test_the_order_of_hashing_does_not_matter(tmp_path: Path, composed: dict[str, bytes]) -> None:
    command = [sys.executable, "-m", "demo_data.compose", str(tmp_path)]
    subprocess.run(command, check=True, cwd=FOLDER.parent, env={**os.environ, "PYTHONHASHSEED": "7"})
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == composed


def test_the_files_are_written_where_asked(tmp_path: Path, composed: dict[str, bytes]) -> None:
    main(tmp_path)
    assert {path.name for path in tmp_path.iterdir()} == set(composed)


def test_every_spreadsheet_has_the_encoding_its_office_program_would_give(composed: dict[str, bytes]) -> None:
    assert composed["plants.csv"].startswith(b"\xef\xbb\xbf")
    assert "Crème Brocade".encode("cp1252") in composed["names.csv"]
    assert composed["names.csv"].splitlines()[0].count(b";") == 15


@pytest.mark.parametrize("name", ["members.xlsx", "pieces.xlsx"])
def test_a_workbook_holds_text_cells_only(composed: dict[str, bytes], name: str) -> None:
    sheet = openpyxl.load_workbook(io.BytesIO(composed[name])).worksheets[0]
    kinds = {cell.data_type for row in sheet.iter_rows() for cell in row if cell.value is not None}
    assert kinds == {"s"}


def test_a_workbook_bears_no_clock(composed: dict[str, bytes]) -> None:
    with zipfile.ZipFile(io.BytesIO(composed["members.xlsx"])) as archive:
        assert {entry.date_time for entry in archive.infolist()} == {(2026, 1, 1, 0, 0, 0)}


def test_the_members_sheet_has_a_title_and_merged_headings(composed: dict[str, bytes]) -> None:
    sheet = openpyxl.load_workbook(io.BytesIO(composed["members.xlsx"])).worksheets[0]
    assert {str(area) for area in sheet.merged_cells.ranges} == {"A1:I1", "A2:C2", "D2:E2", "F2:I2"}
    assert str(sheet["A1"].value).startswith("Marrowmere Fern Society")


def test_no_cell_would_be_taken_for_a_formula(composed: dict[str, bytes]) -> None:
    for name in composed:
        if name.endswith(".csv"):
            text = composed[name].decode("cp1252" if name == "names.csv" else "utf-8-sig")
            cells = text.replace("\r\n", ";" if name == "names.csv" else ",").split(
                ";" if name == "names.csv" else ","
            )
            assert not [cell for cell in cells if cell.startswith(("=", "+", "@"))]
