"""Two who answer one hand-over at one moment: exactly one of them is right, the other is told."""

from __future__ import annotations

from collections.abc import Callable
from threading import Barrier, Thread

import pytest
from django.db import close_old_connections, connection

from frondkeep.society.models import Member, Society
from specimens.models import HandOver, Keeping, Specimen
from specimens.services.handover_claims import agree, claim_piece, deny
from specimens.services.handover_steps import AnsweredAlreadyError, HandOverError
from specimens.services.handovers import accept, withdraw
from tests.cast import make_cultivar, make_member, make_plant, make_pup
from tests.specimens.services.handing import make_claim, make_offer, make_whole_offer, on_the_table

pytestmark = pytest.mark.django_db(transaction=True)


def at_once(*doings: Callable[[], object]) -> list[object]:
    """Each in a thread of its own, all starting together; what came of each, in their order."""
    start = Barrier(len(doings))
    came: dict[int, object] = {}

    def do(place: int, doing: Callable[[], object]) -> None:
        close_old_connections()
        start.wait()
        try:
            came[place] = doing()
        except (AnsweredAlreadyError, HandOverError) as told:
            came[place] = told
        finally:
            connection.close()

    threads = [Thread(target=do, args=each) for each in enumerate(doings)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return [came[place] for place in sorted(came)]


def kinds(came: list[object]) -> list[str]:
    return sorted(type(each).__name__ for each in came)


@pytest.fixture
def ada(transactional_db: None) -> Member:
    Society.current()
    return make_member("Ada Quill")


@pytest.fixture
def plant(ada: Member) -> Specimen:
    return make_plant(ada, make_cultivar())


def test_four_pick_one_piece_from_the_table_and_one_has_it(ada: Member, plant: Specimen) -> None:
    (lying,) = on_the_table(plant, ada)
    people = [make_member(f"Picker {number}") for number in range(4)]
    came = at_once(*(lambda who=who: accept(lying, by=who.user, keeper=who.keeper) for who in people))
    assert kinds(came) == ["AnsweredAlreadyError"] * 3 + ["HandOver"]
    piece = Specimen.objects.exclude(pk=plant.pk).get()
    winner = next(each for each in came if isinstance(each, HandOver))
    assert piece.keeper == winner.receiver


@pytest.mark.parametrize("make", [make_offer, make_whole_offer])
def test_taken_back_while_it_is_accepted(ada: Member, plant: Specimen, make: Callable[..., HandOver]) -> None:
    jonas = make_member("Jonas Wren")
    told = make(plant, ada, jonas)
    came = at_once(lambda: accept(told, by=jonas.user), lambda: withdraw(told, by=ada.user))
    assert kinds(came) == ["AnsweredAlreadyError", "HandOver"]
    told.refresh_from_db()
    pieces = Specimen.objects.exclude(pk=plant.pk).count()
    gone = plant.keepings.get(is_open=True).keeper == jonas.keeper
    happened = bool(pieces) or gone
    assert happened == (told.state == "agreed")
    assert pieces <= 1
    assert Keeping.objects.filter(specimen=plant, is_open=True).count() == 1


def test_the_giver_agrees_in_one_window_and_denies_in_another(ada: Member, plant: Specimen) -> None:
    claim = make_claim(plant, make_member("Jonas Wren"))
    came = at_once(lambda: agree(claim, by=ada.user), lambda: deny(claim, by=ada.user))
    assert kinds(came) == ["AnsweredAlreadyError", "HandOver"]
    claim.refresh_from_db()
    linked = Specimen.objects.get(pk=claim.piece_id).division.parent_id == plant.pk
    assert linked == (claim.state == "agreed")


def test_both_tell_at_one_moment_and_it_is_one_hand_over(ada: Member, plant: Specimen) -> None:
    jonas = make_member("Jonas Wren")
    piece = make_pup(plant, jonas)
    at_once(lambda: make_offer(plant, ada, jonas), lambda: claim_piece(piece, by=jonas.user))
    told = HandOver.objects.get()
    assert (told.state, told.piece) == ("agreed", piece)
