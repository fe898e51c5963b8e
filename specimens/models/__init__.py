from specimens.models.codes import CodeCounter
from specimens.models.evidence import ClaimParent, ParentageClaim
from specimens.models.handovers import HandOver
from specimens.models.names import (
    HYBRID_RANKS,
    INFRASPECIFIC_RANKS,
    SPECIES_RANKS,
    Name,
    Placement,
    Rank,
    Reproduction,
    Treatment,
)
from specimens.models.photos import Photo
from specimens.models.propagation import Cross, Division, SporeSource, SporeSowing
from specimens.models.specimens import Came, Holds, Identification, Keeping, SeenBy, Specimen, State
from specimens.models.traits import Trait, TraitRecord, TraitState

__all__ = [
    "HYBRID_RANKS",
    "INFRASPECIFIC_RANKS",
    "SPECIES_RANKS",
    "Came",
    "ClaimParent",
    "CodeCounter",
    "Cross",
    "Division",
    "HandOver",
    "Holds",
    "Identification",
    "Keeping",
    "Name",
    "ParentageClaim",
    "Photo",
    "Placement",
    "Rank",
    "Reproduction",
    "SeenBy",
    "Specimen",
    "SporeSource",
    "SporeSowing",
    "State",
    "Trait",
    "TraitRecord",
    "TraitState",
    "Treatment",
]
