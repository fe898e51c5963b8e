"""Suggestions while somebody types: names, plants, keepers. Nobody is suggested whom the reader may not know."""

from __future__ import annotations

from django.db.models import Q
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from frondkeep.desk.finding import known_keepers
from frondkeep.desk.plant_lists import listed
from frondkeep.desk.searching.asked import text_asked
from frondkeep.desk.searching.names import names_like
from frondkeep.desk.searching.plants import plants_matching
from frondkeep.society.keys import key_asked
from frondkeep.society.models import Keeper, User
from specimens.models import Name, Specimen

MOST = 8


@require_safe
def suggest_names(request: HttpRequest) -> HttpResponse:
    """Names for the words typed, best first; an old name says what is accepted today."""
    ids = names_like(text_asked(request), limit=MOST)
    by_id = Name.objects.standing().select_related("accepted").in_bulk(ids)
    found = [by_id[pk] for pk in ids if pk in by_id]
    return render(request, "desk/suggest_names.html", {"found": found})


@require_safe
def suggest_plants(request: HttpRequest) -> HttpResponse:
    """Growing plants the reader may see, of one keeper where `keeper` is sent along; newest first.

    Before anything is typed: those that the tag sent along may mean, or any where it means none of them.
    """
    plants = Specimen.objects.visible_to(request.user).standing().growing()
    keeper = chosen_keeper(request)
    if keeper is not None:
        plants = plants.kept_by(frozenset([keeper.pk]))
    found = plants_matching(plants, text_asked(request), reader=request.user)
    tag = sent_along(request, "label_text")[:200]
    if not text_asked(request) and tag:
        of_tag = plants_matching(plants, tag, reader=request.user)
        found = of_tag if of_tag.exists() else found
    found = found.with_page_parts().newest_first()
    rows = listed(found[:MOST], reader=request.user, photos=False)
    return render(request, "desk/suggest_plants.html", {"rows": rows})


@require_safe
def suggest_keepers(request: HttpRequest) -> HttpResponse:
    """Keepers whose name the reader may know: for the curator all."""
    start = text_asked(request)
    named = Q(member__name__icontains=start) | Q(household__name__icontains=start)
    if start and "the society".startswith(start.casefold()):
        named |= Q(kind=Keeper.Kind.SOCIETY)
    keepers = known_keepers(request.user).filter(named) if start else Keeper.objects.none()
    found = keepers.order_by("kind", "member__name", "household__name")[:MOST]
    rows = [(keeper, name_to_type(keeper, request.user)) for keeper in found]
    return render(request, "desk/suggest_keepers.html", {"rows": rows})


def name_to_type(keeper: Keeper, reader: User) -> str:
    """The name a form finds the keeper by again: one's own keeper is shown as “you”, but bears a name."""
    return keeper.name if reader.acts_for(keeper) else keeper.shown_to(reader)


def chosen_keeper(request: HttpRequest) -> Keeper | None:
    """The keeper whose plants are wanted, if the reader may know them."""
    typed = request.GET.get("keeper") or sent_along(request, "from_keeper_id")
    key = key_asked(typed)
    return known_keepers(request.user).filter(pk=key).first() if key is not None else None


def sent_along(request: HttpRequest, field: str) -> str:
    """Another field of the same card; a form of several cards sends it as “plants-2-from_keeper_id”."""
    sent = (value for key, value in request.GET.items() if key == field or key.endswith(f"-{field}"))
    return next(sent, "").replace("\0", " ").strip()
