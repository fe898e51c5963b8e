"""A form sent five times is taken once."""

import threading

import pytest
from django.db import close_old_connections, connection

from frondkeep.society.models import Meeting, Submission
from frondkeep.society.services.submissions import take_once
from tests.cast import make_user, token


@pytest.mark.django_db
def test_the_second_time_gets_the_first_result() -> None:
    user, form, written = make_user(), token(), iter([["2026-0001"], ["2026-0002"]])
    results = [take_once(token=form, user=user, purpose="log", write=lambda: next(written)) for _ in range(5)]
    assert results == [["2026-0001"]] * 5


@pytest.mark.django_db
def test_what_failed_may_be_sent_again() -> None:
    user, form = make_user(), token()

    def fail() -> list[str]:
        Meeting.objects.create(name="half written", date="2026-01-01")
        raise ValueError("no such plant")

    with pytest.raises(ValueError, match="no such plant"):
        take_once(token=form, user=user, purpose="log", write=fail)
    assert not Submission.objects.exists()
    assert not Meeting.objects.exists()
    assert take_once(token=form, user=user, purpose="log", write=lambda: ["now"]) == ["now"]


@pytest.mark.django_db
def test_nobody_reads_another_ones_result() -> None:
    form = token()
    take_once(token=form, user=make_user(), purpose="log", write=lambda: ["secret"])
    with pytest.raises(PermissionError):
        take_once(token=form, user=make_user(), purpose="log", write=lambda: ["mine"])


@pytest.mark.django_db(transaction=True)
def test_five_at_one_moment_write_once() -> None:
    user, form, results = make_user(), token(), []

    def send() -> None:
        close_old_connections()
        results.append(
            take_once(
                token=form,
                user=user,
                purpose="log",
                write=lambda: [Meeting.objects.create(name=f"M{len(results)}", date="2026-01-01").pk],
            )
        )
        connection.close()

    threads = [threading.Thread(target=send) for _ in range(5)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert Meeting.objects.count() == 1
    assert len(results) == 5
    assert all(result == results[0] for result in results)
