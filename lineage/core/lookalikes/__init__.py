"""Names compared: which two may be one plant, how likely, and why."""

from .candidates import candidate_pairs
from .index import NameIndex
from .learning import WeightEstimate, estimate_weights
from .likeness import LEVELS, Likeness, compare_names, spelling_level
from .prepared import fold
from .reading import NameReading, read_name
from .reasons import Reason
from .vocabulary import Meaning, Move, Vocabulary
from .weights import NOT_KNOWN, Level, Summand, Suspicion, UnknownLevel, Weights, Witness

__all__ = [
    "LEVELS",
    "NOT_KNOWN",
    "Level",
    "Likeness",
    "Meaning",
    "Move",
    "NameIndex",
    "NameReading",
    "Reason",
    "Summand",
    "Suspicion",
    "UnknownLevel",
    "Vocabulary",
    "WeightEstimate",
    "Weights",
    "Witness",
    "candidate_pairs",
    "compare_names",
    "estimate_weights",
    "fold",
    "read_name",
    "spelling_level",
]
