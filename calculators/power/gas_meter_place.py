"""Whether the place for a gas meter keeps its distances. The utility decides; this is to be ready for its visit."""

from __future__ import annotations

from typing import Any

from calculators.declaration import CREW_RULE, Answer, Calculator, Citation, Input, Output, Rule
from calculators.power.gas_meter_place_drawing import gas_meter_place_drawing
from calculators.writing import TAPE, tape

LAW = "49 CFR 192.353; NFPA 54"
TYPICAL = "typical utility rule"
UTILITIES = "typical utility rules"
CREW = "this crew's rule"


def row(what: str, measured: float, limit: float, rule: str) -> dict[str, Any]:
    """One distance against its limit, inches.

    >>> [row("door", 36, 36, "")["passes"], row("door", 35.9, 36, "")["passes"]]
    [True, False]
    """
    passes = measured >= limit - TAPE
    return {"what": what, "measured": measured, "limit": limit, "passes": passes, "rule": rule}


def gas_meter_place(
    inside: bool = False,
    ignition: float = 60.0,
    opening: float = 48.0,
    electric: float = 60.0,
    corner: float = 36.0,
    vehicles: float = 120.0,
    guarded: bool = False,
    ventilated: bool = True,
    ignition_least: float = 36.0,
    opening_least: float = 36.0,
    electric_least: float = 48.0,
    corner_least: float = 12.0,
    vehicles_least: float = 60.0,
) -> Answer:
    """Each measured distance from the meter against its limit. Lengths in inches.

    Outside, distances run from the relief vent of the regulator in a straight line to the nearest edge of the thing.
    ``ignition`` is any source of flame, spark or great heat; ``opening`` any window that opens, door or air intake.
    A meter inside stands in a ventilated place, and the openings do not count.

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
    faults: list[str] = []
    working: list[str] = []
    for each in rows:
        word = "pass"
        if not each["passes"]:
            word = "fail"
            faults.append(each["what"])
        measured = tape(each["measured"])
        limit = tape(each["limit"])
        working.append(f"{each['what']}: {measured} measured, {limit} least ({each['rule']}): {word}")
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
    verdict = "passes; the utility decides"
    if len(faults) > 0:
        verdict = "fails: " + ", ".join(faults)
    return {
        "verdict": verdict,
        "passes": len(faults) == 0,
        "faults": len(faults),
        "distances": rows,
        "cautions": cautions,
        "working": working,
    }


def _distance(name: str, label: str, default: float, help: str = "") -> Input:
    return Input(name, label, "length", "in", default, 0, 1200, help=help)


def _limit(name: str, label: str, default: float, rule: Rule) -> Input:
    """A limit that the crew or its utility sets: never looser than the law."""
    least = rule.limit if rule.weight == "law" else 0
    return Input(name, label, "length", "in", default, least, 1200, rule=rule)


CALCULATOR = Calculator(
    name="gas-meter-place",
    title="Place for the gas meter",
    trade="power",
    summary="Measured distances from the gas meter against the usual limits: pass or fail, row by row.",
    function=gas_meter_place,
    inputs=(
        Input("inside", "Meter inside the building", "yes-no", default=False),
        _distance(
            "ignition", "To the nearest source of ignition", 60.0, "Burner, air conditioner, switch, light, outlet."
        ),
        _distance("opening", "To the nearest window, door or air intake", 48.0, "From the relief vent, straight."),
        _distance("electric", "To the electric meter", 60.0),
        _distance("corner", "To the corner of the building", 36.0),
        _distance("vehicles", "To where vehicles drive", 120.0),
        Input("guarded", "Guarded by posts", "yes-no", default=False),
        Input("ventilated", "Ventilated, where it is inside", "yes-no", default=True),
        _limit("ignition_least", "Ignition, least", 36.0, Rule("least", 36, LAW)),
        _limit("opening_least", "Opening, least", 36.0, Rule("least", 36, UTILITIES)),
        _limit("electric_least", "Electric meter, least", 48.0, Rule("least", 36, UTILITIES)),
        _limit("corner_least", "Corner, least", 12.0, Rule("least", 12, "common practice", "guidance")),
        _limit("vehicles_least", "Vehicles, least without posts", 60.0, Rule("least", 60, UTILITIES)),
    ),
    outputs=(
        Output("verdict", "This place", "text"),
        Output("passes", "Passes", "yes-no"),
        Output("faults", "Faults", "count", step=1),
        Output(
            "distances",
            "Distances",
            "rows",
            columns=(
                Output("what", "To", "text"),
                Output("measured", "Measured", "length", "in", 0.0625, "tape"),
                Output("limit", "Least", "length", "in", 0.0625, "tape"),
                Output("passes", "Passes", "yes-no"),
                Output("rule", "Rule", "text"),
            ),
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
