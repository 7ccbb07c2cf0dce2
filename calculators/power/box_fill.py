"""Whether the wires, devices and clamps go into a box, by the volume that the code gives each."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Calculator, Choice, Citation, Input, Output, refuse
from calculators.power.box_fill_drawing import box_fill_drawing
from calculators.writing import NOISE, decimal

CU_IN = 1728.0
GAUGES = ["18", "16", "14", "12", "10", "8", "6"]
VOLUMES = [1.5, 1.75, 2.0, 2.25, 2.5, 3.0, 5.0]
"""Cubic inches that one conductor takes, NEC Table 314.16(B)(1), gauge by gauge."""

BOXES: list[dict[str, Any]] = [
    {"name": "device-2-1-2", "label": "device box 3 x 2 x 2-1/2 in", "family": "device", "volume": 12.5},
    {"name": "device-2-3-4", "label": "device box 3 x 2 x 2-3/4 in", "family": "device", "volume": 14.0},
    {"name": "device-3-1-2", "label": "device box 3 x 2 x 3-1/2 in", "family": "device", "volume": 18.0},
    {"name": "round-1-1-2", "label": "4 in octagon box, 1-1/2 in deep", "family": "round", "volume": 15.5},
    {"name": "round-2-1-8", "label": "4 in octagon box, 2-1/8 in deep", "family": "round", "volume": 21.5},
    {"name": "square-1-1-2", "label": "4 in square box, 1-1/2 in deep", "family": "square", "volume": 21.0},
    {"name": "square-2-1-8", "label": "4 in square box, 2-1/8 in deep", "family": "square", "volume": 30.3},
    {"name": "large-2-1-8", "label": "4-11/16 in square box, 2-1/8 in deep", "family": "square", "volume": 42.0},
]
"""Common metal boxes; each volume is a fact of NEC Table 314.16(A). Each family from the smallest up."""
MARKED = "marked"


def volume_of(gauge: str) -> float:
    """Cubic inches for one conductor of a gauge.

    >>> [volume_of("14"), volume_of("12"), volume_of("6")]
    [2.0, 2.25, 5.0]
    """
    for at in range(len(GAUGES)):
        if GAUGES[at] == gauge:
            return VOLUMES[at]
    return 0.0


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


def next_box(needed: float, family: str) -> str:
    """The smallest box of the family that holds so many cubic inches; failing that, of the square ones.

    >>> [next_box(13, "device"), next_box(20, "device"), next_box(50, "round")]
    ['device box 3 x 2 x 2-3/4 in', '4 in square box, 1-1/2 in deep', 'two boxes: none of the list holds this']
    """
    for look in [family, "square"]:
        for box in BOXES:
            if box["family"] == look and box["volume"] >= needed - NOISE:
                return str(box["label"])
    return "two boxes: none of the list holds this"


def part_of(what: str, count: float, each: float) -> dict[str, Any]:
    """One line of the count: what, how many conductors it counts as, and its cubic inches."""
    return {"what": what, "allowances": count, "each": each / CU_IN, "volume": count * each / CU_IN}


def box_fill(
    wires_18: float = 0,
    wires_16: float = 0,
    wires_14: float = 4,
    wires_12: float = 0,
    wires_10: float = 0,
    wires_8: float = 0,
    wires_6: float = 0,
    grounds: float = 2,
    ground_gauge: str = "14",
    yokes: float = 1,
    yoke_gauge: str = "14",
    clamps: bool = True,
    fittings: float = 0,
    edition: str = "2020",
    box: str = "device-3-1-2",
    marked_volume: float = 18 / 1728,
) -> Answer:
    """The volume that a box must have, against the one it has. Counts by gauge (AWG); volumes in cubic feet.

    Each insulated conductor that ends, is spliced or passes through is 1 of its gauge; each yoke 2 of the largest wire
    on it; clamps inside the box 1 of the largest, all together; each kind of support fitting 1 of the largest;
    grounding wires 1 of the largest of them for up to four, and 1/4 for each more (2020 and later).

    Source: NEC 314.16(B)(1) to (5), Tables 314.16(A) and (B)(1).

    >>> answer = box_fill(wires_14=0, wires_12=4, ground_gauge="12", yoke_gauge="12")
    >>> [answer["needed"] * 1728, answer["fits"]]
    [18.0, True]
    """
    counts = [wires_18, wires_16, wires_14, wires_12, wires_10, wires_8, wires_6]
    parts: list[dict[str, Any]] = []
    largest = 0.0
    wires = 0.0
    for at in range(len(GAUGES)):
        if counts[at] > 0:
            largest = max(largest, VOLUMES[at])
            wires = wires + counts[at]
            parts.append(part_of(f"conductors {GAUGES[at]} AWG: {decimal(counts[at], 0)}", counts[at], VOLUMES[at]))
    if wires == 0:
        refuse("wires_14", "No conductor is counted: a box with none in it needs no count.")
    ground = ground_allowance(grounds, edition)
    if grounds > 0:
        largest = max(largest, volume_of(ground_gauge))
        parts.append(
            part_of(f"grounding wires {ground_gauge} AWG: {decimal(grounds, 0)}", ground, volume_of(ground_gauge))
        )
    if yokes > 0:
        parts.append(part_of(f"yokes on {yoke_gauge} AWG: {decimal(yokes, 0)}", 2 * yokes, volume_of(yoke_gauge)))
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
    family = "device"
    called = "this box"
    for one in BOXES:
        if one["name"] == box:
            has = one["volume"]
            family = one["family"]
            called = one["label"]
    fits = needed <= has + NOISE
    use = called
    cautions: list[str] = []
    if not fits:
        use = next_box(needed, family)
        cautions.append(
            f"Too full by {decimal(needed - has, 2)} cu in. Wires pressed into a full box are nicked, heat up and fail."
        )
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


GAUGE_CHOICES = tuple(Choice(gauge, gauge + " AWG") for gauge in GAUGES)
BOX_CHOICES = (
    *(Choice(each["name"], each["label"]) for each in BOXES),
    Choice(MARKED, "a box with its volume marked in it"),
)


def _wires(gauge: str, default: int) -> Input:
    return Input(f"wires_{gauge}", f"Conductors, {gauge} AWG", "count", default=default, least=0, most=40)


CALCULATOR = Calculator(
    name="box-fill",
    title="Box fill",
    trade="power",
    summary="The volume that wires, devices and clamps need, and whether the box has it.",
    function=box_fill,
    inputs=(
        _wires("18", 0),
        _wires("16", 0),
        _wires("14", 4),
        _wires("12", 0),
        _wires("10", 0),
        _wires("8", 0),
        _wires("6", 0),
        Input("grounds", "Grounding wires", "count", default=2, least=0, most=40),
        Input("ground_gauge", "Largest grounding wire", "choice", default="14", choices=GAUGE_CHOICES),
        Input(
            "yokes",
            "Yokes: switches and receptacles",
            "count",
            default=1,
            least=0,
            most=8,
            help="A device wider than 2 in counts once for each gang that it takes.",
        ),
        Input("yoke_gauge", "Largest wire on a yoke", "choice", default="14", choices=GAUGE_CHOICES),
        Input("clamps", "Clamps inside the box", "yes-no", default=True),
        Input(
            "fittings", "Kinds of support fitting", "count", default=0, least=0, most=4, help="Fixture stud, hickey."
        ),
        Input(
            "edition",
            "Edition of the code",
            "choice",
            default="2020",
            choices=(Choice("2020", "2020 and later"), Choice("before-2020", "before 2020")),
        ),
        Input("box", "Box", "choice", default="device-3-1-2", choices=BOX_CHOICES),
        Input(
            "marked_volume",
            "Volume marked in the box",
            "volume",
            "cu in",
            18 / CU_IN,
            5 / CU_IN,
            200 / CU_IN,
            help="Used with a marked box: plastic boxes and mud rings carry theirs.",
        ),
    ),
    outputs=(
        Output("needed", "Volume needed", "volume", "cu in", 0.01, "up"),
        Output("has", "Volume of the box", "volume", "cu in", 0.01, "down"),
        Output("left", "Left over", "volume", "cu in", 0.01, "down", help="Less than 0: too full."),
        Output("allowances", "Counts as conductors", "number", "", 0.01, "up"),
        Output("fits", "It fits", "yes-no"),
        Output("use", "Use", "text"),
        Output(
            "parts",
            "Count",
            "rows",
            columns=(
                Output("what", "What", "text"),
                Output("allowances", "Counts as", "number", "", 0.01, "up"),
                Output("each", "Each", "volume", "cu in", 0.01, "up"),
                Output("volume", "Volume", "volume", "cu in", 0.01, "up"),
            ),
        ),
    ),
    formula=(
        "Volume needed = the sum of the counts x the volume of one conductor of that gauge.\n\n"
        "A conductor that ends, is spliced or passes through: 1. A yoke: 2 of the largest wire on it. Clamps inside "
        "the box: 1 of the largest wire, all together. Each kind of support fitting: 1 of the largest. Grounding "
        "wires: 1 of the largest of them for up to four, 1/4 for each more (2020 and later). Pigtails that stay "
        "inside: 0. A wire that passes through with a loop of 12 in or more: 2."
    ),
    sources=(
        Citation("nec", "314.16(B)(1) to (5), Table 314.16(B)(1)"),
        Citation("nec", "314.16(A), Table 314.16(A)"),
    ),
    example={"wires_14": "0", "wires_12": "4", "ground_gauge": "12 AWG", "yoke_gauge": "12 AWG"},
    other_names=("box size", "junction box", "outlet box", "cubic inches", "wire fill", "314.16"),
    cannot_decide=(
        "Whether the wiring is right. A licensed electrician does the work or answers for it, the authority having "
        "jurisdiction inspects it, and the edition of the code that the place has adopted rules. No box is opened "
        "before its circuits are switched off, locked, and proved dead with a tester that was tried on a live circuit "
        "before and after."
    ),
    drawing=box_fill_drawing,
)
