"""Schedules, classes, entries."""

from django.apps import AppConfig


class ShowsConfig(AppConfig):
    name = "frondkeep.shows"
    label = "shows"

    def ready(self) -> None:
        from frondkeep.shows.services.foreseeing import foresee_entries
        from specimens.changes import register_foreseer

        register_foreseer(foresee_entries)
