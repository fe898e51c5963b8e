"""The members' book: people, their households, and — by an administrator alone — sign-ins and offices."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from django.core.exceptions import ValidationError
from django.core.validators import validate_email

from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.people import household_name
from frondkeep.desk.importing.reader import RowReader
from frondkeep.desk.importing.rows import PlannedRow, RawRow
from frondkeep.desk.importing.values import APPEARS, plain, read_office
from frondkeep.society.models import Appearance, Household, Member, Role, User
from frondkeep.society.models.users import RoleHeld
from frondkeep.society.services.people import add_household, add_member

if TYPE_CHECKING:
    from frondkeep.desk.importing.writing import Writing

STRICTEST_LAST = (Appearance.BY_NAME, Appearance.A_MEMBER, Appearance.CURATOR_ONLY)


def declare(raw: RawRow, ledger: Ledger) -> None:
    if raw.cells.get("name"):
        ledger.people.add_member(" ".join(raw.cells["name"].split()), raw.cells.get("household", ""))


def plan(raw: RawRow, ledger: Ledger) -> PlannedRow:
    name = " ".join(raw.cells.get("name", "").split())
    number = raw.cells.get("number", "")
    key = f"member:{plain(number) or plain(name)}"
    read = RowReader(raw, ledger, key=key, title=" ".join(filter(None, (number, name))))
    read.row.values = {
        "name": read.needed("name", most=120),
        "number": read.text("number", most=30),
        "household": read.text("household", most=100),
        "email": email(read),
        "phone": read.text("phone", most=60),
        "address": raw.cells.get("address", ""),
        "joined": read.day("joined"),
        "roles": read.read("office", read_office, otherwise=[], hint=f"We know: {known_offices()}."),
        "appears": read.word("appears", APPEARS, otherwise=Appearance.A_MEMBER),
        "notes": raw.cells.get("notes", ""),
    }
    found = ledger.members.get(f"number:{plain(number)}") if number else None
    found = found or ledger.members.get(f"name:{plain(name)}")
    if found is not None and read.row.fate == "new":
        compare(read, found, name)
    return read.row


def known_offices() -> str:
    return ", ".join(role.label for role in Role)


def email(read: RowReader) -> str:
    address = re.sub(r"^mailto:", "", read.cell("email").strip())
    if address:
        try:
            validate_email(address)
        except ValidationError:
            read.refuse("email", "This is no e-mail address. Correct it, or leave it empty.")
    return address


def compare(read: RowReader, found: Member, name: str) -> None:
    """A membership number names one person: another name under it is refused, other details are left."""
    number = read.row.values["number"]
    if found.number and number and plain(found.number) == plain(number) and plain(found.name) != plain(name):
        read.refuse("number", f"{found.name} has this number. Correct the number or the name.")
        return
    read.found(found.pk)
    values = read.row.values
    read.differing(
        {
            "email": (values["email"].casefold(), found.email.casefold()),
            "phone": (values["phone"], found.phone),
            "joined": (values["joined"].words, found.joined_words),
            "notes": (values["notes"], found.notes),
        }
    )


def write(writing: Writing, row: PlannedRow) -> None:
    values = dict(row.values)
    roles, household = values.pop("roles"), values.pop("household")
    member = add_member(user=sign_in_for(values, roles) if writing.may_appoint else None, **values)
    if household:
        join_household(member, household_name(household))


def sign_in_for(values: dict[str, str], roles: list[str]) -> User | None:
    """A sign-in without a password yet, for whoever has an e-mail address; None for others."""
    if not values["email"]:
        return None
    user = User.objects.create_user(free_sign_in_name(values["name"]), values["email"])
    for role in roles:
        RoleHeld.objects.create(user=user, role=role)
    return user


def free_sign_in_name(name: str) -> str:
    wanted, count = name, 1
    while User.objects.filter(name__iexact=wanted).exists():
        count += 1
        wanted = f"{name} {count}"
    return wanted


def join_household(member: Member, name: str) -> None:
    """A household shows as little of itself as its most private member does."""
    household = Household.objects.filter(name__iexact=name).first()
    if household is None:
        add_household(name=name, members=[member], appears=member.appears)
        return
    member.household = household
    member.save()
    stricter = max(
        household.appears, member.appears, key=lambda shown: STRICTEST_LAST.index(Appearance(shown))
    )
    if stricter != household.appears:
        household.appears = stricter
        household.save()
