"""Pictures, and files that only look like one."""

from __future__ import annotations

import io
import struct
import zlib

from django.core.files.uploadedfile import SimpleUploadedFile
from PIL import Image


def picture(form: str = "PNG", *, size: tuple[int, int] = (60, 40), colour: str = "green") -> bytes:
    out = io.BytesIO()
    Image.new("RGB", size, colour).save(out, form)
    return out.getvalue()


def upload(content: bytes, name: str = "fern.png", kind: str = "image/png") -> SimpleUploadedFile:
    return SimpleUploadedFile(name, content, content_type=kind)


def cut_short() -> bytes:
    out = io.BytesIO()
    Image.effect_noise((300, 300), 80).convert("RGB").save(out, "JPEG")
    return out.getvalue()[:4000]


def chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def huge_by_its_header(width: int = 20_000, height: int = 15_000) -> bytes:
    """Three hundred megapixels in a hundred bytes."""
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    idat = chunk(b"IDAT", zlib.compress(b"\0" * 1000))
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + idat + chunk(b"IEND", b"")


def with_broken_exif() -> bytes:
    """A JPEG whose notes on the camera are nonsense."""
    plain = picture("JPEG")
    notes = b"Exif\0\0II*\0\x08\0\0\0\xff\xff" + b"\x12\x01\x03\0\xff\xff\xff\xff\xff\xff\xff\xff" * 4
    return plain[:2] + b"\xff\xe1" + struct.pack(">H", len(notes) + 2) + notes + plain[2:]


def with_a_script() -> bytes:
    """A good picture that is also a page: markup in its comment, an archive at its end."""
    good = picture("JPEG")
    words = b"<html><script>alert(1)</script></html>"
    return (
        good[:2] + b"\xff\xfe" + struct.pack(">H", len(words) + 2) + words + good[2:] + b"PK\x03\x04" + words
    )


SVG = b"<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'><script>alert(1)</script></svg>"
NO_PHOTO = "no photo we can read"
DAMAGED = "damaged or cut short"
BAD: dict[str, tuple[bytes, str]] = {
    "words": (b"not a picture", NO_PHOTO),
    "empty": (b"", ""),
    "svg": (SVG, NO_PHOTO),
    "a page called gif": (b"GIF89a" + b"<script>alert(1)</script>", NO_PHOTO),
    "cut short": (cut_short(), DAMAGED),
    "300 megapixels": (huge_by_its_header(), "over 50 million pixels"),
    "a terapixel": (huge_by_its_header(2_000_000_000, 2_000_000_000), "over 50 million pixels"),
    "no pixels": (huge_by_its_header(0, 0), ""),
    "a bitmap": (picture("BMP"), NO_PHOTO),
    "60 MB": (bytes(60 * 1024 * 1024), "larger than 25 MB"),
}
