"""More than any form holds is refused whole, in words, and changes nothing."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from tests.cast import token
from tests.hostile.bodies import FORMS, log_body
from tests.hostile.pictures import picture, upload
from tests.hostile.records import changed, records

pytestmark = pytest.mark.django_db
TOO_MUCH: dict[str, dict[str, Any]] = {
    "six megabytes of notes": {"plants-0-notes": "x" * (6 * 1024 * 1024)},
    "three thousand fields": {f"field-{number}": "x" for number in range(3_000)},
    "two hundred photos": {f"plants-{number}-photo": upload(b"x") for number in range(200)},
}


@pytest.mark.parametrize("what", sorted(TOO_MUCH))
def test_it_is_refused_in_words(what: str, world: SimpleNamespace) -> None:
    before = records()
    reply = world.clients["owner"].post("/log/", log_body() | TOO_MUCH[what])
    assert reply.status_code == 413
    assert "more than" in reply.content.decode()
    assert not changed(before)


def test_thirty_cards_with_thirty_photos_are_not_too_much(world: SimpleNamespace) -> None:
    cards = {f"plants-{number}-photo": upload(picture()) for number in range(30)}
    tags = {f"plants-{number}-label_text": "no tag" for number in range(30)}
    came = {f"plants-{number}-came": "not known" for number in range(30)}
    form = log_body() | cards | tags | came | {"plants-TOTAL_FORMS": 30}
    assert world.clients["owner"].post("/log/", form).status_code == 302


def test_the_number_of_forms_is_no_way_to_stop_the_server(world: SimpleNamespace) -> None:
    for count in ("9" * 20, "9" * 5000, "-1", "1e9", "²", ""):
        for place in ("", "another/", "change/", "without/0/"):
            reply = world.clients["owner"].post(f"/log/{place}", log_body() | {"plants-TOTAL_FORMS": count})
            assert reply.status_code in (200, 302, 422), (count[:30], place)


@pytest.mark.parametrize(
    "key", ["plants-²-photo", "plants-" + "9" * 500 + "-photo", "plants--1-photo", "photo"]
)
def test_a_photo_of_no_card_is_nobodys(key: str, world: SimpleNamespace) -> None:
    before = records()
    for content in (picture(), b"no picture"):
        reply = world.clients["owner"].post("/log/another/", log_body() | {key: upload(content)})
        assert reply.status_code == 200
    assert not changed(before)


def test_many_plants_in_one_entry_are_told(world: SimpleNamespace) -> None:
    before = records()
    body = FORMS["enter for anyone"].body(world) | {"plants": "Platycerium hillii\n" * 3_000}
    reply = world.clients["committee"].post(FORMS["enter for anyone"].url(world), body)
    assert reply.status_code == 422
    assert 'id="id_plants_error"' in reply.content.decode()
    assert not changed(before)


def test_one_plant_twice_in_an_entry_is_told(world: SimpleNamespace) -> None:
    code = world.plants["member's shared"].code
    before = records()
    body = {
        "submission": token(),
        "exhibitor": "Member",
        "plants": f"{code}\n{code.lower()}",
        "overrule": "on",
    }
    reply = world.clients["committee"].post(FORMS["enter for anyone"].url(world), body)
    assert reply.status_code == 422
    assert "stands here twice" in reply.content.decode()
    assert not changed(before)


def test_one_plant_ticked_twice_is_entered_once(world: SimpleNamespace) -> None:
    code = world.plants["member's shared"].code
    url = f"/shows/{world.shows['open show'].pk}/classes/1/enter/"
    body = {"submission": token(), "plants": [code, code]}
    assert world.clients["member"].post(url, body).status_code == 302
