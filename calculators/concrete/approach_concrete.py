"""A driveway approach: concrete, base, forms, stakes and bars, and its slopes against the limits."""

from __future__ import annotations

from typing import Annotated

from calculators.concrete.approach_drawing import approach_drawing
from calculators.concrete.approach_limits import access_cautions, grade_cautions, refuse_shape
from calculators.concrete.approach_shape import (
    bars_along,
    bars_down,
    side_area,
    side_edge,
    straight_edge,
    thickening,
    tilt,
)
from calculators.concrete.to_order import (
    CUBIC_FOOT,
    CUBIC_YARD,
    base_pounds,
    base_words,
    loads_cautions,
    more,
    order_weight,
    order_words,
    order_yards,
    stakes,
    supports,
    truck_loads,
)
from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output, Plot
from calculators.declaring import (
    Guidance,
    Help,
    Usual,
    calculator,
    choice,
    length,
    mass,
    percent,
    slope,
    volume,
    yes_no,
)
from calculators.writing import decimal, feet_inches, inches


def side_rise(out: float, height: float) -> float:
    """Slope of a side piece along the curb; 0 where there is none."""
    if out == 0:
        return 0.0
    return height / out


GUTTER_WAYS = ("falling to the curb", "rising to the curb")
DRIVE_WAYS = ("rising from the street", "falling from the street")
SIDES = {
    "none": "none: square sides, curb returns",
    "flare": "flare: runs out to nothing at the walk",
    "wing": "wing: as wide at the walk as at the curb",
}


@calculator(
    title="Concrete for a driveway approach",
    summary="Concrete, base, forms, stakes and bars for one approach, and its slopes against the limits.",
    outputs=(
        Output("opening", "Opening at the curb", "length", "ft-in"),
        Output("area", "Area, seen from above", "area", "sq ft", step=0.1),
        Output("concrete", "Concrete in place", "volume", "cu yd", step=0.01, rounds="up"),
        Output("order", "Concrete to order", "volume", "cu yd", step=1 / 4, rounds="up"),
        Output("loads", "Truck loads", "count", step=1, rounds="up"),
        Output("bags", "The same in bags", "count", "bags", step=1, rounds="up"),
        Output("weight", "The order weighs", "mass", "lb", step=10, rounds="up"),
        Output("base", "Base in place, compacted", "volume", "cu yd", step=0.01, rounds="up"),
        Output("base_loose_volume", "Base to buy, loose", "volume", "cu yd", step=0.1, rounds="up"),
        Output("base_tons", "Base to buy", "mass", "ton", step=0.1, rounds="up"),
        Output("forms", "Form lumber", "length", "ft", step=1, rounds="up"),
        Output("stakes", "Stakes", "count", "stakes", step=1, rounds="up"),
        Output("strip", "Isolation strip, where no form stands", "length", "ft", step=1, rounds="up"),
        Output("bars", "Reinforcing bar", "length", "ft", step=1, rounds="up"),
        Output("supports", "Bar supports", "count", "each", step=1, rounds="up"),
        Output("wire", "Tie wire", "count", "roll", step=1, rounds="up"),
        Output("drop", "Drop from walk to curb", "length", "in"),
        Output("side_slope", "Slope of the steeper side piece", "slope", "1:n", step=0.1, rounds="up"),
        Output("gutter_break", "Change of grade at the gutter", "slope", "%", step=0.1, rounds="up"),
        Output("drive_break", "Change of grade at the drive", "slope", "%", step=0.1, rounds="up"),
        Output("access", "Where a public walk crosses", "text"),
    ),
    formula=(
        "Surface = throat x depth + the side pieces (a flare is half of width x depth, a wing all of it), each "
        "measured on its slope: x sqrt(1 + rise² + side slope²).\n\n"
        "Concrete = surface x thickness + the thick edge (its extra depth x its width, and half of that over the "
        "taper). Order = concrete x (1 + waste), up to the next quarter yard.\n\n"
        "Base to buy = (surface + forms x the strip beyond them) x base thickness x (1 + extra for compaction)."
    ),
    sources=(
        COMMON_PRACTICE,
        Citation("ada-2010", "403.3, 405.2, 406.3"),
        Citation("wsdot-design-manual", "Exhibit 620-1"),
        Citation("txdot-roadway-design", "Appendix C, Section 4"),
    ),
    example={"throat": "14'", "depth": "6'", "side": "flare", "left": "5'", "right": "5'"},
    other_names=("apron", "driveway entrance", "drive approach", "yards of concrete"),
    cannot_decide=(
        "The city's standard drawing sets thickness, width, flares, lip and reinforcement, and its inspector passes "
        "the forms before the pour. Where the two differ, the drawing rules. The slopes here are checks of the single "
        "figures given, not a survey of the walk."
    ),
    drawing=approach_drawing,
    plots=(
        Plot(
            "Concrete against the throat, for three thicknesses",
            x="throat",
            y="concrete",
            start=96,
            end=288,
            curves=("thickness", (5, 6, 8)),
        ),
    ),
)
def approach_concrete(
    throat: Annotated[
        float, length("Throat width, at the walk", "ft-in", default="12 ft", limits="3 to 100 ft"), Usual("9 to 24 ft")
    ],
    depth: Annotated[
        float,
        length("Depth, from curb line to walk", "ft-in", default="6 ft", limits="2 to 40 ft"),
        Usual("3 to 15 ft"),
    ],
    side: Annotated[str, choice("Sides", SIDES, default="flare")],
    left: Annotated[
        float,
        length("Left side's width at the curb", "ft-in", default="5 ft", limits="0 to 20 ft"),
        Usual("0 to 10 ft"),
    ],
    right: Annotated[
        float,
        length("Right side's width at the curb", "ft-in", default="5 ft", limits="0 to 20 ft"),
        Usual("0 to 10 ft"),
    ],
    curb_height: Annotated[
        float, length("Curb above the gutter", "in", default="6 in", limits="0 to 12 in"), Usual("4 to 8 in")
    ],
    lip: Annotated[
        float,
        length("Approach's edge above the gutter", "in", default="1 in", limits="0 to 6 in"),
        Usual("0 to 1-1/2 in"),
    ],
    thickness: Annotated[
        float, length("Slab thickness", "in", default="6 in", limits="3 to 16 in"), Usual("6 to 8 in")
    ],
    edge_thickness: Annotated[
        float, length("Thickness at the curb", "in", default="8 in", limits="3 to 24 in"), Usual("6 to 12 in")
    ],
    edge_width: Annotated[
        float, length("Width of the thick edge", "in", default="12 in", limits="0 to 60 in"), Usual("6 to 24 in")
    ],
    edge_taper: Annotated[
        float, length("Taper behind it", "in", default="12 in", limits="0 to 60 in"), Usual("0 to 24 in")
    ],
    slope: Annotated[
        float, slope("Rise from curb to walk", "%", default="1.5 %", limits="0 to 20 %"), Usual("1 to 8 %")
    ],
    gutter_slope: Annotated[
        float,
        slope(
            "Slope of the gutter",
            "%",
            default="2 % falling to the curb",
            limits="10 % rising to the curb to 15 % falling to the curb",
            ways=GUTTER_WAYS,
        ),
        Usual("0 to 6 % falling to the curb"),
    ],
    drive_slope: Annotated[
        float,
        slope(
            "Slope of the drive beyond",
            "%",
            default="2 % rising from the street",
            limits="30 % falling from the street to 30 % rising from the street",
            ways=DRIVE_WAYS,
        ),
        Usual("2 % falling from the street to 12 % rising from the street"),
    ],
    grade_break: Annotated[
        float,
        slope("Most change of grade", "%", default="8 %", limits="1 to 20 %"),
        Usual("3 to 8 %"),
        Guidance("at most 8 %", "the road design manual"),
        Help("3 % suits nearly every car; 6 to 8 % works for most."),
    ],
    walk_crosses: Annotated[bool, yes_no("A public walk crosses it", default="yes")],
    base_thickness: Annotated[
        float, length("Base thickness, compacted", "in", default="6 in", limits="0 to 24 in"), Usual("4 to 12 in")
    ],
    base_beyond: Annotated[
        float, length("Base beyond each form", "in", default="6 in", limits="0 to 24 in"), Usual("4 to 12 in")
    ],
    base_loose: Annotated[
        float, percent("Extra base for compaction", "%", default="25 %", limits="0 to 60 %"), Usual("15 to 35 %")
    ],
    base_weight: Annotated[
        float,
        mass("A loose cubic yard of base weighs", "lb", default="2950 lb", limits="1500 to 4500 lb"),
        Usual("2700 to 3300 lb"),
    ],
    waste: Annotated[
        float, percent("Concrete over the measure", "%", default="10 %", limits="0 to 40 %"), Usual("5 to 15 %")
    ],
    truck: Annotated[
        float, volume("A truck carries", "cu yd", default="10 cu yd", limits="1 to 15 cu yd"), Usual("4 to 11 cu yd")
    ],
    bag_yield: Annotated[
        float,
        volume("A bag of concrete mix makes", "cu ft", default="0.6 cu ft", limits="0.1 to 2 cu ft"),
        Usual("0.3 to 0.75 cu ft"),
    ],
    form_curb: Annotated[bool, yes_no("Form along the curb", default="no"), Help("No: poured against the gutter.")],
    form_walk: Annotated[bool, yes_no("Form along the walk", default="yes"), Help("No: poured against the walk.")],
    stake_spacing: Annotated[
        float, length("Stakes at most apart", "in", default="36 in", limits="12 to 72 in"), Usual("24 to 48 in")
    ],
    reinforced: Annotated[bool, yes_no("Reinforcing bars", default="no")],
    bar_spacing: Annotated[
        float, length("Bar spacing, both ways", "in", default="18 in", limits="6 to 48 in"), Usual("12 to 24 in")
    ],
    bar_cover: Annotated[
        float, length("Bar ends from the edge", "in", default="3 in", limits="1-1/2 to 6 in"), Usual("2 to 4 in")
    ],
    bar_lap: Annotated[float, length("Lap of bars", "in", default="24 in", limits="6 to 72 in"), Usual("18 to 36 in")],
    bar_stock: Annotated[
        float, length("Bars are long", "ft", default="20 ft", limits="5 to 60 ft"), Usual("10 to 40 ft")
    ],
    support_spacing: Annotated[
        float,
        length("Bar supports apart, both ways", "in", default="24 in", limits="12 to 60 in"),
        Usual("18 to 48 in"),
    ],
    bars_a_roll: Annotated[
        float, length("Bar that a roll of tie wire ties", "ft", default="320 ft", limits="20 to 2000 ft")
    ],
) -> Answer:
    """Quantities and slopes of one approach.

    Lengths in inches, slopes as ratios, ``base_weight`` in lb a loose cubic yard, ``truck`` in cu ft. The slab's
    thickness is measured square to its surface, the thickened edge straight down. The base lies parallel to the
    slab, and ``base_beyond`` further at each formed edge; corners are left out of that strip.

    A plain slab of 20' x 16', 4 in thick, is 106.7 cu ft (a supplier's worked example):

    >>> answer = approach_concrete(throat=240, depth=192, side="none", left=0, right=0, thickness=4, edge_thickness=4,
    ...     slope=0, gutter_slope=0, drive_slope=0, walk_crosses=False, base_thickness=4, base_beyond=0, waste=5,
    ...     form_walk=False, bar_spacing=24)
    >>> round(answer["concrete"], 3)
    106.667
    """
    if side == "none":
        left = 0.0
        right = 0.0
    refuse_shape(left, right, depth, curb_height, lip, thickness, edge_thickness, edge_width, edge_taper)
    left_back = 0.0
    right_back = 0.0
    if side == "wing":
        left_back = left
        right_back = right
    left_rise = side_rise(left, curb_height - lip)
    right_rise = side_rise(right, curb_height - lip)
    rise = max(left_rise, right_rise)
    front = throat + left + right
    back = throat + left_back + right_back

    left_area = side_area(left, left_back, depth)
    right_area = side_area(right, right_back, depth)
    plan = throat * depth + left_area + right_area
    surface = (
        throat * depth * tilt(slope, 0) + left_area * tilt(slope, left_rise) + right_area * tilt(slope, right_rise)
    )
    slab = surface * thickness / CUBIC_FOOT
    edge = thickening(front, back, depth, edge_thickness - thickness, edge_width, edge_taper) / CUBIC_FOOT
    concrete = slab + edge
    order = more(concrete, waste)
    yards = order_yards(order)
    loads = truck_loads(yards, truck)

    edges = [
        side_edge(left, left_back, depth, slope, left_rise),
        side_edge(right, right_back, depth, slope, right_rise),
    ]
    strip = 0.0
    along_walk = straight_edge(throat, left_back, right_back, left_rise, right_rise)
    along_curb = straight_edge(throat, left, right, left_rise, right_rise)
    if form_walk:
        edges.append(along_walk)
    else:
        strip = strip + along_walk
    if form_curb:
        edges.append(along_curb)
    else:
        strip = strip + along_curb
    forms = 0.0
    for one in edges:
        forms = forms + one

    base = (surface + forms * base_beyond) * base_thickness / CUBIC_FOOT
    base_bought = more(base, base_loose)

    bars = 0.0
    under = 0
    if reinforced:
        along = bars_along(front, back, depth, bar_spacing, bar_cover, bar_lap, bar_stock)
        down = bars_down(throat, left, left_back, right, right_back, depth, bar_spacing, bar_cover, bar_lap, bar_stock)
        bars = along + down
        under = supports(plan, support_spacing)

    gutter_break = abs(slope + gutter_slope)
    drive_break = abs(drive_slope - slope)
    cautions: list[str] = []
    access = "no public walk crosses"
    if walk_crosses:
        cautions = access_cautions(side, slope, rise)
        access = "within the limits"
        if len(cautions) > 0:
            access = "too steep where the walk crosses"
    cautions.extend(grade_cautions(gutter_break, drive_break, grade_break))
    cautions.extend(loads_cautions(loads))
    working = [
        f"Opening at the curb: {feet_inches(throat)} throat + {feet_inches(left)} + {feet_inches(right)} "
        f"= {feet_inches(front)}; at the walk {feet_inches(back)}.",
        f"Plan: {feet_inches(depth)} deep x the mean of {feet_inches(front)} and {feet_inches(back)} "
        f"= {decimal(plan / 144, 1)} sq ft; measured on the slopes {decimal(surface / 144, 1)} sq ft.",
        f"Slab: {decimal(surface / 144, 1)} sq ft x {inches(thickness)} = {decimal(slab, 2)} cu ft; "
        f"thickened edge {decimal(edge, 2)} cu ft; together {decimal(concrete, 2)} cu ft.",
        f"27 cu ft a yard: {decimal(concrete, 2)} / 27 = {decimal(concrete / CUBIC_YARD, 2)} cu yd, "
        f"plus {order_words(order, waste)}",
        f"Base: {inches(base_thickness)} {base_words(base, base_loose, base_weight)}",
    ]
    return {
        "opening": front,
        "area": plan / 144,
        "concrete": concrete,
        "order": order,
        "loads": loads,
        "bags": order / bag_yield,
        "weight": order_weight(yards),
        "base": base,
        "base_loose_volume": base_bought,
        "base_tons": base_pounds(base_bought, base_weight),
        "forms": forms,
        "stakes": stakes(edges, stake_spacing),
        "strip": strip,
        "bars": bars,
        "supports": under,
        "wire": bars / bars_a_roll,
        "drop": slope * depth,
        "side_slope": rise,
        "gutter_break": gutter_break,
        "drive_break": drive_break,
        "access": access,
        "cautions": cautions,
        "working": working,
    }
