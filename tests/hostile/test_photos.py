"""What is no photo, or far too much of one, is told at its field; of a good one the pixels alone are kept."""

from __future__ import annotations

import io
from contextlib import suppress
from types import SimpleNamespace

import pytest
from hypothesis import HealthCheck, given, seed, settings
from hypothesis import strategies as st
from PIL import Image

from specimens.models import Photo
from specimens.services.photos import PhotoRefusedError, read_photo
from tests.cast import token
from tests.desk.logging.typing import filled
from tests.hostile.bodies import FORMS
from tests.hostile.pictures import BAD, picture, upload, with_a_script, with_broken_exif
from tests.hostile.records import changed, photo_files, records

pytestmark = pytest.mark.django_db
ODD_NAMES = ("fern.svg", "fern.php", "../../fern.png", "fern.png\0.exe", "x" * 500 + ".png", "", "fern")


@pytest.mark.parametrize("kind", sorted(BAD))
def test_on_the_plants_page_it_is_told_at_its_field(kind: str, world: SimpleNamespace) -> None:
    content, words = BAD[kind]
    before, files = records(), photo_files()
    body = {"submission": token(), "file": upload(content), "shown_to": "members", "caption": "my caption"}
    reply = world.clients["owner"].post(FORMS["photo"].url(world), body)
    page = reply.content.decode()
    assert reply.status_code == 422
    assert words in page
    assert 'id="id_file_error"' in page
    assert 'value="my caption"' in page
    assert not changed(before)
    assert photo_files() == files


@pytest.mark.parametrize("kind", sorted(BAD))
def test_with_a_plant_logged_it_is_told_on_its_card(kind: str, world: SimpleNamespace) -> None:
    content, words = BAD[kind]
    before = records()
    form = filled({"label_text": "my tag", "photo": upload(content)}) | {"confirmed": "yes"}
    reply = world.clients["owner"].post("/log/", form)
    page = reply.content.decode()
    assert reply.status_code == 422
    assert words in page
    assert 'id="id_plants-0-photo_error"' in page
    assert 'value="my tag"' in page
    assert not changed(before)


@pytest.mark.parametrize("name", ODD_NAMES)
def test_a_files_own_name_counts_for_nothing(name: str, world: SimpleNamespace) -> None:
    body = {
        "submission": token(),
        "shown_to": "members",
        "file": upload(picture("JPEG"), name or "x", "text/html"),
    }
    assert world.clients["owner"].post(FORMS["photo"].url(world), body).status_code == 302
    kept = Photo.objects.latest("pk")
    assert kept.file.name == f"{kept.key}.jpg"


@pytest.mark.parametrize("make", [with_a_script, with_broken_exif])
def test_only_the_pixels_are_kept(make, world: SimpleNamespace) -> None:
    body = {"submission": token(), "shown_to": "members", "file": upload(make())}
    assert world.clients["owner"].post(FORMS["photo"].url(world), body).status_code == 302
    kept = Photo.objects.latest("pk")
    reply = world.clients["owner"].get(f"/photos/{kept.key}/")
    served = reply.getvalue()
    assert b"script" not in served
    assert b"PK\x03\x04" not in served
    assert b"Exif" not in served
    assert reply["Content-Type"] == "image/jpeg"
    assert reply["X-Content-Type-Options"] == "nosniff"
    assert "sandbox" in reply["Content-Security-Policy"]


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "PA", "RGBA", "CMYK", "I;16", "I"])
def test_every_kind_of_pixel_is_read(mode: str) -> None:
    base = Image.new("RGB", (30, 20), "green")
    form = "JPEG" if mode == "CMYK" else "PNG"
    made = (
        base.convert("I").convert("I;16")
        if mode == "I;16"
        else base.convert("P").convert("PA")
        if mode == "PA"
        else base.convert(mode)
    )
    out = io.BytesIO()
    try:
        made.save(out, form)
    except OSError:
        pytest.skip("this kind of picture has no file")
    assert read_photo(io.BytesIO(out.getvalue()), size=out.tell()).width == 30


@seed(20261125)
@settings(max_examples=150, deadline=None, database=None, suppress_health_check=list(HealthCheck))
@given(
    form=st.sampled_from(["PNG", "JPEG", "WEBP"]),
    places=st.lists(st.tuples(st.floats(0, 1, exclude_max=True), st.integers(0, 255)), max_size=12),
    cut=st.floats(0.1, 1),
)
def test_a_damaged_picture_is_read_or_refused_in_words(
    form: str, places: list[tuple[float, int]], cut: float
) -> None:
    content = bytearray(WHOLE[form])
    for place, byte in places:
        content[int(place * len(content))] = byte
    data = bytes(content[: max(1, int(cut * len(content)))])
    with suppress(PhotoRefusedError):
        assert read_photo(io.BytesIO(data), size=len(data)).width > 0


WHOLE = {form: picture(form) for form in ("PNG", "JPEG", "WEBP")}
