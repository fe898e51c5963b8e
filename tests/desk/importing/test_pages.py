"""Importing on the pages: files, columns, every row's fate, confirmation."""

import re
import uuid

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from frondkeep.desk.importing import batches
from frondkeep.desk.models import ImportBatch, ImportedRow
from frondkeep.society.models import Member, Role
from specimens.models import Specimen
from tests.cast import make_curator, make_member
from tests.desk.importing.sheets import csv_bytes, plants

GOOD = plants("F2,Silver Tassel,,Ada Quill,,2020,bought,,,,", "F3,Silver Tassel,,Ada Quill,,2021,pup,F2,,,")
MIXED = plants("F2,Silver Tassel,,Ada Quill,,2020,bought,,,,", "F3,x,,Nemo,,31/02/2020,bought,,,,")


@pytest.fixture
def imke(ada: Member) -> Client:
    """The curator, signed in."""
    return signed_in(make_curator())


def signed_in(member: Member) -> Client:
    client = Client()
    client.force_login(member.user)
    return client


def upload(client: Client, **files: str) -> ImportBatch:
    sent = [SimpleUploadedFile(f"{name}.csv", csv_bytes(text)) for name, text in files.items()]
    answer = client.post(reverse("import"), {"files": sent})
    batch = ImportBatch.objects.latest("pk")
    assert answer["Location"] == reverse("import-columns", args=[batch.pk])
    return batch


def chosen(batch: ImportBatch, **changed: str) -> dict[str, str]:
    """The columns form as it is shown, with some answers changed."""
    data = {}
    for sheet in batch.sheets.all():
        data[f"sheet-{sheet.place}-kind"] = sheet.kind
        data[f"sheet-{sheet.place}-heading_row"] = str(sheet.heading_row)
        for key, column in sheet.columns.items():
            data[f"sheet-{sheet.place}-column_{column}"] = key
    return data | {key.replace("__", "-"): value for key, value in changed.items()}


def previewed(client: Client, **files: str) -> ImportBatch:
    batch = upload(client, **files)
    answer = client.post(reverse("import-columns", args=[batch.pk]), chosen(batch))
    assert answer["Location"] == reverse("import-preview", args=[batch.pk])
    return batch


def confirmed(client: Client, batch: ImportBatch, token: uuid.UUID | None = None):
    return client.post(reverse("import-preview", args=[batch.pk]), {"submission": str(token or uuid.uuid4())})


def words_of(answer) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", answer.content.decode()).split())


def test_from_upload_to_the_written_plants(imke: Client) -> None:
    batch = previewed(imke, plants=GOOD)
    assert Specimen.objects.count() == 0
    shown = imke.get(reverse("import-preview", args=[batch.pk]))
    assert "Write 2 new rows" in words_of(shown)
    assert confirmed(imke, batch)["Location"] == reverse("import-done", args=[batch.pk])
    assert Specimen.objects.count() == 2
    assert "Written: 2 plants" in words_of(imke.get(reverse("import-done", args=[batch.pk])))


def test_columns_show_what_was_understood_with_a_few_cells(imke: Client) -> None:
    batch = upload(imke, plants=GOOD)
    shown = words_of(imke.get(reverse("import-columns", args=[batch.pk])))
    assert "the society’s old number" in shown
    assert "F2; F3" in shown


def test_a_column_corrected_by_hand_is_read_as_chosen(imke: Client) -> None:
    batch = upload(imke, plants="No,Tag,Kept by,Zzz\nF2,x,Ada Quill,on a stump")
    imke.post(reverse("import-columns", args=[batch.pk]), chosen(batch, **{"sheet__0__column_3": "mount"}))
    confirmed(imke, batch)
    assert Specimen.objects.get().mount == "on a stump"


def test_one_thing_in_two_columns_is_answered_at_the_second(imke: Client) -> None:
    batch = upload(imke, plants="No,Tag,Kept by,Zzz\nF2,x,Ada Quill,y")
    answer = imke.post(
        reverse("import-columns", args=[batch.pk]), chosen(batch, **{"sheet__0__column_3": "label"})
    )
    assert answer.status_code == 422
    assert "“Tag” holds this already" in words_of(answer)


def test_what_is_needed_and_missing_is_answered(imke: Client) -> None:
    batch = upload(imke, pieces="No,Pup of,Taken\nD1,F1,2020")
    answer = imke.post(
        reverse("import-columns", args=[batch.pk]), chosen(batch, **{"sheet__0__column_1": ""})
    )
    assert answer.status_code == 422
    assert "No column holds: pup of" in words_of(answer)


def test_another_kind_is_looked_at_again_before_any_row_is_read(imke: Client) -> None:
    batch = upload(imke, plants=GOOD)
    answer = imke.post(
        reverse("import-columns", args=[batch.pk]), chosen(batch, **{"sheet__0__kind": "pieces"})
    )
    assert answer["Location"] == reverse("import-columns", args=[batch.pk])
    assert batch.sheets.get().kind == "pieces"
    assert ImportedRow.objects.count() == 0


def test_a_sheet_about_nothing_of_ours_is_left_out_by_itself(imke: Client) -> None:
    batch = previewed(imke, plants=GOOD, bills="what,how much\nlamps,12")
    assert [sheet.kind for sheet in batch.sheets.all()] == ["plants", ""]
    confirmed(imke, batch)
    assert Specimen.objects.count() == 2


def test_a_refused_row_is_shown_with_column_value_and_reason_and_left_out(imke: Client) -> None:
    batch = previewed(imke, plants=MIXED)
    shown = words_of(imke.get(reverse("import-preview", args=[batch.pk]), {"show": "refused"}))
    assert "When : “31/02/2020” — There is no 31 February 2020." in shown
    assert "Silver Tassel" not in shown
    confirmed(imke, batch)
    assert [plant.society_number for plant in Specimen.objects.all()] == ["F2"]
    assert "There is no 31 February 2020" in words_of(imke.get(reverse("import-done", args=[batch.pk])))


def test_a_second_click_writes_nothing_twice(imke: Client) -> None:
    batch, token = previewed(imke, plants=plants(",x,,Ada Quill,,2020,bought,,,,")), uuid.uuid4()
    answers = [confirmed(imke, batch, token) for _ in range(3)]
    assert {answer["Location"] for answer in answers} == {reverse("import-done", args=[batch.pk])}
    assert Specimen.objects.count() == 1


def test_the_same_file_again_has_nothing_to_write(imke: Client) -> None:
    confirmed(imke, previewed(imke, plants=GOOD))
    again = previewed(imke, plants=GOOD)
    shown = words_of(imke.get(reverse("import-preview", args=[again.pk])))
    assert "There is nothing new in these sheets. Nothing will change." in shown
    assert "new row" not in shown


def test_records_that_changed_since_the_preview_are_shown_before_anything_is_written(imke: Client) -> None:
    first, second = previewed(imke, plants=GOOD), previewed(imke, plants=GOOD)
    confirmed(imke, first)
    answer = confirmed(imke, second)
    assert answer.status_code == 409
    assert "some rows fare otherwise now" in words_of(answer)
    assert Specimen.objects.count() == 2
    assert set(second.rows.values_list("fate", flat=True)) == {"on record"}


def test_long_sheets_are_read_step_by_step(imke: Client, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(batches, "STEP", 2)
    batch = previewed(imke, plants=plants(*(f"F{n},x,,Ada Quill,,,bought,,,," for n in range(2, 7))))
    read = []
    while ImportBatch.objects.get(pk=batch.pk).state == ImportBatch.State.READING:
        read.append(batch.rows.count())
        imke.post(reverse("import-read-on", args=[batch.pk]))
    assert read == [2, 4]
    assert batch.rows.filter(fate="new").count() == 5


def test_circles_across_steps_are_found(imke: Client, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(batches, "STEP", 1)
    batch = previewed(imke, plants=plants("F2,x,,Ada Quill,,,pup,F3,,,", "F3,x,,Ada Quill,,,pup,F2,,,"))
    imke.post(reverse("import-read-on", args=[batch.pk]))
    assert set(batch.rows.values_list("fate", flat=True)) == {"refused"}


def test_no_file_and_bad_files_are_answered_where_they_were_chosen(imke: Client) -> None:
    assert imke.post(reverse("import"), {}).status_code == 422
    answer = imke.post(reverse("import"), {"files": SimpleUploadedFile("a.ods", b"x")})
    assert answer.status_code == 422
    assert "save it as XLSX" in words_of(answer)
    assert ImportBatch.objects.count() == 0


def test_the_sheets_content_goes_when_it_is_written(imke: Client) -> None:
    batch = previewed(imke, plants=MIXED)
    confirmed(imke, batch)
    assert batch.sheets.get().rows == []
    assert batch.rows.count() == 1


@pytest.mark.parametrize("role", [Role.COMMITTEE, Role.SECRETARY, Role.SPORE_KEEPER, None])
def test_nobody_but_curators_and_administrators_imports(db: None, role: str | None) -> None:
    client = signed_in(make_member("Tove Marsh", *([role] if role else [])))
    assert client.get(reverse("import")).status_code == 404
    assert client.post(reverse("import"), {}).status_code == 404


def test_an_administrator_imports(db: None) -> None:
    assert signed_in(make_member("Root Marsh", Role.ADMINISTRATOR)).get(reverse("import")).status_code == 200


@pytest.mark.parametrize("place", ["import-columns", "import-preview", "import-done"])
def test_somebody_elses_import_is_not_there(imke: Client, place: str) -> None:
    batch = previewed(imke, plants=GOOD)
    other = signed_in(make_curator("Orla Fenn"))
    assert other.get(reverse(place, args=[batch.pk])).status_code == 404


def test_the_preview_costs_the_same_number_of_queries_for_one_row_and_for_many(imke: Client) -> None:
    costs = []
    for count in (1, 40):
        batch = previewed(imke, plants=plants(*(f"G{n},x,,Ada Quill,,,bought,,,," for n in range(count))))
        with CaptureQueriesContext(connection) as queries:
            imke.get(reverse("import-preview", args=[batch.pk]))
        costs.append(len(queries))
    assert costs[0] == costs[1]
