"""Fields that a form does not have, sent along with it, are not read."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from django.utils import timezone

from frondkeep.shows.models import Entry, Show
from frondkeep.society.models import RoleHeld
from specimens.models import Specimen
from tests.cast import make_genus
from tests.hostile.bodies import FORMS, OF_EVERYBODY, Body, ready_for_forms
from tests.hostile.records import changed, records

pytestmark = pytest.mark.django_db
ALL = FORMS | OF_EVERYBODY


@pytest.fixture
def ready(world: SimpleNamespace) -> SimpleNamespace:
    return ready_for_forms(world)


def smuggled(ready: SimpleNamespace) -> Body:
    """What no member may write, under every name a form might read it by."""
    other = ready.people["curator"]
    wished = {
        "id": 1, "pk": 1, "code": "2026-9999-A", "keeper": other.keeper.pk, "keeper_id": other.keeper.pk,
        "logged_by": other.user.pk, "by": other.user.pk, "by_id": other.user.pk, "user": other.user.pk,
        "is_staff": "on", "is_superuser": "on", "is_active": "", "roles": "curator", "role": "curator",
        "checked": "on", "accepted": 1, "accepted_id": 1, "by_curator": "on", "standing": "current",
        "society_number": "SMUGGLED", "import_key": "smuggled", "state": "stolen", "state_reason": "smuggled",
        "division": 1, "sowing": 1, "logged_at": "2001-01-01", "identification": 1, "treatment": 1,
        "overrule": "on", "entered_by": other.user.pk, "exhibitor_id": 1, "junior": "on", "number": 77,
        "judging_closed_at": "2001-01-01 00:00", "entries_close_at_0": "x", "show": 1, "show_class": 1,
        "voided_reason": "smuggled", "parts": "{}", "written": "SMUGGLED", "sort_text": "smuggled",
        "genus": make_genus("Drynaria").pk,
        "added_by": other.user.pk, "key": "smuggled", "sha256": "smuggled", "is_drawing": "on",
    }  # fmt: skip
    return wished | {f"plants-0-{field}": value for field, value in wished.items()}


WITHOUT_FIELDS = {"proposal", "checked", "withdraw", "judging closed", "number entries"}


@pytest.mark.parametrize("name", sorted(set(ALL) - WITHOUT_FIELDS))
def test_nothing_smuggled_in_is_kept(name: str, ready: SimpleNamespace) -> None:
    form = ALL[name]
    body = smuggled(ready) | form.body(ready)
    assert ready.clients[form.may].post(form.url(ready), body).status_code == 302
    for model in (Specimen, Show, Entry, type(ready.name)):
        for row in model.objects.values():
            assert not [value for value in row.values() if "smuggled" in str(value).casefold()], row
    assert list(RoleHeld.objects.filter(role="curator")) == list(
        ready.people["curator"].user.roles_held.all()
    )


def test_a_plant_logged_by_a_member_is_theirs_whatever_they_send(ready: SimpleNamespace) -> None:
    form = OF_EVERYBODY["log"]
    ready.clients["owner"].post(form.url(ready), smuggled(ready) | form.body(ready))
    plant = Specimen.objects.latest("pk")
    owner = ready.people["owner"]
    assert plant.logged_by == owner.user
    assert plant.keeper in (owner.keeper, owner.household.keeper)
    assert plant.logged_at.date() == timezone.now().date()
    assert plant.identification.by_curator is False
    assert plant.is_growing


def test_a_member_who_names_a_keeper_names_only_their_own(ready: SimpleNamespace) -> None:
    stranger = ready.people["curator"].keeper
    body = FORMS["took a pup"].body(ready) | {"kept_by": stranger.pk}
    before = records()
    reply = ready.clients["owner"].post(FORMS["took a pup"].url(ready), body)
    assert reply.status_code == 422
    assert not changed(before)


def test_a_member_overrules_no_rule_of_a_show(ready: SimpleNamespace) -> None:
    show_class = ready.shows["open show"].classes.get(number=2)
    show_class.wants = "species"
    show_class.save()
    before = records()
    body = OF_EVERYBODY["enter"].body(ready) | {"overrule": "on", "title": "x"}
    assert ready.clients["member"].post(OF_EVERYBODY["enter"].url(ready), body).status_code == 422
    assert not changed(before)
