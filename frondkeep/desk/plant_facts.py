"""What the one sentence about a plant may say to this reader; what they may not see is left out here."""

from __future__ import annotations

from frondkeep.desk.finding import visible_ids
from frondkeep.desk.people import keeper_words, member_words
from frondkeep.society.models import User
from specimens.models import Came, Division, Holds, Identification, Specimen, SporeSowing
from specimens.naming.names import plain
from specimens.naming.sentences import HIDDEN_PLANT, PlantFacts, plant_sentence
from specimens.services.shown_names import is_raised_from

CAME_WORDS = {Came.NOT_KNOWN: "unknown"}
HOLDS_WORDS = {Holds.KINDS: "mixed", Holds.NOT_KNOWN: "unknown"}


def sentence_about(plant: Specimen, reader: User) -> str:
    """The sentence about a plant as this reader may read it."""
    visible = visible_ids(reader, [parent_id(plant)])
    return plant_sentence(facts_of(plant, reader=reader, visible=visible))


def facts_of(plant: Specimen, *, reader: User, visible: frozenset[int]) -> PlantFacts:
    """The facts for `plant_sentence`. `visible` holds the parent's id if the reader may see the parent."""
    return PlantFacts(
        code=plant.code,
        came=CAME_WORDS.get(plant.came, plant.came),
        sowing_code=plant.sowing.code if plant.sowing else "",
        from_whom=giver_words(plant, reader),
        meeting=str(plant.meeting or ""),
        date=plant.acquired,
        label_text=plant.label_text,
        holds=HOLDS_WORDS.get(plant.holds, plant.holds),
        state=plant.state,
        state_when=plant.ended,
        **piece_facts(plant.division, reader, visible),
        **thought_facts(plant),
    )


def piece_facts(division: Division | None, reader: User, visible: frozenset[int]) -> dict[str, object]:
    if division is None:
        return {}
    shown = division.parent_id in visible
    return {
        "piece_kind": "" if division.kind == Division.Kind.NOT_KNOWN else division.get_kind_display(),
        "parent_code": division.parent.code if division.parent and shown else "",
        "parent_hidden": division.parent_id is not None and not shown,
        "parent_words": division.parent_words,
        "taken_by": member_words(division.by, reader),
    }


def thought_facts(plant: Specimen) -> dict[str, object]:
    thought = plant.identification
    if thought is None or thought.name is None:
        return {}
    accepted = thought.name.accepted or thought.name
    return {
        "thought_name": plain(accepted.runs(raised_from=is_raised_from(plant, accepted))),
        "qualifier": thought.qualifier,
        "ground": ground_of(thought, plant.sowing),
        "not_yet_checked": not accepted.checked,
    }


def ground_of(thought: Identification, sowing: SporeSowing | None) -> str:
    """A tag on a sporeling says what was sown, not what came up."""
    as_sown = sowing is not None and sowing.determined == SporeSowing.Determined.AS_SOWN
    return "as sown" if as_sown and thought.ground == Identification.Ground.LABEL else thought.ground


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
