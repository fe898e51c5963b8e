"""The members' book becomes members and households; offices and sign-ins only from an administrator."""

import pytest

from frondkeep.society.models import Appearance, Household, Member, Role, User
from tests.cast import make_user
from tests.desk.importing.sheets import imported, planned

BOOK = """
    No,Full name,Household,E-mail,Tel.,Joined,Office held,Wishes to appear,Notes
    M1,Ada Quill,Quill,home@example.org,1,1987,curator,by name,
    M2,Bo Quill,Quill,home@example.org,2,1987,,a member,
    M3,Cy Reed,,,3,before 1980,,curator only,no computer
"""
pytestmark = pytest.mark.django_db


def test_members_and_their_households_are_added() -> None:
    imported(members=BOOK)
    home = Household.objects.get()
    assert home.name == "Quill household"
    assert [member.name for member in home.members.all()] == ["Ada Quill", "Bo Quill"]
    cy = Member.objects.get(number="M3")
    assert (cy.joined.words, cy.phone, cy.notes, cy.appears) == ("before 1980", "3", "no computer", "curator")
    assert cy.keeper is not None


def test_a_household_appears_as_its_most_private_member_wishes() -> None:
    imported(members=BOOK)
    assert Household.objects.get().appears == Appearance.A_MEMBER


def test_an_administrator_gives_sign_ins_without_a_password_and_offices() -> None:
    imported(make_user("Root", Role.ADMINISTRATOR), members=BOOK)
    ada = User.objects.get(name="Ada Quill")
    assert ada.roles == {Role.CURATOR}
    assert not ada.has_usable_password()
    assert User.objects.filter(email="home@example.org").count() == 2
    assert Member.objects.get(number="M3").user is None


def test_a_curator_gives_neither_sign_ins_nor_offices() -> None:
    imported(make_user("Imke", Role.CURATOR), members=BOOK)
    assert [user.name for user in User.objects.all()] == ["Imke"]


def test_the_same_book_again_changes_nothing() -> None:
    imported(members=BOOK)
    plan = planned(members=BOOK)
    assert plan.counts() == {"on record": 3}
    assert not any(row.notes for row in plan.rows)


def test_a_member_on_record_is_left_as_they_are_and_no_contact_data_is_told() -> None:
    imported(members=BOOK)
    (row,) = planned(members="No,Full name,E-mail,Tel.\nM3,Cy Reed,new@example.org,999").rows
    assert row.notes == ["On record already, with another E-mail, another Tel.; left as it is."]
    assert Member.objects.get(number="M3").phone == "3"


def test_an_office_we_do_not_know_is_refused_with_those_we_know() -> None:
    (row,) = planned(members="No,Full name,Office held\nM9,Zoe Marsh,treasurer").rows
    assert "We know: curator, show committee, membership secretary" in str(row.problems[0])
