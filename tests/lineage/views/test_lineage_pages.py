"""The pages of a plant's lineage and of a cultivar's: what they show, and to whom."""

import pytest
from django.urls import reverse

from specimens.models import Came, SeenBy
from specimens.services.sowings import record_sowing
from tests.cast import make_curator, make_member
from tests.lineage.kin import make_cultivar, make_name, make_plant, spores_of

pytestmark = pytest.mark.django_db


@pytest.fixture
def member(client):
    member = make_member("Ada Quill")
    client.force_login(member.user, backend="frondkeep.society.sign_in.NameOrEmailBackend")
    return member


def page_of(client, plant):
    return client.get(reverse("plant-lineage", args=[plant.code]))


def sporeling_of(parent, **fields):
    return make_plant(came=Came.SOWING, sowing=record_sowing(sources=spores_of(parent)), **fields)


def test_a_lineage_is_drawn_and_listed(client, member):
    parent = make_plant(name=make_name("andinum"))
    answer = page_of(client, sporeling_of(parent))
    told = answer.content.decode()
    assert answer.status_code == 200
    assert told.count(f'href="{parent.get_absolute_url()}"') == 2
    assert "First generation from spores since the line starts." in told
    assert "style=" not in told


def test_an_ancestor_not_shared_is_nowhere_on_the_page(client, member):
    secret = make_plant(name=make_name("andinum"), seen_by=SeenBy.KEEPER, label_text="under the stairs")
    told = page_of(client, sporeling_of(secret)).content.decode()
    assert secret.code not in told
    assert "a plant not shown" in told


def test_the_lineage_of_a_plant_not_shared_is_not_there(client, member):
    assert page_of(client, make_plant(seen_by=SeenBy.KEEPER)).status_code == 404


def test_the_curator_sees_the_lineage_of_every_plant(client):
    client.force_login(make_curator().user, backend="frondkeep.society.sign_in.NameOrEmailBackend")
    assert page_of(client, make_plant(seen_by=SeenBy.KEEPER)).status_code == 200


@pytest.mark.parametrize("code", ["2026-9999-Z", "nonsense"])
def test_a_code_nobody_has_is_not_there(client, member, code):
    assert client.get(f"/plants/{code}/lineage/").status_code == 404


def test_signed_out_one_is_asked_to_sign_in(client):
    answer = page_of(client, make_plant())
    assert (answer.status_code, answer.url.split("?")[0]) == (302, reverse("sign-in"))


def test_a_clone_has_a_lineage_and_a_species_says_why_it_has_none(client, member):
    andinum = make_name("andinum")
    clone = make_cultivar("Silver Tassel", parent=andinum)
    drawn = client.get(reverse("name-lineage", args=[clone.pk])).content.decode()
    assert "Made of" in drawn
    told = client.get(reverse("name-lineage", args=[andinum.pk])).content.decode()
    assert "does not stand for one plant" in told


def test_no_answer_to_a_post(client, member):
    assert client.post(reverse("plant-lineage", args=[make_plant().code])).status_code == 405
