"""Work kept so that it is not done twice, without growing for ever."""

from collections.abc import Callable
from typing import TypeVar

Key = TypeVar("Key")
Value = TypeVar("Value")


class Remembered(dict[Key, Value]):
    """A dict that holds at most ``most`` entries: at the next one it forgets all and begins again.

    >>> kept = Remembered(2)
    >>> [kept.get_or_make(word, len) for word in ("fan", "star", "fan", "lace")], len(kept)
    ([3, 4, 3, 4], 1)
    """

    def __init__(self, most: int) -> None:
        super().__init__()
        self._most = most

    def get_or_make(self, key: Key, make: Callable[[Key], Value]) -> Value:
        """The value kept for the key, or else the one made from it."""
        found = self.get(key)
        if found is None:
            if len(self) >= self._most:
                self.clear()
            found = self[key] = make(key)
        return found
