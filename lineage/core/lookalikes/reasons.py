"""Why two names count as alike or as different, in words a curator reads."""

from dataclasses import dataclass

SENTENCES = {
    # what brings two names together
    "same": "Written the same, but for capitals, quotes and the like.",
    "slip": "{0} and {1} differ by a slip of the pen.",
    "sound": "{0} and {1} sound alike.",
    "translation": "{0} and {1} mean the same.",
    "nickname": "{0} is a short form of {1}.",
    "abbreviation": "{0} and {1} stand for one word.",
    "initial": "{0} may stand for {1}.",
    "ending": "{0} and {1} differ in their Latin ending only.",
    "plural": "{0} and {1} differ in a last s only.",
    "spelling": "{0} and {1} are two spellings of one word.",
    "order": "The same words stand in another order.",
    "joined": "Written in one word here, in several there.",
    "group-word": "{0} may be the name of a Group, written before the name.",
    "moved-genus": "{0} and {1}: one genus was moved to the other, in part.",
    # guards: what holds them apart
    "number": "The numbers differ.",
    "genus": "They stand in different genera: {0} and {1}.",
    "opposite": "{0} and {1} say the contrary of each other.",
    "first-name": "{0} and {1} are different people's first names.",
    "title": "The titles differ: {0} and {1}.",
    "place": "The places differ: {0} and {1}.",
    "two-words": "{0} and {1} are both words on their own.",
    "contains": "One name contains the other: {0} stands in one only.",
    "common-word": "{0} is a word many names are made of.",
    "different-word": "{0} and {1} are different words.",
    "spores": "One was raised from spores of the other's name.",
    "nothing": "One of them says nothing that could be compared.",
    "species": "The same name is used under two species: {0} and {1}.",
}

_HOLD_APART = "number genus opposite first-name title place two-words contains common-word different-word"
GUARDS = frozenset([*_HOLD_APART.split(), "spores", "species", "nothing"])


@dataclass(frozen=True, slots=True)
class Reason:
    """``key`` for programs, ``words`` for people; ``factor``: what the score was multiplied by, 0..1."""

    key: str
    words: str
    factor: float = 1.0

    @property
    def is_guard(self) -> bool:
        """Does it hold the two names apart?"""
        return self.key in GUARDS

    def __str__(self) -> str:
        return self.words


def reason(key: str, *named: str, factor: float = 1.0) -> Reason:
    """The reason of that key, with the words it speaks of."""
    shown = [f"‘{word[:60].title()}’" if word else "nothing" for word in named]
    return Reason(key, SENTENCES[key].format(*shown), round(factor, 4))
