"""Photos that wait between the steps of a form: browsers forget a chosen file, so the first step keeps it."""

from __future__ import annotations

import secrets
import time
from dataclasses import replace
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core import signing
from django.core.files.uploadedfile import UploadedFile

from frondkeep.society.models import User
from specimens.services.photos import ReadPhoto, read_photo

SALT = "a photo that waits"
KEPT_FOR = 2 * 24 * 60 * 60


class PhotoGoneError(LookupError):
    """The photo waited too long, or is somebody else's."""


def folder() -> Path:
    place = Path(settings.DATA_DIR) / "waiting-photos"
    place.mkdir(mode=0o700, parents=True, exist_ok=True)
    return place


def keep_waiting(upload: UploadedFile, *, user: User) -> str:
    """Read and keep an uploaded picture; returns the ticket it is found by. Raises PhotoRefusedError."""
    forget_old()
    photo = read_photo(upload, size=upload.size or 0)
    key = secrets.token_hex(16)
    (folder() / f"{key}.jpg").write_bytes(photo.jpeg)
    (folder() / f"{key}-small.jpg").write_bytes(photo.thumbnail)
    about = {"key": key, "user": user.pk, "size": [photo.width, photo.height], "hash": photo.difference_hash}
    return signing.dumps(about, salt=SALT)


def read_ticket(ticket: str, *, user: User) -> dict[str, Any]:
    """What a ticket stands for. Raises PhotoGoneError where it was not given to this user, or is too old."""
    try:
        about: dict[str, Any] = signing.loads(ticket, salt=SALT, max_age=KEPT_FOR)
    except signing.BadSignature as problem:
        raise PhotoGoneError from problem
    if about["user"] != user.pk or not (folder() / f"{about['key']}-small.jpg").exists():
        raise PhotoGoneError
    return about


def waiting_photo(ticket: str, *, user: User) -> ReadPhoto:
    """The photo of a ticket. Raises PhotoGoneError."""
    about = read_ticket(ticket, user=user)
    try:
        jpeg, small = ((folder() / f"{about['key']}{end}").read_bytes() for end in (".jpg", "-small.jpg"))
    except FileNotFoundError as problem:
        raise PhotoGoneError from problem
    return replace(EMPTY, jpeg=jpeg, thumbnail=small, **measures(about))


def measures(about: dict[str, Any]) -> dict[str, Any]:
    width, height = about["size"]
    return {"width": width, "height": height, "difference_hash": about["hash"]}


def forget(ticket: str, *, user: User) -> None:
    """Called once the plant's own copy is kept."""
    try:
        key = read_ticket(ticket, user=user)["key"]
    except PhotoGoneError:
        return
    for end in (".jpg", "-small.jpg"):
        (folder() / f"{key}{end}").unlink(missing_ok=True)


def forget_old() -> None:
    """Files left by forms that were never sent again."""
    for path in folder().glob("*.jpg"):
        if path.stat().st_mtime < time.time() - KEPT_FOR:
            path.unlink(missing_ok=True)


EMPTY = ReadPhoto(b"", b"", 0, 0, "")
