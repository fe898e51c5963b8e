"""`manage.py load_reference_names`: the shipped fern names, their synonyms and traits."""

from typing import Any

from django.core.management.base import BaseCommand

from specimens.services.reference_names import load_reference_names


class Command(BaseCommand):
    help = "Load the shipped fern names, synonyms and traits. What is on record already stays as it is."

    def handle(self, **options: Any) -> None:
        self.stdout.write(f"{load_reference_names()} names are new.")
