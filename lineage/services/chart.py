"""Where each plant of a drawing of ancestors stands: read downward in time, the plant itself at the foot.

Pure geometry: plants and their steps in, boxes and lines out, in user units of the drawing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lineage.services.ancestry import Relative, Step
from specimens.naming.names import Run

WIDTH, HEIGHT = 232, 84
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
    spots = _spots(relatives)
    rows = _rows(spots, relatives)
    widest = max(map(len, rows))
    width = 2 * MARGIN + widest * WIDTH + (widest - 1) * GAP_ACROSS
    boxes: dict[Spot, Box] = {}
    for level, row in enumerate(rows):
        boxes |= _row_boxes(level, row, len(rows), width, relatives)
    return Chart(
        boxes=tuple(boxes.values()),
        lines=tuple(_lines(boxes, relatives)),
        width=width,
        height=2 * MARGIN + len(rows) * HEIGHT + (len(rows) - 1) * GAP_DOWN,
        is_cut=any(relative.is_cut for relative in relatives.values()),
    )


# A spot is a plant's id, or (child's id, place among its parents) for a plant not known.
Spot = int | tuple[int, int]


def _spot(child: int, place: int, step: Step) -> Spot:
    return (child, place) if step.parent is None else step.parent


def _spots(relatives: Mapping[int, Relative]) -> dict[Spot, int]:
    """The level of each spot, counted upward from the plant itself: above every child of it."""
    level: dict[Spot, int] = {}
    waiting: list[tuple[Spot, int]] = [(next(iter(relatives)), 0)]
    while waiting:
        spot, height = waiting.pop()
        if level.get(spot, -1) >= height:
            continue
        level[spot] = height
        if isinstance(spot, int):
            steps = enumerate(relatives[spot].steps)
            waiting += [(_spot(spot, place, step), height + 1) for place, step in steps]
    return level


def _rows(spots: Mapping[Spot, int], relatives: Mapping[int, Relative]) -> list[list[Spot]]:
    """Spots by level, the plant itself first; in each row near their children."""
    rows: list[list[Spot]] = [[] for _ in range(max(spots.values()) + 1)]
    wish: dict[Spot, list[float]] = {}
    for spot, level in spots.items():
        rows[level].append(spot)
    for row in rows:
        row.sort(key=lambda spot: sum(wish.get(spot, [0])) / len(wish.get(spot, [0])))
        for place, spot in enumerate(row):
            across = (place + 0.5) / len(row)
            for order, step in enumerate(relatives[spot].steps if isinstance(spot, int) else ()):
                wish.setdefault(_spot(spot, order, step), []).append(across + order / 1000)
    return rows


def _row_boxes(
    level: int, row: list[Spot], levels: int, width: float, relatives: Mapping[int, Relative]
) -> dict[Spot, Box]:
    y = MARGIN + (levels - 1 - level) * (HEIGHT + GAP_DOWN)
    start = (width - len(row) * WIDTH - (len(row) - 1) * GAP_ACROSS) / 2
    made: dict[Spot, Box] = {}
    for place, spot in enumerate(row):
        relative = relatives[spot] if isinstance(spot, int) else None
        certainty = relative.certainty if relative else "unknown"
        dashes = {"assumed": "9 6", "unknown": "2 5"}.get(certainty, "")
        made[spot] = Box(start + place * (WIDTH + GAP_ACROSS), y, relative, dashes)
    return made


def _lines(boxes: Mapping[Spot, Box], relatives: Mapping[int, Relative]) -> list[Line]:
    lines = []
    for child, relative in relatives.items():
        below = boxes.get(child)
        for place, step in enumerate(relative.steps):
            above = boxes[_spot(child, place, step)]
            if below is not None:
                lines.append(_line(above, below, step))
    return lines


def _line(above: Box, below: Box, step: Step) -> Line:
    top, foot = above.y + HEIGHT, below.y
    bend = GAP_DOWN / 2
    path = (
        f"M{above.middle:g} {top:g} C{above.middle:g} {top + bend:g} "
        f"{below.middle:g} {foot - bend:g} {below.middle:g} {foot:g}"
    )
    kind = "spores" if step.spores else "clone"
    return Line(
        path, kind, step.certainty, step.words, (above.middle + below.middle) / 2 + 8, (top + foot) / 2 + 5
    )


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
