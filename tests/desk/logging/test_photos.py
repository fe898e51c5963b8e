"""A photo chosen in the first step goes with its plant; a bad one is told and costs nothing else."""

import io
import os
import time
from pathlib import Path

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from PIL import Image

from frondkeep.desk.logging.waiting_photos import KEPT_FOR, folder
from frondkeep.society.models import Member
from specimens.models import Photo
from tests.desk.conftest import signed_in
from tests.desk.logging.typing import confirmed, filled, logged_plants, sent, text_of

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def _own_folders(settings, tmp_path: Path) -> None:
    settings.DATA_DIR, settings.MEDIA_ROOT = tmp_path, tmp_path / "photos"


def picture(*, size: tuple[int, int] = (60, 40), colour: str = "green") -> bytes:
    out = io.BytesIO()
    Image.new("RGB", size, colour).save(out, "PNG")
    return out.getvalue()


def upload(content: bytes, name: str = "fern.png") -> SimpleUploadedFile:
    return SimpleUploadedFile(name, content, content_type="image/png")


def ticket_in(html: str, number: int = 0) -> str:
    start = html.split(f'name="plants-{number}-photo_kept" value="', 1)[1]
    return start.split('"', 1)[0]


def test_a_photo_waits_while_the_form_is_looked_over(ada: Member) -> None:
    form = filled({"photo": upload(picture())})
    ticket = ticket_in(sent(signed_in(ada), form).content.decode())
    assert not Photo.objects.exists()
    del form["plants-0-photo"]
    form = confirmed(form | {"plants-0-photo_kept": ticket})
    assert signed_in(ada).post("/log/", form).status_code == 302
    photo = Photo.objects.get()
    assert (photo.specimen, photo.taken_by, photo.width) == (logged_plants(form)[0], ada, 60)


@pytest.mark.django_db(transaction=True)
def test_a_photo_waits_no_longer_once_its_plant_is_kept() -> None:
    from tests.cast import make_member

    ada = make_member()
    form = filled({"photo": upload(picture())})
    ticket = ticket_in(sent(signed_in(ada), form).content.decode())
    assert len(list(folder().iterdir())) == 2
    del form["plants-0-photo"]
    form = confirmed(form | {"plants-0-photo_kept": ticket})
    for _ in range(2):
        assert signed_in(ada).post("/log/", form).status_code == 302
    assert list(folder().iterdir()) == []
    assert Photo.objects.count() == 1


def test_a_mistake_elsewhere_keeps_the_photo(ada: Member) -> None:
    html = sent(signed_in(ada), filled({"came": "", "photo": upload(picture())})).content.decode()
    assert ticket_in(html)
    assert "Your photo is kept." in html


def test_another_card_keeps_the_photo(ada: Member) -> None:
    form = filled({"photo": upload(picture())})
    html = signed_in(ada).post("/log/another/", form).content.decode()
    assert ticket_in(html)
    assert "Your photo is kept." in html


def cut_short() -> bytes:
    out = io.BytesIO()
    Image.effect_noise((300, 300), 80).convert("RGB").save(out, "JPEG")
    return out.getvalue()[:4000]


def three_hundred_megapixels() -> bytes:
    out = io.BytesIO()
    Image.new("1", (20_000, 15_000)).save(out, "PNG")
    return out.getvalue()


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"not a picture", "no photo we can read"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "no photo we can read"),
        (cut_short(), "damaged or cut short"),
        (three_hundred_megapixels(), "over 50 million pixels"),
        (bytes(60 * 1024 * 1024), "larger than 25 MB"),
    ],
    ids=["words", "drawing", "cut short", "300 megapixels", "60 MB"],
)
def test_a_bad_photo_is_told_at_its_field_and_the_rest_is_kept(
    ada: Member, content: bytes, words: str
) -> None:
    form = filled({"label_text": "my tag", "photo": upload(content)}, {"photo": upload(picture())})
    response = sent(signed_in(ada), form)
    html = response.content.decode()
    assert response.status_code == 422
    assert words in html
    assert 'href="#id_plants-0-photo"' in html
    assert 'value="my tag"' in html
    assert ticket_in(html, 1)


def test_a_bad_photo_is_told_when_a_card_is_added(ada: Member) -> None:
    html = signed_in(ada).post("/log/another/", filled({"photo": upload(b"no")})).content.decode()
    assert "no photo we can read" in html


def test_a_photo_that_waited_too_long_is_asked_for_again(ada: Member) -> None:
    form = filled({"photo": upload(picture())})
    ticket = ticket_in(sent(signed_in(ada), form).content.decode())
    for path in folder().iterdir():
        os.utime(path, times=(time.time() - KEPT_FOR - 60,) * 2)
    signed_in(ada).post("/log/another/", filled({"photo": upload(picture(colour="red"))}))
    del form["plants-0-photo"]
    response = sent(signed_in(ada), form | {"plants-0-photo_kept": ticket})
    assert response.status_code == 422
    assert "Choose it once more" in text_of(response)


def test_a_ticket_of_somebody_else_is_no_photo(ada: Member, jonas: Member) -> None:
    ticket = ticket_in(sent(signed_in(ada), filled({"photo": upload(picture())})).content.decode())
    for stolen in (ticket, "made:up", "../../secret"):
        response = sent(signed_in(jonas), confirmed(filled({"photo_kept": stolen})))
        assert response.status_code == 422
    assert not Photo.objects.exists()
