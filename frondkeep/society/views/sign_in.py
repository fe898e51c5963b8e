"""Signing in and out, and a new password by e-mail; what to do when it does not work."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from axes.helpers import get_cool_off
from django import forms
from django.contrib.auth import views as auth_views
from django.contrib.auth.decorators import login_not_required
from django.contrib.auth.forms import (
    AuthenticationForm,
    PasswordChangeForm,
    PasswordResetForm,
    SetPasswordForm,
)
from django.core.validators import MaxLengthValidator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse_lazy
from django.utils.decorators import method_decorator

from frondkeep.society.models import Society, User

LONGEST_NAME = 254
NOT_KNOWN = "We could not sign you in. Check the name and the password; capitals matter in the password."


class SignInForm(AuthenticationForm):
    error_messages = {"invalid_login": NOT_KNOWN, "inactive": NOT_KNOWN}

    stay = forms.BooleanField(
        label="Stay signed in on this device for 90 days",
        required=False,
        help_text="Only on a phone or computer of your own.",
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["username"].label = "Your name or e-mail address"
        # No name is longer; a longer text is more than the database can be asked for.
        self.fields["username"].validators.append(MaxLengthValidator(LONGEST_NAME, NOT_KNOWN))
        self.fields["username"].max_length = LONGEST_NAME


class ForgotPasswordForm(PasswordResetForm):
    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["email"].label = "Your e-mail address"

    def get_users(self, email: str) -> Iterator[User]:
        """Whoever has this address: each of a couple, and somebody new who has no password yet."""
        found = User.objects.filter(email__iexact=email, is_active=True)
        return (user for user in found if user.email.casefold() == email.casefold())


class NewPasswordForm(SetPasswordForm):
    error_messages = {"password_mismatch": "The two are not the same. Type the new one twice."}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["new_password1"].label = "New password"
        self.fields[
            "new_password1"
        ].help_text = "Eight characters or more; not your name, and none that everybody thinks of first."
        self.fields["new_password2"].label = "The new password once more"
        self.fields["new_password2"].help_text = ""


class ChangePasswordForm(NewPasswordForm, PasswordChangeForm):
    error_messages = {
        **NewPasswordForm.error_messages,
        "password_incorrect": "This is not the password you have now.",
    }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["old_password"].label = "The password you have now"


@method_decorator(login_not_required, name="dispatch")
class SignIn(auth_views.LoginView):
    template_name = "society/sign_in.html"
    authentication_form = SignInForm
    redirect_authenticated_user = True

    def form_valid(self, form: SignInForm) -> HttpResponse:
        answer = super().form_valid(form)
        if not form.cleaned_data["stay"] or form.get_user().is_staff:
            # Ends with the browser, or after twelve hours for whoever holds a role.
            self.request.session.set_expiry(12 * 60 * 60 if form.get_user().is_staff else 0)
        return answer

    def form_invalid(self, form: SignInForm) -> HttpResponse:
        return self.render_to_response(self.get_context_data(form=form), status=422)

    def get_context_data(self, **kwargs: Any) -> dict[str, Any]:
        return super().get_context_data(society=Society.current(), **kwargs)


def locked_out(request: HttpRequest, *args: object, **kwargs: object) -> HttpResponse:
    """Too many attempts: how long to wait, and whom to ask. The name typed is kept."""
    wait = get_cool_off()
    context = {
        "minutes": int(wait.total_seconds() // 60) if wait else 15,
        "typed": request.POST.get("username", ""),
        "society": Society.current(),
    }
    answer = render(request, "society/locked_out.html", context, status=429)
    answer["Retry-After"] = str(context["minutes"] * 60)
    return answer


@method_decorator(login_not_required, name="dispatch")
class ForgotPassword(auth_views.PasswordResetView):
    """Asks for an address; whether anybody has it is not told."""

    template_name = "society/forgot_password.html"
    email_template_name = "society/password_letter.txt"
    subject_template_name = "society/password_letter_subject.txt"
    form_class = ForgotPasswordForm
    success_url = reverse_lazy("password-sent")


@method_decorator(login_not_required, name="dispatch")
class PasswordSent(auth_views.PasswordResetDoneView):
    template_name = "society/password_sent.html"

    def get_context_data(self, **kwargs: Any) -> dict[str, Any]:
        return super().get_context_data(society=Society.current(), **kwargs)


@method_decorator(login_not_required, name="dispatch")
class NewPassword(auth_views.PasswordResetConfirmView):
    template_name = "society/new_password.html"
    form_class = NewPasswordForm
    success_url = reverse_lazy("sign-in")


class ChangePassword(auth_views.PasswordChangeView):
    template_name = "society/change_password.html"
    form_class = ChangePasswordForm
    success_url = reverse_lazy("home")
