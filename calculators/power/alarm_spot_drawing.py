"""Where on the ceiling, the wall or under the slope the alarm hangs."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, leader, line, polygon, rectangle, sheet
from calculators.writing import tape

MOST = 60.0
"""A longer distance is drawn so far."""
WIDE = 6.0
THICK = 2.0
CORNER = 4.0
DOWN = 12.0
PEAK = 36.0


def alarm_spot_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """A section through the corner or the peak: the alarm, its distance, and the limits as heavy dashes."""
    verdict = answer["verdict"]
    if values["mount"] == "wall":
        return _on_wall(values["down"], verdict)
    if values["mount"] == "slope":
        return _under_slope(values["peak_across"], values["peak_down"], verdict)
    return _on_ceiling(values["edge"], verdict)


def _on_ceiling(edge: float, verdict: str) -> Sheet:
    at = min(MOST, edge)
    right = at + WIDE + 12.0
    shapes: list[Shape] = [
        rectangle(-4.0, -24.0, 4.0, 28.0, "earth", "cut"),
        rectangle(0.0, 0.0, right, 4.0, "earth", "cut"),
        rectangle(at, -THICK, WIDE, THICK, "paper", "outline"),
        line(CORNER, -10.0, CORNER, 0.0, "limit"),
        dimension(0.0, -THICK, at, -THICK, tape(edge), "below"),
        leader(at + WIDE, -THICK / 2, "alarm", "right"),
        leader(CORNER, -10.0, f"{tape(CORNER)} least", "right"),
    ]
    words = f"Section at the ceiling: the alarm hangs {tape(edge)} from the wall, where {tape(CORNER)} is least."
    return sheet("Alarm on the ceiling", f"{words} This spot: {verdict}.", shapes)


def _on_wall(down: float, verdict: str) -> Sheet:
    at = min(MOST, down)
    low = -max(DOWN, at) - WIDE - 8.0
    shapes: list[Shape] = [
        rectangle(-4.0, low, 4.0, 4.0 - low, "earth", "cut"),
        rectangle(0.0, 0.0, 24.0, 4.0, "earth", "cut"),
        rectangle(0.0, -at - WIDE, THICK, WIDE, "paper", "outline"),
        line(0.0, -CORNER, 12.0, -CORNER, "limit"),
        line(0.0, -DOWN, 12.0, -DOWN, "limit"),
        dimension(THICK, -at, THICK, 0.0, tape(down), "right"),
        leader(12.0, -CORNER, f"{tape(CORNER)} least", "right"),
        leader(12.0, -DOWN, f"{tape(DOWN)} most", "right"),
        leader(THICK, -at - WIDE / 2, "alarm", "right"),
    ]
    words = (
        f"Section at the wall: the top of the alarm is {tape(down)} below the ceiling, "
        f"where {tape(CORNER)} to {tape(DOWN)} is asked."
    )
    return sheet("Alarm on the wall", f"{words} This spot: {verdict}.", shapes)


def _under_slope(across: float, down: float, verdict: str) -> Sheet:
    x = max(WIDE, min(MOST, across))
    y = -max(THICK, min(MOST, down))
    long = max(PEAK, x) + 12.0
    fall = y / x * long
    shapes: list[Shape] = [
        polygon([[0.0, 0.0], [long, fall], [long, fall + 4.0], [0.0, 4.0]], "earth", "cut"),
        polygon([[0.0, 0.0], [-long / 2, fall / 2], [-long / 2, fall / 2 + 4.0], [0.0, 4.0]], "earth", "cut"),
        rectangle(x - WIDE / 2, y - THICK, WIDE, THICK, "paper", "outline"),
        line(PEAK, fall - 6.0, PEAK, 0.0, "limit"),
        line(-12.0, -CORNER, 12.0, -CORNER, "limit"),
        dimension(0.0, y - THICK, x, y - THICK, tape(across), "below"),
        leader(x + WIDE / 2, y - THICK / 2, "alarm", "right"),
        leader(PEAK, fall - 6.0, f"{tape(PEAK)} most", "right"),
    ]
    words = (
        f"Section under the peak: the alarm is {tape(across)} across from the peak, where {tape(PEAK)} is most, "
        f"and {tape(down)} below it, where {tape(CORNER)} is least."
    )
    return sheet("Alarm under a slope", f"{words} This spot: {verdict}.", shapes)
