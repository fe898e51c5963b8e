"""A piece of which plant, whose spores, from whom — and what is asked about it."""

import pytest

from frondkeep.society.models import Appearance, Member
from specimens.models import Came, Specimen
from specimens.naming.codes import Code
from specimens.services.shown_names import shown_name
from specimens.services.sowings import Source, record_sowing
from tests.cast import make_cultivar, make_member, make_plant, make_pup, make_species
from tests.desk.conftest import signed_in
from tests.desk.logging.typing import confirmed, filled, logged_plants, sent, text_of

pytestmark = pytest.mark.django_db


def piece(parent: str = "", **more: object) -> dict[str, object]:
    return {"came": "piece", "parent_text": parent} | more


def test_a_pup_is_tied_to_its_parent_and_its_giver(ada: Member, jonas: Member) -> None:
    parent = make_plant(ada)
    form = confirmed(filled(piece(parent.code, from_text="Ada Quill")))
    signed_in(jonas).post("/log/", form)
    pup = logged_plants(form)[0]
    assert (pup.division.parent, pup.from_keeper, pup.keeper) == (parent, ada.keeper, jonas.keeper)


def test_a_code_may_lack_its_letter_and_its_dashes(ada: Member) -> None:
    parent = make_plant(ada)
    form = confirmed(filled(piece(parent.code[:-2].replace("-", " "))))
    signed_in(ada).post("/log/", form)
    assert logged_plants(form)[0].division.parent == parent


def test_a_slip_in_a_code_is_answered(ada: Member) -> None:
    parent = make_plant(ada)
    year, number, letter = parent.code.split("-")
    slip = f"{year}-{int(number) + 3:04d}-{letter}"
    response = sent(signed_in(ada), filled(piece(slip)))
    assert response.status_code == 422
    assert f"Did you mean {parent.code}?" in text_of(response)
    assert f'value="{slip}"' in response.content.decode()


def test_a_plant_not_shown_and_none_at_all_are_answered_alike(ada: Member, jonas: Member) -> None:
    hidden = make_plant(jonas, seen_by="keeper")
    there = text_of(sent(signed_in(ada), filled(piece(hidden.code)))).replace(hidden.code, "CODE")
    nowhere = str(Code(2026, 999))
    none = text_of(sent(signed_in(ada), filled(piece(nowhere)))).replace(nowhere, "CODE")
    assert "We find no plant CODE that you may see." in there
    assert there == none


def test_a_slip_never_names_a_plant_not_shown(ada: Member, jonas: Member) -> None:
    hidden = make_plant(jonas, seen_by="keeper")
    year, number, letter = hidden.code.split("-")
    response = sent(signed_in(ada), filled(piece(f"{year}-{int(number) + 3:04d}-{letter}")))
    assert response.status_code == 422
    assert hidden.code not in text_of(response)


def test_an_old_number_finds_its_plant_the_givers_first(ada: Member, jonas: Member) -> None:
    make_plant(jonas, society_number="B 17")
    parent = make_plant(ada, society_number="B 17")
    form = confirmed(filled(piece("b 17", from_text="Ada Quill")))
    signed_in(jonas).post("/log/", form)
    assert logged_plants(form)[0].division.parent == parent


def test_a_number_that_two_plants_bear_is_asked_about(ada: Member) -> None:
    first, second = make_plant(ada, society_number="B 17"), make_plant(ada, society_number="B 17")
    response = sent(signed_in(ada), filled(piece("B 17")))
    assert response.status_code == 422
    assert f"{first.code}, {second.code}" in text_of(response)


def test_words_for_a_parent_are_kept(ada: Member) -> None:
    form = confirmed(filled(piece("the big one on the shed", from_text="a neighbour")))
    signed_in(ada).post("/log/", form)
    plant = logged_plants(form)[0]
    assert plant.division.parent_words == "the big one on the shed"
    assert plant.from_words == "a neighbour"


def test_the_givers_plants_of_that_name_are_offered(ada: Member, jonas: Member) -> None:
    name = make_cultivar()
    parent, other = make_plant(ada, name), make_plant(ada, make_cultivar("Wavy Fan"))
    form = filled(piece(label_text="Silver Tassel", from_text="Ada Quill"))
    said = text_of(sent(signed_in(jonas), form))
    assert "Was it taken from one of these?" in said
    assert parent.code in said
    assert other.code not in said
    assert "a plant still to be chosen" in said
    signed_in(jonas).post("/log/", confirmed(form, p0_parent=parent.code))
    assert logged_plants(form)[0].division.parent == parent


def test_of_the_givers_plants_only_those_shown_are_offered(ada: Member, jonas: Member) -> None:
    name = make_cultivar()
    hidden = make_plant(ada, name, seen_by="keeper")
    form = filled(piece(label_text="Silver Tassel", from_text="Ada Quill"))
    assert hidden.code not in text_of(sent(signed_in(jonas), form))
    sneaked = sent(signed_in(jonas), confirmed(form, p0_parent=hidden.code))
    assert sneaked.status_code == 302
    assert logged_plants(form)[0].division.parent is None


def test_who_does_not_appear_by_name_is_kept_as_words(ada: Member) -> None:
    make_member("Shy Person", appears=Appearance.A_MEMBER)
    form = confirmed(filled({"came": "outside", "from_text": "Shy Person"}))
    signed_in(ada).post("/log/", form)
    plant = logged_plants(form)[0]
    assert (plant.from_keeper, plant.from_words) == (None, "Shy Person")


def test_two_keepers_of_one_name_are_asked_about(ada: Member) -> None:
    make_member("Kit Vale", user=False)
    chosen = make_member("Kit Vale", user=False)
    card = {"came": "outside", "from_text": "Kit Vale"}
    assert "Two keepers bear this name." in text_of(sent(signed_in(ada), filled(card)))
    form = confirmed(filled(card | {"from_keeper_id": chosen.keeper.pk}))
    signed_in(ada).post("/log/", form)
    assert logged_plants(form)[0].from_keeper == chosen.keeper


def test_whose_spores_may_be_plants_names_and_words(ada: Member) -> None:
    name, plant = make_species(), make_plant(ada)
    words = f"{plant.code}, Platycerium bifurcatum, a friend's basket, {plant.code}"
    form = confirmed(filled({"came": "sowing", "spores_of": words}))
    signed_in(ada).post("/log/", form)
    sources = list(logged_plants(form)[0].sowing.sources.order_by("pk"))
    found = [(each.specimen, each.name, each.words) for each in sources]
    assert found == [(plant, None, ""), (None, name, ""), (None, None, "a friend's basket")]


def test_spores_not_told_of_are_not_known(ada: Member) -> None:
    form = confirmed(filled({"came": "sowing"}))
    signed_in(ada).post("/log/", form)
    plant = logged_plants(form)[0]
    assert plant.came == Came.SOWING
    assert not plant.sowing.sources.exists()


def test_a_clone_on_a_sporelings_tag_is_its_parents_name(ada: Member) -> None:
    name = make_cultivar()
    form = confirmed(filled({"came": "sowing", "label_text": "Silver Tassel"}))
    said = text_of(signed_in(ada).post("/log/", form, follow=True))
    assert [source.name for source in logged_plants(form)[0].sowing.sources.all()] == [name]
    assert "Platycerium ex ‘Silver Tassel’" in said


def test_ex_on_a_tag_asks_whether_it_came_from_spores(ada: Member) -> None:
    name = make_cultivar()
    form = filled({"came": "outside", "label_text": "ex 'Silver Tassel'"})
    assert "The tag says “ex”" in text_of(sent(signed_in(ada), form))
    signed_in(ada).post("/log/", confirmed(form, p0_ex="yes"))
    plant = logged_plants(form)[0]
    assert [source.name for source in plant.sowing.sources.all()] == [name]
    assert shown_name(plant).plain == "Platycerium ex ‘Silver Tassel’"


@pytest.mark.parametrize("came", ["outside", "piece"])
def test_a_plant_whose_tag_says_ex_never_bears_the_clones_name(ada: Member, came: str) -> None:
    make_cultivar()
    form = confirmed(filled({"came": came, "label_text": "ex 'Silver Tassel'"}), p0_ex="no")
    signed_in(ada).post("/log/", form)
    plant = logged_plants(form)[0]
    assert shown_name(plant).plain == "Platycerium"
    assert plant.label_text == "ex 'Silver Tassel'"


def test_a_sowing_on_record_is_joined_by_its_code(ada: Member, jonas: Member) -> None:
    sowing = record_sowing(sources=(Source(words="a basket"),), by=ada)
    form = confirmed(filled({"came": "sowing", "spores_of": sowing.code}))
    signed_in(ada).post("/log/", form)
    assert logged_plants(form)[0].sowing == sowing
    stranger = sent(signed_in(jonas), filled({"came": "sowing", "spores_of": record_sowing(by=ada).code}))
    assert "We find no plant" in text_of(stranger)


def test_what_does_not_fit_how_it_came_is_said_to_be_left_out(ada: Member) -> None:
    said = text_of(sent(signed_in(ada), filled({"came": "outside", "parent_text": "the big one"})))
    assert "“the big one” is left out" in said


def test_collecting_wild_comes_with_a_caution(ada: Member) -> None:
    assert "leave of whoever owns the land" in text_of(sent(signed_in(ada), filled({"came": "wild"})))


def test_a_second_piece_is_asked_about(ada: Member) -> None:
    first = make_plant(ada, make_cultivar())
    form = filled({"label_text": "Silver Tassel", "came": "outside"})
    assert "A piece of this is on record" in text_of(sent(signed_in(ada), form))
    signed_in(ada).post("/log/", confirmed(form, p0_twice="another"))
    assert logged_plants(form)[0] != first
    assert Specimen.objects.count() == 2


def test_a_plant_that_is_there_already_is_not_logged_again(ada: Member) -> None:
    first = make_plant(ada, make_cultivar())
    form = confirmed(filled({"label_text": "Silver Tassel", "came": "outside"}), p0_twice=first.code)
    said = text_of(signed_in(ada).post("/log/", form, follow=True))
    assert "On record before; not logged again." in said
    assert logged_plants(form) == [first]
    assert Specimen.objects.count() == 1


def test_a_second_pup_of_one_parent_is_asked_about(ada: Member, jonas: Member) -> None:
    parent = make_plant(ada)
    make_pup(parent, jonas)
    assert "A piece of this is on record" in text_of(sent(signed_in(jonas), filled(piece(parent.code))))


def test_a_species_grown_twice_is_no_question(ada: Member) -> None:
    make_plant(ada, make_species())
    said = text_of(sent(signed_in(ada), filled({"label_text": "Platycerium bifurcatum", "came": "outside"})))
    assert "on record with this keeper" not in said


@pytest.mark.parametrize(("answer", "came"), [("yes", Came.PIECE), ("no", Came.NOT_KNOWN)])
def test_a_pup_of_a_fern_that_makes_none_is_a_question(ada: Member, answer: str, came: str) -> None:
    parent = make_plant(ada, make_species("superbum", solitary=True))
    form = filled(piece(parent.code))
    assert "makes no pups by nature" in text_of(sent(signed_in(ada), form))
    signed_in(ada).post("/log/", confirmed(form, p0_pup=answer))
    assert logged_plants(form)[0].came == came
