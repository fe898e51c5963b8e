"""Addresses of this part."""

from django.urls import URLPattern, path

from lineage.views import decisions, lineage, same

urlpatterns: list[URLPattern] = [
    path("plants/<str:code>/lineage/", lineage.plant_lineage, name="plant-lineage"),
    path("names/<int:pk>/lineage/", lineage.name_lineage, name="name-lineage"),
    path("same/", same.same, name="same"),
    path("same/<int:pk>/", same.pair, name="same-pair"),
    path("same/<int:pk>/decide/", same.decide, name="same-decide"),
    path("same/decisions/", decisions.decisions, name="decisions"),
    path("same/decisions/<int:pk>/undo/", decisions.undo, name="decision-undo"),
]
