"""What a drawing's shapes say, for tests that compare them with figures."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Sheet
from calculators.registry import CALCULATORS
from calculators.run import run


def drawing_of(name: str, **given: Any) -> tuple[Sheet, dict[str, Any]]:
    """A calculator's drawing for values of the inside, with the answer."""
    calculator = CALCULATORS[name]
    assert calculator.drawing is not None
    values = {each.name: each.default for each in calculator.inputs} | given
    answer = run(calculator, values)
    return calculator.drawing(values, answer), answer


def shapes_of(sheet: Sheet, kind: str, **wanted: Any) -> list[dict[str, Any]]:
    """The shapes of a kind that look as wanted."""
    return [
        shape
        for shape in sheet["shapes"]
        if shape["kind"] == kind and all(shape.get(name) == value for name, value in wanted.items())
    ]


def measured(sheet: Sheet) -> dict[str, float]:
    """Each dimension's text, and the distance between its two points along the line it is written on, in inches."""
    found = {}
    for shape in shapes_of(sheet, "dimension"):
        axis = 0 if shape["side"] in ("above", "below") else 1
        start, end = shape["points"]
        found[f"{shape['side']}: {shape['text']}"] = round(abs(end[axis] - start[axis]), 6)
    return found


def corners(shape: dict[str, Any]) -> tuple[float, float, float, float]:
    """Least and most x, least and most y of a shape."""
    xs, ys = [point[0] for point in shape["points"]], [point[1] for point in shape["points"]]
    return min(xs), max(xs), min(ys), max(ys)
