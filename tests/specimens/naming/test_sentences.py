"""One sentence says what a record is."""

from datetime import date
from typing import Any

import pytest

from specimens.naming.dates import PartialDate, read_date
from specimens.naming.sentences import (
    HIDDEN_PLANT,
    CrossFacts,
    PlantFacts,
    SowingFacts,
    cross_sentence,
    plant_sentence,
    sowing_sentence,
)


def when(words: str) -> PartialDate:
    return read_date(words, today=date(2026, 3, 11))


SPRING_24 = when("spring 2024")
TASSEL = "Platycerium ‘Silver Tassel’"
PUP: dict[str, Any] = {
    "came": "piece",
    "piece_kind": "pup",
    "parent_code": "2019-0088-B",
    "taken_by": "a member",
}


def test_a_pup_of_a_recorded_plant() -> None:
    facts = PlantFacts(**PUP, date=SPRING_24, thought_name=TASSEL, ground="label")
    assert plant_sentence(facts) == (
        "Pup of 2019-0088-B, taken by a member in spring 2024; "
        "thought to be Platycerium ‘Silver Tassel’, from its tag."
    )


@pytest.mark.parametrize(
    ("facts", "origin"),
    [
        ({"came": "piece", "parent_hidden": True}, "Piece of a plant not shown"),
        ({"came": "piece"}, "Piece of a plant not on record"),
        (
            {"came": "piece", "piece_kind": "bulbil", "parent_words": "Aunt May’s big one"},
            "Bulbil of Aunt May’s big one",
        ),
        (
            {"came": "piece", "parent_code": "2019-0088-B", "date": SPRING_24},
            "Piece of 2019-0088-B, taken in spring 2024",
        ),
        (PUP | {"sport": True}, "Pup of 2019-0088-B, changed from it (a sport), taken by a member"),
        (
            PUP
            | {
                "taken_by": "",
                "from_whom": "Ada Frond",
                "meeting": "the March meeting",
                "date": when("12/3/2024"),
            },
            "Pup of 2019-0088-B, from Ada Frond at the March meeting on 12 March 2024",
        ),
        ({"came": "sowing", "sowing_code": "2023-0011-K"}, "From spores, sowing 2023-0011-K"),
        (
            {
                "came": "sowing",
                "sowing_code": "2023-0011-K",
                "sowing_sources": ("2019-0088-B", HIDDEN_PLANT),
                "taken_by": "a member",
                "date": when("1980s"),
            },
            "From spores of 2019-0088-B and a plant not shown, sowing 2023-0011-K, "
            "pricked out by a member in the 1980s",
        ),
        (
            {"came": "outside", "from_whom": "a nursery", "date": when("about 1998")},
            "Bought or given, from a nursery about 1998",
        ),
        ({"came": "outside"}, "Bought or given"),
        (
            {"came": "wild", "taken_by": "a member", "date": when("1978")},
            "Collected wild by a member in 1978",
        ),
        ({"came": "not known"}, "How it came is not known"),
        ({"came": "not known", "from_whom": "a member"}, "Came from a member, how is not known"),
        (
            {"came": "not known", "from_whom": "a member", "date": when("about 1998")},
            "Came from a member about 1998, how is not known",
        ),
    ],
)
def test_how_it_came(facts: dict[str, Any], origin: str) -> None:
    assert plant_sentence(PlantFacts(**facts)) == f"{origin}; not named yet."


@pytest.mark.parametrize(
    ("facts", "thought"),
    [
        ({"qualifier": "cf.", "ground": "looks"}, "probably Platycerium ‘Silver Tassel’, by its looks"),
        (
            {"qualifier": "aff.", "ground": "compared"},
            "close to Platycerium ‘Silver Tassel’, but different, compared with a known plant",
        ),
        ({"qualifier": "?"}, "thought to be Platycerium ‘Silver Tassel’, not sure"),
        ({"ground": "dna"}, "thought to be Platycerium ‘Silver Tassel’, by DNA"),
        (
            {"ground": "assumed from the name"},
            "thought to be Platycerium ‘Silver Tassel’, assumed from the name",
        ),
        ({"as_sown": True}, "thought to be Platycerium ‘Silver Tassel’, as sown — stray spores are common"),
        (
            {"not_yet_checked": True, "ground": "label"},
            "thought to be Platycerium ‘Silver Tassel’ (not yet checked), from its tag",
        ),
    ],
)
def test_what_it_is_thought_to_be(facts: dict[str, Any], thought: str) -> None:
    assert (
        plant_sentence(PlantFacts(came="outside", thought_name=TASSEL, **facts))
        == f"Bought or given; {thought}."
    )


@pytest.mark.parametrize("tag", ["Silver Tassel", "P. ‘Silver Tassel’"])
def test_a_tag_that_leaves_out_the_genus_is_not_quoted(tag: str) -> None:
    assert "tag" not in plant_sentence(PlantFacts(came="outside", thought_name=TASSEL, label_text=tag))


def test_the_tag_of_a_plant_raised_from_another_is_quoted() -> None:
    raised = PlantFacts(
        came="sowing", thought_name="Platycerium ex ‘Silver Tassel’", label_text="Silver Tassel"
    )
    assert "the tag says “Silver Tassel”" in plant_sentence(raised)


def test_a_plant_without_a_tag_is_said_to_bear_none() -> None:
    assert plant_sentence(PlantFacts(came="outside", label_text="no tag")).endswith("; it bears no tag.")


def test_the_tag_is_quoted_where_it_says_something_else() -> None:
    same = PlantFacts(came="outside", thought_name=TASSEL, label_text='platycerium "silver tassel"')
    other = PlantFacts(came="outside", thought_name=TASSEL, label_text="Silvered Tassel")
    unnamed = PlantFacts(came="outside", label_text="Silvered Tassel")
    assert "tag" not in plant_sentence(same)
    assert plant_sentence(other).endswith("; the tag says “Silvered Tassel”.")
    assert plant_sentence(unnamed) == "Bought or given; not named yet; the tag says “Silvered Tassel”."


def test_a_long_tag_is_cut_at_a_word() -> None:
    said = plant_sentence(PlantFacts(label_text="frond " * 60))
    assert said.endswith("frond …”.")
    assert len(said) < 160


@pytest.mark.parametrize(
    ("holds", "said"),
    [
        ("several", "; several plants of one sowing."),
        ("kinds", "; several kinds together."),
        ("not known", "; what it holds is not known."),
    ],
)
def test_a_pot_of_more_than_one_plant_says_so(holds: Any, said: str) -> None:
    assert plant_sentence(PlantFacts(**PUP, holds=holds)).endswith(said)


@pytest.mark.parametrize(
    ("state", "said"),
    [
        ("growing", ""),
        ("dead", " It died in 2020."),
        ("left", " It left the society in 2020."),
        ("lost", " It cannot be found."),
        ("stolen", " It was stolen in 2020."),
        ("mistake", " This was entered by mistake."),
    ],
)
def test_a_plant_that_grows_no_more_says_so(state: Any, said: str) -> None:
    assert plant_sentence(PlantFacts(**PUP, state=state, state_when=when("2020"))) == (
        f"Pup of 2019-0088-B, taken by a member; not named yet.{said}"
    )


def test_the_code_can_lead() -> None:
    assert plant_sentence(PlantFacts(**PUP, code="2026-0142-E")).startswith("2026-0142-E: pup of 2019-0088-B")


@pytest.mark.parametrize(
    ("facts", "said"),
    [
        ({"sources": ("2019-0088-B",)}, "Spores of 2019-0088-B; as sown — stray spores are common."),
        (
            {
                "sources": ("2019-0088-B", "Platycerium ridleyi", HIDDEN_PLANT),
                "sown_by": "a member",
                "date": SPRING_24,
                "pans": 3,
            },
            "Spores of 2019-0088-B, Platycerium ridleyi and a plant not shown, sown by a member in spring 2024, "
            "in 3 pans; sown together, not settled.",
        ),
        (
            {"sources": ("A", "B"), "determined": "hybrid", "packet_code": "2023-0009-Q"},
            "Spores of A and B, from packet 2023-0009-Q; found to be hybrids.",
        ),
        (
            {
                "sources": ("A",),
                "determined": "apogamous",
                "stage": "first fronds",
                "stage_when": when("June 2024"),
            },
            "Spores of A; same as its parent, though from spores; first fronds in June 2024.",
        ),
        (
            {"date": SPRING_24},
            "Spores of plants not known, sown in spring 2024; as sown — stray spores are common.",
        ),
    ],
)
def test_a_sowing(facts: dict[str, Any], said: str) -> None:
    assert sowing_sentence(SowingFacts(**facts)) == said


@pytest.mark.parametrize(
    ("facts", "said"),
    [
        ({}, "Cross of 2019-0088-B and a parent not known."),
        (
            {
                "made_by": "a member",
                "date": SPRING_24,
                "egg_parent": 0,
                "tally": (("thought to be the cross", 3), ("not", 20)),
            },
            "Cross of 2019-0088-B and a parent not known, made by a member in spring 2024; "
            "the egg parent is 2019-0088-B; what came up: 3 thought to be the cross, 20 not.",
        ),
        (
            {
                "how": "noticed",
                "made_by": "a member",
                "date": when("1990s"),
                "sowing_codes": ("2023-0011-K",),
            },
            "Cross of 2019-0088-B and a parent not known, come up by chance, noticed by a member in the 1990s, "
            "sown as 2023-0011-K.",
        ),
        (
            {"how": "reported", "date": when("1907")},
            "Cross of 2019-0088-B and a parent not known, reported in 1907.",
        ),
    ],
)
def test_a_cross(facts: dict[str, Any], said: str) -> None:
    assert cross_sentence(CrossFacts(parents=("2019-0088-B", ""), **facts)) == said
