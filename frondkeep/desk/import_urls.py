"""Addresses of the import of spreadsheets."""

from django.urls import URLPattern, path

from frondkeep.desk.views import importing

urlpatterns: list[URLPattern] = [
    path("", importing.import_files, name="import"),
    path("<int:pk>/", importing.import_preview, name="import-preview"),
    path("<int:pk>/columns/", importing.import_columns, name="import-columns"),
    path("<int:pk>/on/", importing.import_read_on, name="import-read-on"),
    path("<int:pk>/done/", importing.import_done, name="import-done"),
]
