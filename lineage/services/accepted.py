"""Which name is accepted today: from the treatment the society follows, and from standing decisions."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from django.db.models import F, Q

from lineage.services.standing import standing_groups
from specimens.models import Name, Placement, Rank

# Beyond this many ids a list of them in a query costs more than reading all names.
MANY = 5_000


def refresh_accepted(name_ids: Collection[int]) -> set[int]:
    """Bring `Name.accepted` up to date for these names and for every synonym; four queries at most.

    Returns the ids of the names whose accepted name changed, and of those they were accepted as before.
    Every name has one: itself, unless the
    treatment followed makes it a synonym, or a decision joins a cultivar name to another.
    """
    answers = synonyms_followed() | cultivars_joined()
    changed: dict[int, list[int]] = {}
    left: set[int] = set()
    for pk, now in Name.objects.filter(_asked(name_ids, answers)).values_list("pk", "accepted"):
        right = follow(pk, answers)
        if now != right:
            changed.setdefault(right, []).append(pk)
            left.update([] if now is None else [now])
    _write(changed)
    return left.union(*changed.values())


def wrongly_accepted() -> list[int]:
    """Names whose stored accepted name is not what a refresh would give."""
    answers = synonyms_followed() | cultivars_joined()
    return [pk for pk, now in Name.objects.values_list("pk", "accepted") if now != follow(pk, answers)]


def follow(name_id: int, answers: Mapping[int, int]) -> int:
    """The end of the chain of synonyms from a name; itself, where the chain goes in a circle."""
    seen = {name_id}
    at = name_id
    while at in answers:
        at = answers[at]
        if at in seen:
            return name_id
        seen.add(at)
    return at


def synonyms_followed() -> dict[int, int]:
    """Botanical synonyms by the treatment the society follows, and names it says were misapplied (“hort.”)."""
    placed = (
        Placement.objects.filter(treatment__followed=True)
        .exclude(status=Placement.Status.ACCEPTED)
        .exclude(name__rank=Rank.CULTIVAR)
    )
    return {name: accepted for name, accepted in placed.values_list("name", "accepted") if accepted}


def cultivars_joined() -> dict[int, int]:
    return standing_groups()


def _asked(name_ids: Collection[int], answers: Mapping[int, int]) -> Q:
    if len(name_ids) + len(answers) > MANY:
        return Q()
    unsettled = Q(accepted__isnull=True) | ~Q(accepted=F("pk"))
    return Q(pk__in=[*name_ids, *answers]) | unsettled


def _write(changed: Mapping[int, list[int]]) -> None:
    # Not part of a name's history: it follows from placements and decisions, which have their own.
    rows = [Name(pk=pk, accepted_id=right) for right, pks in changed.items() for pk in pks]
    if rows:
        Name.objects.bulk_update(rows, ["accepted"], batch_size=400)
