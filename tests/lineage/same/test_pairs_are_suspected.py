"""Pairs come and go as records change, and only what waits for a decision stands in the queue."""

from __future__ import annotations

from io import StringIO

import pytest
from django.core.management import call_command
from django.db import transaction

from frondkeep.society.models import Member
from lineage.models import Suspicion
from lineage.services import suspicions
from lineage.services.rulings import give_ruling, undo_ruling
from lineage.services.suspicions import looks_like, rebuild_suspicions
from specimens.changes import announce, announcing_once
from specimens.models import Name, Trait, TraitRecord, TraitState
from specimens.services.claims import claim_parentage
from specimens.services.identifications import identify
from specimens.services.names import edit_name
from specimens.services.photos import ReadPhoto, add_photo
from specimens.services.sowings import Source
from tests.cast import make_cultivar, make_member, make_plant, make_pup, make_species

pytestmark = pytest.mark.django_db
PICTURE = ReadPhoto(b"picture", b"small", 10, 10, "0f" * 8)


def waiting() -> list[tuple[str, str]]:
    rows = Suspicion.objects.waiting().with_names()
    return [(row.first_name.epithet, row.second_name.epithet) for row in rows]


def only() -> Suspicion:
    return Suspicion.objects.with_names().get()


def decide(first: Name, second: Name, answer: str, by: Member, **more: object):
    return give_ruling(first=first, second=second, answer=answer, reason="seen", by=by.user, **more)


def all_stored() -> list[tuple[object, ...]]:
    columns = ("first_name", "second_name", "bits", "summands", "in_queue", "returned_because")
    return sorted(Suspicion.objects.values_list(*columns), key=str)


def record_state(name: Name, trait: Trait, key: str) -> None:
    with transaction.atomic():
        state, _ = TraitState.objects.get_or_create(trait=trait, key=key, label=key)
        TraitRecord.objects.create(name=name, state=state)
        announce("names", [name.pk])


@pytest.fixture
def tassel(db: None) -> Name:
    return make_cultivar("Silver Tassel")


@pytest.fixture
def tassled(tassel: Name) -> Name:
    return make_cultivar("Silver Tassle")


def test_a_slip_brings_a_pair_in_at_once(tassel, tassled):
    assert waiting() == [("Silver Tassel", "Silver Tassle")]


def test_names_that_are_not_alike_or_of_other_genera_bring_none(tassel):
    make_cultivar("Bronze Duchess")
    make_cultivar("Silver Tassle", "Asplenium")
    assert Suspicion.objects.count() == 0


def test_a_name_mended_or_voided_takes_its_pairs_along(tassel, tassled):
    edit_name(tassled, version=tassled.version, epithet="Wavy Fan")
    assert Suspicion.objects.count() == 0
    edit_name(tassled, version=Name.objects.get(pk=tassled.pk).version, epithet="Silver Tassle")
    assert len(waiting()) == 1
    edit_name(tassled, version=Name.objects.get(pk=tassled.pk).version, voided_reason="entered twice")
    assert Suspicion.objects.count() == 0


def test_a_pup_under_another_name_brings_the_two_names_in_whatever_their_spelling(tassel, ada, curator):
    other = make_cultivar("Grandmother’s Apron")
    pup = make_pup(make_plant(ada, tassel), curator)
    assert waiting() == []
    identify(pup, name=other, by=curator.user)
    assert only().clues["clone"] == "one clone"
    identify(pup, name=tassel, by=curator.user)
    assert Suspicion.objects.count() == 0


def test_a_pup_that_sported_does_not(tassel, ada, curator):
    make_pup(make_plant(ada, tassel), curator, name=make_cultivar("Bronze Duchess"), sport=True)
    assert Suspicion.objects.count() == 0


def test_a_doubtful_identification_says_nothing_of_its_name(tassel, ada, curator):
    pup = make_pup(make_plant(ada, tassel), curator)
    identify(pup, name=make_cultivar("Bronze Duchess"), qualifier="?", by=curator.user)
    assert Suspicion.objects.count() == 0


def test_same_parents_and_raiser_bring_a_pair_in_one_formula_does_not(curator):
    hillii, tea = make_species("hillii"), make_cultivar("Cold Tea")
    one = make_cultivar("Golden Teakettle", raiser="Ada Quill")
    other = make_cultivar("Tetera Dorada", raiser="Ada Quill")
    for name in (one, other):
        claim_parentage(name, says="cross", parents=(Source(name=hillii), Source(name=tea)), ground="record")
    assert only().clues == {"parents": "same two", "spelling": "far", "raiser": "same raiser"}
    for name in (one, other):
        veitchii = make_species("veitchii")
        claim_parentage(
            name, says="cross", parents=(Source(name=hillii), Source(name=veitchii)), ground="record"
        )
    assert Suspicion.objects.count() == 0


def test_traits_that_last_speak_against(tassel, tassled):
    shield = Trait.objects.create(key="shield", label="Shield fronds")
    record_state(tassel, shield, "ball")
    before = only().probability
    record_state(tassled, shield, "basket")
    assert only().clues["traits"] == "stable conflict"
    assert only().probability < before
    assert waiting() == []


def test_whoever_grows_both_speaks_against(tassel, tassled, ada):
    make_plant(ada, tassel)
    assert "keepers" not in only().clues
    make_plant(ada, tassled)
    assert only().clues["keepers"] == "grown as two"


def test_one_picture_under_both_names_brings_them_in(tassel, ada, curator, settings, tmp_path):
    settings.MEDIA_ROOT = tmp_path
    other = make_cultivar("Bronze Duchess")
    for keeper, name in ((ada, tassel), (curator, other)):
        add_photo(make_plant(keeper, name), PICTURE, by=None)
    assert only().clues["photo"] == "one picture"


def test_a_drawing_is_no_picture_of_a_plant(tassel, ada, curator, settings, tmp_path):
    settings.MEDIA_ROOT = tmp_path
    for keeper, name in ((ada, tassel), (curator, make_cultivar("Bronze Duchess"))):
        add_photo(make_plant(keeper, name), PICTURE, by=None, is_drawing=True)
    assert Suspicion.objects.count() == 0


def test_a_pair_decided_to_be_one_leaves_the_queue_and_comes_back_when_that_is_undone(
    tassel, tassled, curator
):
    ruling = decide(tassel, tassled, "same", curator, stands=tassel)
    assert waiting() == []
    undo_ruling(ruling, reason="no", by=curator.user)
    assert len(waiting()) == 1


def test_a_decision_does_not_speak_for_itself(tassel, tassled, ada, jonas, curator):
    make_plant(ada, tassel)
    plant = make_plant(jonas, tassled)
    ruling = decide(tassel, tassled, "same", curator, stands=tassel)
    identify(plant, name=tassled, by=curator.user)
    rebuild_suspicions()
    assert "clone" not in only().clues
    undo_ruling(ruling, reason="no", by=curator.user)
    assert "clone" not in only().clues


@pytest.mark.parametrize("answer", ["different", "evidence", "not known"])
def test_a_decided_pair_rests_until_a_new_clue_speaks_and_says_which(tassel, tassled, curator, ada, answer):
    plant = make_plant(ada, tassel)
    decide(tassel, tassled, answer, curator)
    assert waiting() == []
    rebuild_suspicions()
    assert waiting() == []
    make_pup(plant, curator, name=tassled)
    assert only().in_queue
    assert [sentence[:19] for sentence in only().returned_because] == ["Pieces of one plant"]


def test_a_clue_against_does_not_bring_back_what_is_decided_to_be_different(tassel, tassled, ada, curator):
    decide(tassel, tassled, "different", curator)
    make_plant(ada, tassel)
    make_plant(ada, tassled)
    assert "keepers" in only().clues
    assert waiting() == []


def test_of_three_names_in_two_groups_one_question_is_asked(tassel, tassled, curator):
    third = make_cultivar("Sliver Tassel")
    assert len(waiting()) > 1
    decide(tassel, tassled, "same", curator, stands=tassel)
    assert len(waiting()) == 1
    decide(tassled, third, "different", curator)
    assert waiting() == []


def test_a_rebuild_finds_what_stood_there(tassel, tassled, ada, curator):
    make_cultivar("Tassel Silver")
    make_pup(make_plant(ada, tassel), curator, name=make_cultivar("Bronze Duchess"))
    decide(tassel, tassled, "not known", curator)
    before = all_stored()
    call_command("rebuild_suspicions", stdout=StringIO())
    assert all_stored() == before
    Suspicion.objects.all().delete()
    rebuild_suspicions()
    assert all_stored() == before


def test_many_records_written_at_once_are_weighed_once(monkeypatch):
    asked = []
    weigh = suspicions.reweigh
    monkeypatch.setattr(suspicions, "reweigh", lambda names: asked.append(len(names)) or weigh(names))
    with transaction.atomic(), announcing_once():
        for epithet in ("Kettle Steam", "Kettel Steam", "Night Ferry II", "Night Ferry No. 2"):
            make_cultivar(epithet)
    assert asked == [4]
    assert len(waiting()) == 2


def test_weighing_takes_as_many_queries_for_one_pair_as_for_many(
    tassel, tassled, ada, django_assert_max_num_queries, django_assert_num_queries
):
    make_plant(ada, tassel)
    with django_assert_max_num_queries(22) as few:
        suspicions.reweigh({tassel.pk})
    for number in range(8):
        make_plant(make_member(f"Member {number}"), make_cultivar(f"Silver Tassel {number}"))
        make_cultivar("Silver Tassel" + "s" * (number + 1))
    with django_assert_num_queries(len(few)):
        suspicions.reweigh({tassel.pk})


def test_a_typed_name_is_told_what_it_looks_like(tassel, tassled, django_assert_max_num_queries):
    make_cultivar("Bronze Duchess")
    with django_assert_max_num_queries(4):
        found = looks_like("Silver Tasel", genus="Platycerium")
    assert [name.epithet for name, _ in found] == ["Silver Tassel", "Silver Tassle"]
    assert all(likeness.reasons for _, likeness in found)
    assert looks_like("silver tassel", genus="Platycerium", limit=1)[0][1].score == 1
    assert looks_like("Thursday’s Find", genus="Platycerium") == []
    assert looks_like("Silver Tassel", genus="Asplenium") == []
    assert looks_like("", genus="Platycerium") == []


def test_pairs_decided_to_be_one_make_their_clues_count_more_and_undoing_takes_that_back(
    tassel, tassled, curator
):
    make_cultivar("Copper Tassel")
    make_cultivar("Copper Tassle")
    alike = Suspicion.objects.get(first_name__epithet="Copper Tassel", second_name__epithet="Copper Tassle")
    before = all_stored()
    ruling = decide(tassel, tassled, "same", curator, stands=tassel)
    assert Suspicion.objects.get(pk=alike.pk).bits > alike.bits
    moved = all_stored()
    rebuild_suspicions()
    assert all_stored() == moved
    undo_ruling(ruling, reason="no", by=curator.user)
    assert all_stored() == before


def test_pairs_decided_to_be_two_leave_the_others_as_likely_as_they_were(tassel, tassled, curator):
    make_cultivar("Copper Tassel")
    make_cultivar("Copper Tassle")
    others = Suspicion.objects.exclude(first_name=tassel, second_name=tassled).order_by("pk")
    before = list(others.values_list("bits", flat=True))
    decide(tassel, tassled, "different", curator)
    assert list(others.values_list("bits", flat=True)) == before
