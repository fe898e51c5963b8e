"""Addresses of hand-overs."""

from django.urls import URLPattern, path

from frondkeep.desk.views import handover_answers, handovers

urlpatterns: list[URLPattern] = [
    path("", handovers.hand_overs, name="hand-overs"),
    path("table/<int:pk>/", handovers.table, name="table"),
    path("<uuid:token>/", handovers.hand_over, name="hand-over"),
    path("<uuid:token>/accept/", handover_answers.accept_offer, name="hand-over-accept"),
    path("<uuid:token>/pick/", handover_answers.pick, name="hand-over-pick"),
    path("<uuid:token>/not-mine/", handover_answers.refuse_offer, name="hand-over-refuse"),
    path("<uuid:token>/take-back/", handover_answers.take_back, name="hand-over-take-back"),
    path("<uuid:token>/right/", handover_answers.agree_to_claim, name="hand-over-agree"),
    path("<uuid:token>/wrong/", handover_answers.deny_claim, name="hand-over-deny"),
    path("<uuid:token>/two-pieces/", handover_answers.two_pieces, name="hand-over-apart"),
    path("<uuid:token>/settled/", handover_answers.leave_in_words, name="hand-over-settled"),
]
