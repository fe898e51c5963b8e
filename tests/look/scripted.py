"""Small pages with our scripts on them, framed like every page."""

from __future__ import annotations

from django.template import Context, engines

FRAME = (
    '{% extends "base.html" %}{% load static %}{% block title %}Try{% endblock %}{% block main %}<h1>Try</h1>'
)


def scripted(main: str, scripts: str = "") -> str:
    """A page with `main` in its middle. Static files must be served under their own names."""
    text = f"{FRAME}{main}{{% endblock %}}{{% block scripts %}}{scripts}{{% endblock %}}"
    return engines["django"].engine.from_string(text).render(Context({"nav": []}))
