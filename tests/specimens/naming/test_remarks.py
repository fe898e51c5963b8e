"""Remarks on an epithet help and never scold."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specimens.naming.remarks import remarks, tidy_epithet


@pytest.mark.parametrize(
    ("written", "offered"),
    [
        ("silver tassel", "Silver Tassel"),
        ("SILVER TASSEL", "Silver Tassel"),
        ("‘Silver Tassel’", "Silver Tassel"),
        ("'silver tassel'", "Silver Tassel"),
        ('"Silver tassel"', "Silver Tassel"),
        ("Jack In the Green", "Jack in the Green"),
        ("of Mice and Men", "Of Mice and Men"),
        ("élan vital", "Élan Vital"),
    ],
)
def test_the_tidied_form_is_offered(written: str, offered: str) -> None:
    offers = {remark.offer for remark in remarks(written, year_named=None)}
    assert offers == {offered}


@pytest.mark.parametrize(
    "epithet",
    ["McKay", "Lady’s Lace", "DT Moore", "NSW", "Queen of the Night", "Mère de Ménage", "Mountain-ash"],
)
def test_a_well_written_epithet_is_left_alone(epithet: str) -> None:
    assert remarks(epithet, year_named=2001, genus="Platycerium") == ()


def test_several_remarks_can_stand_together() -> None:
    said = [remark.key for remark in remarks('"best staghorn form"', year_named=1970, genus="Platycerium")]
    assert said == ["quotes", "capitals", "banned word", "exaggeration", "genus"]


def test_a_name_in_use_is_pointed_at() -> None:
    (same,) = remarks("Silver Tassel", year_named=None, known=["Silver Tassel", "Golden Tassel"])
    (alike,) = remarks("Silver Tassel", year_named=None, known=["Silver-tassel"])
    assert same.words == "There is a ‘Silver Tassel’ in this genus already."
    assert "‘Silver-tassel’" in alike.words


def test_what_was_sown_or_bred_by_name_is_not_bound_without_a_year() -> None:
    assert remarks("Improved Hybrid Form", year_named=None) == ()


def test_no_article_number_is_ever_shown() -> None:
    every = remarks(
        '"best staghorn improved form gracillimum and a lot more than this"',
        year_named=2000,
        genus="Platycerium",
    )
    assert len(every) >= 6
    assert not any(re.search(r"Art\.|\d+\.\d+", remark.words) for remark in every)


@settings(deadline=None)
@given(st.text(max_size=40))
def test_tidying_twice_is_tidying_once(text: str) -> None:
    once = tidy_epithet(text)
    assert tidy_epithet(once) == once


@settings(deadline=None)
@given(st.text(max_size=40), st.none() | st.integers(1700, 2030))
def test_a_tidied_epithet_has_nothing_left_to_tidy(text: str, year: int | None) -> None:
    said = remarks(tidy_epithet(text), year_named=year, known=["Silver Tassel"])
    assert not {remark.key for remark in said} & {"quotes", "capitals"}
    assert all(remark.words.endswith(".") for remark in said)
