"""Recording many plants and sowings at once, as an import does: as one at a time, in a fixed number of queries."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from django.db import transaction
from django.utils import timezone
from simple_history.utils import bulk_create_with_history

from frondkeep.society.models import Keeper, User
from specimens.changes import announce
from specimens.models import (
    Came,
    Division,
    Identification,
    Keeping,
    Name,
    Specimen,
    SporeSource,
    SporeSowing,
    State,
)
from specimens.naming.codes import Code
from specimens.naming.dates import PartialDate
from specimens.services.codes import draw_codes, keep_clear_of
from specimens.services.identifications import NO_DATE
from specimens.services.sowings import Source
from specimens.services.specimens import PieceOf

BATCH = 500


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPlant:
    """What `log_specimen` is told of one plant; from spores it needs its sowing."""

    keeper: Keeper | None
    came: str
    label_text: str = ""
    name: Name | None = None
    qualifier: str = ""
    ground: str = Identification.Ground.LABEL
    piece_of: PieceOf | None = None
    sowing: SporeSowing | None = None
    acquired: PartialDate = NO_DATE
    code: Code | None = None
    fields: dict[str, Any] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class NewSowing:
    """What `record_sowing` is told of one sowing."""

    sources: tuple[Source, ...] = ()
    fields: dict[str, Any] = field(default_factory=dict)


@transaction.atomic
def log_specimens(plants: Sequence[NewPlant], *, by: User | None) -> list[Specimen]:
    """Record plants none of which came from another of them, in the order given; as `log_specimen` does each.

    The history of each begins with the plant as identified, in one entry instead of two.
    """
    codes = codes_for([plant.code for plant in plants])
    divisions = divide_many(plants, by=by)
    made = [
        specimen_of(plant, code, division, by)
        for plant, code, division in zip(plants, codes, divisions, strict=True)
    ]
    Specimen.objects.bulk_create(made, batch_size=BATCH)
    keep_many(plants, made, by=by)
    identify_many(plants, made, by=by)
    Specimen.history.bulk_history_create(made, batch_size=BATCH, default_user=by)
    announce("specimens", [specimen.pk for specimen in made])
    return made


def codes_for(given: Sequence[Code | None]) -> list[Code]:
    """The codes given, and drawn ones where none is."""
    for code in given:
        if code is not None:
            keep_clear_of(code)
    missing = sum(code is None for code in given)
    drawn = iter(draw_codes(year=timezone.localdate().year, count=missing) if missing else [])
    return [code or next(drawn) for code in given]


def specimen_of(plant: NewPlant, code: Code, division: Division | None, by: User | None) -> Specimen:
    return Specimen(
        code=str(code),
        came=plant.came,
        label_text=plant.label_text,
        acquired=plant.acquired,
        logged_by=by,
        division=division,
        sowing=plant.sowing if plant.came == Came.SOWING else None,
        **plant.fields,
    )


def divide_many(plants: Sequence[NewPlant], *, by: User | None) -> list[Division | None]:
    """A division for every piece, None for other plants."""
    divisions = [
        division_of(plant.piece_of or PieceOf(), plant.acquired) if plant.came == Came.PIECE else None
        for plant in plants
    ]
    create([division for division in divisions if division is not None], by=by)
    return divisions


def division_of(piece: PieceOf, taken: PartialDate) -> Division:
    return Division(
        parent=piece.parent,
        parent_words=piece.words,
        kind=piece.kind,
        sport=piece.sport,
        sport_words=piece.sport_words,
        taken=taken,
        by=piece.by,
    )


def keep_many(plants: Sequence[NewPlant], made: Sequence[Specimen], *, by: User | None) -> None:
    """Who keeps each, or kept it until it ended."""
    keepings = []
    for plant, specimen in zip(plants, made, strict=True):
        if plant.keeper is not None:
            is_open = specimen.state in (State.GROWING, State.LOST)
            until = NO_DATE if is_open else specimen.ended
            keepings.append(
                Keeping(
                    specimen=specimen, keeper=plant.keeper, since=plant.acquired, until=until, is_open=is_open
                )
            )
    create(keepings, by=by)


def identify_many(plants: Sequence[NewPlant], made: Sequence[Specimen], *, by: User | None) -> None:
    """The first identification of each plant that has a name or a tag."""
    by_curator = bool(by and by.is_curator)
    thoughts = [
        Identification(
            specimen=specimen, name=plant.name, by=by, by_curator=by_curator, ground=plant.ground,
            qualifier=plant.qualifier, on=plant.acquired,
        )
        for plant, specimen in zip(plants, made, strict=True)
        if plant.name is not None or plant.label_text
    ]  # fmt: skip
    create(thoughts, by=by)
    for thought in thoughts:
        thought.specimen.identification = thought
    # Their history is written after this, with the identification in it.
    Specimen.objects.bulk_update([t.specimen for t in thoughts], ["identification"], batch_size=BATCH)


@transaction.atomic
def record_sowings(new: Sequence[NewSowing], *, by: User | None) -> list[SporeSowing]:
    """Sowings with their sources, in the order given; as `record_sowing` does each."""
    codes = codes_for([None] * len(new))
    made = [SporeSowing(code=str(code), **sowing.fields) for sowing, code in zip(new, codes, strict=True)]
    create(made, by=by)
    sources = [
        SporeSource(sowing=sowing, specimen=source.specimen, name=source.name, words=source.words)
        for sowing, told in zip(made, new, strict=True)
        for source in told.sources
    ]
    create(sources, by=by)
    announce("sowings", [sowing.pk for sowing in made])
    return made


def create(rows: Sequence[Any], *, by: User | None) -> None:
    """Insert rows of one model with their history."""
    if rows:
        bulk_create_with_history(list(rows), type(rows[0]), batch_size=BATCH, default_user=by)
