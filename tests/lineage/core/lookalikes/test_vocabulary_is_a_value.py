"""A vocabulary is shipped, extended into a new value, and refuses nonsense."""

from collections import Counter

import pytest

from lineage.core.lookalikes import Meaning, Move, Vocabulary, compare_names, fold


def test_the_shipped_vocabulary_is_one_value_with_a_version():
    assert Vocabulary.default() == Vocabulary.default()
    assert Vocabulary.default().version


def test_no_shipped_word_has_two_meanings():
    words = Counter(word for meaning in Vocabulary.default().lexicon for word in meaning.words)
    assert [word for word, times in words.items() if times > 1] == []


def test_every_shipped_move_gives_its_reason():
    assert all(move.reason for move in Vocabulary.default().moves)


def test_a_meaning_added_changes_the_new_value_only():
    before = Vocabulary.default()
    after = before.extended(
        meanings=[Meaning("translation", ("cornubiense", "elegantissimum"), "An old book.")]
    )
    assert compare_names("Cornubiense", "Elegantissimum", vocabulary=before).score < 0.5
    assert compare_names("Cornubiense", "Elegantissimum", vocabulary=after).score > 0.9
    assert after != before
    assert after.version != before.version


def test_a_move_added_brings_two_genera_together():
    after = Vocabulary.default().extended(moves=[Move("Oldgenus", "", "Pteris", "", "Moved.")])
    old, new = ("Oldgenus", "Pteris")
    assert compare_names("Lantern", "Lantern", genus_a=old, genus_b=new).score < 0.5
    assert compare_names("Lantern", "Lantern", genus_a=old, genus_b=new, vocabulary=after).score == 1.0


def test_words_added_are_no_longer_taken_for_slips_of_each_other():
    after = Vocabulary.default().extended(words=["brackenfold", "brackenford"])
    assert compare_names("Brackenfold", "Brackenford", vocabulary=after).score < 0.5
    assert compare_names("Brackenfold", "Brackenford").score > 0.5


def test_an_empty_vocabulary_still_compares():
    assert compare_names("Silver Tassel", "silver tassel", vocabulary=Vocabulary()).score == 1.0
    assert fold("Cristata", vocabulary=Vocabulary()) == fold("Cristatum", vocabulary=Vocabulary())


@pytest.mark.parametrize("words", [(), ("",)])
def test_a_meaning_without_words_is_refused(words):
    with pytest.raises(ValueError, match="word"):
        Meaning("translation", words)


def test_a_meaning_of_unknown_kind_is_refused():
    with pytest.raises(ValueError, match="nickname"):
        Meaning("joke", ("a",))
