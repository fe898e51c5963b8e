"""Signing in by name or by e-mail address, which a couple may share."""

from __future__ import annotations

from typing import Any

from django.contrib.auth.backends import ModelBackend
from django.db.models import Q
from django.http import HttpRequest

from frondkeep.society.models import User


class NameOrEmailBackend(ModelBackend):
    def authenticate(
        self,
        request: HttpRequest | None,
        username: str | None = None,
        password: str | None = None,
        **kwargs: Any,
    ) -> User | None:
        """The user with this name or address and password; where an address is shared, the password decides."""
        typed = (username or kwargs.get(User.USERNAME_FIELD) or "").strip()
        if not typed or password is None:
            return None
        users = list(User.objects.filter(Q(name__iexact=typed) | Q(email__iexact=typed)).order_by("pk")[:5])
        if not users:
            User().set_password(password)  # as slow as a real check, so that nobody learns who exists
        for user in users:
            if user.check_password(password) and self.user_can_authenticate(user):
                return user
        return None
