"""Chance that is the same for ever: numbers drawn from a seed by hashing, on every machine alike."""

import hashlib
from collections.abc import Iterator


class Dice:
    """A stream of numbers that depends on the seed alone.

    >>> Dice("2026-0142-E").between(0, 1) == Dice("2026-0142-E").between(0, 1)
    True
    """

    def __init__(self, seed: str) -> None:
        self._words = _words(seed.encode("utf-8", "surrogatepass"))

    def between(self, low: float, high: float) -> float:
        """A number from low (included) to high (not included)."""
        return low + (high - low) * next(self._words) / 2**32

    def whole(self, low: int, high: int) -> int:
        """A whole number from low to high, both included."""
        return low + next(self._words) * (high - low + 1) // 2**32

    def chance(self, share: float) -> bool:
        """True in this share of throws."""
        return next(self._words) < share * 2**32

    def about(self, middle: float, spread: float = 0.1) -> float:
        """A number within this share of the middle, above or below."""
        return middle * self.between(1 - spread, 1 + spread)


def _words(seed: bytes) -> Iterator[int]:
    block = 0
    while True:
        digest = hashlib.sha256(block.to_bytes(4, "big") + seed).digest()
        yield from (int.from_bytes(digest[at : at + 4], "big") for at in range(0, 32, 4))
        block += 1
