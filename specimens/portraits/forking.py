"""A frond that forks: a tree of curved limbs, and the one outline that runs round all of them.

Headings are in radians from straight up, positive to the right. A pull above 0 bends every limb
towards the ground, below 0 towards the light.
"""

import math
from dataclasses import dataclass, field

from specimens.portraits.dice import Dice
from specimens.portraits.shapes import Point

Station = tuple[float, float, float, float]
"""A place on a limb: x, y, heading, half width."""


@dataclass(frozen=True)
class Habit:
    """How a frond grows: lengths in the units of the frame, angles in radians."""

    length: float
    half_width: float
    forks: int
    angle: float
    pull: float


@dataclass
class Limb:
    """A stretch from one fork to the next, and the two limbs it bears."""

    stations: list[Station]
    children: "tuple[Limb, Limb] | None" = field(default=None)


def frond(dice: Dice, start: Point, heading: float, habit: Habit) -> Limb:
    """Grow a frond from its stalk."""
    if habit.forks == 0:
        return Limb(_walk(start, heading, habit.length * 1.9, habit.pull, _wedge(habit.half_width * 1.3), 8))
    length = habit.length * (1.3 if habit.forks == 1 else 1)
    widths = _between(habit.half_width * 0.4, habit.half_width * 1.25)
    stations = _walk(start, heading, length, habit.pull, widths, 4)
    return Limb(stations, _fork(dice, stations[-1], habit, level=1))


def outline(limb: Limb, *, fine: bool = True) -> list[Point]:
    """Control points round the limb and all it bears, from its left foot over the tips to its right foot."""
    stations = limb.stations if fine else _fewer(limb)
    left = [_beside(station, -1) for station in stations]
    right = [_beside(station, +1) for station in reversed(stations)]
    if limb.children is None:
        tip = limb.stations[-1][:2]
        if fine or len(stations) > 2:
            return [*left[:-1], tip, tip, *right[1:]]
        # A lone point is reached three quarters of the way only: put it further out.
        foot = limb.stations[0]
        return [left[0], (foot[0] + (tip[0] - foot[0]) * 1.3, foot[1] + (tip[1] - foot[1]) * 1.3), right[-1]]
    one, other = (outline(child, fine=fine) for child in limb.children)
    # The two limbs part in one point: their edges there are the same, but for a hair.
    return [*left, *one[1:], *other[1:-1], *right]


def stalk_only(limb: Limb) -> list[Point]:
    """Control points round the undivided foot of the frond, drawn to a point where it would fork."""
    *body, top = limb.stations
    return [*(_beside(s, -1) for s in body), top[:2], top[:2], *(_beside(s, +1) for s in reversed(body))]


def _fork(dice: Dice, end: Station, habit: Habit, level: int) -> tuple[Limb, Limb]:
    share = dice.between(0.42, 0.58)
    angle = habit.angle * 0.88**level
    tilt = angle * (share - 0.5) * 2
    return (
        _limb(dice, end, -1, share, -angle + tilt, habit, level),
        _limb(dice, end, +1, 1 - share, angle + tilt, habit, level),
    )


def _limb(
    dice: Dice,
    end: Station,
    side: int,
    share: float,
    turn: float,
    habit: Habit,
    level: int,
) -> Limb:
    x, y, heading, half = end
    own = half * share
    # The limb takes its share of the parent's width, so that their edges run on into each other.
    aside = side * (half - own)
    start = (x + aside * math.cos(heading), y + aside * math.sin(heading))
    length = dice.about(habit.length * 0.74**level, 0.14) * (0.75 + 0.5 * share)
    last = level >= habit.forks - (1 if level > 1 and dice.chance(0.22) else 0)
    pull, bend = habit.pull, -turn * 0.55 / length
    if last:
        return Limb(_walk(start, heading + turn, length * 1.15, pull, _taper(own), 4, bend))
    widths = _between(own, max(own * 1.15, habit.half_width * 0.34))
    stations = _walk(start, heading + turn, length, pull, widths, 3, bend)
    return Limb(stations, _fork(dice, stations[-1], habit, level + 1))


class _Widths:
    """Half widths along a limb, by the share of its length."""

    def __init__(self, marks: list[tuple[float, float]]) -> None:
        self.marks = marks

    def at(self, share: float) -> float:
        for (before, low), (after, high) in zip(self.marks, self.marks[1:], strict=False):
            if share <= after:
                return low + (high - low) * (share - before) / (after - before)
        return self.marks[-1][1]


def _between(foot: float, top: float) -> _Widths:
    return _Widths([(0, foot), (0.5, min(foot, top) * 0.95), (1, top)])


def _taper(foot: float) -> _Widths:
    return _Widths([(0, foot), (0.35, foot * 0.96), (0.75, foot * 0.62), (1, 0)])


def _wedge(top: float) -> _Widths:
    return _Widths([(0, top * 0.25), (0.35, top * 0.5), (0.75, top), (0.93, top * 0.8), (1, 0)])


def _walk(
    start: Point, heading: float, length: float, pull: float, widths: _Widths, steps: int, bend: float = 0.0
) -> list[Station]:
    x, y = start
    stride = length / steps
    stations = [(x, y, heading, widths.at(0))]
    for step in range(1, steps + 1):
        heading += stride * (pull * math.sin(heading) + bend)
        x, y = x + stride * math.sin(heading), y - stride * math.cos(heading)
        stations.append((x, y, heading, widths.at(step / steps)))
    return stations


def _beside(station: Station, side: int) -> Point:
    x, y, heading, half = station
    return x + side * half * math.cos(heading), y + side * half * math.sin(heading)


def _fewer(limb: Limb) -> list[Station]:
    first, *between, last = limb.stations
    middle = between[len(between) * 2 // 3]
    return [first, middle, last] if len(between) > 4 else [first, last]
