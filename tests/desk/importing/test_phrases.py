"""Words about descent, as growers write them."""

import pytest

from frondkeep.desk.importing.phrases import (
    Descent,
    is_raised_from,
    read_descent,
    read_own_sowing,
    split_sources,
    turned_doubt,
    without_brackets,
)


@pytest.mark.parametrize(
    ("words", "descent"),
    [
        ("willinckii x bifurcatum", Descent("cross", ("willinckii", "bifurcatum"))),
        ("P. veitchii × P. willinckii", Descent("cross", ("P. veitchii", "P. willinckii"))),
        ("'Cold Tea' x hillii", Descent("cross", ("'Cold Tea'", "hillii"))),
        ("sport of 'Ballroom Curtain'", Descent("sport", ("'Ballroom Curtain'",))),
        ("from spores of alcicorne", Descent("self", ("alcicorne",))),
        ("'Drowned Steeple' selfed", Descent("self", ("'Drowned Steeple'",))),
        ("unknown", Descent("unknown")),
        ("Oxlade farm", None),
        ("a x b x c", None),
    ],
)
def test_parents_in_words(words: str, descent: Descent | None) -> None:
    assert read_descent(words) == descent


def test_whose_sowing_it_was_is_told_apart_from_what_was_sown() -> None:
    assert read_own_sowing("own sowing, willinckii x ellisii") == (
        "own",
        Descent("cross", ("willinckii", "ellisii")),
    )
    assert read_own_sowing("the nursery's sowing, from spores of grande") == (
        "the nursery's",
        Descent("self", ("grande",)),
    )
    assert read_own_sowing("Ada's big one") is None


@pytest.mark.parametrize(
    ("words", "parts"),
    [
        ("F12", ["F12"]),
        ("F111 and F343 and F100 (Platycerium hillii)", ["F111", "F343", "F100 (Platycerium hillii)"]),
        ("F306 (Moth Lamp) + F3", ["F306 (Moth Lamp)", "F3"]),
        ("F86, F103, Platycerium 'Copper Lamplight'", ["F86", "F103", "Platycerium 'Copper Lamplight'"]),
        ("'Rag and Bone' and F3", ["'Rag and Bone'", "F3"]),
        ("'Dusty Miller's Boots', F3", ["'Dusty Miller's Boots'", "F3"]),
        ("", []),
    ],
)
def test_several_sources_are_told_apart_and_quoted_names_stay_whole(words: str, parts: list[str]) -> None:
    assert [part for _, part in split_sources(words)] == parts


def test_a_number_is_read_without_the_name_beside_it() -> None:
    assert without_brackets("F12 (Clerestory)") == "F12"


def test_a_doubt_in_front_is_a_doubt_behind() -> None:
    assert turned_doubt("? Pteris nipponica") == "Pteris nipponica ?"
    assert turned_doubt("?") == "?"


def test_ex_names_the_parent_of_a_sporeling() -> None:
    assert is_raised_from("Platycerium ex 'Cold Tea'")
    assert not is_raised_from("ex collection")
