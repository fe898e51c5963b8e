"""Where labels lie on a sheet of paper: everything in millimetres, from the upper left corner."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, fields

from frondkeep.sheets.errors import SheetError

HAIR = 0.005  # sums of tenths of a millimetre are not exact in binary
MOST_IN_A_ROW = 60


@dataclass(frozen=True)
class Place:
    """Where one label lies: its page, from 0, and its upper left corner."""

    page: int
    x: float
    y: float


@dataclass(frozen=True, kw_only=True)
class LabelSheet:
    """A sheet of equal labels in rows and columns. What does not fit on the paper is refused.

    >>> A4_21.per_page
    21
    >>> [place.x for place in A4_21.places(3)]
    [7.2, 73.2, 139.2]
    """

    paper_width: float
    paper_height: float
    label_width: float
    label_height: float
    left: float
    top: float
    columns: int
    rows: int
    column_gap: float = 0.0
    row_gap: float = 0.0

    def __post_init__(self) -> None:
        self._check_measures()
        across = Span(self.left, self.columns, self.label_width, self.column_gap)
        down = Span(self.top, self.rows, self.label_height, self.row_gap)
        across.check("wide", self.paper_width)
        down.check("high", self.paper_height)

    @property
    def per_page(self) -> int:
        """How many labels one sheet holds."""
        return self.columns * self.rows

    def places(
        self, count: int, *, start: int = 1, shift_right: float = 0.0, shift_down: float = 0.0
    ) -> Iterator[Place]:
        """The places of so many labels, row by row.

        Parameters
        ----------
        start
            The first label to print on, 1 being the upper left: for a sheet that is partly used.
        shift_right, shift_down
            How far the printer must be corrected; below 0 to the left and up.

        Raises
        ------
        SheetError
            When there is no such start, or the shift would push labels off the paper.
        """
        if not 1 <= start <= self.per_page:
            raise SheetError(f"the first label can be 1 to {self.per_page} on this sheet, not {start}")
        self._check_shift(shift_right, shift_down)
        for number in range(start - 1, start - 1 + count):
            page, spot = divmod(number, self.per_page)
            row, column = divmod(spot, self.columns)
            x = self.left + column * (self.label_width + self.column_gap) + shift_right
            y = self.top + row * (self.label_height + self.row_gap) + shift_down
            yield Place(page, round(x, 3), round(y, 3))

    def _check_measures(self) -> None:
        for field in fields(self):
            value, name = getattr(self, field.name), field.name.replace("_", " ")
            if not math.isfinite(value) or value < 0:
                raise SheetError(f"the measure “{name}” cannot be {value}")
            if value == 0 and field.name not in ("left", "top", "column_gap", "row_gap"):
                raise SheetError(f"the measure “{name}” must be more than 0")
        if max(self.columns, self.rows) > MOST_IN_A_ROW:
            raise SheetError(f"a sheet has at most {MOST_IN_A_ROW} rows or columns")

    def _check_shift(self, right: float, down: float) -> None:
        if not (math.isfinite(right) and math.isfinite(down)):
            raise SheetError("a shift is a number of millimetres")
        across = Span(self.left + right, self.columns, self.label_width, self.column_gap)
        below = Span(self.top + down, self.rows, self.label_height, self.row_gap)
        across.check("wide", self.paper_width, f"shifted by {_mm(right)} mm, ")
        below.check("high", self.paper_height, f"shifted by {_mm(down)} mm, ")


@dataclass(frozen=True)
class Span:
    """Labels in one line: the margin before them, their number, size, and the gap between them."""

    before: float
    count: int
    size: float
    gap: float

    @property
    def end(self) -> float:
        """Where the last label ends."""
        return self.before + self.count * self.size + (self.count - 1) * self.gap

    def check(self, side: str, paper: float, what: str = "") -> None:
        """Refuse labels that run off the paper, showing the sum."""
        if self.before < -HAIR:
            raise SheetError(f"{what}the labels would begin {_mm(-self.before)} mm outside the paper")
        if self.end > paper + HAIR:
            raise SheetError(f"{what}{self} mm, but the paper is {_mm(paper)} mm {side}")

    def __str__(self) -> str:
        gaps = f" + {self.count - 1} × {_mm(self.gap)}" if self.count > 1 and self.gap else ""
        return f"{_mm(self.before)} + {self.count} × {_mm(self.size)}{gaps} = {_mm(self.end)}"


def _mm(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")


A4_21 = LabelSheet(
    paper_width=210,
    paper_height=297,
    label_width=63.5,
    label_height=38.1,
    left=7.2,
    top=15.15,
    columns=3,
    rows=7,
    column_gap=2.5,
)
