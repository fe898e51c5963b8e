"""Answers where something went wrong, with what was typed given back."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse

from frondkeep.society.typed_again import send_again_page


def stale_form(request: HttpRequest, reason: str = "") -> HttpResponse:
    """The token against forgery is missing or of an earlier sign-in: one more tap sends what was typed."""
    return send_again_page(request, signed_out=False, status=403)
