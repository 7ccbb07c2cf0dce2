"""Which switch or receptacle belongs in a place, and what has to protect it."""

from __future__ import annotations

from typing import Any

from calculators.declaration import CREW_RULE, Answer, Calculator, Choice, Citation, Input, Output
from calculators.writing import NOISE, inches

ROOMS: list[dict[str, Any]] = [
    {"name": "living", "label": "living room, bedroom, hall, closet", "ground": False, "arc": True},
    {"name": "kitchen", "label": "kitchen", "ground": True, "arc": True},
    {"name": "bathroom", "label": "bathroom", "ground": True, "arc": False},
    {"name": "laundry", "label": "laundry", "ground": True, "arc": True},
    {"name": "garage", "label": "garage, shed", "ground": True, "arc": False},
    {"name": "basement", "label": "basement, unfinished", "ground": True, "arc": False},
    {"name": "finished-basement", "label": "basement, finished", "ground": True, "arc": True},
    {"name": "crawl-space", "label": "crawl space", "ground": True, "arc": False},
    {"name": "outdoors", "label": "outdoors", "ground": True, "arc": False},
]
"""Ground-fault and arc-fault protection by room: single facts of NEC 210.8(A) and 210.12(A), from memory."""

NEAR_WATER = 72.0
TAMPER_HEIGHT = 66.0


def room_of(name: str) -> dict[str, Any]:
    """The entry of a room; the strictest kind where it is not known.

    >>> [room_of("living")["ground"], room_of("kitchen")["arc"]]
    [False, True]
    """
    for each in ROOMS:
        if each["name"] == name:
            return each
    return {"name": name, "label": name, "ground": True, "arc": True}


def yes_no(so: bool) -> str:
    """In words.

    >>> yes_no(True)
    'yes'
    """
    if so:
        return "yes"
    return "no"


def device_for_place(
    device: str = "receptacle",
    room: str = "living",
    water: float = 240.0,
    height: float = 16.0,
    damp: bool = False,
    upstream: bool = False,
    breaker: str = "15",
    alone: bool = False,
) -> Answer:
    """The device for one place of a dwelling, 120 V. Lengths in inches.

    ``water`` runs from the receptacle to the nearest sink, tub or shower, ``height`` from the floor. ``upstream`` says
    that a ground-fault breaker or an earlier device protects it. ``alone`` is a single receptacle that is the only one
    on its circuit.

    Source: NEC 406.12 (tamper-resistant to 5-1/2 ft), 210.8(A) (rooms; 6 ft from water), 210.12(A) (rooms), 406.9
    (damp and wet), 210.21(B)(1) (a single receptacle has the circuit's rating); from memory.

    >>> answer = device_for_place(room="kitchen")
    >>> [answer["marks"], answer["ground_fault"], answer["gfci_devices"]]
    ['TR', True, 1]
    """
    is_receptacle = device == "receptacle"
    kind = room_of(room)
    outdoors = room == "outdoors"
    tamper = is_receptacle and height <= TAMPER_HEIGHT + NOISE
    ground = is_receptacle and (kind["ground"] or water <= NEAR_WATER + NOISE)
    weather = is_receptacle and (outdoors or damp)
    arc = kind["arc"]
    amps = 15
    if is_receptacle and breaker == "20" and alone:
        amps = 20
    gfci = 0
    plain = 0
    switches = 0
    dimmers = 0
    if is_receptacle:
        if ground and not upstream:
            gfci = 1
        else:
            plain = 1
    elif device == "dimmer":
        dimmers = 1
    else:
        switches = 1
    marks: list[str] = []
    if tamper:
        marks.append("TR")
    if weather:
        marks.append("WR")
    cautions = ["The edition that the place has adopted decides; each newer one asks for more rooms."]
    if ground and upstream:
        cautions.append("Press the tester's button here: it has to go dead. Then the sticker 'GFCI protected' goes on.")
    if weather:
        cautions.append("A cover goes with it that keeps rain out, where it can be wet also with the plug in.")
    if is_receptacle and room == "kitchen" and breaker == "15":
        cautions.append("Receptacles at the counter are on 20 A circuits of their own: ask the electrician.")
    if room == "bathroom" and water <= 36.0 and is_receptacle:
        cautions.append("None inside the zone of tub or shower: ask the electrician before a box is set.")
    if device == "dimmer":
        cautions.append("The dimmer is for this kind of load, and never on a receptacle or a fan.")
    if not is_receptacle:
        cautions.append("A neutral belongs into the box, also where today's switch does not use it.")
    said = "a switch"
    if device == "three-way":
        said = "a three-way switch"
    if device == "dimmer":
        said = "a dimmer"
    if is_receptacle:
        said = "a receptacle"
        if gfci > 0:
            said = "a receptacle with ground-fault device"
        said = said + f", {amps} A"
    if len(marks) > 0:
        said = said + ", marked " + " and ".join(marks)
    water_word = yes_no(is_receptacle and water <= NEAR_WATER + NOISE)
    ground_word = yes_no(kind["ground"])
    arc_word = yes_no(arc)
    tamper_word = yes_no(tamper)
    weather_word = yes_no(weather)
    return {
        "answer": said,
        "marks": " and ".join(marks),
        "amps": amps,
        "ground_fault": ground,
        "arc_fault": arc,
        "receptacles": plain,
        "gfci_devices": gfci,
        "switches": switches,
        "dimmers": dimmers,
        "cautions": cautions,
        "working": [
            f"room: {kind['label']}; ground-fault {ground_word} for receptacles, arc-fault {arc_word}",
            f"within {inches(NEAR_WATER)} of water: {water_word}",
            f"tamper-resistant up to {inches(TAMPER_HEIGHT)}: {tamper_word}; damp or outdoors: {weather_word}",
        ],
    }


CALCULATOR = Calculator(
    name="device-for-place",
    title="Device for a place",
    trade="power",
    summary="Which switch or receptacle belongs in a place of a dwelling, its marks and its protection.",
    function=device_for_place,
    inputs=(
        Input(
            "device",
            "It is",
            "choice",
            default="receptacle",
            choices=(
                Choice("receptacle", "a receptacle"),
                Choice("switch", "a switch"),
                Choice("three-way", "a three-way switch"),
                Choice("dimmer", "a dimmer"),
            ),
        ),
        Input(
            "room",
            "Room",
            "choice",
            default="living",
            choices=tuple(Choice(each["name"], each["label"]) for each in ROOMS),
        ),
        Input("water", "To the nearest sink, tub or shower", "length", "ft-in", 240.0, 0, 1200),
        Input("height", "Height above the floor", "length", "in", 16.0, 0, 144, help="To the middle of the box."),
        Input("damp", "Damp place", "yes-no", default=False),
        Input("upstream", "Protected already", "yes-no", default=False, help="By a breaker or a device before it."),
        Input("breaker", "Breaker", "choice", default="15", choices=(Choice("15", "15 A"), Choice("20", "20 A"))),
        Input("alone", "The only one on its circuit, single", "yes-no", default=False),
    ),
    outputs=(
        Output("answer", "Take", "text"),
        Output("marks", "Marks on its face", "text"),
        Output("amps", "Rating", "number", "A", 1),
        Output("ground_fault", "Ground-fault protection", "yes-no"),
        Output("arc_fault", "Arc-fault protection of the circuit", "yes-no"),
        Output("receptacles", "Plain receptacles", "count", "each", 1),
        Output("gfci_devices", "Receptacles with ground-fault device", "count", "each", 1),
        Output("switches", "Switches", "count", "each", 1),
        Output("dimmers", "Dimmers", "count", "each", 1),
    ),
    formula=(
        "Tamper-resistant up to 5-1/2 ft. Ground-fault protection by the room, or within 6 ft of a sink, tub or "
        "shower. Arc-fault protection by the room. Marked WR where it is damp."
    ),
    sources=(
        Citation(
            "nec",
            "210.8(A), as places quote it; 210.12(A), 406.9, 406.12, 210.21(B), from memory",
        ),
        CREW_RULE,
    ),
    example={"room": "kitchen", "water": "4 ft", "breaker": "20"},
    other_names=("where is GFCI needed", "AFCI", "tamper-resistant", "outlet near sink", "210.8"),
    cannot_decide=(
        "Which edition the place has adopted, and what its exceptions are. A licensed electrician does the work or "
        "answers for it, and the authority having jurisdiction inspects it. Circuits are proved dead before a hand "
        "goes in."
    ),
)
