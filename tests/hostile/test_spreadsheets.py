"""Whatever calls itself a spreadsheet is read as it is, or refused where it was chosen; nothing is half taken."""

from __future__ import annotations

import io
import re
import zipfile
from types import SimpleNamespace

import openpyxl
import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.http import HttpResponse

from frondkeep.desk.models import ImportBatch
from tests.desk.importing.sheets import xlsx_bytes
from tests.desk.importing.test_guards import with_member, zip_that_lies
from tests.hostile.hostile_words import EVERYWHERE, MARKED_UP, never_live
from tests.hostile.records import changed, records, too_long

pytestmark = pytest.mark.django_db
HEAD = b"No,Tag,Kept by,How\n"
GOOD = HEAD + b"G1,Cold Tea,Member,bought\n"
ROWS = [["No", "Tag", "Kept by", "How"], ["G1", "Cold Tea", "Member", "bought"]]


def sent(world: SimpleNamespace, name: str, data: bytes) -> HttpResponse:
    client = world.clients["curator"]
    client.raise_request_exception = False
    return client.post("/import/", {"files": SimpleUploadedFile(name, data)})


def previewed(world: SimpleNamespace, name: str, data: bytes) -> str:
    """From the file to the preview, with what was understood of its columns."""
    reply = sent(world, name, data)
    assert reply.status_code == 302, reply.content.decode()[:3000]
    batch = ImportBatch.objects.latest("pk")
    client = world.clients["curator"]
    assert never_live(client.get(reply["Location"]).content.decode())
    body: dict[str, object] = {}
    for sheet in batch.sheets.all():
        body |= {
            f"sheet-{sheet.place}-kind": sheet.kind,
            f"sheet-{sheet.place}-heading_row": sheet.heading_row,
        }
        body |= {f"sheet-{sheet.place}-column_{column}": key for key, column in sheet.columns.items()}
    reply = client.post(reply["Location"], body)
    assert reply.status_code == 302, reply.content.decode()[:3000]
    page = client.get(f"/import/{batch.pk}/")
    assert page.status_code == 200
    assert never_live(page.content.decode())
    return words_of(page)


def words_of(answer: HttpResponse) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", answer.content.decode()).split())


def farthest_cell() -> bytes:
    book = openpyxl.Workbook()
    book.active["XFD1048576"] = "here"
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def with_part(data: bytes, part: str, content: bytes) -> bytes:
    """The same archive with one of its parts put in place of the good one."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            new.writestr(name, content if name == part else old.read(name))
    return out.getvalue()


def with_entities(declared: str, used: str) -> bytes:
    """A workbook whose sheet declares entities, and uses one in a cell."""
    sheet = zipfile.ZipFile(io.BytesIO(xlsx_bytes(ROWS))).read("xl/worksheets/sheet1.xml").decode()
    body = sheet.partition("?>")[2] if sheet.startswith("<?xml") else sheet
    cell = f'<row r="3"><c r="A3" t="inlineStr"><is><t>&{used};</t></is></c></row></sheetData>'
    hostile = f"<!DOCTYPE x [{declared}]>{body.replace('</sheetData>', cell)}"
    return with_part(xlsx_bytes(ROWS), "xl/worksheets/sheet1.xml", hostile.encode())


OUTER = '<!ENTITY e SYSTEM "file:///etc/passwd">'
LAUGHING = '<!ENTITY a0 "ha">' + "".join(
    f'<!ENTITY a{number} "{f"&a{number - 1};" * 10}">' for number in range(1, 12)
)


def archive(*names: str) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as made:
        for name in names:
            made.writestr(name, "x")
    return out.getvalue()


REFUSED: dict[str, tuple[str, bytes, str]] = {
    "empty": ("a.csv", b"", "empty"),
    "blank": ("a.csv", b" \n\n", "empty"),
    "only signs": ("a.csv", b",,,\n,,,\n", "no rows"),
    "eleven megabytes": ("a.csv", b"x" * (11 * 1024 * 1024), "larger than 10 MB"),
    "a zip bomb": ("a.xlsx", with_member(xlsx_bytes(ROWS), "xl/media/z.bin", b"\0" * 20_000_000), "unpacks"),
    "an archive that lies": ("a.xlsx", zip_that_lies(2**31), "unpacks"),
    "the farthest cell": ("a.xlsx", farthest_cell(), "20,000 rows"),
    "a nul": ("a.csv", GOOD + b"G2,a\0b,Member,bought\n", "characters that no list has"),
    "two hundred columns": ("a.csv", b",".join([b"x"] * 200), "100 columns"),
    "a cell without an end": ("a.csv", GOOD + b'G2,"' + b"y" * 150_000, "CSV"),
    "an endless word": ("a.csv", GOOD + b"G2," + b"y" * 150_000, "CSV"),
    "an outer entity": ("a.xlsx", with_entities(OUTER, "e"), "could not be read"),
    "entities of entities": ("a.xlsx", with_entities(LAUGHING, "a11"), "could not be read"),
    "a pdf called xlsx": ("a.xlsx", b"%PDF-1.7 whatever", ""),
    "an ods called xlsx": ("a.xlsx", archive("mimetype", "content.xml"), "no XLSX"),
    "an ods": ("a.ods", archive("mimetype", "content.xml"), "XLSX"),
    "an ods called csv": ("a.csv", archive("mimetype", "content.xml"), "no XLSX"),
    "an old workbook": ("a.xls", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600), "XLSX"),
    "broken xml": ("a.xlsx", with_part(xlsx_bytes(ROWS), "xl/workbook.xml", b"<workbook"), "could not be read"),
    "a locked workbook": ("a.xlsx", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600), "XLSX"),
    "no part but one": ("a.xlsx", archive("xl/workbook.xml"), "could not be read"),
    "20,001 rows": ("a.csv", HEAD + b"G,x,Member,bought\n" * 20_001, "20,000 rows"),
}  # fmt: skip


@pytest.mark.parametrize("kind", sorted(REFUSED))
def test_it_is_refused_where_it_was_chosen(kind: str, world: SimpleNamespace) -> None:
    name, data, words = REFUSED[kind]
    before = records()
    reply = sent(world, name, data)
    assert reply.status_code == 422
    page = reply.content.decode()
    assert 'id="id_files_error"' in page
    assert words in page
    assert "root:" not in page
    assert not changed(before)


def test_twenty_thousand_rows_are_taken(world: SimpleNamespace) -> None:
    reply = sent(world, "bills.csv", b"what,how much\n" + b"lamps,12\n" * 20_000)
    assert reply.status_code == 302
    ImportBatch.objects.latest("pk").delete()


@pytest.mark.parametrize(
    "name", ["<script>alert(1)</script>.csv", "x" * 300 + ".csv", "../../a.csv", "a\u202evsc.csv"]
)
def test_a_files_name_is_shown_as_words(name: str, world: SimpleNamespace) -> None:
    assert "Write 1 new row" in previewed(world, name, GOOD)
    assert not too_long()


def test_merged_and_doubled_headings_are_read_by_what_stands_in_them(world: SimpleNamespace) -> None:
    rows = [
        ["Our plants", None, None, None, None],
        ["No", "Tag", "Tag", "Kept by", "How"],
        ["G1", "Cold Tea", "x", "Member", "bought"],
    ]
    assert "Write 1 new row" in previewed(world, "plants.xlsx", xlsx_bytes(rows, merged=["A1:E1"]))


def test_a_sheet_without_headings_is_left_out_until_somebody_says_what_it_holds(
    world: SimpleNamespace,
) -> None:
    before = records()["specimens.Specimen"]
    previewed(world, "x.csv", b"G1,Cold Tea,Member,bought\nG2,Cold Tea,Member,bought\n")
    assert records()["specimens.Specimen"] == before


def test_a_formula_without_its_result_is_an_empty_cell(world: SimpleNamespace) -> None:
    rows = [ROWS[0], ["G1", '=HYPERLINK("http://x","y")', "Member", "bought"]]
    page = previewed(world, "plants.xlsx", xlsx_bytes(rows))
    assert "HYPERLINK" not in page


def test_a_workbook_with_macros_is_read_for_its_cells_alone(world: SimpleNamespace) -> None:
    with_macros = with_member(xlsx_bytes(ROWS), "xl/vbaProject.bin", b"\xd0\xcf\x11\xe0" + bytes(600))
    assert "Write 1 new row" in previewed(world, "plants.xlsm", with_macros)


def test_bytes_of_no_encoding_break_nothing(world: SimpleNamespace) -> None:
    page = previewed(world, "plants.csv", HEAD + b"G1,Cr\xe8me \x81\x8d \xff,Member,bought\n")
    assert "Windows-1252" in page or "new row" in page


def test_rows_full_of_nonsense_are_told_row_by_row(world: SimpleNamespace) -> None:
    import csv

    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(
        [
            "No",
            "Tag",
            "Thought to be",
            "Kept by",
            "From whom",
            "When",
            "How",
            "Parent",
            "Holds",
            "State",
            "Remarks",
        ]
    )
    for words in EVERYWHERE.values():
        plain = words.replace("\0", "")
        writer.writerow([plain] * 11)
        writer.writerow(["", plain, plain, "Member", plain, "2020", "bought", "", "", "", plain])
        writer.writerow(["", "x", "", "Member", "", plain, "pup", plain, "", "", ""])
    page = previewed(world, "plants.csv", out.getvalue().encode())
    assert "characters long" in page
    assert not too_long()
    batch = ImportBatch.objects.latest("pk")
    reply = world.clients["curator"].post(
        f"/import/{batch.pk}/", {"submission": "5b1bbcfe-3e0d-4d8f-9a1c-0d4f6e9d7a11"}
    )
    assert reply.status_code == 302, words_of(reply)[:2000]
    assert not too_long()
    assert never_live(world.clients["curator"].get(reply["Location"]).content.decode())
    assert MARKED_UP in records()["specimens.Specimen"].__repr__()


@pytest.mark.parametrize("column", ["99", "-1", "x", "9" * 5000])
def test_columns_nobody_offered_are_not_read(column: str, world: SimpleNamespace) -> None:
    sent(world, "plants.csv", GOOD)
    batch = ImportBatch.objects.latest("pk")
    body = {"sheet-0-kind": "plants", "sheet-0-heading_row": "1", f"sheet-0-column_{column}": "label"}
    assert world.clients["curator"].post(f"/import/{batch.pk}/columns/", body).status_code in (302, 400, 422)
    body = {"sheet-0-kind": "plants", "sheet-0-heading_row": column}
    assert world.clients["curator"].post(f"/import/{batch.pk}/columns/", body).status_code in (302, 422)


def test_a_plant_that_names_itself_as_its_parent_is_told(world: SimpleNamespace) -> None:
    page = previewed(world, "plants.csv", b"No,Tag,Kept by,How,Parent\nG1,x,Member,pup,G1\n")
    assert "Write" not in page
    assert "G1" in page


def test_the_same_workbook_with_a_harmless_sign_is_taken(world: SimpleNamespace) -> None:
    """So it was the entities that were refused above, and not how the file was made."""
    assert "row 3 &" in previewed(world, "plants.xlsx", with_entities("", "amp"))
