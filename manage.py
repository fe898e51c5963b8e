#!/usr/bin/env python
"""Commands of the project: `demo`, `migrate`, `check`, `rebuild_lineage` and the rest."""

import os
import sys

import frondkeep.demo_environment


def main() -> None:
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frondkeep.settings")
    if sys.argv[1:2] == ["demo"]:
        frondkeep.demo_environment.prepare()
    from django.core.management import execute_from_command_line

    execute_from_command_line(sys.argv)


if __name__ == "__main__":
    main()
