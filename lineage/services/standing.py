"""What the standing decisions say: which cultivar names are one, which records are one plant."""

from __future__ import annotations

from lineage.core.decisions import Groups, still_standing
from lineage.models import Ruling


def standing_groups() -> dict[int, int]:
    """From each cultivar name that is decided to be another one's synonym to its accepted name; one query.

    Ids of names; accepted names themselves have no entry. Found by replaying the decisions that stand.
    """
    return Groups(still_standing(Ruling.objects.decisions())).synonyms()


def same_plants() -> dict[int, int]:
    """From each record decided to be of a plant recorded before to that earlier record; ids of specimens."""
    return {}
