"""Addresses of this part."""

from functools import partial

from django.urls import URLPattern, URLResolver, include, path, register_converter

from frondkeep.desk.converters import CodeConverter
from frondkeep.desk.views import (
    adding_photos,
    editing,
    ending,
    giving,
    help,
    home,
    identifying,
    logging,
    mending,
    names,
    photos,
    plant,
    plants,
    pups,
    search,
    suggestions,
)

register_converter(CodeConverter, "code")

urlpatterns: list[URLPattern | URLResolver] = [
    path("", home.home, name="home"),
    path("mine/", home.mine, name="mine"),
    path("log/", logging.log, name="log"),
    path("log/tag/", logging.tag, name="log-tag"),
    path("log/another/", logging.another, name="log-another"),
    path("log/change/", logging.change, name="log-change"),
    path("log/without/<int:number>/", logging.without, name="log-without"),
    path("log/<uuid:token>/", logging.logged, name="logged"),
    path("search/", search.search, name="search"),
    path("help/", help.all_help, name="help"),
    path("help/<slug:slug>/", help.help_page, name="help-page"),
    path("plants/", plants.plants, name="plants"),
    path("plants.csv", plants.plants_as_csv, name="plants-csv"),
    path("plants/<code:code>/", plant.plant, name="plant"),
    path("plants/<code:code>/pup/", pups.took_pup, name="plant-pup"),
    path("plants/<code:code>/identify/", identifying.identify_plant, name="plant-identify"),
    path("plants/<code:code>/proposals/<int:pk>/", identifying.answer_proposal, name="plant-proposal"),
    path("plants/<code:code>/ended/", ending.ended, name="plant-ended"),
    path("plants/<code:code>/edit/", editing.edit_plant, name="plant-edit"),
    path("plants/<code:code>/photo/", adding_photos.add_plant_photo, name="plant-photo"),
    path("plants/<code:code>/origin/", mending.mend_plant_origin, name="plant-origin"),
    path("proposals/", home.proposals, name="proposals"),
    path("photos/<slug:key>/", photos.photo, name="photo"),
    path("photos/<slug:key>/small/", partial(photos.photo, small=True), name="photo-small"),
    path("import/", include("frondkeep.desk.import_urls")),
    path("plants/<code:code>/gave/", giving.gave, name="plant-gave"),
    path("plants/<code:code>/got/", giving.got, name="plant-got"),
    path("hand-overs/", include("frondkeep.desk.handover_urls")),
    path("names/", names.names, name="names"),
    path("names/<int:pk>/", names.name, name="name"),
    path("names/<int:pk>/edit/", names.edit, name="name-edit"),
    path("names/<int:pk>/checked/", names.mark_checked, name="name-checked"),
    path("suggest/names/", suggestions.suggest_names, name="suggest-names"),
    path("suggest/plants/", suggestions.suggest_plants, name="suggest-plants"),
    path("suggest/keepers/", suggestions.suggest_keepers, name="suggest-keepers"),
]
