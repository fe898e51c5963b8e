"""The cast: invented people and plants that tests are about, made with as little as a test must say."""

from __future__ import annotations

import uuid
from datetime import date
from itertools import count
from typing import Any

from frondkeep.society.models import Appearance, Household, Keeper, Meeting, Member, Role, RoleHeld, User
from frondkeep.society.services.people import add_household, add_member, keeper_of_household, keeper_of_member
from specimens.models import Came, Name, Rank, Reproduction, Specimen
from specimens.naming.dates import PartialDate
from specimens.services.names import add_name
from specimens.services.specimens import PieceOf, log_specimen

PASSWORD = "fronds in the mist"
_numbers = count(1)


def make_user(name: str = "", *roles: str, email: str = "", **fields: Any) -> User:
    """Somebody who signs in with PASSWORD, with these roles."""
    name = name or f"user-{next(_numbers)}"
    user = User.objects.create_user(
        name, email or f"{name.lower().replace(' ', '.')}@example.org", PASSWORD, **fields
    )
    for role in roles:
        RoleHeld.objects.create(user=user, role=role)
    return user


def make_member(name: str = "Ada Quill", *roles: str, user: bool = True, **fields: Any) -> Member:
    """A member who signs in by name, unless told otherwise; appears by name."""
    fields.setdefault("appears", Appearance.BY_NAME)
    return add_member(name=name, user=make_user(name, *roles) if user else None, **fields)


def make_curator(name: str = "Imke Marsh") -> Member:
    return make_member(name, Role.CURATOR)


def make_committee(name: str = "Tove Okoro") -> Member:
    return make_member(name, Role.COMMITTEE)


def make_household(name: str = "Bram and Mei", *members: Member) -> Household:
    people = list(members) or [make_member("Bram Lode"), make_member("Mei Lode")]
    return add_household(name=name, members=people, appears=Appearance.BY_NAME)


def keeper_for(who: Member | Household | Keeper) -> Keeper:
    if isinstance(who, Keeper):
        return who
    return keeper_of_member(who) if isinstance(who, Member) else keeper_of_household(who)


def make_meeting(name: str = "Autumn meeting", on: date = date(2025, 11, 14)) -> Meeting:
    return Meeting.objects.get_or_create(name=name, date=on)[0]


def make_genus(epithet: str = "Platycerium") -> Name:
    return Name.objects.filter(rank=Rank.GENUS, epithet=epithet).first() or add_name(
        rank=Rank.GENUS, epithet=epithet
    )


def make_species(epithet: str = "bifurcatum", genus: str = "Platycerium", **fields: Any) -> Name:
    parent = make_genus(genus)
    found = Name.objects.filter(rank=Rank.SPECIES, epithet=epithet, parent=parent).first()
    return found or add_name(rank=Rank.SPECIES, epithet=epithet, parent=parent, **fields)


def make_cultivar(epithet: str = "Silver Tassel", genus: str = "Platycerium", **fields: Any) -> Name:
    """A cultivar kept by division only, unless told otherwise."""
    fields.setdefault("reproduction", Reproduction.DIVISION)
    parent = make_genus(genus)
    found = Name.objects.filter(rank=Rank.CULTIVAR, epithet=epithet, parent=parent).first()
    return found or add_name(rank=Rank.CULTIVAR, epithet=epithet, parent=parent, **fields)


def make_plant(keeper: Member | Household | Keeper, name: Name | None = None, **fields: Any) -> Specimen:
    """A growing plant, bought or given unless told otherwise."""
    fields.setdefault("came", Came.OUTSIDE)
    fields.setdefault("label_text", name.epithet if name else "")
    by = fields.pop("by", keeper.user if isinstance(keeper, Member) else None)
    return log_specimen(keeper=keeper_for(keeper), name=name, by=by, **fields)


def make_pup(parent: Specimen, keeper: Member | Household | Keeper, **fields: Any) -> Specimen:
    """A pup of a plant, under its parent's name."""
    thought = parent.identification
    sport = fields.pop("sport", False)
    return make_plant(
        keeper,
        fields.pop("name", thought.name if thought else None),
        came=Came.PIECE,
        piece_of=PieceOf(parent=parent, sport=sport),
        **fields,
    )


def when(words: str, earliest: date, latest: date | None = None) -> PartialDate:
    return PartialDate(words, earliest, latest or earliest)


def token() -> uuid.UUID:
    return uuid.uuid4()
