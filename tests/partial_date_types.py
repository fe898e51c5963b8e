"""A plugin for mypy: models take a partial date under the name of its three columns.

The plugin of django-stubs knows fields alone, and would refuse `Specimen(acquired=...)`.
"""

from __future__ import annotations

from django.db import models
from mypy.checker import TypeChecker
from mypy.options import Options
from mypy.plugin import Plugin
from mypy.types import Instance, Type
from mypy_django_plugin.lib import helpers
from mypy_django_plugin.main import NewSemanalDjangoPlugin

import tests.environment  # noqa: F401  (the plugin reads the settings, which need a key)


class PartialDatePlugin(NewSemanalDjangoPlugin):
    def __init__(self, options: Options) -> None:
        super().__init__(options)
        fields_only = self.django_context.get_expected_types

        def with_dates(api: TypeChecker, model: type[models.Model], *, method: str) -> dict[str, Type]:
            return fields_only(api, model, method=method) | date_types(api, model)

        self.django_context.get_expected_types = with_dates  # type: ignore[method-assign]


def date_types(api: TypeChecker, model: type[models.Model]) -> dict[str, Type]:
    from frondkeep.society.fields import PartialDateAttribute  # needs Django set up, which the plugin does

    value = helpers.lookup_fully_qualified_typeinfo(api, "specimens.naming.dates.PartialDate")
    names = [name for name, attribute in vars(model).items() if isinstance(attribute, PartialDateAttribute)]
    return {name: Instance(value, []) for name in names} if value else {}


def plugin(version: str) -> type[Plugin]:
    return PartialDatePlugin
