"""Hybrid formulas name the parents in order."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specimens.naming.names import NameParts, formula_runs, plain_formula

ANDINUM = NameParts("Platycerium", species="andinum")
RIDLEYI = NameParts("Platycerium", species="ridleyi")
TASSEL = NameParts("Platycerium", cultivar="Silver Tassel")
POLYPODIUM = NameParts("Polypodium", species="vulgare")


def test_parents_stand_in_alphabetical_order_whatever_was_given() -> None:
    assert (
        plain_formula([RIDLEYI, ANDINUM])
        == plain_formula([ANDINUM, RIDLEYI])
        == "Platycerium andinum × P. ridleyi"
    )


def test_a_given_order_is_kept() -> None:
    assert plain_formula([RIDLEYI, ANDINUM], order="given") == "Platycerium ridleyi × P. andinum"


def test_the_egg_parent_is_marked_wherever_it_stands() -> None:
    assert plain_formula([RIDLEYI, ANDINUM], egg_parent=0) == "Platycerium andinum ♂ × P. ridleyi ♀"
    assert (
        plain_formula([RIDLEYI, ANDINUM], egg_parent=0, order="given")
        == "Platycerium ridleyi ♀ × P. andinum ♂"
    )


def test_of_three_parents_only_the_egg_parent_is_marked() -> None:
    assert plain_formula([ANDINUM, RIDLEYI, TASSEL], egg_parent=1).count("♀") == 1
    assert "♂" not in plain_formula([ANDINUM, RIDLEYI, TASSEL], egg_parent=1)


def test_a_cultivar_is_a_parent_like_any_other() -> None:
    assert plain_formula([RIDLEYI, TASSEL]) == "Platycerium ‘Silver Tassel’ × P. ridleyi"


def test_genera_with_one_initial_are_both_spelled_out() -> None:
    assert plain_formula([POLYPODIUM, ANDINUM]) == "Platycerium andinum × Polypodium vulgare"
    assert plain_formula([POLYPODIUM, ANDINUM, RIDLEYI]) == (
        "Platycerium andinum × Platycerium ridleyi × Polypodium vulgare"
    )


def test_a_parent_not_known_is_said_to_be_so() -> None:
    assert plain_formula([NameParts(), ANDINUM]) == "Platycerium andinum × unknown"


def test_the_sign_is_upright_and_the_latin_italic() -> None:
    assert [(run.text, run.style) for run in formula_runs([ANDINUM, RIDLEYI])] == [
        ("Platycerium andinum", "italic"),
        (" × ", "roman"),
        ("P. ridleyi", "italic"),
    ]


def test_no_parents_give_nothing() -> None:
    assert formula_runs([]) == ()


def test_an_egg_parent_who_is_no_parent_is_refused() -> None:
    with pytest.raises(ValueError, match="egg parent"):
        formula_runs([ANDINUM, RIDLEYI], egg_parent=2)


@settings(deadline=None)
@given(st.permutations([ANDINUM, RIDLEYI, TASSEL, POLYPODIUM, NameParts()]))
def test_alphabetical_order_does_not_depend_on_the_order_given(parents: list[NameParts]) -> None:
    assert plain_formula(parents) == plain_formula([ANDINUM, RIDLEYI, TASSEL, POLYPODIUM, NameParts()])
