"""What a tag says is kept letter for letter."""

import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specimens.naming.labels import LONGEST_LABEL, LabelTooLong, clean_label


@pytest.mark.parametrize(
    "text",
    [
        "Plat. 'Silver Tassel' ex Mrs B.",
        "P.  bifurcatum   cv",
        '“quoted”, ‘quoted’, "quoted"',
        "P. ×mentelosii ½ price — €5",
        "ビカクシダ 銀",
        "e\u0301 and é are kept as they are",
        "🌿👩‍🌾",
        "<b>not</b> & markup",
    ],
)
def test_everything_printable_stays_as_written(text: str) -> None:
    assert clean_label(text) == text


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r", "\t", "\u2028"])
def test_the_end_of_a_line_becomes_one_space(end: str) -> None:
    assert clean_label(f"Silver{end}Tassel") == "Silver Tassel"


@pytest.mark.parametrize("sign", ["\x00", "\x07", "\x1b", "\x92", "\x7f", "\ud800"])
def test_what_cannot_be_printed_is_seen_to_have_stood_there(sign: str) -> None:
    assert clean_label(f"Silver{sign}Tassel") == "Silver\ufffdTassel"


@pytest.mark.parametrize("mark", ["\u202e", "\u2066", "\u200f", "\u061c"])
def test_marks_that_turn_the_direction_of_writing_go(mark: str) -> None:
    assert clean_label(f"Silver{mark}Tassel") == "SilverTassel"


def test_white_space_around_goes() -> None:
    assert clean_label("  \n Silver Tassel\u00a0") == "Silver Tassel"


def test_a_label_holds_five_hundred_characters() -> None:
    assert len(clean_label("x" * LONGEST_LABEL)) == 500
    with pytest.raises(LabelTooLong, match="501 characters"):
        clean_label("x" * 501)


@settings(deadline=None)
@given(st.text(max_size=LONGEST_LABEL))
def test_cleaning_twice_is_cleaning_once(text: str) -> None:
    once = clean_label(text)
    assert clean_label(once) == once
    assert not {unicodedata.category(each) for each in once} & {"Cc", "Cs"}
    once.encode()
