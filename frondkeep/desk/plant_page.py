"""All that the page of one plant says to one reader."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from django.db.models import prefetch_related_objects

from frondkeep.desk.finding import visible_ids, visible_photos
from frondkeep.desk.journeys import Step, journey_of
from frondkeep.desk.people import capital, keeper_words, member_words, unnamed, user_words
from frondkeep.desk.plant_facts import facts_of, giver_words, origin_ids, origin_line, parent_id
from frondkeep.desk.plant_lists import ListedPlant, listed
from frondkeep.society.models import User
from specimens.models import Identification, Keeping, Photo, Specimen, SporeSowing, TraitRecord
from specimens.naming.sentences import plant_sentence
from specimens.services.portrait_traits import sitters_for_plants


@dataclass(frozen=True, slots=True)
class Thought:
    """One identification: what, by whom as the reader may know them, and where it stands."""

    identification: Identification
    by: str

    @property
    def thinks(self) -> str:
        """The start of a sentence: “You think”, “Ada Quill thinks”."""
        return "You think" if self.by == "you" else f"{capital(self.by or 'somebody')} thinks"

    @property
    def certainty(self) -> str:
        """Which of the three looks it has: said by a curator or DNA, by its name alone, or by nothing."""
        if self.identification.name is None:
            return "unknown"
        return "recorded" if self.identification.is_firm else "assumed"


@dataclass(frozen=True, slots=True)
class SownFrom:
    sowing: SporeSowing
    by: str


@dataclass(frozen=True, slots=True)
class Pieces:
    """Pieces taken from a plant: those the reader may see, and how many more there are."""

    listed: list[ListedPlant]
    hidden: int

    def __bool__(self) -> bool:
        return bool(self.listed or self.hidden)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantPage:
    plant: Specimen
    sentence: str
    is_mine: bool
    may_edit: bool
    keeper: str
    keeping: Keeping | None
    giver: str
    origin: str
    parent_shown: bool
    photos: list[Photo]
    thoughts: list[Thought]
    proposals: list[Thought]
    traits: list[TraitRecord]
    pieces: Pieces
    sowings: list[SownFrom]
    journey: list[Step]


def plant_page(plant: Specimen, reader: User) -> PlantPage:
    """The page of a plant fetched `with_page_parts`; the same number of queries for any plant."""
    keepings = keepings_of(plant)
    prefetch_related_objects([plant], "sowing__sources__name")
    visible = visible_ids(reader, origin_ids(plant))
    thoughts = thoughts_about(plant, reader)
    is_mine = plant.keeper is not None and reader.acts_for(plant.keeper)
    plant.sitter = sitters_for_plants([plant])[plant.pk]
    return PlantPage(
        plant=plant,
        sentence=plant_sentence(facts_of(plant, reader=reader, visible=visible, with_code=False)),
        is_mine=is_mine,
        may_edit=Specimen.objects.editable_by(reader).filter(pk=plant.pk).exists(),
        keeper=keeper_words(plant.keeper, reader),
        keeping=next((keeping for keeping in keepings if keeping.is_open), None),
        giver=giver_words(plant, reader),
        origin=origin_words(plant, visible),
        parent_shown=parent_id(plant) in visible,
        photos=list(visible_photos(reader).filter(specimen=plant)),
        thoughts=[each for each in thoughts if not is_proposed(each)],
        proposals=[each for each in thoughts if is_proposed(each)],
        traits=traits_of(plant),
        pieces=pieces_of(plant, reader),
        sowings=sowings_of(plant, reader),
        journey=journey_of(plant, keepings, reader),
    )


def origin_words(plant: Specimen, visible: frozenset[int]) -> str:
    """The plant or sowing it came from; '' for a plant from outside, which its way of coming says already."""
    return origin_line(plant, visible=visible) if plant.division or plant.sowing else ""


def keepings_of(plant: Specimen) -> list[Keeping]:
    return list(plant.keepings.select_related("keeper__member", "keeper__household").order_by("pk"))


def thoughts_about(plant: Specimen, reader: User) -> list[Thought]:
    """Every identification, the current one first, then the newest first."""
    found = thoughts_said(
        plant.identifications.select_related(
            "name__accepted", "treatment", "by__member__keeper__household"
        ).order_by("-at", "-pk"),
        reader,
    )
    return sorted(
        found, key=lambda thought: thought.identification.standing != Identification.Standing.CURRENT
    )


def thoughts_said(found: Iterable[Identification], reader: User) -> list[Thought]:
    """Identifications with who said so, as the reader may know them; one query more than theirs."""
    found = list(found)
    hidden = unnamed((each.by_words for each in found), reader)
    return [Thought(each, said_by(each, reader, hidden)) for each in found]


def said_by(thought: Identification, reader: User, hidden: frozenset[str]) -> str:
    """The curator, a person as the reader may know them, or the words that came with a record."""
    if thought.by_curator and thought.by_id != reader.pk:
        return "the curator"
    words = "a member" if thought.by_words in hidden else thought.by_words
    return user_words(thought.by, reader) or words


def is_proposed(thought: Thought) -> bool:
    return thought.identification.standing == Identification.Standing.PROPOSED


def traits_of(plant: Specimen) -> list[TraitRecord]:
    return list(plant.traits.select_related("state__trait").order_by("state__trait__order", "state__order"))


def pieces_of(plant: Specimen, reader: User) -> Pieces:
    found: Sequence[Specimen] = (
        Specimen.objects.standing().filter(division__parent=plant).with_page_parts().order_by("code")
    )
    visible = visible_ids(reader, [piece.pk for piece in found])
    seen = [piece for piece in found if piece.pk in visible]
    return Pieces(listed(seen, reader=reader), len(found) - len(seen))


def sowings_of(plant: Specimen, reader: User) -> list[SownFrom]:
    sown = (
        SporeSowing.objects.filter(sources__specimen=plant, voided_reason="")
        .select_related("by__keeper", "by__household")
        .order_by("sown_earliest", "code")
    )
    return [SownFrom(sowing, member_words(sowing.by, reader)) for sowing in sown]
