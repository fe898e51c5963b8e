"""Deciding whether two names are one plant, and taking a decision back."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from django.db import transaction

from frondkeep.society.models import Society, User
from lineage.core.decisions import Answer, Decision, Groups, contradictions, still_standing
from lineage.models import Kind, Ruling, Suspicion
from lineage.services.suspicions import add_up_again
from specimens.changes import announce
from specimens.models import Name, Rank

SUBJECTS = ("first_name", "second_name", "stands", "by__member")


class ContradictionError(ValueError):
    """The decision would say that one plant is two. `rulings`: those it contradicts, as they stand."""

    def __init__(self, words: str, rulings: Sequence[Ruling]) -> None:
        super().__init__(words)
        self.rulings = tuple(rulings)


class DecidedMeanwhileError(Exception):
    """Somebody decided this pair after the page was opened; `ruling` is what they decided."""

    def __init__(self, ruling: Ruling) -> None:
        super().__init__("Somebody decided this pair while you were looking at it.")
        self.ruling = ruling


class NotStandingError(ValueError):
    """The decision was taken back already, or replaced by a later one."""


@transaction.atomic
def give_ruling(
    *,
    first: Name,
    second: Name,
    answer: str,
    reason: str,
    by: User,
    stands: Name | None = None,
    last_seen: int | None = None,
) -> Ruling:
    """Decide whether two cultivar names are one plant. A decision that stood for this pair is taken back by it.

    `stands`, needed for “same” alone, is the name that is to stand for both: one of the two, or of the
    names already decided to be the same as one of them. `last_seen` is the id of the newest decision on
    this pair that the curator had seen (0: none); None asks nothing.

    Raises DecidedMeanwhileError, ContradictionError, ValueError for nonsense, and DescentError where a
    plant would come from itself. Accepted names, lineage and suspicions follow in the same transaction.
    """
    lock_decisions()
    first, second = sorted((first, second), key=lambda name: name.pk)
    _refuse_nonsense(first, second, answer, reason)
    earlier = Ruling.objects.decisions()
    _refuse_if_decided_meanwhile(earlier, (first.pk, second.pk), last_seen)
    draft = draft_ruling(earlier, first.pk, second.pk, answer, stands.pk if stands else None)
    refuse_contradiction([*earlier, draft])
    seen = Suspicion.objects.filter(kind=Kind.NAMES, first_name=first, second_name=second).first()
    ruling = Ruling.objects.create(
        answer=answer,
        first_name=first,
        second_name=second,
        stands_id=draft.stands,
        kept_id=draft.kept,
        undoes_id=draft.undoes,
        reason=reason.strip(),
        seen=seen.clues if seen else {},
        by=by,
    )
    announce("names", _touched(earlier, draft))
    add_up_again()
    return ruling


@transaction.atomic
def undo_ruling(ruling: Ruling, *, reason: str, by: User) -> Ruling:
    """Take a decision back: everything is as though it had not been made. Gives the row that says so.

    What it had itself taken back stands again. Raises NotStandingError, ContradictionError (what would
    stand again contradicts what was decided since), ValueError for a missing reason.
    """
    lock_decisions()
    if not reason.strip():
        raise ValueError("Say why.")
    earlier = Ruling.objects.decisions()
    if ruling.pk not in {decision.id for decision in still_standing(earlier)}:
        raise NotStandingError("This decision does not stand any more.")
    pair = ruling.pair
    draft = Decision(_next_id(earlier), Answer.UNDONE, *pair, undoes=ruling.pk)
    refuse_contradiction([*earlier, draft])
    undoing = Ruling.objects.create(
        answer=Answer.UNDONE,
        first_name_id=pair[0],
        second_name_id=pair[1],
        undoes=ruling,
        reason=reason.strip(),
        by=by,
    )
    announce("names", _touched(earlier, draft))
    add_up_again()
    return undoing


def draft_ruling(
    earlier: Sequence[Decision], first: int, second: int, answer: str, stands: int | None
) -> Decision:
    """The decision as it would be added to the earlier ones. Raises ValueError where no name may stand so."""
    standing = still_standing(earlier)
    replaced = next((d.id for d in standing if (d.first, d.second) == (first, second)), None)
    draft = Decision(_next_id(earlier), answer, first, second, undoes=replaced)
    if answer != Answer.SAME:
        return draft
    groups = Groups(d for d in standing if d.id != replaced)
    kept = next((name for name in (first, second) if stands in (name, *groups.members(name))), None)
    if kept is None:
        raise ValueError("Say which of the names is to stand.")
    # Where one group holds both, the one meant is the one itself.
    kept = stands if stands in (first, second) else kept
    return replace(draft, stands=stands, kept=kept)


def standing_rulings() -> dict[int, Decision]:
    """The decisions that stand, by id; one query."""
    return {decision.id: decision for decision in still_standing(Ruling.objects.decisions())}


def accepted_after(earlier: Sequence[Decision], draft: Decision) -> dict[int, tuple[int, int]]:
    """Names whose accepted name a decision would change: from what to what."""
    before = Groups(still_standing(earlier))
    after = Groups(still_standing([*earlier, draft]))
    names = {name for groups in (before, after) for name in groups.synonyms()}
    names |= {name for d in (*earlier, draft) for name in (d.first, d.second)}
    changes = {name: (before.accepted(name), after.accepted(name)) for name in names}
    return {name: (old, new) for name, (old, new) in changes.items() if old != new}


def lock_decisions() -> None:
    """One decision at a time: two curators must not both find that the same pair is free, nor decide
    A is B and A is not B by way of a third name at one moment (PostgreSQL; SQLite has one writer).
    """
    Society.objects.select_for_update().get(pk=Society.current().pk)


def _refuse_nonsense(first: Name, second: Name, answer: str, reason: str) -> None:
    if answer not in Ruling.Answers.values or answer == Answer.UNDONE:
        raise ValueError(f"No such answer: {answer}")
    if not reason.strip():
        raise ValueError("Say why.")
    if first.pk == second.pk:
        raise ValueError("A name is not compared with itself.")
    if {first.rank, second.rank} != {Rank.CULTIVAR}:
        raise ValueError("Only cultivar names are decided here.")


def _refuse_if_decided_meanwhile(
    earlier: Sequence[Decision], pair: tuple[int, int], last_seen: int | None
) -> None:
    newest = newest_on(earlier, pair)
    if last_seen is not None and newest > last_seen:
        raise DecidedMeanwhileError(Ruling.objects.select_related(*SUBJECTS).get(pk=newest))


def newest_on(decisions: Iterable[Decision], pair: tuple[int, int]) -> int:
    """The id of the newest decision on this pair; 0 where there is none."""
    return max((d.id for d in decisions if (d.first, d.second) == pair), default=0)


def refuse_contradiction(decisions: Sequence[Decision]) -> None:
    """Raise ContradictionError where these, the newest of them a draft, say that one plant is two."""
    found = contradictions(still_standing(decisions))
    if not found:
        return
    different, path = found[0]
    draft = decisions[-1]
    ids = [d.id for d in (different, *path) if d.id != draft.id]
    rulings = list(Ruling.objects.select_related(*SUBJECTS).filter(pk__in=ids).in_time())
    raise ContradictionError(_contradiction_words(rulings), rulings)


def _contradiction_words(rulings: Sequence[Ruling]) -> str:
    told = "; ".join(ruling_words(ruling) for ruling in rulings)
    return f"This cannot stand beside what was decided before: {told}. Undo that first, or decide otherwise."


def ruling_words(ruling: Ruling) -> str:
    """“‘Silver Tassel’ and ‘Silvered Tassel’ are the same plant”, for sentences."""
    first, second = ruling.first_name, ruling.second_name
    said = {
        Answer.SAME: f"{first} and {second} are the same plant",
        Answer.DIFFERENT: f"{first} and {second} are different plants",
        Answer.EVIDENCE: f"more evidence is wanted on {first} and {second}",
        Answer.NOT_KNOWN: f"whether {first} and {second} are one cannot be known yet",
        Answer.UNDONE: f"a decision on {first} and {second} was undone",
    }
    return said[Answer(ruling.answer)]


def _touched(earlier: Sequence[Decision], draft: Decision) -> set[int]:
    return {draft.first, draft.second, *accepted_after(earlier, draft)}


def _next_id(earlier: Sequence[Decision]) -> int:
    return max((decision.id for decision in earlier), default=0) + 1
