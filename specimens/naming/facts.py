"""What a record's sentence may say. Whatever the reader may not see is left out before the facts are made."""

from dataclasses import dataclass, field
from typing import Literal

from specimens.naming.partial_date import PartialDate

Came = Literal["piece", "sowing", "outside", "wild", "not known"]
Holds = Literal["one", "several", "kinds", "not known"]
State = Literal["growing", "dead", "left", "lost", "stolen", "mistake"]
HIDDEN_PLANT = "a plant not shown"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantFacts:
    """About a plant. Empty text and an unknown date say nothing.

    `code` opens the sentence if given. `piece_kind` is the word for the piece ("pup", "bulbil"; '' for any).
    The parent is one of `parent_code`, `parent_hidden` (there is one, but it is not shown) and `parent_words`.
    `sowing_sources` are codes, plain names or `HIDDEN_PLANT`. `taken_by` cut the piece or pricked the plant out,
    `from_whom` gave it: both as shown to this reader ("a member"). `date` is when it came. `thought_name` is the
    plain name without doubt, `qualifier` '', 'cf.', 'aff.' or '?', `ground` how one knows: '', 'label',
    'looks', 'compared' or 'dna' (any other words are said as they are). `as_sown`: from spores, and nobody has
    checked what came up.
    """

    code: str = ""
    came: Came = "not known"
    piece_kind: str = ""
    sport: bool = False
    parent_code: str = ""
    parent_hidden: bool = False
    parent_words: str = ""
    sowing_code: str = ""
    sowing_sources: tuple[str, ...] = ()
    taken_by: str = ""
    from_whom: str = ""
    meeting: str = ""
    date: PartialDate = field(default_factory=PartialDate)
    thought_name: str = ""
    qualifier: str = ""
    ground: str = ""
    as_sown: bool = False
    not_yet_checked: bool = False
    label_text: str = ""
    holds: Holds = "one"
    state: State = "growing"
    state_when: PartialDate = field(default_factory=PartialDate)


@dataclass(frozen=True, slots=True, kw_only=True)
class SowingFacts:
    """About a sowing. `sources` are codes, plain names or `HIDDEN_PLANT`.

    `stage` is the last stage in the grower's words ("first fronds"). `determined` is what was found of what came
    up: '' (as sown), 'hybrid', 'self' or 'apogamous'.
    """

    code: str = ""
    sources: tuple[str, ...] = ()
    packet_code: str = ""
    sown_by: str = ""
    date: PartialDate = field(default_factory=PartialDate)
    pans: int = 1
    stage: str = ""
    stage_when: PartialDate = field(default_factory=PartialDate)
    determined: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossFacts:
    """About a cross. `parents` are codes, plain names or `HIDDEN_PLANT`; a parent not known is ''.

    `how` is 'intended', 'noticed' (it came up by chance) or 'reported' (by others). `egg_parent` is the place of
    the egg parent in `parents`, if known. `tally` counts what came up, as ("thought to be the cross", 3).
    """

    code: str = ""
    how: Literal["intended", "noticed", "reported"] = "intended"
    parents: tuple[str, ...] = ()
    egg_parent: int | None = None
    method: str = ""
    made_by: str = ""
    date: PartialDate = field(default_factory=PartialDate)
    sowing_codes: tuple[str, ...] = ()
    tally: tuple[tuple[str, int], ...] = ()
