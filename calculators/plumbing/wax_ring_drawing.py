"""The closet flange, the ring and the bowl in section through the centre of the drain."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, leader, line, polygon, rectangle, sheet
from calculators.ways import with_way
from calculators.writing import NOISE, inches, tape

FLANGE_WAYS = ("floor above flange", "flange above floor")
FLANGE = 0.25
"""Thickness of a plastic flange (IPC 405.4.1, at least)."""
FLANGE_OUT = 3.5
PIPE_OUT = 1.75
PIPE_IN = 1.5
"""Half of: a 7 in flange, a 3 in pipe outside and inside (common sizes)."""
FOOT_OUT = 5.5
FOOT_IN = 4.25
HORN_OUT = 1.375
HORN_IN = 1.0
HORN_DOWN = 0.375
CHINA = 0.5
"""The bowl, as most are made: half widths of its foot and its horn, the horn below the hollow's top, the thickness."""
RING_IN = 1.625
RING_OUT = 2.375


def wax_ring_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """Right half of the section: heights from the rise, the recess and the ring; widths are those of common parts.

    0, 0 is the centre of the flange's top face. The wax is drawn as it is squeezed, the ring as it comes in dashes.
    Where the bowl would rest on the flange its foot hangs over the floor.
    """
    rise = answer["rise_used"]
    recess = values["recess"]
    ring = answer["ring_judged"]
    gap = answer["gap"]
    spacer = answer["squeeze"] + gap - ring
    foot = max(rise, -recess)
    top = foot + recess
    wax = min(ring, max(gap - spacer, 0.0))
    floor = min(rise, -FLANGE) - 0.75
    shapes: list[Shape] = [
        rectangle(FLANGE_OUT + 0.125, floor, 6.75 - FLANGE_OUT, rise - floor, "wood", "cut"),
        rectangle(PIPE_IN, floor - 0.5, PIPE_OUT - PIPE_IN, 0.5 - floor, "plastic", "outline"),
        rectangle(PIPE_IN, -FLANGE, FLANGE_OUT - PIPE_IN, FLANGE, "plastic", "outline"),
        bowl(foot, recess),
    ]
    if spacer > NOISE:
        shapes.append(rectangle(PIPE_IN, 0.0, FLANGE_OUT - PIPE_IN, spacer, "plastic", "outline"))
        shapes.append(leader(FLANGE_OUT - 0.375, spacer / 2, "spacer " + inches(spacer), "above"))
    if wax > 0:
        shapes.append(rectangle(RING_IN, spacer, RING_OUT - RING_IN + (ring - wax) / 2, wax, "wax", "outline"))
    shapes.append(rectangle(RING_IN, spacer, RING_OUT - RING_IN, ring, "none", "hidden"))
    shapes.append(line(0.0, floor - 0.5, 0.0, top + 1.5, "centre"))
    shapes.append(dimension(FLANGE_OUT, 0.0, FLANGE_OUT + 0.125, rise, apart(rise), "right"))
    shapes.append(dimension(FOOT_IN, foot, HORN_OUT, top, "recess " + inches(recess), "right"))
    shapes.append(dimension(RING_IN, 0.0, HORN_OUT, gap, "gap " + tape(abs(gap)), "left"))
    shapes.append(
        leader(RING_IN + 0.25, spacer + min(wax, ring) / 2, f"ring {inches(ring)}, {pressed(answer)}", "below")
    )
    shapes.append(leader(FLANGE_OUT - 0.375, -FLANGE / 2, "flange", "below"))
    shapes.append(leader(FOOT_OUT + 1.0, (rise + floor) / 2, "finished floor", "below"))
    shapes.append(leader(FOOT_OUT - 0.625, top + CHINA / 2, "bowl", "above"))
    shapes.append(leader(0.0, top + 1.25, "centre of the drain", "above"))
    return sheet("Wax ring in section", words(values, answer), shapes)


def apart(rise: float) -> str:
    """How far the finished floor and the top of the flange stand apart, and which is higher. Inches.

    >>> [apart(0.5), apart(-0.25), apart(0)]
    ['1/2 in floor above flange', '1/4 in flange above floor', 'floor level with flange']
    """
    return "floor level with flange" if rise == 0 else with_way(FLANGE_WAYS, rise, tape(abs(rise)))


def bowl(foot: float, recess: float) -> Shape:
    """The bowl's foot and its horn; the hollow under it ends at the china that meets the wax."""
    top = foot + recess
    horn = top - min(HORN_DOWN, recess)
    return polygon(
        [
            [FOOT_OUT, foot],
            [FOOT_IN, foot],
            [FOOT_IN, top],
            [HORN_OUT, top],
            [HORN_OUT, horn],
            [HORN_IN, horn],
            [HORN_IN, top + 1.25],
            [HORN_IN + 0.5, top + 1.25],
            [HORN_OUT + 0.5, top + CHINA],
            [FOOT_OUT - 0.5, top + CHINA],
            [FOOT_OUT, top],
        ],
        "china",
        "cut",
    )


def pressed(answer: Answer) -> str:
    """What happens to the ring, in words."""
    if answer["squeeze"] < 0:
        return f"{tape(-answer['squeeze'])} short of the bowl"
    return f"squeezed {tape(answer['squeeze'])}"


def words(values: dict[str, Any], answer: Answer) -> str:
    """The drawing in words."""
    gap = answer["gap"]
    between = f"the gap from flange to bowl is {tape(gap)}"
    if gap < 0:
        between = f"the bowl's china lies {tape(-gap)} below the flange's top"
    ring = answer["ring_judged"]
    spacer = answer["squeeze"] + gap - ring
    below = f" on {inches(spacer)} of spacer" if spacer > NOISE else ""
    return (
        f"Section: {apart(answer['rise_used'])}. "
        f"The recess under the bowl is {inches(values['recess'])}, so {between}. "
        f"A ring of {inches(ring)}{below} is {pressed(answer)}: {answer['fit']}."
    )
