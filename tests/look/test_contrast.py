"""Text and ground stand at least 7 : 1 apart, edges and bars 3 : 1, by day, by night and on paper."""

import re

import pytest

from tests.look.contrast import contrast
from tests.look.stylesheets import every_rule, tokens

SCHEMES = ["light", "dark", "print"]
GROUNDS = ("paper", "sheet", "wash")
TEXT_ON_GROUND = [
    *[(text, ground) for text in ("ink", "quiet", "link") for ground in GROUNDS],
    *[(text, ground) for text in ("moss", "spore") for ground in ("paper", "sheet")],
    ("ink", "spore-wash"),
    ("ink", "moss-wash"),
    ("spore", "spore-wash"),
    ("moss", "moss-wash"),
    ("on-head", "head"),
    ("on-head-quiet", "head"),
    ("on-action", "action"),
    ("on-action", "action-near"),
    ("on-plate", "plate-deep"),
]
# What is told by a line or a bar and not by words: WCAG 2.2, 1.4.11. On paper grounds are not printed.
DRAWN_ON_GROUND = [
    *[("edge", ground) for ground in GROUNDS],
    *[("focus", ground) for ground in (*GROUNDS, "spore-wash")],
    *[("action", ground) for ground in GROUNDS],
    *[(bar, ground) for bar in ("mark", "spore") for ground in ("track", "sheet", "paper")],
]


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize(("text", "ground"), TEXT_ON_GROUND)
def test_text_can_be_read_on_its_ground(scheme: str, text: str, ground: str) -> None:
    colours = tokens(scheme)
    assert contrast(colours[f"--{text}"], colours[f"--{ground}"]) >= 7


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize(("drawn", "ground"), DRAWN_ON_GROUND)
def test_what_is_drawn_stands_out_from_its_ground(scheme: str, drawn: str, ground: str) -> None:
    colours = tokens(scheme)
    assert contrast(colours[f"--{drawn}"], colours[f"--{ground}"]) >= 3


def test_every_rule_that_sets_text_and_ground_sets_a_pair_that_is_checked() -> None:
    pairs = {
        (_token(rule.declared["color"]), _token(rule.declared["background"]))
        for _, rule in every_rule()
        if "color" in rule.declared and "background" in rule.declared
    }
    named = {(text, ground) for text, ground in pairs if text and ground}
    assert ("ink", "sheet") in named
    assert named <= set(TEXT_ON_GROUND)


def test_the_dark_scheme_is_dark_and_paper_is_white() -> None:
    dark, paper = tokens("dark"), tokens("print")
    assert contrast(dark["--paper"], "#000000") < 2
    assert (paper["--ink"], paper["--paper"]) == ("#000000", "#ffffff")


def _token(value: str) -> str:
    found = re.fullmatch(r"var\(--([a-z-]+)\)", value)
    return found[1] if found else ""
