"""A portrait never leaves its frame."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specimens.portraits import Portrait, draw_portrait
from specimens.portraits.shapes import HEIGHT, WIDTH, smoothed
from specimens.portraits.traits import STATES
from tests.specimens.portraits.cast import every_portrait


def reach(portrait: Portrait) -> tuple[float, float, float, float]:
    drawn = [
        (x, y, shape.width / 2) for shape in portrait.shapes + portrait.small for x, y in smoothed(shape, 6)
    ]
    return (
        min(x - r for x, _, r in drawn),
        min(y - r for _, y, r in drawn),
        max(x + r for x, _, r in drawn),
        max(y + r for _, y, r in drawn),
    )


def stays_inside(portrait: Portrait) -> bool:
    left, top, right, bottom = reach(portrait)
    return left > 8 and top > 8 and right < WIDTH - 8 and bottom < HEIGHT - 8


def test_every_look_stays_inside_the_frame() -> None:
    assert [seed for seed, portrait in every_portrait().items() if not stays_inside(portrait)] == []


def test_it_fills_the_frame_one_way_or_the_other() -> None:
    for seed, portrait in every_portrait().items():
        left, top, right, bottom = reach(portrait)
        assert right - left > WIDTH * 0.6 or bottom - top > HEIGHT * 0.6, seed


@settings(max_examples=60, deadline=None)
@given(
    seed=st.text(max_size=20),
    genus=st.sampled_from(["Platycerium", "Asplenium", ""]),
    traits=st.fixed_dictionaries({}, optional={t: st.sampled_from([*s, "odd"]) for t, s in STATES.items()}),
)
def test_any_seed_and_traits_stay_inside_the_frame(seed: str, genus: str, traits: dict[str, str]) -> None:
    assert stays_inside(draw_portrait(traits, seed=seed, genus=genus))


@pytest.mark.parametrize("seed", ["", "2026-0142-E", "蕨", "\ud800", "x" * 1000])
def test_any_text_is_a_seed(seed: str) -> None:
    assert draw_portrait({}, seed=seed).shapes
