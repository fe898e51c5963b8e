"""Measure the software against floors taken in the same run: ``python -m tests.benchmarks NAME [options]``.

NAME is a module of this folder with a function ``main(arguments) -> None``.
"""

import importlib
import pkgutil
import sys
from pathlib import Path


def names() -> list[str]:
    """Return the benchmarks there are."""
    found = (module.name for module in pkgutil.iter_modules([str(Path(__file__).parent)]))
    return sorted(name for name in found if not name.startswith("_") and not name.endswith("_data"))


def main(arguments: list[str]) -> None:
    """Run the benchmark named first, with the rest as its options."""
    if not arguments or arguments[0] not in names():
        sys.exit(f"python -m tests.benchmarks NAME, where NAME is one of: {', '.join(names())}")
    importlib.import_module(f"tests.benchmarks.{arguments[0]}").main(arguments[1:])


if __name__ == "__main__":
    main(sys.argv[1:])
