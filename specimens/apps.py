"""The records: names, specimens, keeping, identifications, photos, propagation, evidence."""

from django.apps import AppConfig


class SpecimensConfig(AppConfig):
    name = "specimens"
    verbose_name = "Records"
