"""The fast search brings up what comparing all with all would."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lineage.core.lookalikes import candidate_pairs, compare_names

WORDS = [
    "Silver",
    "Sliver",
    "Silvered",
    "Tassel",
    "Tassle",
    "Fan",
    "Fann",
    "Wavy",
    "Undulata",
    "Undulatum",
    "II",
    "2",
]
WORDS += ["Brackenford", "Brakenford", "Edith", "E.", "Mt.", "Mount", "cristata", "Plumosum"]
names = st.lists(st.lists(st.sampled_from(WORDS), min_size=1, max_size=3).map(" ".join), max_size=12)


def slow_pairs(rows, cutoff):
    for (id_a, a, genus_a), (id_b, b, genus_b) in combinations(rows, 2):
        score = compare_names(a, b, genus_a=genus_a, genus_b=genus_b).score
        if score >= cutoff:
            yield id_a, id_b, score


@settings(max_examples=60)
@given(names)
def test_the_fast_search_finds_what_the_slow_one_finds(texts):
    rows = [(number, text, "Asplenium") for number, text in enumerate(texts)]
    assert list(candidate_pairs(rows, cutoff=0.75)) == list(slow_pairs(rows, 0.75))


def test_names_of_different_genera_are_not_paired():
    rows = [(1, "Marsh Lantern", "Pteris"), (2, "Marsh Lantern", "Davallia"), (3, "Marsh Lantern", "Humata")]
    assert [pair[:2] for pair in candidate_pairs(rows)] == [(2, 3)]


def test_a_name_without_a_genus_is_held_against_all():
    rows = [
        ("b", "Marsh Lantern", "Pteris"),
        ("a", "Marsh Lantern", None),
        ("c", "Marsh Lantern", "Davallia"),
    ]
    assert [pair[:2] for pair in candidate_pairs(rows)] == [("a", "b"), ("a", "c")]


def test_no_names_no_pairs():
    assert list(candidate_pairs([])) == []
    assert list(candidate_pairs([(1, "", None), (2, "", None)])) == []


def test_an_id_given_twice_is_refused():
    with pytest.raises(ValueError, match="two names"):
        list(candidate_pairs([(1, "Fan", None), (1, "Star", None)]))


@pytest.mark.parametrize("cutoff", [-0.1, 1.1])
def test_a_cutoff_outside_the_scores_is_refused(cutoff):
    with pytest.raises(ValueError, match="cutoff"):
        list(candidate_pairs([(1, "Fan", None)], cutoff=cutoff))
