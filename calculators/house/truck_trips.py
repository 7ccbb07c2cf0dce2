"""What pieces of material weigh, and which trip carries them."""

from __future__ import annotations

from typing import Any

from calculators.declaration import refuse
from calculators.writing import NOISE, decimal

WATER = 62.4
OAK = 0.68 * WATER * 1.12
PINE = 0.51 * WATER * 1.12
GYPSUM_EIGHTH = 0.55
PLYWOOD_EIGHTH = 0.4
MOST_TRIPS = 40

WEIGHTS = {
    "drywall-4x8": GYPSUM_EIGHTH * 4 * 32,
    "drywall-4x12": GYPSUM_EIGHTH * 4 * 48,
    "plywood": PLYWOOD_EIGHTH * 6 * 32,
    "lumber-2x4": PINE * 1.5 * 3.5 / 144 * 8,
    "lumber-2x8": PINE * 1.5 * 7.25 / 144 * 16,
    "pail": 60.0,
    "waste-concrete": 2400 / 27,
    "waste-wood": 400.0,
    "waste-drywall": 500.0,
    "waste-mixed": 350.0,
    "other": 0.0,
}
"""Pounds of one, where the crew and its suppliers settle nothing of it."""
NAMES = {
    "strip-flooring": "oak strip, bundle",
    "drywall-4x8": "drywall 1/2 in, 4x8",
    "drywall-4x12": "drywall 1/2 in, 4x12",
    "plywood": "plywood 3/4 in, 4x8",
    "lumber-2x4": "2x4, 8 ft",
    "lumber-2x8": "2x8, 16 ft",
    "concrete-bag": "concrete, bag",
    "mortar-bag": "mortar or plaster, bag",
    "pail": "paint or compound, 5 gal pail",
    "base": "crushed base, 1 cu ft",
    "waste-concrete": "broken concrete, 1 cu ft",
    "waste-wood": "wood waste, 1 cu yd loose",
    "waste-drywall": "drywall waste, 1 cu yd loose",
    "waste-mixed": "mixed waste, 1 cu yd loose",
    "other": "other",
}


def unit_weight(kind: str, settled: dict[str, float]) -> float:
    """The weight in lb of one piece of that kind; 0 for 'other', which is weighed.

    ``settled`` are those that the crew and its suppliers settle. Sources: density of oak (specific gravity 0.68, the
    heavier of red and white) and of southern pine (0.51) at 12 % moisture, Wood Handbook Table 5-3b, from memory;
    gypsum board 0.55 and plywood 0.4 lb/sq ft for each 1/8 in, ASCE 7 Table C3-1 (plywood from memory); loose waste,
    California's and a builders' guide's figures; bags and pails are sold by weight.

    >>> [round(unit_weight(kind, {"mortar-bag": 50}), 1) for kind in ("drywall-4x8", "lumber-2x8", "mortar-bag")]
    [70.4, 43.1, 50]
    """
    return settled[kind] if kind in settled else WEIGHTS[kind]


def settled_weights(
    bundle: float, thickness: float, base: float, concrete_bag: float, mortar_bag: float
) -> dict[str, float]:
    """Pounds of a bundle that covers so many sq ft, of a cubic foot of base, and of bags. Inches, lb a cubic yard.

    >>> round(settled_weights(20, 0.75, 2950, 80, 50)["strip-flooring"], 1)
    59.4
    """
    return {
        "strip-flooring": OAK * bundle * thickness / 12,
        "base": base / 27,
        "concrete-bag": concrete_bag,
        "mortar-bag": mortar_bag,
    }


def lots_of(items: list[dict[str, Any]], settled: dict[str, float]) -> list[dict[str, Any]]:
    """The rows with their unit weights, the heaviest piece first."""
    lots: list[dict[str, Any]] = []
    for item in items:
        each = unit_weight(item["kind"], settled)
        if item["each"] > 0:
            each = item["each"]
        name = item["note"].strip()
        if name == "":
            name = NAMES[item["kind"]]
        if each <= 0:
            refuse("items", f"'{name}' has no weight: weigh one, or read it off the label, and give it")
        place = 0
        for lot in lots:
            if lot["each"] >= each:
                place = place + 1
        lots.insert(place, {"what": name, "count": item["count"], "each": each, "weight": item["count"] * each})
    return lots


def put_on(trip: dict[str, Any], lot: dict[str, Any], left: int, bed: str, room: float) -> int:
    """Put as many of the ``left`` pieces of the lot on that bed of the trip as its room in lb takes; how many."""
    taken = int((room - trip[bed]) / lot["each"] + NOISE)
    if taken > left:
        taken = left
    if taken < 1:
        return 0
    trip[bed] = trip[bed] + taken * lot["each"]
    comma = "" if trip["what"] == "" else ", "
    trip["what"] = trip["what"] + comma + f"{decimal(taken, 0)} x {lot['what']} ({bed})"
    return taken


def is_too_heavy(lot: dict[str, Any], truck_room: float, trailer_room: float) -> bool:
    """Whether one piece of the lot is more than either bed may carry. Pounds."""
    return bool(lot["each"] > max(truck_room, trailer_room) + NOISE)


def loaded(lots: list[dict[str, Any]], truck_room: float, trailer_room: float) -> list[dict[str, Any]]:
    """The trips that carry the lots, each piece where it first fits; those too heavy for both stay. Pounds.

    >>> lot = {"what": "bag", "count": 3, "each": 80.0, "weight": 240.0}
    >>> [trip["what"] for trip in loaded([lot], 100, 100)]
    ['1 x bag (trailer), 1 x bag (truck)', '1 x bag (trailer)']
    """
    trips: list[dict[str, Any]] = []
    for lot in lots:
        left = 0 if is_too_heavy(lot, truck_room, trailer_room) else lot["count"]
        at = 0
        while left > 0:
            if at == MOST_TRIPS:
                refuse("items", f"this is more than {MOST_TRIPS} trips: have it delivered on a larger truck")
            if at == len(trips):
                trips.append({"trip": at + 1, "truck": 0.0, "trailer": 0.0, "what": ""})
            left = left - put_on(trips[at], lot, left, "trailer", trailer_room)
            left = left - put_on(trips[at], lot, left, "truck", truck_room)
            at = at + 1
    return trips
