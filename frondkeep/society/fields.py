"""A partial date as three columns — the words as typed, the earliest and the latest day."""

from typing import TYPE_CHECKING, Any

from django.db import models

from specimens.naming.dates import PartialDate, from_columns


class PartialDateAttribute(property):
    """Reads and writes the three columns as one value (a property, so that Model(...) accepts it)."""

    def __init__(self, name: str) -> None:
        def read(row: models.Model) -> PartialDate:
            return from_columns(*(getattr(row, f"{name}_{part}") for part in ("words", "earliest", "latest")))

        def write(row: models.Model, value: PartialDate) -> None:
            setattr(row, f"{name}_words", value.words)
            setattr(row, f"{name}_earliest", value.earliest)
            setattr(row, f"{name}_latest", value.latest)

        super().__init__(read, write)


class PartialDateColumns:
    """Declares `<name>_words`, `<name>_earliest`, `<name>_latest` and the value `<name>` over them.

    An open end is NULL; no date at all is no words and both ends NULL.
    """

    def __init__(self, verbose_name: str = "") -> None:
        self.verbose_name = verbose_name

    def contribute_to_class(self, model: type[models.Model], name: str, **kwargs: Any) -> None:
        label = self.verbose_name or name.replace("_", " ")
        words = models.CharField(f"{label}, as written", max_length=80, blank=True, default="")
        words.contribute_to_class(model, f"{name}_words")
        for end in ("earliest", "latest"):
            day = models.DateField(f"{label}, {end}", null=True, blank=True)
            day.contribute_to_class(model, f"{name}_{end}")
        setattr(model, name, PartialDateAttribute(name))

    if TYPE_CHECKING:  # what stands in a model's body is this; what its rows have is the value

        def __get__(self, row: models.Model, model: type[models.Model]) -> PartialDate: ...
        def __set__(self, row: models.Model, value: PartialDate) -> None: ...
