"""What each clue says of two names: its level, and a sentence without jargon."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from lineage.core.lookalikes import NOT_KNOWN, Weights
from lineage.services import witnesses
from lineage.services.clue_records import NameClues, Parent, Trait, texts_of
from lineage.services.clue_words import bars, in_few_words, silent
from lineage.services.witnesses import (
    clone,
    keepers,
    parents,
    pictures,
    raiser,
    traits,
    weigh_pair,
    years_apart,
)

HILLII, VEITCHII = Parent(None, 1, "P. hillii"), Parent(None, 2, "P. veitchii")
COLD_TEA, CLERESTORY = Parent(70, None, "‘Cold Tea’"), Parent(71, None, "‘Clerestory’")
OPEN = (None, None)


def says(level: str, sentence: str) -> witnesses.Testimony:
    return witnesses.Testimony(level, sentence)


def named(pk: int, text: str, **more: object) -> NameClues:
    return replace(NameClues(pk, (text,), "Platycerium", "", OPEN), **more)


def raised(by: str, earliest: int | None = None, latest: int | None = None) -> NameClues:
    span = OPEN if earliest is None else (date(earliest, 1, 1), date(latest or earliest, 12, 31))
    return NameClues(1, ("A",), "Platycerium", by, span)


def test_pieces_of_one_plant_under_both_names_speak_for_one() -> None:
    said = clone({4: "2019-0001-A", 5: "2020-0007-B"}, {5: "2024-0011-C"})
    assert said == says(
        "one clone", "Pieces of one plant are recorded under both names: 2020-0007-B and 2024-0011-C."
    )


def test_plants_of_different_clone_lines_say_nothing() -> None:
    assert clone({4: "2019-0001-A"}, {5: "2024-0011-C"}).level == NOT_KNOWN


@pytest.mark.parametrize(
    ("first", "second", "level"),
    [
        ((COLD_TEA, HILLII), (COLD_TEA, HILLII), "same two"),
        ((COLD_TEA, CLERESTORY), (CLERESTORY, COLD_TEA), "same two"),
        ((COLD_TEA,), (COLD_TEA,), "same two"),
        ((HILLII, VEITCHII), (HILLII, VEITCHII), "same kinds"),
        ((COLD_TEA, HILLII), (COLD_TEA, VEITCHII), "share one"),
        ((COLD_TEA, HILLII), (COLD_TEA,), "share one"),
        ((COLD_TEA, HILLII), (CLERESTORY, VEITCHII), "none shared"),
        ((COLD_TEA, HILLII), None, NOT_KNOWN),
        ((COLD_TEA, Parent(None, None, "a plant not known")), (COLD_TEA, HILLII), NOT_KNOWN),
    ],
)
def test_parents_count_where_they_are_one_plant(first, second, level) -> None:
    assert parents(first, second).level == level
    assert parents(second, first).level == level


def test_one_formula_is_only_a_resemblance() -> None:
    assert parents((HILLII, VEITCHII), (HILLII, VEITCHII)).sentence.endswith("so did many plants.")


def test_a_recorded_plant_of_a_species_may_be_the_one_a_book_calls_by_the_species() -> None:
    plant = Parent(90, 1, "2019-0001-A")
    assert parents((plant, COLD_TEA), (HILLII, COLD_TEA)).level == "same two"
    assert parents((plant, COLD_TEA), (Parent(91, 1, "2019-0002-B"), COLD_TEA)).level == "share one"


@pytest.mark.parametrize(
    ("first", "second", "level"),
    [
        (raised("Ada Thornwick", 1998), raised("A. Thornwick", 2000), "same raiser, near years"),
        (raised("Ada Thornwick", 1980), raised("Ada Thornwick", 2000), "same raiser"),
        (raised("Ada Thornwick"), raised("Ada Thornwick", 2000), "same raiser"),
        (raised("Ada Thornwick"), raised("Hollis Thornwick"), "different raisers"),
        (raised("Ada Thornwick"), raised(""), NOT_KNOWN),
    ],
)
def test_one_raiser_within_three_years(first, second, level) -> None:
    assert raiser(first, second).level == level


def test_years_apart_are_counted_between_the_nearest_ends() -> None:
    decade = (date(1990, 1, 1), date(1999, 12, 31))
    assert years_apart(decade, (date(1995, 1, 1), date(1995, 12, 31))) == 0
    assert years_apart(decade, (date(2003, 1, 1), date(2003, 12, 31))) == pytest.approx(3, abs=0.01)
    assert years_apart(decade, (date(2003, 1, 1), None)) is None


def trait(*states: str, stable: bool = True) -> Trait:
    return Trait("Shield fronds", stable, states)


@pytest.mark.parametrize(
    ("first", "second", "level"),
    [
        ({"a": trait("ball")}, {"a": trait("ball", "basket")}, "agree"),
        ({"a": trait("ball")}, {"a": trait("basket")}, "stable conflict"),
        ({"a": trait("few", stable=False)}, {"a": trait("many", stable=False)}, "conflict"),
        (
            {"a": trait("few", stable=False), "b": trait("ball"), "c": trait("x")},
            {"a": trait("many", stable=False), "b": trait("ball"), "c": trait("x")},
            "mostly agree",
        ),
        ({"a": trait("ball")}, {"b": trait("ball")}, NOT_KNOWN),
    ],
)
def test_a_lasting_trait_that_differs_weighs_most(first, second, level) -> None:
    assert traits(first, second).level == level


def test_what_differs_is_told() -> None:
    said = traits({"a": trait("ball")}, {"a": trait("basket")}).sentence
    assert said == "They differ in shield fronds: ball here, basket there."


def test_one_picture_under_both_names() -> None:
    assert pictures({"00ff": "2019-0001-A"}, {"00ff": "2020-0002-B"}).level == "one picture"
    assert pictures({"00ff": "2019-0001-A"}, {"11ff": "2020-0002-B"}).level == "none"
    assert pictures({}, {"11ff": "2020-0002-B"}).level == NOT_KNOWN


def test_whoever_grows_both_is_not_named_in_what_is_stored() -> None:
    assert keepers({3, 4}, {4}) == says("grown as two", "Somebody grows both and holds them for two plants.")
    assert keepers({3}, {4}).level == NOT_KNOWN


def test_a_pair_is_weighed_alike_either_way_round() -> None:
    one = named(8, "Platycerium ‘Silver Tassel’", raiser="T. Okoro", parents=(COLD_TEA, HILLII))
    other = named(3, "Platycerium ‘Silvered Tassel’", raiser="Tove Okoro", parents=(COLD_TEA, HILLII))
    found = weigh_pair(one, other, Weights.default())
    assert found == weigh_pair(other, one, Weights.default())
    assert (found.first, found.second) == (3, 8)
    assert found.probability > 0.9
    assert [abs(each["bits"]) for each in found.summands] == sorted(
        (abs(each["bits"]) for each in found.summands), reverse=True
    )


def test_a_group_written_before_the_name_is_seen_through() -> None:
    texts = texts_of("Polypodium (Plumosum Group) ‘Fogbank’", "Fogbank", "Plumosum", "Polypodium")
    one = NameClues(1, texts, "Polypodium", "", OPEN)
    other = NameClues(2, ("Polypodium ‘Plumosum Fogbank’",), "Polypodium", "", OPEN)
    found = weigh_pair(one, other, Weights.default())
    assert found.levels["spelling"] == "near"
    assert "Group" in found.summands[0]["sentence"]


def test_bars_are_the_longest_first_and_what_is_silent_is_apart() -> None:
    one, other = named(1, "Platycerium ‘Silver Tassel’"), named(2, "Platycerium ‘Silvered Tassel’")
    one.lines[5], other.lines[5] = "2019-0001-A", "2020-0002-B"
    one.growers.add(3)
    other.growers.add(3)
    summands = weigh_pair(one, other, Weights.default()).summands
    drawn = bars(summands)
    assert [bar.length for bar in drawn] == sorted((bar.length for bar in drawn), reverse=True)
    assert [(bar.side, bar.strength) for bar in drawn][-1] == ("against", "weak")
    assert len(drawn) + len(silent(summands)) == len(Weights.default().witnesses)
    assert in_few_words(summands).endswith("but somebody grows both")
