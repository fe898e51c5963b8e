"""Two curators who decide one pair, or a circle of pairs, at one moment: one is saved, the other is told."""

from __future__ import annotations

from threading import Barrier, Thread

import pytest
from django.db import connection

from frondkeep.society.models import Member, Society
from lineage.models import Ruling
from lineage.services.rulings import ContradictionError, DecidedMeanwhileError, give_ruling
from specimens.models import Name
from tests.cast import make_cultivar, make_curator

pytestmark = pytest.mark.django_db(transaction=True)


def decide_at_once(asked: list[tuple[Member, dict[str, object]]]) -> list[object]:
    """Each decision in a thread of its own, all starting together; what came of each."""
    start = Barrier(len(asked))
    came: list[object] = []

    def decide(by: Member, what: dict[str, object]) -> None:
        start.wait()
        try:
            came.append(give_ruling(by=by.user, reason="so I saw it", **what))
        except (DecidedMeanwhileError, ContradictionError) as told:
            came.append(told)
        finally:
            connection.close()

    threads = [Thread(target=decide, args=each) for each in asked]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return came


@pytest.fixture
def curators(transactional_db: None) -> list[Member]:
    Society.current()
    return [make_curator("Imke Marsh"), make_curator("Hollis Penn")]


@pytest.fixture
def names(transactional_db: None) -> list[Name]:
    return [make_cultivar(word) for word in ("Amber", "Basin", "Cinder")]


def test_of_two_on_one_pair_the_second_is_told(curators, names):
    one, other, _ = names
    pair = {"first": one, "second": other, "last_seen": 0}
    came = decide_at_once(
        [
            (curators[0], pair | {"answer": "same", "stands": one}),
            (curators[1], pair | {"answer": "different"}),
        ]
    )
    assert sorted(type(each).__name__ for each in came) == ["DecidedMeanwhileError", "Ruling"]
    assert Ruling.objects.count() == 1


def test_two_that_contradict_by_way_of_a_third_name_do_not_both_stand(curators, names):
    one, other, third = names
    give_ruling(first=one, second=other, answer="same", stands=one, reason="one clump", by=curators[0].user)
    came = decide_at_once(
        [
            (curators[0], {"first": other, "second": third, "answer": "same", "stands": other}),
            (curators[1], {"first": one, "second": third, "answer": "different"}),
        ]
    )
    assert sorted(type(each).__name__ for each in came) == ["ContradictionError", "Ruling"]
    assert Ruling.objects.count() == 2
