"""Codes in addresses: with or without the check letter, in any case; a wrong letter is no address."""

from specimens.naming.codes import read_code


class CodeConverter:
    """`<code:code>` — hands the view the code as it is kept, as ``2026-0142-E``."""

    regex = r"[0-9]{4}-[0-9]{1,8}(?:-[A-Za-z])?"

    def to_python(self, value: str) -> str:
        """The code in full; ValueError, and so no such page, where the letter does not fit."""
        return str(read_code(value))

    def to_url(self, value: object) -> str:
        return str(value)
