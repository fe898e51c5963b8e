"""The giver tells first: pieces and whole plants, the receiver's answer, and taking back."""

from datetime import date

import pytest
from django.db import IntegrityError, transaction

from frondkeep.society.models import Appearance, Member
from lineage.models import LineageNode
from specimens.models import HandOver, SeenBy, Specimen
from specimens.services.handover_steps import AnsweredAlreadyError, HandOverError
from specimens.services.handovers import Gift, accept, give_outside, offer, refuse, withdraw
from specimens.services.specimens import change_keeper, end_specimen
from tests.cast import make_cultivar, make_household, make_meeting, make_member, make_plant, when
from tests.specimens.services.handing import make_offer, make_whole_offer, on_the_table

pytestmark = pytest.mark.django_db
JUNE = when("June 2026", date(2026, 6, 1), date(2026, 6, 30))


@pytest.fixture
def ada(db: None) -> Member:
    return make_member("Ada Quill")


@pytest.fixture
def jonas(db: None) -> Member:
    return make_member("Jonas Wren")


def test_an_offer_waits_for_its_receiver_and_changes_nothing_yet(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, make_cultivar())
    told = make_offer(plant, ada, jonas)
    assert told.state == "offered"
    assert list(HandOver.objects.waiting_for(jonas.user)) == [told]
    assert list(HandOver.objects.waiting_for(ada.user)) == []
    assert Specimen.objects.get() == plant


def test_an_accepted_piece_gets_its_record_and_its_lineage_at_once(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, make_cultivar(), label_text="Silver Tassel!")
    meeting = make_meeting()
    got = accept(make_offer(plant, ada, jonas, kind="crown", on=JUNE, meeting=meeting), by=jonas.user)
    piece = got.piece
    assert (got.state, piece.keeper, piece.from_keeper) == ("agreed", jonas.keeper, ada.keeper)
    assert (piece.division.parent, piece.division.kind, piece.division.by) == (plant, "crown", ada)
    assert (piece.label_text, piece.acquired, piece.meeting) == ("Silver Tassel!", JUNE, meeting)
    assert piece.identification.name == plant.identification.name
    nodes = {node.specimen_id: node for node in LineageNode.objects.filter(specimen__in=[plant, piece])}
    assert nodes[piece.pk].genet == nodes[plant.pk].genet
    assert nodes[piece.pk].clonal_steps == nodes[plant.pk].clonal_steps + 1


def test_a_tag_of_its_own_is_kept_letter_for_letter(ada: Member, jonas: Member) -> None:
    got = accept(make_offer(make_plant(ada), ada, jonas, label_text="silv. tassle"), by=jonas.user)
    assert got.piece.label_text == "silv. tassle"


def test_a_piece_of_a_plant_not_shared_is_not_shared_either(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, seen_by=SeenBy.KEEPER)
    assert accept(make_offer(plant, ada, jonas), by=jonas.user).piece.seen_by == SeenBy.KEEPER


def test_a_whole_plant_changes_hands_with_its_day(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, make_cultivar(), acquired=when("2015", date(2015, 1, 1)))
    accept(make_whole_offer(plant, ada, jonas, on=JUNE), by=jonas.user)
    first, second = plant.keepings.order_by("pk")
    assert (first.keeper, first.is_open, first.until) == (ada.keeper, False, JUNE)
    assert (second.keeper, second.is_open, second.since) == (jonas.keeper, True, JUNE)
    assert Specimen.objects.count() == 1


def test_the_former_keepers_own_affairs_do_not_go_with_the_plant(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, growing_place="the bathroom", own_number="17", now_with="a friend")
    before = plant.version
    accept(make_whole_offer(plant, ada, jonas), by=jonas.user)
    plant.refresh_from_db()
    assert (plant.growing_place, plant.own_number, plant.now_with) == ("", "", "")
    assert plant.version == before + 1


def test_what_was_refused_or_taken_back_changed_nothing(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada)
    assert refuse(make_offer(plant, ada, jonas), by=jonas.user).state == "refused"
    assert withdraw(make_whole_offer(plant, ada, jonas), by=ada.user).state == "withdrawn"
    assert Specimen.objects.get().keeper == ada.keeper


def test_an_answer_is_given_once_and_the_next_is_told(ada: Member, jonas: Member) -> None:
    told = make_offer(make_plant(ada), ada, jonas)
    withdraw(told, by=ada.user)
    for late in (accept, refuse, withdraw):
        with pytest.raises(AnsweredAlreadyError) as problem:
            late(told, by=jonas.user)
        assert problem.value.now.state == "withdrawn"
    assert Specimen.objects.count() == 1


def test_accepting_five_times_gives_one_piece(ada: Member, jonas: Member) -> None:
    told = make_offer(make_plant(ada), ada, jonas)
    assert len({accept(told, by=jonas.user).piece for _ in range(5)}) == 1
    assert Specimen.objects.count() == 2


def test_a_plant_that_went_elsewhere_meanwhile_is_not_handed_over(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada)
    told = make_whole_offer(plant, ada, jonas)
    change_keeper(plant, keeper=make_member("Bo Reed").keeper)
    with pytest.raises(HandOverError, match="any longer"):
        accept(told, by=jonas.user)
    told.refresh_from_db()
    assert told.state == "offered"


def test_a_plant_that_died_meanwhile_is_not_handed_over(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada)
    told = make_whole_offer(plant, ada, jonas)
    end_specimen(plant, version=plant.version, state="dead")
    with pytest.raises(HandOverError):
        accept(told, by=jonas.user)


def test_a_whole_plant_is_offered_to_one_at_a_time(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada)
    make_whole_offer(plant, ada, jonas)
    with pytest.raises(HandOverError, match="already"):
        make_whole_offer(plant, ada, make_member("Bo Reed"))


def test_nobody_gives_to_their_own_household(ada: Member) -> None:
    partner = make_member("Bo Reed")
    make_household("The house", ada, partner)
    with pytest.raises(HandOverError):
        make_offer(make_plant(ada), ada, partner)


def test_a_plant_nobody_keeps_is_not_given(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada)
    end_specimen(plant, version=plant.version, state="left")
    with pytest.raises(HandOverError, match="Nobody keeps"):
        make_offer(plant, ada, jonas)


def test_words_reach_the_one_member_of_that_name_and_stay_as_typed(ada: Member) -> None:
    shy = make_member("Shy Person", appears=Appearance.A_MEMBER)
    told = make_offer(make_plant(ada), ada, " shy person ")
    assert (told.receiver, told.receiver_words) == (shy.keeper, "shy person")
    assert list(HandOver.objects.waiting_for(shy.user)) == [told]


def test_words_that_name_nobody_or_two_wait_all_the_same(ada: Member) -> None:
    make_member("Kim Ash")
    make_member("Kim Ash", user=False)
    for words in ("Nobody Known", "Kim Ash"):
        told = make_offer(make_plant(ada), ada, words)
        assert (told.state, told.receiver) == ("offered", None)


def test_outside_the_society_nobody_is_asked(ada: Member) -> None:
    plant = make_plant(ada)
    pieces = give_outside(gift=Gift(plant=plant, count=2), by=ada.user, words="a neighbour")
    assert [each.state for each in pieces] == ["agreed", "agreed"]
    assert Specimen.objects.get().keeper == ada.keeper


def test_a_whole_plant_given_outside_has_left_and_the_words_are_not_its_reason(ada: Member) -> None:
    plant = make_plant(ada)
    give_outside(gift=Gift(plant=plant, what="plant", on=JUNE), by=ada.user, words="Hans Somebody")
    plant.refresh_from_db()
    assert (plant.state, plant.ended, plant.keeper) == ("left", JUNE, None)
    assert "Hans" not in plant.state_reason


def test_from_a_table_whoever_picks_keeps_it(ada: Member, jonas: Member) -> None:
    first, second = on_the_table(make_plant(ada, make_cultivar()), ada, count=2)
    got = accept(first, by=jonas.user, keeper=jonas.keeper)
    assert got.piece.keeper == jonas.keeper
    assert list(HandOver.objects.on_tables()) == [second]
    with pytest.raises(HandOverError, match="yours already"):
        accept(second, by=ada.user, keeper=ada.keeper)


def test_the_receiver_may_have_logged_it_without_saying_of_which_plant(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, make_cultivar())
    logged = make_plant(jonas, from_keeper=ada.keeper)
    got = accept(make_offer(plant, ada, jonas), by=jonas.user, logged=logged)
    logged.refresh_from_db()
    assert got.piece == logged
    assert (logged.came, logged.division.parent) == ("piece", plant)
    assert Specimen.objects.count() == 2


def test_a_gift_is_of_one_to_twenty_and_a_whole_plant_is_one(ada: Member) -> None:
    plant = make_plant(ada)
    for count in (0, 21):
        with pytest.raises(ValueError, match="Between 1 and 20"):
            Gift(plant=plant, count=count)
    with pytest.raises(ValueError, match="once"):
        Gift(plant=plant, what="plant", count=2)


WRONG = [
    {"state": "lost"},
    {"receiver_id": None},
    {"state": "claimed"},
    {"state": "agreed"},
    {"what": "plant", "state": "claimed", "receiver_id": None, "receiver_words": "x"},
]


@pytest.mark.parametrize("wrong", WRONG, ids=str)
def test_the_database_refuses_what_cannot_be(ada: Member, jonas: Member, wrong: dict[str, object]) -> None:
    told = make_offer(make_plant(ada), ada, jonas)
    for field, value in wrong.items():
        setattr(told, field, value)
    with pytest.raises(IntegrityError), transaction.atomic():
        told.save()


def test_the_database_refuses_to_give_to_oneself(ada: Member, jonas: Member) -> None:
    told = make_offer(make_plant(ada), ada, jonas)
    told.receiver = ada.keeper
    with pytest.raises(IntegrityError), transaction.atomic():
        told.save()


def test_every_answer_stands_in_the_history(ada: Member, jonas: Member) -> None:
    told = make_offer(make_plant(ada), ada, jonas)
    refuse(told, by=jonas.user)
    assert [row.state for row in told.history.order_by("history_id")] == ["offered", "refused"]


def test_an_offer_in_words_needs_words(ada: Member) -> None:
    with pytest.raises(HandOverError, match="To whom"):
        offer(gift=Gift(plant=make_plant(ada)), by=ada.user, words=" ")
