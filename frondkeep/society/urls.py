"""Addresses of the doors."""

from django.contrib.auth.views import LogoutView
from django.urls import URLPattern, path

from frondkeep.society.views import health, sign_in

urlpatterns: list[URLPattern] = [
    path("sign-in/", sign_in.SignIn.as_view(), name="sign-in"),
    path("sign-out/", LogoutView.as_view(), name="sign-out"),
    path("password/", sign_in.ChangePassword.as_view(), name="password-change"),
    path("password/forgotten/", sign_in.ForgotPassword.as_view(), name="password-forgotten"),
    path("password/sent/", sign_in.PasswordSent.as_view(), name="password-sent"),
    path("password/new/<uidb64>/<token>/", sign_in.NewPassword.as_view(), name="password_reset_confirm"),
    path("health/", health.health, name="health"),
]
