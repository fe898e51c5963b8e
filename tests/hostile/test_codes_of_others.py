"""A plant that is not shown answers as one that does not exist, wherever its code is guessed."""

from __future__ import annotations

import re
from types import SimpleNamespace

import pytest
from django.http import HttpResponse

from specimens.models import SeenBy
from specimens.naming.codes import Code, may_be_handed_out
from tests.cast import make_plant, make_pup, token
from tests.desk.logging.typing import confirmed, filled
from tests.hostile.bodies import pups
from tests.hostile.records import changed, records

pytestmark = pytest.mark.django_db
# Nobody's: far from every number drawn.
NOBODYS = next(
    str(Code(2026, number)) for number in range(7000, 7100) if may_be_handed_out(Code(2026, number))
)


@pytest.fixture
def secret(world: SimpleNamespace) -> SimpleNamespace:
    """A plant of the owner's that they keep to themselves, with a pup, under numbers nobody else has."""
    owner = world.people["owner"]
    plant = make_plant(
        owner, world.name, seen_by=SeenBy.KEEPER, own_number="O77", society_number="S77", label_text="Quixotry",
        notes="by the well",
    )  # fmt: skip
    world.secret, world.piece = plant, make_pup(plant, owner)
    return world


def same_but_for_the_code(code: str, answer: HttpResponse) -> tuple[int, str]:
    """An answer with its own code, and what differs from page to page, blotted out."""
    content = answer.getvalue() if answer.streaming else answer.content
    page = content.decode("utf-8-sig").replace(code, "CODE")
    page = re.sub(r"\b[0-9A-Za-z]{64}\b|[0-9a-f]{8}-[0-9a-f-]{27}", "TOKEN", page)
    return answer.status_code, page


def codes_of(secret: SimpleNamespace) -> tuple[str, str]:
    return secret.secret.code, NOBODYS


PLACES = ("", "lineage/", "pup/", "identify/", "edit/", "ended/", "photo/", "origin/")


@pytest.mark.parametrize("place", PLACES)
def test_its_pages_are_not_there(place: str, secret: SimpleNamespace) -> None:
    client = secret.clients["member"]
    assert client.get(f"/plants/{secret.secret.code}/{place}").status_code == 404
    for ask in (client.get, lambda url: client.post(url, pups(secret))):
        guessed, made_up = (
            same_but_for_the_code(code, ask(f"/plants/{code}/{place}")) for code in codes_of(secret)
        )
        assert guessed == made_up
        assert guessed[0] in (404, 405)


@pytest.mark.parametrize(
    "address", ["/search/?q={}", "/plants/?q={}", "/suggest/plants/?q={}", "/plants.csv?q={}"]
)
def test_no_search_finds_it(address: str, secret: SimpleNamespace) -> None:
    for role in ("member", "committee", "spores", "administrator", "secretary"):
        guessed, made_up = (
            same_but_for_the_code(code, secret.clients[role].get(address.format(code)))
            for code in codes_of(secret)
        )
        assert guessed == made_up, role


@pytest.mark.parametrize("words", ["O77", "S77", "Quixotry", "by the well"])
def test_neither_its_numbers_nor_its_words_find_it(words: str, secret: SimpleNamespace) -> None:
    for address in ("/search/", "/plants/", "/suggest/plants/", "/plants.csv"):
        reply = secret.clients["member"].get(address, {"q": words, "state": "any"})
        _, page = same_but_for_the_code("-", reply)
        assert secret.secret.code not in page
        assert secret.piece.code not in page


@pytest.mark.parametrize("field", ["parent_text", "spores_of"])
def test_named_as_parent_it_is_no_plant(field: str, secret: SimpleNamespace) -> None:
    before = records()
    pages = []
    for code in codes_of(secret):
        came = "piece" if field == "parent_text" else "sowing"
        form = confirmed(filled({"label_text": "my tag", "came": came, field: code}))
        reply = secret.clients["member"].post("/log/", form)
        assert reply.status_code == 422
        assert f'id="id_plants-0-{field}_error"' in reply.content.decode()
        assert f'value="{code}"' in reply.content.decode()
        pages.append(same_but_for_the_code(code, reply))
    assert pages[0] == pages[1]
    assert not changed(before)


def test_the_committee_finds_it_only_with_its_exhibitor(secret: SimpleNamespace) -> None:
    url = f"/shows/{secret.shows['open show'].pk}/classes/1/enter-for/"
    for who in ({"exhibitor": "Member"}, {"exhibitor": "A guest", "is_guest": "on"}):
        pages = [
            same_but_for_the_code(
                code, secret.clients["committee"].post(url, {"submission": token(), "plants": code, **who})
            )
            for code in codes_of(secret)
        ]
        assert pages[0] == pages[1]
        assert pages[0][0] == 422


def test_a_member_cannot_enter_it(secret: SimpleNamespace) -> None:
    before = records()
    url = f"/shows/{secret.shows['open show'].pk}/classes/1/enter/"
    pages = [
        same_but_for_the_code(
            code, secret.clients["member"].post(url, {"submission": token(), "plants": [code]})
        )
        for code in codes_of(secret)
    ]
    assert pages[0] == pages[1]
    assert pages[0][0] == 422
    assert not changed(before)


def test_its_photos_are_not_there(secret: SimpleNamespace) -> None:
    key = secret.photos["owner's private"].key
    for place in ("", "small/"):
        for asked in (key, "x" * len(key)):
            assert secret.clients["member"].get(f"/photos/{asked}/{place}").status_code == 404


def test_a_piece_given_away_tells_nothing_of_it(secret: SimpleNamespace) -> None:
    """Its piece in other hands is shown; what it came from is a plant not shown."""
    piece = make_pup(secret.secret, secret.people["member"], seen_by=SeenBy.MEMBERS)
    for place in ("", "lineage/"):
        page = secret.clients["spores"].get(f"/plants/{piece.code}/{place}").content.decode()
        assert secret.secret.code not in page
        assert "by the well" not in page
    table = secret.clients["spores"].get("/plants.csv").getvalue().decode()
    assert piece.code in table
    assert secret.secret.code not in table


def test_a_mistyped_code_never_offers_it(secret: SimpleNamespace) -> None:
    code = secret.secret.code
    slip = f"{code[:8]}{9 - int(code[8])}{code[9:]}"
    form = filled({"label_text": "my tag", "came": "piece", "parent_text": slip})
    page = secret.clients["member"].post("/log/", form).content.decode()
    assert code not in page
    assert "Please look at the tag again" in page
    for address in ("/search/", "/plants/", "/suggest/plants/"):
        assert code not in secret.clients["member"].get(address, {"q": slip}).content.decode()
    assert code in secret.clients["owner"].get("/search/", {"q": slip}).content.decode()
