"""Latin endings: one word in its genders and cases has one stem."""

import re
from functools import lru_cache

_GENDER = re.compile(r"(?:[au]m|us|a)$")
_THIRD = re.compile(r"is$|(?<=il)e$|(?<=[aiu]r)e$|(?<=al)e$|(?<=ens)e$|(?<=rand)e$|(?<=virid)e$")
_PERSON = re.compile(r"(?:iae|ii|ae|(?<=[^aeiou])i)$")
_LATIN_SHAPE = re.compile(
    r"(?:at|it|ut|ifer|iger|os|id|fid|sect|foli|lob|pinn|dactyl|issim|errim|ian|oide|form|ell|ul|il|in|ic|est|ar|ens|"
    r"cep|phyll|tort|furc|isp|ace|ine|ari|osi|nt)(?:a|um|us|is)$|(?:um|us|oides|ensis|ense|ceps|iae|ii|ans|ens|ale|are|ile)$"
)


@lru_cache(maxsize=65536)
def stem(word: str) -> str:
    """The word without its Latin ending; a word too short to have one comes back whole.

    Gender (-us, -a, -um; -is, -e) and the endings that make a person's name Latin (-i, -ii, -ae, -iae) go.

    >>> stem("albolineata") == stem("albolineatus"), stem("craigiae") == stem("craigii")
    (True, True)
    >>> stem("lace")
    'lace'
    """
    for ending, shortest in ((_PERSON, 4), (_GENDER, 3), (_THIRD, 4)):
        found = ending.search(word)
        if found and found.start() >= shortest:
            return word[: found.start()]
    return word


def looks_latin(word: str) -> bool:
    """Has the word the shape of a descriptive Latin word (not: does it mean anything)?

    >>> looks_latin("multilobum"), looks_latin("linearis"), looks_latin("waterfall")
    (True, True, False)
    """
    return len(word) >= 5 and _LATIN_SHAPE.search(word) is not None
