"""What somebody typed, given back where it could not be taken: signed out meanwhile, or the page was too old."""

from __future__ import annotations

from urllib.parse import urlsplit

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render

Fields = list[tuple[str, str]]


def typed_fields(request: HttpRequest) -> Fields:
    """Every field that was sent but the token against forgery; none where a password is among them."""
    if any("password" in name for name in request.POST):
        return []
    sent = [(name, value) for name, values in request.POST.lists() for value in values]
    return [(name, value) for name, value in sent if name != "csrfmiddlewaretoken"]


def is_from_our_page(request: HttpRequest) -> bool:
    """Whether the browser says that a page of ours sent this.

    Only then is a button offered that sends it again: it would carry a good token, and so take a form that a
    strange page had filled in.
    """
    site = request.headers.get("Sec-Fetch-Site")
    if site is not None:
        return site == "same-origin"
    origin = request.headers.get("Origin") or request.headers.get("Referer") or ""
    parts = urlsplit(origin)
    return (parts.scheme, parts.netloc) == (request.scheme, request.get_host())


def send_again_page(request: HttpRequest, *, signed_out: bool, status: int) -> HttpResponse:
    """What was typed, in hidden fields of a form to the same address, and to be read and copied."""
    typed = typed_fields(request) if is_from_our_page(request) else []
    context = {
        "typed": typed,
        "readable": [(said(name), value) for name, value in typed if value.strip() and is_readable(name)],
        "signed_out": signed_out,
        "has_files": bool(request.FILES),
        "address": request.get_full_path(),
    }
    return render(request, "403_csrf.html", context, status=status)


def said(name: str) -> str:
    """A field's name as words: “plants-0-label_text” is “plant 1: label text”."""
    words = name.replace("_", " ")
    first, _, rest = words.partition("-")
    number, _, last = rest.partition("-")
    return f"{first.rstrip('s')} {int(number) + 1}: {last}" if number.isdecimal() and last else words


def is_readable(name: str) -> bool:
    """Whether a person typed it: not an id, a count of forms or a ticket."""
    return not name.endswith(("_id", "_FORMS", "submission", "_kept", "version", "confirmed"))
