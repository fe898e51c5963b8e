"""The stylesheets as a test reads them: tokens in each scheme, rules with their declarations."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

CSS = Path(__file__).resolve().parents[2] / "static" / "css"


def plain(text: str) -> str:
    """A stylesheet without its comments."""
    return re.sub(r"/\*.*?\*/", "", text, flags=re.S)


def declarations(body: str) -> dict[str, str]:
    pairs = (line.partition(":") for line in body.split(";"))
    return {name.strip(): value.strip() for name, _, value in pairs if value}


@dataclass(frozen=True)
class Rule:
    media: str
    selector: str
    declared: dict[str, str]


def rules(text: str, media: str = "") -> Iterator[Rule]:
    """Every rule of a stylesheet; those inside `@media` carry its condition."""
    text, at = plain(text), 0
    while (opening := text.find("{", at)) >= 0:
        head, closing = text[at:opening].strip(), _closing(text, opening)
        body = text[opening + 1 : closing]
        if head.startswith("@media"):
            yield from rules(body, head.removeprefix("@media").strip())
        else:
            yield Rule(media, " ".join(head.split()), declarations(body))
        at = closing + 1


def _closing(text: str, opening: int) -> int:
    depth = 0
    for place in range(opening, len(text)):
        depth += {"{": 1, "}": -1}.get(text[place], 0)
        if depth == 0:
            return place
    raise ValueError("A brace is never closed.")


def tokens(scheme: str = "light") -> dict[str, str]:
    """The tokens that hold in a scheme: 'light', 'dark' or 'print'."""
    media = {"light": "", "dark": "(prefers-color-scheme: dark)", "print": "print"}[scheme]
    found: dict[str, str] = {}
    for rule in rules((CSS / "tokens.css").read_text()):
        if rule.selector == ":root" and rule.media in ("", media):
            found |= {name: value for name, value in rule.declared.items() if name.startswith("--")}
    return found


def every_rule() -> Iterator[tuple[str, Rule]]:
    for path in sorted(CSS.glob("*.css")):
        for rule in rules(path.read_text()):
            yield path.name, rule
