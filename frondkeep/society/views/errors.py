"""Answers where something went wrong, with what was typed given back."""

from __future__ import annotations

from django.core.exceptions import RequestDataTooBig, TooManyFieldsSent, TooManyFilesSent
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.defaults import bad_request

from frondkeep.society.typed_again import send_again_page

TOO_MUCH = (RequestDataTooBig, TooManyFieldsSent, TooManyFilesSent)


def unreadable(request: HttpRequest, exception: Exception) -> HttpResponse:
    """What came was no good request (400), or more than any form holds (413)."""
    if isinstance(exception, TOO_MUCH):
        return render(request, "413.html", status=413)
    return bad_request(request, exception)


def stale_form(request: HttpRequest, reason: str = "") -> HttpResponse:
    """The token against forgery is missing or of an earlier sign-in: one more tap sends what was typed."""
    return send_again_page(request, signed_out=False, status=403)
