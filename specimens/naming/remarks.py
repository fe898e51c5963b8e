"""Remarks on a cultivar epithet by the International Code of Nomenclature for Cultivated Plants (9th ed., 2016)."""

from collections.abc import Iterable
from typing import NamedTuple


class Remark(NamedTuple):
    """One remark: a stable key, plain words for the page, and the tidied epithet if there is one to offer."""

    key: str
    words: str
    offer: str = ""


def remarks(
    epithet: str, *, year_named: int | None, genus: str = "", known: Iterable[str] = ()
) -> tuple[Remark, ...]:
    """What a knowing friend would say of the epithet."""
    return ()
