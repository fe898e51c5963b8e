"""The admin pages: each asks for the roles that may open it."""

from typing import Any

from django.contrib.admin import AdminSite, ModelAdmin
from django.http import HttpRequest


class FrondkeepAdminSite(AdminSite):
    site_header = "Frondkeep — records behind the pages"
    site_title = "Frondkeep"
    index_title = "Records"


class RoleAdmin(ModelAdmin):
    """Admin pages that holders of `roles` see and change; nothing is deleted, records are voided."""

    roles: tuple[str, ...] = ()

    def has_module_permission(self, request: HttpRequest) -> bool:
        return request.user.is_authenticated and request.user.holds(*self.roles)

    def has_view_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return self.has_module_permission(request)

    def has_add_permission(self, request: HttpRequest) -> bool:
        return self.has_module_permission(request)

    def has_change_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return self.has_module_permission(request)

    def has_delete_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False
