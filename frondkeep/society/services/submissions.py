"""A form sent five times is taken once."""

from __future__ import annotations

import uuid
from collections.abc import Callable
from typing import Any

from django.db import IntegrityError, transaction

from frondkeep.society.models import Submission, User


def take_once(*, token: uuid.UUID, user: User, purpose: str, write: Callable[[], list[Any]]) -> list[Any]:
    """Run `write` and keep its result under `token`; if the token was taken, return the first result.

    `write` returns a JSON list (codes, ids). The row goes in first, so that of two equal requests
    at one moment the second waits for the first and then finds its result. A token of another user
    or another purpose is refused with PermissionError.
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
            raise PermissionError("This form belongs to somebody else.") from None
        return list(taken.result)
