"""All decisions on names, and taking one back."""

from __future__ import annotations

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_safe

from frondkeep.society.models import User
from frondkeep.society.services.submissions import take_once
from lineage.finding import curators_alone, curators_ruling
from lineage.forms.same import ReasonForm
from lineage.models import Ruling
from lineage.services.consequences import consequences_of_undoing
from lineage.services.decision_pages import decided_rows, rulings_shown
from lineage.services.descent import DescentError
from lineage.services.rulings import ContradictionError, NotStandingError, undo_ruling

A_PAGE = 30


@require_safe
def decisions(request: HttpRequest) -> HttpResponse:
    curators_alone(request.user)
    answer = request.GET.get("answer", "")
    page = Paginator(rulings_shown(answer), A_PAGE).get_page(request.GET.get("page"))
    context = {
        "page_obj": page,
        "rows": decided_rows(page.object_list, request.user),
        "answer": answer,
        "answers": Ruling.Answers.choices,
    }
    return render(request, "lineage/decisions.html", context)


@require_http_methods(["GET", "HEAD", "POST"])
def undo(request: HttpRequest, pk: int) -> HttpResponse:
    ruling = curators_ruling(request.user, pk)
    form = ReasonForm(request.POST or None)
    form.fields["reason"].label = "Why is it undone?"
    if form.is_valid():
        try:
            save_undoing(form, ruling, request.user)
            messages.success(request, "The decision is undone. Everything is as though it had not been made.")
            return redirect("decisions")
        except (ContradictionError, NotStandingError, DescentError) as problem:
            form.add_error(None, str(problem))
    context = {
        "ruling": ruling,
        "row": decided_rows([ruling], request.user)[0],
        "found": consequences_of_undoing(ruling),
        "form": form,
    }
    return render(request, "lineage/decision_undo.html", context, status=422 if form.is_bound else 200)


def save_undoing(form: ReasonForm, ruling: Ruling, by: User) -> None:
    """Undo once, however often the form is sent."""

    def write() -> list[int]:
        return [undo_ruling(ruling, reason=form.cleaned_data["reason"], by=by).pk]

    token = form.cleaned_data["submission"]
    take_once(token=token, user=by, purpose=f"undoing of {ruling.pk}", write=write)
