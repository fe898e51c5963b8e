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
    reach = [_reach(shape) for shape in full + few]
    left, top = min(box[0] for box in reach), min(box[1] for box in reach)
    right, bottom = max(box[2] for box in reach), max(box[3] for box in reach)
    scale = min((WIDTH - 2 * MARGIN) / (right - left), (HEIGHT - 2 * MARGIN) / (bottom - top), LARGEST)
    dx, dy = WIDTH / 2 - scale * (left + right) / 2, HEIGHT / 2 - scale * (top + bottom) / 2

    def moved(shape: Shape) -> Shape:
        points = tuple((x * scale + dx, y * scale + dy) for x, y in shape.points)
        return replace(shape, points=points, width=shape.width * scale)

    return tuple(map(moved, full)), tuple(map(moved, few))


def _reach(shape: Shape) -> tuple[float, float, float, float]:
    curve, half = smoothed(shape, 2), shape.width / 2
    xs, ys = [x for x, _ in curve], [y for _, y in curve]
    return min(xs) - half, min(ys) - half, max(xs) + half, max(ys) + half


def smoothed(shape: Shape, steps: int = 4) -> list[Point]:
    """The curve as a chain of points, `steps` to each control point; a closed one is not repeated."""
    points = list(shape.points)
    if shape.width:
        inner = [points[0], points[0], *points[1:-1], points[-1], points[-1]]
        triples = list(zip(inner, inner[1:], inner[2:], strict=False))
    else:
        triples = list(zip(points, points[1:] + points[:1], points[2:] + points[:2], strict=True))
    weights = [_weights(step / steps) for step in range(steps)]
    curve = [
        (p * a[0] + q * b[0] + r * c[0], p * a[1] + q * b[1] + r * c[1])
        for a, b, c in triples
        for p, q, r in weights
    ]
    return [*curve, points[-1]] if shape.width else curve


def _weights(t: float) -> tuple[float, float, float]:
    """How much the control points before, at and after count at this share of a stretch."""
    return (1 - t) ** 2 / 2, (1 + 2 * t - 2 * t * t) / 2, t * t / 2
