"""What the society is called; one row."""

from django.db import models


class Society(models.Model):
    name = models.CharField(max_length=120, default="Our fern society")
    whom_to_ask = models.CharField(
        "whom to ask for help", max_length=200, blank=True, help_text="Shown where somebody cannot sign in."
    )

    class Meta:
        verbose_name_plural = "society"

    def __str__(self) -> str:
        return self.name

    @classmethod
    def current(cls) -> "Society":
        """The one row, made at the first call."""
        return cls.objects.get_or_create(pk=1)[0]
