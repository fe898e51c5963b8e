"""Words that break software that trusts them."""

MARKED_UP = "<script>alert(1)</script>"
BROKEN_OUT = "\"'><img src=x onerror=alert(1)>"
NUL = "a\0b"
CONTROLS = "bell\x07 escape\x1b delete\x7f"
EMOJI = "🌿👩🏽‍🌾 fern"
TURNED = "silver\u202elessat"
RIGHT_TO_LEFT = "שרך כסף"
QUOTES = "\"'‘’“”'\""
ONE_WORD = "W" * 500
FORMULA_OF_A_PROGRAM = '=HYPERLINK("http://elsewhere.example","x")'
OF_A_TEMPLATE = "{{ secret }}{% load x %}${7*7}#eval(1)"
SQL = "'; DROP TABLE specimens_specimen; --"
SPREADING = "ﷺ" * 120  # one sign that folds into eighteen
STACKED = "Z̷̧̛" * 60

# None of them over 500 characters, none without a letter: a label may say any of these.
ON_A_TAG = {
    "markup": MARKED_UP,
    "broken out of an attribute": BROKEN_OUT,
    "emoji": EMOJI,
    "turned round": TURNED,
    "right to left": RIGHT_TO_LEFT,
    "a long word": ONE_WORD,
    "a formula": FORMULA_OF_A_PROGRAM,
    "a template": OF_A_TEMPLATE,
    "sql": SQL,
    "signs that spread": SPREADING,
    "stacked accents": STACKED,
}
EVERYWHERE = ON_A_TAG | {
    "nul": NUL,
    "controls": CONTROLS,
    "only quotes": QUOTES,
    "only marks": "\u202e\u200f",
    "ten thousand": "x" * 10_000,
    "ten thousand words": "x " * 5_000,
    "501 characters": "y" * 501,
}


def never_live(page: str) -> bool:
    """Whether nothing of the marked-up words stands in a page as markup."""
    return "<script>alert" not in page and "<img src=x" not in page
