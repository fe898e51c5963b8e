"""Drawing the next codes of a year; a number is never handed out twice."""

from __future__ import annotations

from django.db import connection, transaction

from specimens.models import CodeCounter
from specimens.naming.codes import Code, may_be_handed_out


@transaction.atomic
def draw_codes(*, year: int, count: int = 1) -> list[Code]:
    """The next `count` codes of the year, in order.

    Numbers whose code two neighbouring digits swapped would turn into another good code are passed over
    (fewer than one in twenty), so that no swap goes unnoticed.
    """
    if count < 1:
        raise ValueError("At least one code is drawn.")
    drawn: list[Code] = []
    while len(drawn) < count:
        drawn += filter(may_be_handed_out, next_numbers(year, count - len(drawn)))
    return drawn


def next_numbers(year: int, count: int) -> list[Code]:
    """The next numbers, whether or not they make a safe code.

    One statement reads and raises the counter, so that two processes at one moment wait for each
    other and never read the same number (reading the highest number first gave doubles on PostgreSQL).
    """
    table = connection.ops.quote_name(CodeCounter._meta.db_table)
    with connection.cursor() as cursor:
        cursor.execute(
            f"INSERT INTO {table} (year, last) VALUES (%s, %s) "  # noqa: S608 — the table's own name
            f"ON CONFLICT (year) DO UPDATE SET last = {table}.last + excluded.last RETURNING last",
            [year, count],
        )
        (last,) = cursor.fetchone()
    return [Code(year, number) for number in range(last - count + 1, last + 1)]


def draw_code(*, year: int) -> Code:
    return draw_codes(year=year)[0]


@transaction.atomic
def keep_clear_of(code: Code) -> None:
    """Move the counter past a code that came in from outside, so that it is not drawn again."""
    table = connection.ops.quote_name(CodeCounter._meta.db_table)
    with connection.cursor() as cursor:
        cursor.execute(
            f"INSERT INTO {table} (year, last) VALUES (%s, %s) ON CONFLICT (year) DO UPDATE SET "  # noqa: S608
            f"last = CASE WHEN {table}.last > excluded.last THEN {table}.last ELSE excluded.last END",
            [code.year, code.number],
        )
