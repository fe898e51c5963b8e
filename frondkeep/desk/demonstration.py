"""The invented society of the demo: imported from its spreadsheets like any other, and given sign-ins."""

from __future__ import annotations

import io
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

from django.conf import settings
from django.contrib.auth.hashers import make_password
from django.core.management.base import CommandError
from django.db import connection, transaction
from django.db.models import Count

from frondkeep.desk.importing.folder import read_tables
from frondkeep.desk.importing.planning import Plan, Planning
from frondkeep.desk.importing.writing import write_plan
from frondkeep.society.models import Member, Role, Society, User
from specimens.changes import announcing_once
from specimens.models import Photo, Specimen
from specimens.portraits import draw_portrait, portrait_png
from specimens.services.photos import ReadPhoto, add_photo, read_photo
from specimens.services.portrait_traits import Sitter, sitters_for_plants

FOLDER = Path(settings.BASE_DIR) / "demo_data"
# Their order does not matter to the import; it is the order in which progress is told.
FILES = (
    "members.xlsx",
    "meetings.csv",
    "names.csv",
    "plants.csv",
    "pieces.xlsx",
    "sowings.csv",
    "crosses.csv",
    "schedule.csv",
    "entries.csv",
)
PASSWORD = "spores on the sill"  # noqa: S105 — printed on purpose: everybody may look at the demo
DRAWINGS = 60
DRAWING_WIDTH = 400
Say = Callable[[str], None]


@dataclass(frozen=True, slots=True)
class SignIn:
    """Somebody to look at the demo as."""

    role: str
    name: str


def marker() -> Path:
    """Says that the database beside it holds the demo and nothing else."""
    return Path(settings.DATA_DIR) / "holds-the-demo"


def refuse_a_real_society() -> None:
    """Raises CommandError where the database holds a society that is not the demo's."""
    if Member.objects.exists() and not marker().exists():
        raise CommandError(
            "This database holds a society already; the demo leaves it alone. Set another DATA_DIR."
        )


def clear() -> None:
    """Remove the demo's database and photographs, and nothing else."""
    database = Path(str(connection.settings_dict["NAME"]))
    if connection.vendor != "sqlite" or not marker().exists():
        raise CommandError("--fresh only removes a demo in its own SQLite file; there is none here.")
    connection.close()
    for path in (
        database,
        *(database.with_name(database.name + end) for end in ("-wal", "-shm", "-journal")),
    ):
        path.unlink(missing_ok=True)
    for photo in Path(settings.MEDIA_ROOT).glob("*.jpg"):
        photo.unlink()


def fill(say: Say) -> None:
    """Import the society, unless it is there; draw its photographs, unless they are."""
    refuse_a_real_society()
    marker().touch()
    if not Member.objects.exists():
        import_society(say)
        name_society()
    if not Photo.objects.filter(is_drawing=True).exists():
        say(f"Drawing {draw_photographs()} photographs …")


def import_society(say: Say) -> Plan:
    """All spreadsheets as one import. Raises CommandError if a row of them is refused."""
    tables = read_tables(FOLDER / name for name in FILES)
    plan = Planning(tables).plan()
    refused = [row for row in plan.rows if row.fate == "refused"]
    if refused:
        raise CommandError(f"{len(refused)} rows of the demo are refused: {refused[0].problems[0]}")
    counts = {table.kind: plan.counts(place)["new"] for place, table in enumerate(tables)}
    say("Importing " + ", ".join(f"{count} {kind}" for kind, count in counts.items()) + " …")
    write_plan(plan, by=None, may_appoint=True, tell=lambda kind, done, of: say(told(kind, done, of)))
    return plan


def told(kind: str, done: int, total: int) -> str:
    return f"  {kind}: {done} of {total}" if total else f"  {kind} …"


def name_society() -> None:
    society = Society.current()
    society.name = "Marrowmere Fern Society"
    society.whom_to_ask = "Ada Thornwick, curator"
    society.save()


def open_doors() -> list[SignIn]:
    """The demo's password for one person of each role and one plain member; repeatable."""
    people = [(role.label, first_with(role)) for role in Role] + [("member", plain_member())]
    hashed = kept_hash()
    for _, user in people:
        if user is not None and user.password != hashed:
            user.password = hashed
            user.save(update_fields=["password"])
    return [SignIn(label, user.name) for label, user in people if user is not None]


def kept_hash() -> str:
    """The password's hash, kept in the marker: hashing is slow on purpose, and a new one would end sessions."""
    kept = marker().read_text()
    if not kept:
        kept = make_password(PASSWORD)
        marker().write_text(kept)
    return kept


def first_with(role: str) -> User | None:
    return User.objects.filter(roles_held__role=role).order_by("pk").first()


def plain_member() -> User | None:
    """Somebody without an office who keeps several plants."""
    return (
        User.objects.filter(roles_held=None, member__household=None)
        .annotate(plants=Count("member__keeper__keepings"))
        .order_by("-plants", "pk")
        .first()
    )


def draw_photographs(count: int = DRAWINGS) -> int:
    """Drawings that stand for photographs, of plants spread over the list; each is marked as a drawing."""
    growing = Specimen.objects.growing().exclude(identification__name=None).with_page_parts()
    plants = list(growing.order_by("code"))
    chosen = plants[:: max(1, len(plants) // count)][:count]
    sitters = sitters_for_plants(chosen)
    with ThreadPoolExecutor() as threads:
        photos = list(threads.map(draw, (sitters[plant.pk] for plant in chosen)))
    with transaction.atomic(), announcing_once():
        for plant, photo in zip(chosen, photos, strict=True):
            keeper = plant.keeper
            add_photo(plant, photo, by=None, taken_by=keeper.member if keeper else None, is_drawing=True)
    return len(chosen)


def draw(sitter: Sitter) -> ReadPhoto:
    portrait = draw_portrait(sitter.traits, genus=sitter.genus or "fern", seed=f"photo {sitter.seed}")
    picture = portrait_png(portrait, DRAWING_WIDTH)
    return read_photo(io.BytesIO(picture), size=len(picture))
