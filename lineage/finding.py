"""Finding what somebody asked for, if they may see it. What they may not, is not there."""

from __future__ import annotations

from django.http import Http404

from frondkeep.society.models import User
from lineage.models import Kind, Ruling, Suspicion
from specimens.models import Name, Specimen
from specimens.naming.codes import read_code


def visible_plant(user: User, code: str) -> Specimen:
    """The plant of this code, typed with or without its letter, or Http404 for whoever may not see it."""
    try:
        full = str(read_code(code))
    except ValueError:
        raise Http404 from None
    found = Specimen.objects.visible_to(user).with_page_parts().filter(code=full).first()
    if found is None:
        raise Http404
    return found


def standing_name(pk: int) -> Name:
    """A name that is not voided, or Http404."""
    found = Name.objects.standing().filter(pk=pk).first()
    if found is None:
        raise Http404
    return found


def curators_alone(user: User) -> None:
    """Http404 for whoever is no curator."""
    if not user.is_curator:
        raise Http404


def curators_pair(user: User, pk: int) -> Suspicion:
    """Two names that are perhaps one plant, for the curator; Http404 for everybody else."""
    curators_alone(user)
    found = Suspicion.objects.filter(kind=Kind.NAMES, pk=pk).with_names().first()
    if found is None:
        raise Http404
    return found


def curators_ruling(user: User, pk: int) -> Ruling:
    """A decision, for the curator to take back; Http404 for everybody else, and for one that takes back."""
    curators_alone(user)
    rulings = Ruling.objects.filter(kind=Kind.NAMES, pk=pk).exclude(answer=Ruling.Answers.UNDONE)
    found = rulings.select_related("first_name", "second_name", "stands", "by__member").first()
    if found is None:
        raise Http404
    return found
