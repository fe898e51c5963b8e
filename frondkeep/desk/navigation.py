"""The way round: what stands in the head of every page, by role."""

from typing import Any

from django.http import HttpRequest


def navigation(request: HttpRequest) -> dict[str, Any]:
    return {"nav": []}
