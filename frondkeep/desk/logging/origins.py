"""Which plant somebody means by what they typed: a code, an old number, or words."""

from __future__ import annotations

import re

from django.db.models import Q, QuerySet

from frondkeep.desk.searching.codes import LOOKS_LIKE_CODE, code_meant, did_you_mean
from frondkeep.desk.searching.plants import own_number
from frondkeep.society.models import Keeper, User
from specimens.models import Name, Specimen, SporeSowing
from specimens.naming.codes import CodeNotRead, read_code
from specimens.services.reading import KnownNames
from specimens.services.sowings import Source

MOST_SOURCES = 12
BETWEEN_SOURCES = re.compile(r"[,;\n]")


class PlantNotFoundError(ValueError):
    """No plant is meant by this code; `str()` says so, the same for a plant that is not shown and for none."""


def plant_meant(text: str, *, reader: User, keeper: Keeper | None = None) -> Specimen | None:
    """The plant of this code or old number, of `keeper` first; None where the text is words.

    Raises PlantNotFoundError for what looks like a code and is no code of a plant the reader may see, and for
    a number that several plants bear.
    """
    text = text.strip()
    sight = Specimen.objects.visible_to(reader).standing().with_page_parts()
    numbered = by_number(sight, text, reader=reader, keeper=keeper)
    if len(numbered) == 1:
        return numbered[0]
    if numbered:
        codes = ", ".join(plant.code for plant in numbered)
        raise PlantNotFoundError(
            f"Several plants bear this number: {codes}. Type the code of the one you mean."
        )
    if not LOOKS_LIKE_CODE.fullmatch(text) and not code_meant(text):
        return None
    return by_code(sight, text)


def by_number(sight: QuerySet[Specimen], text: str, *, reader: User, keeper: Keeper | None) -> list[Specimen]:
    """Plants that bear this old number; the keeper's alone where some of theirs do. At most five."""
    if not text:
        return []
    found = sight.filter(Q(society_number__iexact=text) | own_number(text, reader))
    theirs = list(found.kept_by(frozenset([keeper.pk]))[:5]) if keeper else []
    return theirs or list(found[:5])


def by_code(sight: QuerySet[Specimen], text: str) -> Specimen:
    try:
        code = str(read_code(text))
    except CodeNotRead as slip:
        near = did_you_mean(text, sight)
        asked = f" Did you mean {' or '.join(near)}?" if near else ""
        raise PlantNotFoundError(f"{slip}{asked}") from slip
    found = sight.filter(code=code).first()
    if found is None:
        raise PlantNotFoundError(
            f"We find no plant {code} that you may see. Look at the tag again, or describe the plant in words."
        )
    return found


def spores_meant(
    text: str, *, reader: User, known: KnownNames
) -> tuple[tuple[Source, ...], SporeSowing | None]:
    """Whose spores: plants, names and words between commas, each once; or a sowing on record, by its code.

    Raises PlantNotFoundError as `plant_meant` does, and for over twelve.
    """
    parts = list(dict.fromkeys(part.strip() for part in BETWEEN_SOURCES.split(text) if part.strip()))
    if len(parts) > MOST_SOURCES:
        raise PlantNotFoundError(f"Name {MOST_SOURCES} plants at most; put the others into the notes.")
    if len(parts) == 1 and (sowing := sowing_meant(parts[0], reader=reader)):
        return (), sowing
    sources = [source_meant(part, reader=reader, known=known) for part in parts]
    return tuple(dict.fromkeys(sources)), None


def source_meant(part: str, *, reader: User, known: KnownNames) -> Source:
    plant = plant_meant(part, reader=reader)
    if plant is not None:
        return Source(specimen=plant)
    name: Name | None = known.match(part).name
    return Source(name=name) if name else Source(words=part[:200])


def sowing_meant(text: str, *, reader: User) -> SporeSowing | None:
    """A sowing of this code that the reader made, or of which they may see a plant; the curator sees every one."""
    code = code_meant(text)
    sowings = SporeSowing.objects.filter(code=code, voided_reason="") if code else SporeSowing.objects.none()
    if not reader.is_curator:
        seen = Specimen.objects.visible_to(reader).filter(sowing__isnull=False).values("sowing")
        sowings = sowings.filter(Q(by__user=reader) | Q(pk__in=seen))
    return sowings.first()
