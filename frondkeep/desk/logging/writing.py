"""Writing the plants of one form, all of them or none; and rehearsing it, to say beforehand what would be kept."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from django.db import transaction

from frondkeep.desk.finding import visible_ids
from frondkeep.desk.logging.plans import MINE, NOT_KNOWN_GENUS, Plan
from frondkeep.desk.logging.questions import ANOTHER, NO, NONE, YES
from frondkeep.desk.logging.tags import TagRead
from frondkeep.desk.logging.waiting_photos import PhotoGoneError, forget, waiting_photo
from frondkeep.desk.plant_facts import facts_of, origin_ids
from frondkeep.society.models import Meeting, User
from lineage.services.descent import DescentError
from specimens.models import Came, Identification, Name, Reproduction, Specimen
from specimens.naming.dates import PartialDate
from specimens.naming.sentences import plant_sentence
from specimens.services.handover_claims import claim_piece
from specimens.services.identifications import identify
from specimens.services.photos import add_photo
from specimens.services.reading import KnownNames, name_for_label
from specimens.services.sowings import Source, record_sowing
from specimens.services.specimens import PieceOf, log_specimen

TO_BE_CHOSEN = "a plant still to be chosen"


class CardRefusedError(ValueError):
    """One of the plants cannot be written: which, at which field, and why."""

    def __init__(self, number: int, field: str, words: str) -> None:
        super().__init__(words)
        self.number, self.field = number, field


@dataclass(frozen=True, slots=True, kw_only=True)
class Log:
    """A whole form, ready to be written; `still_open` are keys of questions not answered yet, in a rehearsal."""

    plans: tuple[Plan, ...]
    answers: dict[str, str]
    meeting: Meeting | None
    acquired: PartialDate
    by: User
    known: KnownNames
    still_open: frozenset[str] = frozenset()


def write_plants(log: Log, *, photos: bool = True) -> list[Specimen]:
    """The plants of a form, in its order; one said to be on record already is that one. Needs a transaction.

    Raises CardRefusedError for a plant that would descend from itself, and for a photo that is gone.
    """
    # Names made while writing are known to the cards that follow, and forgotten if all is undone.
    known = KnownNames(log.known.vocabulary, {key: list(names) for key, names in log.known.by_key.items()})
    return [write_plant(plan, log, known, photos=photos) for plan in log.plans]


def write_plant(plan: Plan, log: Log, known: KnownNames, *, photos: bool) -> Specimen:
    twice = log.answers.get(plan.key("twice"), ANOTHER) or ANOTHER
    if twice != ANOTHER:
        return Specimen.objects.visible_to(log.by).with_page_parts().get(code=twice)
    try:
        plant = log_plant(plan, log, known)
    except DescentError as problem:
        field = "parent_text" if plan.came == Came.PIECE else "spores_of"
        raise CardRefusedError(plan.number, field, str(problem)) from problem
    claim_piece(plant, by=log.by)
    if photos and plan.typed["photo_kept"]:
        write_photo(plant, plan, log.by)
    return plant


def log_plant(plan: Plan, log: Log, known: KnownNames) -> Specimen:
    typed = plan.typed
    named, qualifier = name_meant(plan, "tag", plan.tag, log, known)
    # A plant raised from spores of a clone never bears its name; where its sowing is not recorded, its genus.
    name = named.genus if named and plan.tag.is_of_spores and not from_spores(plan, log) else named
    plant = log_specimen(
        keeper=plan.keeper,
        by=log.by,
        label_text=typed["label_text"],
        name=name,
        qualifier=qualifier,
        acquired=log.acquired,
        meeting=log.meeting,
        from_keeper=typed["from_keeper"],
        from_words=typed["from_words"],
        own_number=typed["own_number"],
        seen_by=typed["seen_by"],
        holds=typed["holds"],
        notes=typed["notes"],
        **origin(plan, name, log),
    )
    if plan.think is not None:
        thought, doubt = name_meant(plan, "think", plan.think, log, known)
        if thought is not None and thought != name:
            looks = Identification.Ground.LOOKS
            identify(plant, name=thought, qualifier=doubt, by=log.by, ground=looks, on=log.acquired)
    return plant


def name_meant(plan: Plan, what: str, read: TagRead, log: Log, known: KnownNames) -> tuple[Name | None, str]:
    """The name a tag means, by the answers given, and its doubt; no name while a question about it is open."""
    means = log.answers.get(plan.key(f"{what}_means"), "")
    chosen = read.named(means)
    if chosen is not None:
        return chosen, read.match.qualifier
    if read.lookalikes and means != MINE:
        return None, ""
    genus = log.answers.get(plan.key(f"{what}_genus"), "")
    if read.needs_genus and not genus:
        return None, ""
    return name_for_label(read.text, by=log.by, known=known, genus="" if genus == NOT_KNOWN_GENUS else genus)


def from_spores(plan: Plan, log: Log) -> bool:
    return plan.came == Came.SOWING or log.answers.get(plan.key("ex")) == YES


def origin(plan: Plan, name: Name | None, log: Log) -> dict[str, Any]:
    """How it came, with the link that belongs to it, for `log_specimen`."""
    if plan.came == Came.PIECE:
        if log.answers.get(plan.key("pup")) == NO:
            return {"came": Came.NOT_KNOWN}
        return {"came": Came.PIECE, "piece_of": piece_of(plan, log)}
    if from_spores(plan, log):
        return {"came": Came.SOWING, "sowing": plan.typed["sowing"] or new_sowing(plan, name)}
    return {"came": plan.came}


def piece_of(plan: Plan, log: Log) -> PieceOf:
    typed = plan.typed
    parent, words = plan.parent, typed["parent_words"]
    if plan.key("parent") in log.still_open:
        words = TO_BE_CHOSEN
    answer = log.answers.get(plan.key("parent"), "")
    if answer and answer != NONE:
        parent, words = Specimen.objects.visible_to(log.by).get(code=answer), ""
    # Whoever takes a piece of their own plant cut it; who cut a piece that was given is not known.
    own = parent is not None and parent.keeper == plan.keeper and typed["from_keeper"] is None
    return PieceOf(
        parent=parent, words=words, kind=typed["kind"], by=getattr(log.by, "member", None) if own else None
    )


def new_sowing(plan: Plan, name: Name | None) -> Any:
    sources = plan.typed["sources"] or (by_the_tag(plan.tag, name) if name else ())
    return record_sowing(sources=sources, label=plan.typed["label_text"][:200])


def by_the_tag(tag: TagRead, name: Name) -> tuple[Source, ...]:
    """Whose spores, by the tag alone: “ex ‘Silver Tassel’”, or a cultivar that is kept by division only."""
    clonal = name.is_cultivar and name.reproduction == Reproduction.DIVISION
    return (Source(name=name),) if clonal or (tag.is_of_spores and name.is_cultivar) else ()


def write_photo(plant: Specimen, plan: Plan, by: User) -> None:
    ticket = plan.typed["photo_kept"]
    try:
        photo = waiting_photo(ticket, user=by)
    except PhotoGoneError as problem:
        words = "The photo you chose is not kept any longer. Choose it once more."
        raise CardRefusedError(plan.number, "photo", words) from problem
    add_photo(plant, photo, by=by, taken_by=getattr(by, "member", None))
    transaction.on_commit(lambda: forget(ticket, user=by))


def rehearse(log: Log) -> list[str]:
    """The sentence of each plant as it would be kept; everything is written and undone again.

    So the page before saving says what the page after saving says. Raises CardRefusedError.
    """
    with transaction.atomic():
        sentences = sentences_of(write_plants(log, photos=False), reader=log.by)
        transaction.set_rollback(True)
    return sentences


def sentences_of(plants: Iterable[Specimen], *, reader: User) -> list[str]:
    """Each plant's sentence without its code; three queries and the plants' page parts."""
    ids = [plant.pk for plant in plants]
    by_id = Specimen.objects.with_page_parts().prefetch_related("sowing__sources__name").in_bulk(ids)
    fresh = [by_id[pk] for pk in ids]
    visible = visible_ids(reader, (pk for plant in fresh for pk in origin_ids(plant)))
    return [
        plant_sentence(facts_of(plant, reader=reader, visible=visible, with_code=False)) for plant in fresh
    ]
