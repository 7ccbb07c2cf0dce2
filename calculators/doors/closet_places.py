"""Where rods, shelf and brackets of a closet may be, and what to watch. Lengths in inches."""

from __future__ import annotations

from calculators.declaration import refuse
from calculators.writing import TAPE, feet_inches, inches, tape, whole

REACH_LEAST = 15.0
REACH_MOST = 48.0
HAND_ROOM = 8.0
LEAST_HANG = 36.0
NOT_ASKED = "not asked"
IN_REACH = "all within reach"


def bracket_places(width: float, longest: float) -> list[float]:
    """Where the brackets go, from the left wall, so that no span is longer than the longest. Inches.

    >>> [bracket_places(96, 36), bracket_places(36, 36)]
    [[32.0, 64.0], []]
    """
    spans = whole(width / longest, "up")
    return [width * at / spans for at in range(1, spans)]


def out_of_reach(heights: list[float]) -> str:
    """The heights that somebody in a wheelchair does not reach, as words (ADA 308.2.1, 308.3.1). Inches.

    >>> [out_of_reach([44, 46]), out_of_reach([10, 66])]
    ['all within reach', 'out of reach: 10 in, 66 in']
    """
    outside = [tape(height) for height in heights if height < REACH_LEAST - TAPE or height > REACH_MOST + TAPE]
    return IN_REACH if len(outside) == 0 else "out of reach: " + ", ".join(outside)


def check_places(rod: float, low: float, shelf_top: float, height: float, double: bool) -> None:
    """Refuse rods and shelf that do not go into the closet."""
    if double and low >= rod:
        refuse("low_rod", f"The low rod, {inches(low)}, is not below the high one, {inches(rod)}.")
    if shelf_top >= height:
        refuse("height", f"The shelf's top, {inches(shelf_top)}, is not below the ceiling, {feet_inches(height)}.")


def check_depths(depth: float, shelf_depth: float, setback: float, diameter: float, wall: float) -> None:
    """Refuse a shelf or a rod that the closet's depth does not take, and a rod without a hole in it."""
    if shelf_depth > depth:
        refuse("shelf_depth", f"The shelf, {inches(shelf_depth)}, is deeper than the closet, {inches(depth)}.")
    if setback + diameter / 2 >= depth:
        refuse("rod_setback", f"The rod, {inches(setback)} from the back, is not inside {inches(depth)} of depth.")
    if 2 * wall >= diameter:
        refuse("rod_wall", f"A wall of {inches(wall)} leaves no hole in a rod of {inches(diameter)}.")


def cautions_for(front: float, setback: float, above: float, double: bool, clear: float, reach: str) -> list[str]:
    """What to watch: room for hangers in front of and behind the rod, room above the shelf, reach. Inches."""
    cautions: list[str] = []
    room = min(front, setback)
    if room < 11 - TAPE:
        cautions.append(f"{tape(room)} from the rod to the wall or the door: a hanger needs about 11 in.")
    if above < HAND_ROOM - TAPE:
        cautions.append(f"{tape(above)} above the shelf: too low to put a box on it.")
    if double and clear < LEAST_HANG - TAPE:
        cautions.append(f"{tape(clear)} between the rods: shirts hang on the low one. {inches(LEAST_HANG)} is least.")
    if reach != NOT_ASKED and reach != IN_REACH:
        low = inches(REACH_LEAST)
        cautions.append(f"Reach from a wheelchair is {low} to {inches(REACH_MOST)}; {reach}.")
    return cautions
