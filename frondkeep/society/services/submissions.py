"""A form sent five times is taken once."""

from __future__ import annotations

import uuid
from collections.abc import Callable
from typing import Any

from django.core.exceptions import PermissionDenied
from django.db import IntegrityError, transaction

from frondkeep.society.models import Submission, User


class NotYourFormError(PermissionError, PermissionDenied):
    """The id of a form belongs to somebody else, or to another form; the answer is 403."""


def taken_before(token: str, *, user: User, purpose: str) -> list[Any] | None:
    """The result of this very form, if it was taken: a repeat is not judged again, for its own first
    sending may speak against it (a plant is entered already). None for any other text.
    """
    try:
        taken = Submission.objects.filter(token=uuid.UUID(token), user=user, purpose=purpose).first()
    except ValueError:
        return None
    return list(taken.result) if taken else None


def take_once(*, token: uuid.UUID, user: User, purpose: str, write: Callable[[], list[Any]]) -> list[Any]:
    """Run `write` and keep its result under `token`; if the token was taken, return the first result.

    `write` returns a JSON list (codes, ids). The row goes in first, so that of two equal requests
    at one moment the second waits for the first and then finds its result. A token of another user
    or another purpose is refused with NotYourFormError.
    """
    try:
        with transaction.atomic():
            submission = Submission.objects.create(token=token, user=user, purpose=purpose)
            submission.result = result = write()
            submission.save(update_fields=["result"])
            return result
    except IntegrityError:
        taken = Submission.objects.filter(token=token).first()
        if taken is None:
            raise
        if taken.user_id != user.pk or taken.purpose != purpose:
            raise NotYourFormError("This form belongs to somebody else.") from None
        return list(taken.result)
