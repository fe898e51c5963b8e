"""What speaks against an entry by the show's rules, each in a sentence."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from frondkeep.shows.models import Entry, EntryPlant, Exhibitor, Show, ShowClass
from frondkeep.society.models import Keeper, User
from specimens.models import (
    HYBRID_RANKS,
    SPECIES_RANKS,
    Came,
    Keeping,
    Name,
    ParentageClaim,
    Rank,
    Specimen,
    State,
)
from specimens.naming.dates import PartialDate
from specimens.services.shown_names import shown_name

Wants = ShowClass.Wants


@dataclass(frozen=True, slots=True)
class Known:
    """What the rules ask of many plants at once, read in three queries whatever their number."""

    keepings: dict[int, Keeping]
    entered: frozenset[int]
    # Ids of cultivar names whose standing claim says that they are a hybrid of two.
    hybrids: frozenset[int]

    @classmethod
    def load(cls, show: Show, plants: Sequence[Specimen]) -> Known:
        ids = [plant.pk for plant in plants]
        names = {name.pk for plant in plants if (name := accepted_name(plant))}
        keepings = Keeping.objects.filter(specimen__in=ids, is_open=True).select_related(
            "keeper__member", "keeper__household"
        )
        entered = EntryPlant.objects.filter(
            specimen__in=ids, entry__show=show, entry__withdrawn_at__isnull=True
        ).values_list("specimen_id", flat=True)
        hybrids = ParentageClaim.objects.filter(name__in=names, standing="current", says="cross").values_list(
            "name_id", flat=True
        )
        return cls(
            {keeping.specimen_id: keeping for keeping in keepings}, frozenset(entered), frozenset(hybrids)
        )


def accepted_name(plant: Specimen) -> Name | None:
    thought = plant.identification
    return (thought.name.accepted or thought.name) if thought and thought.name else None


def objections(
    show: Show, show_class: ShowClass, exhibitor: Exhibitor, plants: Sequence[Specimen]
) -> list[str]:
    """Every reason why these plants of this exhibitor may not enter this class; empty where they may."""
    known = Known.load(show, plants)
    return [
        *about_the_show(show),
        *about_the_exhibitor(show, show_class, exhibitor),
        *about_the_number(show_class, plants),
        *(
            reason
            for plant in plants
            for reason in about_the_plant(show, show_class, exhibitor.keeper, plant, known)
        ),
    ]


def about_the_show(show: Show) -> list[str]:
    return [] if show.takes_entries else ["Entries for this show are closed. Ask the show committee."]


def about_the_exhibitor(show: Show, show_class: ShowClass, exhibitor: Exhibitor) -> list[str]:
    standing = Entry.objects.filter(show=show, exhibitor=exhibitor).standing()
    reasons = []
    if show.most_entries is not None and standing.count() >= show.most_entries:
        reasons.append(f"An exhibitor may enter {show.most_entries} times in this show, and has.")
    if standing.filter(show_class=show_class).count() >= show.most_in_class:
        times = "once" if show.most_in_class == 1 else f"{show.most_in_class} times"
        reasons.append(f"An exhibitor may enter this class {times}, and has.")
    return reasons


def about_the_number(show_class: ShowClass, plants: Sequence[Specimen]) -> list[str]:
    if not show_class.stages_plants or len(plants) <= show_class.how_many:
        return []
    return [f"An entry of this class has {show_class.how_many} plants, not {len(plants)}."]


def about_the_plant(
    show: Show, show_class: ShowClass, exhibitor: Keeper | None, plant: Specimen, known: Known
) -> list[str]:
    if plant.state != State.GROWING:
        return [f"{plant.code} is on record as {plant.get_state_display()}."]
    reasons = []
    keeping = known.keepings.get(plant.pk)
    if keeping is None or exhibitor is None or not kept_for(keeping.keeper, exhibitor):
        reasons.append(f"{plant.code} is not kept by this exhibitor.")
    else:
        reasons += about_possession(show, plant, keeping)
    if plant.pk in known.entered:
        reasons.append(f"{plant.code} is entered in this show already.")
    return reasons + about_the_kind(show_class, plant, known)


def kept_for(keeper: Keeper, exhibitor: Keeper) -> bool:
    """Whether the exhibitor shows this keeper's plants: their own, or a household its members'."""
    if keeper == exhibitor:
        return True
    return (
        keeper.member is not None
        and keeper.member.household_id is not None
        and (keeper.member.household_id == exhibitor.household_id)
    )


def about_possession(show: Show, plant: Specimen, keeping: Keeping) -> list[str]:
    """Kept too short a time for certain. A date that leaves it open speaks for the exhibitor."""
    latest_start = months_before(show.date, show.months_of_possession)
    since: PartialDate = keeping.since if keeping.since.is_known else plant.acquired
    if since.earliest is None or since.earliest <= latest_start:
        return []
    return [
        f"{plant.code} has been kept for less than {show.months_of_possession} months on the day of the show."
    ]


def months_before(day: date, months: int) -> date:
    """The same day of the month so many months earlier, or that month's last day."""
    whole = day.year * 12 + day.month - 1 - months
    year, month = divmod(whole, 12)
    for last in (day.day, 30, 29, 28):
        try:
            return date(year, month + 1, min(day.day, last))
        except ValueError:
            continue
    raise AssertionError("every month has a 28th day")


def about_the_kind(show_class: ShowClass, plant: Specimen, known: Known) -> list[str]:
    """Genus and kind, by the accepted name; a plant that is not named fits only where anything does."""
    name = accepted_name(plant)
    reasons = []
    genus = show_class.genus
    if genus and (name is None or genus.pk not in (name.genus_id, name.pk)):
        reasons.append(f"This class is for {genus.epithet}; {plant.code} is {shown_name(plant).plain}.")
    if show_class.wants and not is_wanted(show_class.wants, plant, name, known):
        reasons.append(
            f"This class wants {show_class.get_wants_display()}; {plant.code} is {shown_name(plant).plain}."
        )
    return reasons


def is_wanted(wants: str, plant: Specimen, name: Name | None, known: Known) -> bool:
    if wants == Wants.RAISED:
        return plant.came == Came.SOWING
    if name is None:
        return False
    if wants == Wants.SPECIES:
        return name.rank in SPECIES_RANKS and name.rank not in HYBRID_RANKS
    if wants == Wants.CULTIVAR:
        return name.rank == Rank.CULTIVAR
    return name.rank in HYBRID_RANKS or name.pk in known.hybrids


@dataclass(frozen=True, slots=True)
class Unfit:
    """A plant that may not enter a class, and every reason why."""

    plant: Specimen
    reasons: list[str]


def plants_for_class(
    show: Show, show_class: ShowClass, exhibitor: Keeper, user: User
) -> tuple[list[Specimen], list[Unfit]]:
    """A user's growing plants that fit a class, and those that do not. A fixed number of queries."""
    if not show_class.stages_plants:
        return [], []
    plants = list(Specimen.objects.mine(user).growing().with_page_parts().order_by("code"))
    known = Known.load(show, plants)
    reasons = {plant.pk: about_the_plant(show, show_class, exhibitor, plant, known) for plant in plants}
    fitting = [plant for plant in plants if not reasons[plant.pk]]
    return fitting, [Unfit(plant, reasons[plant.pk]) for plant in plants if reasons[plant.pk]]
