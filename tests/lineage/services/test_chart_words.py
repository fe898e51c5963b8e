"""What stands in a box of the drawing: nothing cut short, no line too long."""

from hypothesis import given
from hypothesis import strategies as st

from lineage.services.chart_words import wrapped, wrapped_words
from specimens.naming.names import Run

LETTERS = 28


def test_a_short_name_stands_on_one_line() -> None:
    runs = (Run("Platycerium", "italic"), Run(" ‘Silver Tassel’", "roman"))
    assert wrapped(runs, LETTERS) == (runs,)


def test_a_long_name_goes_on_below_and_keeps_its_italics() -> None:
    lines = wrapped(
        (Run("Nephrolepis cordifolia", "italic"), Run(" ‘Cristata Angustata Millrace’", "roman")), LETTERS
    )
    assert lines == (
        (Run("Nephrolepis cordifolia", "italic"),),
        (Run("‘Cristata Angustata", "roman"),),
        (Run("Millrace’", "roman"),),
    )


def test_a_word_longer_than_a_line_is_broken_within() -> None:
    assert wrapped_words("a" * 30, LETTERS) == ("a" * 28, "aa")


@given(st.lists(st.tuples(st.text(alphabet="ab ‘’×", max_size=40), st.sampled_from(["italic", "roman"]))))
def test_no_letter_is_lost_and_no_line_is_too_long(pieces: list[tuple[str, str]]) -> None:
    runs = tuple(Run(text, style) for text, style in pieces)
    lines = wrapped(runs, LETTERS)
    letters = "".join(run.text for line in lines for run in line)
    assert letters.replace(" ", "") == "".join(run.text for run in runs).replace(" ", "")
    assert all(sum(len(run.text) for run in line) <= LETTERS for line in lines)
