"""`manage.py demo`: an invented society to look at, made at the first run and served at every run."""

from __future__ import annotations

import os
import sys
import time
from typing import Any

from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandParser

from frondkeep.desk import demonstration

HOST = "127.0.0.1"


class Command(BaseCommand):
    help = "Make the demo society, if it is not there yet, and serve it on this machine."
    # The database may not be there before this command makes it.
    requires_migrations_checks = False
    requires_system_checks = ()

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--port", type=int, default=8000)
        parser.add_argument("--no-serve", action="store_true", help="Make the society, but serve nothing.")
        parser.add_argument("--fresh", action="store_true", help="Remove the demo society and make it anew.")

    def handle(self, *, port: int, no_serve: bool, fresh: bool, **options: Any) -> None:
        began = time.monotonic()
        if fresh:
            demonstration.clear()
        self.say("Preparing the database and the pages’ files …")
        call_command("migrate", verbosity=0, interactive=False)
        call_command("collectstatic", verbosity=0, interactive=False)
        call_command("load_reference_names", verbosity=0, stdout=self.stdout)
        demonstration.fill(self.say)
        doors = demonstration.open_doors()
        self.say(f"Ready after {time.monotonic() - began:.0f} seconds.\n")
        self.tell_doors(doors, port)
        if not no_serve:
            serve(port)

    def say(self, words: str) -> None:
        self.stdout.write(words)
        self.stdout.flush()

    def tell_doors(self, doors: list[demonstration.SignIn], port: int) -> None:
        self.say(f"Open http://localhost:{port}/ and sign in as")
        for door in doors:
            self.say(f"  {door.name:24} {door.role}")
        self.say(f"each with the password: {demonstration.PASSWORD}\n")


def serve(port: int) -> None:
    """Hand this process over to the server; Ctrl-C ends it."""
    try:
        import fcntl  # noqa: F401

        import gunicorn  # noqa: F401 — is it there? (It is not on Windows.)
    except ImportError:
        serve_plainly(port)
        return
    where = f"{HOST}:{port}"
    command = [sys.executable, "-m", "gunicorn", "frondkeep.wsgi:application", "--bind", where]
    os.execv(sys.executable, [*command, "--workers", "2", "--threads", "2", "--log-level", "warning"])  # noqa: S606


def serve_plainly(port: int) -> None:
    from django.core.servers.basehttp import run

    from frondkeep.wsgi import application

    run(HOST, port, application, threading=True)
