"""Decisions on pairs of names, replayed: which stand, which names are one, which contradict each other."""

from collections import defaultdict, deque
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum


class Answer(StrEnum):
    """What a decision says of a pair; UNDONE says nothing of it, but takes an earlier decision back."""

    SAME = "same"
    DIFFERENT = "different"
    EVIDENCE = "evidence"
    NOT_KNOWN = "not known"
    UNDONE = "undone"


@dataclass(frozen=True, slots=True)
class Decision:
    """One decision on two names, given by any hashable ids; ``id`` grows with time.

    Of SAME, ``stands`` is the name that is to stand for both, ``kept`` the one of the two on whose side it
    was. ``undoes``: the earlier decision that this one takes back, whatever its own answer.
    """

    id: int
    answer: str
    first: int
    second: int
    stands: int | None = None
    kept: int | None = None
    undoes: int | None = None


def still_standing(decisions: Iterable[Decision]) -> list[Decision]:
    """The decisions nobody took back, oldest first; an undoing that was itself taken back undoes nothing.

    Decisions may come in any order; UNDONE are left out. Cost: sorting.

    >>> [d.id for d in still_standing([Decision(1, "same", 7, 8, 7, 7), Decision(2, "undone", 7, 8, undoes=1)])]
    []
    """
    undone: set[int] = set()
    found = []
    # An undoing is always younger than what it undoes: seen from the end, each is settled when it is met.
    for decision in sorted(decisions, key=lambda each: -each.id):
        if decision.id in undone:
            continue
        if decision.undoes is not None:
            undone.add(decision.undoes)
        if decision.answer != Answer.UNDONE:
            found.append(decision)
    return found[::-1]


class Groups:
    """Names that standing decisions hold to be one plant: groups, never chains; one name of each stands."""

    def __init__(self, standing: Iterable[Decision]) -> None:
        self._members: dict[int, list[int]] = {}
        self._stands: dict[int, int] = {}
        for decision in sorted(standing, key=lambda each: each.id):
            if decision.answer == Answer.SAME:
                self._join(decision)

    def _join(self, decision: Decision) -> None:
        left, right = self.members(decision.first), self.members(decision.second)
        kept = self.accepted(decision.first if decision.kept is None else decision.kept)
        joined = left if left is right else [*left, *right]
        # The name chosen may have left with a decision that was taken back: then its side's own name stands.
        stands = decision.stands if decision.stands in joined else kept
        for name in joined:
            self._members[name] = joined
            self._stands[name] = stands

    def members(self, name: int) -> list[int]:
        """All names of the group, the name itself included; alone where nothing joins it."""
        return self._members.get(name) or [name]

    def accepted(self, name: int) -> int:
        """The name that stands for this one; itself where nothing joins it."""
        return self._stands.get(name, name)

    def are_one(self, first: int, second: int) -> bool:
        return second in self.members(first)

    def synonyms(self) -> dict[int, int]:
        """From each name that another one stands for to that one. Never a chain: its answers are no keys."""
        return {name: stands for name, stands in self._stands.items() if name != stands}


def contradictions(standing: Sequence[Decision]) -> list[tuple[Decision, list[Decision]]]:
    """Each DIFFERENT on two names of one group, with the fewest decisions that make them one; [] if none.

    >>> same = Decision(1, "same", 1, 2, 1, 1), Decision(2, "same", 2, 3, 2, 2)
    >>> [(d.id, [way.id for way in path]) for d, path in contradictions([*same, Decision(3, "different", 1, 3)])]
    [(3, [1, 2])]
    """
    groups = Groups(standing)
    found = [d for d in standing if d.answer == Answer.DIFFERENT and groups.are_one(d.first, d.second)]
    joins = _joins(standing) if found else {}
    return [(decision, shortest_way(decision.first, decision.second, joins)) for decision in found]


def _joins(standing: Iterable[Decision]) -> dict[int, list[tuple[int, Decision]]]:
    joins: dict[int, list[tuple[int, Decision]]] = defaultdict(list)
    for decision in standing:
        if decision.answer == Answer.SAME:
            joins[decision.first].append((decision.second, decision))
            joins[decision.second].append((decision.first, decision))
    return joins


def shortest_way(start: int, end: int, joins: Mapping[int, Sequence[tuple[int, Decision]]]) -> list[Decision]:
    """The fewest decisions leading from one name to another, in order of the way; [] where none does."""
    came: dict[int, tuple[int, Decision] | None] = {start: None}
    waiting = deque([start])
    while waiting and end not in came:
        at = waiting.popleft()
        for other, decision in joins.get(at, ()):
            if other not in came:
                came[other] = (at, decision)
                waiting.append(other)
    way = []
    step = came.get(end)
    while step is not None:
        way.append(step[1])
        step = came[step[0]]
    return way[::-1]
