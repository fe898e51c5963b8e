"""What each clue says of a pair of names: its level, and one sentence for the page."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from lineage.core.lookalikes import NOT_KNOWN, Likeness, Weights, compare_names, fold
from lineage.models import Suspicion
from lineage.services.clue_records import NameClues, Parent, Trait
from lineage.services.weights import bits_of

# What holds two names apart and is worth telling; that other words stand there is seen at a glance.
TELLING_GUARDS = frozenset(
    {"number", "opposite", "first-name", "title", "place", "contains", "spores", "genus"}
)
NEAR_YEARS = 3
YEAR = 365.25


@dataclass(frozen=True, slots=True)
class Testimony:
    """What one clue says: its level in the table of weights, and the sentence ('' takes the table's own)."""

    level: str = NOT_KNOWN
    sentence: str = ""


@dataclass(frozen=True, slots=True)
class Weighed:
    """A pair with all its clues added up. `summands` as they are stored: the weightiest first, silent ones last."""

    first: int
    second: int
    score: float
    bits: float
    probability: float
    summands: list[dict[str, Any]]

    @property
    def levels(self) -> dict[str, str]:
        return {str(each["witness"]): str(each["level"]) for each in self.summands}


NOTHING = Testimony()


def weigh_pair(first: NameClues, second: NameClues, weights: Weights) -> Weighed:
    """All clues of a pair, of names with different ids; whichever is given first, the smaller id is first."""
    first, second = sorted((first, second), key=lambda clues: clues.id)
    written, with_groups = likenesses(first, second)
    likeness = max(written, with_groups, key=lambda found: found.score)
    told = testimonies(first, second) | {"spelling": spelling(likeness, by_group=likeness is not written)}
    levels = {witness: said.level for witness, said in told.items()}
    sentences = {witness: said.sentence for witness, said in told.items()}
    return added_up((first.id, second.id), likeness.score, levels, sentences, weights)


def add_up(row: Suspicion, weights: Weights) -> Weighed:
    """What a stored pair comes to by these weights; its clues say what they said."""
    known = [each for each in row.summands if bits_of(each["witness"], each["level"], weights) is not None]
    levels = {each["witness"]: each["level"] for each in known}
    return added_up(
        row.pair, row.score, levels, {each["witness"]: each["sentence"] for each in known}, weights
    )


def added_up(
    pair: tuple[int, int],
    score: float,
    levels: Mapping[str, str],
    sentences: Mapping[str, str],
    weights: Weights,
) -> Weighed:
    """The sum of the clues of a pair, weightiest first; a clue without a sentence takes the table's own."""
    found = weights.weigh(levels)
    summands: list[dict[str, Any]] = [
        {
            "witness": each.witness,
            "level": each.level,
            "bits": round(each.bits, 3),
            "strength": each.strength,
            "sentence": sentences.get(each.witness) or each.reason,
        }
        for each in found.summands
        if each.witness != "prior"
    ]
    summands.sort(key=lambda each: -abs(each["bits"]))
    return Weighed(*pair, score, round(found.bits, 3), round(found.probability, 6), summands)


def likenesses(first: NameClues, second: NameClues) -> tuple[Likeness, Likeness]:
    """How alike two names are as they stand, and at the most with a Group's name written before one of them."""
    genera = first.genus or None, second.genus or None
    found = [
        compare_names(one, other, genus_a=genera[0], genus_b=genera[1])
        for one in first.texts
        for other in second.texts
    ]
    return found[0], max(found, key=lambda likeness: likeness.score)


def testimonies(first: NameClues, second: NameClues) -> dict[str, Testimony]:
    """What all clues but the spelling say."""
    return {
        "clone": clone(first.lines, second.lines),
        "parents": parents(first.parents, second.parents),
        "raiser": raiser(first, second),
        "traits": traits(first.traits, second.traits),
        "photo": pictures(first.pictures, second.pictures),
        "keepers": keepers(first.growers, second.growers),
    }


def spelling(likeness: Likeness, *, by_group: bool = False) -> Testimony:
    if likeness.level == "far" and not any(why.key in TELLING_GUARDS for why in likeness.reasons[:1]):
        return Testimony("far", "The names are not alike.")
    if by_group:
        return Testimony(
            likeness.level if likeness.level == "far" else "near",
            "They are alike if the name of the Group is written before the name, as old lists do.",
        )
    return Testimony(likeness.level, " ".join(str(why) for why in likeness.reasons[:2]))


def clone(first: Mapping[int, str], second: Mapping[int, str]) -> Testimony:
    """Clone lines, each with the code of one of its plants: a sport starts a line of its own."""
    shared = sorted((code, second[line]) for line, code in first.items() if line in second)
    if not shared:
        return NOTHING
    one, other = shared[0]
    return Testimony("one clone", f"Pieces of one plant are recorded under both names: {one} and {other}.")


def parents(first: tuple[Parent, ...] | None, second: tuple[Parent, ...] | None) -> Testimony:
    """Parents that are one plant or clone count; to be of one species is a resemblance of many plants."""
    if not first or not second or not all(parent.is_known for parent in (*first, *second)):
        return NOTHING
    pairs = _matched(first, second)
    if not pairs:
        return Testimony("none shared", "No recorded parent is the same.")
    words = " and ".join(dict.fromkeys(parent.words for parent, _ in pairs))
    if len(pairs) < max(len(first), len(second)):
        return Testimony("share one", f"One parent is the same: {words}.")
    if any(one.plant is not None and one.plant == other.plant for one, other in pairs):
        return Testimony("same two", f"Both came from {words}, and so would their sporelings.")
    # The same formula is no more than the same kind of hybrid.
    return Testimony("same kinds", f"Both came from {words}; so did many plants.")


def _matched(first: Iterable[Parent], second: Iterable[Parent]) -> list[tuple[Parent, Parent]]:
    """Each parent with one of the other's that it may be, the same plant before the same species."""
    left = list(second)
    pairs: list[tuple[Parent, Parent]] = []
    for same in (_is_same_plant, _may_be_same_kind):
        for one in first:
            other = next((each for each in left if same(one, each)), None)
            if other is not None and one not in [pair[0] for pair in pairs]:
                left.remove(other)
                pairs.append((one, other))
    return pairs


def _is_same_plant(one: Parent, other: Parent) -> bool:
    return one.plant is not None and one.plant == other.plant


def _may_be_same_kind(one: Parent, other: Parent) -> bool:
    named = one.species is not None and one.species == other.species
    return named and (one.plant is None or other.plant is None)


def raiser(first: NameClues, second: NameClues) -> Testimony:
    one, other = _person(first.raiser), _person(second.raiser)
    if not one or not other:
        return NOTHING
    if not _may_be_one_person(one, other):
        return Testimony("different raisers", f"Raised by {first.raiser} and by {second.raiser}.")
    apart = years_apart(first.introduced, second.introduced)
    if apart is not None and apart <= NEAR_YEARS:
        return Testimony("same raiser, near years", f"Both raised by {first.raiser}, within three years.")
    unsure = "years apart" if apart is not None else "the year of one or both is not recorded"
    return Testimony("same raiser", f"Both raised by {first.raiser}; {unsure}.")


def _person(words: str) -> list[str]:
    return fold(words.replace(".", " ")).split()


def _may_be_one_person(one: list[str], other: list[str]) -> bool:
    """The same last name, and first names that agree or of which one is cut short."""
    if one[-1] != other[-1]:
        return False
    given, others = one[:-1], other[:-1]
    return all(a.startswith(b) or b.startswith(a) for a, b in zip(given, others, strict=False))


def years_apart(
    first: tuple[date | None, date | None], second: tuple[date | None, date | None]
) -> float | None:
    """Years between two spans of time, 0 where they touch; None where one is open or not recorded."""
    (start, end), (begin, finish) = first, second
    if start is None or end is None or begin is None or finish is None:
        return None
    return max((begin - end).days, (start - finish).days, 0) / YEAR


def traits(first: Mapping[str, Trait], second: Mapping[str, Trait]) -> Testimony:
    shared = [(trait, second[key]) for key, trait in first.items() if key in second]
    if not shared:
        return NOTHING
    agree = [trait for trait, other in shared if {*trait.states} & {*other.states}]
    differ = [(trait, other) for trait, other in shared if not {*trait.states} & {*other.states}]
    level = traits_level(len(agree), [trait.stable for trait, _ in differ])
    return Testimony(level, _traits_words(agree, differ))


def traits_level(agreeing: int, differing_stable: list[bool]) -> str:
    """The level for so many traits that agree and these that differ (each: is it the same in every place?)."""
    if any(differing_stable):
        return "stable conflict"
    if not differing_stable:
        return "agree"
    return "mostly agree" if agreeing > len(differing_stable) else "conflict"


def _traits_words(agree: list[Trait], differ: list[tuple[Trait, Trait]]) -> str:
    count = "One trait agrees" if len(agree) == 1 else f"{len(agree)} traits agree"
    if not differ:
        return f"{count}, none differ."
    told = "; ".join(
        f"{one.label.lower()}: {', '.join(one.states)} here, {', '.join(other.states)} there"
        for one, other in differ
    )
    return f"They differ in {told}." if not agree else f"{count}; they differ in {told}."


def pictures(first: Mapping[str, str], second: Mapping[str, str]) -> Testimony:
    shared = sorted((code, second[picture]) for picture, code in first.items() if picture in second)
    if shared:
        return Testimony("one picture", f"One picture stands under both names: of {' and '.join(shared[0])}.")
    return Testimony("none") if first and second else NOTHING


def keepers(first: set[int], second: set[int]) -> Testimony:
    # No name of a keeper is written down here: what is stored outlives a member who wants to be forgotten.
    if first & second:
        return Testimony("grown as two", "Somebody grows both and holds them for two plants.")
    return NOTHING
