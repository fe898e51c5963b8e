"""Commands as a page of documentation writes them: in fenced shell blocks and in spans of code.

`python -m tests.written_commands PAGE HEADING` prints the first block under a heading.
"""

from __future__ import annotations

import re
import shlex
import sys
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

SHELL = ("sh", "bash", "console", "shell")
BLOCK = re.compile(r"^```(\w*)\n(.*?)^```$", re.S | re.M)
SPAN = re.compile(r"`([^`]+)`")
LINK = re.compile(r"\]\(([^)\s]+)\)")
ASSIGNMENT = re.compile(r"[A-Za-z_]\w*=.*", re.S)
ENDS = set("&|;()")
REDIRECTION = {"<", ">", ">>", ">&", "<<<"}


@dataclass
class Command:
    """One simple command: its words, without the variables set before it."""

    words: list[str] = field(default_factory=list)
    variables: list[str] = field(default_factory=list)

    @property
    def program(self) -> str:
        return self.words[0] if self.words else ""

    def after(self, word: str) -> list[str]:
        """The words after this one; a program is found by its last part, wherever it lies."""
        for place, each in enumerate(self.words):
            if each == word or each.endswith(f"/{word}"):
                return self.words[place + 1 :]
        return []


def shell_blocks(page: str) -> list[str]:
    """The text of each block of commands; a `$` that stands for the prompt is taken off."""
    return [
        re.sub(r"^\$ ", "", text, flags=re.M) for language, text in BLOCK.findall(page) if language in SHELL
    ]


def spans(page: str) -> list[str]:
    """What stands between single backticks, outside the blocks."""
    return [" ".join(span.split()) for span in SPAN.findall(BLOCK.sub("", page))]


def links(page: str) -> list[str]:
    """Targets of links to files of our own."""
    return [target.partition("#")[0] for target in LINK.findall(page) if not re.match(r"[a-z]+:|#", target)]


def commands_in(text: str) -> Iterator[Command]:
    """The simple commands of a piece of shell, taken apart at newlines, `&&`, `|`, `;` and brackets."""
    for line in text.replace("\\\n", " ").splitlines():
        lexer = shlex.shlex(line, posix=True, punctuation_chars=True)
        lexer.whitespace_split = True
        yield from _simple(list(lexer))


def _simple(tokens: list[str]) -> Iterator[Command]:
    command = Command()
    skipped = False
    for token in [*tokens, ";"]:
        if set(token) <= ENDS:
            if command.words or command.variables:
                yield command
            command = Command()
        elif token in REDIRECTION or skipped:
            skipped = token in REDIRECTION
        elif ASSIGNMENT.fullmatch(token) and command.words in ([], ["export"], ["env"]):
            command.variables.append(token.partition("=")[0])
        else:
            command.words.append(token)


def block_after(page: str, heading: str) -> str:
    """The first block of commands under a heading of these words. Raises ValueError where there is none."""
    found = re.search(rf"^#+ {re.escape(heading)}$(.*?)(?=^#+ |\Z)", page, re.S | re.M)
    blocks = shell_blocks(found[1]) if found else []
    if not blocks:
        raise ValueError(f"No commands under the heading “{heading}”.")
    return blocks[0]


if __name__ == "__main__":
    print(block_after(Path(sys.argv[1]).read_text(), sys.argv[2]), end="")
