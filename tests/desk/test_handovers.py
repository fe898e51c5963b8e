"""Hand-overs on their pages: telling, answering, picking from a table, and what each side may read."""

import re
from datetime import date

import pytest

from frondkeep.society.models import Appearance, Member
from specimens.models import HandOver, SeenBy, Specimen
from specimens.services.handover_claims import deny
from specimens.services.handovers import accept, withdraw
from tests.cast import make_cultivar, make_household, make_meeting, make_member, make_plant, token
from tests.desk.conftest import signed_in
from tests.specimens.services.handing import make_claim, make_offer, make_whole_offer, on_the_table

pytestmark = pytest.mark.django_db


@pytest.fixture
def plant(ada: Member) -> Specimen:
    return make_plant(ada, make_cultivar())


def answers(to: str, **more: object) -> dict[str, object]:
    """Gave away, as a browser sends it."""
    form = {"submission": str(token()), "what": "piece", "kind": "pup", "count": 1, "way": "member"}
    return form | {"receiver_text": to, "on": "June 2025", "label_text": ""} | more


def gave(who: Member, plant: Specimen, **form: object):
    return signed_in(who).post(f"/plants/{plant.code}/gave/", answers(**form))


def press(who: Member, told: HandOver, what: str, **sent: object):
    return signed_in(who).post(f"{told.get_absolute_url()}{what}/", sent)


def page(who: Member, address: str = "/hand-overs/") -> str:
    html = signed_in(who).get(address).content.decode()
    return " ".join(re.sub(r"<[^>]+>", "", html).split())


def test_a_plants_page_leads_to_gave_away(ada: Member, jonas: Member, plant: Specimen) -> None:
    address = f"/plants/{plant.code}/gave/"
    assert address in signed_in(ada).get(plant.get_absolute_url()).content.decode()
    assert address not in signed_in(jonas).get(plant.get_absolute_url()).content.decode()


def test_told_by_the_giver_it_waits_and_one_tap_makes_the_record(
    ada: Member, jonas: Member, plant: Specimen
) -> None:
    assert gave(ada, plant, to="jonas wren").status_code == 302
    told = HandOver.objects.get()
    assert "Ada Quill gave you a pup of" in page(jonas)
    assert "waits for jonas wren" in page(ada)
    assert "1 hand-over to answer" in page(jonas, "/")
    assert "to answer" not in page(ada, "/")
    answer = signed_in(jonas).post(f"{told.get_absolute_url()}accept/", follow=True).content.decode()
    piece = Specimen.objects.get(division__parent=plant)
    assert piece.code in answer
    assert piece.keeper == jonas.keeper


def test_the_same_form_sent_three_times_tells_once(ada: Member, jonas: Member, plant: Specimen) -> None:
    form, client = answers("Jonas Wren", count=2), signed_in(ada)
    for _ in range(3):
        assert client.post(f"/plants/{plant.code}/gave/", form).status_code == 302
    assert HandOver.objects.count() == 2


def test_a_whole_plant_goes_with_its_day(ada: Member, jonas: Member, plant: Specimen) -> None:
    gave(ada, plant, to="Jonas Wren", what="plant", count="", kind="")
    press(jonas, HandOver.objects.get(), "accept")
    keeping = plant.keepings.get(is_open=True)
    assert (keeping.keeper, keeping.since.words) == (jonas.keeper, "June 2025")


def test_without_a_day_it_was_the_meetings(ada: Member, jonas: Member, plant: Specimen) -> None:
    meeting = make_meeting()
    gave(ada, plant, to="Jonas Wren", meeting=meeting.pk, on="")
    assert HandOver.objects.get().handed.earliest == meeting.date


MISTAKES = [
    ({"to": ""}, "Type the name"),
    ({"to": "Jonas Wren", "on": "the 99th of Foo"}, "could not read"),
    ({"to": "", "way": "table"}, "Which meeting"),
    ({"to": "Jonas Wren", "count": 99}, "20"),
    ({"to": "Ada Quill"}, "with them already"),
]


@pytest.mark.parametrize(("typed", "said"), MISTAKES, ids=str)
def test_a_mistake_is_answered_and_everything_typed_stays(ada, jonas, plant, typed, said) -> None:
    response = gave(ada, plant, **typed | {"label_text": "silv. tassle"})
    html = response.content.decode()
    assert response.status_code == 422
    assert said in html
    assert 'value="silv. tassle"' in html
    assert f'value="{typed["to"]}"' in html or not typed["to"]
    assert not HandOver.objects.exists()


def test_the_giver_does_not_learn_who_is_a_member(ada: Member, plant: Specimen) -> None:
    shy = make_member("Shy Person", appears=Appearance.A_MEMBER)
    read = []
    for words in ("Shy Person", "Nobody Known"):
        gave(ada, plant, to=words)
        seen = page(ada).replace(words, "—").partition("Waiting for others")[2]
        read.append(seen.partition("Settled")[0].partition("Frondkeep")[0].strip())
        withdraw(HandOver.objects.get(state="offered"), by=ada.user)
    assert "waits for —" in read[0]
    assert read[0] == read[1]
    assert shy.keeper.hand_overs_received.count() == 1


def test_words_of_the_giver_are_for_the_giver(ada: Member, jonas: Member, plant: Specimen) -> None:
    shy = make_member("Shy Person", appears=Appearance.A_MEMBER)
    told = make_offer(plant, ada, "Shy Person")
    accept(told, by=shy.user)
    assert "gave you a pup" in page(shy)
    assert "Shy Person" not in page(jonas) + page(jonas, plant.get_absolute_url())


def test_a_receiver_reads_no_code_of_a_plant_not_shared(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, make_cultivar(), seen_by=SeenBy.KEEPER)
    told = make_offer(plant, ada, jonas)
    for address in ("/hand-overs/", told.get_absolute_url()):
        html = signed_in(jonas).get(address).content.decode()
        assert plant.code not in html
        assert "a plant not shown" in html
    press(jonas, told, "accept")
    assert plant.code not in signed_in(jonas).get("/hand-overs/").content.decode()


def test_a_giver_reads_no_code_of_a_piece_not_shared(ada: Member, jonas: Member, plant: Specimen) -> None:
    claim = make_claim(plant, jonas, seen_by=SeenBy.KEEPER)
    html = signed_in(ada).get("/hand-overs/").content.decode()
    assert "Jonas Wren logged a pup of" in html
    assert claim.piece.code not in html


def test_a_giver_who_does_not_appear_by_name_is_a_member(jonas: Member) -> None:
    shy = make_member("Shy Person", appears=Appearance.A_MEMBER)
    make_offer(make_plant(shy), shy, jonas)
    assert "A member gave you" in page(jonas)
    assert "Shy Person" not in page(jonas)


def test_a_claim_is_answered_by_a_tap(ada: Member, jonas: Member, plant: Specimen) -> None:
    claim = make_claim(plant, jonas)
    assert "waits for Ada Quill" in page(jonas)
    assert press(ada, claim, "right").status_code == 302
    assert "both agree" in page(jonas)


def test_a_denied_claim_is_the_curators_to_settle(ada, jonas, curator, plant) -> None:
    claim = make_claim(plant, jonas)
    press(ada, claim, "wrong")
    assert "the curator is asked" in page(jonas)
    assert "It is a piece of it" in page(curator)
    assert press(curator, claim, "right").status_code == 302
    assert Specimen.objects.get(pk=claim.piece_id).division.parent == plant


def test_a_curator_leaves_a_denial_as_it_is(ada, jonas, curator, plant) -> None:
    claim = deny(make_claim(plant, jonas), by=ada.user)
    assert press(curator, claim, "settled").status_code == 302
    assert "Nothing waits for you" in page(curator)


def test_who_comes_late_is_told_how_it_stands(ada: Member, jonas: Member, plant: Specimen) -> None:
    told = make_offer(plant, ada, jonas)
    withdraw(told, by=ada.user)
    response = press(jonas, told, "accept")
    assert response.status_code == 409
    assert "taken back" in response.content.decode()
    assert Specimen.objects.count() == 1


def test_a_plant_that_went_meanwhile_is_told_of(ada: Member, jonas: Member, plant: Specimen) -> None:
    told = make_whole_offer(plant, ada, jonas)
    plant.keepings.all().delete()
    response = press(jonas, told, "accept")
    assert response.status_code == 422
    assert "any longer" in response.content.decode()


def test_the_receiver_says_which_plant_they_logged_already(
    ada: Member, jonas: Member, plant: Specimen
) -> None:
    logged = make_plant(jonas, from_keeper=ada.keeper, label_text="a gift")
    told = make_offer(plant, ada, jonas)
    assert f"It is {logged.code}" in page(jonas, told.get_absolute_url())
    press(jonas, told, "accept", logged=logged.code)
    logged.refresh_from_db()
    assert logged.division.parent == plant
    assert press(jonas, told, "accept", logged=logged.code).status_code == 302
    assert Specimen.objects.count() == 2


def test_a_tap_does_not_keep_twice_what_may_be_logged_already(
    ada: Member, jonas: Member, plant: Specimen
) -> None:
    make_plant(jonas, from_keeper=ada.keeper)
    told = make_offer(plant, ada, jonas)
    asked = press(jonas, told, "accept")
    assert asked.status_code == 422
    assert "may be this one" in asked.content.decode()
    assert press(jonas, told, "accept", logged="").status_code == 302
    assert Specimen.objects.count() == 3


def test_whoever_has_a_plant_of_another_says_so_and_its_keeper_answers(ada, jonas, plant) -> None:
    address = f"/plants/{plant.code}/got/"
    assert address in signed_in(jonas).get(plant.get_absolute_url()).content.decode()
    assert address not in signed_in(ada).get(plant.get_absolute_url()).content.decode()
    form = {"submission": str(token()), "keeper": jonas.keeper.pk, "on": "June 2025"}
    for _ in range(2):
        assert signed_in(jonas).post(address, form).status_code == 302
    assert "Jonas Wren says they have" in page(ada)
    assert "You say you have" in page(jonas)
    press(ada, HandOver.objects.get(), "right")
    assert Specimen.objects.get().keeper == jonas.keeper


def test_a_wrong_day_of_a_plant_one_got_is_answered(ada: Member, jonas: Member, plant: Specimen) -> None:
    form = {"submission": str(token()), "keeper": jonas.keeper.pk, "on": "the 99th of Foo"}
    response = signed_in(jonas).post(f"/plants/{plant.code}/got/", form)
    assert response.status_code == 422
    assert 'value="the 99th of Foo"' in response.content.decode()
    assert not HandOver.objects.exists()


def test_a_plant_of_another_is_none_that_the_receiver_logged(
    ada: Member, jonas: Member, plant: Specimen
) -> None:
    bos = make_plant(make_member("Bo Reed"), from_keeper=ada.keeper)
    response = press(jonas, make_offer(plant, ada, jonas), "accept", logged=bos.code)
    assert Specimen.objects.get(pk=bos.pk).division is None
    assert response.status_code in (302, 422)


def test_one_of_a_couple_takes_it_for_both(ada: Member, jonas: Member, plant: Specimen) -> None:
    house = make_household("The house", jonas, make_member("Mei Lode"))
    told = make_offer(plant, ada, jonas)
    assert "The house" in page(jonas, told.get_absolute_url())
    press(jonas, told, "accept", keeper=house.keeper.pk)
    assert Specimen.objects.get(division__parent=plant).keeper == house.keeper


def test_different_parents_are_shown_to_both(
    ada: Member, jonas: Member, curator: Member, plant: Specimen
) -> None:
    make_offer(plant, ada, jonas)
    claim = make_claim(make_plant(ada, label_text="Gold"), jonas)
    for who in (ada, jonas, curator):
        assert f"told of a piece of {plant.code} instead" in page(who)
    assert press(jonas, claim, "two-pieces").status_code == 302
    assert "instead" not in page(ada)


def test_from_a_table_one_takes_and_the_next_is_told(ada: Member, jonas: Member, plant: Specimen) -> None:
    meeting = make_meeting()
    assert gave(ada, plant, to="", way="table", meeting=meeting.pk, count=1).status_code == 302
    lying = HandOver.objects.get()
    bo = make_member("Bo Reed")
    table = f"/hand-overs/table/{meeting.pk}/"
    assert str(meeting) in page(jonas)
    assert "I took this" in page(jonas, table)
    assert "I took this" not in page(ada, table)
    assert press(jonas, lying, "pick", keeper=jonas.keeper.pk).status_code == 302
    late = press(bo, lying, "pick", keeper=bo.keeper.pk)
    assert late.status_code == 409
    assert "Somebody was quicker" in late.content.decode()
    assert Specimen.objects.get(division__parent=plant).keeper == jonas.keeper
    assert "The table is empty" in page(bo, table)


def test_nobody_picks_for_others(ada: Member, jonas: Member, plant: Specimen) -> None:
    (lying,) = on_the_table(plant, ada)
    bo = make_member("Bo Reed")
    assert press(jonas, lying, "pick", keeper=bo.keeper.pk).status_code == 422
    lying.refresh_from_db()
    assert lying.state == "offered"


def test_a_meeting_without_a_table_has_no_such_page(jonas: Member) -> None:
    meeting = make_meeting("Spring", date(2025, 3, 1))
    assert signed_in(jonas).get(f"/hand-overs/table/{meeting.pk}/").status_code == 404


def test_given_outside_it_has_left(ada: Member, plant: Specimen) -> None:
    gave(ada, plant, to="a neighbour", way="outside", what="plant")
    plant.refresh_from_db()
    assert plant.state == "left"
    assert "a neighbour" in page(ada)


def test_a_curator_looks_at_everybodys(ada: Member, jonas: Member, curator: Member, plant: Specimen) -> None:
    make_offer(plant, ada, jonas)
    assert "Ada Quill gave Jonas Wren" not in page(curator)
    assert "Ada Quill gave Jonas Wren" in page(curator, "/hand-overs/?all")
    assert "Ada Quill gave Jonas Wren" not in page(make_member("Bo Reed"), "/hand-overs/?all")
