"""What is computed from the records: lineage, suspicions, rulings."""

from django.apps import AppConfig


class LineageConfig(AppConfig):
    name = "lineage"
    label = "lineage"

    def ready(self) -> None:
        from lineage.services.foreseeing import foresee_lineage
        from lineage.services.refresh import refresh
        from lineage.services.suspicions import weigh_what_changed
        from specimens.changes import register_closer, register_foreseer, register_refresher

        register_refresher(refresh)
        register_closer(weigh_what_changed)
        register_foreseer(foresee_lineage)
