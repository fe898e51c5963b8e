"""Whose sign-in ended, who left a household, who left the society: each may do what is theirs, and no more."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from django.test import Client

from specimens.models import SeenBy
from tests.cast import PASSWORD, make_plant
from tests.hostile.bodies import FORMS, plant, ready_for_forms
from tests.hostile.conftest import signed_in
from tests.hostile.records import changed, records

pytestmark = pytest.mark.django_db


@pytest.fixture
def ready(world: SimpleNamespace) -> SimpleNamespace:
    return ready_for_forms(world)


def test_a_closed_sign_in_is_closed_at_once(ready: SimpleNamespace) -> None:
    member = ready.people["owner"]
    client = signed_in(member)
    assert client.get("/mine/").status_code == 200
    member.user.is_active = False
    member.user.save()
    assert client.get("/mine/").status_code == 302
    before = records()
    form = FORMS["took a pup"]
    assert client.post(form.url(ready), form.body(ready)).status_code == 401
    assert Client().post("/sign-in/", {"username": "Owner", "password": PASSWORD}).status_code == 422
    assert not changed(before)


def test_a_closed_sign_in_gets_no_new_password(ready: SimpleNamespace, mailoutbox) -> None:
    user = ready.people["owner"].user
    user.is_active = False
    user.save()
    Client().post("/password/forgotten/", {"email": user.email})
    assert mailoutbox == []


@pytest.mark.parametrize("form", ["took a pup", "edit", "identify", "photo", "ended"])
def test_a_partner_changes_the_plants_of_the_house(form: str, ready: SimpleNamespace) -> None:
    sent = FORMS[form]
    assert ready.clients["partner"].post(sent.url(ready), sent.body(ready)).status_code == 302


@pytest.mark.parametrize("form", ["took a pup", "edit", "identify", "photo", "ended"])
def test_whoever_left_the_house_changes_its_plants_no_more(form: str, ready: SimpleNamespace) -> None:
    partner = ready.people["partner"]
    partner.household = None
    partner.save()
    sent = FORMS[form]
    client = signed_in(type(partner).objects.get(pk=partner.pk))
    before = records()
    assert client.post(sent.url(ready), sent.body(ready)).status_code == 404
    assert client.get(f"/plants/{plant(ready).code}/").status_code == 404
    assert not changed(before)


def test_whoever_left_the_house_takes_their_own_plants_along(ready: SimpleNamespace) -> None:
    partner = ready.people["partner"]
    own = make_plant(partner, ready.name, seen_by=SeenBy.KEEPER)
    partner.household = None
    partner.save()
    client = signed_in(type(partner).objects.get(pk=partner.pk))
    assert client.get(f"/plants/{own.code}/edit/").status_code == 200
    assert signed_in(ready.people["owner"]).get(f"/plants/{own.code}/").status_code == 404


def test_a_sign_in_without_a_member_keeps_nothing(ready: SimpleNamespace) -> None:
    from tests.cast import make_user
    from tests.desk.logging.typing import confirmed, filled

    client = Client()
    client.force_login(make_user("Nobody"))
    before = records()
    for page in ("/", "/mine/", "/log/", "/plants/", "/shows/"):
        assert client.get(page).status_code == 200
    assert client.post("/log/", confirmed(filled({}))).status_code == 422
    show = ready.shows["open show"].pk
    assert client.post(f"/shows/{show}/classes/2/enter/", {"submission": "x"}).status_code == 404
    assert not changed(before)
