"""The admin pages: each asks for the roles that may open it."""

from __future__ import annotations

from typing import Any

from django.contrib.admin import AdminSite, ModelAdmin, TabularInline
from django.contrib.auth.views import redirect_to_login
from django.http import Http404, HttpRequest, HttpResponse
from django.utils.text import capfirst


class FrondkeepAdminSite(AdminSite):
    site_header = "Frondkeep — records behind the pages"
    site_title = "Frondkeep"
    index_title = "Records"

    def get_urls(self) -> list[Any]:
        """The addresses, after every library has registered its pages and before they are opened."""
        from frondkeep.society.admin import close_pages_of_libraries

        close_pages_of_libraries()
        return super().get_urls()

    def has_permission(self, request: HttpRequest) -> bool:
        """Whoever may open one page at least; to others there are none."""
        pages = self._registry.values()
        return request.user.is_active and any(page.has_module_permission(request) for page in pages)

    def get_app_list(self, request: HttpRequest, app_label: str | None = None) -> list[Any]:
        """The list of pages, in the words of the other pages."""
        apps = super().get_app_list(request, app_label)
        for app in apps:
            for page in app["models"]:
                page["name"] = self._registry[page["model"]].called or page["name"]
        return apps

    def login(self, request: HttpRequest, extra_context: dict[str, Any] | None = None) -> HttpResponse:
        """There is one door; to those who are in and have no role here, there is no such page."""
        if request.user.is_authenticated:
            raise Http404
        return redirect_to_login(request.get_full_path().removesuffix("login/"))


class _AskForRoles:
    roles: tuple[str, ...] = ()

    def has_module_permission(self, request: HttpRequest) -> bool:
        return request.user.is_authenticated and request.user.holds(*self.roles)

    def has_view_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return self.has_module_permission(request)

    def has_add_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return self.has_module_permission(request)

    def has_change_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return self.has_module_permission(request)

    def has_delete_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False


class RoleAdmin(_AskForRoles, ModelAdmin):
    """Pages that holders of `roles` see and change; nothing is deleted, records are voided."""

    # What the records are called on screens, where the code has another word.
    called = ""

    def changelist_view(
        self, request: HttpRequest, extra_context: dict[str, Any] | None = None
    ) -> HttpResponse:
        title = self.called or capfirst(self.opts.verbose_name_plural)
        return super().changelist_view(request, {"title": title, **(extra_context or {})})


class RoleInline(_AskForRoles, TabularInline):
    """Rows below another record, for holders of `roles`."""

    extra = 0
