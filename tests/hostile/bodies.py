"""A good body for every form of the society, so that what is refused is refused for who sends it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

from frondkeep.society.models import Member
from tests.cast import token
from tests.desk.logging.typing import confirmed, filled
from tests.hostile.pictures import picture, upload

Body = dict[str, Any]


@dataclass(frozen=True)
class Sent:
    """A form: where it goes, what is in it, and who may send it (`may`); the rest change nothing by it."""

    url: Callable[[SimpleNamespace], str]
    body: Callable[[SimpleNamespace], Body]
    may: str
    creates: bool = False


def plant(world: SimpleNamespace) -> Any:
    return world.plants["owner's private"]


def of_plant(place: str) -> Callable[[SimpleNamespace], str]:
    return lambda world: f"/plants/{plant(world).code}/{place}/"


def pups(world: SimpleNamespace) -> Body:
    keeper = plant(world).keeper.pk
    return {"submission": token(), "count": 1, "kind": "pup", "taken": "2024", "kept_by": keeper}


def edited(world: SimpleNamespace) -> Body:
    return {"version": plant(world).version, "label_text": "changed", "holds": "one", "seen_by": "members"}


def decision(world: SimpleNamespace) -> Body:
    from lineage.models import Ruling

    last = Ruling.objects.order_by("-pk").values_list("pk", flat=True).first()
    return {"submission": token(), "last_seen": last, "reason": "grown side by side"}


def show(world: SimpleNamespace, place: str) -> str:
    return f"/shows/{world.shows['open show'].pk}/{place}"


def own_plant(world: SimpleNamespace, member: Member) -> Any:
    return next(iter(type(plant(world)).objects.mine(member.user)))


def ready_for_forms(world: SimpleNamespace) -> SimpleNamespace:
    """The world with what the forms below ask about: a name to be looked at, a second class."""
    from tests.cast import make_cultivar
    from tests.shows.make import make_class

    world.proposed = "owner's shared"
    world.unchecked = make_cultivar("Not Looked At", checked=False)
    make_class(world.shows["open show"], 2)
    return world


FORMS: dict[str, Sent] = {
    "took a pup": Sent(of_plant("pup"), pups, "owner", creates=True),
    "identify": Sent(
        of_plant("identify"),
        lambda world: {
            "submission": token(), "name_text": "Platycerium ‘Other’", "ground": "looks", "covers": "one",
            "on": "2024",
        },
        "owner",
        creates=True,
    ),
    "gave away": Sent(
        of_plant("gave"),
        lambda world: {
            "submission": token(), "what": "piece", "kind": "pup", "count": 1, "way": "outside",
            "receiver_text": "A nursery", "on": "2024",
        },
        "owner",
        creates=True,
    ),
    "photo": Sent(
        of_plant("photo"),
        lambda world: {"submission": token(), "file": upload(picture()), "shown_to": "members"},
        "owner",
        creates=True,
    ),
    "ended": Sent(
        of_plant("ended"), lambda world: {"version": plant(world).version, "state": "dead", "on": "2024"}, "owner"
    ),
    "edit": Sent(of_plant("edit"), edited, "owner"),
    "origin": Sent(
        of_plant("origin"),
        lambda world: {"version": plant(world).version, "came": "piece", "parent_words": "an old plant"},
        "curator",
    ),
    "proposal": Sent(
        lambda world: f"/plants/{world.plants[world.proposed].code}/proposals/{world.proposal.pk}/",
        lambda world: {"answer": "accept"},
        "curator",
    ),
    "edit a name": Sent(
        lambda world: f"/names/{world.name.pk}/edit/",
        lambda world: {"version": world.name.version, "epithet": "Gilt Tassel", "reproduction": "division"},
        "curator",
    ),
    "checked": Sent(lambda world: f"/names/{world.unchecked.pk}/checked/", lambda world: {"any": "x"}, "curator"),
    "decide": Sent(
        lambda world: f"/same/{world.pair.pk}/decide/?answer=different", decision, "curator", creates=True
    ),
    "undo": Sent(
        lambda world: f"/same/decisions/{world.ruling.pk}/undo/",
        lambda world: {"submission": token(), "reason": "not so"},
        "curator",
        creates=True,
    ),
    "add a show": Sent(
        lambda world: "/shows/add/",
        lambda world: {
            "submission": token(), "name": "Winter show", "date": "12/12/2030",
            "entries_close_at": "10/12/2030 21:00", "months_of_possession": 6, "most_in_class": 1,
        },
        "committee",
        creates=True,
    ),
    "add a class": Sent(
        lambda world: show(world, "classes/add/"),
        lambda world: {"submission": token(), "number": 9, "title": "A fern", "stages": "plants", "how_many": 1},
        "committee",
        creates=True,
    ),
    "enter for anyone": Sent(
        lambda world: show(world, "classes/1/enter-for/"),
        lambda world: {
            "submission": token(), "exhibitor": "A guest", "is_guest": "on", "plants": "Platycerium hillii",
        },
        "committee",
        creates=True,
    ),
    "number entries": Sent(lambda world: show(world, "number/"), lambda world: {"any": "x"}, "committee"),
    "judging closed": Sent(lambda world: show(world, "judging-closed/"), lambda world: {"any": "x"}, "committee"),
    "withdraw": Sent(
        lambda world: f"/entries/{world.entry.pk}/withdraw/", lambda world: {"any": "x"}, "owner"
    ),
}  # fmt: skip


def log_body(**card: Any) -> Body:
    """Log plants, confirmed; its tag is plainly known."""
    genera = {"p0_tag_genus": "?", "p0_think_genus": "?", "p0_tag_means": "mine", "p0_think_means": "mine"}
    return confirmed(filled({"label_text": "Platycerium ‘Other’", **card}), **genera)


# These everybody may send, for themselves.
OF_EVERYBODY: dict[str, Sent] = {
    "log": Sent(lambda world: "/log/", lambda world: log_body(), "owner", creates=True),
    "enter": Sent(
        lambda world: show(world, "classes/2/enter/"),
        lambda world: {"submission": token(), "plants": [world.plants["member's shared"].code]},
        "member",
        creates=True,
    ),
}
