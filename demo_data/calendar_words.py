"""Dates as members write them: the words always hold the day they were written for."""

from datetime import date, timedelta

from demo_data.chance import Chance

SEASONS = {12: "winter", 1: "winter", 2: "winter", 3: "spring", 4: "spring", 5: "spring", 6: "summer",
           7: "summer", 8: "summer", 9: "autumn", 10: "autumn", 11: "autumn"}  # fmt: skip
TODAY = date(2026, 11, 25)


def full_words(day: date, chance: Chance) -> str:
    """Return the day in one of four writings, day before month."""
    return chance.one_of(
        (
            f"{day.day}/{day.month}/{day.year}",
            f"{day.day} {day:%B} {day.year}",
            day.isoformat(),
            f"{day.day}.{day.month}.{day.year}",
        )
    )


def _month_words(day: date, chance: Chance) -> str:
    if chance.happens(0.3) and day.month in range(3, 12):  # a winter belongs to two years
        return f"{SEASONS[day.month]} {day.year}"
    return chance.one_of((f"{day:%B} {day.year}", f"{day:%b} {day.year}", f"{day:%Y-%m}"))


def _year_words(day: date, chance: Chance) -> str:
    if day.year < 2000 and chance.happens(0.2):
        return f"{day.year // 10 * 10}s"
    return chance.one_of((f"{day.year}", f"{day.year}", f"{day.year}", f"c. {day.year}", f"{day.year}?"))


def rough_words(day: date, chance: Chance) -> str:
    """Return the day as words, the rougher the longer ago; now and then nothing."""
    ago = TODAY.year - day.year
    draw = chance.between(0, 99)
    if draw < 4:
        return ""
    if draw < 70 - 3 * ago:
        return full_words(day, chance)
    if draw < 95 - 2 * ago:
        return _month_words(day, chance)
    return _year_words(day, chance)


def day_in(year: int, chance: Chance, *, months: tuple[int, int] = (1, 12)) -> date:
    """Return a day of the year, before the list was copied out."""
    day = date(year, chance.between(*months), chance.between(1, 28))
    return min(day, TODAY - timedelta(days=chance.between(20, 60)))


def day_between(first: date, last: date, chance: Chance) -> date:
    """Return a day from ``first`` to ``last``, both included; ``first`` if they are the wrong way round."""
    return first + timedelta(days=chance.between(0, max((last - first).days, 0)))
