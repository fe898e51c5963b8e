"""All that the page of one name says to one reader."""

from __future__ import annotations

from dataclasses import dataclass

from django.db.models import Q, QuerySet

from frondkeep.desk.finding import visible_ids
from frondkeep.desk.people import unnamed, user_words
from frondkeep.desk.plant_lists import ListedPlant, listed
from frondkeep.society.models import User
from specimens.models import ClaimParent, Name, ParentageClaim, Placement, Specimen, TraitRecord, Treatment
from specimens.naming.sentences import HIDDEN_PLANT
from specimens.services.portrait_traits import sitters_for_names

MOST_PLANTS = 24


@dataclass(frozen=True, slots=True)
class Parent:
    """A parent of a claim: a name to link to, a plant's code to link to, or words alone."""

    name: Name | None = None
    code: str = ""
    words: str = ""


@dataclass(frozen=True, slots=True)
class Claimed:
    claim: ParentageClaim
    parents: list[Parent]
    by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NamePage:
    name: Name
    accepted: Name
    placements: list[Placement]
    followed: Treatment | None
    also_known_as: list[Name]
    below: list[Name]
    claims: list[Claimed]
    traits: list[TraitRecord]
    plants: list[ListedPlant]
    plant_count: int

    @property
    def is_accepted(self) -> bool:
        return self.accepted.pk == self.name.pk


def name_page(name: Name, reader: User) -> NamePage:
    """The page of a name; the same number of queries for any name."""
    accepted = name.accepted or name
    plants = plants_under(accepted, reader)
    name.sitter = sitters_for_names([name])[name.pk]
    return NamePage(
        name=name,
        accepted=accepted,
        placements=list(name.placements.select_related("treatment", "accepted").order_by("treatment__name")),
        followed=Treatment.objects.filter(followed=True).first(),
        also_known_as=list(Name.objects.accepted_as(accepted).exclude(pk=name.pk).in_reading_order()),
        below=list(name.children.standing().in_reading_order()[:200]),
        claims=claims_about(name, reader),
        traits=list(name.traits.select_related("state__trait", "seen_by").order_by("state__trait__order")),
        plants=listed(plants.newest_first().with_page_parts()[:MOST_PLANTS], reader=reader),
        plant_count=plants.count(),
    )


def plants_under(accepted: Name, reader: User) -> QuerySet[Specimen]:
    """Growing plants the reader may see under this name or any synonym of it."""
    thought = Q(identification__name=accepted) | Q(identification__name__accepted=accepted)
    return Specimen.objects.visible_to(reader).standing().growing().filter(thought)


def claims_about(name: Name, reader: User) -> list[Claimed]:
    """What is claimed of its parents: the current claim first, then what was formerly thought."""
    claims = list(
        name.claims.select_related("by__member__keeper__household")
        .prefetch_related("parents__name", "parents__specimen")
        .order_by("standing", "-at")
    )
    parents = [parent for claim in claims for parent in claim.parents.all()]
    visible = visible_ids(reader, [parent.specimen_id for parent in parents])
    hidden = unnamed((claim.by_words for claim in claims), reader)
    return [
        Claimed(
            claim,
            [parent_shown(parent, visible) for parent in claim.parents.all()],
            "a member" if claim.by_words in hidden else claim.by_words or user_words(claim.by, reader),
        )
        for claim in claims
    ]


def parent_shown(parent: ClaimParent, visible: frozenset[int]) -> Parent:
    if parent.name is not None:
        return Parent(name=parent.name)
    if parent.specimen is None:
        return Parent(words=parent.words or "not known")
    seen = parent.specimen_id in visible
    return Parent(code=parent.specimen.code) if seen else Parent(words=HIDDEN_PLANT)
