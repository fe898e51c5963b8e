"""What somebody is asked before their plants are kept. A question, never a refusal."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from django.db.models import Q
from django.utils.html import format_html

from frondkeep.desk.logging.plans import MINE, NOT_KNOWN_GENUS, Plan, key_of, names_likely
from frondkeep.desk.logging.tags import Lookalike, TagRead
from frondkeep.desk.searching.plants import plants_matching
from frondkeep.society.models import User
from specimens.models import Came, Division, Name, Rank, Reproduction, Specimen
from specimens.services.names import NOT_PLACED
from specimens.services.shown_names import shown_name
from specimens.templatetags.names import mark_up

ANOTHER, NONE, YES, NO = "another", "none", "yes", "no"
MOST_PLANTS = 6
COLLECTING = (
    "Collecting needs the leave of whoever owns the land and, for a protected fern, of the authority. "
    "Rules differ from place to place."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question: the field `key` answers it. With `only_if` (a key, its answer) it is idle until that is given."""

    key: str
    words: str
    choices: tuple[tuple[str, str], ...]
    reasons: tuple[str, ...] = ()
    as_list: bool = False
    only_if: tuple[str, str] | None = None

    def is_idle(self, answers: dict[str, str]) -> bool:
        return self.only_if is not None and answers.get(self.only_if[0]) != self.only_if[1]


def questions_about(plan: Plan, *, answers: dict[str, str], reader: User) -> list[Question]:
    """All that is to be asked about one plant, given the answers so far."""
    asked = [question for what, read in plan.reads for question in about_name(plan.number, what, read)]
    likely = names_likely(plan, answers)
    return [
        *asked,
        *raised_from_spores(plan),
        *which_parent(plan, likely, reader),
        *logged_already(plan, likely),
        *made_a_pup(plan, likely),
    ]


def about_name(place: int, what: str, read: TagRead) -> Iterable[Question]:
    """Which name is meant by the tag, or by what is thought, of the card at this place; which genus a new one is of."""
    means, genus = key_of(place, f"{what}_means"), key_of(place, f"{what}_genus")
    if read.lookalikes:
        yield Question(
            key=means,
            words=f"Did you mean {or_words(read.lookalikes)}?",
            choices=(
                *((str(like.name.pk), use_words(like)) for like in read.lookalikes),
                (MINE, f"No, keep “{read.text[:80]}” as a name of its own"),
            ),
            reasons=tuple(reason_words(like, alone=len(read.lookalikes) == 1) for like in read.lookalikes),
        )
    if read.needs_genus:
        yield Question(
            key=genus,
            words=f"Which genus is “{read.text[:80]}”?",
            choices=(("", "choose"), (NOT_KNOWN_GENUS, "not known"), *genera()),
            as_list=True,
            only_if=(means, MINE) if read.lookalikes else None,
        )


def or_words(lookalikes: Iterable[Lookalike]) -> str:
    return " or ".join(short_written(like.name) for like in lookalikes)


def short_written(name: Name) -> str:
    return f"‘{name.epithet}’" if name.is_cultivar else name.written


def use_words(like: Lookalike) -> str:
    return format_html("Yes, it is {}", mark_up(like.name.runs()))


def reason_words(like: Lookalike, *, alone: bool) -> str:
    which = () if alone else (f"{short_written(like.name)}:",)
    return " ".join((*which, like.grown_by, *like.reasons))


def genera() -> Iterable[tuple[str, str]]:
    named = Name.objects.standing().filter(rank__in=[Rank.GENUS, Rank.NOTHOGENUS]).exclude(epithet=NOT_PLACED)
    return ((name.epithet, name.written) for name in named.in_reading_order())


def raised_from_spores(plan: Plan) -> Iterable[Question]:
    """A tag that says “ex” on a plant of which something else was said, or nothing."""
    if plan.tag.is_of_spores and plan.came in (Came.OUTSIDE, Came.NOT_KNOWN):
        yield Question(
            key=plan.key("ex"),
            words="The tag says “ex”: was it raised from spores of what the tag names?",
            choices=((YES, "Yes, log it as from spores"), (NO, "No, or I don’t know")),
        )


def which_parent(plan: Plan, likely: list[Name], reader: User) -> Iterable[Question]:
    """A piece of whose parent only words are known: the giver's plants it may have been taken from."""
    if plan.came != Came.PIECE or plan.parent is not None:
        return
    found = list(may_be_parents(plan, likely, reader))
    if found:
        others = plan.typed["parent_words"] or "another plant, or I don’t know"
        yield Question(
            key=plan.key("parent"),
            words="Was it taken from one of these?",
            choices=(*((plant.code, plant_words(plant)) for plant in found), (NONE, f"No: {others}")),
        )


def may_be_parents(plan: Plan, likely: list[Name], reader: User) -> Iterable[Specimen]:
    typed = plan.typed
    keeper = typed["from_keeper"] or (None if typed["from_words"] else plan.keeper)
    if keeper is None:
        return []
    plants = Specimen.objects.visible_to(reader).standing().kept_by(frozenset([keeper.pk])).with_page_parts()
    meant = Q(pk__in=plants.filter(under(likely)).values("pk"))
    if typed["parent_words"]:
        meant |= Q(pk__in=plants_matching(plants, typed["parent_words"], reader=reader).values("pk"))
    return plants.filter(meant).newest_first()[:MOST_PLANTS]


def under(names: list[Name]) -> Q:
    """Thought to be one of these names, or another name of the same."""
    ids = {pk for name in names for pk in (name.pk, name.accepted_id) if pk}
    return Q(identification__name__in=ids) | Q(identification__name__accepted__in=ids)


def plant_words(plant: Specimen) -> str:
    return format_html("{} {}", plant.code, mark_up(shown_name(plant).runs))


def logged_already(plan: Plan, likely: list[Name]) -> Iterable[Question]:
    """“You have a piece of this already”: of the same cultivar, or of the same parent."""
    if plan.came in (Came.SOWING, Came.WILD) or plan.tag.is_of_spores:
        return
    clones = [name for name in likely if name.is_cultivar and name.reproduction != Reproduction.SPORES]
    same = under(clones)
    if plan.parent is not None:
        same |= Q(division__parent=plan.parent)
    kept = Specimen.objects.standing().growing().kept_by(frozenset([plan.keeper.pk])).with_page_parts()
    found = list(kept.filter(same).newest_first()[:MOST_PLANTS])
    if plan.parent is not None:
        found = [plant for plant in found if plant.pk != plan.parent.pk]
    if found:
        yield Question(
            key=plan.key("twice"),
            words="A piece of this is on record with this keeper already. Is this another one?",
            choices=(
                (ANOTHER, "Yes, another piece: log it"),
                *(
                    (plant.code, format_html("No, it is {}: do not log it again", plant_words(plant)))
                    for plant in found
                ),
            ),
        )


def made_a_pup(plan: Plan, likely: list[Name]) -> Iterable[Question]:
    """A pup of a fern that makes none by nature."""
    if plan.came != Came.PIECE or plan.typed["kind"] != Division.Kind.PUP:
        return
    thought = plan.parent.identification if plan.parent else None
    names = [thought.name] if thought and thought.name else likely
    ids = {pk for name in names for pk in (name.pk, name.parent_id, name.accepted_id) if pk}
    if Name.objects.filter(pk__in=ids, solitary=True).exists():
        yield Question(
            key=plan.key("pup"),
            words="This fern makes no pups by nature, or very rarely. Did it make one?",
            choices=((YES, "Yes, it made one"), (NO, "I am not sure: log that how it came is not known")),
        )


def notes_about(plan: Plan) -> list[str]:
    """What is said, not asked: a name that is another one today, what is left out, a caution."""
    typed = plan.typed
    notes = [note for _, read in plan.reads for note in notes_about_name(read)]
    if typed["parent_words"] and plan.came != Came.PIECE:
        notes.append(f"“{typed['parent_words']}” is left out: it was not taken from a plant.")
    if typed["spores_of"] and plan.came != Came.SOWING:
        notes.append(f"“{typed['spores_of']}” is left out: it did not come from spores.")
    return [*notes, COLLECTING] if plan.came == Came.WILD else notes


def notes_about_name(read: TagRead) -> list[str]:
    """That a name is another one today, if it is."""
    moved = read.moved_to
    return [f"{read.match.name} is now {moved}: we keep what the tag says."] if moved else []
