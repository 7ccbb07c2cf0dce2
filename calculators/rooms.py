"""Rooms that are listed with their sizes, as the text of a plan."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from calculators.nearness import did_you_mean

FIELDS = ["name", "length", "width", "less"]
EXAMPLE = "{length: 12 ft, width: 4 ft}"
NAMED = "{name: hall, length: 12 ft, width: 4 ft}"
YES_AND_NO = {"yes": True, "true": True, "no": False, "false": False, "": False}


def plan_text(rooms: Sequence[object]) -> str:
    """The plan of rooms with ``length`` and ``width``; ``name`` and ``less`` (taken off: yes) may stand beside them.

    Raises ValueError with the reason.

    >>> plan_text([{"name": "hall", "length": "12'", "width": "4'"}, {"length": "2'", "width": "1'", "less": "yes"}])
    "hall: 12' x 4'; less 2' x 1'"
    >>> print(plan_text([{"name": "Less used room; left", "length": "9'", "width": "8'"}]))
    "Less used room left": 9' x 8'
    """
    return "; ".join(_shape(number, room) for number, room in enumerate(rooms, start=1))


def _shape(number: int, room: object) -> str:
    if not isinstance(room, Mapping):
        raise ValueError(f"room {number} has no fields: write {EXAMPLE}")
    for field in room:
        if field not in FIELDS:
            raise ValueError(f"room {number} has no '{field}'{did_you_mean(str(field), FIELDS) or _known()}")
    for side in ("length", "width"):
        if not isinstance(room.get(side), str) or not room[side].strip():
            raise ValueError(f"room {number} has no {side}: write {EXAMPLE}")
    name, less = ("" if room.get(field) is None else room[field] for field in ("name", "less"))
    if not isinstance(name, str | int | float):
        raise ValueError(f"the name of room {number} is no text: write {NAMED}")
    # A colon, a semicolon and a line's end part the shapes of a plan.
    name = " ".join(str(name).replace(":", " ").replace(";", " ").split())
    if name.lower().startswith("less "):  # it would be taken off
        name = f'"{name}"'
    taken_off = YES_AND_NO.get(str(less).strip().lower())
    if taken_off is None:
        raise ValueError(f"room {number} is taken off or not: 'less' is yes or no")
    return (
        f"{f'{name}: ' if name else ''}{'less ' if taken_off else ''}{room['length'].strip()} x {room['width'].strip()}"
    )


def _known() -> str:
    return f"; it has {', '.join(FIELDS)}"
