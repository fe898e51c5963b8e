"""A slip of the pen and another word, told by letters, sound and known words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lineage.core.lookalikes import Vocabulary, compare_names
from lineage.core.lookalikes.slips import WordShapes, slip_distance
from lineage.core.lookalikes.sounding import skeleton, sound

letters = st.text("abcdefghij", max_size=7)


def slow_distance(a, b):
    """Restricted Damerau distance by its definition: Boytsov 2011, ACM J. Exp. Algorithmics 16:1.1."""
    table = [[max(i, j) if i * j == 0 else 0 for j in range(len(b) + 1)] for i in range(len(a) + 1)]
    for i in range(1, len(a) + 1):
        for j in range(1, len(b) + 1):
            ways = [table[i - 1][j] + 1, table[i][j - 1] + 1, table[i - 1][j - 1] + (a[i - 1] != b[j - 1])]
            if i > 1 and j > 1 and a[i - 1] == b[j - 2] and a[i - 2] == b[j - 1]:
                ways.append(table[i - 2][j - 2] + 1)
            table[i][j] = min(ways)
    return table[len(a)][len(b)]


@given(letters, letters)
def test_the_distance_is_the_one_by_definition(a, b):
    assert slip_distance(a, b) == slow_distance(a, b)


@pytest.mark.parametrize(
    ("slip", "other_word"),
    [
        (("Tasselbrook", "Tasslebrook"), ("Bramble", "Gamble")),  # letters swapped, against two words
        (("Haverstock", "Havverstock"), ("Marina", "Martina")),  # a letter doubled
        (("Crocodile", "Crokodile"), ("Crocus", "Circus")),  # by ear
        (("Lantern", "Lantxrn"), ("Lantern", "Lancer")),  # a word that looks like none
    ],
)
def test_a_slip_scores_above_another_word(slip, other_word):
    assert compare_names(*slip).score > compare_names(*other_word).score


def test_a_slip_is_likelier_where_the_rest_agrees():
    assert compare_names("Fennel Kettle", "Fennel Kettel").score > compare_names("Kettle", "Kettel").score


def test_letters_that_no_word_has_are_strange():
    shapes = WordShapes(["lantern", "kettle", "feather", "brook"])
    assert shapes.strangeness("latern") < shapes.strangeness("lxqtern")


@pytest.mark.parametrize(
    ("a", "b"),
    [("phenix", "feniks"), ("knight", "nite"), ("echo", "eko"), ("wright", "rite"), ("yucca", "yuka")],
)
def test_words_that_sound_alike_sound_alike(a, b):
    assert sound(a) == sound(b)


@given(st.text(max_size=20))
def test_any_text_has_a_sound(text):
    assert isinstance(sound(text), str)
    assert isinstance(skeleton(text), str)


def test_a_word_of_the_society_is_not_taken_for_a_slip_of_another():
    vocabulary = Vocabulary.default().extended(words=["tasselbrook", "tasselbrock"])
    assert compare_names("Tasselbrook", "Tasselbrock", vocabulary=vocabulary).level == "far"
