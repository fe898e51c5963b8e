"""A number is never handed out twice, whoever asks at the same moment."""

import threading

import pytest
from django.db import close_old_connections, connection

from specimens.naming.codes import Code, may_be_handed_out, next_code
from specimens.services.codes import draw_code, draw_codes, keep_clear_of


@pytest.mark.django_db
def test_codes_follow_each_other() -> None:
    assert [draw_code(year=2026), *draw_codes(year=2026, count=2)] == [
        Code(2026, 1),
        Code(2026, 2),
        Code(2026, 3),
    ]
    assert draw_code(year=2027) == Code(2027, 1)


def draw_in_order(count: int) -> list[Code]:
    """What one person alone would draw."""
    drawn = [next_code(2026)]
    while len(drawn) < count:
        drawn.append(next_code(2026, drawn[-1].number))
    return drawn


@pytest.mark.django_db
def test_a_code_that_a_swap_would_turn_into_another_is_passed_over() -> None:
    drawn = draw_codes(year=2026, count=300)
    assert drawn == draw_in_order(300)
    assert all(may_be_handed_out(code) for code in drawn)


@pytest.mark.django_db
def test_none_is_drawn_for_nobody() -> None:
    with pytest.raises(ValueError, match="At least one"):
        draw_codes(year=2026, count=0)


@pytest.mark.django_db
def test_a_code_from_outside_is_not_drawn_again() -> None:
    keep_clear_of(Code(2026, 41))
    keep_clear_of(Code(2026, 7))
    assert draw_code(year=2026) == next_code(2026, 41)


@pytest.mark.django_db(transaction=True)
def test_eight_who_draw_at_once_never_get_the_same_code() -> None:
    drawn: list[Code] = []

    def draw() -> None:
        close_old_connections()
        drawn.extend(draw_code(year=2026) for _ in range(12))
        connection.close()

    threads = [threading.Thread(target=draw) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(set(drawn)) == 96
    assert sorted(drawn) == draw_in_order(96)
