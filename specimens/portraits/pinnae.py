"""Blades divided once, twice or three times: pinnae in pairs along a midrib, shorter towards the tip."""

import math
from collections.abc import Iterator

from specimens.portraits.axis import Axis
from specimens.portraits.dice import Dice
from specimens.portraits.shapes import Point, Shape
from specimens.portraits.traits import FAINT, Look

LENGTH = 190.0
PAIRS = {"once_divided": 21, "twice_divided": 16, "thrice_divided": 9}
BARE_STALK = {"lance": 0.13, "triangular": 0.3, "round": 0.27}
WHITE = 0.86
# Round one tooth of a pinna: (along the pinna, in widths of a tooth; outwards, in its length).
TOOTH = ((0.0, 0.2), (0.3, 1.15), (1.0, 1.15))


def divided(dice: Dice, kind: Look, form: Look, *, fine: bool) -> list[Shape]:
    """One whole blade: its leaflets, the ribs that bear them, the midrib."""
    known = kind.known and form.known
    strength = 1 if known else FAINT
    straight = 0.5 if form.state == "round" else 1
    axis = Axis((0, 0), straight * dice.between(-0.16, 0.16), LENGTH, straight * dice.between(-0.3, 0.3))
    pinnae = list(_pinnae(dice, axis, kind.state, form.state))
    leaflets = [points for pinna, room in pinnae for points in _leaflets(pinna, kind.state, room, fine)]
    tip = axis.beside(1.02, 0)
    leaflets.append([axis.beside(0.94, -1.8), tip, tip, axis.beside(0.94, 1.8)])
    shapes = [Shape(tuple(points), WHITE * strength, known=known) for points in leaflets]
    if kind.state == "thrice_divided" and fine:
        shapes += [
            Shape(_rib(pinna, 3, 0.95), WHITE * strength, width=0.9, known=known) for pinna, _ in pinnae
        ]
    return [*shapes, Shape(_rib(axis, 8 if fine else 4, 1.0), 0.95 * strength, width=1.7, known=known)]


def _pinnae(dice: Dice, axis: Axis, kind: str, form: str) -> Iterator[tuple[Axis, float]]:
    """The midrib of each pinna, with the room it has up and down the blade."""
    stalk = BARE_STALK[form]
    pairs = round(PAIRS[kind] * (0.8 if form == "round" else 1)) + dice.whole(-1, 1)
    for pair in range(pairs):
        share = pair / pairs
        at = stalk + (1 - stalk) * (1 - (1 - share) ** 1.18)
        room = LENGTH * (1 - stalk) / pairs * (1.1 - share * 0.45)
        for side in (-1, 1):
            reach = _reach(share, form) * dice.about(1, 0.05)
            x, y, heading = axis.at(at + side * 0.12 / pairs)
            angle = 1.3 - (0.42 if form == "round" else 0.55) * share
            yield Axis((x, y), heading + side * angle, reach, -side * 0.34), room


def _reach(share: float, form: str) -> float:
    """How long the pinnae are at this share of the blade."""
    if form == "triangular":
        return 80 * float((1 - share) ** 0.95) + 2
    round_ = form == "round"
    longest, foot, peak, fall = (76, 0.72, 0.4, 1.0) if round_ else (50, 0.45, 0.36, 1.35)
    if share < peak:
        part = foot + (1 - foot) * math.sin(math.pi / 2 * share / peak)
    else:
        part = float(math.cos(math.pi / 2 * (share - peak) / (1 - peak)) ** fall)
    return longest * part + 1.5


def _leaflets(pinna: Axis, kind: str, room: float, fine: bool) -> Iterator[list[Point]]:
    if kind == "thrice_divided" and fine:
        yield from _pinnules(pinna, room)
    elif kind == "thrice_divided":
        yield _comb(pinna, min(room * 0.5, pinna.length * 0.3), count=max(2, round(pinna.length / 18)))
    elif kind == "twice_divided" and fine:
        teeth = min(13, max(3, round(pinna.length / 4.6)))
        yield _comb(pinna, min(room * 0.55, pinna.length * 0.25), count=teeth)
    else:
        yield _leaflet(pinna, min(room * 0.42, pinna.length * 0.3), fine)


def _leaflet(axis: Axis, half: float, fine: bool) -> list[Point]:
    """An undivided leaflet."""
    marks = ((0.02, 0.55), (0.2, 1.0), (0.55, 0.92), (0.85, 0.5)) if fine else ((0.3, 1.5),)
    tip, foot = axis.beside(1, 0), axis.beside(0, 0)
    left = [axis.beside(share, -half * wide) for share, wide in marks]
    right = [axis.beside(share, half * wide) for share, wide in reversed(marks)]
    return [*left, tip, tip, *right] if fine else [foot, *left, tip, *right]


def _comb(axis: Axis, half: float, *, count: int) -> list[Point]:
    """A pinna cut into rounded teeth almost to its midrib."""
    tip = axis.beside(1, 0)
    return [*_teeth(axis, count, -half), tip, tip, *reversed(_teeth(axis, count, half))]


def _teeth(axis: Axis, count: int, half: float) -> list[Point]:
    points: list[Point] = []
    for tooth in range(count):
        foot = tooth / count
        long = half * ((1 - foot) ** 0.85 * 0.96 + 0.04) * (0.85 if tooth == 0 else 1)
        points += [axis.beside(foot + along / count, long * out) for along, out in TOOTH]
    return points


def _pinnules(pinna: Axis, room: float) -> Iterator[list[Point]]:
    """Leaflets set along both sides of a pinna, each lobed in its turn."""
    longest = min(room * 0.66, pinna.length * 0.4)
    count = min(5, max(2, round(pinna.length / 8.6)))
    for number in range(count):
        share = (number + 0.35) / (count + 0.2)
        for side in (-1, 1):
            x, y, heading = pinna.at(share + side * 0.1 / count)
            length = longest * ((1 - share) ** 0.8 * 0.88 + 0.12)
            yield _lobed(Axis((x, y), heading + side * 0.95, length, -side * 0.3), length * 0.3)
    x, y, heading = pinna.at(0.93)
    yield _lobed(Axis((x, y), heading, min(6.0, pinna.length * 0.1) + 1.5, 0), 1.6)


def _lobed(axis: Axis, half: float) -> list[Point]:
    """A pinnule with two lobes below its tip."""
    marks = ((0.05, 0.5), (0.4, 1.35), (0.58, 0.6))
    tip = axis.beside(1.18, 0)
    left = [axis.beside(share, -half * wide) for share, wide in marks]
    return [*left, tip, *(axis.beside(share, half * wide) for share, wide in reversed(marks))]


def _rib(axis: Axis, steps: int, end: float) -> tuple[Point, ...]:
    return tuple(axis.beside(end * step / steps, 0) for step in range(steps + 1))
