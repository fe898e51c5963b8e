"""Codes as people type them: without the letter, with a slip, or the number alone."""

from __future__ import annotations

import re

from django.db.models import Q, QuerySet

from specimens.models import Specimen
from specimens.naming.codes import CodeNotRead, read_code

NUMBER_ALONE = re.compile(r"(?:no\.?|#)?\s*0*(\d{1,6})", re.IGNORECASE)
LOOKS_LIKE_CODE = re.compile(r"\s*\d{4}\s*[-–—/ ]\s*\d{1,8}(\s*[-–—/ ]?\s*[A-Za-z01])?\s*")


def code_meant(text: str) -> str:
    """The one code this text spells, or ''. It may be nobody's."""
    try:
        return str(read_code(text))
    except CodeNotRead:
        return ""


def codes_one_slip_away(text: str) -> tuple[str, ...]:
    """Codes that a slip of the pen turns into this text; none where it reads as a code, or as no code at all."""
    try:
        read_code(text)
    except CodeNotRead as slip:
        return tuple(str(code) for code in slip.did_you_mean)
    return ()


def by_code(text: str) -> Q | None:
    """The condition for plants whose code, or number of any year, this is; None where it is neither."""
    code = code_meant(text)
    if code:
        return Q(code=code)
    number = NUMBER_ALONE.fullmatch(text.strip())
    return Q(code__contains=f"-{int(number[1]):04d}-") if number else None


def did_you_mean(text: str, plants: QuerySet[Specimen]) -> list[str]:
    """Codes one slip away that are codes of these plants (the reader's visible ones)."""
    near = codes_one_slip_away(text)
    return list(plants.filter(code__in=near).values_list("code", flat=True).order_by("code")) if near else []
