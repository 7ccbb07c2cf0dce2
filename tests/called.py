"""A call of a calculator without a book around it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from build_tools.book.calls import CallResult, SettledInput
from calculators.declaration import Answer, Calculator


def called(calculator: Calculator, values: Mapping[str, Any], answer: Answer | None = None) -> CallResult:
    """The call with these inputs, in the units of the inside."""
    return CallResult(calculator, {name: SettledInput(value, "given") for name, value in values.items()}, answer)
