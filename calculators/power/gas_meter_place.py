"""Whether the place for a gas meter keeps its distances. The utility decides; this is to be ready for its visit."""

from __future__ import annotations

from typing import Annotated, Any

from calculators.declaration import CREW_RULE, Answer, Citation, Output, output_rows
from calculators.declaring import Guidance, Help, Law, calculator, length, yes_no
from calculators.distances import VERDICT, distance, failing, outcome, verdict
from calculators.power.gas_meter_place_drawing import gas_meter_place_drawing
from calculators.writing import TAPE, tape

LAW = "49 CFR 192.353; NFPA 54"
TYPICAL = "typical utility rule"
CREW = "this crew's rule"


def row(what: str, measured: float, limit: float, rule: str) -> dict[str, Any]:
    """One distance against its limit, inches.

    >>> [row("door", 36, 36, "")["passes"], row("door", 35.9, 36, "")["passes"]]
    [True, False]
    """
    passes = measured >= limit - TAPE
    return {"what": what, "measured": measured, "limit": limit, "passes": passes, "rule": rule}


@calculator(
    title="Place for the gas meter",
    summary="Measured distances from the gas meter against the usual limits: pass or fail, row by row.",
    outputs=(
        Output("verdict", "This place", "text"),
        *VERDICT,
        output_rows(
            "distances",
            "Distances",
            Output("what", "To", "text"),
            Output("measured", "Measured", "length", "in", step=1 / 16, rounds="tape"),
            Output("limit", "Least", "length", "in", step=1 / 16, rounds="tape"),
            Output("passes", "Passes", "yes-no"),
            Output("rule", "Rule", "text"),
        ),
    ),
    formula="Each distance measured is at least its limit. Inside, the place is ventilated as well.",
    sources=(
        Citation("cfr-192-353", "(a), (c)"),
        Citation("nfpa-54", "5.7"),
        Citation("gas-utility-rules", "meter location; typical, each utility has its own"),
        CREW_RULE,
    ),
    example={
        "inside": "no",
        "ignition": "60 in",
        "opening": "48 in",
        "electric": "60 in",
        "corner": "36 in",
        "vehicles": "120 in",
        "ventilated": "yes",
    },
    other_names=("gas meter location", "meter set", "regulator vent", "gas service", "bollard"),
    cannot_decide=(
        "Where the meter goes. The gas utility decides, sets it and turns the gas on; a licensed fitter runs and tests "
        "the pipe; the authority having jurisdiction inspects it. Its own sheet of clearances wins over these figures."
    ),
    drawing=gas_meter_place_drawing,
)
def gas_meter_place(
    inside: Annotated[bool, yes_no("Meter inside the building", default="no")],
    ignition: Annotated[
        float,
        distance("To the nearest source of ignition", "60 in"),
        Help("Burner, air conditioner, switch, light, outlet."),
    ],
    opening: Annotated[
        float, distance("To the nearest window, door or air intake", "48 in"), Help("From the relief vent, straight.")
    ],
    electric: Annotated[float, distance("To the electric meter", "60 in")],
    corner: Annotated[float, distance("To the corner of the building", "36 in")],
    vehicles: Annotated[float, distance("To where vehicles drive", "120 in")],
    guarded: Annotated[bool, yes_no("Guarded by posts", default="no")],
    ventilated: Annotated[bool, yes_no("Ventilated, where it is inside", default="yes")],
    ignition_least: Annotated[
        float,
        length("Ignition, least", "36 in, from 36 in to 100 ft"),
        Law("at least 36 in", "49 CFR 192.353; NFPA 54"),
    ],
    opening_least: Annotated[
        float, length("Opening, least", "36 in, from 36 in to 100 ft"), Law("at least 36 in", "typical utility rules")
    ],
    electric_least: Annotated[
        float,
        length("Electric meter, least", "48 in, from 36 in to 100 ft"),
        Law("at least 36 in", "typical utility rules"),
    ],
    corner_least: Annotated[float, distance("Corner, least", "12 in"), Guidance("at least 12 in", "common practice")],
    vehicles_least: Annotated[
        float,
        length("Vehicles, least without posts", "60 in, from 60 in to 100 ft"),
        Law("at least 60 in", "typical utility rules"),
    ],
) -> Answer:
    """Each measured distance from the meter against its limit. Lengths in inches.

    Outside, distances run from the relief vent of the regulator in a straight line to the nearest edge of the
    thing. Inside, the openings do not count.

    Source: 49 CFR 192.353(a), (c): protected from vehicles and corrosion, 3 ft from ignition, ventilated when inside.
    NFPA 54 5.7: 3 ft from ignition. Openings and the electric meter: typical utility rules, which differ.

    >>> answer = gas_meter_place(opening=30)
    >>> [answer["passes"], answer["faults"], answer["verdict"]]
    [False, 1, 'fails: window, door or air intake']
    """
    rows = [row("source of ignition", ignition, ignition_least, LAW)]
    if not inside:
        rows.append(row("window, door or air intake", opening, opening_least, TYPICAL))
    rows.append(row("electric meter", electric, electric_least, TYPICAL))
    rows.append(row("corner of the building", corner, corner_least, CREW))
    if not guarded:
        rows.append(row("where vehicles drive", vehicles, vehicles_least, TYPICAL))
    faults = failing(rows)
    working: list[str] = []
    for each in rows:
        measured = f"{tape(each['measured'])} measured, {tape(each['limit'])} least"
        working.append(f"{each['what']}: {measured} ({each['rule']}): {outcome(each)}")
    if inside and not ventilated:
        faults.append("no ventilation")
        working.append("inside without ventilation (49 CFR 192.353(c)): fail")
    cautions = [
        "The utility sets the meter and a licensed fitter runs the pipe: nobody of the crew opens a gas line.",
        "Gas that is smelled: no switch, no flame, no telephone; everybody out, then call the utility from away.",
    ]
    if inside:
        cautions.append("Most utilities set no meter indoors any more: ask before anything is built for it.")
    if not guarded and vehicles < vehicles_least - TAPE:
        cautions.append("Posts in concrete guard a meter where a vehicle can reach it (49 CFR 192.353(a)).")
    return {
        "verdict": verdict(faults, "passes; the utility decides"),
        "passes": len(faults) == 0,
        "faults": len(faults),
        "distances": rows,
        "cautions": cautions,
        "working": working,
    }
