"""How far a light in a closet stays from what is stored there."""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from calculators.declaration import Answer, Citation, Output, refuse
from calculators.declaring import Help, calculator, choice, length
from calculators.power.closet_light_place_drawing import LOW_DEPTH, closet_light_place_drawing
from calculators.writing import TAPE, tape

LOW_TOP = 72.0
HIGH_DEPTH = 12.0
KINDS = {
    "surface-led": "surface, LED or incandescent, fully enclosed",
    "surface-fluorescent": "surface, fluorescent",
    "recessed-led": "recessed, LED or incandescent, fully enclosed",
    "recessed-fluorescent": "recessed, fluorescent",
    "identified": "LED or fluorescent identified for use in storage",
    "open": "incandescent with an open lamp, or any pendant",
}
CLEARANCE = {
    "surface-led": 12.0,
    "surface-fluorescent": 6.0,
    "recessed-led": 6.0,
    "recessed-fluorescent": 6.0,
    "identified": 0.0,
    "open": -1.0,
}
"""Clearances in inches: single facts of NEC 410.16(C)(1) to (5); 410.16(B) allows the last kind nowhere (-1)."""


def from_storage(away: float, up: float, low_top: float, high_depth: float) -> float:
    """Nearest distance from a point to the storage space along one wall; 0 inside it. Inches.

    ``away`` is its distance from that wall, ``up`` its height. The space is 24 in deep to ``low_top``, and
    ``high_depth`` from there to the ceiling.

    >>> [from_storage(24, 96, 72, 12), from_storage(20, 76, 72, 12), from_storage(10, 96, 72, 12)]
    [12, 4.0, 0.0]
    """
    beside = max(0.0, away - high_depth)
    out = max(0.0, away - LOW_DEPTH)
    over = max(0.0, up - low_top)
    return min(beside, sqrt(out * out + over * over))


def least_away(clearance: float, up: float, low_top: float, high_depth: float) -> float:
    """The nearest to a wall that a light of that height may come. Inches.

    >>> [least_away(12, 96, 72, 12), least_away(6, 96, 72, 12), least_away(6, 75, 72, 12)]
    [24, 18, 29.196]
    """
    over = max(0.0, up - low_top)
    beside = high_depth + clearance
    return beside if over >= clearance else max(beside, LOW_DEPTH + sqrt(clearance * clearance - over * over))


@calculator(
    title="Light in a closet",
    summary="How far a closet light stays from rods and shelves, and whether this place is clear.",
    outputs=(
        Output("verdict", "This place", "text"),
        Output("fits", "Clear", "yes-no"),
        Output("needed", "Clearance needed", "length", "in", step=1 / 8, rounds="up"),
        Output("has", "Clearance here", "length", "in", step=1 / 16, rounds="tape"),
        Output("back", "To what is stored at the back", "length", "in", step=1 / 8, rounds="down"),
        Output("side", "To what is stored at the side", "length", "in", step=1 / 8, rounds="down"),
        Output("least_from_back", "Nearest to a wall it may come", "length", "in", step=1 / 8, rounds="up"),
        Output("storage_low", "Deep storage goes up to", "length", "in", step=1 / 8),
        Output("storage_high", "Depth of storage above that", "length", "in", step=1 / 8),
    ),
    formula=(
        "Storage space: 24 in out from back and sides up to 6 ft or the highest rod, whichever is higher; above that "
        "12 in or the depth of the shelf, whichever is more, to the ceiling. The light keeps its clearance from the "
        "nearest point of it: 12 in on the surface (LED, incandescent, enclosed), 6 in recessed or fluorescent."
    ),
    sources=(Citation("nec", "410.16(B), (C)(1) to (5)"), Citation("nec", "410.2, closet storage space")),
    example={
        "kind": "recessed-led",
        "hangs": "0 in",
        "from_back": "18 in",
        "from_side": "30 in",
        "shelf_depth": "11-1/4 in",
        "rod": "66 in",
    },
    other_names=("wardrobe light", "closet light clearance", "storage space", "410.16"),
    cannot_decide=(
        "Which edition the place has adopted, and whether a light is listed for where it hangs. A licensed electrician "
        "does the work or answers for it, and the authority having jurisdiction inspects it. Circuits are proved dead "
        "before a hand goes in."
    ),
    drawing=closet_light_place_drawing,
)
def closet_light_place(
    kind: Annotated[str, choice("Light", KINDS, default="surface-led")],
    ceiling: Annotated[float, length("Height of the ceiling", "8 ft, from 5 to 20 ft, usually 7 to 10 ft", "ft-in")],
    hangs: Annotated[float, length("Light hangs down", "2 in, from 0 to 24 in"), Help("0 for a recessed one.")],
    from_back: Annotated[float, length("Back wall to its nearest edge", "26 in, from 0 to 20 ft")],
    from_side: Annotated[float, length("Nearer side wall to its nearest edge", "30 in, from 0 to 20 ft")],
    shelf_depth: Annotated[float, length("Depth of the shelf", "11-1/4 in, from 0 to 36 in, usually 9 to 16 in")],
    rod: Annotated[float, length("Highest rod", "66 in, from 0 to 144 in, usually 60 to 86 in")],
) -> Answer:
    """Whether a closet light is clear of the storage space, and how near it may come. Lengths in inches.

    ``from_back`` and ``from_side`` run from the wall to the nearest edge of the light.

    Source: NEC 410.2 (storage space), 410.16(B) and (C).

    >>> answer = closet_light_place(kind="recessed-led", hangs=0, from_back=18)
    >>> [answer["needed"], answer["has"], answer["fits"], answer["least_from_back"]]
    [6.0, 6.0, True, 18.0]
    """
    if hangs >= ceiling:
        refuse("hangs", f"A light that hangs {tape(hangs)} does not go under a ceiling of {tape(ceiling)}.")
    if rod > ceiling:
        refuse("rod", f"The rod, {tape(rod)}, is above the ceiling, {tape(ceiling)}.")
    needed = CLEARANCE[kind]
    allowed = needed >= 0
    low_top = min(ceiling, max(LOW_TOP, rod))
    high_depth = max(HIGH_DEPTH, shelf_depth)
    up = ceiling - hangs
    back = from_storage(from_back, up, low_top, high_depth)
    side = from_storage(from_side, up, low_top, high_depth)
    has = min(back, side)
    fits = allowed and has >= needed - TAPE
    cautions = []
    verdict = "clear"
    if not fits:
        verdict = f"too near: {tape(has)} where {tape(needed)} is least"
        cautions.append(
            "What lies against a hot light catches fire. Move the light, or take a kind that may be nearer."
        )
    if not allowed:
        verdict = "not allowed in a closet"
        cautions.append("Open lamps and pendants are allowed in no clothes closet. Take an enclosed LED light.")
    if needed == 0:
        cautions.append("The light's label or sheet must say that it is identified for use in the storage space.")
    return {
        "verdict": verdict,
        "fits": fits,
        "needed": max(0.0, needed),
        "has": has,
        "back": back,
        "side": side,
        "least_from_back": least_away(max(0.0, needed), up, low_top, high_depth),
        "storage_low": low_top,
        "storage_high": high_depth,
        "cautions": cautions,
        "working": [
            f"storage: {tape(LOW_DEPTH)} out up to {tape(low_top)}, then {tape(high_depth)} out to the ceiling",
            f"light's underside at {tape(ceiling)} less {tape(hangs)} = {tape(up)}",
            f"from the storage along the back {tape(back)}, along the sides {tape(side)}",
        ],
    }
