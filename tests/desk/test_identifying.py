"""Saying what a plant is: the name, the question about an unknown one, the pieces."""

import pytest

from frondkeep.society.models import Member
from specimens.models import Identification, Name
from tests.cast import make_cultivar, make_plant, make_pup, token
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db


def answers(text: str, **more: object) -> dict[str, object]:
    return {"submission": str(token()), "name_text": text, "ground": "looks", "covers": "one"} | more


def test_a_name_on_record_becomes_what_the_plant_is_thought_to_be(ada: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"))
    make_cultivar("Bronze Duchess")
    form = answers("Platycerium 'Bronze Duchess'", qualifier="cf.", on="2024", remarks="broad fronds")
    assert signed_in(ada).post(f"/plants/{plant.code}/identify/", form).status_code == 302
    plant.refresh_from_db()
    now = plant.identification
    assert (now.name.epithet, now.qualifier, now.on.words) == ("Bronze Duchess", "cf.", "2024")
    assert plant.label_text == "Silver Tassel"
    assert plant.identifications.get(standing="earlier").name.epithet == "Silver Tassel"


def test_an_unknown_name_is_asked_about_with_what_it_looks_like(ada: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"))
    client, form = signed_in(ada), answers("Silvered Tassle")
    response = client.post(f"/plants/{plant.code}/identify/", form)
    html = response.content.decode()
    assert response.status_code == 422
    assert "Did you mean one of these?" in html
    assert "Platycerium ‘Silver Tassel’" in html
    assert 'value="Silvered Tassle"' in html
    assert not Name.objects.filter(epithet__icontains="Silvered").exists()


def test_the_answer_to_the_question_is_taken(ada: Member) -> None:
    plant = make_plant(ada, make_cultivar("Bronze Duchess"))
    meant = make_cultivar("Silver Tassel")
    form = answers("Silvered Tassle", meant=meant.pk)
    assert signed_in(ada).post(f"/plants/{plant.code}/identify/", form).status_code == 302
    plant.refresh_from_db()
    assert plant.identification.name == meant


def test_a_name_kept_as_typed_is_not_yet_checked(ada: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"))
    form = answers("Platycerium 'Silvered Tassle'", meant="new")
    assert signed_in(ada).post(f"/plants/{plant.code}/identify/", form).status_code == 302
    plant.refresh_from_db()
    assert (plant.identification.name.epithet, plant.identification.name.checked) == (
        "Silvered Tassle",
        False,
    )


def test_the_pieces_are_meant_only_where_that_was_said(ada: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"))
    pup = make_pup(plant, ada)
    bronze = make_cultivar("Bronze Duchess")
    page = signed_in(ada).get(f"/plants/{plant.code}/identify/").content.decode()
    assert "it and its 1 piece" in page
    signed_in(ada).post(f"/plants/{plant.code}/identify/", answers("Bronze Duchess"))
    pup.refresh_from_db()
    assert pup.identification.name.epithet == "Silver Tassel"
    signed_in(ada).post(f"/plants/{plant.code}/identify/", answers("Bronze Duchess", covers="pieces"))
    pup.refresh_from_db()
    assert pup.identification.name == bronze


def test_the_form_sent_twice_makes_one_identification(ada: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"))
    make_cultivar("Bronze Duchess")
    client, form = signed_in(ada), answers("Bronze Duchess")
    client.post(f"/plants/{plant.code}/identify/", form)
    client.post(f"/plants/{plant.code}/identify/", form)
    assert plant.identifications.count() == 2


def test_a_members_view_of_what_the_curator_named_waits(ada: Member, curator: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"), by=curator.user, ground="looks")
    make_cultivar("Bronze Duchess")
    response = signed_in(ada).post(f"/plants/{plant.code}/identify/", answers("Bronze Duchess"), follow=True)
    assert "it waits for the curator" in response.content.decode()
    assert Identification.objects.get(name__epithet="Bronze Duchess").standing == "proposed"


def test_a_date_that_cannot_be_read_keeps_the_name_typed(ada: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"))
    response = signed_in(ada).post(
        f"/plants/{plant.code}/identify/", answers("Silver Tassel", on="when pigs fly")
    )
    assert response.status_code == 422
    assert 'value="Silver Tassel"' in response.content.decode()
