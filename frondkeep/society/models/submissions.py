"""Forms taken exactly once: each carries an id that the insert's own transaction checks."""

import uuid

from django.db import models


class Submission(models.Model):
    """One form that was taken. The same id sent again gets the first result."""

    token = models.UUIDField(primary_key=True, default=uuid.uuid4)
    user = models.ForeignKey("society.User", models.CASCADE)
    purpose = models.CharField(max_length=40)
    result = models.JSONField(default=list)
    at = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return f"{self.purpose} {self.token}"
