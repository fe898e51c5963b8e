"""The pages that join everything."""

from django.apps import AppConfig


class DeskConfig(AppConfig):
    name = "frondkeep.desk"
    label = "desk"
