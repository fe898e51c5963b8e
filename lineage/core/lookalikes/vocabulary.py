"""What a fern grower knows about names: genera, moved species, words that mean the same."""

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from importlib.resources import files

MEANING_KINDS = ("abbreviation", "title", "place", "nickname", "translation")


@dataclass(frozen=True, slots=True)
class Meaning:
    """Words that mean the same on a label; the first stands for the rest.

    ``kind`` is one of :data:`MEANING_KINDS`. Words are written in small letters without accents; a Latin
    word in one gender stands for all its genders.
    """

    kind: str
    words: tuple[str, ...]
    reason: str = ""

    def __post_init__(self) -> None:
        if self.kind not in MEANING_KINDS:
            raise ValueError(f"A meaning is one of {', '.join(MEANING_KINDS)}, not {self.kind!r}.")
        if len(self.words) < 1 or not all(self.words):
            raise ValueError("A meaning needs at least one word, and none may be empty.")


@dataclass(frozen=True, slots=True)
class Move:
    """A genus or species that now stands under another name. Empty species: the whole genus moved."""

    from_genus: str
    from_species: str
    to_genus: str
    to_species: str
    reason: str = ""


@dataclass(frozen=True)
class Vocabulary:
    """An immutable value; :meth:`extended` makes a larger one. ``version`` goes wherever scores are kept."""

    genera: tuple[tuple[str, tuple[str, ...]], ...] = ()
    moves: tuple[Move, ...] = ()
    lexicon: tuple[Meaning, ...] = ()
    opposites: tuple[tuple[str, str], ...] = ()
    filler: frozenset[str] = frozenset()
    joining: frozenset[str] = frozenset()
    numbers: tuple[tuple[str, int], ...] = ()
    given_names: frozenset[str] = frozenset()
    latin_words: frozenset[str] = frozenset()
    plain_words: frozenset[str] = frozenset()
    version: str = "0"
    # Work already done under this value (readings, word pairs); no part of it.
    memory: dict[str, object] = field(default_factory=dict, init=False, repr=False, compare=False)

    def __hash__(self) -> int:
        return hash((self.version, len(self.lexicon), len(self.moves), len(self.plain_words)))

    @classmethod
    def default(cls) -> "Vocabulary":
        """The vocabulary shipped with Frondkeep; one object, read once."""
        return _shipped()

    def extended(
        self,
        *,
        genera: Mapping[str, Iterable[str]] | None = None,
        moves: Iterable[Move] = (),
        meanings: Iterable[Meaning] = (),
        opposites: Iterable[tuple[str, str]] = (),
        filler: Iterable[str] = (),
        words: Iterable[str] = (),
        version: str | None = None,
    ) -> "Vocabulary":
        """A vocabulary with more in it. What is added outranks what was there.

        Without ``version`` the new value's version is the old one with ``+`` after it.
        """
        added = tuple((genus, tuple(species)) for genus, species in (genera or {}).items())
        return replace(
            self,
            genera=added + self.genera,
            moves=tuple(moves) + self.moves,
            lexicon=tuple(meanings) + self.lexicon,
            opposites=tuple(opposites) + self.opposites,
            filler=self.filler | {word.lower() for word in filler},
            plain_words=self.plain_words | {word.lower() for word in words},
            version=version if version is not None else f"{self.version}+",
        )


@cache
def _shipped() -> Vocabulary:
    shipped = files(__package__) / "shipped"
    trade = tomllib.loads((shipped / "vocabulary.toml").read_text("utf-8"))
    lexicon = tomllib.loads((shipped / "lexicon.toml").read_text("utf-8"))
    words = _read_words((shipped / "words.txt").read_text("utf-8"))
    return Vocabulary(
        genera=tuple((genus, tuple(species)) for genus, species in trade["genera"].items()),
        moves=tuple(_read_move(row) for row in trade["moves"]),
        lexicon=tuple(
            Meaning(kind, tuple(row), lexicon[kind]["reason"])
            for kind in MEANING_KINDS
            for row in lexicon[kind]["rows"]
        ),
        opposites=tuple((left, right) for left, right in lexicon["opposite"]["rows"]),
        filler=frozenset(trade["filler"]["words"]),
        joining=frozenset(trade["joining"]["words"]),
        numbers=tuple(trade["numbers"].items()),
        given_names=words["given"],
        latin_words=words["latin"],
        plain_words=words["plain"] | words["surname"] | words["place"],
        version=trade["version"],
    )


def _read_move(row: Mapping[str, str]) -> Move:
    from_genus, _, from_species = row["from"].partition(" ")
    to_genus, _, to_species = row["to"].partition(" ")
    return Move(from_genus, from_species, to_genus, to_species, row["reason"])


def _read_words(text: str) -> dict[str, frozenset[str]]:
    found: dict[str, set[str]] = {}
    heading = ""
    for line in text.splitlines():
        if line.startswith("["):
            heading = line.strip("[] ")
        elif not line.startswith("#"):
            found.setdefault(heading, set()).update(line.split())
    return {heading: frozenset(words) for heading, words in found.items()}
