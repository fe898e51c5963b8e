"""In the invented society every planted pair is known to be one plant or two: what the queue makes of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import pytest
from django.core.management import call_command
from django.db import transaction

from frondkeep.desk import demonstration
from lineage.models import Suspicion
from specimens.models import Name
from tests.demo_data.files import read

pytestmark = pytest.mark.django_db
Written = tuple[str, str]
FIRST = 30


@dataclass(frozen=True)
class Found:
    """Pairs in the order of the queue, and the probability of every pair that is stored."""

    queue: list[frozenset[Written]]
    probability: dict[frozenset[Written], float]
    names: set[Written]


@pytest.fixture(scope="module")
def found(django_db_setup: None, django_db_blocker: object) -> Iterator[Found]:
    """The demo, imported once for this module and taken back at its end."""
    with django_db_blocker.unblock(), transaction.atomic():
        call_command("load_reference_names", verbosity=0)
        demonstration.import_society(lambda words: None)
        rows = list(Suspicion.objects.in_order().with_names())
        yield Found(
            queue=[pair_of(row) for row in rows if row.in_queue],
            probability={pair_of(row): row.probability for row in rows},
            names=set(Name.objects.cultivars().values_list("genus__epithet", "epithet")),
        )
        transaction.set_rollback(True)


def pair_of(row: Suspicion) -> frozenset[Written]:
    return frozenset((name.genus.epithet, name.epithet) for name in (row.first_name, row.second_name))


def planted(same: str) -> list[frozenset[Written]]:
    rows = [row for row in read("planted.csv") if row["same"] == same]
    return [frozenset(map(written, (row["name_a"], row["name_b"]))) for row in rows]


def written(name: str) -> Written:
    genus, _, epithet = name.partition(" '")
    return genus, epithet[:-1]


def test_all_planted_names_are_on_record(found: Found) -> None:
    assert {name for same in "01" for pair in planted(same) for name in pair} <= found.names


def test_nine_in_ten_of_the_pairs_that_are_one_wait_for_a_decision(found: Found) -> None:
    ones = planted("1")
    assert sum(pair in found.queue for pair in ones) >= 0.9 * len(ones)


def test_seven_in_ten_of_them_stand_among_the_first_thirty(found: Found) -> None:
    ones = planted("1")
    assert sum(pair in found.queue[:FIRST] for pair in ones) >= 0.7 * len(ones)


def test_no_pair_that_is_two_is_likelier_one_than_not(found: Found) -> None:
    assert len(planted("0")) == 10
    assert [pair for pair in planted("0") if found.probability.get(pair, 0) > 0.5] == []


def test_what_waits_is_ordered_by_probability(found: Found) -> None:
    likely = [found.probability[pair] for pair in found.queue]
    assert likely == sorted(likely, reverse=True)
