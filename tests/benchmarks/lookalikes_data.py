"""Invented names, the same for one seed: what the comparison is measured and tuned on."""

import random
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from lineage.core.lookalikes import Vocabulary


def _read_words() -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    heading = ""
    for line in (Path(__file__).parent / "lookalikes_words.txt").read_text(encoding="utf-8").splitlines():
        if line.startswith("["):
            heading = line.strip("[]")
        elif not line.startswith("#"):
            found.setdefault(heading, []).extend(line.split())
    return found


_WORDS = _read_words()
GENERA = _WORDS["genera"]
DESCRIBING = _WORDS["describing"]
THINGS = _WORDS["things"]
FIRST = _WORDS["first"]
SURNAMES = _WORDS["surnames"]
PLACES = _WORDS["places"]
JAPANESE = _WORDS["japanese"]
LATIN = _WORDS["latin"]
PLACE_WORDS = _WORDS["place_words"]
TITLES = _WORDS["titles"]
GROUP_WORDS = _WORDS["group_words"]
TRAILING = _WORDS["trailing"]
WRITTEN = _WORDS["written"]
SPECIES = dict(zip(GENERA, _WORDS["species_in_order"], strict=True))
SOUNDS = [
    ('i', 'y'), ('y', 'i'), ('c', 'k'), ('ch', 'kh'), ('s', 'z'), ('ph', 'f'), ('f', 'ph'), ('o', 'u'), ('a',
    'e'), ('e', 'a'), ('ee', 'i'), ('v', 'w'), ('d', 't'), ('ck', 'k'), ('x', 'ks'), ('qu', 'kw'), ('th', 't'),
    ('u', 'oo')
]  # fmt: skip
ALPHABET = "abcdefghijklmnopqrstuvwxyz"


class NameMaker:
    """Makes names and their variants from one seed. ``real_words``: what minimal pairs are drawn from."""

    def __init__(self, seed: int) -> None:
        self.dice = random.Random(seed)
        self.real_words = sorted({*DESCRIBING, *THINGS, *FIRST, *PLACES, *LATIN, *_shipped_words()})

    def pick(self, words: list[str]) -> str:
        return self.dice.choice(words)

    def title(self, words: list[str]) -> str:
        return self.pick(words).title()

    def name(self) -> str:
        """A cultivar name of one of the usual makes."""
        makes: list[tuple[int, Callable[[], str]]] = [
            (6, lambda: f"{self.title(DESCRIBING)} {self.title(THINGS)}"),
            (4, self.person),
            (2, lambda: f"{self.title(SURNAMES)}'s {self.title(THINGS)}"),
            (2, lambda: f"{self.pick(TITLES)} {self.title(SURNAMES)}"),
            (2, lambda: f"{self.pick(PLACE_WORDS)} {self.title(PLACES)}"),
            (3, lambda: self.title(LATIN)),
            (3, lambda: f"{self.title(LATIN)} {self.title(LATIN)}"),
            (2, lambda: f"{self.title(LATIN)} {self.title(SURNAMES)}"),
            (1, lambda: f"{self.title(SURNAMES)}ii"),
            (2, lambda: self.title(PLACES + THINGS + FIRST)),
            (1, lambda: self.title(JAPANESE)),
            (2, lambda: f"{self.title(DESCRIBING)} {self.title(THINGS)} No. {self.dice.randint(1, 30)}"),
        ]
        return self.dice.choices([make for _, make in makes], [weight for weight, _ in makes])[0]()

    def person(self) -> str:
        return f"{self.title(FIRST)} {self.title(SURNAMES)}"

    def slip(self, name: str, count: int = 1) -> str:
        """The name with that many letters put in, left out, changed or swapped; digits stay."""
        changed = name
        while changed.lower() == name.lower():
            changed = name
            for _ in range(count):
                changed = self._one_slip(changed)
        return changed

    def _one_slip(self, name: str) -> str:
        places = [at for at, letter in enumerate(name) if letter.isalpha()]
        at = self.pick_place(places)
        kind = self.pick(["left out", "put in", "changed", "swapped"])
        if kind == "left out" and len(places) > 3:
            return name[:at] + name[at + 1 :]
        if kind == "put in":
            return name[:at] + self.pick([name[at].lower(), self.pick(list(ALPHABET))]) + name[at:]
        if kind == "changed":
            return name[:at] + self.pick(list(ALPHABET)) + name[at + 1 :]
        if at + 1 in places:
            return name[:at] + name[at + 1] + name[at] + name[at + 2 :]
        return name

    def pick_place(self, places: list[int]) -> int:
        return self.dice.choice(places)

    def by_ear(self, name: str) -> str:
        """The name written as it sounds."""
        changed = name
        for _ in range(30):
            written, heard = self.dice.choice(SOUNDS)
            at = changed.lower().find(written, self.dice.randrange(len(changed)))
            if at >= 0:
                piece = heard.title() if changed[at].isupper() else heard
                changed = changed[:at] + piece + changed[at + len(written) :]
            if changed != name and self.dice.random() < 0.6:
                return changed
        return changed if changed != name else self.slip(name)

    def dressed(self, name: str, genus: str) -> str:
        """The name as a label might carry it: bare, in quotes, after genus or initial or species."""
        roll = self.dice.random()
        if roll < 0.45:
            return name
        if roll < 0.6:
            return f"‘{name}’"
        if roll < 0.7:
            return f"'{name}'"
        if roll < 0.8:
            return f"{genus} '{name}'"
        if roll < 0.88:
            return f"{genus} {SPECIES[genus]} '{name}'"
        return f"{genus[0]}. {name}" if roll < 0.95 else name.upper()


Row = tuple[int, str, str]
STARTS = _WORDS["starts"]
MIDDLES = _WORDS["middles"]
ENDS = _WORDS["ends"]


class ManyNames:
    """Names from far more words than the lists hold: people and places are put together from syllables."""

    def __init__(self, seed: int) -> None:
        self.maker = NameMaker(seed)
        self.dice = self.maker.dice
        self.real = [word.title() for word in self.maker.real_words]

    def coined(self) -> str:
        middle = self.maker.pick(MIDDLES) if self.dice.random() < 0.5 else ""
        return (self.maker.pick(STARTS) + middle + self.maker.pick(ENDS)).title()

    def name(self) -> str:
        """A name of one to three words."""
        roll = self.dice.random()
        if roll < 0.3:
            return f"{self.maker.pick(self.real)} {self.maker.pick(self.real)}"
        if roll < 0.5:
            return f"{self.maker.title(FIRST)} {self.coined()}"
        if roll < 0.6:
            return f"{self.coined()}'s {self.maker.title(THINGS)}"
        if roll < 0.7:
            return f"{self.maker.pick(PLACE_WORDS)} {self.coined()}"
        if roll < 0.8:
            return f"{self.maker.title(LATIN)} {self.coined()}"
        if roll < 0.9:
            return self.coined()
        return f"{self.maker.title(DESCRIBING)} {self.maker.title(THINGS)} No. {self.dice.randint(1, 99)}"

    def written_otherwise(self, name: str) -> str:
        """The name in one of the ways names go astray."""
        ways = [
            lambda: self.maker.slip(name),
            lambda: self.maker.by_ear(name),
            name.upper,
            lambda: f"{name} clone",
        ]
        if len(name) > 8:
            ways.append(lambda: self.maker.slip(name, 2))
        if " " in name and "." not in name:
            ways += [lambda: name.replace(" ", ""), lambda: " ".join(reversed(name.split()))]
        return self.dice.choice(ways)()


def plant_partners(count: int, seed: int, *, share: float = 0.08) -> tuple[list[Row], dict[int, int]]:
    """``count`` names (id, name, genus) of eight genera; a share are others written otherwise.

    Also which id each of those was made from.
    """
    many = ManyNames(seed)
    texts: dict[str, None] = {}
    while len(texts) < count - int(share * count):
        texts.setdefault(many.name())
    rows = [(name_id, text, many.maker.pick(GENERA)) for name_id, text in enumerate(texts)]
    partners = {}
    for name_id, text, genus in many.dice.sample(rows, count - len(rows)):
        partners[len(rows)] = name_id
        rows.append((len(rows), many.written_otherwise(text), genus))
    return rows, partners


def prefix_of(name: str, dice: random.Random, *, slip: bool) -> str:
    """What somebody has typed of a name so far: the beginnings of its words, perhaps with one letter wrong."""
    words = name.lower().split()
    parts = [word[: dice.randint(max(3, len(word) // 2), max(3, len(word)))] for word in words]
    if not slip:
        return " ".join(parts)
    longest = max(range(len(parts)), key=lambda at: len(parts[at]))
    word = parts[longest]
    at = dice.randrange(1, len(word) - 1) if len(word) > 2 else 0
    left_out, put_in = word[:at] + word[at + 1 :], word[:at] + "e" + word[at:]
    swapped = word[:at] + word[at + 1 : at + 2] + word[at] + word[at + 2 :]
    parts[longest] = dice.choice([left_out, put_in, swapped])
    return " ".join(parts)


def _shipped_words() -> frozenset[str]:
    shipped = Vocabulary.default()
    return frozenset(w for w in shipped.given_names | shipped.plain_words | shipped.latin_words if len(w) > 3)


def with_words_withheld(vocabulary: Vocabulary, share: float, seed: int) -> Vocabulary:
    """The vocabulary without a share of its plain words and names, as if nobody had written them down."""
    dice = random.Random(seed)

    def kept(words: frozenset[str]) -> frozenset[str]:
        return frozenset(word for word in sorted(words) if dice.random() >= share)

    return replace(
        vocabulary,
        given_names=kept(vocabulary.given_names),
        plain_words=kept(vocabulary.plain_words),
        latin_words=kept(vocabulary.latin_words),
    )
