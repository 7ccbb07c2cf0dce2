"""Whether the wires, devices and clamps go into a box, by the volume that the code gives each."""

from __future__ import annotations

from typing import Annotated, Any

from calculators.declaration import Answer, Citation, Output, output_rows, refuse
from calculators.declaring import Help, calculator, choice, count, volume, yes_no
from calculators.power.box_counts import (
    BOXES,
    CU_IN,
    GAUGES,
    LARGEST,
    MARKED,
    VOLUMES,
    ground_allowance,
    ground_of,
    next_box,
    part_of,
    yoke_of,
)
from calculators.power.box_fill_drawing import box_fill_drawing
from calculators.writing import NOISE, decimal

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
        output_rows(
            "parts",
            "Count",
            Output("what", "What", "text"),
            Output("allowances", "Counts as", "number", step=0.01, rounds="up"),
            Output("each", "Each", "volume", "cu in", step=0.01, rounds="up"),
            Output("volume", "Volume", "volume", "cu in", step=0.01, rounds="up"),
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
    wires_18: Annotated[float, count("Conductors, 18 AWG", "0, from 0 to 40")],
    wires_16: Annotated[float, count("Conductors, 16 AWG", "0, from 0 to 40")],
    wires_14: Annotated[float, count("Conductors, 14 AWG", "4, from 0 to 40")],
    wires_12: Annotated[float, count("Conductors, 12 AWG", "0, from 0 to 40")],
    wires_10: Annotated[float, count("Conductors, 10 AWG", "0, from 0 to 40")],
    wires_8: Annotated[float, count("Conductors, 8 AWG", "0, from 0 to 40")],
    wires_6: Annotated[float, count("Conductors, 6 AWG", "0, from 0 to 40")],
    grounds: Annotated[float, count("Grounding wires", "2, from 0 to 40")],
    ground_gauge: Annotated[str, choice("Largest grounding wire", GAUGE_CHOICES, default=LARGEST)],
    yokes: Annotated[
        float,
        count("Yokes: switches and receptacles", "1, from 0 to 8"),
        Help("A device wider than 2 in counts once for each gang that it takes."),
    ],
    yoke_gauge: Annotated[str, choice("Largest wire on a yoke", GAUGE_CHOICES, default=LARGEST)],
    clamps: Annotated[bool, yes_no("Clamps inside the box", default="yes")],
    fittings: Annotated[float, count("Kinds of support fitting", "0, from 0 to 4"), Help("Fixture stud, hickey.")],
    edition: Annotated[
        str, choice("Edition of the code", {"2020": "2020 and later", "before-2020": "before 2020"}, default="2020")
    ],
    box: Annotated[str, choice("Box", BOX_CHOICES, default="device-3-1-2")],
    marked_volume: Annotated[
        float,
        volume("Volume marked in the box", "18 cu in, from 5 to 200 cu in"),
        Help("Used with a marked box: plastic boxes and mud rings carry theirs."),
    ],
    marked_gangs: Annotated[float, count("Gangs of a marked box", "1, from 1 to 6")],
) -> Answer:
    """The volume that a box must have, against the one it has. Counts by gauge (AWG); volumes in cubic feet.

    A gauge that is 'largest' follows the largest conductor in the box. A gang takes one yoke.

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
