"""Schedules, classes, entries."""

from django.apps import AppConfig


class ShowsConfig(AppConfig):
    name = "frondkeep.shows"
    label = "shows"
