"""A driveway approach: concrete, base, forms, stakes and bars, and its slopes against the limits."""

from __future__ import annotations

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
from calculators.declaration import COMMON_PRACTICE, Answer, Calculator, Choice, Citation, Input, Output, Plot, Rule
from calculators.writing import decimal, feet_inches, inches


def side_rise(out: float, height: float) -> float:
    """Slope of a side piece along the curb; 0 where there is none."""
    if out == 0:
        return 0.0
    return height / out


def approach_concrete(
    throat: float,
    depth: float,
    side: str,
    left: float,
    right: float,
    curb_height: float,
    lip: float,
    thickness: float,
    edge_thickness: float,
    edge_width: float,
    edge_taper: float,
    slope: float,
    gutter_slope: float,
    drive_slope: float,
    grade_break: float,
    walk_crosses: bool,
    base_thickness: float,
    base_beyond: float,
    base_loose: float,
    base_weight: float,
    waste: float,
    truck: float,
    bag_yield: float,
    form_curb: bool,
    form_walk: bool,
    stake_spacing: float,
    reinforced: bool,
    bar_spacing: float,
    bar_cover: float,
    bar_lap: float,
    bar_stock: float,
    support_spacing: float,
    bars_a_roll: float,
) -> Answer:
    """Quantities and slopes of one approach.

    Lengths in inches, slopes as ratios, ``base_weight`` in lb a loose cubic yard, ``truck`` in cu ft. The slab's
    thickness is measured square to its surface, the thickened edge straight down. The base lies parallel to the
    slab, and ``base_beyond`` further at each formed edge; corners are left out of that strip.

    A plain slab of 20' x 16', 4 in thick, is 106.7 cu ft (a supplier's worked example):

    >>> answer = approach_concrete(240, 192, "none", 0, 0, 6, 1, 4, 4, 12, 12, 0, 0, 0, 0.08, False, 4, 0, 25, 2950, 5,
    ...     270, 0.6, False, False, 36, False, 24, 3, 24, 240, 24, 3840)
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


GUTTER_WAYS = ("falling to the curb", "rising to the curb")
DRIVE_WAYS = ("rising from the street", "falling from the street")
SIDES = (
    Choice("none", "none: square sides, curb returns"),
    Choice("flare", "flare: runs out to nothing at the walk"),
    Choice("wing", "wing: as wide at the walk as at the curb"),
)

CALCULATOR = Calculator(
    name="approach-concrete",
    title="Concrete for a driveway approach",
    trade="concrete",
    summary="Concrete, base, forms, stakes and bars for one approach, and its slopes against the limits.",
    function=approach_concrete,
    drawing=approach_drawing,
    plots=(
        Plot(
            "Concrete against the throat, for three thicknesses",
            "throat",
            "concrete",
            96,
            288,
            ("thickness", (5, 6, 8)),
        ),
    ),
    inputs=(
        Input("throat", "Throat width, at the walk", "length", "ft-in", 144, 36, 1200, (108, 288)),
        Input("depth", "Depth, from curb line to walk", "length", "ft-in", 72, 24, 480, (36, 180)),
        Input("side", "Sides", "choice", default="flare", choices=SIDES),
        Input("left", "Left side's width at the curb", "length", "ft-in", 60, 0, 240, (0, 120)),
        Input("right", "Right side's width at the curb", "length", "ft-in", 60, 0, 240, (0, 120)),
        Input("curb_height", "Curb above the gutter", "length", "in", 6, 0, 12, (4, 8)),
        Input("lip", "Approach's edge above the gutter", "length", "in", 1, 0, 6, (0, 1.5)),
        Input("thickness", "Slab thickness", "length", "in", 6, 3, 16, (6, 8)),
        Input("edge_thickness", "Thickness at the curb", "length", "in", 8, 3, 24, (6, 12)),
        Input("edge_width", "Width of the thick edge", "length", "in", 12, 0, 60, (6, 24)),
        Input("edge_taper", "Taper behind it", "length", "in", 12, 0, 60, (0, 24)),
        Input("slope", "Rise from curb to walk", "slope", "%", 0.015, 0, 0.2, (0.01, 0.08)),
        Input("gutter_slope", "Slope of the gutter", "slope", "%", 0.02, -0.1, 0.15, (0, 0.06), ways=GUTTER_WAYS),
        Input(
            "drive_slope", "Slope of the drive beyond", "slope", "%", 0.02, -0.3, 0.3, (-0.02, 0.12), ways=DRIVE_WAYS
        ),
        Input(
            "grade_break",
            "Most change of grade",
            "slope",
            "%",
            0.08,
            0.01,
            0.2,
            (0.03, 0.08),
            Rule("most", 0.08, "the road design manual", "guidance"),
            help="3 % suits nearly every car; 6 to 8 % works for most.",
        ),
        Input("walk_crosses", "A public walk crosses it", "yes-no", default=True),
        Input("base_thickness", "Base thickness, compacted", "length", "in", 6, 0, 24, (4, 12)),
        Input("base_beyond", "Base beyond each form", "length", "in", 6, 0, 24, (4, 12)),
        Input("base_loose", "Extra base for compaction", "percent", "%", 25, 0, 60, (15, 35)),
        Input("base_weight", "A loose cubic yard of base weighs", "mass", "lb", 2950, 1500, 4500, (2700, 3300)),
        Input("waste", "Concrete over the measure", "percent", "%", 10, 0, 40, (5, 15)),
        Input("truck", "A truck carries", "volume", "cu yd", 270, 27, 405, (108, 297)),
        Input("bag_yield", "A bag of concrete mix makes", "volume", "cu ft", 0.6, 0.1, 2, (0.3, 0.75)),
        Input("form_curb", "Form along the curb", "yes-no", default=False, help="No: poured against the gutter."),
        Input("form_walk", "Form along the walk", "yes-no", default=True, help="No: poured against the walk."),
        Input("stake_spacing", "Stakes at most apart", "length", "in", 36, 12, 72, (24, 48)),
        Input("reinforced", "Reinforcing bars", "yes-no", default=False),
        Input("bar_spacing", "Bar spacing, both ways", "length", "in", 18, 6, 48, (12, 24)),
        Input("bar_cover", "Bar ends from the edge", "length", "in", 3, 1.5, 6, (2, 4)),
        Input("bar_lap", "Lap of bars", "length", "in", 24, 6, 72, (18, 36)),
        Input("bar_stock", "Bars are long", "length", "ft", 240, 60, 720, (120, 480)),
        Input("support_spacing", "Bar supports apart, both ways", "length", "in", 24, 12, 60, (18, 48)),
        Input("bars_a_roll", "Bar that a roll of tie wire ties", "length", "ft", 3840, 240, 24000),
    ),
    outputs=(
        Output("opening", "Opening at the curb", "length", "ft-in"),
        Output("area", "Area, seen from above", "area", "sq ft", 0.1),
        Output("concrete", "Concrete in place", "volume", "cu yd", 0.01, "up"),
        Output("order", "Concrete to order", "volume", "cu yd", 0.25, "up"),
        Output("loads", "Truck loads", "count", step=1, rounds="up"),
        Output("bags", "The same in bags", "count", "bags", 1, "up"),
        Output("weight", "The order weighs", "mass", "lb", 10, "up"),
        Output("base", "Base in place, compacted", "volume", "cu yd", 0.01, "up"),
        Output("base_loose_volume", "Base to buy, loose", "volume", "cu yd", 0.1, "up"),
        Output("base_tons", "Base to buy", "mass", "ton", 0.1, "up"),
        Output("forms", "Form lumber", "length", "ft", 1, "up"),
        Output("stakes", "Stakes", "count", "stakes", 1, "up"),
        Output("strip", "Isolation strip, where no form stands", "length", "ft", 1, "up"),
        Output("bars", "Reinforcing bar", "length", "ft", 1, "up"),
        Output("supports", "Bar supports", "count", "each", 1, "up"),
        Output("wire", "Tie wire", "count", "roll", 1, "up"),
        Output("drop", "Drop from walk to curb", "length", "in"),
        Output("side_slope", "Slope of the steeper side piece", "slope", "1:n", 0.1, "up"),
        Output("gutter_break", "Change of grade at the gutter", "slope", "%", 0.1, "up"),
        Output("drive_break", "Change of grade at the drive", "slope", "%", 0.1, "up"),
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
)
