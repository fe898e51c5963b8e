"""Admin pages of names and plants, for the curator; everything is saved through the services."""

from __future__ import annotations

from typing import Any

from django import forms
from django.contrib import admin
from django.core.exceptions import ValidationError
from django.db import transaction
from django.http import HttpRequest

from frondkeep.society.admin_site import RoleAdmin, RoleInline
from frondkeep.society.forms import PartialDateFormField
from frondkeep.society.models import Role
from specimens.models import Name, Placement, Specimen, Trait, TraitState, Treatment
from specimens.services.edits import StaleEditError
from specimens.services.names import add_name, edit_name, follow_treatment, place_name
from specimens.services.specimens import edit_specimen

CURATOR = (Role.CURATOR,)


class VersionedForm(forms.ModelForm):
    """Refuses to save over what somebody else saved after this page was opened."""

    # Not called `version`: what the record keeps under that name is nothing to be typed.
    version_seen = forms.IntegerField(widget=forms.HiddenInput, required=False)
    partial_dates: tuple[str, ...] = ()

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["version_seen"].initial = self.instance.version
        for when in self.partial_dates:
            self.fields[when].initial = getattr(self.instance, when).words

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if self.instance.pk and cleaned.get("version_seen") != self.current_version():
            raise ValidationError(
                "Somebody changed this while you were typing. Open it again beside this page."
            )
        return cleaned

    def current_version(self) -> int:
        return type(self.instance)._default_manager.values_list("version", flat=True).get(pk=self.instance.pk)

    def values(self) -> dict[str, Any]:
        return {field: value for field, value in self.cleaned_data.items() if field != "version_seen"}


class NameForm(VersionedForm):
    introduced = PartialDateFormField()
    partial_dates = ("introduced",)

    class Meta:
        model = Name
        fields = [
            "rank", "parent", "epithet", "author", "trade_designation", "group", "first_parent", "second_parent",
            "reproduction", "raiser", "origin", "home", "natural_group", "solitary", "notes", "checked",
            "voided_reason",
        ]  # fmt: skip
        labels = {
            "epithet": "Name itself, without quotation marks",
            "reproduction": "It is kept",
            "voided_reason": "Why it is no name after all",
        }
        help_texts = {"voided_reason": "Leave this empty for every name that stands."}


@admin.register(Name)
class NameAdmin(RoleAdmin):
    roles = CURATOR
    form = NameForm
    list_display = ["written", "rank", "accepted", "checked"]
    list_filter = ["rank", "checked"]
    list_select_related = ["accepted"]
    search_fields = ["written"]
    autocomplete_fields = ["parent", "group", "first_parent", "second_parent"]

    def save_model(self, request: HttpRequest, obj: Name, form: NameForm, change: bool) -> None:
        values = form.values()
        try:
            saved = (
                edit_name(obj, version=form.cleaned_data["version_seen"], **values)
                if change
                else add_name(by=request.user, **values)
            )
        except StaleEditError:
            self.message_user(request, "Not saved: somebody changed this name at the same moment.", "error")
            return
        obj.__dict__.update(saved.__dict__)


@admin.register(Placement)
class PlacementAdmin(RoleAdmin):
    roles = CURATOR
    fields = ["name", "treatment", "status", "accepted", "source"]
    list_display = ["name", "treatment", "status", "accepted"]
    list_select_related = ["name", "treatment", "accepted"]
    autocomplete_fields = ["name", "accepted"]

    def save_model(self, request: HttpRequest, obj: Placement, form: forms.ModelForm, change: bool) -> None:
        saved = place_name(**form.cleaned_data)
        obj.__dict__.update(saved.__dict__)


class TreatmentForm(forms.ModelForm):
    """One treatment is always followed: ticking another moves the tick, and nothing only takes it away."""

    follow = forms.BooleanField(label="The society follows it", required=False)

    class Meta:
        model = Treatment
        fields = ["name", "citation"]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["follow"].initial = self.instance.followed

    def clean_follow(self) -> bool:
        follow = self.cleaned_data["follow"]
        if self.instance.followed and not follow:
            raise ValidationError("The society follows one treatment. Tick the other one instead.")
        return follow


@admin.register(Treatment)
class TreatmentAdmin(RoleAdmin):
    roles = CURATOR
    form = TreatmentForm
    list_display = ["name", "followed"]

    @transaction.atomic
    def save_model(self, request: HttpRequest, obj: Treatment, form: TreatmentForm, change: bool) -> None:
        obj.save()
        if form.cleaned_data["follow"] and not obj.followed:
            follow_treatment(obj)


class SpecimenForm(VersionedForm):
    acquired = PartialDateFormField()
    partial_dates = ("acquired",)

    class Meta:
        model = Specimen
        fields = [
            "label_text", "holds", "from_keeper", "from_words", "meeting", "last_seen_alive", "mount",
            "society_number", "seen_by", "now_with", "notes",
        ]  # fmt: skip


@admin.register(Specimen)
class SpecimenAdmin(RoleAdmin):
    """Plants are logged on their own page; where they grow is their keeper's alone and not here."""

    roles = CURATOR
    called = "Plants"
    form = SpecimenForm
    list_display = ["code", "label_text", "came", "state"]
    list_filter = ["state", "came"]
    search_fields = ["code", "label_text", "society_number"]

    def has_add_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False

    def save_model(self, request: HttpRequest, obj: Specimen, form: SpecimenForm, change: bool) -> None:
        try:
            saved = edit_specimen(obj, version=form.cleaned_data["version_seen"], **form.values())
        except StaleEditError:
            # Somebody saved between the form's own check and the lock: nothing of theirs is overwritten.
            self.message_user(request, "Not saved: somebody changed this plant at the same moment.", "error")
            return
        obj.__dict__.update(saved.__dict__)


class TraitStateInline(RoleInline):
    roles = CURATOR
    model = TraitState


@admin.register(Trait)
class TraitAdmin(RoleAdmin):
    roles = CURATOR
    list_display = ["label", "key", "stable"]
    inlines = [TraitStateInline]
