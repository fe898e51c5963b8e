"""Hand-overs: what waits, what is settled, one of them, the table of a meeting."""

from __future__ import annotations

import uuid
from typing import Any

from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from frondkeep.desk.finding_hand_overs import (
    listed_for,
    logged_already,
    table_of,
    tables_laid,
    visible_hand_over,
)
from frondkeep.desk.forms.handovers import TakenForm
from frondkeep.desk.forms.keepers import keepers_at_hand
from frondkeep.desk.hand_over_words import told
from frondkeep.society.models import User
from specimens.models import HandOver

MOST_OPEN = 200
SETTLED_A_PAGE = 30


@require_safe
def hand_overs(request: HttpRequest) -> HttpResponse:
    """What waits for me, what waits for others, what is settled; a curator with `all` everybody's."""
    user, everybodys = request.user, "all" in request.GET
    mine = listed_for(user, everybodys=everybodys)
    asked = HandOver.objects.waiting_for(user).with_page_parts().newest_first()[:MOST_OPEN]
    asked = told(asked, reader=user)
    ids = {each.hand_over.pk for each in asked}
    others = mine.open().exclude(pk__in=ids).with_page_parts().newest_first()[:MOST_OPEN]
    settled = mine.settled().exclude(pk__in=ids).with_page_parts().newest_first()
    page = Paginator(settled, SETTLED_A_PAGE).get_page(request.GET.get("page"))
    context = {
        "asked": asked,
        "others": told(others, reader=user),
        "settled": told(page.object_list, reader=user),
        "page_obj": page,
        "tables": tables_laid(),
        "everybodys": everybodys and user.is_curator,
    }
    return render(request, "desk/handovers.html", context)


@require_safe
def hand_over(request: HttpRequest, token: uuid.UUID) -> HttpResponse:
    return hand_over_page(request, visible_hand_over(request.user, token))


def hand_over_page(
    request: HttpRequest,
    found: HandOver,
    *,
    trouble: str = "",
    form: TakenForm | None = None,
    status: int = 200,
) -> HttpResponse:
    """One hand-over with all that can be answered; `trouble` says why the last answer was not taken."""
    user = request.user
    context = {
        "told": told([found], reader=user)[0],
        "form": form or taken_form(user, found),
        "asks": is_asked(user, found),
        "trouble": trouble,
    }
    return render(request, "desk/handover.html", context, status=status)


@require_safe
def table(request: HttpRequest, pk: int) -> HttpResponse:
    return table_page(request, pk)


def table_page(request: HttpRequest, pk: int, *, trouble: str = "", status: int = 200) -> HttpResponse:
    """What lies on the table of a meeting, for everybody to pick from."""
    meeting = table_of(pk)
    lying = HandOver.objects.on_tables().filter(meeting=meeting).with_page_parts()
    keepers = keepers_at_hand(request.user)
    rows = told(lying, reader=request.user, keepers=keepers)
    context = {"meeting": meeting, "rows": rows, "trouble": trouble, "keepers": keepers}
    return render(request, "desk/handover_table.html", context, status=status)


def is_asked(user: User, found: HandOver) -> bool:
    """Whether it waits for this user to say that they, or whom they answer for, have it."""
    waits = found.state == HandOver.State.OFFERED and found.receiver is not None
    return waits and (user.is_curator or user.acts_for(found.receiver))


def taken_form(user: User, found: HandOver, data: Any = None) -> TakenForm:
    """The receiver's answer; the keeper it was offered to comes first. Who answers for them, answers for them alone."""
    own = is_asked(user, found) and user.acts_for(found.receiver)
    keepers = keepers_at_hand(user) if own else []
    keepers.sort(key=lambda keeper: keeper.pk != found.receiver_id)
    logged = logged_already(found, user) if own and found.is_piece else []
    first = {"keeper": str(found.receiver_id), "logged": ""}
    return TakenForm(data, user=user, keepers=keepers, logged=logged, initial=first)
