"""Perhaps the same plant: what waits, two names side by side, and the curator's decision."""

from __future__ import annotations

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.html import format_html
from django.views.decorators.http import require_http_methods, require_safe

from frondkeep.society.services.submissions import take_once
from lineage.finding import curators_pair
from lineage.forms.same import AnswerForm, DecisionForm
from lineage.models import Suspicion
from lineage.services.consequences import Consequences, consequences_of_ruling
from lineage.services.descent import DescentError
from lineage.services.queue_pages import Queue, pair_page, queue_rows
from lineage.services.rulings import ContradictionError, DecidedMeanwhileError, give_ruling
from specimens.models import Name

A_PAGE = 25


@require_safe
def same(request: HttpRequest) -> HttpResponse:
    queue = Queue.of(request.user, request.GET.get("genus", ""))
    page = Paginator(queue.rows(), A_PAGE).get_page(request.GET.get("page"))
    context = {"queue": queue, "page_obj": page, "rows": queue_rows(page.object_list)}
    return render(request, "lineage/same.html", context)


@require_safe
def pair(request: HttpRequest, pk: int) -> HttpResponse:
    suspicion = curators_pair(request.user, pk)
    queue = Queue.of(request.user, request.GET.get("genus", ""))
    return render(request, "lineage/same_pair.html", {"page": pair_page(suspicion, queue, request.user)})


@require_http_methods(["GET", "HEAD", "POST"])
def decide(request: HttpRequest, pk: int) -> HttpResponse:
    suspicion = curators_pair(request.user, pk)
    if "answer" not in request.GET:
        return redirect("same-pair", suspicion.pk)
    answer, stands = answer_asked(request, suspicion)
    found = consequences_of_ruling(
        first=suspicion.first_name_id,
        second=suspicion.second_name_id,
        answer=answer,
        stands=stands.pk if stands else None,
    )
    form = DecisionForm(request.POST or None, initial={"last_seen": found.last_seen})
    status, meanwhile = 422 if form.is_bound else 200, None
    if form.is_valid():
        queue = Queue.of(request.user, request.GET.get("genus", "")).as_it_stands()
        try:
            ruling = save_decision(form, suspicion, answer, stands, request)
            say_saved(request, suspicion, ruling)
            return redirect(queue.address_after(suspicion.pk))
        except DecidedMeanwhileError as told:
            status, meanwhile, form = 409, told.ruling, seen_by_now(form, found)
        except (ContradictionError, DescentError) as problem:
            form.add_error(None, str(problem))
    context = {
        "suspicion": suspicion,
        "answer": answer,
        "stands": stands,
        "found": found,
        "form": form,
        "meanwhile": meanwhile,
    }
    return render(request, "lineage/same_decide.html", context, status=status)


def answer_asked(request: HttpRequest, suspicion: Suspicion) -> tuple[str, Name | None]:
    """The answer and the name to stand, from the address; Http404 for one that the page did not offer."""
    asked = AnswerForm(request.GET)
    if not asked.is_valid():
        raise Http404
    answer, stands = asked.cleaned_data["answer"], asked.cleaned_data["stands"]
    names = may_stand(suspicion)
    if (answer == "same") != (stands in names):
        raise Http404
    return answer, names.get(stands)


def may_stand(suspicion: Suspicion) -> dict[int, Name]:
    """The names that may stand for both: the two, and those that are accepted for them today."""
    pair = (suspicion.first_name, suspicion.second_name)
    return {name.pk: name for each in pair for name in (each, each.accepted or each)}


def save_decision(
    form: DecisionForm, suspicion: Suspicion, answer: str, stands: Name | None, request: HttpRequest
) -> int:
    """The id of the decision; a form sent twice gives the first one. Nothing is kept of one that is refused."""
    typed = form.cleaned_data

    def write() -> list[int]:
        ruling = give_ruling(
            first=suspicion.first_name,
            second=suspicion.second_name,
            answer=answer,
            stands=stands,
            reason=typed["reason"],
            by=request.user,
            last_seen=typed["last_seen"],
        )
        return [ruling.pk]

    purpose = f"decision on {suspicion.pk}"
    return take_once(token=typed["submission"], user=request.user, purpose=purpose, write=write)[0]


def seen_by_now(form: DecisionForm, found: Consequences) -> DecisionForm:
    """The same form with what was typed, now that the curator is told of the newest decision."""
    typed = form.data.copy()
    typed["last_seen"] = str(found.last_seen)
    again = DecisionForm(typed)
    again.is_valid()
    return again


def say_saved(request: HttpRequest, suspicion: Suspicion, ruling: int) -> None:
    """What was saved, with the way back."""
    undo = reverse("decision-undo", args=[ruling])
    words = format_html('Your decision on {} is saved. <a href="{}">Undo it</a>', str(suspicion), undo)
    messages.success(request, words)
