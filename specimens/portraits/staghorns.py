"""Staghorn ferns: shield fronds round the foot, forking fertile fronds."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

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


@dataclass(frozen=True)
class Fertile:
    """One fertile frond as it grew, and how it is drawn."""

    limb: Limb
    opacity: float
    in_small: bool


def staghorn(traits: Mapping[str, str], seed: str) -> tuple[list[Shape], list[Shape]]:
    """All shapes of one plant, in full and small, the hindmost first; its middle is at (0, 0)."""
    fronds = list(_fertile(Dice(seed + "/fronds"), traits))
    return _composed(traits, seed, fronds, fine=True), _composed(traits, seed, fronds, fine=False)


def _composed(traits: Mapping[str, str], seed: str, fronds: list[Fertile], *, fine: bool) -> list[Shape]:
    shield = look(traits, "shield_fronds")
    size = Dice(seed + "/size").between(24, 29)
    drawn = SHIELDS[shield.state](Dice(seed + "/shield"), size=size, strength=shield.strength, fine=fine)
    shield_shapes = [replace(shape, known=shield.known) for shape in drawn]
    shown = [shape for one in fronds if fine or one.in_small for shape in _drawn(one, traits, fine)]
    # A ball covers the feet of the fronds, a basket or a ring stands behind them.
    return [*shown, *shield_shapes] if shield.state == "ball" else [*shield_shapes, *shown]


def _fertile(dice: Dice, traits: Mapping[str, str]) -> Iterator[Fertile]:
    posture, forks, breadth = (look(traits, trait) for trait in ("fertile_fronds", "forks", "breadth"))
    count = FRONDS[breadth.state] + 2 * dice.whole(0, 1)
    habit = _habit(dice, posture, forks, breadth)
    for order, place in enumerate(_from_the_back(count)):
        heading = _heading(dice, place, count, posture)
        outward = abs(2 * place / (count - 1) - 1)
        shorter = 0.28 * outward if posture.state == "erect" else 0
        own = replace(habit, length=dice.about(habit.length * (1 - shorter), 0.1))
        start = (6 * math.sin(heading), 4 - 6 * math.cos(heading))
        in_small = count <= FEWEST or order not in SKIPPED[: count - FEWEST]
        yield Fertile(frond(dice, start, heading, own), 0.62 + 0.3 * (1 - outward), in_small)


def _habit(dice: Dice, posture: Look, forks: Look, breadth: Look) -> Habit:
    _, _, pull, long = POSTURES[posture.state]
    return Habit(
        length=dice.about(44 * long, 0.06),
        half_width=dice.about(HALF_WIDTHS[breadth.state], 0.1),
        forks=FORKS[forks.state],
        angle=dice.between(0.42, 0.56),
        pull=pull,
    )


def _drawn(one: Fertile, traits: Mapping[str, str], fine: bool) -> Iterator[Shape]:
    posture, forks, breadth = (look(traits, trait).known for trait in ("fertile_fronds", "forks", "breadth"))
    known = posture and forks and breadth
    opacity = one.opacity if fine else 0.85
    points = tuple(outline(one.limb, fine=fine))
    yield Shape(points, opacity * (1 if known else FAINT), known=known)
    if fine and posture and breadth and not forks:
        yield Shape(tuple(stalk_only(one.limb)), opacity * 0.6)


def _from_the_back(count: int) -> list[int]:
    """Places from left to right, the outermost first, so that the middle stands in front."""
    return sorted(range(count), key=lambda place: (-abs(2 * place - count + 1), place))


def _heading(dice: Dice, place: int, count: int, posture: Look) -> float:
    outer, inner, _, _ = POSTURES[posture.state]
    across = 2 * place / (count - 1) - 1  # -1 far left, 1 far right; the count is even, so never 0
    degrees = inner + (outer - inner) * abs(across) + dice.between(-6, 6)
    return math.radians(math.copysign(degrees, across))
