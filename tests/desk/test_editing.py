"""Changing a plant's record: nobody's edit is lost unseen."""

import pytest

from frondkeep.society.models import Member
from specimens.models import SeenBy, Specimen
from tests.cast import make_plant
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db


def answers(plant: Specimen, **more: object) -> dict[str, object]:
    return {
        "version": plant.version,
        "label_text": plant.label_text,
        "holds": "one",
        "seen_by": "members",
    } | more


def test_a_keeper_changes_their_plants_record(ada: Member) -> None:
    plant = make_plant(ada, label_text="Silver")
    form = answers(plant, notes="on cork", growing_place="lean-to", acquired="about 1990", seen_by="keeper")
    response = signed_in(ada).post(f"/plants/{plant.code}/edit/", form, follow=True)
    plant.refresh_from_db()
    assert (plant.notes, plant.growing_place, plant.acquired.words) == ("on cork", "lean-to", "about 1990")
    assert plant.seen_by == SeenBy.KEEPER
    assert "We stored" in response.content.decode()


def test_the_curator_changes_all_but_the_growing_place(ada: Member, curator: Member) -> None:
    plant = make_plant(ada, growing_place="lean-to")
    page = signed_in(curator).get(f"/plants/{plant.code}/edit/").content.decode()
    assert "lean-to" not in page
    form = answers(plant, growing_place="elsewhere", society_number="S9")
    signed_in(curator).post(f"/plants/{plant.code}/edit/", form)
    plant.refresh_from_db()
    assert (plant.growing_place, plant.society_number) == ("lean-to", "S9")


def test_a_member_cannot_give_the_societys_numbers(ada: Member) -> None:
    plant = make_plant(ada, society_number="S1")
    signed_in(ada).post(f"/plants/{plant.code}/edit/", answers(plant, society_number="S9"))
    plant.refresh_from_db()
    assert plant.society_number == "S1"


def test_the_second_of_two_edits_sees_both_versions_and_keeps_what_was_typed(
    ada: Member, curator: Member
) -> None:
    plant = make_plant(ada)
    stale = answers(plant, notes="mine")
    signed_in(curator).post(f"/plants/{plant.code}/edit/", answers(plant, notes="theirs"))
    response = signed_in(ada).post(f"/plants/{plant.code}/edit/", stale)
    html = response.content.decode()
    assert response.status_code == 409
    assert "Somebody changed this while you were typing" in html
    assert "<td>theirs</td><td>mine</td>" in html
    assert ">\nmine</textarea>" in html
    plant.refresh_from_db()
    assert plant.notes == "theirs"


def test_saving_again_after_seeing_both_keeps_the_second(ada: Member, curator: Member) -> None:
    plant = make_plant(ada)
    stale = answers(plant, notes="mine")
    signed_in(curator).post(f"/plants/{plant.code}/edit/", answers(plant, notes="theirs"))
    response = signed_in(ada).post(f"/plants/{plant.code}/edit/", stale)
    form = response.context["form"]
    assert signed_in(ada).post(f"/plants/{plant.code}/edit/", form.data).status_code == 302
    plant.refresh_from_db()
    assert plant.notes == "mine"


def test_a_mistake_answers_422_with_everything_typed(ada: Member) -> None:
    plant = make_plant(ada)
    response = signed_in(ada).post(
        f"/plants/{plant.code}/edit/", answers(plant, last_seen_alive="soon", notes="long words")
    )
    assert response.status_code == 422
    assert 'value="soon"' in response.content.decode()
    assert "long words" in response.content.decode()


def test_looking_at_the_form_changes_nothing(ada: Member) -> None:
    plant = make_plant(ada)
    signed_in(ada).get(f"/plants/{plant.code}/edit/")
    assert Specimen.objects.get(pk=plant.pk).version == plant.version
