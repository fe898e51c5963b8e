"""Whatever stands on a label, reading and comparing give an answer."""

import pytest
from hypothesis import given

from lineage.core.lookalikes import compare_names, fold, read_name

from .casts import STRANGE, genera, labels


@given(labels, genera)
def test_reading_never_raises_and_keeps_the_text(text, genus):
    reading = read_name(text, genus=genus)
    assert reading.text == text
    assert all(number >= 0 for number in reading.numbers)


@pytest.mark.parametrize("text", STRANGE, ids=lambda text: ascii(text[:12]))
def test_strange_text_is_read_folded_and_compared(text):
    assert read_name(text).text == text
    assert isinstance(fold(text), str)
    assert 0 <= compare_names(text, "Silver Tassel").score < 1
    assert compare_names(text, text).score == 1.0


@given(labels, labels, genera, genera)
def test_comparing_is_the_same_both_ways(a, b, genus_a, genus_b):
    there = compare_names(a, b, genus_a=genus_a, genus_b=genus_b)
    back = compare_names(b, a, genus_a=genus_b, genus_b=genus_a)
    assert there.score == back.score
    assert there.level == back.level
    assert sorted(map(str, there.reasons)) == sorted(map(str, back.reasons))


@given(labels, genera)
def test_a_name_is_wholly_like_itself(text, genus):
    assert compare_names(text, text, genus_a=genus, genus_b=genus).score == 1.0


@given(labels, labels)
def test_a_full_score_means_equal_folded_forms(a, b):
    likeness = compare_names(a, b)
    assert 0 <= likeness.score <= 1
    if likeness.score == 1:
        assert fold(a) == fold(b)


@given(labels, labels)
def test_every_answer_gives_a_reason_when_anything_is_compared(a, b):
    likeness = compare_names(a, b)
    assert likeness.reasons
    assert all(why.words and 0 <= why.factor <= 1 for why in likeness.reasons)
