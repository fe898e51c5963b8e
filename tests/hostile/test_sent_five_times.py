"""A form that five impatient taps send five times is taken once, and each tap is answered like the first."""

from __future__ import annotations

import uuid
from types import SimpleNamespace

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from frondkeep.desk.models import ImportBatch
from frondkeep.society.models import Submission
from specimens.models import Photo, Specimen
from tests.hostile.bodies import FORMS, OF_EVERYBODY, ready_for_forms
from tests.hostile.pictures import picture, upload
from tests.hostile.records import changed, records
from tests.test_doors import ROLES

pytestmark = pytest.mark.django_db
ALL = FORMS | OF_EVERYBODY
CREATING = sorted(name for name, form in ALL.items() if form.creates)


@pytest.fixture
def ready(world: SimpleNamespace) -> SimpleNamespace:
    return ready_for_forms(world)


def again(body: dict[str, object]) -> dict[str, object]:
    """The same form, its file at its beginning."""
    return body | ({"file": upload(picture())} if "file" in body else {})


@pytest.mark.parametrize("name", CREATING)
def test_five_taps_are_one(name: str, ready: SimpleNamespace) -> None:
    form = ALL[name]
    client, url, body = ready.clients[form.may], form.url(ready), form.body(ready)
    first = client.post(url, again(body))
    assert first.status_code == 302
    before = records()
    for _ in range(4):
        reply = client.post(url, again(body))
        assert reply.status_code == 302, reply.content.decode()[:3000]
        assert reply["Location"] == first["Location"]
    assert not changed(before)


@pytest.mark.parametrize("name", CREATING)
def test_the_id_of_somebody_elses_form_takes_nothing(name: str, ready: SimpleNamespace) -> None:
    """Neither is anything written, nor is what the other wrote told."""
    form = ALL[name]
    url, body = form.url(ready), form.body(ready)
    other = next(role for role in ("spores", *ROLES) if role != form.may)
    Submission.objects.create(
        token=body["submission"], user=ready.people[other].user, purpose="other", result=["x"]
    )
    before = records()
    client = ready.clients[form.may]
    client.raise_request_exception = False
    assert client.post(url, again(body)).status_code in (403, 409, 422)
    assert not changed(before)


def test_an_import_confirmed_five_times_is_written_once(ready: SimpleNamespace) -> None:
    client = ready.clients["curator"]
    sheet = SimpleUploadedFile("plants.csv", b"Tag,Kept by,How\nCold Tea,Member,bought\n")
    client.post("/import/", {"files": sheet})
    batch = ImportBatch.objects.latest("pk")
    kept = batch.sheets.get()
    columns = {f"sheet-0-column_{column}": key for key, column in kept.columns.items()}
    client.post(
        f"/import/{batch.pk}/columns/", {"sheet-0-kind": kept.kind, "sheet-0-heading_row": 1} | columns
    )
    count, token = Specimen.objects.count(), str(uuid.uuid4())
    answers = {client.post(f"/import/{batch.pk}/", {"submission": token})["Location"] for _ in range(5)}
    assert answers == {f"/import/{batch.pk}/done/"}
    assert Specimen.objects.count() == count + 1


def test_the_same_photo_in_two_forms_is_one_photo(ready: SimpleNamespace) -> None:
    form = FORMS["photo"]
    count = Photo.objects.count()
    for _ in range(2):
        ready.clients["owner"].post(form.url(ready), form.body(ready))
    assert Photo.objects.count() == count + 1


def test_two_tabs_are_two_forms(ready: SimpleNamespace) -> None:
    form = FORMS["took a pup"]
    count = Specimen.objects.count()
    for _ in range(2):
        ready.clients["owner"].post(form.url(ready), form.body(ready))
    assert Specimen.objects.count() == count + 2
