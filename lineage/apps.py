"""What is computed from the records: lineage, suspicions, rulings."""

from django.apps import AppConfig


class LineageConfig(AppConfig):
    name = "lineage"
    label = "lineage"
