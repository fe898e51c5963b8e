"""Under which name a plant is shown: the accepted one, as sure as its identification, its label's beside it."""

from __future__ import annotations

from dataclasses import dataclass

from specimens.models import Came, Name, Reproduction, Specimen
from specimens.naming.names import Run, plain


@dataclass(frozen=True, slots=True)
class ShownName:
    """What pages, labels and papers print for one plant."""

    runs: tuple[Run, ...]
    # The name it was identified under where another one is accepted today, else empty.
    former: tuple[Run, ...] = ()

    @property
    def plain(self) -> str:
        return plain(self.runs)


NOT_NAMED = ShownName((Run("not yet named", "roman"),))


def shown_name(specimen: Specimen, *, short_genus: bool = False) -> ShownName:
    """The accepted name of what a plant is thought to be; no query after `with_page_parts`."""
    thought = specimen.identification
    if thought is None or thought.name is None:
        return NOT_NAMED
    given = thought.name
    accepted = given.accepted or given
    raised = is_raised_from(specimen, accepted)
    runs = accepted.runs(qualifier=thought.qualifier, raised_from=raised, short_genus=short_genus)
    former = given.runs(short_genus=True) if accepted.pk != given.pk else ()
    return ShownName(runs, former)


def is_raised_from(specimen: Specimen, name: Name) -> bool:
    """Whether the plant is a sporeling of the cultivar whose name stands on its tag: it does not bear that name.

    So for a cultivar that is not true from spores, where the sowing had that cultivar among its sources.
    """
    if specimen.came != Came.SOWING or not name.is_cultivar or name.reproduction == Reproduction.SPORES:
        return False
    if name.original_plant_id == specimen.pk or specimen.sowing is None:
        return False
    return name.pk in source_name_ids(specimen)


def source_name_ids(specimen: Specimen) -> set[int]:
    """Ids of the names whose spores, or whose plants' spores, went into a plant's sowing."""
    ids: set[int] = set()
    for source in specimen.sowing.sources.all() if specimen.sowing else ():
        if source.name_id:
            ids.add(source.name_id)
        elif source.specimen and source.specimen.identification and source.specimen.identification.name_id:
            ids.add(source.specimen.identification.name_id)
    return ids
