"""What a decision on two names would change, told before it is made."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lineage.core.decisions import Answer, Decision
from lineage.models import Ruling
from lineage.services.rulings import ContradictionError, accepted_after, draft_ruling, refuse_contradiction
from specimens.changes import Touched, foresee
from specimens.models import Name, Specimen


@dataclass(frozen=True, slots=True)
class Renamed:
    """A name whose accepted name would change, and how many growing plants bear it."""

    name: Name
    accepted: Name
    plants: int


@dataclass(frozen=True, slots=True)
class Consequences:
    """`last_seen` is the newest decision on the pair; `contradiction` is why it could not be saved at all."""

    renamed: tuple[Renamed, ...]
    touched: tuple[Touched, ...]
    last_seen: int
    contradiction: ContradictionError | None = None

    @property
    def plants(self) -> int:
        return sum(each.plants for each in self.renamed)


def consequences_of_ruling(
    *, first: int, second: int, answer: str, stands: int | None = None
) -> Consequences:
    """What would follow from deciding so; nothing is written. Raises ValueError where no name may stand so."""
    earlier = Ruling.objects.decisions()
    return _consequences(earlier, draft_ruling(earlier, first, second, answer, stands))


def consequences_of_undoing(ruling: Ruling) -> Consequences:
    """What would follow from taking a decision back; nothing is written."""
    earlier = Ruling.objects.decisions()
    last = earlier[-1].id if earlier else 0
    return _consequences(earlier, Decision(last + 1, Answer.UNDONE, *ruling.pair, undoes=ruling.pk))


def _consequences(earlier: list[Decision], draft: Decision) -> Consequences:
    pair = (draft.first, draft.second)
    last_seen = max((d.id for d in earlier if (d.first, d.second) == pair), default=0)
    try:
        refuse_contradiction([*earlier, draft])
    except ContradictionError as found:
        return Consequences((), (), last_seen, found)
    changes = accepted_after(earlier, draft)
    touched = foresee("names", changes) if changes else ()
    return Consequences(_renamed(changes), tuple(touched), last_seen)


def _renamed(changes: Mapping[int, tuple[int, int]]) -> tuple[Renamed, ...]:
    if not changes:
        return ()
    names = Name.objects.in_bulk({*changes} | {new for _, new in changes.values()})
    growing = Specimen.objects.growing().filter(identification__name__in=changes)
    counts: dict[int, int] = {}
    for name in growing.values_list("identification__name", flat=True):
        counts[name] = counts.get(name, 0) + 1
    found = [Renamed(names[pk], names[new], counts.get(pk, 0)) for pk, (_, new) in changes.items()]
    return tuple(sorted(found, key=lambda each: each.name.sort_text))
