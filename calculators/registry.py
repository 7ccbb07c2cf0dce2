"""Every calculator, found by walking the modules of the trades' packages."""

from __future__ import annotations

import importlib
import pkgutil

import calculators
from calculators.declaration import Calculator


def find() -> dict[str, Calculator]:
    """The calculators below this package by name, in the order of their names."""
    found: dict[str, tuple[Calculator, str]] = {}
    for trade in pkgutil.iter_modules(calculators.__path__, "calculators."):
        if not trade.ispkg:
            continue
        package = importlib.import_module(trade.name)
        for part in pkgutil.walk_packages(package.__path__, trade.name + "."):
            for calculator in vars(importlib.import_module(part.name)).values():
                if not isinstance(calculator, Calculator) or calculator.__module__ != part.name:
                    continue
                if calculator.name in found:
                    two = f"{found[calculator.name][1]} and {part.name}"
                    raise ValueError(f"two calculators '{calculator.name}': {two}")
                found[calculator.name] = (calculator, part.name)
    return {name: found[name][0] for name in sorted(found)}


CALCULATORS: dict[str, Calculator] = find()
