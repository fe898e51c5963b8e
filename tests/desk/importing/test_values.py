"""Words of cells become values; what is not understood is never guessed."""

import pytest

from frondkeep.desk.importing.values import How, read_holds, read_how, read_office, read_yes


@pytest.mark.parametrize(
    ("words", "how"),
    [
        ("pup", How("piece", "pup")),
        ("Offset", How("piece", "pup")),
        ("rhizome piece", How("piece", "rhizome")),
        ("crown division", How("piece", "crown")),
        ("division", How("piece", "not known")),
        ("sport", How("piece", "not known", sport=True)),
        ("pup (sport)", How("piece", "pup", sport=True)),
        ("from spores", How("sowing")),
        ("sporeling", How("sowing")),
        ("swap", How("outside")),
        ("raffle", How("outside")),
        ("collected wild", How("wild")),
        ("don't know", How("not known")),
        ("don’t know", How("not known")),
        ("?", How("not known")),
        ("", How("not known")),
    ],
)
def test_how_it_came(words: str, how: How) -> None:
    assert read_how(words) == how


def test_a_word_for_how_it_came_that_we_do_not_know_is_no_guess() -> None:
    assert read_how("fell from the sky") is None


@pytest.mark.parametrize(
    ("words", "holds"),
    [
        ("", "one"),
        ("1", "one"),
        ("several in one pot", "several"),
        ("6 seedlings", "several"),
        ("pot of 5 seedlings", "several"),
        ("several kinds", "kinds"),
        ("?", "not known"),
    ],
)
def test_what_the_pot_holds(words: str, holds: str) -> None:
    assert read_holds(words) == holds


def test_yes_and_no() -> None:
    assert [read_yes(words) for words in ("Yes", "x", "", "no", "perhaps")] == [
        True,
        True,
        False,
        False,
        None,
    ]


def test_offices_are_read_by_their_words_on_screen() -> None:
    assert read_office("curator and show committee") == ["curator", "committee"]
    assert read_office("") == []
    assert read_office("treasurer") is None
