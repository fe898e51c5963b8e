"""What a tag says among the names on record: the name it is, or those it looks like, with the reasons."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from frondkeep.desk.name_page import plants_under
from frondkeep.desk.searching.names import names_alike
from frondkeep.society.models import User
from lineage.core.lookalikes import Likeness, compare_names
from specimens.models import Keeping, Name
from specimens.services.reading import HYBRID_SIGN, KnownNames, LabelMatch, take_qualifier

# From this likeness on somebody is asked whether it is the same name.
WORTH_ASKING = 0.6
MOST_ASKED = 3
COUNT_WORDS = (
    "Nobody grows",
    "One member grows",
    "Two members grow",
    "Three members grow",
    "Four members grow",
)


@dataclass(frozen=True, slots=True)
class Lookalike:
    """A name on record that a new one looks like, why, and how many keepers the reader knows it with."""

    name: Name
    likeness: Likeness
    growers: int

    @property
    def grown_by(self) -> str:
        """“Three members grow it.”"""
        few = self.growers < len(COUNT_WORDS)
        return f"{COUNT_WORDS[self.growers] if few else f'{self.growers} members grow'} it."

    @property
    def reasons(self) -> tuple[str, ...]:
        return tuple(str(reason) for reason in self.likeness.reasons[:3])


@dataclass(frozen=True, slots=True)
class TagRead:
    """A tag as it was read. `lookalikes` only where it is no name on record."""

    text: str
    match: LabelMatch
    is_formula: bool = False
    lookalikes: tuple[Lookalike, ...] = ()

    @property
    def is_new(self) -> bool:
        """Whether the tag names something that is not on record."""
        return not (self.match.says_nothing or self.match.name or self.is_formula)

    @property
    def needs_genus(self) -> bool:
        return self.is_new and not self.match.reading.genus

    @property
    def moved_to(self) -> Name | None:
        """The name accepted today, where the tag bears another."""
        name = self.match.name
        return None if name is None or name.is_accepted else name.accepted

    @property
    def is_of_spores(self) -> bool:
        """Whether the tag says “ex”: raised from spores of what it names."""
        return self.match.reading.spores

    def named(self, pk: str) -> Name | None:
        """The lookalike of this id."""
        return next((like.name for like in self.lookalikes if str(like.name.pk) == pk), None)


def read_tag(text: str, *, known: KnownNames, reader: User) -> TagRead:
    """Read what is on a tag; never raises. A few queries where it is no name on record."""
    match = known.match(text)
    formula = match.name is None and names_two(text, known)
    if match.name or match.says_nothing or formula:
        return TagRead(text, match, is_formula=formula)
    return TagRead(text, match, lookalikes=tuple(lookalikes_of(text, match, known, reader)))


def names_two(text: str, known: KnownNames) -> bool:
    """Whether it is a hybrid formula of two names on record."""
    sides = HYBRID_SIGN.split(take_qualifier(text)[1])
    return len(sides) == 2 and all(side.strip() and known.match(side).name for side in sides)


def lookalikes_of(text: str, match: LabelMatch, known: KnownNames, reader: User) -> Iterable[Lookalike]:
    """Names on record that the new one looks like, best first; of its genus, where it says one."""
    bare = take_qualifier(text)[1]
    genus = match.reading.genus
    found = names_alike(bare, genus=genus, least=WORTH_ASKING, limit=MOST_ASKED)
    by_id = Name.objects.standing().select_related("accepted", "genus").in_bulk([alike.pk for alike in found])
    for alike in found:
        if alike.pk in by_id:
            likeness = compare_names(
                bare, alike.name, genus_b=alike.genus or None, vocabulary=known.vocabulary
            )
            yield Lookalike(by_id[alike.pk], likeness, growers_of(by_id[alike.pk], reader))


def growers_of(name: Name, reader: User) -> int:
    """How many keepers grow it, of the plants that the reader may see."""
    plants = plants_under(name.accepted or name, reader)
    return Keeping.objects.filter(is_open=True, specimen__in=plants).values("keeper").distinct().count()
