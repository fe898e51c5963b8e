"""What a tag says is kept letter for letter; what it means is asked before saving."""

import pytest
from django.db import IntegrityError

from frondkeep.desk.logging import writing
from frondkeep.society.models import Member
from specimens.models import Identification, Name, Placement, Treatment
from specimens.services.names import edit_name, follow_treatment, place_name
from tests.cast import make_cultivar, make_plant, make_species
from tests.desk.conftest import signed_in
from tests.desk.logging.typing import confirmed, filled, logged_plants, sent, text_of

pytestmark = pytest.mark.django_db


def moved() -> tuple[Name, Name]:
    old = make_species("scolopendrium", "Phyllitis")
    new = make_species("scolopendrium", "Asplenium")
    treatment = Treatment.objects.create(name="The one we follow")
    follow_treatment(treatment)
    place_name(name=old, treatment=treatment, status=Placement.Status.SYNONYM, accepted=new)
    return old, new


def test_an_old_name_is_answered_with_the_one_of_today(ada: Member) -> None:
    old, new = moved()
    form = filled({"label_text": "Phyllitis scolopendrium", "came": "outside"})
    said = text_of(sent(signed_in(ada), form))
    assert "Phyllitis scolopendrium is now Asplenium scolopendrium: we keep what the tag says." in said
    signed_in(ada).post("/log/", confirmed(form))
    plant = logged_plants(form)[0]
    assert plant.label_text == "Phyllitis scolopendrium"
    assert plant.identification.name == old
    assert plant.identification.name.accepted == new


def test_a_slip_is_asked_about_with_who_grows_it_and_why(ada: Member, jonas: Member) -> None:
    name = make_cultivar()
    make_plant(ada, name)
    make_plant(jonas, name)
    said = text_of(sent(signed_in(jonas), filled({"label_text": "silverd tassle", "came": "outside"})))
    assert "Did you mean ‘Silver Tassel’?" in said
    assert "Two members grow it." in said
    assert "differ by a slip of the pen" in said


def test_a_plant_that_is_not_shared_is_not_counted(ada: Member, jonas: Member) -> None:
    name = make_cultivar()
    make_plant(ada, name)
    make_plant(jonas, name, seen_by="keeper")
    said = text_of(sent(signed_in(ada), filled({"label_text": "silverd tassle", "came": "outside"})))
    assert "One member grows it." in said


def test_the_name_meant_is_used_and_the_tag_kept_as_it_is(ada: Member) -> None:
    name = make_cultivar()
    form = confirmed(filled({"label_text": "silverd tassle"}), p0_tag_means=name.pk)
    signed_in(ada).post("/log/", form)
    plant = logged_plants(form)[0]
    assert (plant.label_text, plant.identification.name) == ("silverd tassle", name)
    assert Name.objects.cultivars().count() == 1


def test_a_name_of_its_own_becomes_one_not_yet_checked(ada: Member) -> None:
    make_cultivar()
    form = confirmed(
        filled({"label_text": "silverd tassle"}), p0_tag_means="mine", p0_tag_genus="Platycerium"
    )
    signed_in(ada).post("/log/", form)
    made = logged_plants(form)[0].identification.name
    assert (made.written, made.checked, made.added_by) == ("Platycerium ‘silverd tassle’", False, ada.user)


def test_without_an_answer_nothing_is_kept_and_the_question_is_pointed_at(ada: Member) -> None:
    make_cultivar()
    response = sent(signed_in(ada), confirmed(filled({"label_text": "silverd tassle"})))
    assert response.status_code == 422
    assert 'href="#id_plants-0-tag_means_0"' in response.content.decode()
    assert 'value="silverd tassle"' in response.content.decode()


def test_a_name_looking_like_nothing_needs_its_genus_only(ada: Member) -> None:
    make_species()
    form = filled({"label_text": "Quite Another"})
    said = text_of(sent(signed_in(ada), form))
    assert "Which genus is “Quite Another”?" in said
    assert "Did you mean" not in said
    assert sent(signed_in(ada), confirmed(form)).status_code == 422
    signed_in(ada).post("/log/", confirmed(form, p0_tag_genus="?"))
    assert logged_plants(form)[0].identification.name.written == "‘Quite Another’"


def test_a_genus_on_the_tag_is_not_asked_for(ada: Member) -> None:
    make_species()
    form = confirmed(filled({"label_text": "Platycerium 'Quite Another'"}))
    assert signed_in(ada).post("/log/", form).status_code == 302
    assert logged_plants(form)[0].identification.name.written == "Platycerium ‘Quite Another’"


def test_two_new_plants_of_one_new_name_share_it(ada: Member) -> None:
    make_species()
    tag = {"label_text": "Platycerium 'Quite Another'"}
    form = confirmed(filled(tag, tag))
    signed_in(ada).post("/log/", form)
    first, second = logged_plants(form)
    assert first.identification.name == second.identification.name


def test_a_formula_of_two_known_names_is_not_asked_about(ada: Member) -> None:
    make_species("bifurcatum")
    make_species("superbum")
    form = confirmed(filled({"label_text": "Platycerium bifurcatum × superbum"}))
    assert signed_in(ada).post("/log/", form).status_code == 302
    assert logged_plants(form)[0].identification.name.rank == "formula"


def test_what_i_think_stands_before_what_the_tag_says(ada: Member) -> None:
    tag, thought = make_cultivar("Silver Tassel"), make_cultivar("Wavy Fan")
    form = confirmed(filled({"label_text": "Silver Tassel", "think": "Wavy Fan"}))
    signed_in(ada).post("/log/", form)
    plant = logged_plants(form)[0]
    assert plant.identification.name == thought
    assert plant.identification.ground == Identification.Ground.LOOKS
    assert [each.name for each in plant.identifications.filter(standing="earlier")] == [tag]


def test_doubt_on_a_tag_is_kept(ada: Member) -> None:
    make_species("superbum")
    form = confirmed(filled({"label_text": "Platycerium cf. superbum"}))
    signed_in(ada).post("/log/", form)
    assert logged_plants(form)[0].identification.qualifier == "cf."


def test_a_plant_without_a_name_is_logged_without_one(ada: Member) -> None:
    form = confirmed(filled({"label_text": "no tag"}))
    signed_in(ada).post("/log/", form)
    assert logged_plants(form)[0].identification.name is None
    assert not Name.objects.exists()


def test_looking_over_leaves_no_name_behind(ada: Member) -> None:
    make_species()
    sent(signed_in(ada), filled({"label_text": "Platycerium 'Quite Another'"}))
    assert not Name.objects.cultivars().exists()


def test_a_name_added_meanwhile_by_somebody_else_is_taken(
    ada: Member, monkeypatch: pytest.MonkeyPatch
) -> None:
    make_species()
    tries: list[str] = []
    name_for_label = writing.name_for_label

    def too_late_at_first(text: str, **more: object) -> tuple[Name | None, str]:
        tries.append(text)
        if len(tries) == 1:
            raise IntegrityError("This name is on record already.")
        return name_for_label(text, **more)

    monkeypatch.setattr(writing, "name_for_label", too_late_at_first)
    form = confirmed(filled({"label_text": "Platycerium 'Quite Another'"}))
    assert signed_in(ada).post("/log/", form).status_code == 302
    assert len(tries) == 2
    assert len(logged_plants(form)) == 1


def test_a_name_changed_a_moment_ago_is_known_by_its_new_spelling(ada: Member) -> None:
    name = make_cultivar("Silver Tassel")
    form = filled({"label_text": "Golden Tassel"})
    assert "Which genus" in text_of(sent(signed_in(ada), form))
    edit_name(name, version=name.version, epithet="Golden Tassel")
    assert "thought to be Platycerium ‘Golden Tassel’" in text_of(sent(signed_in(ada), form))
