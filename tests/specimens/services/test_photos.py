"""Photographs are guarded before they are opened, and keep nothing but their pixels."""

import io
import struct
import zlib

import pytest
from PIL import Image

from specimens.models import Photo
from specimens.services.photos import PhotoRefusedError, add_photo, read_photo
from tests.cast import make_member, make_plant


def picture(width: int = 640, height: int = 480, kind: str = "JPEG", **options: object) -> bytes:
    out = io.BytesIO()
    image = Image.linear_gradient("L").resize((width, height)).convert("RGB")
    image.save(out, kind, **options)
    return out.getvalue()


def read(data: bytes, size: int | None = None):
    return read_photo(io.BytesIO(data), size=len(data) if size is None else size)


def huge_png(width: int, height: int) -> bytes:
    """A PNG whose header promises `width × height` pixels; its data is a few bytes."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", header)
        + chunk(b"IDAT", zlib.compress(b"\0" * 64))
        + chunk(b"IEND", b"")
    )


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_picture_is_made_anew_as_jpeg(kind: str) -> None:
    photo = read(picture(kind=kind))
    assert Image.open(io.BytesIO(photo.jpeg)).format == "JPEG"
    assert (photo.width, photo.height) == (640, 480)
    assert max(Image.open(io.BytesIO(photo.thumbnail)).size) == 320


def test_a_large_picture_is_made_smaller() -> None:
    photo = read(picture(4000, 3000))
    assert (photo.width, photo.height) == (2000, 1500)


def test_place_data_is_dropped_and_the_picture_turned_upright() -> None:
    exif = Image.Exif()
    exif[0x0112] = 6  # turned by a quarter
    exif[0x8825] = {1: "N", 2: (51.0, 30.0, 0.0)}
    photo = read(picture(exif=exif))
    assert (photo.width, photo.height) == (480, 640)
    assert not Image.open(io.BytesIO(photo.jpeg)).getexif()


@pytest.mark.parametrize(
    ("data", "size", "said"),
    [
        (b"this is no picture", None, "no photo we can read"),
        (b"", None, "no photo we can read"),
        (picture()[:-2000], None, "damaged or cut short"),
        (huge_png(20_000, 15_000), None, "over 50 million pixels"),
        (picture(), 60 * 1024 * 1024, "larger than 25 MB"),
        (picture(kind="GIF"), None, "no photo we can read"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", None, "no photo we can read"),
    ],
    ids=["text", "empty", "cut short", "300 megapixels", "60 MB", "another kind", "svg"],
)
def test_what_is_no_photo_is_refused_in_plain_words(data: bytes, size: int | None, said: str) -> None:
    with pytest.raises(PhotoRefusedError, match=said):
        read(data, size)


@pytest.mark.django_db
def test_the_same_picture_twice_is_one_photo() -> None:
    ada = make_member()
    plant = make_plant(ada)
    assert add_photo(plant, read(picture()), by=ada.user) == add_photo(plant, read(picture()), by=ada.user)
    assert Photo.objects.count() == 1


def test_a_scaled_picture_has_nearly_the_same_difference_hash() -> None:
    small, large = read(picture(300, 225)), read(picture(1200, 900))
    assert (int(small.difference_hash, 16) ^ int(large.difference_hash, 16)).bit_count() <= 4
