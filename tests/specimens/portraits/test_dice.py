"""Chance comes from the seed alone and stays the same for ever."""

import random

from specimens.portraits.dice import Dice


def test_the_first_throws_of_a_seed_never_change() -> None:
    dice = Dice("2026-0142-E")
    assert [dice.whole(0, 999) for _ in range(5)] == [46, 839, 179, 457, 64]


def test_two_seeds_throw_differently() -> None:
    one, other = Dice("a"), Dice("b")
    assert [one.whole(0, 99) for _ in range(8)] != [other.whole(0, 99) for _ in range(8)]


def test_throws_fill_their_range_and_stay_inside() -> None:
    dice = Dice("range")
    assert {dice.whole(1, 6) for _ in range(200)} == {1, 2, 3, 4, 5, 6}
    numbers = [dice.between(-2, 3) for _ in range(500)]
    assert -2 <= min(numbers) < -1.8
    assert 2.8 < max(numbers) < 3


def test_a_share_of_chances_comes_true() -> None:
    dice = Dice("share")
    assert 200 < sum(dice.chance(0.25) for _ in range(1000)) < 300


def test_python_s_own_dice_are_left_alone() -> None:
    before = random.getstate()
    Dice("x").between(0, 1)
    assert random.getstate() == before
