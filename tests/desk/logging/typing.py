"""The form as somebody fills it in, and what they read after sending it."""

from __future__ import annotations

import html
import re
from typing import Any

from django.http import HttpResponse
from django.test import Client

from frondkeep.society.models import Submission
from specimens.models import Specimen
from tests.cast import token


def filled(*cards: dict[str, Any], **common: Any) -> dict[str, Any]:
    """The fields of a whole form: a tag with any words came by a way not known, unless told otherwise."""
    form: dict[str, Any] = {
        "submission": str(token()),
        "acquired": "spring 2024",
        "plants-TOTAL_FORMS": len(cards),
        "plants-INITIAL_FORMS": 0,
    }
    for number, card in enumerate(cards):
        full = {"label_text": "no tag", "came": "not known"} | card
        form |= {f"plants-{number}-{name}": value for name, value in full.items()}
    return form | common


def confirmed(form: dict[str, Any], **answers: Any) -> dict[str, Any]:
    """The form sent from the page to look over; answers as `p0_tag_means="mine"`."""
    named = {re.sub(r"^p(\d+)_", r"plants-\1-", key): value for key, value in answers.items()}
    return form | {"confirmed": "yes"} | named


def sent(client: Client, form: dict[str, Any]) -> HttpResponse:
    return client.post("/log/", form)


def text_of(response: HttpResponse) -> str:
    """What stands in the page's middle, without tags."""
    main = response.content.decode().partition("<main")[2]
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", main)).split())


def logged_plants(form: dict[str, Any]) -> list[Specimen]:
    """The plants that this form made, in its order."""
    codes = [row["code"] for row in Submission.objects.get(pk=form["submission"]).result]
    by_code = {plant.code: plant for plant in Specimen.objects.filter(code__in=codes)}
    return [by_code[code] for code in codes]
