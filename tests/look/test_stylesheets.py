"""One design system: colours only among the tokens, no small print, nothing that moves unasked."""

import re

from tests.look.stylesheets import CSS, every_rule, plain, rules, tokens

ROOT_PIXELS = 17.0
LEAST_TEXT = 14.5
COLOUR = re.compile(
    r"#[0-9a-fA-F]{3,8}\b|\b(?:rgb|hsl|oklch|color-mix)a?\(|:\s*(?:white|black|red|gr[ae]y)\b"
)


def test_colours_are_named_among_the_tokens_and_nowhere_else() -> None:
    strays = {path.name: COLOUR.findall(plain(path.read_text())) for path in CSS.glob("*.css")}
    assert strays.pop("tokens.css")
    assert not any(strays.values()), strays


def test_every_token_that_is_used_exists() -> None:
    # --tall is set by a component and read by its kinds.
    known = {*tokens(), "--tall"}
    used = {name for path in CSS.glob("*.css") for name in re.findall(r"var\((--[a-z-]+)", path.read_text())}
    assert "--ink" in used
    assert used <= known


def test_every_token_is_used() -> None:
    used = {name for path in CSS.glob("*.css") for name in re.findall(r"var\((--[a-z-]+)", path.read_text())}
    assert set(tokens()) <= used


def test_the_dark_scheme_and_paper_change_only_tokens_there_are() -> None:
    light = set(tokens("light"))
    assert set(tokens("dark")) <= light
    assert set(tokens("print")) <= light


def test_the_page_starts_from_seventeen_pixels_and_grows_with_the_reader() -> None:
    root = next(rule for rule in rules((CSS / "base.css").read_text()) if rule.selector == "html")
    of_the_reader = float(root.declared["font-size"].removesuffix("%")) / 100
    assert of_the_reader * 16 == ROOT_PIXELS


def test_no_text_on_screen_is_smaller_than_14_and_a_half_pixels() -> None:
    sizes = {name: value for name, value in tokens().items() if name.startswith("--size-")}
    in_rem = {
        name: float(value.removesuffix("rem")) for name, value in sizes.items() if value.endswith("rem")
    }
    assert in_rem
    assert all(rem * ROOT_PIXELS >= LEAST_TEXT for rem in in_rem.values()), in_rem


def test_type_sizes_come_from_the_tokens() -> None:
    own = {
        (name, rule.selector, rule.declared["font-size"])
        for name, rule in every_rule()
        if name != "print.css" and "font-size" in rule.declared
        if not rule.declared["font-size"].startswith("var(--size-")
    }
    # The chart's letters are measured in its own drawing.
    assert {selector for _, selector, _ in own} == {"html", ".lineage-chart text"}


def test_targets_are_as_large_as_a_finger() -> None:
    everywhere = tokens()["--target"]
    log = next(rule for rule in rules((CSS / "tokens.css").read_text()) if rule.selector == ".page-log")
    assert everywhere.startswith("max(44px,")
    assert log.declared["--target"].startswith("max(48px,")


def test_only_those_who_did_not_ask_for_stillness_see_movement() -> None:
    moving = [rule for _, rule in every_rule() if {"transition", "animation"} & set(rule.declared)]
    assert moving
    assert all(rule.media == "(prefers-reduced-motion: no-preference)" for rule in moving)


def test_nothing_is_fetched_by_a_stylesheet() -> None:
    for path in CSS.glob("*.css"):
        assert "url(" not in path.read_text()
        assert "@import" not in path.read_text()
