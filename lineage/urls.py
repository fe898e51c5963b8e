"""Addresses of this part."""

from django.urls import URLPattern, path

from lineage.views import lineage

urlpatterns: list[URLPattern] = [
    path("plants/<str:code>/lineage/", lineage.plant_lineage, name="plant-lineage"),
    path("names/<int:pk>/lineage/", lineage.name_lineage, name="name-lineage"),
]
