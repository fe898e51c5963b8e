"""Every address × every role × own, shared and private objects: one table, with no unlisted cell.

The table says what each role gets by GET (or by POST where an address takes no GET): 200 or a redirect
is "in", 404 "not there", and a stranger is sent to the sign-in page.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from copy import copy, deepcopy
from dataclasses import dataclass, field, replace
from types import SimpleNamespace
from typing import Any

import pytest
from django.db import transaction
from django.test import Client
from django.urls import URLPattern, URLResolver, get_resolver, reverse
from pytest_django import DjangoDbBlocker

from frondkeep.desk.models import ImportBatch
from frondkeep.society.models import Role, Submission
from lineage.models import Suspicion
from lineage.services.rulings import give_ruling
from specimens.models import Identification, SeenBy
from specimens.services.handover_claims import deny
from specimens.services.identifications import identify
from specimens.services.photos import ReadPhoto, add_photo
from tests.cast import make_cultivar, make_household, make_member, make_plant, token, when
from tests.shared_rows import rows_of_a_module
from tests.shows.make import LONG_AGO, make_class, make_entry, make_show
from tests.specimens.services.handing import make_claim, make_offer, on_the_table

ROLES = ("owner", "partner", "member", "curator", "committee", "secretary", "spores", "administrator")
EVERYBODY = frozenset(ROLES)
OWNERS = frozenset({"owner", "partner"})
CURATOR = frozenset({"curator"})
COMMITTEE = frozenset({"committee"})
NOBODY: frozenset[str] = frozenset()


@dataclass(frozen=True)
class Row:
    """Who is let in, by object; `kwargs` makes the address for an object; the rest get 404."""

    allowed: dict[str, frozenset[str]]
    kwargs: Callable[[SimpleNamespace, str], dict[str, Any]] = lambda world, which: {}
    method: str = "get"
    query: str = ""
    open_to_strangers: bool = False
    data: dict[str, Any] = field(default_factory=dict)


def always(allowed: frozenset[str], **options: Any) -> Row:
    return Row({"the page": allowed}, **options)


def plant_row(*, shared: frozenset[str], private: frozenset[str], own: frozenset[str], **options: Any) -> Row:
    """Three plants: the owner's shared one, the owner's private one, and a member's own shared one."""
    return Row(
        {"owner's shared": shared, "owner's private": private, "member's shared": own},
        lambda world, which: {"code": world.plants[which].code},
        **options,
    )


SEE = plant_row(shared=EVERYBODY, private=OWNERS | CURATOR, own=EVERYBODY)
PHOTO = Row(
    {"owner's shared": EVERYBODY, "owner's private": OWNERS | CURATOR, "shown to nobody": OWNERS},
    lambda world, which: {"key": world.photos[which].key},
)
CHANGE = plant_row(shared=OWNERS | CURATOR, private=OWNERS | CURATOR, own=frozenset({"member", "curator"}))


def name_row(allowed: frozenset[str], **options: Any) -> Row:
    return Row({"a name": allowed}, lambda world, which: {"pk": world.name.pk}, **options)


def show_row(open_show: frozenset[str], judged: frozenset[str], **options: Any) -> Row:
    numbered = options.pop("numbered", False)
    more = {"number": 1} if numbered else {}
    return Row(
        {"open show": open_show, "judged show": judged},
        lambda world, which: {"pk": world.shows[which].pk, **more},
        **options,
    )


def import_row(which: str, **options: Any) -> Row:
    """An import of the curator's: nobody else's, not even another importer's."""
    return Row(
        {f"curator's {which} import": CURATOR}, lambda world, _: {"pk": world.imports[which].pk}, **options
    )


RECEIVER = frozenset({"member", "curator"})
PARTIES = OWNERS | RECEIVER


def hand_over_row(claimed: frozenset[str], *, method: str = "post", **others: frozenset[str]) -> Row:
    """Hand-overs between the owner's household, who gives, and the member, who receives."""
    allowed = {"claimed": claimed} | {
        which.replace("on_table", "on a table"): who for which, who in others.items()
    }
    asked = {which: who for which, who in allowed.items() if who or len(allowed) == 1}
    return Row(asked, lambda world, which: {"token": world.hand_overs[which].token}, method=method)


TABLE: dict[str, Row] = {
    "home": always(EVERYBODY),
    "mine": always(EVERYBODY),
    "search": always(EVERYBODY),
    "help": always(EVERYBODY),
    "help-page": Row({"a page": EVERYBODY}, lambda world, which: {"slug": "log"}),
    "plants": always(EVERYBODY),
    "plants-csv": always(EVERYBODY),
    "plant": SEE,
    "plant-lineage": SEE,
    "plant-pup": CHANGE,
    "plant-identify": CHANGE,
    "plant-ended": CHANGE,
    "plant-edit": CHANGE,
    "plant-photo": CHANGE,
    "plant-origin": plant_row(shared=CURATOR, private=CURATOR, own=CURATOR),
    "photo": PHOTO,
    "photo-small": PHOTO,
    "plant-proposal": Row(
        {"owner's shared": CURATOR},
        lambda world, which: {"code": world.plants[which].code, "pk": world.proposal.pk},
        method="post",
    ),
    "log": always(EVERYBODY),
    "log-tag": always(EVERYBODY, query="?what=tag&place=0"),
    "log-another": always(EVERYBODY, method="post"),
    "log-change": always(EVERYBODY, method="post"),
    "log-without": Row({"a card": EVERYBODY}, lambda world, which: {"number": 1}, method="post"),
    "logged": Row(
        {"owner's codes": frozenset({"owner"})}, lambda world, which: {"token": world.logged.token}
    ),
    "import": always(frozenset({"curator", "administrator"})),
    "import-columns": import_row("open"),
    "import-preview": import_row("read"),
    "import-read-on": import_row("read", method="post"),
    "import-done": import_row("written"),
    "hand-overs": always(EVERYBODY),
    "table": Row(
        {"a table": EVERYBODY}, lambda world, which: {"pk": world.hand_overs["on a table"].meeting_id}
    ),
    "plant-gave": CHANGE,
    "plant-got": SEE,
    "hand-over": hand_over_row(
        PARTIES, offered=PARTIES, denied=PARTIES, method="get", on_table=OWNERS | CURATOR
    ),
    "hand-over-accept": hand_over_row(NOBODY, offered=RECEIVER, on_table=CURATOR),
    "hand-over-refuse": hand_over_row(NOBODY, offered=RECEIVER, on_table=CURATOR),
    "hand-over-pick": hand_over_row(NOBODY, on_table=EVERYBODY),
    "hand-over-take-back": hand_over_row(NOBODY, offered=OWNERS | CURATOR, on_table=OWNERS | CURATOR),
    "hand-over-agree": hand_over_row(OWNERS | CURATOR),
    "hand-over-deny": hand_over_row(OWNERS | CURATOR),
    "hand-over-apart": hand_over_row(PARTIES),
    "hand-over-settled": hand_over_row(NOBODY, denied=CURATOR),
    "names": always(EVERYBODY),
    "name": name_row(EVERYBODY),
    "name-lineage": name_row(EVERYBODY),
    "name-edit": name_row(CURATOR),
    "name-checked": name_row(CURATOR, method="post"),
    "proposals": always(CURATOR),
    "same": always(CURATOR),
    "same-pair": Row({"a pair": CURATOR}, lambda world, which: {"pk": world.pair.pk}),
    "same-decide": Row({"a pair": CURATOR}, lambda world, which: {"pk": world.pair.pk}),
    "decisions": always(CURATOR),
    "decision-undo": Row({"a decision": CURATOR}, lambda world, which: {"pk": world.ruling.pk}),
    "suggest-names": always(EVERYBODY),
    "suggest-plants": always(EVERYBODY),
    "suggest-keepers": always(EVERYBODY),
    "sign-in": always(EVERYBODY, open_to_strangers=True),
    "sign-out": always(EVERYBODY, method="post", open_to_strangers=True),
    "password-change": always(EVERYBODY),
    "password-forgotten": always(EVERYBODY, open_to_strangers=True),
    "password-sent": always(EVERYBODY, open_to_strangers=True),
    "password_reset_confirm": Row(
        {"a used link": EVERYBODY},
        lambda world, which: {"uidb64": "MQ", "token": "x-y"},
        open_to_strangers=True,
    ),
    "health": always(EVERYBODY, open_to_strangers=True),
    "shows": always(EVERYBODY),
    "add-show": always(COMMITTEE),
    "show": show_row(EVERYBODY, EVERYBODY),
    "add-class": show_row(COMMITTEE, COMMITTEE),
    "enter-class": show_row(EVERYBODY, EVERYBODY, numbered=True),
    "enter-for-anyone": show_row(COMMITTEE, COMMITTEE, numbered=True),
    "entry-list": show_row(COMMITTEE, EVERYBODY),
    "entry-list-paper": show_row(COMMITTEE, COMMITTEE),
    "judges-paper": show_row(COMMITTEE, COMMITTEE),
    "number-entries": show_row(COMMITTEE, COMMITTEE, method="post"),
    "close-judging": show_row(COMMITTEE, COMMITTEE, method="post"),
    "withdraw-entry": Row(
        {"owner's entry": OWNERS | COMMITTEE}, lambda world, which: {"pk": world.entry.pk}, method="post"
    ),
}

# Models with admin pages, and who opens them.
ADMIN: dict[str, frozenset[str]] = {
    "society_user": frozenset({"administrator"}),
    "society_society": frozenset({"administrator"}),
    "society_member": frozenset({"curator", "secretary"}),
    "society_household": frozenset({"curator", "secretary"}),
    "society_meeting": frozenset({"curator", "secretary"}),
    "specimens_name": CURATOR,
    "specimens_placement": CURATOR,
    "specimens_treatment": CURATOR,
    "specimens_specimen": CURATOR,
    "specimens_trait": CURATOR,
}


@pytest.fixture(scope="module")
def world_once(django_db_setup: None, django_db_blocker: DjangoDbBlocker) -> Iterator[SimpleNamespace]:
    with rows_of_a_module(django_db_blocker):
        yield build_world()


@pytest.fixture
def world(world_once: SimpleNamespace, db: None) -> SimpleNamespace:
    return deepcopy(world_once)


def build_world() -> SimpleNamespace:
    """One of each role, the plants of two keepers, two shows."""
    owner, partner = make_member("Owner"), make_member("Partner")
    make_household("The house", owner, partner)
    people = {"owner": owner, "partner": partner, "member": make_member("Member")}
    people |= {role: make_member(role.title(), Role(value)) for role, value in ROLE_VALUES.items()}
    kept = {"acquired": when("2015", LONG_AGO)}
    name = make_cultivar()
    plants = {
        "owner's shared": make_plant(owner.household, name, **kept),
        "owner's private": make_plant(owner.household, name, seen_by=SeenBy.KEEPER, **kept),
        "member's shared": make_plant(people["member"], name, **kept),
    }
    looks = {"ground": Identification.Ground.LOOKS}
    identify(plants["owner's shared"], name=name, by=people["curator"].user, **looks)
    proposal = identify(plants["owner's shared"], name=make_cultivar("Other"), by=owner.user, **looks)
    photos = {which: add_photo(plants[which], PICTURE, by=owner.user) for which in list(plants)[:2]}
    hidden = replace(PICTURE, jpeg=b"another")
    photos["shown to nobody"] = add_photo(plants["owner's shared"], hidden, by=owner.user, shown_to="nobody")
    shows = {"open show": make_show(), "judged show": make_show(name="Last show")}
    for show in shows.values():
        make_class(show)
    shows["judged show"].judging_closed_at = shows["judged show"].entries_close_at
    shows["judged show"].save()
    hand_overs = {
        "offered": make_offer(plants["owner's shared"], owner, people["member"]),
        "denied": deny(make_claim(plants["owner's private"], people["member"]), by=owner.user),
        "claimed": make_claim(plants["owner's private"], people["member"]),
        "on a table": on_the_table(plants["owner's shared"], owner)[0],
    }
    entry = make_entry(shows["open show"].classes.get(), owner, plants["owner's shared"])
    make_cultivar("Silvered Tassel")
    apart = {"answer": "different", "reason": "other fronds", "by": people["curator"].user}
    ruling = give_ruling(first=name, second=make_cultivar("Other"), **apart)
    written = [{"code": plants["owner's shared"].code}]
    logged = Submission.objects.create(user=owner.user, purpose="log plants", result=written)
    states = {"open": "columns", "read": "preview", "written": "done"}
    batches = ImportBatch.objects
    imports = {
        which: batches.create(by=people["curator"].user, state=state) for which, state in states.items()
    }
    clients = {role: Client() for role in people}
    for role, client in clients.items():
        client.force_login(people[role].user)
    return SimpleNamespace(
        people=people,
        plants=plants,
        name=name,
        shows=shows,
        entry=entry,
        hand_overs=hand_overs,
        clients=clients,
        photos=photos,
        proposal=proposal,
        pair=Suspicion.objects.get(second_name__epithet="Silvered Tassel"),
        ruling=ruling,
        logged=logged,
        imports=imports,
    )


PICTURE = ReadPhoto(b"picture", b"small", 10, 10, "0" * 16)
ROLE_VALUES = {
    "curator": "curator",
    "committee": "committee",
    "secretary": "secretary",
    "spores": "spores",
    "administrator": "administrator",
}


def named_patterns(resolver: URLResolver) -> Iterator[URLPattern]:
    for pattern in resolver.url_patterns:
        if isinstance(pattern, URLPattern):
            yield pattern
        elif pattern.namespace != "admin":
            yield from named_patterns(pattern)


def test_every_address_stands_in_the_table() -> None:
    assert {pattern.name for pattern in named_patterns(get_resolver())} == set(TABLE)


def test_every_admin_page_stands_in_the_table() -> None:
    from django.contrib import admin

    registered = {f"{model._meta.app_label}_{model._meta.model_name}" for model in admin.site._registry}
    assert registered == set(ADMIN)


def ask(client: Client, row: Row, url: str) -> int:
    reply = (
        client.get(url + row.query)
        if row.method == "get"
        else client.post(url, {"submission": token(), **row.data})
    )
    if reply.streaming:
        reply.getvalue()  # read to its end a picture's file is closed, and the database is not
    return reply.status_code


def answer(status: int) -> str:
    return {404: "not there", 405: "no such way"}.get(status, "in" if status < 500 else "broken")


@contextmanager
def undone() -> Iterator[None]:
    """What happens inside is undone, so that one world serves every address."""
    with transaction.atomic():
        yield
        transaction.set_rollback(True)


def test_each_role_gets_in_only_where_the_table_says(world: SimpleNamespace, subtests: Any) -> None:
    for address, row in TABLE.items():
        for which, allowed in row.allowed.items():
            url = reverse(address, kwargs=row.kwargs(world, which))
            wanted = {role: "in" if role in allowed else "not there" for role in ROLES}
            found = {}
            for role in ROLES:
                with undone():
                    signed_in = copy(world.clients[role])
                    signed_in.cookies = deepcopy(world.clients[role].cookies)
                    found[role] = answer(ask(signed_in, row, url))
            with subtests.test(address, of=which):
                assert found == wanted


def test_a_stranger_is_sent_to_the_door(world: SimpleNamespace, subtests: Any) -> None:
    for address, row in TABLE.items():
        for which in row.allowed:
            reply = getattr(Client(), row.method)(reverse(address, kwargs=row.kwargs(world, which)))
            with subtests.test(address, of=which):
                if row.open_to_strangers:
                    assert reply.status_code in (200, 302)
                else:
                    signed_out = reply.headers.get("Location", "").startswith("/sign-in/")
                    assert signed_out or (row.method == "post" and reply.status_code == 403)


def test_what_changes_something_takes_no_get(world: SimpleNamespace, subtests: Any) -> None:
    for address, row in TABLE.items():
        if row.method == "post":
            which = next(iter(row.allowed))
            reply = world.clients["curator"].get(reverse(address, kwargs=row.kwargs(world, which)))
            with subtests.test(address):
                assert reply.status_code == 405


def test_admin_pages_open_for_their_roles_alone(world: SimpleNamespace, subtests: Any) -> None:
    for model, roles in ADMIN.items():
        url = reverse(f"admin:{model}_changelist")
        opened = {role for role in ROLES if world.clients[role].get(url).status_code == 200}
        with subtests.test(model):
            assert opened == roles
            assert Client().get(url).status_code == 302


def test_nobody_deletes_records_on_admin_pages(world: SimpleNamespace) -> None:
    plant = world.plants["owner's shared"]
    for role in ROLES:
        url = reverse("admin:specimens_specimen_delete", args=[plant.pk])
        assert world.clients[role].post(url, {"post": "yes"}).status_code in (302, 403, 404)
    assert type(plant).objects.filter(pk=plant.pk).exists()
