"""Addresses of shows."""

from django.urls import URLPattern, path

from frondkeep.shows.views import entering, entries, shows

urlpatterns: list[URLPattern] = [
    path("shows/", shows.shows, name="shows"),
    path("shows/add/", shows.add_show, name="add-show"),
    path("shows/<int:pk>/", shows.show, name="show"),
    path("shows/<int:pk>/classes/add/", shows.add_class, name="add-class"),
    path("shows/<int:pk>/classes/<int:number>/enter/", entering.enter_class, name="enter-class"),
    path(
        "shows/<int:pk>/classes/<int:number>/enter-for/", entering.enter_for_anyone, name="enter-for-anyone"
    ),
    path("shows/<int:pk>/entries/", entries.entry_list, name="entry-list"),
    path("shows/<int:pk>/entries.pdf", entries.entry_list_paper, name="entry-list-paper"),
    path("shows/<int:pk>/judges.pdf", entries.judges_paper, name="judges-paper"),
    path("shows/<int:pk>/number/", entries.number, name="number-entries"),
    path("shows/<int:pk>/judging-closed/", entries.close, name="close-judging"),
    path("entries/<int:pk>/withdraw/", entries.withdraw_entry, name="withdraw-entry"),
]
