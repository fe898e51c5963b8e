"""Every example in the documentation of the naming rules is run."""

import doctest
import importlib
import pkgutil

import pytest

from specimens import naming

MODULES = [f"{naming.__name__}.{module.name}" for module in pkgutil.iter_modules(naming.__path__)]
WITH_EXAMPLES = {"codes", "labels", "names", "formulas", "dates", "date_words", "sentences", "remarks"}


@pytest.mark.parametrize("name", MODULES)
def test_examples_say_what_happens(name: str) -> None:
    outcome = doctest.testmod(importlib.import_module(name))
    assert outcome.failed == 0
    assert (outcome.attempted > 0) == (name.rpartition(".")[2] in WITH_EXAMPLES)
