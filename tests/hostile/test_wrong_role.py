"""A good form sent by the wrong person changes nothing, and they are told that there is no such page."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from django.test import Client

from specimens.models import SeenBy
from tests.hostile.bodies import FORMS, OF_EVERYBODY, plant, ready_for_forms
from tests.hostile.records import changed, photo_files, records
from tests.test_doors import ROLES

pytestmark = pytest.mark.django_db
MAY = {
    "owner": {"owner", "partner", "curator"},
    "curator": {"curator"},
    "committee": {"committee"},
}
WITHDRAW = {"owner", "partner", "committee"}


@pytest.fixture
def ready(world: SimpleNamespace) -> SimpleNamespace:
    assert plant(world).seen_by == SeenBy.KEEPER
    return ready_for_forms(world)


def may_send(form: str) -> set[str]:
    return WITHDRAW if form == "withdraw" else MAY[FORMS[form].may]


@pytest.mark.parametrize("form", sorted(FORMS))
def test_whoever_may_not_changes_nothing(form: str, ready: SimpleNamespace) -> None:
    sent = FORMS[form]
    before, files = records(), photo_files()
    for role in set(ROLES) - may_send(form):
        reply = ready.clients[role].post(sent.url(ready), sent.body(ready))
        assert reply.status_code == 404, (role, reply.status_code)
    assert not changed(before)
    assert photo_files() == files


@pytest.mark.parametrize("form", sorted(FORMS))
def test_the_same_form_is_taken_from_whoever_may(form: str, ready: SimpleNamespace) -> None:
    sent = FORMS[form]
    before = records()
    reply = ready.clients[sent.may].post(sent.url(ready), sent.body(ready))
    assert reply.status_code == 302, reply.content.decode()[:2000]
    assert changed(before)


@pytest.mark.parametrize("form", sorted(FORMS | OF_EVERYBODY))
def test_a_stranger_changes_nothing(form: str, ready: SimpleNamespace) -> None:
    sent = (FORMS | OF_EVERYBODY)[form]
    before = records()
    assert Client().post(sent.url(ready), sent.body(ready)).status_code in (302, 401)
    assert not changed(before)


@pytest.mark.parametrize("form", sorted(FORMS | OF_EVERYBODY))
def test_without_the_token_against_forgery_nothing_is_taken(form: str, ready: SimpleNamespace) -> None:
    sent = (FORMS | OF_EVERYBODY)[form]
    strict = Client(enforce_csrf_checks=True)
    strict.force_login(ready.people[sent.may].user)
    before = records()
    assert strict.post(sent.url(ready), sent.body(ready)).status_code == 403
    assert not changed(before)


@pytest.mark.parametrize("form", sorted(FORMS | OF_EVERYBODY))
def test_other_methods_are_refused(form: str, ready: SimpleNamespace) -> None:
    sent = (FORMS | OF_EVERYBODY)[form]
    before = records()
    client = ready.clients[sent.may]
    for method in (client.put, client.patch, client.delete, client.trace):
        assert method(sent.url(ready)).status_code == 405
    assert not changed(before)
