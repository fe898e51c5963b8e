"""Labels lie where the sheet says, and what does not fit is refused with the sum shown."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from frondkeep.sheets import A4_21, LabelSheet, SheetError


def make_sheet(**changes: Any) -> LabelSheet:
    """A grower's stakes, 16 × 178 mm, on A4."""
    values: dict[str, Any] = {
        "paper_width": 210,
        "paper_height": 297,
        "label_width": 178,
        "label_height": 16,
        "left": 16,
        "top": 12,
        "columns": 1,
        "rows": 17,
    }
    return LabelSheet(**(values | changes))


def test_the_sheet_of_21_ends_inside_a4() -> None:
    *_, last = A4_21.places(21)
    assert (last.x + 63.5, last.y + 38.1) == pytest.approx((202.7, 281.85))


def test_labels_run_row_by_row_and_over_to_the_next_page() -> None:
    places = list(A4_21.places(23))
    assert (places[0].page, places[0].x, places[0].y) == (0, 7.2, 15.15)
    assert (places[3].x, places[3].y) == (7.2, 53.25)
    assert (places[21].page, places[21].x, places[21].y) == (1, 7.2, 15.15)
    assert [place.page for place in places[20:]] == [0, 1, 1]


def test_a_partly_used_sheet_starts_further_on() -> None:
    assert list(A4_21.places(3, start=5)) == list(A4_21.places(7))[4:]


def test_a_shift_moves_every_label_alike() -> None:
    (moved,) = A4_21.places(1, shift_right=1.5, shift_down=-0.75)
    assert (moved.x, moved.y) == (8.7, 14.4)


def test_no_labels_have_no_places() -> None:
    assert list(A4_21.places(0)) == []


@pytest.mark.parametrize("start", [0, 22, -1])
def test_a_start_that_is_not_on_the_sheet_is_refused(start: int) -> None:
    with pytest.raises(SheetError, match="can be 1 to 21"):
        list(A4_21.places(1, start=start))


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"label_width": 200}, "16 + 1 × 200 = 216 mm, but the paper is 210 mm wide"),
        ({"rows": 18}, "12 + 18 × 16 = 300 mm, but the paper is 297 mm high"),
        ({"row_gap": 1.5}, "12 + 17 × 16 + 16 × 1.5 = 308 mm, but the paper is 297 mm high"),
    ],
)
def test_what_does_not_fit_is_refused_with_the_sum(changes: dict[str, float], said: str) -> None:
    with pytest.raises(SheetError) as caught:
        make_sheet(**changes)
    assert str(caught.value) == said


@pytest.mark.parametrize(
    ("shift", "said"),
    [
        (
            {"shift_right": 9},
            "shifted by 9 mm, 16.2 + 3 × 63.5 + 2 × 2.5 = 211.7 mm, but the paper is 210 mm wide",
        ),
        ({"shift_down": -16}, "shifted by -16 mm, the labels would begin 0.85 mm outside the paper"),
        ({"shift_down": float("nan")}, "a shift is a number of millimetres"),
    ],
)
def test_a_shift_off_the_paper_is_refused_with_the_sum(shift: dict[str, float], said: str) -> None:
    with pytest.raises(SheetError) as caught:
        list(A4_21.places(1, **shift))
    assert str(caught.value) == said


@pytest.mark.parametrize("changes", [{"label_width": 0}, {"columns": 0}, {"left": -1}, {"top": float("inf")}])
def test_a_measure_that_makes_no_label_is_refused(changes: dict[str, float]) -> None:
    with pytest.raises(SheetError, match="the measure “"):
        make_sheet(**changes)


def test_labels_that_fill_the_paper_to_the_edge_fit() -> None:
    full = make_sheet(left=0, top=0, label_width=210 / 7, label_height=297 / 11, columns=7, rows=11)
    assert full.per_page == 77


@given(columns=st.integers(1, 8), rows=st.integers(1, 14), gap=st.sampled_from([0, 0.1, 2.5]))
def test_no_two_labels_of_a_page_overlap(columns: int, rows: int, gap: float) -> None:
    sheet = make_sheet(
        left=3,
        top=3,
        label_width=20,
        label_height=18,
        columns=columns,
        rows=rows,
        column_gap=gap,
        row_gap=gap,
    )
    places = list(sheet.places(sheet.per_page))
    for one in places:
        for other in places:
            apart = abs(one.x - other.x) > 19.99 or abs(one.y - other.y) > 17.99
            assert one is other or apart
