"""The cultivar names of the society, and how its names list writes them."""

import re
from dataclasses import dataclass
from functools import cached_property

from demo_data.chance import Chance
from demo_data.name_book import LOOKALIKE_NAMES, OTHER_FERNS, STAGHORNS
from demo_data.people import BY_FIRST
from demo_data.species import ACCEPTED, SPECIES, TRAITS, traits_from
from demo_data.spreadsheets import Row


@dataclass(frozen=True)
class Cultivar:
    """One line of the names book; ``base`` is the species it is filed under, with its genus."""

    epithet: str
    base: str
    raiser: str
    introduced: str
    parents: str
    comes_true: str
    origin: str
    own_traits: str
    note: str
    group: str = ""

    @property
    def genus(self) -> str:
        """The genus it is filed under."""
        return self.base.split()[0]

    @property
    def name(self) -> str:
        """Genus and epithet: what the answer key and the plants call it."""
        return f"{self.genus} '{self.epithet}'"

    @cached_property
    def traits(self) -> dict[str, str]:
        """Its states by trait: those of its species unless the book says otherwise."""
        return SPECIES[ACCEPTED.get(self.base, self.base)] | traits_from(self.own_traits)

    @property
    def year(self) -> int | None:
        """The first year in which it can have been about, or None."""
        digits = re.findall(r"\d{4}", self.introduced)
        return int(digits[0]) if digits else None

    @property
    def is_hybrid(self) -> bool:
        """Whether two species or cultivars are named as its parents."""
        return " x " in self.parents or "×" in self.parents

    @property
    def by_division_only(self) -> bool:
        """Whether every plant of the name is a piece of the first."""
        return self.comes_true == "d"


def _read(table: str) -> list[Cultivar]:
    cultivars = []
    for line in table.strip().splitlines():
        epithet, base, raiser, introduced, parents, comes_true, origin, traits, note = line.split("|")
        raiser = BY_FIRST[raiser].name if raiser in BY_FIRST else raiser
        base, _, group = base.partition("/")
        genus_and_species = base if " " in base else f"Platycerium {base}"
        cultivar = Cultivar(
            epithet, genus_and_species, raiser, introduced, parents, comes_true, origin, traits, note, group
        )
        cultivars.append(cultivar)
    return cultivars


CULTIVARS = tuple(_read(STAGHORNS) + _read(OTHER_FERNS) + _read(LOOKALIKE_NAMES))
BY_NAME = {cultivar.name: cultivar for cultivar in CULTIVARS}

_TRUE_WORDS = {
    "d": ("no, pups only", "division only", "pieces only"),
    "s": ("yes", "true from spores"),
    "?": ("", "?", "not tried"),
}

HEADINGS = [
    "Name (as we write it)", "Genus", "Species", "Raised by", "Introduced", "Parents", "True from spores?",
    "Where from", *(trait.capitalize() for trait in TRAITS), "Notes",
]  # fmt: skip


def _written(cultivar: Cultivar, chance: Chance) -> str:
    epithet, genus, base = cultivar.epithet, cultivar.genus, cultivar.base
    if cultivar.group:
        return f"{base} ({cultivar.group} Group) '{epithet}'"
    if base in ACCEPTED:
        return f"{base} '{epithet}'"
    filed_under = genus if cultivar.is_hybrid else base
    return chance.one_of(
        (
            f"{genus} '{epithet}'",
            f"{genus} '{epithet}'",
            f"{genus} ‘{epithet}’",
            f"{genus[0]}. '{epithet}'",
            f'{genus} "{epithet}"',
            f"{genus} cv. {epithet}",
            f"{filed_under} '{epithet}'",
        )
    )


def _row(cultivar: Cultivar, chance: Chance) -> Row:
    species = "" if cultivar.is_hybrid else cultivar.base.split()[1]
    traits = [
        "" if chance.happens(0.04) and not cultivar.own_traits else cultivar.traits.get(trait, "")
        for trait in TRAITS
    ]
    return [
        _written(cultivar, chance), cultivar.genus, species, cultivar.raiser, cultivar.introduced,
        cultivar.parents, chance.one_of(_TRUE_WORDS[cultivar.comes_true]), cultivar.origin, *traits, cultivar.note,
    ]  # fmt: skip


def name_rows(chance: Chance) -> list[Row]:
    """The names list: headings, then one row a cultivar, here and there without a trait."""
    return [HEADINGS, *(_row(cultivar, chance) for cultivar in CULTIVARS)]
