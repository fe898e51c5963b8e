"""What each clue weighs, and what the clues of a pair come to.

Fellegi & Sunter 1969, J. Am. Stat. Assoc. 64:1183-1210: the weight of a level is log2(m / u), m its share among
pairs that are one plant, u its share among unrelated pairs; weights of independent clues add up.
"""

import math
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache
from importlib.resources import files

NOT_KNOWN = "not known"
_FAIR, _STRONG = 2.0, 5.0


class UnknownLevel(ValueError):
    """A clue or a level that the weights do not have; the message lists those they have."""


@dataclass(frozen=True, slots=True)
class Level:
    """One level of a clue. ``silent`` levels weigh 0 bits and have no m and u (both 1)."""

    name: str
    m: float
    u: float
    reason: str
    silent: bool = False

    def __post_init__(self) -> None:
        if not (0 < self.m <= 1 and 0 < self.u <= 1):
            raise ValueError(
                f"m and u of {self.name!r} are shares above 0 and at most 1, not {self.m} and {self.u}."
            )

    @property
    def bits(self) -> float:
        """log2(m / u); positive speaks for one plant."""
        return 0.0 if self.silent else math.log2(self.m / self.u)


@dataclass(frozen=True, slots=True)
class Witness:
    """A clue: its key, what screens call it, its levels."""

    key: str
    shown: str
    levels: tuple[Level, ...]

    def level(self, name: str) -> Level:
        """The level of that name; UnknownLevel when there is none."""
        for level in self.levels:
            if level.name == name:
                return level
        known = ", ".join(level.name for level in self.levels)
        raise UnknownLevel(f"The clue {self.key!r} has no level {name!r}; it has: {known}.")


@dataclass(frozen=True, slots=True)
class Summand:
    """One bar of the sum. ``strength``: weak · fair · strong, or nothing for 0 bits."""

    witness: str
    level: str
    bits: float
    reason: str
    shown: str

    @property
    def strength(self) -> str:
        """How much the clue says, in a word."""
        size = abs(self.bits)
        return "strong" if size >= _STRONG else "fair" if size >= _FAIR else "weak" if size > 0 else ""


@dataclass(frozen=True, slots=True)
class Suspicion:
    """``bits``: prior and summands together; ``probability`` = 2^bits / (1 + 2^bits); prior is a summand."""

    bits: float
    probability: float
    summands: tuple[Summand, ...]


@dataclass(frozen=True, slots=True)
class Weights:
    """An immutable table of clues and a prior. ``rulings``: decisions that stand behind it."""

    witnesses: tuple[Witness, ...]
    prior: float
    prior_reason: str
    rulings: int = 0

    def __post_init__(self) -> None:
        if not 0 < self.prior < 1:
            raise ValueError(f"The prior is a share between 0 and 1, not {self.prior}.")

    @classmethod
    def default(cls) -> "Weights":
        """The weights shipped with Frondkeep, each with its line of reason."""
        return _shipped()

    def witness(self, key: str) -> Witness:
        """The clue of that key; UnknownLevel when there is none."""
        for witness in self.witnesses:
            if witness.key == key:
                return witness
        known = ", ".join(witness.key for witness in self.witnesses)
        raise UnknownLevel(f"There is no clue {key!r}; there are: {known}.")

    def weigh(self, levels: Mapping[str, str]) -> Suspicion:
        """Add up the clues of a pair. A clue left out is *not known* and weighs nothing.

        Raises UnknownLevel for a clue or level the table does not have.

        >>> Weights.default().weigh({}).probability
        0.005
        >>> Weights.default().weigh({"spelling": "near", "clone": "one clone"}).probability > 0.99
        True
        """
        for key in levels:
            self.witness(key)
        prior_bits = math.log2(self.prior / (1 - self.prior))
        summands = [Summand("prior", "", prior_bits, self.prior_reason, "Before any clue")]
        for witness in self.witnesses:
            level = witness.level(levels.get(witness.key, NOT_KNOWN))
            summands.append(Summand(witness.key, level.name, level.bits, level.reason, witness.shown))
        bits = math.fsum(summand.bits for summand in summands)
        return Suspicion(bits, round(_probability(bits), 12), tuple(summands))

    def learn(
        self, rulings: Iterable[tuple[Mapping[str, str], bool]], *, strength: float = 30.0
    ) -> "Weights":
        """Weights re-estimated from decisions: (levels of the pair, was it one plant?).

        The present m and u count like ``strength`` decisions on each side, so a few rulings move little. Silent
        levels count for nothing. The prior stays. Every level keeps a share above 0.
        """
        if strength <= 0:
            raise ValueError(f"The strength of the present weights is above 0, not {strength}.")
        kept = [(dict(levels), bool(same)) for levels, same in rulings]
        witnesses = tuple(_recount(witness, kept, strength) for witness in self.witnesses)
        return replace(self, witnesses=witnesses, rulings=self.rulings + len(kept))


def _recount(witness: Witness, rulings: list[tuple[dict[str, str], bool]], strength: float) -> Witness:
    telling = [level for level in witness.levels if not level.silent]
    counts = {(level.name, side): 0 for level in telling for side in (True, False)}
    for levels, same in rulings:
        name = witness.level(levels.get(witness.key, NOT_KNOWN)).name
        if (name, same) in counts:
            counts[name, same] += 1
    if not any(counts.values()):
        return witness
    # A clue with a single telling level is seen or not seen: its unseen share is what is left to 1.
    closed = len(telling) > 1
    seen = {
        side: sum(counts[level.name, side] for level in telling)
        if closed
        else sum(1 for _, same in rulings if same is side)
        for side in (True, False)
    }
    learned = {
        level.name: replace(
            level,
            m=(counts[level.name, True] + strength * level.m) / (seen[True] + strength),
            u=(counts[level.name, False] + strength * level.u) / (seen[False] + strength),
        )
        for level in telling
    }
    return replace(witness, levels=tuple(learned.get(level.name, level) for level in witness.levels))


def _probability(bits: float) -> float:
    if bits >= 0:
        return 1 / (1 + math.exp2(-min(bits, 1000)))
    odds = math.exp2(max(bits, -1000))
    return odds / (1 + odds)


@cache
def _shipped() -> Weights:
    table = tomllib.loads((files(__package__) / "shipped" / "weights.toml").read_text("utf-8"))
    prior = table.pop("prior")
    return Weights(
        witnesses=tuple(
            Witness(
                key,
                row["shown"],
                tuple(
                    Level(name, at.get("m", 1.0), at.get("u", 1.0), at["reason"], at.get("silent", False))
                    for name, at in row["levels"].items()
                ),
            )
            for key, row in table.items()
        ),
        prior=prior["share"],
        prior_reason=prior["reason"],
    )
