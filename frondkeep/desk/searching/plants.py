"""Plants found by what somebody types: a code, an old number, a name, words of the tag."""

from __future__ import annotations

from django.db.models import Q, QuerySet

from frondkeep.desk.searching.asked import LONGEST_ASKED
from frondkeep.desk.searching.codes import by_code
from frondkeep.desk.searching.names import names_like
from frondkeep.society.models import User
from specimens.models import Name, Specimen
from specimens.models.specimens import in_hands_of


def plants_matching(plants: QuerySet[Specimen], text: str, *, reader: User) -> QuerySet[Specimen]:
    """Those of `plants` that the text may mean. The keeper's own numbers find only plants the reader may change."""
    text = text.replace("\0", " ").strip()[:LONGEST_ASKED]
    if not text:
        return plants
    found = Q(society_number__iexact=text) | on_the_tag(text) | under_names(names_like(text))
    code = by_code(text)
    if code is not None:
        found |= code
    return plants.filter(found | own_number(text, reader))


def on_the_tag(text: str) -> Q:
    """Every word somewhere in what the tag says."""
    words = Q()
    for word in text.split():
        words &= Q(label_text__icontains=word)
    return words


def under_names(ids: list[int]) -> Q:
    """Identified under one of these names, or under any name accepted as the same."""
    accepted = Name.objects.filter(pk__in=ids).values("accepted")
    return Q(identification__name__in=ids) | Q(identification__name__accepted__in=accepted)


def own_number(text: str, reader: User) -> Q:
    theirs = Q(own_number__iexact=text)
    if reader.is_curator:
        return theirs
    return theirs & Q(in_hands_of(reader.keeper_ids))
