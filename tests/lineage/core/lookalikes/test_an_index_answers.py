"""The index answers while somebody types, and says what a name looks like."""

from hypothesis import given, settings
from hypothesis import strategies as st

from lineage.core.lookalikes import NameIndex, compare_names

ROWS = [
    (1, "Silver Tassel", "Platycerium"),
    (2, "Silver Star", "Platycerium"),
    (3, "Mount Tarn", "Asplenium"),
    (4, "Undulatum", "Asplenium"),
    (5, "Brackenford's Pride", "Pteris"),
    (6, "Silver Tassel", "Pteris"),
]


def first_ids(found):
    return [name_id for name_id, _ in found]


def test_beginnings_of_words_find_a_name():
    index = NameIndex(ROWS)
    assert first_ids(index.suggest("silv tas")) == [1, 6]
    assert first_ids(index.suggest("tas sil")) == [1, 6]
    assert first_ids(index.suggest("brackenfords")) == [5]
    assert first_ids(index.suggest("mt tar")) == [3]


def test_a_genus_and_species_may_be_typed_before_the_name():
    index = NameIndex(ROWS)
    assert first_ids(index.suggest("Platycerium bifurcatum 'silv")) == [2, 1]
    assert first_ids(index.suggest("pteris silver")) == [6]


def test_a_slip_in_a_beginning_is_forgiven():
    index = NameIndex(ROWS)
    assert first_ids(index.suggest("brakcen")) == [5]
    assert first_ids(index.suggest("slver tas")) == [1, 6]


def test_a_genus_narrows_what_is_suggested():
    assert first_ids(NameIndex(ROWS).suggest("silver", genus="Pteris")) == [6]


def test_nothing_typed_suggests_nothing():
    assert NameIndex(ROWS).suggest("  '' ") == []
    assert NameIndex().suggest("silver") == []


def test_like_gives_the_score_of_the_comparison():
    found = NameIndex(ROWS).like("Silvered Tassle", genus="Platycerium")
    assert found[0] == (1, compare_names("Silvered Tassle", "Silver Tassel").score)


def test_like_finds_a_translation_no_letter_of_which_agrees():
    assert first_ids(NameIndex(ROWS).like("Wavy", genus="Asplenium"))[0] == 4


def test_like_stays_within_the_genus():
    assert 6 not in first_ids(NameIndex(ROWS).like("Silver Tassel", genus="Platycerium"))


def test_limits_are_kept():
    index = NameIndex(ROWS)
    assert len(index.suggest("s", limit=2)) == 2
    assert index.suggest("s", limit=0) == []
    assert len(index.like("Silver Tassel", limit=1)) == 1


def test_a_name_taken_in_again_is_replaced():
    index = NameIndex(ROWS)
    index.add(1, "Marsh Lantern", "Platycerium")
    assert len(index) == len(ROWS)
    assert first_ids(index.suggest("silver tassel")) == [6]
    assert first_ids(index.suggest("marsh")) == [1]


texts = st.lists(
    st.sampled_from(["Silver", "Sliver", "Tassel", "Wavy", "Fan", "Mt.", "Tarn", "II", "'", "é"]), max_size=3
).map(" ".join)
genera = st.sampled_from([None, "Pteris", "Asplenium"])
steps = st.lists(st.tuples(st.integers(0, 12), st.one_of(st.none(), st.tuples(texts, genera))), max_size=150)


@settings(max_examples=50, deadline=None)
@given(steps, texts)
def test_adding_and_removing_one_by_one_equals_building_at_once(changes, asked):
    step_by_step, left = NameIndex(), {}
    for name_id, change in changes:
        if change is None:
            step_by_step.remove(name_id)
            left.pop(name_id, None)
        else:
            step_by_step.add(name_id, *change)
            left[name_id] = change
    at_once = NameIndex((name_id, *change) for name_id, change in left.items())
    assert len(step_by_step) == len(at_once) == len(left)
    for genus in (None, "Pteris"):
        assert step_by_step.like(asked, genus=genus) == at_once.like(asked, genus=genus)
        assert step_by_step.suggest(asked, genus=genus) == at_once.suggest(asked, genus=genus)
