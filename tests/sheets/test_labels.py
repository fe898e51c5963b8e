"""A label bears its code, its whole name and a square code a phone can read."""

import re
import subprocess
from pathlib import Path

import pytest
import segno
from PIL import Image

from frondkeep.sheets import A4_21, Label, LabelSheet, SheetError, labels_pdf
from tests.sheets.cast import HARD, NOON
from tests.sheets.conftest import Reader

ADDRESS = "https://ferns.example/p/2026-0142-E"


def make_label(name: str = "‘Silver Tassel’", **changes: object) -> Label:
    runs = (("Platycerium", "italic"), (" " + name, "roman"))
    return Label(**({"code": "2026-0142-E", "name_runs": runs, "qr": ADDRESS} | changes))


def squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text)


def test_the_same_labels_and_timestamp_give_the_same_bytes() -> None:
    def once() -> bytes:
        return labels_pdf([make_label()], sheet=A4_21, timestamp=NOON)

    assert once() == once()


def test_no_labels_are_refused() -> None:
    with pytest.raises(SheetError, match="no labels"):
        labels_pdf([], sheet=A4_21, timestamp=NOON)


def test_a_name_that_fits_in_no_print_is_refused_and_named() -> None:
    labels = [make_label(), make_label("x " * 900, code="2026-0143-B")]
    with pytest.raises(SheetError, match="label 2026-0143-B: the name and lines do not fit"):
        labels_pdf(labels, sheet=A4_21, timestamp=NOON)


def test_a_character_our_fonts_lack_is_named_with_its_label() -> None:
    with pytest.raises(SheetError, match="label 2026-0142-E: our fonts cannot print “蕨”"):
        labels_pdf([make_label("‘蕨’")], sheet=A4_21, timestamp=NOON)


def test_a_square_code_too_fine_to_read_is_refused_with_the_sum() -> None:
    tiny = LabelSheet(
        paper_width=210, paper_height=297, label_width=40, label_height=8, left=5, top=5, columns=4, rows=30
    )
    with pytest.raises(SheetError, match=r"needs 37 × 0\.3 = 11\.1 mm, but there are 8\.0 mm"):
        labels_pdf([make_label()], sheet=tiny, timestamp=NOON)


@pytest.mark.paper
@pytest.mark.parametrize("name", ["‘Silver Tassel’", "‘" + "Longleaf" * 12 + "’", HARD, HARD * 2])
def test_the_whole_name_stands_inside_its_own_label(poppler: Reader, name: str) -> None:
    labels = [make_label("‘Neighbour’"), make_label(name), make_label("‘Neighbour’")]
    pdf = labels_pdf(labels, sheet=A4_21, timestamp=NOON)
    # The middle label of the first row, in points: what runs over its edge is not seen.
    box = (73.2, 15.15, 63.5, 38.1)
    x, y, width, height = (str(round(measure / 25.4 * 72)) for measure in box)
    text = poppler("pdftotext", pdf, "-x", x, "-y", y, "-W", width, "-H", height)
    assert squeezed(f"2026-0142-EPlatycerium{name}") in squeezed(text)


@pytest.mark.paper
def test_the_file_is_exactly_as_large_as_the_paper_and_tagged(poppler: Reader) -> None:
    info = poppler("pdfinfo", labels_pdf([make_label()] * 22, sheet=A4_21, timestamp=NOON))
    assert "(A4)" in info
    assert re.search(r"Pages:\s+2\n", info)
    assert re.search(r"Tagged:\s+yes", info)


@pytest.mark.paper
def test_the_square_code_on_paper_is_the_code_asked_for(poppler: Reader, tmp_path: Path) -> None:
    pdf = labels_pdf([make_label()], sheet=A4_21, timestamp=NOON)
    image = Image.open(picture(pdf, tmp_path)).convert("L")
    wanted = list(segno.make_qr(ADDRESS, error="m", boost_error=False).matrix_iter(border=4))
    width = 63.5 * 0.45
    left, top = 7.2 + 63.5 - width, 15.15 + (38.1 - width) / 2
    dots = 600 / 25.4
    module = width / len(wanted)
    for row, modules in enumerate(wanted):
        for column, dark in enumerate(modules):
            at = ((left + (column + 0.5) * module) * dots, (top + (row + 0.5) * module) * dots)
            assert (image.getpixel(tuple(map(round, at))) < 128) == bool(dark), (row, column)


def picture(pdf: bytes, folder: Path) -> Path:
    """The first page at 600 dots an inch."""
    (folder / "labels.pdf").write_bytes(pdf)
    command = [
        "pdftoppm",
        "-r",
        "600",
        "-png",
        "-singlefile",
        str(folder / "labels.pdf"),
        str(folder / "page"),
    ]
    subprocess.run(command, check=True)
    return folder / "page.png"
