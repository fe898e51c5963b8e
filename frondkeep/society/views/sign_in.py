"""Signing in, and what to do when it does not work."""

from django.http import HttpRequest, HttpResponse


def locked_out(
    request: HttpRequest, credentials: dict[str, str] | None = None, *args: object
) -> HttpResponse:
    return HttpResponse("Too many attempts.", status=429)
