"""A plant that would descend from itself: told with the codes of the plants in the circle."""

from __future__ import annotations

from collections.abc import Iterable

from lineage.core import PedigreeError
from lineage.services.definitions import Key
from specimens.models import Name, SeenBy, Specimen
from specimens.naming.sentences import HIDDEN_PLANT


class DescentError(ValueError):
    """These records would make plants their own ancestors.

    `codes` names every plant of the circle, each followed by one it would come from; `str()` speaks to any
    member and shows no plant that is not shared.
    """

    def __init__(self, words: str, codes: Iterable[str]) -> None:
        super().__init__(words)
        self.codes = tuple(codes)


def descent_error(found: PedigreeError) -> DescentError:
    """From the nodes of a circle to codes and words; two queries."""
    keys = [key for key in found.members if isinstance(key, Key)]
    plants = Specimen.objects.in_bulk([key.ref for key in keys if key.kind == "plant"])
    names = Name.objects.in_bulk([key.ref for key in keys if key.kind == "name"])
    told = []
    for key in keys:
        if key.kind == "plant":
            plant = plants[key.ref]
            told.append(plant.code if plant.seen_by == SeenBy.MEMBERS else HIDDEN_PLANT)
        elif key.kind == "name":
            told.append(str(names[key.ref]))
    codes = [plants[key.ref].code for key in keys if key.kind == "plant"]
    if not told:
        return DescentError(str(found), codes)
    return DescentError(f"A plant cannot come from itself: {_circle_words(told)}.", codes)


def _circle_words(told: list[str]) -> str:
    if len(told) == 1:
        return f"{told[0]} would be its own parent"
    steps = [f"{told[0]} would come from {told[1]}"]
    steps += [f"{above}" for above in [*told[2:], told[0]]]
    return ", that from ".join(steps)
