"""The division book becomes pups and pieces in the right hands."""

import pytest

from frondkeep.society.models import Member
from specimens.models import Name, Specimen, State
from tests.cast import make_cultivar
from tests.desk.importing.sheets import imported, planned

pytestmark = pytest.mark.usefixtures("f1", "jonas")
BOOK = "No,Pup of,Kind,Taken,Taken by,Given to,At which meeting,Tag,Remarks"


def book(*lines: str) -> str:
    return "\n".join([BOOK, *lines])


def one(number: str) -> Specimen:
    return Specimen.objects.get(society_number=number)


def test_a_pup_goes_from_its_taker_to_its_receiver(f1: Specimen, ada: Member, jonas: Member) -> None:
    imported(pieces=book("D1,F1,pup,3 May 2020,Ada Quill,Jonas Wren-Pike,,Silver Tassel,"))
    pup = one("D1")
    assert (pup.division.parent, pup.division.kind, pup.division.by) == (f1, "pup", ada)
    assert (pup.keeper, pup.from_keeper) == (jonas.keeper, ada.keeper)
    assert pup.acquired.words == pup.division.taken.words == "3 May 2020"


def test_given_to_nobody_it_stays_with_its_taker(ada: Member) -> None:
    imported(pieces=book("D1,F1,pup,2020,Ada Quill,,,x,"))
    assert (one("D1").keeper, one("D1").from_keeper) == (ada.keeper, None)


def test_given_to_a_stranger_it_left_the_society() -> None:
    text = book("D1,F1,pup,2020,Ada Quill,a visitor,,x,")
    assert planned(pieces=text).rows[0].notes == ["“a visitor” is no member: the piece left the society."]
    imported(pieces=text)
    left = one("D1")
    assert (left.state, left.state_reason, left.keeper) == (State.LEFT, "given to a visitor", None)


def test_a_piece_bears_its_parents_name_unless_its_tag_names_another_we_know(tassel: Name) -> None:
    other = make_cultivar("Cold Tea")
    imported(
        pieces=book(
            "D1,F1,pup,,Ada Quill,,,,",
            "D2,F1,pup,,Ada Quill,,,scribble,",
            "D3,F1,pup,,Ada Quill,,,P. 'Cold Tea',",
        )
    )
    assert [one(n).identification.name for n in ("D1", "D2", "D3")] == [tassel, tassel, other]


def test_a_sport_does_not_bear_its_parents_name(tassel: Name) -> None:
    imported(pieces=book("D1,F1,pup (sport),2020,Ada Quill,,,sport of 'Silver Tassel',crested"))
    sport = one("D1")
    assert (sport.division.sport, sport.division.sport_words) == (True, "sport of 'Silver Tassel'")
    assert sport.identification.name == tassel.parent


def test_a_piece_of_a_piece_in_the_same_book() -> None:
    imported(pieces=book("D2,D1,pup,,Ada Quill,,,x,", "D1,F1,crown division,,Ada Quill,,,x,"))
    assert one("D2").division.parent == one("D1")


def test_a_parent_in_words_is_kept_in_words() -> None:
    imported(pieces=book("D1,Hilda's old clump,pup,,Ada Quill,,,x,"))
    assert (one("D1").division.parent, one("D1").division.parent_words) == (None, "Hilda's old clump")


def test_a_receiver_nearly_a_member_is_asked_for() -> None:
    row = planned(pieces=book("D1,F1,pup,,Ada Quill,Jonas Wren-Pik,,x,")).rows[0]
    assert "Did you mean Jonas Wren-Pike?" in str(row.problems[0])


def test_the_pieces_of_a_plant_that_is_not_shown_are_not_shown(f1: Specimen) -> None:
    f1.seen_by = "keeper"
    f1.save()
    imported(pieces=book("D1,F1,pup,,Ada Quill,,,x,"))
    assert one("D1").seen_by == "keeper"


def test_the_same_book_again_changes_nothing() -> None:
    text = book("D1,F1,pup,2020,Ada Quill,Jonas Wren-Pike,,x,note", ",F1,pup,2021,Ada Quill,,,y,")
    imported(pieces=text)
    plan = planned(pieces=text)
    assert plan.counts() == {"on record": 2}
    assert [row.notes for row in plan.rows] == [[], []]
