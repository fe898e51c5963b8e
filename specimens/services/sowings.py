"""Recording sowings, whose spores went in, and crosses."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.db import transaction
from django.utils import timezone

from specimens.changes import announce
from specimens.models import Cross, Name, Specimen, SporeSource, SporeSowing
from specimens.naming.codes import Code
from specimens.services.codes import draw_code, keep_clear_of


@dataclass(frozen=True, slots=True)
class Source:
    """Whose spores, or whose plant a parent was: a plant, a name, or words where neither is on record."""

    specimen: Specimen | None = None
    name: Name | None = None
    words: str = ""


@transaction.atomic
def record_sowing(
    *, sources: tuple[Source, ...] = (), code: Code | None = None, **fields: Any
) -> SporeSowing:
    """A sowing with its sources; with none, whose spores they were is not known."""
    sowing = SporeSowing.objects.create(code=str(code or draw_code(year=timezone.localdate().year)), **fields)
    if code is not None:
        keep_clear_of(code)
    for source in sources:
        SporeSource.objects.create(
            sowing=sowing, specimen=source.specimen, name=source.name, words=source.words
        )
    announce("sowings", [sowing.pk])
    return sowing


@transaction.atomic
def record_cross(*, first: Source, second: Source, how: str, **fields: Any) -> Cross:
    """A cross of two plants or names, intended or noticed. It alone settles nobody's parentage."""
    cross = Cross.objects.create(
        how=how,
        first_specimen=first.specimen,
        first_name=first.name,
        second_specimen=second.specimen,
        second_name=second.name,
        **fields,
    )
    announce("crosses", [cross.pk])
    return cross
