"""All addresses, by the part of the software that answers."""

from django.contrib import admin
from django.urls import include, path

handler400 = "frondkeep.society.views.errors.unreadable"

urlpatterns = [
    path("", include("frondkeep.desk.urls")),
    path("", include("frondkeep.society.urls")),
    path("", include("lineage.urls")),
    path("", include("frondkeep.shows.urls")),
    path("admin/", admin.site.urls),
]
