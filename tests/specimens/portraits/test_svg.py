"""The SVG is small, safe under a strict content policy, and draws the very curve of the geometry."""

import hashlib
import re
from xml.etree import ElementTree as ET

import pytest

from specimens.portraits import draw_portrait, portrait_svg
from specimens.portraits.shapes import Point, Portrait, Shape, smoothed
from tests.specimens.portraits.cast import LACE, TASSEL, every_portrait

NUMBER = re.compile(r"-?(?:\d+\.?\d*|\.\d+)")
STYLES = ["print", "line"]
DETAILS = {"full": 12_500, "small": 2_500}


def walked(d: str, steps: int) -> list[Point]:
    """The points of closed paths written with m, q, t and z, read as SVG 2 section 9.3 says."""
    points: list[Point] = []
    here = start = control = (0.0, 0.0)
    for letter, words in re.findall(r"([mqtz])([^mqtz]*)", d):
        numbers = [float(number) for number in NUMBER.findall(words)]
        pairs = list(zip(numbers[::2], numbers[1::2], strict=True))
        if letter == "m":
            here = start = (here[0] + pairs[0][0], here[1] + pairs[0][1])
        elif letter == "z":
            here = start
        while letter in "qt" and pairs:
            if letter == "q":
                dx, dy = pairs.pop(0)
                control = (here[0] + dx, here[1] + dy)
            else:
                control = (2 * here[0] - control[0], 2 * here[1] - control[1])
            dx, dy = pairs.pop(0)
            end = (here[0] + dx, here[1] + dy)
            for step in range(steps):
                t = step / steps
                a, b, c = (1 - t) ** 2, 2 * t * (1 - t), t * t
                points.append(
                    tuple(a * p + b * q + c * r for p, q, r in zip(here, control, end, strict=True))
                )
            here = end
    return points


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("detail", DETAILS)
def test_every_look_keeps_within_its_budget_of_bytes(style: str, detail: str) -> None:
    sizes = {
        seed: len(portrait_svg(portrait, title="Platycerium ‘Silver Tassel’", style=style, detail=detail))
        for seed, portrait in every_portrait().items()
    }
    assert {seed: size for seed, size in sizes.items() if size > DETAILS[detail]} == {}


def test_the_path_walks_the_curve_of_the_geometry_to_the_end() -> None:
    for shape in draw_portrait(TASSEL, seed="x").shapes:
        if shape.width:
            continue
        svg = portrait_svg(Portrait("x", (shape,), ()), title="x")
        drawn = walked(re.search(r' d="([^"]*)"', svg)[1], 4)
        # The path starts half a control point before the chain, and each point is on a grid of 0.2.
        expected = smoothed(Shape((shape.points[-1], *shape.points[:-1]), 1), 4)
        for (x, y), (u, v) in zip(drawn, expected, strict=True):
            assert abs(x - u) <= 0.11
            assert abs(y - v) <= 0.11


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("detail", DETAILS)
def test_coordinates_have_one_decimal_at_most(style: str, detail: str) -> None:
    for traits, genus in ((TASSEL, "Platycerium"), (LACE, "Davallia")):
        svg = portrait_svg(
            draw_portrait(traits, seed="x", genus=genus), title="x", style=style, detail=detail
        )
        assert not re.search(r"\.\d\d", "".join(re.findall(r' d="([^"]*)"', svg)))


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("detail", DETAILS)
def test_nothing_a_strict_content_policy_would_drop(style: str, detail: str) -> None:
    root = ET.fromstring(portrait_svg(draw_portrait(TASSEL, seed="x"), title="x", style=style, detail=detail))
    for element in root.iter():
        assert element.tag.rsplit("}")[-1] in {"svg", "g", "path", "rect", "radialGradient", "stop"}
        assert "style" not in element.attrib
        assert not any(name.startswith("on") or "href" in name for name in element.attrib)


@pytest.mark.parametrize("title", ['"><script>alert(1)</script>', "Platycerium ‘A & B’", "a\x00b\x1f\ud800c"])
def test_the_title_is_its_name_and_never_markup(title: str) -> None:
    root = ET.fromstring(portrait_svg(draw_portrait({}, seed="x"), title=title))
    assert root.attrib["role"] == "img"
    assert root.attrib["aria-label"] == re.sub("[\x00\x1f\ud800]", " ", title)
    assert "script" not in {element.tag.rsplit("}")[-1] for element in root.iter()}


def test_gradients_of_two_plants_on_one_page_have_their_own_names() -> None:
    def names(seed: str) -> set[str]:
        svg = portrait_svg(draw_portrait({}, seed=seed), title="x")
        identifiers = set(re.findall(r'id="([^"]+)"', svg))
        assert identifiers == set(re.findall(r"url\(#([^)]+)\)", svg))
        return identifiers

    assert names('2026-0142-E"') & names("2026-0143-B") == set()


def test_on_paper_it_is_black_line_on_white_and_the_unknown_is_dotted() -> None:
    known = portrait_svg(draw_portrait(TASSEL, seed="x"), title="x", style="line")
    unknown = portrait_svg(draw_portrait({}, seed="x"), title="x", style="line")
    assert set(re.findall("#[0-9a-f]+", known)) == {"#fff", "#000"}
    assert "stroke-dasharray" not in known
    assert unknown.count("<path") == unknown.count("stroke-dasharray")


@pytest.mark.parametrize(("detail", "digest"), [("full", "5c3e11d329a8aa0e"), ("small", "4a0ee7b6457c4ba5")])
def test_the_picture_of_a_plant_never_changes(detail: str, digest: str) -> None:
    plants = [
        (TASSEL, "Platycerium"),
        ({}, "Platycerium"),
        (LACE, "Davallia"),
        ({"blade": "strap"}, "Asplenium"),
    ]
    drawn = "".join(
        portrait_svg(draw_portrait(traits, seed="2026-0142-E", genus=genus), title="x", detail=detail)
        for traits, genus in plants
    )
    assert hashlib.sha256(drawn.encode()).hexdigest()[:16] == digest
