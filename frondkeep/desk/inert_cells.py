"""Spreadsheet cells that a spreadsheet program would run as a formula, made plain text, and back again."""

# A minus sign and the wide forms of these signs start a formula in some languages' programs as well.
STARTS_A_FORMULA = tuple("=+-@\t\r\n\0−＝＋－＠")
MARK = "'"


def inert(text: str) -> str:
    """The text with an apostrophe before it where it would start a formula; `revive` gives the text back.

    >>> inert("=1+1"), inert("'Silver Tassel'"), revive(inert("'=1"))
    ("'=1+1", "'Silver Tassel'", "'=1")
    """
    return MARK + text if text.lstrip(MARK).startswith(STARTS_A_FORMULA) else text


def revive(text: str) -> str:
    """What `inert` was given."""
    marked = text.startswith(MARK) and text.lstrip(MARK).startswith(STARTS_A_FORMULA)
    return text[1:] if marked else text
