"""The area of the rooms of a floor, with a line of working for each."""

from __future__ import annotations

from typing import Any

from calculators.declaration import refuse
from calculators.polygons import area_sq_ft
from calculators.writing import decimal


def floor_area(rooms: list[dict[str, Any]], measured_area: float, working: list[str]) -> float:
    """Square feet of the rooms, less what is taken off, with an area that was measured already.

    A line for each room is added to ``working``. Refuses what leaves nothing to floor.

    >>> lines = []
    >>> floor_area([{"name": "hall", "less": False, "points": [[0, 0], [144, 0], [144, 48], [0, 48]]}], 0.0, lines)
    48.0
    >>> lines
    ['hall: 48 sq ft']
    """
    area = measured_area
    for room in rooms:
        piece = area_sq_ft(room["points"])
        name = room["name"] or "room"
        if room["less"]:
            area = area - piece
            working.append(f"less {name}: {decimal(piece, 1)} sq ft")
        else:
            area = area + piece
            working.append(f"{name}: {decimal(piece, 1)} sq ft")
    if area <= 0:
        refuse(
            "rooms", f"the floor comes to {decimal(area, 1)} sq ft: give rooms, or an area, larger than what is less"
        )
    return area
