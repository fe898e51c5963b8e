"""Took a pup: the form, its question, and its being taken once."""

import pytest

from frondkeep.society.models import Appearance, Member
from specimens.models import Specimen
from tests.cast import make_cultivar, make_member, make_plant, make_species, token
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db


def answers(keeper: Member | str, **more: object) -> dict[str, object]:
    kept_by = keeper if isinstance(keeper, str) else str(keeper.keeper.pk)
    return {
        "submission": str(token()),
        "count": 1,
        "kind": "pup",
        "taken": "spring 2024",
        "kept_by": kept_by,
    } | more


def test_two_pups_bear_their_parents_name_and_get_codes_of_their_own(ada: Member) -> None:
    parent = make_plant(ada, make_cultivar())
    response = signed_in(ada).post(f"/plants/{parent.code}/pup/", answers(ada, count=2))
    assert response.status_code == 302
    pups = list(Specimen.objects.filter(division__parent=parent))
    assert [pup.identification.name for pup in pups] == [parent.identification.name] * 2
    assert len({pup.code for pup in pups}) == 2
    assert {pup.acquired.words for pup in pups} == {"spring 2024"}
    assert {pup.keeper for pup in pups} == {ada.keeper}


def test_after_saving_codes_and_date_are_echoed(ada: Member) -> None:
    parent = make_plant(ada)
    html = signed_in(ada).post(f"/plants/{parent.code}/pup/", answers(ada), follow=True).content.decode()
    pup = Specimen.objects.get(division__parent=parent)
    assert f'Logged: <span class="code">{pup.code}</span>' in html
    assert "We stored" in html


def test_the_same_form_sent_twice_gives_one_pup(ada: Member) -> None:
    parent = make_plant(ada)
    client, form = signed_in(ada), answers(ada)
    for _ in range(3):
        client.post(f"/plants/{parent.code}/pup/", form)
    assert Specimen.objects.filter(division__parent=parent).count() == 1


def test_a_pup_can_go_to_a_member_who_appears_by_name(ada: Member, jonas: Member) -> None:
    parent = make_plant(ada)
    form = answers("other", other_keeper="jonas wren")
    assert signed_in(ada).post(f"/plants/{parent.code}/pup/", form).status_code == 302
    assert Specimen.objects.get(division__parent=parent).keeper == jonas.keeper


def test_nobody_learns_by_this_form_who_is_a_member(ada: Member) -> None:
    shy = make_member("Shy Person", appears=Appearance.A_MEMBER)
    parent = make_plant(ada)
    for more in ({}, {"other_keeper_id": shy.keeper.pk}):
        form = answers("other", other_keeper="Shy Person", **more)
        response = signed_in(ada).post(f"/plants/{parent.code}/pup/", form)
        assert response.status_code == 422
        assert "We know nobody by this name" in response.content.decode()
    assert not Specimen.objects.filter(division__parent=parent).exists()


def test_a_mistake_keeps_everything_typed(ada: Member) -> None:
    parent = make_plant(ada)
    form = answers(ada, count=99, taken="the year of the cat", label_text="my tag")
    response = signed_in(ada).post(f"/plants/{parent.code}/pup/", form)
    html = response.content.decode()
    assert response.status_code == 422
    for typed in ('value="99"', 'value="the year of the cat"', 'value="my tag"', form["submission"]):
        assert typed in html
    assert html.count('href="#id_') >= 2


def test_a_date_that_was_read_is_echoed_when_the_form_comes_back(ada: Member) -> None:
    parent = make_plant(ada)
    response = signed_in(ada).post(f"/plants/{parent.code}/pup/", answers(ada, count=0))
    assert "We will store" in response.content.decode()


def test_a_fern_that_makes_no_pups_is_asked_about_once_not_refused(ada: Member) -> None:
    parent = make_plant(ada, make_species("superbum", solitary=True))
    client, form = signed_in(ada), answers(ada)
    response = client.post(f"/plants/{parent.code}/pup/", form)
    assert response.status_code == 422
    assert "Did it make one?" in response.content.decode()
    assert client.post(f"/plants/{parent.code}/pup/", {**form, "sure": "on"}).status_code == 302
    assert Specimen.objects.filter(division__parent=parent).count() == 1


def test_the_curator_logs_a_pup_for_the_keeper(ada: Member, curator: Member) -> None:
    parent = make_plant(ada)
    signed_in(curator).post(f"/plants/{parent.code}/pup/", answers(ada))
    assert Specimen.objects.get(division__parent=parent).keeper == ada.keeper
