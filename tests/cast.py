"""An invented society: the people and plants that tests speak of."""

from __future__ import annotations

from itertools import count
from typing import Any

from frondkeep.society.models import Keeper, Member, Role, User
from frondkeep.society.models.users import RoleHeld
from frondkeep.society.services.people import add_member, keeper_of_member
from specimens.models import Came, Identification, Name, Rank, Reproduction, Specimen, Treatment
from specimens.services.names import add_name
from specimens.services.specimens import PieceOf, log_specimen

PASSWORD = "frond and spore 7"
_numbers = count(1)


def make_user(name: str = "", *roles: str, **fields: Any) -> User:
    """Somebody who signs in, holding these roles; not yet a member."""
    user = User.objects.create_user(name or f"user {next(_numbers)}", password=PASSWORD, **fields)
    for role in roles:
        RoleHeld.objects.create(user=user, role=role)
    return user


def make_member(name: str = "", *roles: str, sign_in: str = "", **fields: Any) -> Member:
    """A member who signs in (by `sign_in`, else by the first word of the name), holding these roles."""
    name = name or f"Member {next(_numbers)}"
    user = make_user(sign_in or name.split()[0].lower() + f"-{next(_numbers)}", *roles)
    return add_member(name=name, user=user, **fields)


def tamsin() -> Member:
    """An ordinary member, seventy, with a greenhouse."""
    return make_member("Tamsin Okoro", sign_in="tamsin")


def bram() -> Member:
    """Another ordinary member, no kin of hers."""
    return make_member("Bram Lindqvist", sign_in="bram")


def ines() -> Member:
    """The curator."""
    return make_member("Ines Marsh", Role.CURATOR, sign_in="ines")


def otto() -> Member:
    """One of the show committee."""
    return make_member("Otto Reyes", Role.COMMITTEE, sign_in="otto")


def keeper_for(person: Member | User | Keeper) -> Keeper:
    if isinstance(person, Keeper):
        return person
    return keeper_of_member(person if isinstance(person, Member) else person.member)


def make_genus(epithet: str = "Platycerium") -> Name:
    found = Name.objects.filter(rank=Rank.GENUS, epithet=epithet).first()
    return found or add_name(rank=Rank.GENUS, epithet=epithet)


def make_name(epithet: str, rank: str = Rank.SPECIES, *, parent: Name | None = None, **fields: Any) -> Name:
    """A name under Platycerium, unless a parent is given."""
    return add_name(rank=rank, epithet=epithet, parent=parent or make_genus(), **fields)


def make_cultivar(
    epithet: str, *, parent: Name | None = None, reproduction: str = Reproduction.DIVISION, **fields: Any
) -> Name:
    """A cultivar kept by division only, unless said otherwise."""
    return make_name(epithet, Rank.CULTIVAR, parent=parent, reproduction=reproduction, **fields)


def make_formula(first: Name, second: Name) -> Name:
    return add_name(rank=Rank.FORMULA, first_parent=first, second_parent=second)


def make_treatment(name: str = "Account of 2006", *, followed: bool = True) -> Treatment:
    return Treatment.objects.create(name=name, followed=followed)


def make_plant(
    keeper: Member | User | Keeper | None = None,
    *,
    came: str = Came.OUTSIDE,
    by: User | None = None,
    ground: str = Identification.Ground.LABEL,
    **fields: Any,
) -> Specimen:
    """A plant in somebody's hands; bought or given, unless said otherwise."""
    kept_by = keeper_for(keeper) if keeper is not None else None
    return log_specimen(keeper=kept_by, came=came, by=by, ground=ground, **fields)


def make_pup(parent: Specimen | None, keeper: Member | None = None, **fields: Any) -> Specimen:
    """A piece of a plant; what belongs to the division (words, kind, sport …) is told from the rest."""
    of_piece = {key: fields.pop(key) for key in ("words", "sport", "sport_words") if key in fields}
    return make_plant(keeper, came=Came.PIECE, piece_of=PieceOf(parent=parent, **of_piece), **fields)
