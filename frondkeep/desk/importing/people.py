"""Who is meant by the words in a cell: a full name, an initial form, a first name, a household, the society."""

from __future__ import annotations

from dataclasses import dataclass, field

from rapidfuzz import fuzz, process

from frondkeep.desk.importing.values import plain
from frondkeep.society.models import Household, Keeper, Member

NEAR = 84


class UnclearPersonError(ValueError):
    """Several people are meant by these words; `str()` names them."""


def household_name(words: str) -> str:
    """“Thornwick” and “Thornwick household” are one; shown with the word."""
    said = " ".join(words.split())
    return said if plain(said).endswith(("household", "family")) else f"{said} household"


@dataclass
class PeopleBook:
    """Keepers by every form their names are written in. An exact name goes before an initial or first name."""

    exact: dict[str, list[Keeper]] = field(default_factory=dict)
    short: dict[str, list[Keeper]] = field(default_factory=dict)
    names: dict[str, str] = field(default_factory=dict)
    homes: dict[str, set[str]] = field(default_factory=dict)

    @classmethod
    def load(cls) -> PeopleBook:
        book = cls()
        book.add(Keeper.objects.filter(kind=Keeper.Kind.SOCIETY).first() or Keeper(kind=Keeper.Kind.SOCIETY))
        for keeper in Keeper.objects.with_people().select_related("member__household").order_by("pk"):
            if keeper.kind != Keeper.Kind.SOCIETY:
                book.add(keeper)
        return book

    def add(self, keeper: Keeper) -> None:
        if keeper.kind == Keeper.Kind.SOCIETY:
            for form in ("the society", "society", "club", "the club"):
                self.exact.setdefault(form, []).append(keeper)
        elif keeper.kind == Keeper.Kind.HOUSEHOLD:
            self._add_household(keeper)
        else:
            self._add_member(keeper)

    def add_member(self, name: str, household: str = "") -> None:
        """Somebody of the sheets who is not on record yet."""
        home = Household(name=household_name(household)) if household else None
        if plain(name) not in self.exact:
            self.add(Keeper(kind=Keeper.Kind.MEMBER, member=Member(name=name, household=home)))
        if home and plain(home.name) not in self.exact:
            self.add(Keeper(kind=Keeper.Kind.HOUSEHOLD, household=home))
        if home:
            self.homes.setdefault(plain(home.name), set()).add(plain(name))

    def _add_household(self, keeper: Keeper) -> None:
        name = keeper.household.name
        said = plain(household_name(name))
        self.names[said] = name
        self.exact.setdefault(said, []).append(keeper)
        self.short.setdefault(said.removesuffix(" household"), []).append(keeper)

    def _add_member(self, keeper: Keeper) -> None:
        said = plain(keeper.member.name)
        self.names[said] = keeper.member.name
        self.exact.setdefault(said, []).append(keeper)
        words = said.split()
        first, rest = words[0], " ".join(words[1:])
        if keeper.member.household:
            self.homes.setdefault(plain(household_name(keeper.member.household.name)), set()).add(said)
        for form in {f"{first[0]} {rest}", first} if rest else ():
            self.short.setdefault(form, []).append(keeper)

    def find(self, words: str) -> Keeper | None:
        """The keeper meant, or None. Raises UnclearPersonError where several are."""
        said = plain(words)
        found = self.exact.get(said) or self.short.get(said) or []
        if len(found) > 1:
            named = " or ".join(sorted(keeper.name for keeper in found))
            raise UnclearPersonError(f"This may be {named}. Write the full name.")
        return found[0] if found else None

    def near(self, words: str) -> list[str]:
        """Names written much like these words, the likest first."""
        found = process.extract(
            plain(words), {said: said for said in self.names}, scorer=fuzz.ratio, score_cutoff=NEAR, limit=3
        )
        return [self.names[said] for _, _, said in found]

    def lives_with(self, keeper: Keeper, name: str) -> bool:
        """Whether the keeper is the member of this name, or a household they belong to."""
        said = plain(name)
        if keeper.member is not None:
            return plain(keeper.member.name) == said
        if keeper.household is not None:
            return said in self.homes.get(plain(household_name(keeper.household.name)), ())
        return False
