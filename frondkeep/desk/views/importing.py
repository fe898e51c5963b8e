"""Spreadsheets in, step by step: files, columns, preview, confirmation."""

from __future__ import annotations

import uuid
from collections.abc import Iterable
from typing import Any

from django.contrib import messages
from django.core.paginator import Paginator
from django.db import IntegrityError
from django.db.models import Count, Q
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from frondkeep.desk.forms.importing import FilesForm, SheetForm
from frondkeep.desk.importing.batches import (
    PlanChangedError,
    begin_reading,
    confirm,
    open_batch,
    read_on,
    understand_again,
)
from frondkeep.desk.importing.intake import FileRefusedError
from frondkeep.desk.importing.kinds import KINDS
from frondkeep.desk.models import ImportBatch, ImportSheet
from frondkeep.society.forms import SubmissionForm
from frondkeep.society.models import Role, User
from lineage.core import PedigreeError
from lineage.services.descent import DescentError

ROWS_A_PAGE = 100
SHOWN = {"new": "new", "on-record": "on record", "refused": "refused"}
State = ImportBatch.State


def importer(user: User) -> User:
    """A curator or an administrator; Http404 for everybody else."""
    if not user.holds(Role.CURATOR, Role.ADMINISTRATOR):
        raise Http404
    return user


def own_batch(user: User, pk: int, *states: str) -> ImportBatch:
    """The user's own import in one of these states, or Http404."""
    found = ImportBatch.objects.filter(pk=pk, by=importer(user), state__in=states).first()
    if found is None:
        raise Http404
    return found


@require_http_methods(["GET", "HEAD", "POST"])
def import_files(request: HttpRequest) -> HttpResponse:
    user = importer(request.user)
    form = FilesForm(request.POST, request.FILES) if request.method == "POST" else FilesForm()
    if form.is_valid():
        try:
            return redirect("import-columns", open_batch(user, form.cleaned_data["files"]).pk)
        except FileRefusedError as problem:
            form.add_error("files", str(problem))
    waiting = ImportBatch.objects.filter(by=user).exclude(state=State.DONE)[:5]
    context = {"form": form, "waiting": waiting, "kinds": KINDS.values()}
    return render(request, "desk/import.html", context, status=422 if form.is_bound else 200)


@require_http_methods(["GET", "HEAD", "POST"])
def import_columns(request: HttpRequest, pk: int) -> HttpResponse:
    batch = own_batch(request.user, pk, State.COLUMNS, State.READING, State.PREVIEW)
    sheets = list(batch.sheets.all())
    typed = request.POST if request.method == "POST" else None
    forms = [SheetForm(typed, sheet=sheet) for sheet in sheets]
    if typed is not None:
        valid = not any([form.errors for form in forms])  # noqa: C419 — each says what is wrong with it
        if valid and keep_columns(forms):
            begin_reading(batch)
            read_on(batch)
            return redirect("import-preview", batch.pk)
        if valid:
            messages.info(request, "Look at the columns again: something above them was changed.")
            return redirect("import-columns", batch.pk)
    status = 422 if any(form.errors for form in forms) else 200
    return render(request, "desk/import_columns.html", {"batch": batch, "forms": forms}, status=status)


def keep_columns(forms: Iterable[SheetForm]) -> bool:
    """Keep what was chosen; False where columns were guessed anew and want to be looked at."""
    settled = True
    for form in forms:
        chosen = form.cleaned_data
        if form.asks_anew:
            understand_again(form.sheet, kind=chosen["kind"], heading_row=chosen["heading_row"])
            settled = settled and not form.sheet.kind
        else:
            form.sheet.columns = form.columns()
        form.sheet.save()
    return settled


@require_http_methods(["GET", "HEAD", "POST"])
def import_preview(request: HttpRequest, pk: int) -> HttpResponse:
    """What will happen to every row; sent back, it is confirmed. A second click finds it written."""
    batch = own_batch(request.user, pk, State.READING, State.PREVIEW, State.DONE)
    if batch.state == State.DONE:
        return redirect("import-done", batch.pk)
    if request.method == "POST" and batch.state == State.PREVIEW:
        return confirm_import(request, batch)
    return preview_page(request, batch)


def preview_page(
    request: HttpRequest, batch: ImportBatch, *, problem: str = "", status: int = 200
) -> HttpResponse:
    only = SHOWN.get(request.GET.get("show", ""), "")
    rows = batch.rows.select_related("sheet")
    paginator = Paginator(rows.filter(fate=only) if only else rows, ROWS_A_PAGE)
    context: dict[str, Any] = {
        "batch": batch,
        "sheets": counted_sheets(batch),
        "counts": rows.aggregate(
            new=Count("pk", Q(fate="new")),
            known=Count("pk", Q(fate="on record")),
            refused=Count("pk", Q(fate="refused")),
            all=Count("pk"),
        ),
        "page_obj": paginator.get_page(request.GET.get("page")),
        "only": only,
        "problem": problem,
        "form": SubmissionForm(initial={"submission": uuid.uuid4()}),
    }
    return render(request, "desk/import_preview.html", context, status=status)


def counted_sheets(batch: ImportBatch) -> Iterable[ImportSheet]:
    """Each sheet with `new`, `known` and `refused`, and the label of its kind."""
    sheets = batch.sheets.defer("rows").annotate(
        new=Count("planned", Q(planned__fate="new")),
        known=Count("planned", Q(planned__fate="on record")),
        refused=Count("planned", Q(planned__fate="refused")),
    )
    for sheet in sheets:
        sheet.lists = KINDS[sheet.kind].label if sheet.kind in KINDS else "left out"
    return sheets


@require_POST
def import_read_on(request: HttpRequest, pk: int) -> HttpResponse:
    batch = own_batch(request.user, pk, State.READING, State.PREVIEW)
    if batch.state == State.READING:
        read_on(batch)
    return redirect("import-preview", batch.pk)


def confirm_import(request: HttpRequest, batch: ImportBatch) -> HttpResponse:
    """Write it, or say why nothing was written."""
    form = SubmissionForm(request.POST)
    if not form.is_valid():
        return preview_page(request, batch, problem="Please confirm once more.", status=422)
    try:
        confirm(batch, user=request.user, token=form.cleaned_data["submission"])
    except PlanChangedError:
        problem = "The records changed since you looked, and some rows fare otherwise now. Look again."
        return preview_page(request, batch, problem=problem, status=409)
    except DescentError as circle:
        return preview_page(request, batch, problem=str(circle), status=422)
    except (IntegrityError, PedigreeError):
        problem = "Somebody saved records that these rows disagree with. Look again and confirm once more."
        return preview_page(request, batch, problem=problem, status=409)
    return redirect("import-done", batch.pk)


@require_safe
def import_done(request: HttpRequest, pk: int) -> HttpResponse:
    batch = own_batch(request.user, pk, State.DONE)
    written = [(KINDS[kind].label, count) for kind, count in batch.written.items()]
    context = {"batch": batch, "written": written, "refused": batch.rows.select_related("sheet")}
    return render(request, "desk/import_done.html", context)
