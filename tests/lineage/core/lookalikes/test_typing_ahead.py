"""Rows by the beginnings of words, against looking through all of them."""

from hypothesis import given, settings
from hypothesis import strategies as st

from lineage.core.lookalikes.typing_ahead import PrefixRows

words = st.text("abc", min_size=1, max_size=4)


@settings(max_examples=60)
@given(
    st.lists(st.tuples(words, st.integers(0, 50)), max_size=60), st.text("abc", max_size=3), st.integers(0, 3)
)
def test_one_slice_holds_what_a_search_through_all_finds(entries, beginning, often):
    rows = PrefixRows()
    for place, (word, row) in enumerate(entries):
        rows.add(word, row)
        if often and place % (often * 7) == 0:
            rows.settle()
    rows.settle()
    assert sorted(rows.starting(beginning)) == sorted(
        row for word, row in entries if word.startswith(beginning)
    )
    assert sorted(rows.exactly(beginning)) == sorted(row for word, row in entries if word == beginning)
    assert rows.begins_any(beginning) == any(word.startswith(beginning) for word, _ in entries)


def test_many_entries_are_merged_and_later_ones_still_found():
    rows = PrefixRows()
    for number in range(2000):
        rows.add(f"word{number % 300:03}", number)
    rows.settle()
    rows.add("word", 5000)
    rows.add("zebra", 5001)
    rows.settle()
    assert len(rows.starting("word")) == 2001
    assert rows.starting("ze").tolist() == [5001]
    assert rows.exactly("word").tolist() == [5000]
