"""Every example in the documentation is run; and the pure packages, whose contracts need them, have some."""

import doctest
import importlib
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
LEAST = {"lineage.core": 20, "specimens.naming": 12, "specimens.portraits": 1, "frondkeep.sheets": 2}


def modules_with_examples() -> Iterator[str]:
    for app in ("frondkeep", "lineage", "specimens", "demo_data"):
        for path in (ROOT / app).rglob("*.py"):
            if ">>> " in path.read_text():
                yield ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")


MODULES = sorted(modules_with_examples())


def run_examples(name: str) -> doctest.TestResults:
    return doctest.testmod(importlib.import_module(name))


@pytest.mark.parametrize("name", MODULES)
def test_examples_say_what_happens(name: str) -> None:
    outcome = run_examples(name)
    assert outcome.failed == 0
    assert outcome.attempted > 0


@pytest.mark.parametrize(("package", "least"), LEAST.items())
def test_pure_packages_show_what_they_do(package: str, least: int) -> None:
    assert sum(run_examples(name).attempted for name in MODULES if name.startswith(package)) >= least
