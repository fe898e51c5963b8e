"""Contrast of two colours, as WCAG 2.2 defines relative luminance and contrast ratio."""


def luminance(colour: str) -> float:
    """Relative luminance, 0 to 1, of a colour written #rrggbb."""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio, 1 to 21, whichever is the text.

    >>> round(contrast("#ffffff", "#000000"), 1)
    21.0
    """
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)
