"""Admin pages of names, treatments and plants: saving goes through the services."""

from typing import Any

import pytest
from django.http import HttpResponse
from django.test import Client
from django.urls import reverse

from frondkeep.society.models import Member
from specimens.models import Name, Placement, Specimen, Treatment
from specimens.services.names import follow_treatment, place_name
from specimens.services.specimens import edit_specimen
from tests.cast import make_cultivar, make_curator, make_member, make_plant, make_species

pytestmark = pytest.mark.django_db


@pytest.fixture
def curator() -> Member:
    return make_curator()


@pytest.fixture
def client(curator: Member) -> Client:
    client = Client()
    client.force_login(curator.user)
    return client


def typed(page: HttpResponse) -> dict[str, Any]:
    """What an admin form would send if nothing were changed on it."""
    form = page.context["adminform"].form
    values = {name: form[name].value() for name in form.fields}
    return {
        name: "on" if value is True else value for name, value in values.items() if value not in (None, False)
    }


def save(client: Client, record: Any, **changes: Any) -> HttpResponse:
    address = reverse(f"admin:{record._meta.label_lower.replace('.', '_')}_change", args=[record.pk])
    sent = {**typed(client.get(address)), **changes}
    return client.post(address, {name: value for name, value in sent.items() if value is not None})


def test_a_name_that_is_edited_is_written_anew_with_all_names_below(client: Client, curator: Member) -> None:
    species = make_species("hillii")
    tassel = make_cultivar("Silver Tassel")
    below = save(client, tassel, parent=species.pk)
    assert below.status_code == 302, below.context["errors"]
    assert save(client, species, epithet="hillianum").status_code == 302
    tassel.refresh_from_db()
    assert tassel.written == "Platycerium hillianum ‘Silver Tassel’"
    assert Name.history.filter(id=species.pk).latest().history_user == curator.user


def test_a_stale_name_is_refused_and_stays(client: Client) -> None:
    species = make_species("hillii")
    reply = save(client, species, version_seen=species.version - 1, epithet="other")
    assert reply.status_code == 200
    assert "Somebody changed this while you were typing" in reply.content.decode()
    species.refresh_from_db()
    assert species.epithet == "hillii"


def test_what_is_accepted_follows_a_placement(client: Client) -> None:
    old, new = make_species("angolense"), make_species("elephantotis")
    followed = Treatment.objects.create(name="A Fern Account", followed=True)
    reply = client.post(
        reverse("admin:specimens_placement_add"),
        {"name": old.pk, "treatment": followed.pk, "status": Placement.Status.SYNONYM, "accepted": new.pk},
    )
    assert reply.status_code == 302, reply.context["errors"]
    old.refresh_from_db()
    assert old.accepted == new


def test_ticking_another_treatment_moves_the_tick_and_the_accepted_names(client: Client) -> None:
    old, new = make_species("angolense"), make_species("elephantotis")
    first = Treatment.objects.create(name="A Fern Account")
    second = Treatment.objects.create(name="Another Account")
    place_name(name=old, treatment=first, status=Placement.Status.ACCEPTED)
    place_name(name=old, treatment=second, status=Placement.Status.SYNONYM, accepted=new)
    follow_treatment(first)
    old.refresh_from_db()
    assert old.accepted in (None, old)
    reply = save(client, second, follow="on")
    assert reply.status_code == 302, reply.context["errors"]
    assert list(Treatment.objects.filter(followed=True)) == [second]
    old.refresh_from_db()
    assert old.accepted == new


def test_the_tick_is_not_taken_from_the_only_treatment_followed(client: Client) -> None:
    followed = Treatment.objects.create(name="A Fern Account", followed=True)
    reply = save(client, followed, follow=None)
    assert "Tick the other one instead" in reply.content.decode()
    followed.refresh_from_db()
    assert followed.followed


def test_a_plant_keeps_who_changed_it_and_refuses_a_stale_page(client: Client, curator: Member) -> None:
    plant = make_plant(make_member(), make_cultivar(), notes="slow")
    assert save(client, plant, notes="quick").status_code == 302
    plant.refresh_from_db()
    assert (plant.notes, Specimen.history.filter(id=plant.pk).latest().history_user) == (
        "quick",
        curator.user,
    )
    seen = plant.version
    edit_specimen(plant, version=seen, notes="theirs")
    reply = save(client, plant, version_seen=seen, notes="mine")
    assert "Somebody changed this while you were typing" in reply.content.decode()
    plant.refresh_from_db()
    assert plant.notes == "theirs"


def test_no_admin_page_shows_where_a_plant_grows(client: Client) -> None:
    plant = make_plant(make_member(), make_cultivar(), growing_place="attic window")
    pages = [
        reverse("admin:specimens_specimen_changelist"),
        reverse("admin:specimens_specimen_changelist") + "?q=attic",
        reverse("admin:specimens_specimen_change", args=[plant.pk]),
        reverse("admin:specimens_specimen_history", args=[plant.pk]),
    ]
    for page in pages:
        reply = client.get(page)
        assert reply.status_code == 200
        assert "attic window" not in reply.content.decode()
