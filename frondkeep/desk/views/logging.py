"""Log plants: type, look over what is asked, keep; then the codes."""

from __future__ import annotations

import uuid
from dataclasses import replace

from django.core.exceptions import PermissionDenied
from django.db import IntegrityError
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from frondkeep.desk.forms.answers import AnswersForm
from frondkeep.desk.forms.logging import LogForm
from frondkeep.desk.forms.plant_cards import BaseCards
from frondkeep.desk.logging.answering import READ_FIELDS, answer_tag
from frondkeep.desk.logging.known import known_names
from frondkeep.desk.logging.questions import notes_about
from frondkeep.desk.logging.sheet import Sheet, blank, shown_again
from frondkeep.desk.logging.writing import CardRefusedError, rehearse, sentences_of, write_plants
from frondkeep.society.models import Submission, User
from frondkeep.society.services.submissions import take_once
from specimens.models import Specimen

PURPOSE = "log plants"


@require_http_methods(["GET", "HEAD", "POST"])
def log(request: HttpRequest) -> HttpResponse:
    """The empty form; sent, the page to look it over; confirmed, the plants are kept."""
    if request.method != "POST":
        return log_page(request, *blank(request.user))
    if is_taken(request):
        return redirect("logged", request.POST["submission"])
    sheet = Sheet(request)
    if not sheet.is_valid():
        return given_back(request, sheet)
    answers = sheet.plan()
    try:
        if "confirmed" in request.POST and answers.is_valid():
            return redirect("logged", keep(sheet, answers))
        return check_page(request, sheet, answers)
    except CardRefusedError as problem:
        sheet.card(problem.number).add_error(problem.field, str(problem))
        return given_back(request, sheet)


@require_POST
def another(request: HttpRequest) -> HttpResponse:
    """One more card, everything typed kept; for whoever has no scripts."""
    return log_page(request, *shown_again(request, more=1))


@require_POST
def change(request: HttpRequest) -> HttpResponse:
    """Back from the page to look over, everything typed kept."""
    return log_page(request, *shown_again(request))


@require_POST
def without(request: HttpRequest, number: int) -> HttpResponse:
    """The same form without one of its cards."""
    return log_page(request, *shown_again(request, without=number))


@require_safe
def logged(request: HttpRequest, token: uuid.UUID) -> HttpResponse:
    """The codes to copy onto the tags; for whoever logged them alone."""
    taken = Submission.objects.filter(token=token, user=request.user, purpose=PURPOSE).first()
    if taken is None:
        raise Http404
    rows = plates(taken.result, request.user)
    return render(request, "desk/logged.html", {"plates": rows})


@require_safe
def tag(request: HttpRequest) -> HttpResponse:
    """What is to be said of a tag while its card is being filled in; nothing where it is plainly known."""
    what, place = request.GET.get("what", ""), request.GET.get("place", "")
    if what not in READ_FIELDS or not place.isdecimal() or len(place) > 3:
        raise Http404
    answer = answer_tag(
        request.GET.get("text", ""),
        place=int(place),
        what=what,
        known=known_names(),
        reader=request.user,
        given={},
    )
    return render(request, "desk/log_tag.html", {"answer": answer})


def given_back(request: HttpRequest, sheet: Sheet) -> HttpResponse:
    sheet.show_answers()
    return log_page(request, sheet.common, sheet.cards, status=422)


def log_page(request: HttpRequest, common: LogForm, cards: BaseCards, *, status: int = 200) -> HttpResponse:
    forms = [common, *cards.forms]
    wrong = any(form.errors for form in forms) or bool(cards.non_form_errors())
    context = {"common": common, "cards": cards, "forms": forms, "has_errors": wrong}
    return render(request, "desk/log.html", context, status=status)


def check_page(request: HttpRequest, sheet: Sheet, answers: AnswersForm) -> HttpResponse:
    sentences = rehearse(sheet.log(sheet.answers_so_far()))
    rows = [
        {
            "plan": plan,
            "sentence": sentence,
            "notes": notes_about(plan),
            "fields": [(question, answers[question.key]) for question in sheet.questions[plan.number]],
        }
        for plan, sentence in zip(sheet.plans, sentences, strict=True)
    ]
    context = {"rows": rows, "form": answers, "typed": list(sheet.typed()), "common": sheet.common}
    return render(request, "desk/log_check.html", context, status=422 if answers.is_bound else 200)


def keep(sheet: Sheet, answers: AnswersForm) -> uuid.UUID:
    """Write the plants once; returns the token of the form, under which their codes are found."""
    token: uuid.UUID = sheet.common.cleaned_data["submission"]

    def write() -> list[dict[str, object]]:
        log = replace(sheet.log(answers.cleaned_data), known=known_names())
        plants = write_plants(log)
        again = {answers.cleaned_data.get(plan.key("twice")) for plan in log.plans}
        return [{"code": plant.code, "already": plant.code in again} for plant in plants]

    def once() -> None:
        take_once(token=token, user=sheet.user, purpose=PURPOSE, write=write)

    try:
        try:
            once()
        except IntegrityError:
            # Somebody brought in the same new name at the same moment; now it is on record.
            once()
    except PermissionError as problem:
        raise PermissionDenied from problem
    return token


def is_taken(request: HttpRequest) -> bool:
    """Whether this very form was kept before; the repeat is not even judged, for its photos are used up."""
    try:
        token = uuid.UUID(request.POST.get("submission", ""))
    except ValueError:
        return False
    return Submission.objects.filter(token=token, user=request.user, purpose=PURPOSE).exists()


def plates(result: list[dict[str, object]], user: User) -> list[dict[str, object]]:
    """One row a plant: its code, whether it was on record before, and its sentence if it may still be seen."""
    seen = (
        Specimen.objects.visible_to(user).with_page_parts().filter(code__in=[row["code"] for row in result])
    )
    plants = {plant.code: plant for plant in seen}
    sentences = dict(zip(plants, sentences_of(plants.values(), reader=user), strict=True))
    return [
        row | {"plant": plants.get(row["code"]), "sentence": sentences.get(row["code"])} for row in result
    ]
