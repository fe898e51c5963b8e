"""A plant cannot come from itself: such a change is refused, with the codes, and nothing of it is kept."""

import pytest

from lineage.services.descent import DescentError
from lineage.services.planning import plan_everything
from specimens.models import Came, Holds, ParentageClaim, SeenBy
from specimens.services.claims import claim_parentage
from specimens.services.sowings import record_sowing
from specimens.services.specimens import edit_specimen
from tests.lineage.kin import make_name, make_plant, make_pup, parents, spores_of

pytestmark = pytest.mark.django_db


def sporeling_of(plant, **fields):
    return make_plant(came=Came.SOWING, sowing=record_sowing(sources=spores_of(plant)), **fields)


def test_a_descendant_claimed_as_parent_is_refused_with_the_codes_of_the_circle():
    first = make_plant(name=make_name("andinum"))
    middle = sporeling_of(first)
    last = sporeling_of(middle)
    bystander = sporeling_of(last)
    with pytest.raises(DescentError, match="cannot come from itself") as refused:
        claim_parentage(first, says="self", parents=spores_of(last), ground="label")
    assert {*refused.value.codes} == {first.code, middle.code, last.code}
    assert bystander.code not in str(refused.value)
    assert all(code in str(refused.value) for code in refused.value.codes)


def test_nothing_of_a_refused_claim_is_kept():
    first = make_plant(name=make_name("andinum"))
    last = sporeling_of(first)
    with pytest.raises(DescentError):
        claim_parentage(first, says="self", parents=spores_of(last), ground="label")
    assert not ParentageClaim.objects.exists()
    assert parents(last) == [first]
    assert list(plan_everything().words()) == []


def test_a_piece_and_a_sporeling_together_can_close_a_circle():
    first = make_plant(name=make_name("andinum"))
    sporeling = sporeling_of(make_pup(first))
    with pytest.raises(DescentError) as refused:
        claim_parentage(first, says="piece", parents=spores_of(sporeling), ground="label")
    assert sporeling.code in refused.value.codes


def test_a_plant_claimed_as_its_own_parent_is_refused():
    plant = make_plant(name=make_name("andinum"))
    with pytest.raises(DescentError, match=plant.code):
        claim_parentage(plant, says="self", parents=spores_of(plant), ground="label")


def test_a_pot_of_several_cannot_come_from_a_piece_of_it():
    pot = make_plant(name=make_name("andinum"), holds=Holds.SEVERAL)
    piece = make_pup(pot, holds=Holds.SEVERAL)
    with pytest.raises(DescentError) as refused:
        claim_parentage(pot, says="piece", parents=spores_of(piece), ground="label")
    assert piece.code in refused.value.codes


def test_the_words_show_no_plant_that_is_not_shared():
    first = make_plant(name=make_name("andinum"))
    kept_back = sporeling_of(first, seen_by=SeenBy.KEEPER)
    with pytest.raises(DescentError) as refused:
        claim_parentage(first, says="self", parents=spores_of(kept_back), ground="label")
    assert kept_back.code not in str(refused.value)
    assert "a plant not shown" in str(refused.value)


def test_a_pot_that_turns_out_to_hold_one_plant_makes_its_pieces_one_plant_again():
    pot = make_plant(name=make_name("andinum"), holds=Holds.SEVERAL)
    piece = make_pup(pot)
    assert parents(piece) == []
    edit_specimen(pot, version=pot.version, holds=Holds.ONE)
    assert parents(piece) == [pot]
