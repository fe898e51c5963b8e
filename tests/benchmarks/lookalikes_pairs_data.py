"""Invented pairs of names: one plant written two ways, and two plants named alike."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from rapidfuzz.distance import OSA

from .lookalikes_data import (
    DESCRIBING,
    FIRST,
    GENERA,
    GROUP_WORDS,
    JAPANESE,
    LATIN,
    PLACE_WORDS,
    PLACES,
    SURNAMES,
    THINGS,
    TITLES,
    TRAILING,
    WRITTEN,
    NameMaker,
)

SAME_WORDS = [
    ('golden', 'aurea'), ('silver', 'argentea'), ('white', 'alba'), ('dwarf', 'nana'), ('crested', 'cristata'),
    ('feathery', 'plumosa'), ('weeping', 'pendula'), ('forked', 'furcata'), ('fringed', 'fimbriata'), ('giant',
    'gigantea'), ('spotted', 'maculata'), ('purple', 'purpurea'), ('leafy', 'foliosa'), ('black', 'nigra'),
    ('twisted', 'tortilis'), ('upright', 'erecta'), ('mossy', 'muscosa'), ('hairy', 'hirsuta'), ('broad', 'lata'),
    ('Monte', 'Mount'), ('Lago', 'Lake'), ('Sankt', 'Saint'), ('Rio', 'River'), ('Frau', 'Mrs'), ('Doktor', 'Dr'),
    ('moon', 'luna'), ('snow', 'yuki'), ('crested', 'shishi'), ('star', 'hoshi'), ('fan', 'ogi')
]  # fmt: skip
OPPOSITES = [
    ('golden', 'silver'), ('broad', 'narrow'), ('giant', 'dwarf'), ('major', 'minor'), ('upright', 'weeping'),
    ('white', 'black'), ('early', 'late'), ('north', 'south'), ('long', 'short'), ('morning', 'evening')
]  # fmt: skip
SHORT_FORMS = [
    ('gerald', 'Gerry'), ('judith', 'Judy'), ('victor', 'Vic'), ('walter', 'Walt'), ('albert', 'Bert')
]  # fmt: skip
QUOTES = [
    "'{}'", '‘{}’', '“{}”', '"{}"', '«{}»', "''{}''", '`{}´'
]  # fmt: skip
FILLED = [
    '{} clone', '{} strain', 'The {}', '{} (true)', '{} form', 'cv. {}', '{} hort.', '{} type', '{} selection'
]  # fmt: skip
ROMANS = [
    'I', 'II', 'III', 'IV', 'V', 'VI', 'VII', 'VIII', 'IX', 'X', 'XI', 'XII'
]  # fmt: skip
ACCENTED = [
    ('u', 'ü'), ('o', 'ō'), ('e', 'é'), ('u', 'ū'), ('a', 'â'), ('o', 'ö'), ('i', 'í')
]  # fmt: skip


@dataclass(frozen=True)
class NamePair:
    """Two names; ``same``: they name one plant; ``kind``: how the second was made from the first."""

    a: str
    b: str
    genus_a: str
    genus_b: str
    same: bool
    kind: str


def make_pairs(seed: int, *, each: int = 40) -> Iterator[NamePair]:
    """About ``each`` pairs a way of going astray, and four times as many pairs of different plants."""
    maker = NameMaker(seed)
    twins = _Twins(maker)
    others = _Others(maker)
    for kind, make in twins.kinds().items():
        yield from _made(maker, kind, make, each, same=True)
    share = {"minimal": 9, "nearest": 9, "word": 5, "superset": 4, "number": 4, "typo beside": 4, "person": 4}
    for kind, make in others.kinds().items():
        yield from _made(maker, kind, make, each * share.get(kind, 2), same=False)


def _made(
    maker: NameMaker, kind: str, make: Callable[[], tuple[str, str]], count: int, *, same: bool
) -> Iterator[NamePair]:
    for _ in range(count):
        genus, other = maker.dice.sample(GENERA, 2)
        a, b = make()
        while not same and kind != "genus" and a == b:
            a, b = make()
        if kind == "genus":
            yield NamePair(f"{genus} '{a}'", f"{other} '{b}'", genus, other, same, kind)
        else:
            yield NamePair(maker.dressed(a, genus), maker.dressed(b, genus), genus, genus, same, kind)


class _Twins:
    """One plant, two ways of writing its name."""

    def __init__(self, maker: NameMaker) -> None:
        self.maker = maker

    def kinds(self) -> dict[str, Callable[[], tuple[str, str]]]:
        return {
            name.removeprefix("by_").replace("_", " "): getattr(self, name)
            for name in dir(self)
            if name[:3] == "by_"
        }

    def by_capitals(self) -> tuple[str, str]:
        name = self.maker.name()
        return name, self.maker.pick(
            [name.upper(), name.lower(), name.replace(" ", "_"), name.replace(" ", "  ")]
        )

    def by_quotes(self) -> tuple[str, str]:
        name = self.maker.name()
        return name, self.maker.pick(QUOTES).format(name)

    def by_accent(self) -> tuple[str, str]:
        name = self.maker.title(JAPANESE + SURNAMES)
        plain, accented = self.maker.dice.choice([pair for pair in ACCENTED if pair[0] in name] or [("", "")])
        return name, name.replace(plain, accented, 1) if plain else name

    def by_possessive(self) -> tuple[str, str]:
        owner, thing = self.maker.title(SURNAMES), self.maker.title(THINGS)
        return f"{owner}'s {thing}", self.maker.pick(
            [f"{owner}s {thing}", f"{owner} {thing}", f"{owner}´s {thing}"]
        )

    def by_initial(self) -> tuple[str, str]:
        if self.maker.dice.random() < 0.3:
            full, short = self.maker.dice.choice(SHORT_FORMS)
            surname = self.maker.title(SURNAMES)
            return f"{full.title()} {surname}", f"{short} {surname}"
        person = self.maker.person()
        return person, f"{person[0]}. {person.split()[1]}"

    def by_join(self) -> tuple[str, str]:
        name = f"{self.maker.title(DESCRIBING)} {self.maker.title(THINGS)}"
        joined = name.replace(" ", "")
        return name, self.maker.pick([joined, joined.title(), name.replace(" ", "-")])

    def by_numeral(self) -> tuple[str, str]:
        name, number = (
            f"{self.maker.title(DESCRIBING)} {self.maker.title(THINGS)}",
            self.maker.dice.randint(2, 12),
        )
        ways = [
            f"{name} {number}",
            f"{name} No. {number}",
            f"{name} #{number}",
            f"{name} {ROMANS[number - 1]}",
        ]
        first, second = self.maker.dice.sample([*ways, f"{name} {WRITTEN[number - 1]}"], 2)
        return first, second

    def by_abbreviation(self) -> tuple[str, str]:
        full, short = self.maker.dice.choice(
            [("Mount", "Mt."), ("Saint", "St."), ("Fort", "Ft."), ("Doctor", "Dr."), ("Professor", "Prof.")]
        )
        rest = self.maker.title(PLACES if full in PLACE_WORDS else SURNAMES)
        return f"{full} {rest}", f"{short} {rest}"

    def by_translation(self) -> tuple[str, str]:
        one, other = self.maker.dice.choice(SAME_WORDS)
        rest = self.maker.title(SURNAMES if one in ("Frau", "Doktor") else PLACES)
        alone = one.islower() and self.maker.dice.random() < 0.4
        return (one.title(), other.title()) if alone else (f"{one.title()} {rest}", f"{other.title()} {rest}")

    def by_order(self) -> tuple[str, str]:
        name = f"{self.maker.title(DESCRIBING)} {self.maker.title(THINGS)}"
        return name, " ".join(reversed(name.split()))

    def by_group_word(self) -> tuple[str, str]:
        name = self.maker.pick(
            [self.maker.person(), f"{self.maker.title(DESCRIBING)} {self.maker.title(THINGS)}"]
        )
        return name, f"{self.maker.pick(GROUP_WORDS)} {name}"

    def by_filler(self) -> tuple[str, str]:
        name = self.maker.name()
        return name, self.maker.pick(FILLED).format(name)

    def by_gender(self) -> tuple[str, str]:
        stem = self.maker.pick([word for word in LATIN if word.endswith("a")])[:-1].title()
        first, second = self.maker.dice.sample(["a", "um", "us"], 2)
        rest = self.maker.pick(["", f" {self.maker.title(SURNAMES)}"])
        return f"{stem}{first}{rest}", f"{stem}{second}{rest}"

    def by_latin_ending(self) -> tuple[str, str]:
        surname = self.maker.title(SURNAMES).rstrip("aeiouy")
        first, second = self.maker.dice.sample(["i", "ii", "iae", "ae"], 2)
        return f"{surname}{first}", f"{surname}{second}"

    def by_slip(self) -> tuple[str, str]:
        name = self.maker.name()
        return name, self.maker.slip(name)

    def by_two_slips(self) -> tuple[str, str]:
        name = self.maker.name()
        return name, self.maker.slip(name, 2)

    def by_sound(self) -> tuple[str, str]:
        name = self.maker.name()
        return name, self.maker.by_ear(name)

    def by_two_ways(self) -> tuple[str, str]:
        made = [
            self.by_order,
            self.by_join,
            self.by_latin_ending,
            self.by_gender,
            self.by_numeral,
            self.by_abbreviation,
        ]
        a, b = self.maker.dice.choice(made)()
        return a, self.maker.pick([self.maker.slip, self.maker.by_ear])(b)  # type: ignore[operator, list-item]


class _Others:
    """Two plants, named alike."""

    def __init__(self, maker: NameMaker) -> None:
        self.maker = maker

    def kinds(self) -> dict[str, Callable[[], tuple[str, str]]]:
        return {
            name.removeprefix("by_").replace("_", " "): getattr(self, name)
            for name in dir(self)
            if name[:3] == "by_"
        }

    def by_minimal(self) -> tuple[str, str]:
        """Two real words one or two letters apart, alone or beside one more word."""
        while True:
            word = self.maker.pick(self.maker.real_words)
            near = [
                other
                for other in self.maker.real_words
                if 0 < OSA.distance(word, other, score_cutoff=2) <= (1 if len(word) < 5 else 2)
                and word.rstrip("aeiums") != other.rstrip("aeiums")
            ]
            if near:
                other = self.maker.pick(near).title()
                beside = f"{self.maker.title(DESCRIBING)} " if self.maker.dice.random() < 0.25 else ""
                return beside + word.title(), beside + other

    def by_nearest(self) -> tuple[str, str]:
        """One word shared, the other another of the same kind or not."""
        name = self.maker.name()
        while " " not in name:
            name = self.maker.name()
        first, *_, last = name.split()
        other = self.maker.title(self.maker.pick([DESCRIBING, LATIN, FIRST, THINGS, SURNAMES]))  # type: ignore[arg-type]
        return name, self.maker.pick([f"{first} {other}", f"{other} {last}", other, first])

    def by_word(self) -> tuple[str, str]:
        first, second = self.maker.dice.sample(DESCRIBING, 2)
        thing = self.maker.title(THINGS)
        return f"{first.title()} {thing}", f"{second.title()} {thing}"

    def by_superset(self) -> tuple[str, str]:
        name = self.maker.name()
        longer = f"{name} {self.maker.pick(TRAILING)}"
        return name, self.maker.pick([longer, f"{self.maker.pick(['Variegated', 'Golden', 'Giant'])} {name}"])

    def by_number(self) -> tuple[str, str]:
        name = f"{self.maker.title(DESCRIBING)} {self.maker.title(THINGS)}"
        first, second = self.maker.dice.sample(range(1, 31), 2)
        if max(first, second) <= 12 and self.maker.dice.random() < 0.4:
            return f"{name} {ROMANS[first - 1]}", f"{name} {ROMANS[second - 1]}"
        return f"{name} No. {first}", self.maker.pick(
            [f"{name} No. {second}", f"{name} {second}", f"{name} #{second}"]
        )

    def by_typo_beside(self) -> tuple[str, str]:
        a, b = self.maker.pick([self.by_nearest, self.by_word, self.by_person])()  # type: ignore[operator, list-item]
        return self.maker.slip(a), b

    def by_person(self) -> tuple[str, str]:
        first, second = self.maker.dice.sample(FIRST, 2)
        surname = self.maker.title(SURNAMES)
        return f"{first.title()} {surname}", f"{second.title()} {surname}"

    def by_honorific(self) -> tuple[str, str]:
        if self.maker.dice.random() < 0.5:
            (first, second), rest = self.maker.dice.sample(TITLES, 2), self.maker.title(SURNAMES)
        else:
            (first, second), rest = self.maker.dice.sample(PLACE_WORDS, 2), self.maker.title(PLACES)
        return f"{first} {rest}", f"{second} {rest}"

    def by_opposite(self) -> tuple[str, str]:
        (first, second), thing = self.maker.dice.choice(OPPOSITES), self.maker.title(THINGS)
        return f"{first.title()} {thing}", f"{second.title()} {thing}"

    def by_genus(self) -> tuple[str, str]:
        name = self.maker.name()
        return name, name

    def by_chance(self) -> tuple[str, str]:
        return self.maker.name(), self.maker.name()
