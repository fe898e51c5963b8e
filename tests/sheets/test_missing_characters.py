"""Characters our fonts lack are named before anything is printed."""

import pytest

from frondkeep.sheets import SheetError, entry_list_pdf, missing_characters
from frondkeep.sheets.glyphs import SURELY_PRINTABLE, describe_characters
from frondkeep.sheets.press import press
from tests.sheets.cast import NOON, make_class, make_entry, make_list
from tests.sheets.conftest import Reader


def test_names_of_many_lands_are_printable() -> None:
    assert (
        missing_characters(["Žofia Šťastná", "Łukasz", "Nguyễn", "Ελένη", "Жанна", "♀ ♂ × ‘’ “” – — … ½ °"])
        == ()
    )


def test_each_missing_character_is_named_once_in_order() -> None:
    assert missing_characters(["a 蕨 b", "😀 蕨 ไทย"]) == ("蕨", "😀", "ไ", "ท", "ย")


def test_control_characters_and_half_characters_are_missing() -> None:
    assert missing_characters(["a\x07b", "c\x00", "d\ud800"]) == ("\x07", "\x00", "\ud800")


def test_line_breaks_and_tabs_are_not_missing() -> None:
    assert missing_characters(["two\nlines\tand a tab\r\n"]) == ()


def test_quotes_and_backslashes_are_told_apart_from_their_escapes() -> None:
    assert missing_characters(['"\\蕨"']) == ("蕨",)


def test_what_is_taken_for_granted_is_in_the_fonts() -> None:
    assert press("glyph_probe.typ", {"characters": sorted(SURELY_PRINTABLE)}, timestamp=0).startswith(b"%PDF")


def test_a_character_is_described_for_a_person() -> None:
    assert describe_characters("😀\x07") == "“😀” (U+1F600, grinning face), U+0007 (a control character)"


def test_the_row_that_cannot_be_printed_is_named() -> None:
    rows = make_list(make_class(1, [make_entry(1)]), make_class(3, [make_entry(14, "‘蕨’")]))
    with pytest.raises(SheetError, match=r"class 3, entry 14: our fonts cannot print “蕨”") as caught:
        entry_list_pdf(rows, timestamp=NOON)
    assert caught.value.row == "class 3, entry 14"
    assert caught.value.characters == ("蕨",)


def test_a_heading_that_cannot_be_printed_is_named() -> None:
    with pytest.raises(SheetError, match="heading: "):
        entry_list_pdf(make_list(venue="温室"), timestamp=NOON)


def test_a_style_nobody_knows_is_refused() -> None:
    with pytest.raises(SheetError, match="no style of a name"):
        make_entry(1, name_runs=(("Platycerium", "bold"),))


@pytest.mark.paper
def test_on_the_evening_before_a_square_may_stand_in_and_says_so(poppler: Reader) -> None:
    rows = make_list(make_class(1, [make_entry(1, "‘Moon 蕨 👩‍🌾’")]))
    text = poppler("pdftotext", entry_list_pdf(rows, timestamp=NOON, stand_in=True))
    assert "‘Moon □" in text
    assert "stands for a character" in text
