"""Who logs a piece of another's plant has its keeper asked, or is recognised in what the keeper told."""

import pytest

from frondkeep.society.models import Member
from specimens.models import HandOver, Specimen
from tests.cast import make_cultivar, make_plant
from tests.desk.conftest import signed_in
from tests.desk.logging.typing import confirmed, filled, logged_plants, sent
from tests.specimens.services.handing import make_offer

pytestmark = pytest.mark.django_db


@pytest.fixture
def plant(ada: Member) -> Specimen:
    return make_plant(ada, make_cultivar(), label_text="no tag")


def piece_of(plant: Specimen, **more: str) -> dict[str, str]:
    return {"came": "piece", "kind": "pup", "parent_text": plant.code} | more


def test_its_keeper_is_asked(ada: Member, jonas: Member, plant: Specimen) -> None:
    form = filled(piece_of(plant))
    assert sent(signed_in(jonas), confirmed(form)).status_code == 302
    claim = HandOver.objects.waiting_for(ada.user).get()
    assert (claim.plant, claim.piece, claim.receiver) == (plant, logged_plants(form)[0], jonas.keeper)


def test_looking_it_over_asks_nobody_yet(jonas: Member, plant: Specimen) -> None:
    assert sent(signed_in(jonas), filled(piece_of(plant))).status_code == 200
    assert not HandOver.objects.exists()


def test_the_same_form_sent_twice_asks_once(jonas: Member, plant: Specimen) -> None:
    form, client = confirmed(filled(piece_of(plant))), signed_in(jonas)
    for _ in range(3):
        sent(client, form)
    assert HandOver.objects.count() == 1


def test_two_pieces_on_one_form_join_the_one_that_was_told(
    ada: Member, jonas: Member, plant: Specimen
) -> None:
    told = make_offer(plant, ada, jonas)
    today = filled(piece_of(plant), piece_of(plant), acquired="")
    sent(signed_in(jonas), confirmed(today))
    told.refresh_from_db()
    assert told.state == "agreed"
    assert [each.state for each in HandOver.objects.exclude(pk=told.pk)] == ["claimed"]


def test_a_pup_of_ones_own_plant_is_nobodys_business(ada: Member, plant: Specimen) -> None:
    assert sent(signed_in(ada), confirmed(filled(piece_of(plant)))).status_code == 302
    assert plant.divisions.count() == 1
    assert not HandOver.objects.exists()


def test_a_giver_in_words_is_not_asked(jonas: Member, plant: Specimen) -> None:
    sent(signed_in(jonas), confirmed(filled(piece_of(plant, from_text="a friend of hers"))))
    assert plant.divisions.count() == 1
    assert not HandOver.objects.exists()
