"""Who is meant: full names, initial forms, first names, households, the society."""

import pytest

from frondkeep.desk.importing.people import PeopleBook, UnclearPersonError
from frondkeep.society.models import Keeper, Member
from tests.cast import make_member


@pytest.mark.parametrize(
    "words", ["Jonas Wren-Pike", "jonas wren pike", "J. Wren-Pike", "J Wren-Pike", "Jonas"]
)
def test_a_member_is_found_by_every_form_of_the_name(jonas: Member, words: str) -> None:
    found = PeopleBook.load().find(words)
    assert found is not None
    assert found.member == jonas


@pytest.mark.parametrize("words", ["Lode household", "the Lode household", "Lode", "LODE HOUSEHOLD"])
def test_a_household_is_found_with_and_without_the_word(home: Keeper, words: str) -> None:
    assert PeopleBook.load().find(words.removeprefix("the ")) == home


def test_the_society_is_a_keeper_before_it_keeps_anything(db: None) -> None:
    found = PeopleBook.load().find("the society")
    assert found is not None
    assert found.kind == Keeper.Kind.SOCIETY


def test_a_first_name_of_two_members_is_unclear(ada: Member) -> None:
    make_member("Ada Reed")
    with pytest.raises(UnclearPersonError, match="Ada Quill or Ada Reed"):
        PeopleBook.load().find("Ada")


def test_a_full_name_goes_before_somebody_elses_short_form(db: None) -> None:
    make_member("A. Reed")
    make_member("Anna Reed")
    found = PeopleBook.load().find("A. Reed")
    assert found is not None
    assert found.name == "A. Reed"


def test_a_stranger_is_nobody_and_a_slip_has_near_names(ada: Member) -> None:
    book = PeopleBook.load()
    assert book.find("Greenlatch Nursery") is None
    assert book.near("Ada Quil") == ["Ada Quill"]
    assert book.near("Greenlatch Nursery") == []


def test_a_member_lives_with_their_household(home: Keeper, ada: Member) -> None:
    book = PeopleBook.load()
    assert book.lives_with(home, "Bram Lode")
    assert not book.lives_with(home, "Ada Quill")
    assert book.lives_with(ada.keeper, "Ada Quill")
