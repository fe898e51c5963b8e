"""The committee's entry list is complete, legible and the same every time."""

import re
from datetime import UTC, datetime

import pytest

from frondkeep.sheets import EntryList, SheetError, entry_list_pdf
from tests.sheets.cast import HARD, NOON, make_class, make_entry, make_list, make_long_list
from tests.sheets.conftest import Reader


def pages_of(poppler: Reader, rows: EntryList) -> list[str]:
    return poppler("pdftotext", entry_list_pdf(rows, timestamp=NOON), "-layout").split("\f")[:-1]


def squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text)


def test_the_same_list_and_timestamp_give_the_same_bytes() -> None:
    entries = make_long_list(20)
    assert entry_list_pdf(entries, timestamp=NOON) == entry_list_pdf(entries, timestamp=NOON)


def test_a_datetime_and_its_seconds_are_one_timestamp() -> None:
    entries = make_list(make_class(1, [make_entry()]))
    moment = datetime.fromtimestamp(NOON, UTC)
    assert entry_list_pdf(entries, timestamp=moment) == entry_list_pdf(entries, timestamp=NOON)


def test_a_timestamp_without_zone_is_refused() -> None:
    with pytest.raises(ValueError, match="time zone"):
        entry_list_pdf(make_list(), timestamp=datetime(2026, 11, 14))  # noqa: DTZ001


@pytest.mark.parametrize("changes", [{"paper": "foolscap"}, {"language": "English"}, {"language": ""}])
def test_an_unknown_paper_or_language_is_refused_in_words(changes: dict[str, str]) -> None:
    with pytest.raises(SheetError, match=r"we have no paper|no language we can print"):
        make_list(**changes)


@pytest.mark.paper
def test_every_entry_stands_under_its_class_with_its_exhibitor(poppler: Reader) -> None:
    first = make_class(1, [make_entry(1, exhibitor="Bram Marsh", exhibitor_number=7)])
    second = make_class(
        2, [make_entry(2, "‘Grey Heron’", plants=3, note="Moved by the steward")], title="Three"
    )
    text = poppler("pdftotext", entry_list_pdf(make_list(first, second), timestamp=NOON), "-layout")
    positions = [
        text.index(words) for words in ("Class 1", "Bram Marsh", "Class 2", "Grey Heron", "Moved by")
    ]
    assert positions == sorted(positions)
    assert re.search(r"\(3\splants\)", text)


@pytest.mark.paper
def test_each_page_says_which_of_how_many_it_is(poppler: Reader) -> None:
    pages = pages_of(poppler, make_long_list(90))
    assert len(pages) >= 3
    assert all(f"{number} of {len(pages)}" in page for number, page in enumerate(pages, 1))


@pytest.mark.paper
def test_a_class_that_runs_on_is_named_and_headed_again_on_each_page(poppler: Reader) -> None:
    pages = pages_of(poppler, make_long_list(90))
    assert "continued" not in pages[0]
    for page in pages[1:]:
        assert re.search(r"Class 2, continued\s+Entry\s+Plant\s+No\.\s+Exhibitor", page)


@pytest.mark.paper
@pytest.mark.parametrize("entries", range(22, 36))
def test_a_class_is_never_parted_from_its_title(poppler: Reader, entries: int) -> None:
    text = poppler("pdftotext", entry_list_pdf(make_long_list(entries), timestamp=NOON), "-layout")
    page = next(page for page in text.split("\f") if "The last class" in page)
    assert re.search(rf"The last class\s+Entry.*\s+{entries + 2}\s+Platycerium", page)


@pytest.mark.paper
def test_a_class_without_entries_says_so(poppler: Reader) -> None:
    text = poppler("pdftotext", entry_list_pdf(make_list(make_class(4)), timestamp=NOON))
    assert "No entries in this class." in text


@pytest.mark.paper
def test_a_show_without_classes_says_so(poppler: Reader) -> None:
    assert "holds no classes yet" in poppler("pdftotext", entry_list_pdf(make_list(), timestamp=NOON))


@pytest.mark.paper
@pytest.mark.parametrize("name", [HARD * 2, "Q" * 200, "‘" + "Longleaf-" * 22 + "’"])
def test_a_name_of_two_hundred_characters_is_wrapped_and_never_cut(poppler: Reader, name: str) -> None:
    rows = make_list(make_class(1, [make_entry(1, name)]))
    pdf = entry_list_pdf(rows, timestamp=NOON)
    # The plant’s column alone: 90 to 358 points from the left.
    column = poppler("pdftotext", pdf, "-x", "90", "-W", "268", "-y", "0", "-H", "842")
    assert squeezed(name) in squeezed(column)


@pytest.mark.paper
def test_words_are_printed_letter_for_letter_and_never_read_as_markup(poppler: Reader) -> None:
    row = make_entry(1, HARD, exhibitor=HARD, note=HARD)
    rows = make_list(make_class(1, [row], title=HARD, section=HARD), venue=HARD, show=HARD, society=HARD)
    text = squeezed(poppler("pdftotext", entry_list_pdf(rows, timestamp=NOON), "-layout"))
    assert text.count("#hash$sum$@at\\back*star*_low_`tick`[box]<tag>") >= 3


@pytest.mark.paper
def test_line_breaks_in_a_name_become_spaces(poppler: Reader) -> None:
    rows = make_list(make_class(1, [make_entry(1, "‘Silver\r\n\tTassel’")]))
    assert "‘Silver Tassel’" in poppler("pdftotext", entry_list_pdf(rows, timestamp=NOON))


@pytest.mark.paper
@pytest.mark.parametrize(("paper", "size"), [("a4", "(A4)"), ("letter", "(letter)")])
def test_the_paper_asked_for_is_the_paper_of_the_file(poppler: Reader, paper: str, size: str) -> None:
    assert size in poppler("pdfinfo", entry_list_pdf(make_list(paper=paper), timestamp=NOON))


@pytest.mark.paper
def test_large_print_is_seventeen_points(poppler: Reader) -> None:
    rows = make_list(make_class(1, [make_entry()]), large_print=True)
    boxes = poppler("pdftotext", entry_list_pdf(rows, timestamp=NOON), "-bbox")
    low, high = re.search(r'yMin="([\d.]+)"[^>]*yMax="([\d.]+)">Ada<', boxes).groups()
    # A line of this face is 1.25 times as high as its size in points, near enough.
    assert float(high) - float(low) == pytest.approx(17 * 1.25, abs=3)
