"""What a portrait is made of: smooth shapes in a frame of 200 × 250, x to the right, y down."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

WIDTH, HEIGHT = 200, 250
MARGIN = 11.0
LARGEST = 1.3

Point = tuple[float, float]


@dataclass(frozen=True)
class Shape:
    """A smooth shape: the uniform quadratic B-spline of its control points.

    The curve stays within the hull of the points, passes their midpoints, and has a corner where a
    point is doubled.

    Attributes
    ----------
    points
        Control points; closed and filled when `width` is 0, else an open line of that width.
    opacity
        0 (not seen) to 1.
    dark
        Drawn in the colour of the ground, as a vein on a leaf.
    known
        False for what stands in for a trait nobody has recorded; its opacity is already low.
    """

    points: tuple[Point, ...]
    opacity: float
    width: float = 0.0
    dark: bool = False
    known: bool = True


@dataclass(frozen=True)
class Portrait:
    """A plant drawn from its traits; `small` is the same plant in fewer strokes, for lists."""

    seed: str
    shapes: tuple[Shape, ...]
    small: tuple[Shape, ...]


def framed(shapes: Iterable[Shape], small: Iterable[Shape]) -> tuple[tuple[Shape, ...], tuple[Shape, ...]]:
    """Move and scale both drawings alike so that every curve lies inside the margin of the frame."""
    full, few = tuple(shapes), tuple(small)
    reach = [(x, y, shape.width / 2) for shape in full + few for x, y in smoothed(shape, 2)]
    left, right = min(x - r for x, _, r in reach), max(x + r for x, _, r in reach)
    top, bottom = min(y - r for _, y, r in reach), max(y + r for _, y, r in reach)
    scale = min((WIDTH - 2 * MARGIN) / (right - left), (HEIGHT - 2 * MARGIN) / (bottom - top), LARGEST)
    dx, dy = WIDTH / 2 - scale * (left + right) / 2, HEIGHT / 2 - scale * (top + bottom) / 2

    def moved(shape: Shape) -> Shape:
        points = tuple((x * scale + dx, y * scale + dy) for x, y in shape.points)
        return replace(shape, points=points, width=shape.width * scale)

    return tuple(map(moved, full)), tuple(map(moved, few))


def smoothed(shape: Shape, steps: int = 4) -> list[Point]:
    """The curve as a chain of points, `steps` to each control point; a closed one is not repeated."""
    points = list(shape.points)
    if shape.width:
        inner = [points[0], points[0], *points[1:-1], points[-1], points[-1]]
        triples = list(zip(inner, inner[1:], inner[2:], strict=False))
    else:
        triples = list(zip(points, points[1:] + points[:1], points[2:] + points[:2], strict=True))
    return [_on_curve(a, b, c, step / steps) for a, b, c in triples for step in range(steps)] + (
        [points[-1]] if shape.width else []
    )


def _on_curve(a: Point, b: Point, c: Point, t: float) -> Point:
    before, at, after = (1 - t) ** 2 / 2, (1 + 2 * t - 2 * t * t) / 2, t * t / 2
    return before * a[0] + at * b[0] + after * c[0], before * a[1] + at * b[1] + after * c[1]
