"""All settings, read from the environment. What is missing and needed is said loudly at the start."""

import sqlite3
from datetime import timedelta
from pathlib import Path
from typing import Any

import environ
from csp.constants import NONE, SELF
from django.core.exceptions import ImproperlyConfigured

from frondkeep.database import sqlite_database

BASE_DIR = Path(__file__).resolve().parent.parent
env = environ.Env()
environ.Env.read_env(BASE_DIR / ".env")


def needed(name: str, *, why: str) -> str:
    """The value of an environment variable that must be set."""
    value: str = env.str(name, default="")
    if not value:
        raise ImproperlyConfigured(f"Set {name} in the environment: {why}.")
    return value


DEBUG = env.bool("DEBUG", default=False)
HTTPS = env.bool("HTTPS", default=not DEBUG)
SECRET_KEY = (
    "only-for-debug-" + "x" * 50
    if DEBUG
    else needed("SECRET_KEY", why="50 or more random letters, kept secret")
)
ALLOWED_HOSTS = env.list("ALLOWED_HOSTS", default=["localhost", "127.0.0.1"] if DEBUG else [])
CSRF_TRUSTED_ORIGINS = env.list("CSRF_TRUSTED_ORIGINS", default=[])

DATA_DIR = Path(env.str("DATA_DIR", default=str(BASE_DIR / ".data")))
DATA_DIR.mkdir(mode=0o700, parents=True, exist_ok=True)

if env.str("DATABASE_URL", default=""):
    DATABASES: dict[str, Any] = {"default": env.db("DATABASE_URL")}
else:
    DATABASES = {
        "default": sqlite_database(DATA_DIR / "frondkeep.sqlite3", version=sqlite3.sqlite_version_info)
    }
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

INSTALLED_APPS = [
    "frondkeep.society.apps.SocietyConfig",
    "specimens.apps.SpecimensConfig",
    "lineage.apps.LineageConfig",
    "frondkeep.shows.apps.ShowsConfig",
    "frondkeep.desk.apps.DeskConfig",
    "frondkeep.society.apps.FrondkeepAdminConfig",
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.contrib.staticfiles",
    "axes",
    "csp",
    "django_filters",
    "django_htmx",
    "simple_history",
]

MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "csp.middleware.CSPMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "frondkeep.society.middleware.SignInFirstMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "simple_history.middleware.HistoryRequestMiddleware",
    "axes.middleware.AxesMiddleware",
]

ROOT_URLCONF = "frondkeep.urls"
WSGI_APPLICATION = "frondkeep.wsgi.application"
ASGI_APPLICATION = "frondkeep.asgi.application"

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "DIRS": [BASE_DIR / "templates"],
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
                "frondkeep.desk.navigation.navigation",
            ],
        },
    },
]

# Sign-in
AUTH_USER_MODEL = "society.User"
AUTHENTICATION_BACKENDS = [
    "axes.backends.AxesStandaloneBackend",
    "frondkeep.society.sign_in.NameOrEmailBackend",
]
AUTH_PASSWORD_VALIDATORS = [
    {
        "NAME": "django.contrib.auth.password_validation.UserAttributeSimilarityValidator",
        "OPTIONS": {"user_attributes": ("name", "email")},
    },
    {"NAME": "django.contrib.auth.password_validation.MinimumLengthValidator", "OPTIONS": {"min_length": 8}},
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
]
LOGIN_URL = "sign-in"
LOGIN_REDIRECT_URL = "home"
LOGOUT_REDIRECT_URL = "sign-in"
PASSWORD_RESET_TIMEOUT = 3 * 60 * 60
# Locked is the pair of a name and an address: neither neighbours behind one router nor a stranger
# elsewhere can lock the owner out.
AXES_LOCKOUT_PARAMETERS = [["username", "ip_address"]]
AXES_FAILURE_LIMIT = 10
AXES_COOLOFF_TIME = timedelta(minutes=15)
AXES_RESET_ON_SUCCESS = True
AXES_LOCKOUT_CALLABLE = "frondkeep.society.views.sign_in.locked_out"
AXES_USERNAME_FORM_FIELD = "username"

# Cookies and transport. The __Host- prefix needs https, which a trial on one's own machine has not.
SESSION_COOKIE_NAME = "__Host-session" if HTTPS else "session"
CSRF_COOKIE_NAME = "__Host-csrf" if HTTPS else "csrf"
SESSION_COOKIE_SECURE = CSRF_COOKIE_SECURE = HTTPS
SESSION_COOKIE_AGE = 90 * 24 * 60 * 60
CSRF_COOKIE_HTTPONLY = True
CSRF_FAILURE_VIEW = "frondkeep.society.views.errors.stale_form"
SECURE_SSL_REDIRECT = HTTPS
SECURE_HSTS_SECONDS = 365 * 24 * 60 * 60 if HTTPS else 0
SECURE_HSTS_INCLUDE_SUBDOMAINS = SECURE_HSTS_PRELOAD = HTTPS
SECURE_REFERRER_POLICY = "same-origin"
SECURE_PROXY_SSL_HEADER = (
    ("HTTP_X_FORWARDED_PROTO", "https") if env.bool("BEHIND_PROXY", default=False) else None
)
X_FRAME_OPTIONS = "DENY"
CONTENT_SECURITY_POLICY = {
    "DIRECTIVES": {
        "default-src": [SELF],
        "img-src": [SELF, "blob:"],
        "object-src": [NONE],
        "base-uri": [NONE],
        "form-action": [SELF],
        "frame-ancestors": [NONE],
    },
}

# From this probability on a pair of names is shown to the curator as perhaps the same plant.
SUSPICION_THRESHOLD = env.float("SUSPICION_THRESHOLD", default=0.5)

# What comes in
DATA_UPLOAD_MAX_NUMBER_FIELDS = 2_000
DATA_UPLOAD_MAX_MEMORY_SIZE = 5 * 1024 * 1024
FILE_UPLOAD_PERMISSIONS = 0o600
PHOTO_MAX_BYTES = 25 * 1024 * 1024
SPREADSHEET_MAX_BYTES = 10 * 1024 * 1024

# Files
STATIC_URL = "static/"
STATIC_ROOT = DATA_DIR / "static"
STATICFILES_DIRS = [BASE_DIR / "static"]
MEDIA_ROOT = DATA_DIR / "photos"
S3_BUCKET = env.str("S3_BUCKET", default="")
STORAGES = {
    "default": {
        "BACKEND": "storages.backends.s3.S3Storage",
        "OPTIONS": {"bucket_name": S3_BUCKET, "default_acl": "private"},
    }
    if S3_BUCKET
    else {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "staticfiles": {"BACKEND": "whitenoise.storage.CompressedManifestStaticFilesStorage"},
}

# Language, time, post
LANGUAGE_CODE = "en-gb"
TIME_ZONE = env.str("TIME_ZONE", default="UTC")
USE_I18N = False
USE_TZ = True
EMAIL_CONFIG = env.email("EMAIL_URL", default="consolemail://")
vars().update(EMAIL_CONFIG)
EMAIL_TIMEOUT = 10
DEFAULT_FROM_EMAIL = SERVER_EMAIL = env.str("MAIL_FROM", default="frondkeep@localhost")

# Dates as growers write them: 12/6/1987 is the twelfth of June; spring comes in March.
DATES_DAY_FIRST = env.bool("DATES_DAY_FIRST", default=True)
SOUTHERN_HEMISPHERE = env.bool("SOUTHERN_HEMISPHERE", default=False)

SIMPLE_HISTORY_HISTORY_ID_USE_UUID = False
# A sign-in name is unique whatever its capitals, by a constraint that this check does not see.
SILENCED_SYSTEM_CHECKS = ["auth.W004"]
LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "formatters": {"plain": {"format": "{asctime} {levelname} {name} {message}", "style": "{"}},
    "handlers": {"console": {"class": "logging.StreamHandler", "formatter": "plain"}},
    "root": {"handlers": ["console"], "level": "INFO"},
    "loggers": {"axes": {"level": "WARNING"}, "fontTools": {"level": "WARNING"}},
}
