"""Staghorn ferns: shield fronds round the foot, forking fertile fronds."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace

from specimens.portraits import shields
from specimens.portraits.dice import Dice
from specimens.portraits.forking import Habit, Limb, frond, outline, stalk_only
from specimens.portraits.shapes import Shape
from specimens.portraits.traits import FAINT, Look, look

SHIELDS = {"ball": shields.ball, "basket": shields.basket, "ring": shields.ring}
HALF_WIDTHS = {"narrow": 2.7, "medium": 4.6, "broad": 8.2}
FORKS = {"unforked": 0, "two": 1, "few": 2, "many": 3}
# A small drawing leaves out pairs of fronds, counted from the back, until eight are left.
FEWEST, SKIPPED = 8, (2, 3, 6, 7)
FRONDS = {"narrow": 10, "medium": 8, "broad": 6}
# Outermost and innermost heading (degrees from straight up), pull towards the ground, length.
POSTURES = {
    "erect": (64, 4, -0.004, 1.15),
    "spreading": (108, 9, 0.004, 1.0),
    "arching": (88, 9, 0.016, 1.12),
    "hanging": (150, 62, 0.024, 1.25),
}


def staghorn(traits: Mapping[str, str], seed: str, *, fine: bool) -> list[Shape]:
    """All shapes of one plant, the hindmost first; its middle is at (0, 0)."""
    shield = look(traits, "shield_fronds")
    draw_shield = SHIELDS[shield.state]
    size = Dice(seed + "/size").between(24, 29)
    drawn = draw_shield(Dice(seed + "/shield"), size=size, strength=shield.strength, fine=fine)
    behind = [replace(shape, known=shield.known) for shape in drawn]
    fronds = list(_fertile(Dice(seed + "/fronds"), traits, fine=fine))
    # A ball covers the feet of the fronds, a basket or a ring stands behind them.
    return [*fronds, *behind] if shield.state == "ball" else [*behind, *fronds]


def _fertile(dice: Dice, traits: Mapping[str, str], *, fine: bool) -> Iterator[Shape]:
    posture, forks, breadth = (look(traits, trait) for trait in ("fertile_fronds", "forks", "breadth"))
    count = FRONDS[breadth.state] + 2 * dice.whole(0, 1)
    habit = _habit(dice, posture, forks, breadth)
    for order, place in enumerate(_from_the_back(count)):
        heading = _heading(dice, place, count, posture)
        shorter = 0.28 * abs(2 * place / (count - 1) - 1) if posture.state == "erect" else 0
        own = replace(habit, length=dice.about(habit.length * (1 - shorter), 0.1))
        start = (6 * math.sin(heading), 4 - 6 * math.cos(heading))
        limb = frond(dice, start, heading, own)
        opacity = 0.62 + 0.3 * (1 - abs(2 * place / (count - 1) - 1))
        if not fine and count > FEWEST and order in SKIPPED[: count - FEWEST]:
            continue
        yield from _drawn(limb, posture, forks, breadth, opacity if fine else 0.85, fine)


def _habit(dice: Dice, posture: Look, forks: Look, breadth: Look) -> Habit:
    _, _, pull, long = POSTURES[posture.state]
    return Habit(
        length=dice.about(44 * long, 0.06),
        half_width=dice.about(HALF_WIDTHS[breadth.state], 0.1),
        forks=FORKS[forks.state],
        angle=dice.between(0.42, 0.56),
        pull=pull,
    )


def _drawn(
    limb: Limb, posture: Look, forks: Look, breadth: Look, opacity: float, fine: bool
) -> Iterator[Shape]:
    known = posture.known and forks.known and breadth.known
    yield Shape(tuple(outline(limb, fine=fine)), opacity * (1 if known else FAINT), known=known)
    if fine and posture.known and breadth.known and not forks.known:
        yield Shape(tuple(stalk_only(limb)), opacity * 0.6)


def _from_the_back(count: int) -> list[int]:
    """Places from left to right, the outermost first, so that the middle stands in front."""
    return sorted(range(count), key=lambda place: (-abs(2 * place - count + 1), place))


def _heading(dice: Dice, place: int, count: int, posture: Look) -> float:
    outer, inner, _, _ = POSTURES[posture.state]
    across = 2 * place / (count - 1) - 1  # -1 far left, 1 far right; the count is even, so never 0
    degrees = inner + (outer - inner) * abs(across) + dice.between(-6, 6)
    return math.radians(math.copysign(degrees, across))
