"""Whose entry is whose cannot be found in the judges' copy."""

import json
import re

import pytest

from frondkeep.sheets import judges_copy_pdf
from frondkeep.sheets.entry_lists import sheet_data, without_exhibitors
from tests.sheets.cast import NOON, make_class, make_entry, make_list
from tests.sheets.conftest import Reader

SECRETS = {"exhibitor": "Wilhelmina Zwart", "exhibitor_number": 94721, "note": "Zwart needs a hand with it"}


def told_list() -> object:
    return make_list(make_class(1, [make_entry(1, **SECRETS), make_entry(2, plants=3, **SECRETS)]))


def test_what_reaches_the_press_holds_no_exhibitor() -> None:
    told = json.dumps(dict(sheet_data(without_exhibitors(told_list()))))
    assert "‘Silver Tassel’" in json.loads(told)["classes"][0]["entries"][0]["name"][1][0]
    assert "Zwart" not in told
    assert "94721" not in told


def test_the_bytes_are_those_of_a_list_that_never_knew_an_exhibitor() -> None:
    nobody = {"exhibitor": "", "exhibitor_number": "", "note": ""}
    blank = make_list(make_class(1, [make_entry(1, **nobody), make_entry(2, plants=3, **nobody)]))
    assert judges_copy_pdf(told_list(), timestamp=NOON) == judges_copy_pdf(blank, timestamp=NOON)


@pytest.mark.paper
def test_the_printed_words_hold_entries_and_space_but_no_exhibitor(poppler: Reader) -> None:
    text = poppler("pdftotext", judges_copy_pdf(told_list(), timestamp=NOON), "-layout")
    assert "Place" in text
    assert "remarks" in text
    assert "‘Silver Tassel’" in text
    assert re.search(r"3\splants", text)
    assert "Zwart" not in text
    assert "94721" not in text
    assert "Exhibitor" not in text


def test_an_exhibitor_with_an_unprintable_name_does_not_stop_the_judges_copy() -> None:
    rows = make_list(make_class(1, [make_entry(1, exhibitor="蕨")]))
    assert judges_copy_pdf(rows, timestamp=NOON).startswith(b"%PDF")
