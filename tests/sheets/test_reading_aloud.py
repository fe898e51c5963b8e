"""The paper can be read aloud: it is tagged, titled, and its tables have headers (PDF/UA-1)."""

import pytest

from frondkeep.sheets import entry_list_pdf, judges_copy_pdf
from tests.sheets.cast import NOON, make_class, make_entry, make_list
from tests.sheets.conftest import Reader

PRINTERS = [entry_list_pdf, judges_copy_pdf]


@pytest.fixture(params=PRINTERS)
def pdf(request: pytest.FixtureRequest) -> bytes:
    rows = make_list(make_class(1, [make_entry()]), make_class(2), language="en-GB")
    return bytes(request.param(rows, timestamp=NOON))


@pytest.mark.paper
def test_it_is_tagged_and_titled(poppler: Reader, pdf: bytes) -> None:
    info = poppler("pdfinfo", pdf)
    assert "Tagged:          yes" in info
    assert ": Autumn Show, Saturday 14 November 2026" in info
    assert "Tidewater Fern Society" in info


def test_it_claims_the_standard_and_its_language(pdf: bytes) -> None:
    assert b"<pdfuaid:part>1</pdfuaid:part>" in pdf
    assert b"/Lang(en" in pdf.replace(b"/Lang (", b"/Lang(")


@pytest.mark.paper
def test_headings_and_table_headers_are_marked(poppler: Reader, pdf: bytes) -> None:
    outline = poppler("pdfinfo", pdf, "-struct")
    for mark in ("H1", "H2", "Table", "TH", "TD"):
        assert f" {mark}" in outline


def test_a_latin_name_is_marked_as_latin(pdf: bytes) -> None:
    assert b"/Lang(la" in pdf.replace(b"/Lang (", b"/Lang(")
