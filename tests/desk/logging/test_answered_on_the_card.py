"""A tag is answered on its card already; what was answered there is not asked again, unless the tag changed."""

import pytest

from frondkeep.society.models import Member
from tests.cast import make_cultivar, make_plant, make_species
from tests.desk.conftest import signed_in
from tests.desk.logging.typing import confirmed, filled, logged_plants, sent

pytestmark = pytest.mark.django_db


def asked(member: Member, **query: object) -> str:
    response = signed_in(member).get("/log/tag/", {"what": "tag", "place": 0} | query)
    assert response.status_code == 200
    return response.content.decode()


def test_a_slip_is_answered_with_the_field_of_that_card(ada: Member) -> None:
    make_plant(ada, make_cultivar())
    html = asked(ada, text="silverd tassle", place=3)
    assert "Did you mean ‘Silver Tassel’?" in html
    assert "One member grows it." in html
    assert 'name="plants-3-tag_means"' in html
    assert 'name="plants-3-tag_about" value="silverd tassle"' in html


@pytest.mark.parametrize("text", ["Silver Tassel", "no tag", "", "x" * 600])
def test_a_tag_plainly_known_or_saying_nothing_gets_no_answer(ada: Member, text: str) -> None:
    make_cultivar()
    assert "notice" not in asked(ada, text=text)


@pytest.mark.parametrize("query", [{"what": "body"}, {"place": "x"}, {"place": "1" * 9}])
def test_nonsense_is_not_found(ada: Member, query: dict[str, str]) -> None:
    assert signed_in(ada).get("/log/tag/", {"what": "tag", "place": 0} | query).status_code == 404


def test_what_was_answered_on_the_card_stands_on_the_page_to_look_over(ada: Member) -> None:
    name = make_cultivar()
    answers = {"tag_means": name.pk, "tag_about": "silverd tassle"}
    html = sent(signed_in(ada), filled({"label_text": "silverd tassle"} | answers)).content.decode()
    assert f'value="{name.pk}" id="id_plants-0-tag_means_0" checked' in html
    assert "thought to be Platycerium ‘Silver Tassel’" in html


def test_an_answer_about_another_tag_is_asked_anew(ada: Member) -> None:
    make_cultivar()
    answers = {"tag_means": "mine", "tag_genus": "?", "tag_about": "something else"}
    form = filled({"label_text": "silverd tassle"} | answers)
    assert "checked" not in sent(signed_in(ada), form).content.decode()


def test_a_card_that_comes_back_keeps_its_answer(ada: Member) -> None:
    make_cultivar()
    answers = {"tag_means": "mine", "tag_genus": "Platycerium", "tag_about": "silverd tassle"}
    form = filled({"label_text": "silverd tassle", "came": ""} | answers)
    for address, status in (("/log/", 422), ("/log/another/", 200)):
        response = signed_in(ada).post(address, form)
        assert response.status_code == status
        html = response.content.decode()
        assert 'value="mine" id="id_plants-0-tag_means_1" checked' in html
        assert '<option value="Platycerium" selected>' in html


def test_an_answer_moves_up_with_its_card(ada: Member) -> None:
    name = make_cultivar()
    second = {"label_text": "silverd tassle", "tag_means": name.pk, "tag_about": "silverd tassle"}
    html = signed_in(ada).post("/log/without/0/", filled({}, second)).content.decode()
    assert f'value="{name.pk}" id="id_plants-0-tag_means_0" checked' in html


def test_what_one_thinks_is_asked_about_likewise(ada: Member) -> None:
    make_species()
    name = make_cultivar()
    assert 'name="plants-0-think_means"' in asked(ada, what="think", text="silverd tassle")
    form = confirmed(filled({"think": "silverd tassle"}), p0_think_means=name.pk)
    assert signed_in(ada).post("/log/", form).status_code == 302
    assert logged_plants(form)[0].identification.name == name


def test_before_anything_is_typed_the_givers_plants_of_that_tag_are_offered(
    ada: Member, jonas: Member
) -> None:
    tagged, other = make_plant(ada, make_cultivar()), make_plant(ada, make_cultivar("Wavy Fan"))
    along = {"plants-0-from_keeper_id": ada.keeper.pk, "plants-0-label_text": "Silver Tassel"}
    offered = text_of_fragment(signed_in(jonas).get("/suggest/plants/", along))
    assert tagged.code in offered
    assert other.code not in offered
    along["plants-0-label_text"] = "no tag"
    offered = text_of_fragment(signed_in(jonas).get("/suggest/plants/", along))
    assert tagged.code in offered
    assert other.code in offered


def text_of_fragment(response: object) -> str:
    return response.content.decode()
