"""The one sentence that says what a record is: page lead, picture description, e-mail line, echo after saving."""

from dataclasses import dataclass, field
from typing import Literal

from specimens.naming.dates import PartialDate, say_when

Came = Literal["piece", "sowing", "outside", "wild", "unknown"]
Ground = Literal["", "label", "looks", "compared", "dna", "as sown", "name"]
Holds = Literal["one", "several", "mixed", "unknown"]
State = Literal["growing", "dead", "left", "lost", "stolen", "mistake"]
HIDDEN_PLANT = "a plant not shown"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantFacts:
    """What the sentence about a plant may say; whatever the reader may not see is left out before.

    `piece_kind` is the word for the piece ("pup", "bulbil", …; '' for any). The parent is one of `parent_code`,
    `parent_hidden` (it exists but is not shown) and `parent_words`. `taken_by` and `from_whom` are people as shown
    to this reader ("a member"). `thought_name` is the plain name without doubt; `qualifier` is '', 'cf.', 'aff.'
    or '?'. `state_when` is when the state came about.
    """

    code: str = ""
    came: Came = "unknown"
    piece_kind: str = ""
    parent_code: str = ""
    parent_hidden: bool = False
    parent_words: str = ""
    sowing_code: str = ""
    sowing_hidden: bool = False
    taken_by: str = ""
    from_whom: str = ""
    meeting: str = ""
    date: PartialDate = field(default_factory=PartialDate)
    thought_name: str = ""
    qualifier: str = ""
    ground: Ground = ""
    not_yet_checked: bool = False
    label_text: str = ""
    holds: Holds = "one"
    state: State = "growing"
    state_when: PartialDate = field(default_factory=PartialDate)


def plant_sentence(facts: PlantFacts) -> str:
    """The sentence about a plant.

    >>> plant_sentence(PlantFacts(came="piece", piece_kind="pup", parent_code="2019-0088-B", taken_by="a member"))
    'Pup of 2019-0088-B, taken by a member.'
    """
    who = f", taken by {facts.taken_by}" if facts.taken_by else ""
    when = f" {say_when(facts.date)}" if facts.date.is_known else ""
    return f"{(facts.piece_kind or 'piece').capitalize()} of {facts.parent_code}{who}{when}."


@dataclass(frozen=True, slots=True, kw_only=True)
class SowingFacts:
    """What the sentence about a sowing may say. `sources` are codes, plain names or `HIDDEN_PLANT`.

    `stage` is the last stage in the grower's words ("germinated", "first fronds"), `settled` whether it is
    known which of several sources came up.
    """

    code: str = ""
    sources: tuple[str, ...] = ()
    packet_code: str = ""
    sown_by: str = ""
    date: PartialDate = field(default_factory=PartialDate)
    pans: int = 1
    stage: str = ""
    stage_when: PartialDate = field(default_factory=PartialDate)
    settled: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossFacts:
    """What the sentence about a cross may say. `parents` are codes, plain names or `HIDDEN_PLANT`.

    `egg_parent` is the place of the egg parent in `parents` if known; `tally` counts what came up, as
    ("thought to be the cross", 3).
    """

    intended: bool = True
    parents: tuple[str, ...] = ()
    egg_parent: int | None = None
    method: str = ""
    made_by: str = ""
    date: PartialDate = field(default_factory=PartialDate)
    tally: tuple[tuple[str, int], ...] = ()


def sowing_sentence(facts: SowingFacts) -> str:
    """The sentence about a sowing."""
    return f"Sowing of spores of {' and '.join(facts.sources)}."


def cross_sentence(facts: CrossFacts) -> str:
    """The sentence about a cross."""
    return f"Cross of {' and '.join(facts.parents)}."
