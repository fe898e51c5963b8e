"""A portrait as SVG: attributes only, so that a strict content policy leaves it whole."""

import hashlib
from collections.abc import Iterator
from html import escape
from itertools import groupby, pairwise
from typing import Literal

from specimens.portraits.shapes import HEIGHT, WIDTH, Point, Portrait, Shape

Style = Literal["print", "line"]
Detail = Literal["full", "small"]

PAPER_WHITE = "#f3f8fc"
LIGHT, DEEP = "#2a5f96", "#0c2f57"
# Half the grid of the control points, so that the midpoints a path runs through need no rounding. The
# finest that keeps within the budget of bytes is taken.
UNITS = {"full": (0.1, 0.2, 0.5), "small": (0.5, 1.0)}
BUDGET = {"full": 11_800, "small": 2_300}


def portrait_svg(portrait: Portrait, *, title: str, style: Style = "print", detail: Detail = "full") -> str:
    """Return the portrait as one SVG element with its own accessible name.

    Parameters
    ----------
    title
        What it shows, in words; escaped here.
    style
        "print": white on Prussian blue. "line": black lines on nothing, for paper.
    detail
        "full" is at most about 12 kB, "small" at most 2.5 kB, for lists of many.
    """
    shapes = portrait.shapes if detail == "full" else portrait.small
    draw = _blueprint if style == "print" else _lines
    key = "p" + hashlib.sha256(portrait.seed.encode("utf-8", "surrogatepass")).hexdigest()[:10]
    for unit in UNITS[detail]:
        body = draw(shapes, key, unit)
        if len(body) <= BUDGET[detail]:
            break
    name = escape("".join(character if character.isprintable() else " " for character in title), quote=True)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" role="img"'
        f' aria-label="{name}">{body}</svg>'
    )


def _blueprint(shapes: tuple[Shape, ...], key: str, unit: float) -> str:
    ground = (
        f'<radialGradient id="{key}" cy=".45" r=".75"><stop stop-color="{LIGHT}"/>'
        f'<stop offset="1" stop-color="{DEEP}"/></radialGradient>'
        f'<rect width="{WIDTH}" height="{HEIGHT}" fill="url(#{key})"/>'
    )
    return f'{ground}<g fill="{PAPER_WHITE}">{"".join(_runs(shapes, unit))}</g>'


def _runs(shapes: tuple[Shape, ...], unit: float) -> Iterator[str]:
    """Paths; neighbours that are drawn alike share one element."""
    for (opacity, width, dark), group in groupby(shapes, key=_manner):
        alike = list(group)
        if not width:
            yield f'<path fill-opacity="{_short(opacity)}" d="{_closed_paths(alike, unit)}"/>'
            continue
        colour = DEEP if dark else PAPER_WHITE
        d = "".join(_open_path(shape, unit) for shape in alike)
        yield (
            f'<path fill="none" stroke="{colour}" stroke-width="{_short(width)}"'
            f' stroke-opacity="{_short(opacity)}" d="{d}"/>'
        )


def _manner(shape: Shape) -> tuple[float, float, bool]:
    return round(shape.opacity, 2), round(shape.width, 1), shape.dark


def _lines(shapes: tuple[Shape, ...], _key: str, unit: float) -> str:
    """White leaves with black edges, the hindmost first; what nobody has recorded is dotted."""
    drawn = ""
    for (known, _, width), group in groupby(shapes, key=lambda s: (s.known, round(s.opacity, 2), s.width)):
        alike = list(group)
        dotted = "" if known else ' stroke-dasharray=".1 1.9" stroke-linecap="round"'
        d = "".join(_open_path(shape, unit) for shape in alike) if width else _closed_paths(alike, unit)
        drawn += f'<path{_RIB if width else ""}{dotted} d="{d}"/>'
    return f'<g fill="#fff" stroke="#000" stroke-width=".8" stroke-linejoin="round">{drawn}</g>'


_RIB = ' fill="none" stroke-width=".5"'


def _closed_paths(shapes: list[Shape], unit: float) -> str:
    """B-splines as one path: each `t` mirrors the control point before it, which is just the next one."""
    d, here = "", (0, 0)
    for shape in shapes:
        points = [_on_grid(point, unit) for point in shape.points]
        mids = [_sum(a, b) for a, b in pairwise([*points, points[0]])]
        start = _sum(points[-1], points[0])
        control = (2 * points[0][0], 2 * points[0][1])
        first = _numbers([_less(control, start), _less(mids[0], start)], unit)
        rest = _numbers([_less(b, a) for a, b in pairwise(mids)], unit)
        d += f"m{_numbers([_less(start, here)], unit)}q{first}t{rest}z"
        here = start
    return d


def _open_path(shape: Shape, unit: float) -> str:
    points = [_on_grid(point, unit) for point in shape.points]
    doubled = [(2 * x, 2 * y) for x, y in points]
    if len(points) == 2:
        return f"M{_numbers([doubled[0]], unit)}l{_numbers([_less(doubled[1], doubled[0])], unit)}"
    mids = [_sum(a, b) for a, b in pairwise(points[1:])]
    first = [_less(doubled[1], doubled[0]), _less(mids[0], doubled[0])]
    rest = [_less(b, a) for a, b in pairwise(mids)]
    bend = "t" + _numbers(rest, unit) if rest else ""
    end = _numbers([_less(doubled[-1], mids[-1])], unit)
    return f"M{_numbers(doubled[:1], unit)}q{_numbers(first, unit)}{bend}l{end}"


def _on_grid(point: Point, unit: float) -> tuple[int, int]:
    return round(point[0] / (2 * unit)), round(point[1] / (2 * unit))


def _sum(a: tuple[int, int], b: tuple[int, int]) -> tuple[int, int]:
    return a[0] + b[0], a[1] + b[1]


def _less(a: tuple[int, int], b: tuple[int, int]) -> tuple[int, int]:
    return a[0] - b[0], a[1] - b[1]


def _numbers(pairs: list[tuple[int, int]], unit: float) -> str:
    """Numbers run together with no more separators than a path needs."""
    text = ""
    for number in (_short(value * unit) for pair in pairs for value in pair):
        glued = (
            not text or number[0] == "-" or (number[0] == "." and "." in text.rsplit(" ")[-1].rsplit("-")[-1])
        )
        text += number if glued else " " + number
    return text


def _short(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return text.replace("0.", ".", 1) if text.startswith(("0.", "-0.")) else "0" if text == "-0" else text
