"""The last number given out in each year, for plants, packets, sowings and pans alike."""

from django.db import models


class CodeCounter(models.Model):
    year = models.PositiveSmallIntegerField(primary_key=True)
    last = models.PositiveIntegerField(default=0)

    def __str__(self) -> str:
        return f"{self.year}: {self.last}"
