"""How a written word sounds, roughly: enough to bring Echo and Ekhu together."""

import re
from functools import lru_cache

_CONSONANTS = """
    ^(?:kn|gn|pn) n    ^wr r    ^ps s    ^x s    ^rh r    ^wh w    mb$ m
    tch C    sch|sh S    ch(?=[aeiouy]) C    [ck]h k    ph f    th t
    gh(?=[aeiou]) g    igh i    gh -    dg j    ck k    qu kw    x ks    c(?=[eiy]) s    [cq] k
    C k    S s    z s    v f    w(?![aeiouy]) -    (?<=[^aeiou])h|h$ -    d t    y i    (.)\\1+ \\1
"""
_VOWELS = r"ee|ea|ie|ei|ae|ai|oe i    oo|ou|ow|au|aw u    o u    e$ -    (.)\1+ \1"


def _rules(table: str) -> list[tuple[re.Pattern[str], str]]:
    """Pairs of a pattern and what it sounds like; - is silent."""
    parts = table.split()
    return [(re.compile(parts[at]), parts[at + 1].replace("-", "")) for at in range(0, len(parts), 2)]


_RULES = _rules(_CONSONANTS) + _rules(_VOWELS)
_SKELETON = re.compile("[aeiou]+")


@lru_cache(maxsize=65536)
def sound(word: str) -> str:
    """Letters a listener would write for a word, doubled letters and silent ones gone.

    >>> sound("echo") == sound("ekhu"), sound("knight") == sound("knyght")
    (True, True)
    """
    for pattern, replacement in _RULES:
        word = pattern.sub(replacement, word)
    return word


@lru_cache(maxsize=65536)
def skeleton(word: str) -> str:
    """The sound with every run of vowels alike.

    >>> skeleton("variegatum") == skeleton("varyegetum")
    True
    """
    return _SKELETON.sub("a", sound(word))
