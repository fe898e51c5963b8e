"""Photos: added by whoever keeps the plant, looked at by those they are for."""

import io

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from PIL import Image

from frondkeep.society.models import Member
from specimens.models import Photo, SeenBy
from tests.cast import make_plant, token
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def _photos_elsewhere(settings, tmp_path) -> None:
    settings.MEDIA_ROOT = tmp_path


def picture(name: str = "fern.jpg") -> SimpleUploadedFile:
    out = io.BytesIO()
    Image.new("RGB", (400, 300), "green").save(out, "JPEG")
    return SimpleUploadedFile(name, out.getvalue(), content_type="image/jpeg")


def add(member: Member, plant, **more: object):
    form = {"submission": str(token()), "file": picture(), "shown_to": "members", "mine": "on"} | more
    return signed_in(member).post(f"/plants/{plant.code}/photo/", form)


def status(member: Member, photo: Photo) -> list[int]:
    client = signed_in(member)
    answers = [client.get(f"/photos/{photo.key}/{size}") for size in ("", "small/")]
    for answer in answers:
        answer.getvalue()  # reads a picture to its end, which closes its file
    return [answer.status_code for answer in answers]


def test_a_photo_shows_on_the_page_and_in_the_list(ada: Member) -> None:
    plant = make_plant(ada)
    assert add(ada, plant).status_code == 302
    photo = Photo.objects.get()
    assert photo.taken_by == ada
    client = signed_in(ada)
    assert f"/photos/{photo.key}/" in client.get(f"/plants/{plant.code}/").content.decode()
    assert f"/photos/{photo.key}/small/" in client.get("/plants/?photo=on").content.decode()


def test_a_photo_is_served_so_that_nothing_in_it_can_run(ada: Member) -> None:
    add(ada, make_plant(ada))
    response = signed_in(ada).get(f"/photos/{Photo.objects.get().key}/")
    assert response["Content-Type"] == "image/jpeg"
    assert response["X-Content-Type-Options"] == "nosniff"
    assert "sandbox" in response["Content-Security-Policy"]
    assert "private" in response["Cache-Control"]
    assert response.getvalue().startswith(b"\xff\xd8")


def test_a_photo_of_a_plant_not_shared_is_not_there_for_others(
    ada: Member, jonas: Member, curator: Member
) -> None:
    add(ada, make_plant(ada, seen_by=SeenBy.KEEPER))
    photo = Photo.objects.get()
    assert status(ada, photo) == status(curator, photo) == [200, 200]
    assert status(jonas, photo) == [404, 404]


def test_a_photo_for_nobody_is_its_keepers_alone(ada: Member, jonas: Member, curator: Member) -> None:
    plant = make_plant(ada)
    add(ada, plant, shown_to="nobody")
    photo = Photo.objects.get()
    assert status(ada, photo) == [200, 200]
    assert status(jonas, photo) == status(curator, photo) == [404, 404]
    assert photo.key not in signed_in(jonas).get("/plants/").content.decode()
    assert signed_in(jonas).get("/plants/?photo=on").context["count"] == 0


def test_a_file_that_is_no_photo_is_refused_with_what_was_typed(ada: Member) -> None:
    plant = make_plant(ada)
    response = add(ada, plant, file=SimpleUploadedFile("x.jpg", b"no picture"), caption="in spring")
    html = response.content.decode()
    assert response.status_code == 422
    assert "no photo we can read" in html
    assert 'value="in spring"' in html
    assert not Photo.objects.exists()


def test_the_form_sent_twice_keeps_one_photo(ada: Member) -> None:
    plant, same = make_plant(ada), str(token())
    add(ada, plant, submission=same)
    add(ada, plant, submission=same)
    assert Photo.objects.count() == 1


def test_a_drawing_is_said_to_be_one(ada: Member) -> None:
    plant = make_plant(ada)
    add(ada, plant)
    photo = Photo.objects.get()
    photo.is_drawing = True
    photo.save()
    client = signed_in(ada)
    assert "Drawn from its traits" in client.get(f"/plants/{plant.code}/").content.decode()
    assert client.get("/plants/?photo=on").context["count"] == 0
