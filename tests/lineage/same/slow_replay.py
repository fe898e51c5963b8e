"""Decisions replayed the slow and obvious way: by asking each one whether it stands, and merging sets."""

from __future__ import annotations

from lineage.models import Ruling


def stands(ruling: Ruling, everything: list[Ruling]) -> bool:
    """A decision stands unless one that stands itself takes it back."""
    return not any(other.undoes_id == ruling.pk and stands(other, everything) for other in everything)


def standing_names(names: list[int]) -> dict[int, int]:
    """The accepted name of each of these names, by the decisions in the database alone."""
    everything = list(Ruling.objects.order_by("pk"))
    groups = [{name} for name in names]
    accepted = {name: name for name in names}
    for ruling in everything:
        if ruling.answer != "same" or not stands(ruling, everything):
            continue
        merged = [group for group in groups if group & {ruling.first_name_id, ruling.second_name_id}]
        whole = set().union(*merged)
        groups = [group for group in groups if group not in merged] + [whole]
        chosen = ruling.stands_id if ruling.stands_id in whole else accepted[ruling.kept_id]
        accepted |= dict.fromkeys(whole, chosen)
    return accepted


def says_one_is_two(names: list[int]) -> bool:
    """Whether two names decided to be different have one accepted name."""
    everything = list(Ruling.objects.order_by("pk"))
    accepted = standing_names(names)
    return any(
        accepted[ruling.first_name_id] == accepted[ruling.second_name_id]
        for ruling in everything
        if ruling.answer == "different" and stands(ruling, everything)
    )
