"""How many lights a circuit and a dimmer carry."""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output, refuse
from calculators.declaring import Help, calculator, choice, count, number, percent, yes_no
from calculators.writing import NOISE, decimal, whole

CONTINUOUS = 0.8
"""A circuit carries 80 % of its breaker for three hours or more: 1 / 125 %."""

VOLTS_MOST = 126.0
"""As measured: a supply of nominally 120 V may be 5 % above it."""


Breaker = Annotated[str, choice("Breaker", {"15": "15 A", "20": "20 A"}, default="15")]


@calculator(
    title="Lights on a circuit and a dimmer",
    summary="The load of the lights, and how many of them a circuit and a dimmer carry.",
    outputs=(
        Output("load", "Load", "number", "W", step=1, rounds="up"),
        Output("amps", "Current", "number", "A", step=0.01, rounds="up"),
        Output("capacity", "The circuit carries", "number", "W", step=1, rounds="down"),
        Output("fits", "Within the circuit", "yes-no"),
        Output("most_on_circuit", "Most lights on the circuit", "count", step=1, rounds="down"),
        Output("dimmer_holds", "The dimmer carries", "number", "W", step=0.1, rounds="down"),
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
def lighting_load(
    count: Annotated[float, count("Lights", "6, from 1 to 400")],
    watts: Annotated[
        float,
        number("Watts of one light", "10 W, from 0.5 to 1000 W, usually 4 to 100 W"),
        Help("From its label, not its 'equal to'."),
    ],
    other: Annotated[float, number("Other load on the circuit", "0 W, from 0 to 5000 W")],
    breaker: Breaker,
    volts: Annotated[float, number("Voltage", "120 V, from 100 to 240 V, usually 110 to 125 V")],
    continuous: Annotated[bool, yes_no("On for three hours or more", default="yes")],
    dimmer: Annotated[
        float,
        number("Dimmer's rating for these lights", "150 W, from 10 to 2000 W, usually 100 to 600 W"),
        Help("The figure for LED where they are LED: it is far less than the one for incandescent lamps."),
    ],
    cut: Annotated[
        float,
        percent("Off the rating, several in one box", "0, from 0 to 90 %"),
        Help("The maker's sheet says how much, once fins are broken off to set dimmers side by side."),
    ],
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
