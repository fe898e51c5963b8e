"""Accepted names follow from the decisions that stand: groups, not chains; undone as though never made."""

from __future__ import annotations

import pytest
from django.db import IntegrityError, transaction
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from frondkeep.society.models import Member
from lineage.models import AppendOnlyError, Ruling
from lineage.services.accepted import wrongly_accepted
from lineage.services.rulings import (
    ContradictionError,
    DecidedMeanwhileError,
    NotStandingError,
    give_ruling,
    undo_ruling,
)
from specimens.models import Name
from tests.cast import make_cultivar, make_curator, make_plant, make_species
from tests.lineage.kin import node
from tests.lineage.same.slow_replay import says_one_is_two, standing_names

pytestmark = pytest.mark.django_db
LETTERS = ["Amber", "Basin", "Cinder", "Dapple", "Ember", "Fathom"]


@pytest.fixture
def names(db: None) -> list[Name]:
    return [make_cultivar(letter) for letter in LETTERS]


def same(first: Name, second: Name, by: Member, *, keep: Name | None = None, **more: object) -> Ruling:
    return give_ruling(
        first=first,
        second=second,
        answer="same",
        stands=keep or first,
        reason="grown together",
        by=by.user,
        **more,
    )


def different(first: Name, second: Name, by: Member) -> Ruling:
    return give_ruling(first=first, second=second, answer="different", reason="other spores", by=by.user)


def accepted(*names: Name) -> list[str]:
    return [Name.objects.select_related("accepted").get(pk=name.pk).accepted.epithet for name in names]


def test_two_names_decided_to_be_one_have_one_accepted_name(names, curator):
    amber, basin, *_ = names
    same(amber, basin, curator, keep=basin)
    assert accepted(amber, basin) == ["Basin", "Basin"]
    assert amber.pk not in Name.objects.filter(lineage_node__isnull=False).values_list("pk", flat=True)


def test_two_decisions_make_one_group_of_three(names, curator):
    amber, basin, cinder, *_ = names
    same(amber, basin, curator)
    same(basin, cinder, curator, keep=cinder)
    assert accepted(amber, basin, cinder) == ["Cinder"] * 3


def test_taking_back_the_middle_leaves_the_rest(names, curator):
    amber, basin, cinder, dapple, *_ = names
    same(amber, basin, curator)
    middle = same(basin, cinder, curator, keep=amber)
    same(cinder, dapple, curator, keep=amber)
    assert accepted(amber, basin, cinder, dapple) == ["Amber"] * 4
    undo_ruling(middle, reason="it was another pot", by=curator.user)
    assert accepted(amber, basin) == ["Amber", "Amber"]
    # Amber is no longer of their group: the side it spoke for keeps its own name.
    assert accepted(cinder, dapple) == ["Cinder", "Cinder"]


def test_a_later_decision_may_change_which_name_of_a_group_stands(names, curator):
    amber, basin, cinder, *_ = names
    same(amber, basin, curator)
    same(basin, cinder, curator, keep=amber)
    same(amber, cinder, curator, keep=cinder)
    assert accepted(amber, basin, cinder) == ["Cinder"] * 3


def test_a_new_decision_on_a_pair_takes_back_the_old_one_and_undoing_it_brings_that_back(names, curator):
    amber, basin, *_ = names
    first = same(amber, basin, curator)
    second = different(amber, basin, curator)
    assert second.undoes == first
    assert accepted(basin) == ["Basin"]
    undo_ruling(second, reason="a slip", by=curator.user)
    assert accepted(basin) == ["Amber"]
    with pytest.raises(NotStandingError):
        undo_ruling(second, reason="again", by=curator.user)


def test_what_contradicts_is_refused_and_told_with_what_it_contradicts(names, curator):
    amber, basin, cinder, *_ = names
    one, two = same(amber, basin, curator), same(basin, cinder, curator)
    with pytest.raises(
        ContradictionError, match="‘Amber’ and Platycerium ‘Basin’ are the same plant"
    ) as found:
        different(amber, cinder, curator)
    assert found.value.rulings == (one, two)
    assert Ruling.objects.count() == 2


def test_joining_what_is_held_apart_is_refused(names, curator):
    amber, basin, cinder, *_ = names
    same(amber, basin, curator)
    apart = different(amber, cinder, curator)
    with pytest.raises(ContradictionError) as found:
        same(basin, cinder, curator)
    assert apart in found.value.rulings
    assert accepted(cinder) == ["Cinder"]


def test_undoing_is_refused_where_what_comes_back_contradicts_a_later_decision(names, curator):
    amber, basin, cinder, *_ = names
    same(amber, basin, curator)
    apart = different(amber, basin, curator)
    same(amber, cinder, curator)
    later = different(basin, cinder, curator)
    with pytest.raises(ContradictionError) as found:
        undo_ruling(apart, reason="they were one after all", by=curator.user)
    assert later in found.value.rulings
    assert accepted(basin) == ["Basin"]


def test_the_second_of_two_curators_is_told_of_the_first(names, curator):
    amber, basin, *_ = names
    other = make_curator("Hollis Penn")
    first = same(amber, basin, curator, last_seen=0)
    with pytest.raises(DecidedMeanwhileError) as found:
        same(amber, basin, other, keep=basin, last_seen=0)
    assert found.value.ruling == first
    assert accepted(basin) == ["Amber"]


@pytest.mark.parametrize("answer", ["evidence", "not known", "different"])
def test_other_answers_leave_accepted_names_as_they_are(names, curator, answer):
    amber, basin, *_ = names
    give_ruling(first=amber, second=basin, answer=answer, reason="too young to tell", by=curator.user)
    assert accepted(amber, basin) == ["Amber", "Basin"]


def test_nonsense_is_refused(names, curator):
    amber, basin, cinder, *_ = names
    species = make_species()
    for first, second, stands, reason in (
        (amber, amber, amber, "one"),
        (amber, basin, cinder, "a third name stands"),
        (amber, basin, None, "no name stands"),
        (amber, basin, amber, "  "),
        (amber, species, amber, "a species"),
    ):
        with pytest.raises(ValueError, match=r"."):
            give_ruling(
                first=first, second=second, answer="same", stands=stands, reason=reason, by=curator.user
            )
    with pytest.raises(ValueError, match="No such answer"):
        give_ruling(first=amber, second=basin, answer="undone", reason="x", by=curator.user)
    assert not Ruling.objects.exists()


def test_a_decision_is_never_changed_or_deleted(names, curator):
    ruling = same(names[0], names[1], curator)
    ruling.reason = "something else"
    with pytest.raises(AppendOnlyError):
        ruling.save()
    with pytest.raises(AppendOnlyError):
        ruling.delete()


def test_the_database_refuses_a_decision_without_reason_or_out_of_order(names, curator):
    amber, basin, *_ = names
    for wrong in (
        {"first_name": amber, "second_name": basin, "reason": ""},
        {"first_name": basin, "second_name": amber, "reason": "turned round"},
        {"first_name": amber, "second_name": basin, "reason": "no name", "answer": "same"},
        {"first_name": amber, "second_name": basin, "reason": "undoes nothing", "answer": "undone"},
    ):
        with pytest.raises(IntegrityError), transaction.atomic():
            Ruling.objects.create(**{"answer": "different", "by": curator.user} | wrong)


def test_lineage_follows_in_the_same_step(names, curator):
    amber, basin, *_ = names
    plant = make_plant(curator, basin)
    ruling = same(amber, basin, curator)
    assert node(plant).genet == node(amber)
    undo_ruling(ruling, reason="no", by=curator.user)
    assert node(plant).genet == node(basin)


def some_step(data, names: list[Name], by: Member) -> None:
    standing = list(Ruling.objects.exclude(answer="undone"))
    if standing and data.draw(st.integers(0, 3)) == 0:
        undo_ruling(data.draw(st.sampled_from(standing)), reason="taken back", by=by.user)
        return
    first, second = data.draw(st.lists(st.sampled_from(names), min_size=2, max_size=2, unique=True))
    answer = data.draw(st.sampled_from(["same", "same", "same", "different", "not known"]))
    stands = data.draw(st.sampled_from([first, second, *names])) if answer == "same" else None
    give_ruling(first=first, second=second, answer=answer, stands=stands, reason="so it is", by=by.user)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_whatever_is_decided_and_undone_a_slow_replay_agrees(data, names, curator):
    ids = [name.pk for name in names]
    with transaction.atomic():
        for _ in range(data.draw(st.integers(3, 14))):
            try:
                with transaction.atomic():
                    some_step(data, names, curator)
            except (ContradictionError, NotStandingError, ValueError):
                pass
            now = dict(Name.objects.filter(pk__in=ids).values_list("pk", "accepted"))
            assert now == standing_names(ids)
            assert not says_one_is_two(ids)
            assert wrongly_accepted() == []
        transaction.set_rollback(True)
