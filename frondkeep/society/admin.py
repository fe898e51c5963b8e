"""Admin pages of people: users for the administrator, members for the membership secretary and the curator."""

from __future__ import annotations

from typing import Any

from django import forms
from django.contrib import admin
from django.contrib.auth.password_validation import validate_password
from django.db import transaction
from django.http import HttpRequest

from frondkeep.society.admin_site import RoleAdmin, RoleInline
from frondkeep.society.forms import PartialDateFormField
from frondkeep.society.models import Household, Meeting, Member, Role, RoleHeld, Society, User
from frondkeep.society.services.people import keeper_of_household, keeper_of_member

PEOPLE = (Role.SECRETARY, Role.CURATOR)


class UserForm(forms.ModelForm):
    new_password = forms.CharField(
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
        required=False,
        help_text="Leave it empty to keep the password they have. Somebody new asks for a letter to choose one.",
    )

    class Meta:
        model = User
        fields = ["name", "email", "is_active"]
        labels = {"email": "E-mail address", "is_active": "May sign in"}

    def clean_new_password(self) -> str:
        password = self.cleaned_data["new_password"]
        if password:
            validate_password(password, self.instance)
        return password


class RoleHeldInline(RoleInline):
    roles = (Role.ADMINISTRATOR,)
    model = RoleHeld
    verbose_name, verbose_name_plural = "role", "roles"

    def has_delete_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return self.has_module_permission(request)


@admin.register(User)
class UserAdmin(RoleAdmin):
    roles = (Role.ADMINISTRATOR,)
    form = UserForm
    list_display = ["name", "email", "is_active"]
    search_fields = ["name", "email"]
    inlines = [RoleHeldInline]

    def save_model(self, request: HttpRequest, obj: User, form: UserForm, change: bool) -> None:
        if form.cleaned_data["new_password"]:
            obj.set_password(form.cleaned_data["new_password"])
        elif not change:
            obj.set_unusable_password()
        obj.save()


class PersonForm(forms.ModelForm):
    """A member with partial dates as words."""

    joined = PartialDateFormField()
    left = PartialDateFormField()

    class Meta:
        labels = {"appears": "Wishes to appear", "user": "Signs in as", "email": "E-mail address"}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for when in ("joined", "left"):
            self.fields[when].initial = getattr(self.instance, when).words

    def save(self, commit: bool = True) -> Member:
        for when in ("joined", "left"):
            setattr(self.instance, when, self.cleaned_data[when])
        return super().save(commit)


@admin.register(Member)
class MemberAdmin(RoleAdmin):
    roles = PEOPLE
    form = PersonForm
    fields = [
        "name", "number", "household", "user", "appears", "email", "phone", "address", "joined", "left", "notes",
    ]  # fmt: skip
    list_display = ["name", "number", "household", "appears"]
    search_fields = ["name", "number"]
    list_select_related = ["household"]

    @transaction.atomic
    def save_model(self, request: HttpRequest, obj: Member, form: PersonForm, change: bool) -> None:
        obj.save()
        keeper_of_member(obj)


@admin.register(Household)
class HouseholdAdmin(RoleAdmin):
    roles = PEOPLE
    fields = ["name", "appears"]
    search_fields = ["name"]

    @transaction.atomic
    def save_model(self, request: HttpRequest, obj: Household, form: forms.ModelForm, change: bool) -> None:
        obj.save()
        keeper_of_household(obj)


@admin.register(Meeting)
class MeetingAdmin(RoleAdmin):
    roles = (Role.SECRETARY, Role.CURATOR)
    fields = ["name", "date", "place"]
    list_display = ["name", "date", "place"]


@admin.register(Society)
class SocietyAdmin(RoleAdmin):
    roles = (Role.ADMINISTRATOR,)
    fields = ["name", "whom_to_ask"]

    def has_add_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return not Society.objects.exists() and self.has_module_permission(request)


def close_pages_of_libraries() -> None:
    """Pages that libraries bring ask for permission rows, which nobody holds here."""
    from axes.models import AccessAttempt, AccessFailureLog, AccessLog
    from django.contrib.auth.models import Group

    for model in (AccessAttempt, AccessFailureLog, AccessLog, Group):
        if admin.site.is_registered(model):
            admin.site.unregister(model)
