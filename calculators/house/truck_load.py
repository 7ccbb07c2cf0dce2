"""What a load weighs, what truck and trailer may carry, and how many trips that makes.

A truck is full by weight long before it is full by eye. The label on the driver's door says what people and cargo
together may weigh, and the tongue of a loaded trailer counts against it.
"""

from __future__ import annotations

from typing import Annotated, Any, TypedDict

from calculators.concrete.slab_inputs import BaseWeight
from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, output_rows, refuse
from calculators.declaring import Help, area, calculator, choice, count, length, mass, percent, rows, text, yes_no
from calculators.house.truck_trips import NAMES, is_too_heavy, loaded, lots_of, settled_weights
from calculators.writing import decimal


class LoadItem(TypedDict):
    """Something that goes onto the truck."""

    kind: Annotated[str, choice("What", {kind: NAMES[kind] for kind in NAMES})]
    note: Annotated[str, text("Its name", default=""), Help("For 'other', and where a name helps.")]
    count: Annotated[float, count("How many", "1, from 1 to 200")]
    each: Annotated[
        float,
        mass("Weight of one", "0, from 0 to 5000 lb"),
        Help("Off the label or the scale. 0 takes the book's weight."),
    ]


@calculator(
    title="Truck load",
    summary="What a list of material or waste weighs, what truck and trailer may carry, and in how many trips.",
    outputs=(
        Output("result", "This list", "text"),
        Output("trips", "Trips", "count", step=1, rounds="up"),
        Output("total", "The list weighs", "mass", "lb", step=1, rounds="up"),
        Output("pieces", "Pieces", "count", step=1),
        Output("truck_room", "Room in the truck", "mass", "lb", step=1, rounds="down"),
        Output("trailer_room", "Room on the trailer", "mass", "lb", step=1, rounds="down"),
        Output("room", "Room in one trip", "mass", "lb", step=1, rounds="down"),
        Output("too_heavy", "Pieces too heavy for both", "count", step=1),
        output_rows(
            "loads",
            "Trip by trip",
            Output("trip", "Trip", "count", step=1),
            Output("truck", "In the truck", "mass", "lb", step=1, rounds="up"),
            Output("trailer", "On the trailer", "mass", "lb", step=1, rounds="up"),
            Output("what", "What", "text"),
        ),
        output_rows(
            "weights",
            "Weights",
            Output("what", "What", "text"),
            Output("count", "How many", "count", step=1),
            Output("each", "Weight of one", "mass", "lb", step=0.1, rounds="up"),
            Output("weight", "Together", "mass", "lb", step=1, rounds="up"),
        ),
    ),
    formula=(
        "Weight = count x weight of one, summed. Truck's room = payload less the reserve - people and tools - tongue"
        " share x loaded trailer. Trailer's room = its most less the reserve - its empty weight. The heaviest pieces"
        " are loaded first, each where it first fits; trips are counted."
    ),
    sources=(
        Citation("wood-handbook", "Table 5-3b (from memory), at 12 % moisture"),
        Citation("asce-7", "Table C3-1"),
        Citation("wsdot-design-manual", "Chapter 620"),
        Citation("waste-weights-state", "construction debris, loose"),
        Citation("waste-weights-guide", "Table 2, as a training sheet quotes it"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={
        "items": [
            {"kind": "strip-flooring", "count": "30"},
            {"kind": "lumber-2x8", "count": "6"},
            {"kind": "concrete-bag", "count": "10"},
        ]
    },
    other_names=("payload", "how many trips", "trailer load", "weight of materials", "dump run"),
    cannot_decide=(
        "Whether the load fits by length and height, how it is tied, and what each axle and tire carries: the labels,"
        " the scale and the law of the road. A wet load weighs more than the book says."
    ),
)
def truck_load(
    items: Annotated[list[dict[str, Any]], rows("On the list", LoadItem)],
    payload: Annotated[
        float,
        mass("Payload on the door label", "1500 lb, from 500 to 15000 lb, usually 800 to 4500 lb"),
        Help("The label says what people and cargo together may weigh."),
    ],
    aboard: Annotated[float, mass("People and tools in the truck", "450 lb, from 0 to 2000 lb")],
    trailer: Annotated[bool, yes_no("With the trailer", default="yes")],
    trailer_gross: Annotated[
        float,
        mass("Loaded trailer at most", "2990 lb, from 500 to 15000 lb"),
        Help("The least of the trailer's plate, the hitch's stamp and what the truck may tow."),
    ],
    trailer_empty: Annotated[float, mass("Empty trailer", "900 lb, from 50 to 5000 lb")],
    tongue: Annotated[float, percent("Tongue's share of the loaded trailer", "12 %, from 0 to 30 %")],
    margin: Annotated[float, percent("Kept in reserve", "10 %, from 0 to 50 %")],
    bundle_coverage: Annotated[
        float, area("Floor that a bundle covers", "20 sq ft, from 1 to 100 sq ft, usually 15 to 30 sq ft")
    ],
    strip_thickness: Annotated[float, length("Thickness of the strip", "3/4 in, from 5/16 to 1-1/8 in")],
    base_weight: BaseWeight,
    concrete_bag: Annotated[
        float, mass("A bag of concrete mix weighs", "80 lb, from 20 to 120 lb, usually 40 to 94 lb")
    ],
    mortar_bag: Annotated[
        float, mass("A bag of mortar or plaster weighs", "50 lb, from 10 to 120 lb, usually 25 to 94 lb")
    ],
) -> Answer:
    """Weight of a load and the trips it takes with this truck and trailer, heaviest pieces first.

    Weights in lb; ``each`` of 0 takes the weight of the book. Each piece goes where it first fits, so the trips are
    enough and may be one more than the fewest. Refused above 40 trips.

    >>> rows = [{"kind": "strip-flooring", "note": "", "count": 30, "each": 0}]
    >>> found = truck_load(items=rows)
    >>> [round(found["total"]), round(found["truck_room"]), round(found["trailer_room"]), found["trips"]]
    [1782, 541, 1791, 1]
    """
    if len(items) == 0:
        refuse("items", "nothing is on the list: give at least one line")
    share = 1 - margin / 100
    truck_room = payload * share - aboard
    trailer_room = 0.0
    if trailer:
        truck_room = truck_room - trailer_gross * tongue / 100
        trailer_room = trailer_gross * share - trailer_empty
        if trailer_room <= 0:
            refuse("trailer_empty", "the empty trailer weighs as much as it may weigh loaded: read its plate again")
    if truck_room < 0:
        refuse("aboard", "people, tools and the trailer's tongue alone are more than the door label allows")
    lots = lots_of(items, settled_weights(bundle_coverage, strip_thickness, base_weight, concrete_bag, mortar_bag))
    trips = loaded(lots, truck_room, trailer_room)
    total = 0.0
    pieces = 0
    too_heavy = 0
    cautions = []
    working = []
    for lot in lots:
        total = total + lot["weight"]
        pieces = pieces + lot["count"]
        working.append(
            f"{lot['what']}: {decimal(lot['count'], 0)} x {decimal(lot['each'], 1)} lb = {decimal(lot['weight'], 0)} lb"
        )
        if is_too_heavy(lot, truck_room, trailer_room):
            too_heavy = too_heavy + lot["count"]
            cautions.append(f"One piece of '{lot['what']}' is more than truck or trailer may carry: have it delivered.")
    working.append(
        f"truck: payload {decimal(payload, 0)} lb less {decimal(margin, 0)} % - aboard {decimal(aboard, 0)} lb"
        f" - tongue of the trailer = {decimal(truck_room, 0)} lb"
    )
    if trailer:
        working.append(
            f"trailer: {decimal(trailer_gross, 0)} lb less {decimal(margin, 0)} %"
            f" - empty {decimal(trailer_empty, 0)} lb = {decimal(trailer_room, 0)} lb"
        )
        if tongue < 10 or tongue > 15:
            cautions.append("A tongue outside 10 to 15 % of the trailer's weight sways or lifts the front axle.")
    count = len(trips)
    result = f"{count} trips"
    if count == 1:
        result = "one trip"
    if count == 0:
        result = "nothing that this truck can carry"
    if count > 2:
        cautions.append("Three trips or more: ask what a delivery costs before anybody drives.")
    return {
        "result": result,
        "trips": count,
        "total": total,
        "pieces": pieces,
        "truck_room": truck_room,
        "trailer_room": trailer_room,
        "room": truck_room + trailer_room,
        "too_heavy": too_heavy,
        "loads": trips,
        "weights": lots,
        "cautions": cautions,
        "working": working,
    }
