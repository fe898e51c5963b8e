"""Help: a short page for each job."""

from __future__ import annotations

from typing import NamedTuple

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe


class Job(NamedTuple):
    slug: str
    title: str
    line: str
    curators: bool = False

    @property
    def template(self) -> str:
        return f"desk/help/{self.slug}.html"


JOBS = (
    Job("log", "Log plants after a meeting", "What to type, and what may stay empty."),
    Job("hand-overs", "Give plants away, and get them", "One side tells, the other says whether it is so."),
    Job("identify", "Say what a plant is", "Another name, a doubt, and how you know."),
    Job("decide", "Decide whether two names are one plant", "Clues, your decision, and undoing it.", True),
    Job("shows", "Enter a show", "What may be entered, and what waits until judging is over."),
    Job("sharing", "Who may see what", "Your plants, your name, your growing places."),
    Job("care", "Before you sow, mount or collect", "A few cautions, in short."),
)


@require_safe
def all_help(request: HttpRequest) -> HttpResponse:
    jobs = [job for job in JOBS if request.user.is_curator or not job.curators]
    return render(request, "desk/help/index.html", {"jobs": jobs})


@require_safe
def help_page(request: HttpRequest, slug: str) -> HttpResponse:
    job = next((job for job in JOBS if job.slug == slug), None)
    if job is None:
        raise Http404
    return render(request, job.template, {"job": job})
