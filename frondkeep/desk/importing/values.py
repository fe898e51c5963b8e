"""From the words in a cell to a value. What is not understood is never guessed."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from datetime import date
from functools import lru_cache

from frondkeep.society.forms import read_growers_date
from frondkeep.society.models import Appearance, Role
from specimens.models import Came, Cross, Division, Holds, ParentageClaim, Reproduction, State
from specimens.naming.dates import PartialDate

DONT_KNOW = frozenset({"", "?", "??", "dont know", "don t know", "not known", "unknown", "no idea", "none"})


@dataclass(frozen=True, slots=True)
class How:
    """How a plant came: one of `Came`, with the kind of piece and whether it sported."""

    came: str
    piece: str = Division.Kind.NOT_KNOWN
    sport: bool = False


PIECES = {
    "pup": Division.Kind.PUP,
    "offset": Division.Kind.PUP,
    "offshoot": Division.Kind.PUP,
    "crown division": Division.Kind.CROWN,
    "crown": Division.Kind.CROWN,
    "rhizome piece": Division.Kind.RHIZOME,
    "rhizome": Division.Kind.RHIZOME,
    "runner": Division.Kind.RHIZOME,
    "bulbil": Division.Kind.BULBIL,
    "tissue culture": Division.Kind.CULTURE,
    "culture": Division.Kind.CULTURE,
    "piece": Division.Kind.NOT_KNOWN,
    "division": Division.Kind.NOT_KNOWN,
    "cutting": Division.Kind.NOT_KNOWN,
    "sport": Division.Kind.NOT_KNOWN,
}
FROM_SPORES = frozenset(
    {"spores", "spore", "from spores", "sporeling", "seedling", "sown", "raised", "sowing"}
)
FROM_OUTSIDE = frozenset(
    {"bought", "purchase", "purchased", "gift", "given", "present", "swap", "swapped", "exchange", "raffle"}
    | {"from outside", "outside", "bought or given", "sale table"}
)
COLLECTED = frozenset({"wild", "collected wild", "collected", "from the wild"})
STATES = {
    "growing": State.GROWING, "alive": State.GROWING, "ok": State.GROWING, "": State.GROWING,
    "fine": State.GROWING, "yes": State.GROWING, "dead": State.DEAD, "died": State.DEAD, "no": State.DEAD,
    "left the society": State.LEFT, "left": State.LEFT, "given away": State.LEFT, "sold": State.LEFT,
    "cannot find": State.LOST, "can t be found": State.LOST, "cannot be found": State.LOST,
    "can t find": State.LOST, "lost": State.LOST, "missing": State.LOST, "stolen": State.STOLEN,
    "entered by mistake": State.MISTAKE, "mistake": State.MISTAKE,
}  # fmt: skip
YES = frozenset({"yes", "y", "x", "true", "1", "private", "hidden"})
NO = frozenset({"", "no", "n", "false", "0", "-"})
REPRODUCTION = {
    "no pups only": Reproduction.DIVISION, "pups only": Reproduction.DIVISION, "no": Reproduction.DIVISION,
    "division only": Reproduction.DIVISION, "pieces only": Reproduction.DIVISION,
    "by division only": Reproduction.DIVISION, "yes": Reproduction.SPORES,
    "true from spores": Reproduction.SPORES, "true": Reproduction.SPORES,
    "not tried": Reproduction.NOT_KNOWN,
}  # fmt: skip
GROUNDS = {
    "grower s record": ParentageClaim.Ground.RECORD, "record": ParentageClaim.Ground.RECORD,
    "records": ParentageClaim.Ground.RECORD, "": ParentageClaim.Ground.RECORD,
    "label": ParentageClaim.Ground.LABEL, "tag": ParentageClaim.Ground.LABEL,
    "its label": ParentageClaim.Ground.LABEL, "published": ParentageClaim.Ground.PUBLISHED,
    "print": ParentageClaim.Ground.PUBLISHED, "looks": ParentageClaim.Ground.LOOKS,
    "its looks": ParentageClaim.Ground.LOOKS, "dna": ParentageClaim.Ground.DNA,
    "dna test": ParentageClaim.Ground.DNA,
}  # fmt: skip
CROSSES = {
    "intended": Cross.How.INTENDED, "deliberate": Cross.How.INTENDED, "on purpose": Cross.How.INTENDED,
    "chance": Cross.How.NOTICED, "noticed": Cross.How.NOTICED, "mixed sowing": Cross.How.NOTICED,
    "": Cross.How.NOTICED, "by chance": Cross.How.NOTICED, "reported": Cross.How.REPORTED,
    "published": Cross.How.REPORTED,
}  # fmt: skip
APPEARS = {
    "by name": Appearance.BY_NAME, "name": Appearance.BY_NAME, "yes": Appearance.BY_NAME,
    "a member": Appearance.A_MEMBER, "member": Appearance.A_MEMBER, "": Appearance.A_MEMBER,
    "no": Appearance.A_MEMBER, "curator only": Appearance.CURATOR_ONLY,
    "to the curator only": Appearance.CURATOR_ONLY, "curator": Appearance.CURATOR_ONLY,
}  # fmt: skip
# What a sheet says of a trait where it is neither the state's key nor its label.
TRAIT_WORDS = {
    ("spore_patches", "on a spoon"): "spoon",
    ("spore_patches", "near the base"): "base_lobe",
    ("spore_patches", "below the tip"): "below_apex",
    ("spore_patches", "at the tips"): "tips",
}


def plain(words: str) -> str:
    """Small letters and digits, single spaces: what two ways of writing one word have in common."""
    letters = unicodedata.normalize("NFKD", words).encode("ascii", "ignore").decode().casefold()
    return " ".join(re.sub(r"[^a-z0-9?]+", " ", letters.replace("’", "'")).split())


def read_how(words: str) -> How | None:
    """None where the words say nothing we know."""
    said = plain(words)
    if said in DONT_KNOW:
        return How(Came.NOT_KNOWN)
    if said in FROM_SPORES:
        return How(Came.SOWING)
    if said in FROM_OUTSIDE:
        return How(Came.OUTSIDE)
    if said in COLLECTED:
        return How(Came.WILD)
    sport = "sport" in said.split()
    kind = " ".join(word for word in said.split() if word != "sport") or "sport"
    return How(Came.PIECE, PIECES[kind], sport) if kind in PIECES else None


def read_holds(words: str) -> str:
    """Several where it says so or counts more than one; one plant where it says nothing."""
    said = plain(words)
    counted = re.search(r"\d+", said)
    if "kinds" in said or "mixed" in said:
        return str(Holds.KINDS)
    if "several" in said or "many" in said or (counted and int(counted[0]) > 1):
        return str(Holds.SEVERAL)
    return str(Holds.NOT_KNOWN if said in DONT_KNOW - {""} else Holds.ONE)


def read_yes(words: str) -> bool | None:
    said = plain(words)
    return True if said in YES else False if said in NO else None


def read_office(words: str) -> list[str] | None:
    """Roles by the words on screen, divided by commas or “and”; None where one is not known."""
    known = {plain(role.label): str(role) for role in Role}
    said = [plain(part) for part in re.split(r",|;|/|\band\b", words) if part.strip()]
    return [known[one] for one in said] if all(one in known for one in said) else None


@lru_cache(maxsize=20_000)
def _date(words: str, today: date) -> PartialDate:
    return read_growers_date(words)


def read_day(words: str, *, today: date) -> PartialDate:
    """As a grower's date, remembered. Raises DateNotRead."""
    return _date(words, today)


def read_trait(trait: str, words: str, states: dict[str, dict[str, str]]) -> str | None:
    """The key of the state; `states` holds trait → plain key or label → state key."""
    said = plain(words)
    return TRAIT_WORDS.get((trait, said)) or states.get(trait, {}).get(said)
