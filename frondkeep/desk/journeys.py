"""A plant's way through hands, in brief, as one reader may read it."""

from __future__ import annotations

from dataclasses import dataclass

from frondkeep.desk.plant_facts import giver_words
from frondkeep.society.models import User
from specimens.models import Keeping, Specimen
from specimens.naming.dates import PartialDate


@dataclass(frozen=True, slots=True)
class Step:
    when: PartialDate
    words: str


def journey_of(plant: Specimen, keepings: list[Keeping], reader: User) -> list[Step]:
    """From its coming to its end; the keepings in the order they were recorded."""
    came = [
        Step(keeping.since, keeping_words(keeping, plant, reader, first=not place))
        for place, keeping in enumerate(keepings)
    ]
    ended = [] if plant.is_growing else [Step(plant.ended, end_words(plant))]
    return came + ended


def keeping_words(keeping: Keeping, plant: Specimen, reader: User, *, first: bool) -> str:
    words = f"{'came' if first else 'went'} to {keeping.keeper.shown_to(reader)}"
    if not first:
        return words
    giver = giver_words(plant, reader)
    from_whom = f" from {giver}" if giver else ""
    meeting = f", at {plant.meeting}" if plant.meeting else ""
    return f"{words}{from_whom}{meeting}"


def end_words(plant: Specimen) -> str:
    reason = f": {plant.state_reason}" if plant.state_reason else ""
    return f"{plant.get_state_display()}{reason}"
