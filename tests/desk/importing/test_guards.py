"""Files are guarded before any parser sees them, and told apart whatever wrote them."""

import io
import struct
import zipfile
import zlib

import openpyxl
import pytest

from frondkeep.desk.importing import intake
from frondkeep.desk.importing.intake import FileRefusedError, read_file
from tests.desk.importing.sheets import csv_bytes, xlsx_bytes

ROWS = [["No", "Tag"], ["F1", "Cold Tea"]]
TEXT = ("No", "Tag"), ("F1", "Cold Tea")


def read(name: str, data: bytes) -> tuple[tuple[str, ...], ...]:
    (sheet,) = read_file(name, data)
    return sheet.rows


def with_member(data: bytes, name: str, content: bytes) -> bytes:
    out = io.BytesIO(data)
    with zipfile.ZipFile(out, "a", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(name, content)
    return out.getvalue()


def zip_that_lies(size: int) -> bytes:
    """An archive of a few bytes whose directory says that it unpacks into `size` bytes."""
    squeezed = zlib.compress(b"0" * 10)[2:-4]
    name = b"xl/workbook.xml"
    local = struct.pack("<IHHHHHIIIHH", 0x04034B50, 20, 0, 8, 0, 0, 0, len(squeezed), size, len(name), 0)
    entry = struct.pack(
        "<IHHHHHHIIIHHHHHII",
        0x02014B50,
        20,
        20,
        0,
        8,
        0,
        0,
        0,
        len(squeezed),
        size,
        len(name),
        0,
        0,
        0,
        0,
        0,
        0,
    )
    body = local + name + squeezed
    end = struct.pack("<IHHHHIIH", 0x06054B50, 0, 0, 1, 1, len(entry) + len(name), len(body), 0)
    return body + entry + name + end


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_csv_is_read_by_whatever_sign_divides_it(delimiter: str) -> None:
    assert read("a.csv", f"No{delimiter}Tag\nF1{delimiter}Cold Tea\n".encode()) == TEXT


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_csv_is_read_in_every_encoding_a_spreadsheet_program_writes(encoding: str) -> None:
    (sheet,) = read_file("a.csv", "No,Tag\nF1,Crème Brocade\n".encode(encoding))
    assert sheet.rows[1] == ("F1", "Crème Brocade")


def test_the_encoding_that_was_read_is_told() -> None:
    (sheet,) = read_file("a.csv", "No,Tag\nF1,Crème\n".encode("cp1252"))
    assert sheet.encoding == "Windows-1252"


def test_xlsx_is_read() -> None:
    assert read("a.xlsx", xlsx_bytes(ROWS)) == TEXT


def test_merged_headings_leave_empty_cells() -> None:
    rows = [
        ["Member", None, "How to reach them"],
        ["No", "Name", "E-mail"],
        ["1", "Ada Quill", "a@example.org"],
    ]
    assert read("a.xlsx", xlsx_bytes(rows, merged=["A1:B1"]))[0] == ("Member", "", "How to reach them")


def test_of_a_formula_its_last_result_is_read_never_its_text() -> None:
    assert read("a.xlsx", xlsx_bytes([["No", "Sum"], ["F1", "=1+1"]]))[1] == ("F1",)


def test_dates_and_numbers_become_the_words_a_person_would_type() -> None:
    book = openpyxl.Workbook()
    from datetime import datetime

    book.active.append([datetime(2024, 3, 1), 12.0, 1.5, True])  # noqa: DTZ001 — cells have no zone
    out = io.BytesIO()
    book.save(out)
    assert read("a.xlsx", out.getvalue()) == (("2024-03-01", "12", "1.5", "yes"),)


def test_an_empty_file_is_refused() -> None:
    with pytest.raises(FileRefusedError, match="is empty"):
        read_file("a.csv", b"  \n")


def test_a_sheet_without_rows_is_refused() -> None:
    with pytest.raises(FileRefusedError, match="has no rows"):
        read_file("a.xlsx", xlsx_bytes([]))


def test_a_file_of_another_kind_is_refused_with_what_to_do() -> None:
    with pytest.raises(FileRefusedError, match="save it as XLSX"):
        read_file("plants.ods", b"whatever")


def test_another_archive_called_xlsx_is_refused() -> None:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("content.xml", "<x/>")
    with pytest.raises(FileRefusedError, match="is no XLSX spreadsheet"):
        read_file("a.xlsx", out.getvalue())


def test_a_truncated_file_is_refused() -> None:
    whole = xlsx_bytes(ROWS)
    with pytest.raises(FileRefusedError, match="damaged or cut short"):
        read_file("a.xlsx", whole[: len(whole) // 2])


def test_a_file_of_over_ten_megabytes_is_refused() -> None:
    with pytest.raises(FileRefusedError, match="larger than 10 MB"):
        read_file("a.csv", b"x" * (intake.MOST_BYTES + 1))


def test_a_zip_bomb_is_refused_by_its_directory_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(intake, "parse_apart", lambda *_: pytest.fail("it was handed to the parser"))
    bomb = with_member(xlsx_bytes(ROWS), "xl/media/zeros.bin", b"\0" * 20_000_000)
    with pytest.raises(FileRefusedError, match="unpacks into far more"):
        read_file("a.xlsx", bomb)
    with pytest.raises(FileRefusedError, match="unpacks into far more"):
        read_file("a.xlsx", zip_that_lies(2**31))


def test_an_archive_of_many_members_is_refused() -> None:
    data = xlsx_bytes(ROWS)
    for number in range(intake.MOST_MEMBERS):
        data = with_member(data, f"xl/extra{number}.xml", b"<x/>")
    with pytest.raises(FileRefusedError, match="unpacks into far more"):
        read_file("a.xlsx", data)


def test_a_lone_cell_in_the_farthest_corner_is_refused_without_eating_the_machine() -> None:
    book = openpyxl.Workbook()
    book.active["XFD1048576"] = "here"
    out = io.BytesIO()
    book.save(out)
    with pytest.raises(FileRefusedError, match="more than 20,000 rows"):
        read_file("a.xlsx", out.getvalue())


def test_a_hundred_columns_are_taken_and_no_more() -> None:
    assert len(read("a.csv", ",".join(["x"] * 100).encode())[0]) == 100
    with pytest.raises(FileRefusedError, match="more than 100 columns"):
        read_file("a.csv", ",".join(["x"] * 101).encode())


def test_twenty_thousand_rows_below_the_headings_are_taken_and_no_more() -> None:
    lines = ["No,Tag", *(f"F{number},x" for number in range(20_000))]
    assert len(read("a.csv", "\n".join(lines).encode())) == 20_001
    with pytest.raises(FileRefusedError, match="more than 20,000 rows"):
        read_file("a.csv", "\n".join([*lines, "F20001,x"]).encode())


def test_quoted_cells_may_hold_the_sign_and_line_ends() -> None:
    assert read("a.csv", csv_bytes('No,Tag\nF1,"cold, tea"'))[1] == ("F1", "cold, tea")


def test_a_cell_with_a_nul_is_refused() -> None:
    with pytest.raises(FileRefusedError, match="characters that no list has"):
        read_file("a.csv", b"No,Tag\nF1,\0\n")
