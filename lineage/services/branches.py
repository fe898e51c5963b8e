"""The same ancestors as a nested list, for readers and for whoever does not see the drawing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lineage.services.ancestry import Relative, Step

# Deeper nesting would be pushed off a telephone's page; the line then goes on in the same list.
DEEPEST = 8


@dataclass(frozen=True, slots=True)
class ListLine:
    """One item: the plant (None: not known), the step to the plant below it, and the lists it opens and closes."""

    relative: Relative | None
    step: Step | None
    opens: bool
    closes: tuple[int, ...]
    is_repeated: bool

    @property
    def certainty_words(self) -> str:
        if self.relative is None or self.relative.certainty == "unknown":
            return "not known"
        return "recorded" if self.relative.certainty == "recorded" else "assumed"


def list_lines(relatives: Mapping[int, Relative]) -> list[ListLine]:
    """From the plant itself upward, each followed by its parents; a plant met before is not opened again.

    Written flat, with marks where lists open and close, so that no template calls itself.
    """
    lines: list[ListLine] = []
    met: set[int] = set()
    waiting: list[tuple[int | None, Step | None, int]] = [(next(iter(relatives)), None, 0)]
    depths: list[int] = []
    while waiting:
        pk, step, depth = waiting.pop()
        relative = relatives[pk] if pk is not None else None
        repeated = pk in met
        steps = relative.steps if relative and not repeated else ()
        lines.append(ListLine(relative, step, False, (), repeated))
        depths.append(min(depth, DEEPEST))
        if pk is not None:
            met.add(pk)
        waiting += [(each.parent, each, depth + 1) for each in reversed(steps)]
    return [
        ListLine(
            line.relative,
            line.step,
            opens=after > depth,
            closes=tuple(range(max(0, depth - after))),
            is_repeated=line.is_repeated,
        )
        for line, depth, after in zip(lines, depths, [*depths[1:], 0], strict=True)
    ]
