"""Words about descent: “A × B”, “sport of 'X'”, “from spores of …”, lists of sources."""

from __future__ import annotations

import re
from dataclasses import dataclass

SIGN = re.compile(r"\s+[x×X]\s+|\s*×\s*")
QUOTED = r"(?:(?<=\s)|(?<=^))['‘\"“].+?['’\"”](?=[\s,+;&)]|$)"
PROTECTED = re.compile(rf"\([^)]*\)|{QUOTED}")
BETWEEN = re.compile(r"\s*[+;&]\s*|\s*,\s*(?:and\s+)?|\s+and\s+|\s+or\s+")
SOWING = re.compile(r"^(?P<whose>.{0,40}?)\bsowing\s*[,:]\s*(?P<what>.+)$", re.IGNORECASE)
SPORT = re.compile(r"^(?:a\s+)?sport\s+(?:of|from)\s+(?P<name>.+)$", re.IGNORECASE)
SPORES = re.compile(r"^(?:raised\s+)?(?:from\s+)?spores\s+(?:of|from)\s+(?P<name>.+)$", re.IGNORECASE)
SELFED = re.compile(r"^(?P<name>.+?)\s+selfed$|^self(?:ed)?\s+of\s+(?P<other>.+)$", re.IGNORECASE)
EX = re.compile(r"(?:^|\s)ex\s+(?=['‘\"“A-Z])")
PLAIN_NUMBER = re.compile(r"^[A-Za-z]{1,3}\s?\d{1,6}[a-z]?$")
TAG_OF_A_SOWING = re.compile(
    r"^(?P<number>[A-Za-z]{1,3}\d{1,6})(?:[ ,]*(?:no|nr|#)\.?\s*\d+)?$", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Descent:
    """What words say of parents: as `ParentageClaim.says`, with each parent as it is written."""

    says: str
    parents: tuple[str, ...] = ()


def read_descent(words: str) -> Descent | None:
    """None where the words say nothing we can read; the words are then kept as they are."""
    said = words.strip().rstrip(".")
    if said.casefold() in ("unknown", "not known", "?"):
        return Descent("unknown")
    if found := SPORT.match(said):
        return Descent("sport", (found["name"].strip(),))
    if found := SPORES.match(said):
        return Descent("self", (found["name"].strip(),))
    if found := SELFED.match(said):
        return Descent("self", ((found["name"] or found["other"]).strip(),))
    sides = [side.strip() for side in SIGN.split(said)]
    return Descent("cross", tuple(sides)) if len(sides) == 2 and all(sides) else None


def read_own_sowing(words: str) -> tuple[str, Descent] | None:
    """(whose, descent) of “own sowing, A × B”; None where it says something else."""
    found = SOWING.match(words.strip())
    descent = read_descent(found["what"]) if found else None
    return (found["whose"].strip(), descent) if found and descent else None


def split_sources(words: str) -> list[tuple[str, str]]:
    """(sign before it, words) of each of several sources; what is quoted or in brackets is not divided."""
    held: list[str] = []

    def hold(found: re.Match[str]) -> str:
        held.append(found[0])
        return f"\0{len(held) - 1}\0"

    closed = PROTECTED.sub(hold, words)
    parts, sign, start = [], "", 0
    for found in [*BETWEEN.finditer(closed), None]:
        piece = closed[start : found.start()] if found else closed[start:]
        parts.append((sign, re.sub("\0(\\d+)\0", lambda part: held[int(part[1])], piece).strip()))
        if found:
            sign, start = found[0].strip() or "and", found.end()
    return [(sign, part) for sign, part in parts if part]


def without_brackets(words: str) -> str:
    """“F12 (Clerestory)” is F12."""
    return re.sub(r"\s*\([^)]*\)\s*$", "", words).strip()


def turned_doubt(words: str) -> str:
    """“? Pteris nipponica” as “Pteris nipponica ?”."""
    said = words.strip()
    return f"{said.lstrip('? ')} ?" if said.startswith("?") and said.strip("? ") else said


def is_raised_from(words: str) -> bool:
    """Whether the words are “ex 'X'”: a sporeling of X."""
    return bool(EX.search(words))
