"""Where each plant of a drawing of ancestors stands: read downward in time, the plant itself at the foot.

Pure geometry: plants and their steps in, boxes and lines out, in user units of the drawing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from lineage.services.ancestry import Relative
from lineage.services.chart_rows import Spot, Way, rows_and_ways
from specimens.naming.names import Run

WIDTH, HEIGHT = 232, 84
PASSAGE = 24
GAP_ACROSS, GAP_DOWN = 26, 62
MARGIN = 14
LETTERS, NOTE_LETTERS = 25, 29


@dataclass(frozen=True, slots=True)
class Box:
    """One plant; x and y are its upper left corner. `relative` None is a plant not known."""

    x: float
    y: float
    relative: Relative | None
    dashes: str = ""

    @property
    def middle(self) -> float:
        return self.x + WIDTH / 2

    @property
    def name_y(self) -> float:
        return self.y + 27

    @property
    def code_y(self) -> float:
        return self.y + 49

    @property
    def note_y(self) -> float:
        return self.y + 70

    @property
    def text_x(self) -> float:
        return self.x + 12

    @property
    def note(self) -> str:
        """How it came; cut where the box ends."""
        note = self.relative.note if self.relative else ""
        return note if len(note) <= NOTE_LETTERS else f"{note[: NOTE_LETTERS - 1]}…"

    @property
    def runs(self) -> tuple[Run, ...]:
        return shortened(self.relative.runs) if self.relative else (Run("a plant not known", "roman"),)


@dataclass(frozen=True, slots=True)
class Line:
    """One step, from parent down to child, as the path of an SVG; `words` stand beside its middle."""

    path: str
    kind: str
    certainty: str
    words: str
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Chart:
    boxes: tuple[Box, ...]
    lines: tuple[Line, ...]
    width: float
    height: float
    is_cut: bool

    box_width = WIDTH
    box_height = HEIGHT


def draw(relatives: Mapping[int, Relative]) -> Chart:
    """The chart of a plant and its ancestors, given children before parents; the first is the plant itself."""
    rows, ways = rows_and_ways(relatives)
    widths = [_width(row) for row in rows]
    width = 2 * MARGIN + max(widths)
    corners: dict[Spot, tuple[float, float]] = {}
    for level, row in enumerate(rows):
        top = MARGIN + (len(rows) - 1 - level) * (HEIGHT + GAP_DOWN)
        corners |= _corners(row, (width - widths[level]) / 2, top)
    return Chart(
        boxes=tuple(_box(spot, corner, relatives) for spot, corner in corners.items() if not spot.is_passing),
        lines=tuple(_line(way, corners) for way in ways),
        width=width,
        height=2 * MARGIN + len(rows) * HEIGHT + (len(rows) - 1) * GAP_DOWN,
        is_cut=any(relative.is_cut for relative in relatives.values()),
    )


def _breadth(spot: Spot) -> float:
    return PASSAGE if spot.is_passing else WIDTH


def _width(row: list[Spot]) -> float:
    return sum(map(_breadth, row)) + (len(row) - 1) * GAP_ACROSS


def _corners(row: list[Spot], x: float, y: float) -> dict[Spot, tuple[float, float]]:
    placed = {}
    for spot in row:
        placed[spot] = (x, y)
        x += _breadth(spot) + GAP_ACROSS
    return placed


def _box(spot: Spot, corner: tuple[float, float], relatives: Mapping[int, Relative]) -> Box:
    relative = relatives[spot.id] if spot.id is not None else None
    certainty = relative.certainty if relative else "unknown"
    return Box(*corner, relative, {"assumed": "9 6", "unknown": "2 5"}.get(certainty, ""))


def _line(way: Way, corners: Mapping[Spot, tuple[float, float]]) -> Line:
    """Down from the parent, straight through each row it passes, to the child."""
    points = [(corners[spot][0] + _breadth(spot) / 2, corners[spot][1]) for spot in reversed(way.spots)]
    x, y = points[0]
    path = [f"M{x:g} {y + HEIGHT:g}"]
    for (x1, y1), (x2, y2) in pairwise(points):
        start, bend = y1 + HEIGHT, GAP_DOWN / 2
        path.append(f"C{x1:g} {start + bend:g} {x2:g} {y2 - bend:g} {x2:g} {y2:g}")
        if (x2, y2) != points[-1]:
            path.append(f"V{y2 + HEIGHT:g}")
    # Beside the foot of the line, where it runs straight down.
    words_at = (points[-1][0] + 10, points[-1][1] - 9)
    kind = "spores" if way.step.spores else "clone"
    return Line(" ".join(path), kind, way.step.certainty, way.step.words, *words_at)


def shortened(runs: tuple[Run, ...]) -> tuple[Run, ...]:
    """As much of a name as a box holds, with an ellipsis where it is cut."""
    if sum(len(run.text) for run in runs) <= LETTERS:
        return runs
    kept: list[Run] = []
    room = LETTERS - 1
    for run in runs:
        kept.append(Run(run.text[:room], run.style))
        room -= len(run.text)
        if room <= 0:
            break
    return (*kept, Run("…", "roman"))
