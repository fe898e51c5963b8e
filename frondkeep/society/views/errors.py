"""Answers where something went wrong, with what was typed given back."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render


def stale_form(request: HttpRequest, reason: str = "") -> HttpResponse:
    return render(request, "403_csrf.html", status=403)
