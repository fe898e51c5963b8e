"""What the one sentence about a plant may say to this reader; what they may not see is left out here."""

from __future__ import annotations

from django.db.models import prefetch_related_objects

from frondkeep.desk.finding import visible_ids
from frondkeep.desk.people import keeper_words, member_words
from frondkeep.society.models import User
from specimens.models import Came, Division, Specimen, SporeSource, SporeSowing
from specimens.naming.names import plain
from specimens.naming.sentences import HIDDEN_PLANT, PlantFacts, plant_sentence
from specimens.services.shown_names import is_raised_from


def sentence_about(plant: Specimen, reader: User) -> str:
    """The sentence about a plant as this reader may read it; two queries beside the plant's page parts."""
    prefetch_related_objects([plant], "sowing__sources__name")
    visible = visible_ids(reader, origin_ids(plant))
    return plant_sentence(facts_of(plant, reader=reader, visible=visible))


def facts_of(plant: Specimen, *, reader: User, visible: frozenset[int], with_code: bool = True) -> PlantFacts:
    """The facts for `plant_sentence`. `visible` holds those of `origin_ids` that the reader may see."""
    return PlantFacts(
        code=plant.code if with_code else "",
        came=plant.came,
        from_whom=giver_words(plant, reader),
        meeting=str(plant.meeting or ""),
        date=plant.acquired,
        label_text=plant.label_text,
        holds=plant.holds,
        state=plant.state,
        state_when=plant.ended,
        **piece_facts(plant.division, reader, visible),
        **sowing_facts(plant.sowing, visible),
        **thought_facts(plant),
    )


def origin_ids(plant: Specimen) -> list[int | None]:
    """Ids of the plants on record that it came from: its parent, or whose spores were sown."""
    sources = plant.sowing.sources.all() if plant.sowing else ()
    return [parent_id(plant), *(source.specimen_id for source in sources)]


def piece_facts(division: Division | None, reader: User, visible: frozenset[int]) -> dict[str, object]:
    if division is None:
        return {}
    shown = division.parent_id in visible
    return {
        "piece_kind": "" if division.kind == Division.Kind.NOT_KNOWN else division.get_kind_display(),
        "parent_code": division.parent.code if division.parent and shown else "",
        "parent_hidden": division.parent_id is not None and not shown,
        "parent_words": division.parent_words,
        "sport": division.sport,
        "taken_by": member_words(division.by, reader),
    }


def sowing_facts(sowing: SporeSowing | None, visible: frozenset[int]) -> dict[str, object]:
    if sowing is None:
        return {}
    return {
        "sowing_code": sowing.code,
        "sowing_sources": tuple(source_words(source, visible) for source in sowing.sources.all()),
        "as_sown": sowing.determined == SporeSowing.Determined.AS_SOWN,
    }


def source_words(source: SporeSource, visible: frozenset[int]) -> str:
    if source.specimen is not None:
        return source.specimen.code if source.specimen_id in visible else HIDDEN_PLANT
    return source.name.written if source.name else source.words or "a plant not known"


def thought_facts(plant: Specimen) -> dict[str, object]:
    thought = plant.identification
    if thought is None or thought.name is None:
        return {}
    accepted = thought.name.accepted or thought.name
    return {
        "thought_name": plain(accepted.runs(raised_from=is_raised_from(plant, accepted))),
        "qualifier": thought.qualifier,
        "ground": thought.ground,
        "not_yet_checked": not accepted.checked,
    }


def giver_words(plant: Specimen, reader: User) -> str:
    """From whom it came. Words may name somebody who does not wish to be named: they are the keeper's to read."""
    if plant.from_keeper is not None:
        return keeper_words(plant.from_keeper, reader)
    keeper = plant.keeper
    may_read = reader.is_curator or (keeper is not None and reader.acts_for(keeper))
    return plant.from_words if may_read else ""


def parent_id(plant: Specimen) -> int | None:
    return plant.division.parent_id if plant.division else None


def origin_line(plant: Specimen, *, visible: frozenset[int]) -> str:
    """How a plant came, in a few words for a card: “pup of 2014-0012-R”."""
    division = plant.division
    if division is not None:
        return f"{division.get_kind_display()} of {parent_words(division, visible)}"
    if plant.sowing is not None:
        return f"from spores, sowing {plant.sowing.code}"
    return "" if plant.came == Came.NOT_KNOWN else plant.get_came_display()


def parent_words(division: Division, visible: frozenset[int]) -> str:
    if division.parent is None:
        return division.parent_words or "a plant not known"
    return division.parent.code if division.parent_id in visible else HIDDEN_PLANT
