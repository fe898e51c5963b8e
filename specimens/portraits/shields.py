"""Shield fronds: a ball of rounds, an upright basket, a ring that goes round."""

import math
from collections.abc import Iterator

from specimens.portraits.dice import Dice
from specimens.portraits.shapes import Point, Shape


def ball(dice: Dice, *, size: float, strength: float, fine: bool) -> Iterator[Shape]:
    """Rounds laid over each other, the newest in front, each with its veins."""
    tilt = dice.between(-0.3, 0.3)
    for layer in range(4):
        radius = size * (1.06 - 0.15 * layer)
        lobes, phase, deep = dice.whole(5, 8), dice.between(0, 6.3), dice.between(0.02, 0.06)
        cx, cy = size * dice.between(-0.09, 0.09), size * (0.05 + 0.05 * layer)
        if fine or layer in (0, 2):
            opacity = (0.3, 0.34, 0.42, 0.62)[layer] if fine else (0.4, 0, 0.85)[layer]
            yield Shape(_round(cx, cy, radius, lobes, phase + tilt, deep, fine), opacity * strength)
    if fine:
        yield from _veins(dice, size * 0.55, (0, size * 0.28), -2.9, 2.9, 11, strength)


def basket(dice: Dice, *, size: float, strength: float, fine: bool) -> Iterator[Shape]:
    """Upright fans with fingered tops, one behind the other."""
    for layer, (tilt, opacity) in enumerate([(-0.32, 0.36), (0.34, 0.36), (0.02, 0.62)]):
        height = size * dice.between(2.0, 2.3) * (1.0, 1.0, 0.86)[layer]
        fingers, lean = dice.whole(5, 7), tilt + dice.between(-0.08, 0.08)
        fan = _fan(dice, height, fingers, lean, spread=0.62)
        if fine or layer:
            yield Shape(fan, opacity * strength)
        if fine:
            yield from _veins(dice, height * 0.78, (0, size * 0.3), lean - 0.5, lean + 0.5, 6, strength)
    yield from ball_foot(dice, size, strength, fine)


def ball_foot(dice: Dice, size: float, strength: float, fine: bool) -> Iterator[Shape]:
    """The rounded foot below a basket."""
    phase = dice.between(0, 6.3)
    yield Shape(_round(0, size * 0.25, size * 0.5, 5, phase, 0.03, fine), 0.6 * strength)


def ring(dice: Dice, *, size: float, strength: float, fine: bool) -> Iterator[Shape]:
    """Tongues that stand all round, leaving a hollow in the middle."""
    count = dice.whole(11, 14)
    turn = dice.between(0, 1)
    for course, (reach, opacity) in enumerate([(1.5, 0.34), (1.15, 0.5)]):
        for number in range(count):
            angle = 2 * math.pi * (number + turn + course / 2) / count
            length = size * reach * dice.between(0.9, 1.08)
            if fine or course == 0:
                shown = opacity if fine else 0.6
                yield Shape(_tongue(angle, size * 0.42, length, size * 0.26, fine), shown * strength)


def _round(
    cx: float, cy: float, radius: float, lobes: int, phase: float, deep: float, fine: bool
) -> tuple[Point, ...]:
    steps = 22 if fine else 10
    angles = [2 * math.pi * step / steps for step in range(steps)]
    reach = [radius * (1 + deep * math.sin(lobes * angle + phase)) for angle in angles]
    return tuple(
        (cx + r * math.sin(a), cy - r * 0.94 * math.cos(a)) for r, a in zip(reach, angles, strict=True)
    )


def _fan(dice: Dice, height: float, fingers: int, lean: float, *, spread: float) -> tuple[Point, ...]:
    foot = height * 0.2

    def at(angle: float, reach: float) -> Point:
        return reach * math.sin(lean + angle), foot - reach * math.cos(lean + angle)

    width = 2 * spread / fingers
    points: list[Point] = [at(-spread * 1.5, foot * 0.9), at(-spread * 1.25, height * 0.5)]
    for finger in range(fingers):
        middle = -spread + width * (finger + 0.5)
        tall = height * (1.04 - 0.22 * (middle / spread) ** 2) * dice.between(0.94, 1.06)
        points += [
            at(middle - width * 0.34, tall * 0.9),
            at(middle, tall),
            at(middle + width * 0.3, tall * 0.92),
        ]
        if finger < fingers - 1:
            points.append(at(middle + width * 0.5, height * dice.between(0.66, 0.76)))
    points += [at(spread * 1.25, height * 0.5), at(spread * 1.5, foot * 0.9)]
    return tuple(points)


def _tongue(angle: float, inner: float, outer: float, half: float, fine: bool) -> tuple[Point, ...]:
    def at(reach: float, aside: float) -> Point:
        x, y = math.sin(angle), -math.cos(angle)
        return reach * x - aside * y, (reach * y + aside * x) * 0.92

    middle = inner + (outer - inner) * 0.62
    if not fine:
        return (
            at(inner, -half * 0.5),
            at(middle, -half),
            at(outer, 0),
            at(middle, half),
            at(inner, half * 0.5),
        )
    return (
        at(inner, -half * 0.5), at(middle, -half), at(outer * 0.96, -half * 0.55), at(outer, 0),
        at(outer * 0.96, half * 0.55), at(middle, half), at(inner, half * 0.5),
    )  # fmt: skip


def _veins(
    dice: Dice, reach: float, foot: Point, first: float, last: float, count: int, strength: float
) -> Iterator[Shape]:
    for number in range(count):
        angle = first + (last - first) * (number + 0.5) / count + dice.between(-0.08, 0.08)
        long, bend = reach * dice.between(0.75, 1.05), dice.between(-0.3, 0.3)
        marks = ((0.3, -bend), (0.65, 0.0), (1.0, bend))
        points = tuple(
            (foot[0] + long * share * math.sin(angle + turn), foot[1] - long * share * math.cos(angle + turn))
            for share, turn in marks
        )
        yield Shape(points, 0.13 * strength, width=0.7, dark=True)
