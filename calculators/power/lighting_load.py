"""How many lights a circuit and a dimmer carry."""

from __future__ import annotations

from calculators.declaration import COMMON_PRACTICE, Answer, Calculator, Choice, Citation, Input, Output, refuse
from calculators.writing import NOISE, decimal, whole

CONTINUOUS = 0.8
"""A circuit carries 80 % of its breaker for three hours or more: 1 / 125 %."""

VOLTS_MOST = 126.0
"""As measured: a supply of nominally 120 V may be 5 % above it."""


def lighting_load(
    count: float = 6,
    watts: float = 10.0,
    other: float = 0.0,
    breaker: str = "15",
    volts: float = 120.0,
    continuous: bool = True,
    dimmer: float = 150.0,
    cut: float = 0.0,
) -> Answer:
    """The load of the lights on their circuit and their dimmer. Watts, volts; ``cut`` in percent off the dimmer.

    Source: NEC 210.20(A), 210.19(A): 125 % of a continuous load; 210.6(A): 120 V at most.
    The dimmer's rating, and what comes off it where
    several stand in one box, are its maker's.

    >>> answer = lighting_load(count=6, watts=10.0, breaker="15")
    >>> [answer["load"], answer["amps"], answer["capacity"], answer["most_on_circuit"], answer["dimmers"]]
    [60.0, 0.5, 1440.0, 144, 1]
    """
    if volts > VOLTS_MOST:
        refuse(
            "volts",
            f"{decimal(volts, 0)} V: lights of a dwelling are on 120 V between conductors at most (NEC 210.6(A), from "
            "memory). Anything else is the electrician's.",
        )
    amps = float(breaker)
    capacity = amps * volts
    part = "all"
    if continuous:
        capacity = capacity * CONTINUOUS
        part = "80 %"
    load = count * watts + other
    dimmer_holds = dimmer * (100 - cut) / 100
    on_dimmer = whole(dimmer_holds / watts + NOISE, "down")
    if on_dimmer < 1:
        refuse("dimmer", f"The dimmer's {decimal(dimmer_holds, 1)} W do not carry one light of {decimal(watts, 1)} W.")
    room = max(0.0, capacity - other)
    on_circuit = whole(room / watts + NOISE, "down")
    fits = load <= capacity + NOISE
    cautions = []
    if not fits:
        cautions.append(
            f"{decimal(load, 0)} W is more than the {decimal(capacity, 0)} W of the circuit: part the lights."
        )
    return {
        "load": load,
        "amps": load / volts,
        "capacity": capacity,
        "fits": fits,
        "most_on_circuit": on_circuit,
        "dimmer_holds": dimmer_holds,
        "most_on_dimmer": on_dimmer,
        "dimmers": whole(count / on_dimmer - NOISE, "up"),
        "cautions": cautions,
        "working": [
            f"{decimal(count, 0)} x {decimal(watts, 1)} W + {decimal(other, 0)} W = {decimal(load, 1)} W,"
            f" {decimal(load / volts, 2)} A",
            f"circuit: {part} of {decimal(amps, 0)} A x {decimal(volts, 0)} V = {decimal(capacity, 0)} W",
            f"dimmer: {decimal(dimmer, 0)} W less {decimal(cut, 0)} % = {decimal(dimmer_holds, 1)} W:"
            f" {on_dimmer} lights",
        ],
    }


CALCULATOR = Calculator(
    name="lighting-load",
    title="Lights on a circuit and a dimmer",
    trade="power",
    summary="The load of the lights, and how many of them a circuit and a dimmer carry.",
    function=lighting_load,
    inputs=(
        Input("count", "Lights", "count", default=6, least=1, most=400),
        Input(
            "watts",
            "Watts of one light",
            "number",
            "W",
            10.0,
            0.5,
            1000,
            (4, 100),
            help="From its label, not its 'equal to'.",
        ),
        Input("other", "Other load on the circuit", "number", "W", 0.0, 0, 5000),
        Input("breaker", "Breaker", "choice", default="15", choices=(Choice("15", "15 A"), Choice("20", "20 A"))),
        Input("volts", "Voltage", "number", "V", 120.0, 100, 240, (110, 125)),
        Input("continuous", "On for three hours or more", "yes-no", default=True),
        Input(
            "dimmer",
            "Dimmer's rating for these lights",
            "number",
            "W",
            150.0,
            10,
            2000,
            (100, 600),
            help="The figure for LED where they are LED: it is far less than the one for incandescent lamps.",
        ),
        Input(
            "cut",
            "Off the rating, several in one box",
            "percent",
            "%",
            0.0,
            0,
            90,
            help="The maker's sheet says how much, once fins are broken off to set dimmers side by side.",
        ),
    ),
    outputs=(
        Output("load", "Load", "number", "W", 1, "up"),
        Output("amps", "Current", "number", "A", 0.01, "up"),
        Output("capacity", "The circuit carries", "number", "W", 1, "down"),
        Output("fits", "Within the circuit", "yes-no"),
        Output("most_on_circuit", "Most lights on the circuit", "count", step=1, rounds="down"),
        Output("dimmer_holds", "The dimmer carries", "number", "W", 0.1, "down"),
        Output("most_on_dimmer", "Most lights on one dimmer", "count", step=1, rounds="down"),
        Output("dimmers", "Dimmers", "count", "each", step=1, rounds="up"),
    ),
    formula=(
        "Load = lights x watts + other. Circuit = breaker x volts, and 80 % of it for three hours or more. Dimmer = "
        "rating less what comes off where several stand in one box. Lights on either = its watts / watts of one, "
        "rounded down."
    ),
    sources=(
        Citation("nec", "210.19(A), 210.20(A), continuous loads; 210.6(A), 120 V in dwellings; from memory"),
        COMMON_PRACTICE,
    ),
    example={"count": "8", "watts": "12", "other": "0", "dimmer": "150", "cut": "20 %"},
    other_names=("dimmer rating", "dimmer derating", "circuit load", "watts", "breaker"),
    cannot_decide=(
        "What else hangs on the circuit and what the code wants on a circuit of its own. A licensed electrician does "
        "the work or answers for it, and the authority having jurisdiction inspects it. The wire is 14 AWG at least "
        "for 15 A and 12 AWG for 20 A. Circuits are proved dead before a hand goes in."
    ),
)
