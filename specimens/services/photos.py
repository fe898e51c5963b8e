"""Photographs coming in: guarded before they are opened, turned upright, stripped of all they tell of a place."""

from __future__ import annotations

import hashlib
import io
import warnings
from dataclasses import dataclass
from typing import IO

from django.conf import settings
from django.core.files.base import ContentFile
from django.db import transaction
from PIL import Image, ImageOps, UnidentifiedImageError

from frondkeep.society.models import Member, User
from specimens.changes import announce
from specimens.models import Photo, Specimen
from specimens.models.photos import random_key

FORMATS = ("JPEG", "PNG", "WEBP")
MOST_PIXELS = 50_000_000
LONGEST_SIDE = 2000
THUMBNAIL_SIDE = 320
TOO_MANY_PIXELS = "This photo has over 50 million pixels. Send a smaller copy."


class PhotoRefusedError(ValueError):
    """The file is not taken; `str()` says in plain words why."""


@dataclass(frozen=True, slots=True)
class ReadPhoto:
    """A photograph made anew from its pixels alone."""

    jpeg: bytes
    thumbnail: bytes
    width: int
    height: int
    difference_hash: str


def read_photo(upload: IO[bytes], *, size: int) -> ReadPhoto:
    """The picture in a file, at most 2,000 pixels long, upright, without anything else the file held.

    Raises PhotoRefusedError for a file of over 25 MB, one that is no JPEG, PNG or WebP, one cut short, and one
    of over 50 megapixels (told from its header, before its pixels take any memory).
    """
    if size > settings.PHOTO_MAX_BYTES:
        raise PhotoRefusedError(
            f"This photo is larger than {settings.PHOTO_MAX_BYTES // 1024**2} MB. Send a smaller copy."
        )
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of odd notes in the file, which are thrown away
        upright = pixels_of(upload)
    upright.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    small = upright.copy()
    small.thumbnail((THUMBNAIL_SIDE, THUMBNAIL_SIDE))
    return ReadPhoto(
        as_jpeg(upright, 85), as_jpeg(small, 75), upright.width, upright.height, difference_hash(upright)
    )


def pixels_of(upload: IO[bytes]) -> Image.Image:
    """The picture, upright, with nothing else that its file said. Raises PhotoRefusedError."""
    try:
        picture = Image.open(upload, formats=FORMATS)
        if picture.width * picture.height > MOST_PIXELS:
            raise PhotoRefusedError(TOO_MANY_PIXELS)
        picture.load()
        upright = ImageOps.exif_transpose(picture).convert("RGB")
    except PhotoRefusedError:
        raise
    except Image.DecompressionBombError as problem:
        raise PhotoRefusedError(TOO_MANY_PIXELS) from problem
    except UnidentifiedImageError as problem:
        raise PhotoRefusedError(
            "This file is no photo we can read. Send a JPEG, PNG or WebP picture."
        ) from problem
    except Exception as problem:
        # Over a damaged file a decoder breaks off with whatever error it happens to meet.
        raise PhotoRefusedError("This photo is damaged or cut short. Take or send it again.") from problem
    upright.info.clear()  # a comment would be written into the copy
    return upright


def as_jpeg(picture: Image.Image, quality: int) -> bytes:
    out = io.BytesIO()
    picture.save(out, "JPEG", quality=quality, optimize=True)
    return out.getvalue()


def difference_hash(picture: Image.Image) -> str:
    """Sixteen hexadecimal digits: whether each of 8 × 8 grey cells is darker than its right neighbour."""
    cells = picture.convert("L").resize((9, 8), Image.Resampling.BILINEAR)
    grey = cells.tobytes()
    bits = 0
    for row in range(8):
        for column in range(8):
            bits = bits << 1 | (grey[row * 9 + column] < grey[row * 9 + column + 1])
    return f"{bits:016x}"


@transaction.atomic
def add_photo(
    specimen: Specimen,
    photo: ReadPhoto,
    *,
    by: User | None,
    taken_by: Member | None = None,
    shown_to: str = Photo.ShownTo.MEMBERS,
    caption: str = "",
    is_drawing: bool = False,
) -> Photo:
    """Keep a photograph of a plant under a random name. The same picture again is the same photo."""
    digest = hashlib.sha256(photo.jpeg).hexdigest()
    kept = Photo.objects.filter(specimen=specimen, sha256=digest).first()
    if kept is not None:
        return kept
    key = random_key()
    made = Photo(
        key=key,
        specimen=specimen,
        width=photo.width,
        height=photo.height,
        sha256=digest,
        difference_hash=photo.difference_hash,
        taken_by=taken_by,
        shown_to=shown_to,
        caption=caption,
        is_drawing=is_drawing,
        added_by=by,
    )
    made.file.save(f"{key}.jpg", ContentFile(photo.jpeg), save=False)
    made.thumbnail.save(f"{key}-small.jpg", ContentFile(photo.thumbnail), save=False)
    made.save()
    announce("photos", [specimen.pk])
    return made
