"""Signing in comes first, and takes nothing away from whoever was signed out while typing."""

from __future__ import annotations

from typing import Any

from django.contrib.auth.middleware import LoginRequiredMiddleware
from django.http import HttpRequest, HttpResponse

from frondkeep.society.typed_again import send_again_page, typed_fields


class SignInFirstMiddleware(LoginRequiredMiddleware):
    """Sends strangers to sign in. A form sent by somebody whose sign-in ended is given back, with all in it."""

    def handle_no_permission(self, request: HttpRequest, view_func: Any) -> HttpResponse:
        if request.method == "POST" and typed_fields(request):
            return send_again_page(request, signed_out=True, status=401)
        return super().handle_no_permission(request, view_func)
