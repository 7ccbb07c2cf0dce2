"""Which switch or receptacle belongs in a place, and what has to protect it."""

from __future__ import annotations

from typing import Annotated, Any

from calculators.declaration import CREW_RULE, Answer, Citation, Output
from calculators.declaring import Help, calculator, choice, length, yes_no
from calculators.power.lighting_load import Breaker
from calculators.writing import NOISE, TAPE, decimal, tape

ROOMS: dict[str, dict[str, Any]] = {
    "living": {"label": "living room, bedroom, hall, closet", "ground": False, "arc": True, "circuit": 15},
    "kitchen": {"label": "kitchen", "ground": True, "arc": True, "circuit": 20},
    "bathroom": {"label": "bathroom", "ground": True, "arc": False, "circuit": 20},
    "laundry": {"label": "laundry", "ground": True, "arc": True, "circuit": 20},
    "garage": {"label": "garage, shed", "ground": True, "arc": False, "circuit": 15},
    "basement": {"label": "basement, unfinished", "ground": True, "arc": False, "circuit": 15},
    "finished-basement": {"label": "basement, finished", "ground": True, "arc": True, "circuit": 15},
    "crawl-space": {"label": "crawl space", "ground": True, "arc": False, "circuit": 15},
    "outdoors": {"label": "outdoors", "ground": True, "arc": False, "circuit": 15},
}
"""By room: ground-fault and arc-fault protection, single facts of NEC 210.8(A) and 210.12(A), from memory; amperes of
the circuit that its receptacles are on, 210.11(C)(1) to (3) and 210.52(B), as they are quoted."""

NEAR_WATER = 72.0
TUB_ZONE = 36.0
"""No receptacle nearer to a tub or shower, across: NEC 406.9(C) from 2020 on, as it is quoted."""
BASIN_REACH = 36.0
"""One receptacle of a bathroom at most so far from each basin: NEC 210.52(D), as it is quoted."""
TAMPER_HEIGHT = 66.0


def yes_or_no(so: bool) -> str:
    """In words.

    >>> yes_or_no(True)
    'yes'
    """
    return "yes" if so else "no"


def why_none(is_receptacle: bool, room: dict[str, Any], tub: float, breaker: str) -> str:
    """Why no device goes into this place as it is; nothing where one does. ``tub`` in inches.

    >>> why_none(True, ROOMS["bathroom"], 30, "20")
    'none here: within 3 ft of a tub or shower'
    >>> [why_none(True, ROOMS["laundry"], 240, "15"), why_none(False, ROOMS["bathroom"], 30, "15")]
    ['none on this circuit: receptacles of a laundry are on 20 A', '']
    """
    if is_receptacle and tub < TUB_ZONE - TAPE:
        return "none here: within 3 ft of a tub or shower"
    if not is_receptacle and tub <= NOISE:
        return "none here: inside the space of a tub or shower"
    if is_receptacle and breaker == "15" and room["circuit"] == 20:
        return f"none on this circuit: receptacles of a {room['label']} are on 20 A"
    return ""


def said_of(device: str, amps: int, gfci: int, marks: list[str], wet: bool) -> str:
    """The device in words.

    >>> said_of("receptacle", 20, 1, ["TR", "WR"], True)
    'a receptacle with ground-fault device, 20 A, marked TR and WR'
    """
    said = "a switch"
    if device == "three-way":
        said = "a three-way switch"
    if device == "dimmer":
        said = "a dimmer"
    if device == "receptacle":
        said = f"a receptacle with ground-fault device, {amps} A" if gfci > 0 else f"a receptacle, {amps} A"
    if len(marks) > 0:
        said = said + ", marked " + " and ".join(marks)
    if device != "receptacle" and wet:
        said = said + ", in a weatherproof box and cover"
    return said


def circuit_cautions(is_allowed: bool, is_receptacle: bool, tub: float, upstream: bool, weather: bool) -> list[str]:
    """What to watch about the place and what protects it. Inches."""
    cautions = []
    if not is_allowed:
        cautions.append("Leave the place as it is, and ask the electrician before a box is set or a device bought.")
    if is_receptacle and tub < TUB_ZONE - TAPE:
        cautions.append(
            "A bathroom too small for 3 ft has an exception for its far wall: that is the electrician's too."
        )
    if upstream:
        cautions.append("Press the tester's button here: it has to go dead. Then the sticker 'GFCI protected' goes on.")
    if weather:
        cautions.append("A cover goes with it that keeps rain out, where it can be wet also with the plug in.")
    return cautions


def room_cautions(device: str, room: str, sink: float, breaker: str) -> list[str]:
    """What to watch about the room and the kind of device. Inches."""
    cautions = []
    is_receptacle = device == "receptacle"
    if is_receptacle and room == "bathroom" and sink > BASIN_REACH + TAPE:
        cautions.append("One receptacle of a bathroom is within 3 ft of each basin: this one is not it.")
    if is_receptacle and room == "garage" and breaker == "15":
        cautions.append(
            "Where cars stand, a garage has a 20 A circuit of its own for receptacles: ask the electrician."
        )
    if device == "dimmer":
        cautions.append("The dimmer is for this kind of load, and never on a receptacle or a fan.")
    if not is_receptacle:
        cautions.append("A neutral belongs into the box, also where today's switch does not use it.")
    return cautions


@calculator(
    title="Device for a place",
    summary="Which switch or receptacle belongs in a place of a dwelling, its marks and its protection.",
    outputs=(
        Output("answer", "Take", "text"),
        Output("allowed", "A device goes here", "yes-no"),
        Output("marks", "Marks on its face", "text"),
        Output("amps", "Rating", "number", "A", step=1),
        Output("circuit", "Circuit, at least", "number", "A", step=1),
        Output("ground_fault", "Ground-fault protection", "yes-no"),
        Output("arc_fault", "Arc-fault protection of the circuit", "yes-no"),
        Output("receptacles", "Plain receptacles", "count", "each", step=1),
        Output("gfci_devices", "Receptacles with ground-fault device", "count", "each", step=1),
        Output("switches", "Switches", "count", "each", step=1),
        Output("dimmers", "Dimmers", "count", "each", step=1),
    ),
    formula=(
        "No receptacle within 3 ft of a tub or shower. Receptacles of kitchen, bathroom and laundry are on 20 A. "
        "Tamper-resistant up to 5-1/2 ft. Ground-fault protection by the room, where it is damp, or within 6 ft of a "
        "sink, tub or shower. Arc-fault protection by the room. Marked WR where it is damp; a "
        "switch there has a weatherproof box and cover."
    ),
    sources=(
        Citation(
            "nec",
            "210.8(A), 210.11(C), 210.52(B) and (D), 406.9(C), as they are quoted; 404.4, 210.12(A), 406.12, "
            "210.21(B), from memory",
        ),
        CREW_RULE,
    ),
    example={"device": "receptacle", "room": "kitchen", "sink": "4 ft", "tub": "20 ft", "damp": "no", "breaker": "20"},
    other_names=("where is GFCI needed", "AFCI", "tamper-resistant", "outlet near sink", "210.8"),
    cannot_decide=(
        "Which edition the place has adopted, and what its exceptions are. A licensed electrician does the work or "
        "answers for it, and the authority having jurisdiction inspects it. Circuits are proved dead before a hand "
        "goes in."
    ),
)
def device_for_place(
    device: Annotated[
        str,
        choice(
            "It is",
            {
                "receptacle": "a receptacle",
                "switch": "a switch",
                "three-way": "a three-way switch",
                "dimmer": "a dimmer",
            },
            default="receptacle",
        ),
    ],
    room: Annotated[str, choice("Room", {name: each["label"] for name, each in ROOMS.items()}, default="living")],
    sink: Annotated[
        float, length("To the nearest sink", "20 ft, from 0 to 100 ft", "ft-in"), Help("To the edge of its bowl.")
    ],
    tub: Annotated[
        float,
        length("To the nearest tub or shower, across", "20 ft, from 0 to 100 ft", "ft-in"),
        Help("To its outer edge, at whatever height the box is."),
    ],
    height: Annotated[
        float, length("Height above the floor", "16 in, from 0 to 144 in"), Help("To the middle of the box.")
    ],
    damp: Annotated[bool, yes_no("Damp place", default="no")],
    upstream: Annotated[bool, yes_no("Protected already", default="no"), Help("By a breaker or a device before it.")],
    breaker: Breaker,
    alone: Annotated[bool, yes_no("The only one on its circuit, single", default="no")],
) -> Answer:
    """The device for one place of a dwelling, 120 V. Lengths in inches.

    ``upstream`` says that a ground-fault breaker or an earlier device protects it. Where the place or the circuit
    is wrong there is no device, and the answer says why.

    Source: NEC 406.9(C) (none within 3 ft of a tub or shower), 210.11(C) and 210.52(B), (D) (20 A circuits, the
    basin's receptacle), 210.8(A) (rooms; 6 ft from water), as they are quoted; 404.4 (switches that can get wet, or
    in the space of a tub), 406.12 (tamper-resistant to 5-1/2 ft), 210.12(A) (rooms), 406.9 (damp and wet),
    210.21(B)(1) (a single receptacle has the circuit's rating), from memory.

    >>> answer = device_for_place(room="kitchen", breaker="20")
    >>> [answer["marks"], answer["ground_fault"], answer["gfci_devices"], answer["circuit"]]
    ['TR', True, 1, 20]
    >>> answer = device_for_place(room="bathroom")
    >>> [answer["answer"], answer["allowed"], answer["gfci_devices"]]
    ['none on this circuit: receptacles of a bathroom are on 20 A', False, 0]
    """
    is_receptacle = device == "receptacle"
    kind = ROOMS[room]
    why = why_none(is_receptacle, kind, tub, breaker)
    is_allowed = why == ""
    tamper = is_receptacle and height <= TAMPER_HEIGHT + TAPE
    near = min(sink, tub) <= NEAR_WATER + TAPE
    ground = is_receptacle and (kind["ground"] or near or damp)
    wet = room == "outdoors" or damp
    weather = is_receptacle and wet
    arc = kind["arc"]
    circuit = kind["circuit"] if is_receptacle else 15
    amps = 20 if is_receptacle and breaker == "20" and alone else 15
    gfci = 1 if is_allowed and is_receptacle and ground and not upstream else 0
    plain = 1 if is_allowed and is_receptacle and gfci == 0 else 0
    dimmers = 1 if is_allowed and device == "dimmer" else 0
    switches = 1 if is_allowed and not is_receptacle and dimmers == 0 else 0
    marks = (["TR"] if tamper else []) + (["WR"] if weather else [])
    cautions = ["The edition that the place has adopted decides; each newer one asks for more rooms."]
    cautions.extend(circuit_cautions(is_allowed, is_receptacle, tub, ground and upstream, weather))
    cautions.extend(room_cautions(device, room, sink, breaker))
    said = said_of(device, amps, gfci, marks, wet) if is_allowed else why
    return {
        "answer": said,
        "allowed": is_allowed,
        "marks": " and ".join(marks),
        "amps": amps,
        "circuit": circuit,
        "ground_fault": ground,
        "arc_fault": arc,
        "receptacles": plain,
        "gfci_devices": gfci,
        "switches": switches,
        "dimmers": dimmers,
        "cautions": cautions,
        "working": [
            f"room: {kind['label']}; ground-fault {yes_or_no(kind['ground'])} for receptacles, "
            f"arc-fault {yes_or_no(arc)}, receptacles on {decimal(kind['circuit'], 0)} A at least",
            f"within {tape(NEAR_WATER)} of water: {yes_or_no(near)}; to tub or shower {tape(tub)}, at least "
            f"{tape(TUB_ZONE)} for a receptacle",
            f"tamper-resistant up to {tape(TAMPER_HEIGHT)}: {yes_or_no(tamper)}; damp or outdoors: {yes_or_no(wet)}",
        ],
    }
