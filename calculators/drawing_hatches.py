"""How materials look where a section cuts them: lines, not colours.

Each hatch is a tile of the paper: its width and height, and the lines of it. ``plastic``, ``steel``, ``air`` and
``paper`` are even tones and have none.
"""

from __future__ import annotations

from typing import Any

HATCHES: dict[str, dict[str, Any]] = {
    "wood": {"width": 26, "height": 12, "d": "M0 2.5C8 0.5 18 4.5 26 2.5M0 6.5C10 8.5 16 4.5 26 6.5M0 10.5H26"},
    "concrete": {
        "width": 22,
        "height": 20,
        "d": "M4 4l3 1-2 2.5zM15 12l3.5-1-1 3zM11 3h.8M18 5h.8M3 13h.8M9 10h.8M8 17h.8M14 18h.8M20 17h.8M1 9h.8",
    },
    "gravel": {
        "width": 16,
        "height": 13,
        "d": "M1 4a3 2 0 1 0 6 0a3 2 0 1 0-6 0M9 3.5a2 2 0 1 0 5 0a2 2 0 1 0-5 0M5 10a3 2 0 1 0 6 0a3 2 0 1 0-6 0",
    },
    "earth": {"width": 20, "height": 20, "d": "M1 9L9 1M1 6L6 1M4 9L9 4M11 11l8 8M11 14l5 5M14 11l5 5"},
    "wax": {"width": 4, "height": 4, "d": "M0 0L4 4M4 0L0 4"},
    "china": {"width": 5, "height": 5, "d": "M-1 6L6-1M-1 1L1-1M4 6L6 4"},
    "tile": {"width": 8, "height": 8, "d": "M0 0H8M0 0V8"},
    "water": {"width": 18, "height": 7, "d": "M1 1.5h10M6 5h10"},
}
