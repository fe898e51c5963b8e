"""The people: users, members, households, roles, meetings."""

from django.apps import AppConfig
from django.contrib.admin.apps import AdminConfig


class SocietyConfig(AppConfig):
    name = "frondkeep.society"
    label = "society"
    verbose_name = "The society"

    def ready(self) -> None:
        from frondkeep.society import checks  # noqa: F401 — registers the system checks
        from frondkeep.society.form_words import use_our_words

        use_our_words()


class FrondkeepAdminConfig(AdminConfig):
    default_site = "frondkeep.society.admin_site.FrondkeepAdminSite"
