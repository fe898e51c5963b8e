"""A row that cannot be taken says where it stands, what stands there and what to do."""

import pytest

from frondkeep.society.models import Member
from specimens.models import Name, Specimen
from tests.cast import make_member, make_plant
from tests.desk.importing.sheets import only, planned, plants, told

pytestmark = pytest.mark.usefixtures("ada", "tassel")


def test_a_mistyped_parent_is_refused_with_what_may_be_meant(ada: Member) -> None:
    make_plant(ada, society_number="F290")
    row = only(planned(plants=plants("F2,x,,Ada Quill,,2020,pup,F2900,,,")))
    assert row.fate == "refused"
    assert told(row) == "Parent: “F2900” — Nothing on record or in these sheets bears it. Did you mean F290?"
    assert row.raw.place == "plants.csv, row 2"


def test_a_code_with_a_slip_is_refused_with_the_code_it_may_be(f1: Specimen) -> None:
    slip = f1.code[:-1] + ("A" if f1.code[-1] != "A" else "B")
    row = only(planned(plants=plants(f"F2,x,,Ada Quill,,2020,pup,{slip},,,")))
    assert row.fate == "refused"
    assert "Parent" in told(row)


def test_a_day_the_calendar_lacks_is_refused() -> None:
    row = only(planned(plants=plants("F2,x,,Ada Quill,,31/02/2020,bought,,,,")))
    assert told(row).startswith("When: “31/02/2020” — There is no 31 February 2020.")


def test_a_day_to_come_is_refused() -> None:
    row = only(planned(plants=plants("F2,x,,Ada Quill,,1/1/2199,bought,,,,")))
    assert "When: “1/1/2199”" in told(row)
    assert "has not come yet" in told(row)


def test_a_keeper_nobody_knows_is_refused_with_who_may_be_meant() -> None:
    row = only(planned(plants=plants("F2,x,,Ada Quil,,2020,bought,,,,")))
    assert told(row) == "Kept by: “Ada Quil” — Nobody of this name is a member. Did you mean Ada Quill?"


def test_a_keeper_of_whom_there_are_two_is_asked_for_in_full() -> None:
    make_member("Ada Reed")
    row = only(planned(plants=plants("F2,x,,Ada,,2020,bought,,,,")))
    assert told(row) == "Kept by: “Ada” — This may be Ada Quill or Ada Reed. Write the full name."


def test_an_unknown_word_names_the_words_we_know() -> None:
    row = only(planned(plants=plants("F2,x,,Ada Quill,,2020,bought,,,so-so,")))
    assert told(row).startswith("State: “so-so” — We do not know this word. We know: growing, dead,")


def test_all_that_is_wrong_in_a_row_is_said_at_once() -> None:
    row = only(planned(plants=plants("F2,x,,Nemo Nix,,31/02/2020,fell,,,so-so,")))
    assert [problem.column for problem in row.problems] == ["How", "Kept by", "State", "When"]


def test_a_number_twice_is_refused_the_second_time() -> None:
    first, second = planned(plants=plants("F2,x,,Ada Quill,,,,,,,", "F2,y,,Ada Quill,,,,,,,")).rows
    assert (first.fate, second.fate) == ("new", "refused")
    assert "It stands in plants.csv, row 2 already" in told(second)


def test_a_number_that_two_records_bear_is_asked_for_by_code(ada: Member) -> None:
    make_plant(ada, society_number="F7")
    make_plant(ada, society_number="F7")
    row = only(planned(plants=plants("F8,x,,Ada Quill,,2020,pup,F7,,,")))
    assert "2 records bear this number. Write the plant’s code." in told(row)


def test_plants_that_would_be_their_own_ancestors_are_refused_by_name_and_others_for_their_sake() -> None:
    rows = planned(
        plants=plants(
            "F2,x,,Ada Quill,,,pup,F4,,,",
            "F3,x,,Ada Quill,,,pup,F2,,,",
            "F4,x,,Ada Quill,,,pup,F3,,,",
            "F5,x,,Ada Quill,,,pup,F4,,,",
            "F6,x,,Ada Quill,,,bought,,,,",
        )
    ).rows
    assert [row.fate for row in rows] == ["refused"] * 4 + ["new"]
    for row in rows[:3]:
        assert "It would be its own ancestor" in told(row)
        assert all(number in told(row) for number in ("F2", "F3", "F4"))
    assert told(rows[3]) == "It refers to F4 x (plants.csv, row 4), which is not taken."


def test_a_plant_that_is_its_own_parent_is_refused() -> None:
    row = only(planned(plants=plants("F2,x,,Ada Quill,,,pup,F2,,,")))
    assert "F2 x comes from F2 x" in told(row)


def test_a_circle_through_a_sowing_is_found() -> None:
    plan = planned(
        plants=plants("F2,x,,Ada Quill,,,from spores,S1,,,"), sowings="Sowing no,Sown,Spores of\nS1,2020,F2"
    )
    assert [row.fate for row in plan.rows] == ["refused", "refused"]


def test_a_piece_is_not_taken_from_a_sowing() -> None:
    plan = planned(
        plants=plants("F2,x,,Ada Quill,,,pup,S1,,,"),
        sowings="Sowing no,Sown,Spores of\nS1,2020,P. 'Silver Tassel'",
    )
    assert "Write “from spores”" in told(plan.rows[0])


def test_words_that_are_no_number_are_kept_as_words() -> None:
    row = only(planned(plants=plants("F2,x,,Ada Quill,,2020,pup,Jonas's big one,,,")))
    assert row.fate == "new"
    assert row.values["origin"]["words"] == "Jonas's big one"


def test_a_tag_longer_than_a_tag_is_refused() -> None:
    row = only(planned(plants=plants(f"F2,{'x' * 501},,Ada Quill,,,,,,,")))
    assert told(row).endswith("This is 501 characters long; a label holds 500.")


def test_a_cross_of_what_nobody_knows_is_refused(tassel: Name) -> None:
    row = only(planned(crosses="No,One parent,Other parent\nX1,P. 'Silver Tassel',Nobody's Fern"))
    assert told(row) == (
        "Other parent: “Nobody's Fern” — This is neither a plant nor a name on record. Add the name first."
    )


def test_a_membership_number_of_somebody_else_is_refused() -> None:
    make_member("Jo Reed", number="M1")
    row = only(planned(members="No,Name,Joined\nM1,Zoe Marsh,2020"))
    assert told(row) == "No: “M1” — Jo Reed has this number. Correct the number or the name."


def test_an_address_that_is_none_is_refused() -> None:
    row = only(planned(members="No,Name,E-mail\nM1,Zoe Marsh,zoe at home"))
    assert "This is no e-mail address" in told(row)
