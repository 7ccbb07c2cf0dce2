"""Whether the wires, devices and clamps go into a box, by the volume that the code gives each."""

from __future__ import annotations

from typing import Annotated, Any

from calculators.declaration import Answer, Citation, Output, refuse
from calculators.declaring import Help, calculator, choice, count, volume, yes_no
from calculators.power.box_fill_drawing import box_fill_drawing
from calculators.writing import NOISE, decimal

CU_IN = 1728.0
GAUGES = ["18", "16", "14", "12", "10", "8", "6"]
VOLUMES = [1.5, 1.75, 2.0, 2.25, 2.5, 3.0, 5.0]
"""Cubic inches that one conductor takes, NEC Table 314.16(B)(1), gauge by gauge."""

BOXES: list[dict[str, Any]] = [
    {"name": "device-2-1-2", "label": "device box 3 x 2 x 2-1/2 in", "family": "device", "gangs": 1, "volume": 12.5},
    {"name": "device-2-3-4", "label": "device box 3 x 2 x 2-3/4 in", "family": "device", "gangs": 1, "volume": 14.0},
    {"name": "device-3-1-2", "label": "device box 3 x 2 x 3-1/2 in", "family": "device", "gangs": 1, "volume": 18.0},
    {"name": "round-1-1-2", "label": "4 in octagon box, 1-1/2 in deep", "family": "round", "gangs": 1, "volume": 15.5},
    {"name": "round-2-1-8", "label": "4 in octagon box, 2-1/8 in deep", "family": "round", "gangs": 1, "volume": 21.5},
    {"name": "square-1-1-2", "label": "4 in square box, 1-1/2 in deep", "family": "square", "gangs": 2, "volume": 21.0},
    {"name": "square-2-1-8", "label": "4 in square box, 2-1/8 in deep", "family": "square", "gangs": 2, "volume": 30.3},
    {
        "name": "large-2-1-8",
        "label": "4-11/16 in square box, 2-1/8 in deep",
        "family": "square",
        "gangs": 2,
        "volume": 42.0,
    },
]
"""Common metal boxes; each volume is a fact of NEC Table 314.16(A). Each family from the smallest up.
``gangs`` is how many yokes it takes, an octagon or square box with its cover."""
MARKED = "marked"
LARGEST = "largest"
GROUND_MOST = 4
"""The place of 10 AWG in ``GAUGES``: larger wires of a dwelling's circuits have no larger ground, NEC 250.122 (from
memory, up to 60 A)."""


def volume_of(gauge: str) -> float:
    """Cubic inches for one conductor of a gauge.

    >>> [volume_of("14"), volume_of("12"), volume_of("6")]
    [2.0, 2.25, 5.0]
    """
    for at in range(len(GAUGES)):
        if GAUGES[at] == gauge:
            return VOLUMES[at]
    return 0.0


def place_of(gauge: str) -> int:
    """The place of a gauge in the list, from the thinnest up; -1 for none.

    >>> [place_of("18"), place_of("12"), place_of("largest")]
    [0, 3, -1]
    """
    for at in range(len(GAUGES)):
        if GAUGES[at] == gauge:
            return at
    return -1


def ground_allowance(grounds: float, edition: str) -> float:
    """How many conductors the grounding wires count as: one for up to four, then a quarter each from 2020 on.

    >>> [ground_allowance(0, "2020"), ground_allowance(4, "2020"), ground_allowance(6, "2020")]
    [0.0, 1.0, 1.5]
    >>> ground_allowance(6, "before-2020")
    1.0
    """
    if grounds == 0:
        return 0.0
    if edition == "2020" and grounds > 4:
        return 1.0 + (grounds - 4) / 4
    return 1.0


def next_box(needed: float, family: str, yokes: float) -> str:
    """The smallest box of the family that holds so many cubic inches and yokes; failing that, of the square ones.

    >>> [next_box(13, "device", 1), next_box(20, "device", 1), next_box(12, "device", 2), next_box(50, "round", 0)]
    ['device box 3 x 2 x 2-3/4 in', '4 in square box, 1-1/2 in deep', '4 in square box, 1-1/2 in deep', \
'two boxes: none of the list holds this']
    >>> next_box(30, "device", 3)
    'a box of 3 gangs with 30 cu in or more'
    """
    for look in [family, "square"]:
        for box in BOXES:
            if box["family"] == look and box["volume"] >= needed - NOISE and box["gangs"] >= yokes:
                return str(box["label"])
    if yokes > 1:
        return f"a box of {decimal(yokes, 0)} gangs with {decimal(needed, 2)} cu in or more"
    return "two boxes: none of the list holds this"


def part_of(what: str, count: float, each: float) -> dict[str, Any]:
    """One line of the count: what, how many conductors it counts as, and its cubic inches."""
    return {"what": what, "allowances": count, "each": each / CU_IN, "volume": count * each / CU_IN}


GAUGE_CHOICES = {LARGEST: "as the largest wire in the box asks", **{gauge: gauge + " AWG" for gauge in GAUGES}}

BOX_CHOICES = {**{each["name"]: each["label"] for each in BOXES}, MARKED: "a box with its volume marked in it"}


@calculator(
    title="Box fill",
    summary="The volume that wires, devices and clamps need, and whether the box has it.",
    outputs=(
        Output("needed", "Volume needed", "volume", "cu in", step=0.01, rounds="up"),
        Output("has", "Volume of the box", "volume", "cu in", step=0.01, rounds="down"),
        Output("left", "Room in the box", "volume", "cu in", step=0.01, rounds="down", ways=("left", "too little")),
        Output("allowances", "Counts as conductors", "number", step=0.01, rounds="up"),
        Output("fits", "It fits", "yes-no"),
        Output("use", "Use", "text"),
        Output(
            "parts",
            "Count",
            "rows",
            columns=(
                Output("what", "What", "text"),
                Output("allowances", "Counts as", "number", step=0.01, rounds="up"),
                Output("each", "Each", "volume", "cu in", step=0.01, rounds="up"),
                Output("volume", "Volume", "volume", "cu in", step=0.01, rounds="up"),
            ),
        ),
    ),
    formula=(
        "Volume needed = the sum of the counts x the volume of one conductor of that gauge.\n\n"
        "A conductor that ends, is spliced or passes through: 1. A yoke: 2 of the largest wire on it. Clamps inside "
        "the box: 1 of the largest wire, all together. Each kind of support fitting: 1 of the largest. Grounding "
        "wires: 1 of the largest of them for up to four, 1/4 for each more (2020 and later). Pigtails that stay "
        "inside: 0. A wire that passes through with a loop of 12 in or more: 2. One gang takes one yoke."
    ),
    sources=(
        Citation("nec", "314.16(B)(1) to (5), Table 314.16(B)(1)"),
        Citation("nec", "314.16(A), Table 314.16(A); 250.122, from memory"),
    ),
    example={
        "wires_14": "0",
        "wires_12": "4",
        "grounds": "2",
        "yokes": "1",
        "box": "device-3-1-2",
        "marked_volume": "18 cu in",
    },
    other_names=("box size", "junction box", "outlet box", "cubic inches", "wire fill", "314.16"),
    cannot_decide=(
        "Whether the wiring is right. A licensed electrician does the work or answers for it, the authority having "
        "jurisdiction inspects it, and the edition of the code that the place has adopted rules. No box is opened "
        "before its circuits are switched off, locked, and proved dead with a tester that was tried on a live circuit "
        "before and after."
    ),
    drawing=box_fill_drawing,
)
def box_fill(
    wires_18: Annotated[float, count("Conductors, 18 AWG", default="0", limits="0 to 40")],
    wires_16: Annotated[float, count("Conductors, 16 AWG", default="0", limits="0 to 40")],
    wires_14: Annotated[float, count("Conductors, 14 AWG", default="4", limits="0 to 40")],
    wires_12: Annotated[float, count("Conductors, 12 AWG", default="0", limits="0 to 40")],
    wires_10: Annotated[float, count("Conductors, 10 AWG", default="0", limits="0 to 40")],
    wires_8: Annotated[float, count("Conductors, 8 AWG", default="0", limits="0 to 40")],
    wires_6: Annotated[float, count("Conductors, 6 AWG", default="0", limits="0 to 40")],
    grounds: Annotated[float, count("Grounding wires", default="2", limits="0 to 40")],
    ground_gauge: Annotated[str, choice("Largest grounding wire", GAUGE_CHOICES, default=LARGEST)],
    yokes: Annotated[
        float,
        count("Yokes: switches and receptacles", default="1", limits="0 to 8"),
        Help("A device wider than 2 in counts once for each gang that it takes."),
    ],
    yoke_gauge: Annotated[str, choice("Largest wire on a yoke", GAUGE_CHOICES, default=LARGEST)],
    clamps: Annotated[bool, yes_no("Clamps inside the box", default="yes")],
    fittings: Annotated[
        float, count("Kinds of support fitting", default="0", limits="0 to 4"), Help("Fixture stud, hickey.")
    ],
    edition: Annotated[
        str, choice("Edition of the code", {"2020": "2020 and later", "before-2020": "before 2020"}, default="2020")
    ],
    box: Annotated[str, choice("Box", BOX_CHOICES, default="device-3-1-2")],
    marked_volume: Annotated[
        float,
        volume("Volume marked in the box", "cu in", default="18 cu in", limits="5 to 200 cu in"),
        Help("Used with a marked box: plastic boxes and mud rings carry theirs."),
    ],
    marked_gangs: Annotated[float, count("Gangs of a marked box", default="1", limits="1 to 6")],
) -> Answer:
    """The volume that a box must have, against the one it has. Counts by gauge (AWG); volumes in cubic feet.

    Each insulated conductor that ends, is spliced or passes through is 1 of its gauge; each yoke 2 of the largest wire
    on it; clamps inside the box 1 of the largest, all together; each kind of support fitting 1 of the largest;
    grounding wires 1 of the largest of them for up to four, and 1/4 for each more (2020 and later). A gauge that is
    'largest' follows the largest conductor in the box. A gang takes one yoke.

    Source: NEC 314.16(B)(1) to (5), Tables 314.16(A) and (B)(1).

    >>> answer = box_fill(wires_14=0, wires_12=4)
    >>> [answer["needed"] * 1728, answer["fits"]]
    [18.0, True]
    >>> answer = box_fill(wires_14=0, wires_12=5, box="marked", marked_volume=20 / 1728)
    >>> [answer["needed"] * 1728, answer["fits"]]
    [20.25, False]
    """
    counts = [wires_18, wires_16, wires_14, wires_12, wires_10, wires_8, wires_6]
    parts: list[dict[str, Any]] = []
    thickest = -1
    wires = 0.0
    for at in range(len(GAUGES)):
        if counts[at] > 0:
            thickest = at
            wires = wires + counts[at]
            parts.append(part_of(f"conductors {GAUGES[at]} AWG: {decimal(counts[at], 0)}", counts[at], VOLUMES[at]))
    if wires == 0:
        refuse("wires_14", "No conductor is counted: a box with none in it needs no count.")
    largest = VOLUMES[thickest]
    ground = ground_of(ground_gauge, thickest)
    if grounds > 0:
        largest = max(largest, VOLUMES[ground])
        what = f"grounding wires {GAUGES[ground]} AWG: {decimal(grounds, 0)}"
        parts.append(part_of(what, ground_allowance(grounds, edition), VOLUMES[ground]))
    if yokes > 0:
        on = yoke_of(yoke_gauge, thickest, counts)
        parts.append(part_of(f"yokes on {GAUGES[on]} AWG: {decimal(yokes, 0)}", 2 * yokes, VOLUMES[on]))
    if clamps:
        parts.append(part_of("clamps inside the box", 1, largest))
    if fittings > 0:
        parts.append(part_of(f"kinds of support fitting: {decimal(fittings, 0)}", fittings, largest))
    needed = 0.0
    allowances = 0.0
    working: list[str] = []
    for part in parts:
        needed = needed + part["volume"] * CU_IN
        allowances = allowances + part["allowances"]
        each = part["each"] * CU_IN
        volume = part["volume"] * CU_IN
        working.append(
            f"{part['what']}; {decimal(part['allowances'], 2)} x {decimal(each, 2)} = {decimal(volume, 2)} cu in"
        )

    has = marked_volume * CU_IN
    gangs = marked_gangs
    family = "device"
    called = "this box"
    for one in BOXES:
        if one["name"] == box:
            has = one["volume"]
            gangs = one["gangs"]
            family = one["family"]
            called = one["label"]
    full = needed > has + NOISE
    fits = not full and yokes <= gangs
    use = called
    cautions: list[str] = []
    if not fits:
        use = next_box(needed, family, yokes)
    if full:
        cautions.append(
            f"Too full by {decimal(needed - has, 2)} cu in. Wires pressed into a full box are nicked, heat up and fail."
        )
    if yokes > gangs:
        cautions.append(f"One yoke to a gang: this box takes {decimal(gangs, 0)}, and {decimal(yokes, 0)} are counted.")
    if yokes > 0 and family == "round":
        cautions.append("A switch or receptacle does not go on an octagon box without a cover made for it.")
    if grounds == 0:
        cautions.append("No grounding wire is counted: is one there?")
    working.append(f"needed {decimal(needed, 2)} cu in, the box has {decimal(has, 2)} cu in")
    return {
        "needed": needed / CU_IN,
        "has": has / CU_IN,
        "left": (has - needed) / CU_IN,
        "allowances": allowances,
        "fits": fits,
        "use": use,
        "parts": parts,
        "cautions": cautions,
        "working": working,
    }


def ground_of(gauge: str, thickest: int) -> int:
    """The place of the largest grounding wire's gauge, for the thickest conductor in the box.

    >>> [ground_of("largest", 3), ground_of("largest", 6), ground_of("10", 2)]
    [3, 4, 4]
    """
    asked = min(thickest, GROUND_MOST)
    if gauge == LARGEST:
        return asked
    at = place_of(gauge)
    if at < asked:
        refuse(
            "ground_gauge",
            f"Largest grounding wire: {gauge} AWG is too thin beside {GAUGES[thickest]} AWG in the same box, which "
            f"comes with {GAUGES[asked]} AWG (NEC 250.122)",
        )
    return at


def yoke_of(gauge: str, thickest: int, counts: list[float]) -> int:
    """The place of the gauge that yokes count as; a gauge of which no wire is counted is refused.

    >>> [yoke_of("largest", 3, [0, 0, 2, 2, 0, 0, 0]), yoke_of("14", 3, [0, 0, 2, 2, 0, 0, 0])]
    [3, 2]
    """
    if gauge == LARGEST:
        return thickest
    at = place_of(gauge)
    if counts[at] == 0:
        refuse("yoke_gauge", f"Largest wire on a yoke: no {gauge} AWG wire is counted in this box")
    return at
