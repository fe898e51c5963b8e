"""Log one plant or several: what is kept of each, and where it ends."""

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.utils import timezone

from frondkeep.society.models import Member
from specimens.models import Came, Specimen
from tests.cast import make_cultivar, make_household, make_meeting, make_member, make_plant, make_user
from tests.desk.conftest import signed_in
from tests.desk.logging.typing import confirmed, filled, logged_plants, sent, text_of

pytestmark = pytest.mark.django_db


def test_the_empty_form_asks_for_a_tag_and_a_way_and_offers_today(ada: Member) -> None:
    today = timezone.localdate()
    page = signed_in(ada).get("/log/")
    assert page.status_code == 200
    assert f'value="{today.day} {today:%B} {today.year}"' in page.content.decode()
    for words in ("What the tag says", "How it came", "A pup or piece", "From spores", "Don’t know"):
        assert words in text_of(page)


def test_a_meeting_of_this_week_is_chosen_with_its_day(ada: Member) -> None:
    meeting = make_meeting(on=timezone.localdate())
    html = signed_in(ada).get("/log/").content.decode()
    assert f'<option value="{meeting.pk}" selected>' in html


def test_nothing_is_kept_before_it_was_looked_over(ada: Member) -> None:
    response = sent(signed_in(ada), filled({"label_text": "no tag"}))
    assert response.status_code == 200
    assert "Nothing is kept yet" in text_of(response)
    assert "We will store: between 1 March and 31 May 2024" in text_of(response)
    assert not Specimen.objects.exists()


def test_the_sentence_before_saving_is_the_sentence_after(ada: Member) -> None:
    name = make_cultivar()
    form = filled({"label_text": "P. 'Silver Tassel'", "came": "outside", "from_text": "a nursery"})
    client = signed_in(ada)
    before = text_of(sent(client, form))
    after = text_of(client.post("/log/", confirmed(form), follow=True))
    sentence = "Bought or given, from a nursery in spring 2024; thought to be Platycerium ‘Silver Tassel’"
    assert sentence in before
    assert sentence in after
    assert logged_plants(form)[0].identification.name == name


def test_three_plants_in_one_go_get_three_codes_in_order(ada: Member) -> None:
    tags = ["no tag", "unknown", "?"]
    form = confirmed(filled(*({"label_text": tag} for tag in tags)))
    response = signed_in(ada).post("/log/", form, follow=True)
    plants = logged_plants(form)
    assert [plant.label_text for plant in plants] == tags
    assert [plant.keeper for plant in plants] == [ada.keeper] * 3
    assert "Logged: 3 plants" in text_of(response)
    assert all(plant.code in text_of(response) for plant in plants)


def test_all_that_was_typed_is_kept(ada: Member) -> None:
    meeting = make_meeting()
    card = {
        "label_text": "no tag",
        "came": "wild",
        "own_number": "A-17",
        "seen_by": "keeper",
        "holds": "kinds",
        "notes": "On a log.",
    }
    form = confirmed(filled(card, meeting=meeting.pk, acquired="about 1950"))
    signed_in(ada).post("/log/", form)
    plant = logged_plants(form)[0]
    assert (plant.came, plant.own_number, plant.seen_by, plant.holds, plant.notes) == (
        Came.WILD,
        "A-17",
        "keeper",
        "kinds",
        "On a log.",
    )
    assert (plant.meeting, plant.acquired.words, plant.logged_by) == (meeting, "about 1950", ada.user)


def test_a_day_left_empty_is_the_day_of_the_meeting(ada: Member) -> None:
    meeting = make_meeting()
    form = confirmed(filled({}, meeting=meeting.pk, acquired=""))
    signed_in(ada).post("/log/", form)
    assert logged_plants(form)[0].acquired.earliest == meeting.date


def test_a_card_left_empty_is_not_logged(ada: Member) -> None:
    form = filled(
        {"label_text": "no tag"}, {"label_text": "", "came": "", "kind": "pup", "seen_by": "members"}
    )
    signed_in(ada).post("/log/", confirmed(form))
    assert len(logged_plants(form)) == 1


def test_another_plant_without_scripts_keeps_everything_typed(ada: Member) -> None:
    form = filled({"label_text": "Silver <b>", "came": "wild", "notes": "On a log."}, acquired="spring 98")
    html = signed_in(ada).post("/log/another/", form).content.decode()
    assert 'value="Silver &lt;b&gt;"' in html
    assert 'value="wild" id="id_plants-0-came_3" checked' in html
    assert "On a log." in html
    assert 'value="spring 98"' in html
    assert form["submission"] in html
    assert 'name="plants-TOTAL_FORMS" value="2"' in html
    assert "field-error" not in html


def test_a_plant_can_be_left_out_again(ada: Member) -> None:
    form = filled({"label_text": "first"}, {"label_text": "second"}, {"label_text": "third"})
    html = signed_in(ada).post("/log/without/1/", form).content.decode()
    assert 'value="first"' in html
    assert 'value="third"' in html
    assert 'value="second"' not in html
    assert 'name="plants-TOTAL_FORMS" value="2"' in html


def test_one_can_go_back_and_change_something(ada: Member) -> None:
    form = confirmed(filled({"label_text": "first", "came": "piece"}))
    html = signed_in(ada).post("/log/change/", form).content.decode()
    assert 'value="first"' in html
    assert 'value="piece" id="id_plants-0-came_0" checked' in html
    assert not Specimen.objects.exists()


def test_only_whoever_logged_them_sees_the_page_of_codes(ada: Member, jonas: Member, curator: Member) -> None:
    form = confirmed(filled({}))
    signed_in(ada).post("/log/", form)
    address = f"/log/{form['submission']}/"
    assert signed_in(ada).get(address).status_code == 200
    assert signed_in(jonas).get(address).status_code == 404
    assert signed_in(curator).get(address).status_code == 404


def test_the_same_form_five_times_is_one_set_of_plants(ada: Member) -> None:
    client, form = signed_in(ada), confirmed(filled({}, {}))
    answers = [client.post("/log/", form) for _ in range(5)]
    assert {answer.url for answer in answers} == {f"/log/{form['submission']}/"}
    assert Specimen.objects.count() == 2


def test_a_form_of_somebody_else_is_refused(ada: Member, jonas: Member) -> None:
    form = confirmed(filled({}))
    signed_in(ada).post("/log/", form)
    assert signed_in(jonas).post("/log/", form).status_code == 403
    assert Specimen.objects.count() == 1


def test_partners_say_whose_the_plants_are() -> None:
    bram, mei = make_member("Bram Lode"), make_member("Mei Lode")
    household = make_household("Bram and Mei", bram, mei)
    assert "Bram and Mei" in text_of(signed_in(bram).get("/log/"))
    form = confirmed(filled({}, kept_by=household.keeper.pk))
    signed_in(bram).post("/log/", form)
    assert logged_plants(form)[0].keeper == household.keeper


def test_nobody_logs_for_a_stranger(ada: Member, jonas: Member) -> None:
    form = confirmed(filled({"kept_text": "Jonas Wren"}, kept_by=jonas.keeper.pk))
    signed_in(ada).post("/log/", form)
    assert logged_plants(form)[0].keeper == ada.keeper


def test_the_curator_logs_each_plant_for_its_keeper(curator: Member) -> None:
    shy = make_member("Shy Person", user=False, appears="member")
    form = confirmed(filled({"kept_text": "shy person"}, {"kept_text": "The society"}, {}))
    assert "Kept by" in text_of(signed_in(curator).get("/log/"))
    signed_in(curator).post("/log/", form)
    keepers = [plant.keeper for plant in logged_plants(form)]
    assert keepers[0] == shy.keeper
    assert keepers[1].kind == "society"
    assert keepers[2] == curator.keeper


def test_a_new_card_takes_over_whose_plant_it_is_and_is_still_an_empty_one(curator: Member) -> None:
    form = filled({"kept_text": "The society"})
    client = signed_in(curator)
    html = client.post("/log/another/", form).content.decode()
    assert html.count('value="The society"') == 2
    form = confirmed(form | {"plants-TOTAL_FORMS": 2, "plants-1-kept_text": "The society"})
    client.post("/log/", form)
    assert len(logged_plants(form)) == 1


def test_the_curator_is_told_where_there_is_no_such_keeper(curator: Member) -> None:
    response = sent(signed_in(curator), filled({"kept_text": "Nobody Here"}))
    assert response.status_code == 422
    assert "We know nobody by this name" in text_of(response)


def test_a_sign_in_that_is_no_member_is_told_so(db: None) -> None:
    client = Client()
    client.force_login(make_user("steward"))
    assert "belongs to no member yet" in text_of(client.get("/log/"))
    assert sent(client, filled({})).status_code == 422


def test_looking_over_asks_the_database_as_often_whatever_is_on_record(ada: Member) -> None:
    form = filled({"label_text": "silverd tassle", "came": "outside"})
    client = signed_in(ada)

    def asked() -> int:
        # The second time: what is kept in memory is up to date then.
        sent(client, form)
        with CaptureQueriesContext(connection) as context:
            sent(client, form)
        return len(context)

    make_plant(ada, make_cultivar())
    few = asked()
    for number in range(10):
        make_plant(ada, make_cultivar(f"Wavy Fan {number}"))
    assert asked() == few
