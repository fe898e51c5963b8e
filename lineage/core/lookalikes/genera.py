"""Which genus a label means: spelled out, an initial, a slip, an older name."""

from rapidfuzz.distance import OSA

from .remembering import Remembered
from .vocabulary import Vocabulary

_SHORTEST_MISSPELT = 6
_REMEMBERED = 50_000


class Genera:
    """Look-ups of genera and moves made once for a vocabulary. Keys are small letters."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        self.names = {genus.lower(): genus for genus, _ in vocabulary.genera}
        self.species = {genus.lower(): frozenset(species) for genus, species in reversed(vocabulary.genera)}
        self.moved_species = {}
        self.moved_genera = {}
        self.sometimes: dict[str, set[str]] = {}
        for move in reversed(vocabulary.moves):
            old, new = move.from_genus.lower(), move.to_genus.lower()
            if not move.from_species:
                self.moved_genera[old] = new
                continue
            self.moved_species[old, move.from_species] = (new, move.to_species)
            if new != old:
                self.sometimes.setdefault(old, set()).add(new)
        self._misspelt = Remembered[str, str](_REMEMBERED)

    def find(self, word: str) -> str:
        """The genus a word spells, in its usual form; "" when it spells none, with no slip allowed."""
        return self.names.get(word.lower(), "")

    def with_initial(self, initial: str, species: str) -> list[str]:
        """Genera of that initial known to have, or to have had, that species; usual form, sorted."""
        having = {genus for genus, known in self.species.items() if species in known}
        having |= {genus for genus, moved in self.moved_species if moved == species}
        return sorted(
            self.names.get(genus, genus.capitalize()) for genus in having if genus[0] == initial.lower()
        )

    def find_misspelt(self, word: str) -> str:
        """The genus a word nearly spells (one slip, or two in a long word); "" when none, or two as near."""
        return self._misspelt.get_or_make(word.lower(), self._nearest)

    def _nearest(self, low: str) -> str:
        if len(low) < _SHORTEST_MISSPELT or not low.isalpha():
            return ""
        allowed = 1 if len(low) < 8 else 2
        near = sorted(
            (OSA.distance(low, genus, score_cutoff=allowed), genus)
            for genus in self.names
            if genus[0] == low[0]
        )
        if not near or near[0][0] > allowed or (len(near) > 1 and near[1][0] == near[0][0]):
            return ""
        return self.names[near[0][1]]

    def standing(self, genus: str, species: str) -> tuple[str, str]:
        """Where a written genus and species stand now; small letters; unknown names stand where they are."""
        here = (genus.lower(), species.lower())
        for _ in range(4):  # a chain of moves, and no way to run in a ring for ever
            moved = self.moved_species.get(here)
            if moved is None and here[0] in self.moved_genera:
                moved = (self.moved_genera[here[0]], here[1])
            if moved is None or moved == here:
                break
            here = moved
        return here


def genera_of(vocabulary: Vocabulary) -> Genera:
    found = vocabulary.memory.get("genera")
    if not isinstance(found, Genera):
        found = vocabulary.memory["genera"] = Genera(vocabulary)
    return found
