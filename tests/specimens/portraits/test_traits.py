"""A portrait shows what is known of a plant, and what is not known is faint."""

from itertools import pairwise

import pytest

from specimens.portraits import Portrait, draw_portrait, drawing
from specimens.portraits.dice import Dice
from specimens.portraits.forking import Habit, frond, outline
from specimens.portraits.shapes import smoothed
from specimens.portraits.traits import FAINT
from tests.specimens.portraits.cast import LACE, TASSEL


def middle_height(portrait: Portrait) -> float:
    heights = [y for shape in portrait.shapes if shape.opacity > 0.6 for _, y in smoothed(shape, 1)]
    return sum(heights) / len(heights)


def tips(forks: int, seed: str) -> int:
    """A tip is the only doubled point of an outline."""
    habit = Habit(length=40, half_width=5, forks=forks, angle=0.5, pull=0)
    points = outline(frond(Dice(seed), (0, 0), 0.1, habit))
    return sum(a == b for a, b in pairwise(points))


def test_a_plant_keeps_its_picture_and_has_its_own() -> None:
    before = draw_portrait(TASSEL, seed="2026-0142-E")
    drawing._drawn.cache_clear()
    assert draw_portrait(dict(TASSEL), seed="2026-0142-E") == before
    assert (
        draw_portrait(TASSEL, seed="2026-0142-E").shapes != draw_portrait(TASSEL, seed="2026-0143-B").shapes
    )


@pytest.mark.parametrize("seed", ["a", "b", "c", "d"])
def test_a_frond_forks_as_often_as_it_is_said_to(seed: str) -> None:
    assert tips(0, seed) == 1
    assert tips(1, seed) == 2
    assert 3 <= tips(2, seed) <= 4
    assert 4 <= tips(3, seed) <= 8


@pytest.mark.parametrize("seed", ["a", "b", "c", "d"])
def test_erect_fronds_stand_above_hanging_ones_below(seed: str) -> None:
    def lift(state: str) -> float:
        portrait = draw_portrait(TASSEL | {"fertile_fronds": state}, seed=seed)
        shield = [y for shape in portrait.shapes[-4:] for _, y in shape.points]
        return sum(shield) / len(shield) - middle_height(portrait)

    assert lift("erect") > lift("arching") > lift("hanging")
    assert lift("erect") > 0 > lift("hanging")


@pytest.mark.parametrize("trait", ["shield_fronds", "fertile_fronds", "forks", "breadth"])
def test_every_trait_changes_a_staghorn(trait: str) -> None:
    other = {"shield_fronds": "ring", "fertile_fronds": "hanging", "forks": "two", "breadth": "broad"}
    changed = TASSEL | {trait: other[trait]}
    assert draw_portrait(changed, seed="x").shapes != draw_portrait(TASSEL, seed="x").shapes


@pytest.mark.parametrize("trait", ["blade", "outline"])
def test_every_trait_changes_a_blade(trait: str) -> None:
    changed = LACE | {trait: {"blade": "strap", "outline": "round"}[trait]}
    assert draw_portrait(changed, seed="x", genus="Davallia") != draw_portrait(
        LACE, seed="x", genus="Davallia"
    )


@pytest.mark.parametrize("genus", ["Platycerium", "Davallia"])
def test_a_plant_of_which_nothing_is_known_is_faint_all_over(genus: str) -> None:
    portrait = draw_portrait({}, seed="x", genus=genus)
    for shape in portrait.shapes + portrait.small:
        assert shape.opacity <= FAINT
        assert not shape.known


def test_only_what_is_not_known_is_faint() -> None:
    shapes = draw_portrait({**TASSEL, "shield_fronds": ""}, seed="x").shapes
    assert max(shape.opacity for shape in shapes if not shape.known) <= FAINT
    assert min(shape.opacity for shape in shapes if shape.known) > 0.6


def test_a_state_we_cannot_draw_counts_as_not_known() -> None:
    odd = draw_portrait({**TASSEL, "shield_fronds": "umbrella"}, seed="x")
    assert odd == draw_portrait({**TASSEL, "shield_fronds": ""}, seed="x")


def test_a_known_plant_has_no_faint_part() -> None:
    portrait = draw_portrait(TASSEL, seed="x")
    assert all(shape.known for shape in portrait.shapes + portrait.small)
