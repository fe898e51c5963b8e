"""Before a decision one can see how many plants' lineage it would touch."""

import pytest

from specimens.changes import foresee
from specimens.models import Came, ParentageClaim
from specimens.services.claims import claim_parentage
from specimens.services.sowings import record_sowing
from tests.lineage.kin import make_cultivar, make_name, make_plant, make_pup, spores_of

pytestmark = pytest.mark.django_db


def lineage_touched(kind, *records):
    return [(one.count, one.words) for one in foresee(kind, [r.pk for r in records]) if one.kind == "lineage"]


def test_a_plant_with_a_piece_and_a_sporeling_counts_three():
    plant = make_plant(name=make_name("andinum"))
    pup = make_pup(plant)
    make_plant(came=Came.SOWING, sowing=record_sowing(sources=spores_of(pup)))
    make_plant(name=make_name("ridleyi"))
    assert lineage_touched("specimens", plant) == [(3, "The lineage of 3 plants rests on this.")]


def test_a_cultivar_name_counts_all_who_bear_it_and_come_of_them():
    cultivar = make_cultivar("Silver Tassel")
    make_pup(make_plant(name=cultivar))
    assert lineage_touched("names", cultivar) == [(2, "The lineage of 2 plants rests on this.")]


def test_a_claim_counts_the_plant_it_is_about():
    plant = make_plant()
    claim_parentage(plant, says="unknown", ground="looks")
    claim = ParentageClaim.objects.get()
    assert lineage_touched("claims", claim) == [(1, "The lineage of one plant rests on this.")]


def test_a_name_nobody_bears_touches_nothing():
    assert lineage_touched("names", make_name("andinum")) == []
