"""The receiver tells first; both tell; both tell otherwise."""

from datetime import date

import pytest

from frondkeep.society.models import Member
from specimens.models import HandOver, Specimen
from specimens.services.handover_claims import agree, claim_piece, claim_plant, deny, keep_apart, leave_denied
from specimens.services.handover_steps import AnsweredAlreadyError, HandOverError
from specimens.services.handovers import Gift, accept, offer, refuse
from tests.cast import make_curator, make_household, make_meeting, make_member, make_plant, make_pup, when
from tests.specimens.services.handing import make_claim, make_offer, make_whole_offer, on_the_table

pytestmark = pytest.mark.django_db
JUNE = when("June 2026", date(2026, 6, 1), date(2026, 6, 30))
YEARS_AGO = when("June 2019", date(2019, 6, 1), date(2019, 6, 30))


@pytest.fixture
def ada(db: None) -> Member:
    return make_member("Ada Quill")


@pytest.fixture
def jonas(db: None) -> Member:
    return make_member("Jonas Wren")


@pytest.fixture
def imke(db: None) -> Member:
    return make_curator()


@pytest.fixture
def plant(ada: Member) -> Specimen:
    return make_plant(ada, label_text="Silver")


def test_the_keeper_of_the_parent_is_asked_and_the_record_stands_meanwhile(plant, ada, jonas) -> None:
    claim = make_claim(plant, jonas)
    assert (claim.state, claim.giver, claim.receiver) == ("claimed", ada.keeper, jonas.keeper)
    assert list(HandOver.objects.waiting_for(ada.user)) == [claim]
    assert claim.piece.division.parent == plant


def test_who_gave_it_is_asked_though_the_parent_went_on(plant, ada, jonas) -> None:
    bo = make_member("Bo Reed")
    claim = make_claim(plant, jonas, from_keeper=bo.keeper)
    assert claim.giver == bo.keeper


def test_nobody_is_asked_about_ones_own_plant_or_a_giver_in_words(plant, ada, jonas) -> None:
    partner = make_member("Bo Reed")
    make_household("The house", ada, partner)
    ada.refresh_from_db()
    plant.refresh_from_db()
    assert make_claim(plant, ada) is None
    assert make_claim(plant, partner) is None
    assert make_claim(plant, jonas, from_words="a friend of hers") is None
    assert claim_piece(make_plant(jonas), by=jonas.user) is None
    assert not HandOver.objects.exists()


def test_what_the_giver_logs_for_somebody_needs_no_answer(plant, ada, jonas) -> None:
    assert claim_piece(make_pup(plant, jonas), by=ada.user) is None


def test_the_giver_agrees(plant, ada, jonas) -> None:
    claim = make_claim(plant, jonas)
    assert agree(claim, by=ada.user).state == "agreed"
    assert not HandOver.objects.waiting_for(ada.user).exists()


def test_a_denied_piece_keeps_its_record_with_words_and_the_curator_is_asked(plant, ada, jonas, imke) -> None:
    claim = deny(make_claim(plant, jonas), by=ada.user)
    piece = Specimen.objects.get(pk=claim.piece_id)
    assert (piece.came, piece.division.parent, piece.keeper) == ("piece", None, jonas.keeper)
    assert plant.code not in piece.division.parent_words != ""
    assert piece.division.kind == "pup"
    assert list(HandOver.objects.waiting_for(imke.user)) == [claim]
    assert plant.divisions.get().voided_reason


def test_the_curator_puts_a_denied_link_back(plant, ada, jonas, imke) -> None:
    claim = deny(make_claim(plant, jonas), by=ada.user)
    agree(claim, by=imke.user)
    assert Specimen.objects.get(pk=claim.piece_id).division.parent == plant
    assert not HandOver.objects.waiting_for(imke.user).exists()


def test_the_giver_does_not_answer_twice(plant, ada, jonas) -> None:
    claim = deny(make_claim(plant, jonas), by=ada.user)
    with pytest.raises(AnsweredAlreadyError):
        agree(claim, by=ada.user)


def test_the_curator_lets_a_denial_stand(plant, ada, jonas, imke) -> None:
    claim = deny(make_claim(plant, jonas), by=ada.user)
    leave_denied(claim, by=imke.user)
    assert not HandOver.objects.waiting_for(imke.user).exists()
    with pytest.raises(AnsweredAlreadyError):
        leave_denied(claim, by=imke.user)


def test_told_then_logged_is_one_hand_over(plant, ada, jonas) -> None:
    told = make_offer(plant, ada, jonas, on=JUNE)
    piece = make_pup(plant, jonas, acquired=when("25/5/2026", date(2026, 5, 25)))
    joined = claim_piece(piece, by=jonas.user)
    assert (joined, joined.state, joined.piece) == (told, "agreed", piece)
    assert HandOver.objects.count() == 1


def test_logged_then_told_is_one_hand_over_and_the_other_pieces_wait(plant, ada, jonas) -> None:
    claim = make_claim(plant, jonas)
    told = offer(gift=Gift(plant=plant, count=3), by=ada.user, receiver=jonas.keeper)
    assert told[0] == claim
    assert [each.state for each in told] == ["agreed", "offered", "offered"]
    assert Specimen.objects.count() == 2


def test_two_told_and_two_logged_are_two(plant, ada, jonas) -> None:
    offer(gift=Gift(plant=plant, count=2), by=ada.user, receiver=jonas.keeper)
    joined = {make_claim(plant, jonas) for _ in range(2)}
    assert {each.state for each in joined} == {"agreed"}
    assert HandOver.objects.count() == 2
    assert make_claim(plant, jonas).state == "claimed"


def test_another_evening_is_another_hand_over(plant, ada, jonas) -> None:
    make_offer(plant, ada, jonas, on=JUNE)
    assert make_claim(plant, jonas, acquired=YEARS_AGO).state == "claimed"
    spring, autumn = make_meeting("Spring"), make_meeting("Autumn")
    bo = make_member("Bo Reed")
    make_offer(plant, ada, bo, meeting=spring)
    assert make_claim(plant, bo, meeting=autumn).state == "claimed"


def test_told_to_one_of_a_couple_and_logged_by_both_is_recognised(plant, ada, jonas) -> None:
    house = make_household("The house", jonas, make_member("Bo Reed"))
    told = make_offer(plant, ada, jonas)
    assert claim_piece(make_pup(plant, house.keeper, by=jonas.user), by=jonas.user) == told


def test_a_piece_logged_from_the_table_of_its_meeting_is_taken_off_it(plant, ada, jonas) -> None:
    (lying,) = on_the_table(plant, ada)
    joined = make_claim(plant, jonas, meeting=make_meeting())
    assert (joined, joined.receiver) == (lying, jonas.keeper)
    assert not HandOver.objects.on_tables().exists()


def test_without_its_meeting_the_table_is_left_alone(plant, ada, jonas) -> None:
    on_the_table(plant, ada)
    assert make_claim(plant, jonas).state == "claimed"


@pytest.mark.parametrize("first", ["giver", "receiver"])
def test_different_parents_are_shown_to_both_and_to_the_curator(plant, ada, jonas, imke, first) -> None:
    other = make_plant(ada, label_text="Gold")
    told = make_offer(plant, ada, jonas) if first == "giver" else None
    claim = make_claim(other, jonas)
    told = told or make_offer(plant, ada, jonas)
    claim.refresh_from_db()
    assert (claim.rival, claim.to_settle) == (told, True)
    assert claim in HandOver.objects.waiting_for(imke.user)


@pytest.fixture
def dispute(plant, ada, jonas) -> tuple[HandOver, HandOver]:
    told = make_offer(plant, ada, jonas)
    return told, make_claim(make_plant(ada, label_text="Gold"), jonas)


def test_the_giver_sees_that_the_receiver_is_right(dispute, ada) -> None:
    told, claim = dispute
    agree(claim, by=ada.user)
    told.refresh_from_db()
    assert told.state == "withdrawn"
    assert claim.piece.division.parent == claim.plant


def test_the_receiver_sees_that_the_giver_is_right(dispute, jonas, plant) -> None:
    told, claim = dispute
    got = accept(told, by=jonas.user, logged=claim.piece)
    claim.refresh_from_db()
    assert (got.state, claim.state, got.piece) == ("agreed", "withdrawn", claim.piece)
    assert Specimen.objects.get(pk=got.piece_id).division.parent == plant
    assert Specimen.objects.filter(came="piece").count() == 1


def test_they_were_two_pieces_after_all(dispute, ada) -> None:
    told, claim = dispute
    apart = keep_apart(claim, by=ada.user)
    told.refresh_from_db()
    assert (apart.rival, apart.to_settle, apart.state, told.state) == (None, False, "claimed", "offered")


def test_once_the_right_piece_is_logged_nothing_is_disputed(dispute, jonas, plant) -> None:
    told, claim = dispute
    assert make_claim(plant, jonas) == told
    claim.refresh_from_db()
    assert (claim.rival, claim.to_settle, claim.state) == (None, False, "claimed")


def test_a_refused_offer_is_nobodys_rival(dispute, jonas) -> None:
    told, claim = dispute
    refuse(told, by=jonas.user)
    claim.refresh_from_db()
    assert (claim.rival, claim.to_settle) == (None, False)


def claim_whole(plant: Specimen, who: Member, **fields: object) -> HandOver:
    return claim_plant(plant, receiver=who.keeper, by=who.user, **fields)


def test_a_whole_plant_stays_until_its_keeper_agrees(plant, ada, jonas) -> None:
    claim = claim_whole(plant, jonas, on=JUNE)
    assert plant.keepings.get(is_open=True).keeper == ada.keeper
    assert list(HandOver.objects.waiting_for(ada.user)) == [claim]
    agree(claim, by=ada.user)
    keeping = plant.keepings.get(is_open=True)
    assert (keeping.keeper, keeping.since) == (jonas.keeper, JUNE)


def test_a_whole_plant_that_was_offered_is_simply_accepted(plant, ada, jonas) -> None:
    told = make_whole_offer(plant, ada, jonas)
    assert claim_whole(plant, jonas) == told
    assert plant.keepings.get(is_open=True).keeper == jonas.keeper


def test_a_whole_plant_offered_to_another_is_not_claimed(plant, ada, jonas) -> None:
    make_whole_offer(plant, ada, make_member("Bo Reed"))
    with pytest.raises(HandOverError, match="already"):
        claim_whole(plant, jonas)


def test_ones_own_plant_is_not_claimed(plant, ada) -> None:
    with pytest.raises(HandOverError, match="yours already"):
        claim_whole(plant, ada)


def test_a_denied_plant_stays_and_the_curator_hands_it_on_or_not(plant, ada, jonas, imke) -> None:
    claim = deny(claim_whole(plant, jonas), by=ada.user)
    assert claim.to_settle
    assert plant.keepings.get(is_open=True).keeper == ada.keeper
    agree(claim, by=imke.user)
    assert plant.keepings.get(is_open=True).keeper == jonas.keeper
