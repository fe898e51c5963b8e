"""The page of one plant: what each reader may read on it."""

from datetime import date

import pytest

from frondkeep.society.models import Appearance, Member
from specimens.models import Came, Identification, SeenBy, Treatment
from specimens.services.identifications import identify
from specimens.services.names import place_name
from specimens.services.sowings import Source, record_sowing
from tests.cast import (
    make_cultivar,
    make_household,
    make_meeting,
    make_member,
    make_plant,
    make_pup,
    make_species,
    when,
)
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db


def page(member: Member, plant) -> str:
    response = signed_in(member).get(f"/plants/{plant.code}/")
    assert response.status_code == 200
    return response.content.decode()


def status(member: Member, plant) -> int:
    return signed_in(member).get(f"/plants/{plant.code}/").status_code


def test_a_plant_not_shared_is_not_there_for_others(ada: Member, jonas: Member, curator: Member) -> None:
    plant = make_plant(ada, seen_by=SeenBy.KEEPER)
    assert [status(who, plant) for who in (ada, jonas, curator)] == [200, 404, 200]


def test_a_plant_not_shared_is_there_for_the_household(ada: Member) -> None:
    bram, mei = make_member("Bram Lode"), make_member("Mei Lode")
    plant = make_plant(make_household("Bram and Mei", bram, mei), seen_by=SeenBy.KEEPER)
    assert [status(who, plant) for who in (bram, mei, ada)] == [200, 200, 404]


def test_the_address_takes_a_code_without_its_letter_and_no_wrong_letter(ada: Member) -> None:
    plant = make_plant(ada)
    client = signed_in(ada)
    assert client.get(f"/plants/{plant.code[:-2]}/").status_code == 200
    assert client.get(f"/plants/{plant.code.lower()}/").status_code == 200
    wrong = "B" if plant.code[-1] == "A" else "A"
    assert client.get(f"/plants/{plant.code[:-1]}{wrong}/").status_code == 404


def test_the_lead_is_the_sentence_about_the_plant(ada: Member) -> None:
    parent = make_plant(ada, make_cultivar())
    pup = make_pup(parent, ada, acquired=when("spring 2024", date(2024, 3, 1), date(2024, 5, 31)))
    html = page(ada, pup)
    assert f"Pup of {parent.code}" in html
    assert "spring 2024" in html


def test_a_parent_the_reader_may_not_see_is_a_plant_not_shown(ada: Member, jonas: Member) -> None:
    parent = make_plant(ada, make_cultivar(), seen_by=SeenBy.KEEPER)
    pup = make_pup(parent, jonas, label_text="a tag", name=None)
    html = page(jonas, pup)
    assert parent.code not in html
    assert "a plant not shown" in html
    assert parent.code in page(ada, pup)


def test_pieces_the_reader_may_not_see_have_no_code(ada: Member, jonas: Member) -> None:
    parent = make_plant(ada, make_cultivar())
    shown = make_pup(parent, jonas)
    hidden = make_pup(parent, ada, seen_by=SeenBy.KEEPER)
    html = page(jonas, parent)
    assert shown.code in html
    assert hidden.code not in html
    assert "And a plant not shown." in html


def test_the_growing_place_is_its_keepers_alone(ada: Member, jonas: Member, curator: Member) -> None:
    plant = make_plant(ada, growing_place="behind the shed")
    assert "behind the shed" in page(ada, plant)
    assert "behind the shed" not in page(jonas, plant)
    assert "behind the shed" not in page(curator, plant)


def test_a_keeper_appears_as_they_chose(jonas: Member, curator: Member) -> None:
    shy = make_member("Shy Person", appears=Appearance.A_MEMBER)
    plant = make_plant(shy)
    assert "Shy Person" not in page(jonas, plant)
    assert "A member" in page(jonas, plant)
    assert "Shy Person" in page(curator, plant)


def test_words_about_the_giver_are_read_by_the_keeper_and_the_curator(
    ada: Member, jonas: Member, curator: Member
) -> None:
    plant = make_plant(ada, from_words="old Mr Fenn")
    assert "old Mr Fenn" in page(ada, plant)
    assert "old Mr Fenn" in page(curator, plant)
    assert "old Mr Fenn" not in page(jonas, plant)


def test_all_that_was_thought_stands_there_with_its_grounds(ada: Member, curator: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"))
    identify(plant, name=make_cultivar("Bronze Duchess"), by=curator.user, ground="looks")
    html = page(ada, plant)
    assert "Formerly thought" in html
    assert "Silver Tassel" in html
    assert "Bronze Duchess" in html
    assert "by its looks" in html
    assert "from its tag" in html


def test_an_old_name_is_shown_beside_the_accepted_one(ada: Member) -> None:
    old, new = make_species("angolense"), make_species("elephantotis")
    treatment = Treatment.objects.create(name="A treatment", followed=True)
    place_name(name=old, treatment=treatment, status="synonym", accepted=new)
    html = page(ada, make_plant(ada, old))
    assert "elephantotis" in html
    assert "on its record; the society follows another name" in html
    assert "angolense" in html


def test_a_sporeling_is_written_ex_its_parents_name(ada: Member) -> None:
    parent = make_plant(ada, make_cultivar("Silver Tassel"))
    sowing = record_sowing(sources=(Source(specimen=parent),))
    plant = make_plant(ada, parent.identification.name, came=Came.SOWING, sowing=sowing)
    assert "ex ‘Silver Tassel’" in page(ada, plant)
    assert sowing.code in page(ada, parent)


def test_a_members_other_view_waits_and_only_the_curator_may_answer(ada: Member, curator: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"), by=curator.user, ground="looks")
    identify(plant, name=make_cultivar("Bronze Duchess"), by=ada.user, ground="looks")
    proposal = Identification.objects.get(standing="proposed")
    assert "It waits for the curator" in page(ada, plant)
    assert "Take this name" in page(curator, plant)
    answer = f"/plants/{plant.code}/proposals/{proposal.pk}/"
    assert signed_in(ada).post(answer, {"answer": "accept"}).status_code == 404
    assert signed_in(curator).post(answer, {"answer": "accept"}).status_code == 302
    plant.refresh_from_db()
    assert plant.identification.name.epithet == "Bronze Duchess"
    assert plant.identification.by_curator


def test_a_declined_view_stays_on_record_and_is_answered_once(ada: Member, curator: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"), by=curator.user, ground="looks")
    identify(plant, name=make_cultivar("Bronze Duchess"), by=ada.user, ground="looks")
    proposal = Identification.objects.get(standing="proposed")
    answer = f"/plants/{plant.code}/proposals/{proposal.pk}/"
    signed_in(curator).post(answer, {"answer": "decline"})
    assert signed_in(curator).post(answer, {"answer": "accept"}).status_code == 404
    plant.refresh_from_db()
    assert plant.identification.name.epithet == "Silver Tassel"
    assert Identification.objects.get(pk=proposal.pk).standing == "earlier"


def test_only_who_may_change_a_plant_is_offered_to(ada: Member, jonas: Member, curator: Member) -> None:
    plant = make_plant(ada)
    assert "Took a pup" in page(ada, plant)
    assert "Took a pup" in page(curator, plant)
    assert "Took a pup" not in page(jonas, plant)


@pytest.mark.parametrize("action", ["pup", "identify", "ended", "edit", "photo"])
def test_the_forms_of_anothers_plant_are_not_there(ada: Member, jonas: Member, action: str) -> None:
    plant = make_plant(ada)
    client = signed_in(jonas)
    assert client.get(f"/plants/{plant.code}/{action}/").status_code == 404
    assert client.post(f"/plants/{plant.code}/{action}/").status_code == 404
    assert signed_in(ada).get(f"/plants/{plant.code}/{action}/").status_code == 200


def test_the_way_of_a_plant_tells_its_meeting(ada: Member) -> None:
    assert "Autumn meeting" in page(ada, make_plant(ada, meeting=make_meeting()))


def test_words_that_name_a_member_who_does_not_wish_it_say_a_member(jonas: Member, curator: Member) -> None:
    shy = make_member("Shy Person", appears=Appearance.A_MEMBER)
    plant = make_plant(shy, make_cultivar(), identified_by_words="shy person", by=None)
    other = make_plant(shy, make_cultivar(), identified_by_words="Bailey, 1911", by=None)
    assert "hy person" not in page(jonas, plant)
    assert "Shy person" in page(curator, plant)
    assert "Bailey, 1911" in page(jonas, other)


def test_without_an_answer_a_view_goes_on_waiting(ada: Member, curator: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"), by=curator.user, ground="looks")
    identify(plant, name=make_cultivar("Bronze Duchess"), by=ada.user, ground="looks")
    proposal = Identification.objects.get(standing="proposed")
    signed_in(curator).post(f"/plants/{plant.code}/proposals/{proposal.pk}/")
    proposal.refresh_from_db()
    assert proposal.standing == "proposed"
