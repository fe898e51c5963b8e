"""Computed figures in a grower's words."""

import pytest

from lineage.services.fact_words import (
    division_words,
    generation_words,
    inbreeding_words,
    known_words,
    part_words,
    piece_words,
    share_words,
)


@pytest.mark.parametrize(
    ("lo", "hi", "words"),
    [
        (1, 1, "all"),
        (0.5, 0.5, "a half"),
        (0.25, 0.5, "between a quarter and a half"),
        (0, 0.5, "up to a half"),
        (0.75, 1, "at least three quarters"),
        (0, 1, "anything from none to all"),
        (5 / 16, 5 / 16, "5/16"),
    ],
)
def test_a_share_is_said_with_its_bounds(lo, hi, words):
    assert share_words(lo, hi) == words


def test_a_fine_share_is_rounded_and_says_so():
    assert part_words(341 / 1024) == "about 33 %"


@pytest.mark.parametrize(
    ("least", "most", "words"),
    [
        (0, 0, ""),
        (3, 3, "third generation from spores since the line starts"),
        (1, 2, "first to second generation from spores since the line starts"),
        (12, 12, "12th generation from spores since the line starts"),
        (22, 22, "22nd generation from spores since the line starts"),
    ],
)
def test_generations_are_counted_from_where_the_line_starts(least, most, words):
    assert generation_words(least, most) == words


def test_divisions_are_counted_unless_a_name_alone_joins_the_plant():
    assert division_words(1, counted=True) == "1 division since the first plant"
    assert division_words(4, counted=True) == "4 divisions since the first plant"
    assert division_words(0, counted=True) == "the first plant, as far as we know"
    assert "not known" in division_words(1, counted=False)


def test_pieces_count_the_plant_itself():
    assert piece_words(1) == "No other piece of this plant is on record."
    assert piece_words(3) == "3 plants on record are pieces of this one plant."


def test_inbreeding_is_said_with_its_figure():
    assert inbreeding_words(0, 0) == "not related, as far as we know (F = 0)"
    assert inbreeding_words(0.125, 0.125) == "related (F = 0.125)"
    assert inbreeding_words(0, 1) == "perhaps related (F between 0 and 1)"
    assert inbreeding_words(1, 1).endswith("pure-breeding (F = 1)")


def test_what_is_known_of_ancestors_is_left_open_while_parents_are_not_settled():
    assert known_words(1, 1, 0.2).endswith("of five generations 20 % are known, both sides weighed together")
    assert "is open while parents are not settled" in known_words(0, 1, None)
