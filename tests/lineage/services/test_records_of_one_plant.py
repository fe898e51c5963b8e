"""Two records decided to be of one plant are one node, the earlier record's."""

import pytest
from django.db import transaction

from lineage.models import LineageNode
from lineage.services import affected, facts, records
from lineage.services.planning import plan_everything
from specimens.changes import announce
from specimens.models import Came
from specimens.services.claims import claim_parentage
from specimens.services.sowings import record_sowing
from tests.lineage.kin import made_of, make_name, make_plant, make_pup, node, parents, spores_of

pytestmark = pytest.mark.django_db


@pytest.fixture
def decide(monkeypatch):
    """Decide that a later record is of an earlier one's plant, or (with None) that it is not after all."""

    def decided(later, earlier):
        same = {} if earlier is None else {later.pk: earlier.pk}
        for module in (affected, facts, records):
            monkeypatch.setattr(module, "same_plants", lambda: same)
        with transaction.atomic():
            announce("specimens", [one.pk for one in (later, earlier) if one is not None])
        assert list(plan_everything().words()) == []

    return decided


def sporeling_of(plant):
    return make_plant(came=Came.SOWING, sowing=record_sowing(sources=spores_of(plant)))


def test_the_later_record_has_no_node_and_its_children_are_the_earlier_ones(decide):
    earlier, later = make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi"))
    pup, sporeling = make_pup(later), sporeling_of(later)
    claimed = make_plant()
    claim_parentage(claimed, says="self", parents=spores_of(later), ground="record")
    decide(later, earlier)
    assert not LineageNode.objects.filter(specimen=later).exists()
    assert parents(pup) == parents(sporeling) == parents(claimed) == [earlier]
    assert made_of(pup) == {"andinum": (1, 1)}


def test_pages_of_the_later_record_say_what_is_known_of_the_earlier(decide):
    earlier, later = make_plant(name=make_name("andinum")), make_plant()
    decide(later, earlier)
    assert facts.facts_of_specimen(later).node_id == node(earlier).pk


def test_taken_back_each_is_a_plant_again(decide):
    earlier, later = make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi"))
    sporeling = sporeling_of(later)
    decide(later, earlier)
    decide(later, None)
    assert parents(sporeling) == [later]
    assert made_of(sporeling) == {"ridleyi": (1, 1)}


def test_a_claim_about_the_later_record_holds_where_the_earlier_has_none(decide):
    parent = make_plant(name=make_name("andinum"))
    earlier, later = make_plant(), make_plant()
    claim_parentage(later, says="self", parents=spores_of(parent), ground="record")
    decide(later, earlier)
    assert parents(earlier) == [parent]
