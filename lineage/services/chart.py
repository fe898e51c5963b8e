"""Where each plant of a drawing of ancestors stands: read downward in time, the plant itself at the foot.

Pure geometry: plants and their steps in, boxes and lines out, in user units of the drawing.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise

from lineage.services.ancestry import Relative
from lineage.services.chart_rows import Spot, Way, rows_and_ways
from lineage.services.chart_words import wrapped, wrapped_words
from specimens.naming.names import Run

WIDTH, HEIGHT = 248, 84
INSET, FIRST_LINE, LINE = 12, 27, 20
PASSAGE = 24
GAP_ACROSS, GAP_DOWN = 26, 62
MARGIN = 14
LETTERS, NOTE_LETTERS = 28, 28
NOT_KNOWN = (Run("a plant not known", "roman"),)


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
    def text_x(self) -> float:
        return self.x + INSET

    @property
    def name_lines(self) -> list[tuple[float, tuple[Run, ...]]]:
        """The whole name, each line with the height it stands at."""
        return [(self.y + FIRST_LINE + place * LINE, runs) for place, runs in enumerate(_name(self.relative))]

    @property
    def code_y(self) -> float:
        return self.y + FIRST_LINE + len(_name(self.relative)) * LINE + 2

    @property
    def note_lines(self) -> list[tuple[float, str]]:
        """How it came, each line with the height it stands at."""
        return [(self.code_y + (place + 1) * LINE, words) for place, words in enumerate(_note(self.relative))]


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
    box_height: float

    box_width = WIDTH


def draw(relatives: Mapping[int, Relative]) -> Chart:
    """The chart of a plant and its ancestors, given children before parents; the first is the plant itself."""
    rows, ways = rows_and_ways(relatives)
    widths = [_width(row) for row in rows]
    tall = _height(relatives.values())
    width = 2 * MARGIN + max(widths)
    corners: dict[Spot, tuple[float, float]] = {}
    for level, row in enumerate(rows):
        top = MARGIN + (len(rows) - 1 - level) * (tall + GAP_DOWN)
        corners |= _corners(row, (width - widths[level]) / 2, top)
    return Chart(
        boxes=tuple(_box(spot, corner, relatives) for spot, corner in corners.items() if not spot.is_passing),
        lines=tuple(_line(way, corners, tall) for way in ways),
        width=width,
        height=2 * MARGIN + len(rows) * tall + (len(rows) - 1) * GAP_DOWN,
        is_cut=any(relative.is_cut for relative in relatives.values()),
        box_height=tall,
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


def _line(way: Way, corners: Mapping[Spot, tuple[float, float]], tall: float) -> Line:
    """Down from the parent, straight through each row it passes, to the child."""
    points = [(corners[spot][0] + _breadth(spot) / 2, corners[spot][1]) for spot in reversed(way.spots)]
    x, y = points[0]
    path = [f"M{x:g} {y + tall:g}"]
    for (x1, y1), (x2, y2) in pairwise(points):
        start, bend = y1 + tall, GAP_DOWN / 2
        path.append(f"C{x1:g} {start + bend:g} {x2:g} {y2 - bend:g} {x2:g} {y2:g}")
        if (x2, y2) != points[-1]:
            path.append(f"V{y2 + tall:g}")
    # Beside the foot of the line, where it runs straight down.
    words_at = (points[-1][0] + 10, points[-1][1] - 9)
    kind = "spores" if way.step.spores else "clone"
    return Line(" ".join(path), kind, way.step.certainty, way.step.words, *words_at)


def _name(relative: Relative | None) -> tuple[tuple[Run, ...], ...]:
    return wrapped(relative.runs if relative else NOT_KNOWN, LETTERS)


def _note(relative: Relative | None) -> tuple[str, ...]:
    return wrapped_words(relative.note, NOTE_LETTERS) if relative and relative.note else ()


def _height(relatives: Iterable[Relative]) -> float:
    """All boxes are as high as the one with the most to say."""
    return HEIGHT + LINE * max(len(_name(each)) + len(_note(each)) - 2 for each in relatives)
