"""A driveway approach: concrete, base, forms, stakes and bars, and its slopes against the limits."""

from __future__ import annotations

from typing import Annotated

from calculators.concrete import slab_inputs as slab
from calculators.concrete.approach_drawing import approach_drawing
from calculators.concrete.approach_limits import access_of, grade_cautions, refuse_shape
from calculators.concrete.approach_shape import (
    bars_both_ways,
    side_area,
    side_edge,
    side_rise,
    straight_edge,
    thickening,
    tilt,
)
from calculators.concrete.to_order import (
    CUBIC_FOOT,
    CUBIC_YARD,
    base_words,
    bought,
    loads_cautions,
    order_words,
    stakes,
    supports,
)
from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output, Plot
from calculators.declaring import Guidance, Help, calculator, choice, length, slope, yes_no
from calculators.writing import decimal, feet_inches, inches

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
        *slab.BOUGHT,
        *slab.EDGES_AND_BARS,
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
        float, length("Throat width, at the walk", "12 ft, from 3 to 100 ft, usually 9 to 24 ft", "ft-in")
    ],
    depth: Annotated[
        float, length("Depth, from curb line to walk", "6 ft, from 2 to 40 ft, usually 3 to 15 ft", "ft-in")
    ],
    side: Annotated[str, choice("Sides", SIDES, default="flare")],
    left: Annotated[
        float, length("Left side's width at the curb", "5 ft, from 0 to 20 ft, usually 0 to 10 ft", "ft-in")
    ],
    right: Annotated[
        float, length("Right side's width at the curb", "5 ft, from 0 to 20 ft, usually 0 to 10 ft", "ft-in")
    ],
    curb_height: Annotated[float, length("Curb above the gutter", "6 in, from 0 to 12 in, usually 4 to 8 in")],
    lip: Annotated[float, length("Approach's edge above the gutter", "1 in, from 0 to 6 in, usually 0 to 1-1/2 in")],
    thickness: Annotated[float, length("Slab thickness", "6 in, from 3 to 16 in, usually 6 to 8 in")],
    edge_thickness: Annotated[float, length("Thickness at the curb", "8 in, from 3 to 24 in, usually 6 to 12 in")],
    edge_width: Annotated[float, length("Width of the thick edge", "12 in, from 0 to 60 in, usually 6 to 24 in")],
    edge_taper: Annotated[float, length("Taper behind it", "12 in, from 0 to 60 in, usually 0 to 24 in")],
    slope: Annotated[float, slope("Rise from curb to walk", "1.5 %, from 0 to 20 %, usually 1 to 8 %")],
    gutter_slope: Annotated[
        float,
        slope(
            "Slope of the gutter",
            "2 % falling to the curb, from 10 % rising to the curb to 15 % falling to the curb, "
            "usually 0 to 6 % falling to the curb",
            "%",
            ways=GUTTER_WAYS,
        ),
    ],
    drive_slope: Annotated[
        float,
        slope(
            "Slope of the drive beyond",
            "2 % rising from the street, from 30 % falling from the street to 30 % rising from the street, "
            "usually 2 % falling from the street to 12 % rising from the street",
            "%",
            ways=DRIVE_WAYS,
        ),
    ],
    grade_break: Annotated[
        float,
        slope("Most change of grade", "8 %, from 1 to 20 %, usually 3 to 8 %"),
        Guidance("at most 8 %", "the road design manual"),
        Help("3 % suits nearly every car; 6 to 8 % works for most."),
    ],
    walk_crosses: Annotated[bool, yes_no("A public walk crosses it", default="yes")],
    base_thickness: Annotated[float, length("Base thickness, compacted", "6 in, from 0 to 24 in, usually 4 to 12 in")],
    base_beyond: slab.BaseBeyond,
    base_loose: slab.BaseLoose,
    base_weight: slab.BaseWeight,
    waste: slab.Waste,
    truck: slab.Truck,
    bag_yield: slab.BagYield,
    form_curb: Annotated[bool, yes_no("Form along the curb", default="no"), Help("No: poured against the gutter.")],
    form_walk: Annotated[bool, yes_no("Form along the walk", default="yes"), Help("No: poured against the walk.")],
    stake_spacing: slab.StakeSpacing,
    reinforced: slab.Reinforced,
    bar_spacing: slab.BarSpacing,
    bar_cover: Annotated[float, length("Bar ends from the edge", "3 in, from 1-1/2 to 6 in, usually 2 to 4 in")],
    bar_lap: slab.BarLap,
    bar_stock: slab.BarStock,
    support_spacing: slab.SupportSpacing,
    bars_a_roll: slab.BarsARoll,
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
    left = 0.0 if side == "none" else left
    right = 0.0 if side == "none" else right
    refuse_shape(left, right, depth, curb_height, lip, thickness, edge_thickness, edge_width, edge_taper)
    left_back = left if side == "wing" else 0.0
    right_back = right if side == "wing" else 0.0
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

    along_walk = straight_edge(throat, left_back, right_back, left_rise, right_rise)
    along_curb = straight_edge(throat, left, right, left_rise, right_rise)
    edges = [side_edge(left, left_back, depth, slope, left_rise)]
    edges.append(side_edge(right, right_back, depth, slope, right_rise))
    if form_walk:
        edges.append(along_walk)
    if form_curb:
        edges.append(along_curb)
    strip = (0.0 if form_walk else along_walk) + (0.0 if form_curb else along_curb)
    forms = sum(edges)
    base = (surface + forms * base_beyond) * base_thickness / CUBIC_FOOT
    to_buy = bought(concrete, waste, truck, bag_yield, base, base_loose, base_weight)

    bars = 0.0
    under = supports(plan, support_spacing) if reinforced else 0
    if reinforced:
        bars = bars_both_ways(
            throat, left, left_back, right, right_back, depth, bar_spacing, bar_cover, bar_lap, bar_stock
        )

    gutter_break = abs(slope + gutter_slope)
    drive_break = abs(drive_slope - slope)
    access, cautions = access_of(walk_crosses, side, slope, rise)
    cautions.extend(grade_cautions(gutter_break, drive_break, grade_break))
    cautions.extend(loads_cautions(to_buy["loads"]))
    working = [
        f"Opening at the curb: {feet_inches(throat)} throat + {feet_inches(left)} + {feet_inches(right)} "
        f"= {feet_inches(front)}; at the walk {feet_inches(back)}.",
        f"Plan: {feet_inches(depth)} deep x the mean of {feet_inches(front)} and {feet_inches(back)} "
        f"= {decimal(plan / 144, 1)} sq ft; measured on the slopes {decimal(surface / 144, 1)} sq ft.",
        f"Slab: {decimal(surface / 144, 1)} sq ft x {inches(thickness)} = {decimal(slab, 2)} cu ft; "
        f"thickened edge {decimal(edge, 2)} cu ft; together {decimal(concrete, 2)} cu ft.",
        f"27 cu ft a yard: {decimal(concrete, 2)} / 27 = {decimal(concrete / CUBIC_YARD, 2)} cu yd, "
        f"plus {order_words(to_buy['order'], waste)}",
        f"Base: {inches(base_thickness)} {base_words(base, base_loose, base_weight)}",
    ]
    return {
        "opening": front,
        "area": plan / 144,
        **to_buy,
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
