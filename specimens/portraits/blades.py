"""Other ferns: a tuft of undivided straps here, divided blades by their pinnae."""

import math
from collections.abc import Iterator, Mapping

from specimens.portraits.axis import Axis
from specimens.portraits.dice import Dice
from specimens.portraits.pinnae import divided
from specimens.portraits.shapes import Point, Shape
from specimens.portraits.traits import FAINT, Look, look


def blade(traits: Mapping[str, str], seed: str) -> tuple[list[Shape], list[Shape]]:
    """All shapes of one fern, in full and small, the hindmost first."""
    return _blade(traits, seed, fine=True), _blade(traits, seed, fine=False)


def _blade(traits: Mapping[str, str], seed: str, *, fine: bool) -> list[Shape]:
    kind, form = look(traits, "blade"), look(traits, "outline")
    dice = Dice(seed + "/blade")
    if kind.state == "strap":
        return list(_straps(dice, kind, form, fine))
    return divided(dice, kind, form, fine=fine)


def _straps(dice: Dice, kind: Look, form: Look, fine: bool) -> Iterator[Shape]:
    known = kind.known and form.known
    strength = 1 if known else FAINT
    count = dice.whole(6, 8)
    half = {"lance": 9.0, "triangular": 10.5, "round": 13.0}[form.state]
    for place in sorted(range(count), key=lambda place: -abs(2 * place - count + 1)):
        across = 2 * place / (count - 1) - 1
        length = dice.about(170 - 52 * abs(across), 0.06)
        axis = Axis((across * 5, 0), across * 0.5 + dice.between(-0.06, 0.06), length, across * 0.62)
        opacity = (0.52 + 0.34 * (1 - abs(across))) * strength
        yield Shape(tuple(_strap(dice, axis, dice.about(half), form.state, fine)), opacity, known=known)
        if fine:
            rib = tuple(axis.beside(share / 6 * 0.94, 0) for share in range(1, 7))
            yield Shape(rib, 0.35 * strength, width=0.9, dark=True, known=known)


def _strap(dice: Dice, axis: Axis, half: float, form: str, fine: bool) -> list[Point]:
    steps, waves = (18, dice.whole(6, 9)) if fine else (6, dice.whole(6, 9))
    sides: list[list[Point]] = []
    for side in (-1, 1):
        phase = dice.between(0, 6.3)
        edge = []
        for step in range(steps):
            share = step / steps
            wave = 1 + (0.09 * math.sin(waves * 6.283 * share + phase) if fine else 0)
            edge.append(axis.beside(share, side * half * _strap_width(share, form) * wave))
        sides.append(edge)
    tip = axis.beside(1, 0)
    return [*sides[0], tip, tip, *reversed(sides[1])]


def _strap_width(share: float, form: str) -> float:
    if form == "triangular":
        return (0.2 + 6 * share if share < 0.2 else 1.4) * float((1 - share**1.2) ** 0.8)
    if form == "round":
        return 0.2 + 0.9 * float(math.sin(math.pi * share**0.9) ** 0.7) if share < 0.97 else 0.3
    return 0.22 + 0.85 * math.sin(math.pi * share**0.75 * 0.93)
