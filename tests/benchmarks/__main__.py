"""Measure the software against floors taken in the same run: ``python -m tests.benchmarks NAME [options]``.

NAME is a module of this folder with a function ``main(arguments) -> None``.
"""

import importlib
import pkgutil
import sys
from pathlib import Path


def names() -> list[str]:
    """Return the benchmarks there are."""
    here = Path(__file__).parent
    found = (module.name for module in pkgutil.iter_modules([str(here)]) if not module.name.startswith("_"))
    return sorted(name for name in found if "\ndef main(" in (here / f"{name}.py").read_text("utf-8"))


def main(arguments: list[str]) -> None:
    """Run the benchmark named first, with the rest as its options."""
    if not arguments or arguments[0] not in names():
        sys.exit(f"python -m tests.benchmarks NAME, where NAME is one of: {', '.join(names())}")
    importlib.import_module(f"tests.benchmarks.{arguments[0]}").main(arguments[1:])


if __name__ == "__main__":
    main(sys.argv[1:])
