"""Who signs in, and the roles they hold."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, Any

from django.contrib.auth.models import AbstractBaseUser, BaseUserManager
from django.db import models
from django.db.models.functions import Lower
from django.utils import timezone

if TYPE_CHECKING:
    from frondkeep.society.models.people import Keeper


class Role(models.TextChoices):
    """What somebody does for the society beside being a member. Whoever signs in is a member."""

    CURATOR = "curator", "curator"
    COMMITTEE = "committee", "show committee"
    SECRETARY = "secretary", "membership secretary"
    SPORE_KEEPER = "spores", "spore keeper"
    ADMINISTRATOR = "administrator", "administrator"


class UserManager(BaseUserManager["User"]):
    def create_user(self, name: str, email: str = "", password: str | None = None, **fields: Any) -> User:
        user = self.model(name=name, email=self.normalize_email(email), **fields)
        user.set_password(password)
        user.save(using=self._db)
        return user

    def create_superuser(
        self, name: str, email: str = "", password: str | None = None, **fields: Any
    ) -> User:
        """A user who holds the administrator's role; nobody stands above the roles."""
        user = self.create_user(name, email, password, **fields)
        RoleHeld.objects.create(user=user, role=Role.ADMINISTRATOR)
        return user


class User(AbstractBaseUser):
    """Signs in by name or e-mail address; a couple may share the address."""

    name = models.CharField("sign-in name", max_length=150)
    email = models.EmailField(blank=True)
    is_active = models.BooleanField(default=True)
    joined_at = models.DateTimeField(default=timezone.now, editable=False)

    objects = UserManager()

    USERNAME_FIELD = "name"
    EMAIL_FIELD = "email"
    REQUIRED_FIELDS: list[str] = ["email"]

    class Meta:
        ordering = ["name"]
        constraints = [
            models.UniqueConstraint(
                Lower("name"),
                name="user_name_once",
                violation_error_message="Somebody signs in by this name already.",
            )
        ]

    def __str__(self) -> str:
        return self.name

    @cached_property
    def roles(self) -> frozenset[str]:
        """Roles held beside being a member; read once a request."""
        return frozenset(self.roles_held.values_list("role", flat=True)) if self.pk else frozenset()

    @cached_property
    def keeper_ids(self) -> frozenset[int]:
        """Ids of the keepers this user acts for: their own and their household's."""
        from frondkeep.society.models.people import Keeper

        return frozenset(Keeper.objects.of_user(self).values_list("pk", flat=True))

    def acts_for(self, keeper: Keeper) -> bool:
        return keeper.pk in self.keeper_ids

    def holds(self, *roles: str) -> bool:
        return not self.roles.isdisjoint(roles)

    @property
    def is_curator(self) -> bool:
        return self.holds(Role.CURATOR)

    @property
    def is_committee(self) -> bool:
        return self.holds(Role.COMMITTEE)

    @property
    def is_staff(self) -> bool:
        """May open the admin pages; which of them is decided role by role."""
        return self.holds(Role.CURATOR, Role.COMMITTEE, Role.SECRETARY, Role.ADMINISTRATOR)

    def has_perm(self, perm: str, obj: object = None) -> bool:
        """No permission rows are kept: each admin page asks for roles itself."""
        return False

    def has_module_perms(self, app_label: str) -> bool:
        return self.is_staff

    def get_short_name(self) -> str:
        return self.name


class RoleHeld(models.Model):
    user = models.ForeignKey(User, models.CASCADE, related_name="roles_held")
    role = models.CharField(max_length=13, choices=Role)
    since = models.DateTimeField(default=timezone.now, editable=False)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["user", "role"], name="role_held_once")]

    def __str__(self) -> str:
        return f"{self.user}: {self.get_role_display()}"
