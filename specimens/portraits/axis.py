"""A curved midrib, and the places beside it."""

import math
from dataclasses import dataclass

from specimens.portraits.shapes import Point


@dataclass(frozen=True)
class Axis:
    """A curved midrib: where it is and where it heads at each share of its length."""

    start: Point
    heading: float
    length: float
    bend: float

    def at(self, share: float) -> tuple[float, float, float]:
        """x, y and heading there. The midrib is an arc of a circle."""
        turned = self.bend * share
        heading = self.heading + turned
        if abs(turned) < 1e-6:
            x, y = math.sin(self.heading) * share, math.cos(self.heading) * share
        else:
            x = (math.cos(self.heading) - math.cos(heading)) / self.bend
            y = (math.sin(heading) - math.sin(self.heading)) / self.bend
        return self.start[0] + x * self.length, self.start[1] - y * self.length, heading

    def beside(self, share: float, aside: float) -> Point:
        """The point that far to the right of the midrib (to the left when below 0)."""
        x, y, heading = self.at(share)
        return x + aside * math.cos(heading), y + aside * math.sin(heading)
