"""A rectangular slab on ground: concrete, base, forms, stakes and bars."""

from __future__ import annotations

from math import sqrt

from calculators.concrete.approach_shape import bars_along, bars_down
from calculators.concrete.slab_drawing import slab_drawing
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
from calculators.declaration import COMMON_PRACTICE, Answer, Calculator, Citation, Input, Output, Plot, Rule
from calculators.writing import decimal, feet_inches, inches, whole


def slab_concrete(
    length: float,
    width: float,
    thickness: float,
    fall: float,
    ends: float,
    sides: float,
    base_thickness: float,
    base_beyond: float,
    base_loose: float,
    base_weight: float,
    waste: float,
    truck: float,
    bag_yield: float,
    stake_spacing: float,
    board: float,
    reinforced: bool,
    bar_spacing: float,
    bar_cover: float,
    bar_lap: float,
    bar_stock: float,
    support_spacing: float,
    bars_a_roll: float,
) -> Answer:
    """Quantities of one rectangular slab of the same thickness all over.

    Lengths in inches, ``fall`` as a ratio, ``base_weight`` in lb a loose cubic yard, ``truck`` in cu ft. ``ends`` and
    ``sides`` count the short and the long edges (0 to 2 each) that have a form; at the others the slab meets something
    that stands, with a strip between. The base reaches ``base_beyond`` past each form.

    A slab of 20' x 16', 4 in thick, is 106.7 cu ft (a supplier's worked example):

    >>> answer = slab_concrete(
    ...     240, 192, 4, 0, 2, 2, 4, 0, 25, 2950, 5, 270, 0.6, 36, 192, False, 18, 3, 24, 240, 24, 3840
    ... )
    >>> [round(answer["concrete"], 3), answer["forms"], answer["boards"]]
    [106.667, 864, 5]
    """
    area = length * width
    concrete = area * thickness / CUBIC_FOOT
    order = more(concrete, waste)
    yards = order_yards(order)
    loads = truck_loads(yards, truck)

    base_length = length + ends * base_beyond
    base_width = width + sides * base_beyond
    base = base_length * base_width * base_thickness / CUBIC_FOOT
    base_bought = more(base, base_loose)

    forms = ends * width + sides * length
    strip = (2 - ends) * width + (2 - sides) * length
    pins = 0.0
    if ends > 0:
        pins = pins + ends * stakes([width], stake_spacing)
    if sides > 0:
        pins = pins + sides * stakes([length], stake_spacing)

    bars = 0.0
    under = 0
    if reinforced:
        along = bars_along(length, length, width, bar_spacing, bar_cover, bar_lap, bar_stock)
        down = bars_down(length, 0.0, 0.0, 0.0, 0.0, width, bar_spacing, bar_cover, bar_lap, bar_stock)
        bars = along + down
        under = supports(area, support_spacing)

    working = [
        f"{feet_inches(length)} x {feet_inches(width)} = {decimal(area / 144, 1)} sq ft; x {inches(thickness)} = "
        f"{decimal(concrete, 2)} cu ft; 27 cu ft a yard: {decimal(concrete / CUBIC_YARD, 2)} cu yd.",
        f"Plus {order_words(order, waste)}",
        f"Base: {feet_inches(base_length)} x {feet_inches(base_width)} x {inches(base_thickness)} "
        f"{base_words(base, base_loose, base_weight)}",
        f"Forms: {decimal(ends, 0)} x {feet_inches(width)} + {decimal(sides, 0)} x {feet_inches(length)} = "
        f"{feet_inches(forms)}.",
    ]
    return {
        "area": area / 144,
        "concrete": concrete,
        "order": order,
        "loads": loads,
        "bags": order / bag_yield,
        "weight": order_weight(yards),
        "base": base,
        "base_loose_volume": base_bought,
        "base_tons": base_pounds(base_bought, base_weight),
        "forms": forms,
        "boards": whole(forms / board, "up"),
        "stakes": pins,
        "strip": strip,
        "bars": bars,
        "supports": under,
        "wire": bars / bars_a_roll,
        "diagonal": sqrt(length * length + width * width),
        "drop": fall * length,
        "cautions": loads_cautions(loads),
        "working": working,
    }


CALCULATOR = Calculator(
    name="slab-concrete",
    title="Concrete for a rectangular slab",
    trade="concrete",
    summary="Concrete, base, form boards, stakes and bars for a pad or a walk, and the diagonal to square it by.",
    function=slab_concrete,
    drawing=slab_drawing,
    plots=(
        Plot(
            "Concrete against the length, for three thicknesses",
            "length",
            "concrete",
            96,
            480,
            ("thickness", (4, 5, 6)),
        ),
    ),
    inputs=(
        Input("length", "Length, the way it falls", "length", "ft-in", 240, 12, 2400, (36, 720)),
        Input("width", "Width", "length", "ft-in", 120, 12, 2400, (36, 480)),
        Input("thickness", "Slab thickness", "length", "in", 5, 2, 16, (4, 8)),
        Input(
            "fall",
            "Fall along its length",
            "slope",
            "%",
            0.025,
            0,
            0.1,
            (0.01, 0.05),
            Rule("least", 0.02, "IRC R401.3 beside a house", "guidance"),
        ),
        Input("ends", "Ends that have a form", "count", "", 2, 0, 2, help="The others meet a wall or an old slab."),
        Input("sides", "Sides that have a form", "count", "", 2, 0, 2, help="The others meet a wall or an old slab."),
        Input("base_thickness", "Base thickness, compacted", "length", "in", 4, 0, 24, (4, 12)),
        Input("base_beyond", "Base beyond each form", "length", "in", 6, 0, 24, (4, 12)),
        Input("base_loose", "Extra base for compaction", "percent", "%", 25, 0, 60, (15, 35)),
        Input("base_weight", "A loose cubic yard of base weighs", "mass", "lb", 2950, 1500, 4500, (2700, 3300)),
        Input("waste", "Concrete over the measure", "percent", "%", 10, 0, 40, (5, 15)),
        Input("truck", "A truck carries", "volume", "cu yd", 270, 27, 405, (108, 297)),
        Input("bag_yield", "A bag of concrete mix makes", "volume", "cu ft", 0.6, 0.1, 2, (0.3, 0.75)),
        Input("stake_spacing", "Stakes at most apart", "length", "in", 36, 12, 72, (24, 48)),
        Input("board", "Form boards are long", "length", "ft-in", 192, 48, 288, (96, 240)),
        Input("reinforced", "Reinforcing bars", "yes-no", default=False),
        Input("bar_spacing", "Bar spacing, both ways", "length", "in", 18, 6, 48, (12, 24)),
        Input("bar_cover", "Bar ends from the edge", "length", "in", 3, 1.5, 5, (2, 4)),
        Input("bar_lap", "Lap of bars", "length", "in", 24, 6, 72, (18, 36)),
        Input("bar_stock", "Bars are long", "length", "ft", 240, 60, 720, (120, 480)),
        Input("support_spacing", "Bar supports apart, both ways", "length", "in", 24, 12, 60, (18, 48)),
        Input("bars_a_roll", "Bar that a roll of tie wire ties", "length", "ft", 3840, 240, 24000),
    ),
    outputs=(
        Output("area", "Area", "area", "sq ft", 0.1),
        Output("concrete", "Concrete in place", "volume", "cu yd", 0.01, "up"),
        Output("order", "Concrete to order", "volume", "cu yd", 0.25, "up"),
        Output("loads", "Truck loads", "count", step=1, rounds="up"),
        Output("bags", "The same in bags", "count", "bags", 1, "up"),
        Output("weight", "The order weighs", "mass", "lb", 10, "up"),
        Output("base", "Base in place, compacted", "volume", "cu yd", 0.01, "up"),
        Output("base_loose_volume", "Base to buy, loose", "volume", "cu yd", 0.1, "up"),
        Output("base_tons", "Base to buy", "mass", "ton", 0.1, "up"),
        Output("forms", "Form lumber", "length", "ft", 1, "up"),
        Output("boards", "Form boards", "count", "boards", 1, "up"),
        Output("stakes", "Stakes", "count", "stakes", 1, "up"),
        Output("strip", "Isolation strip, where no form stands", "length", "ft", 1, "up"),
        Output("bars", "Reinforcing bar", "length", "ft", 1, "up"),
        Output("supports", "Bar supports", "count", "each", 1, "up"),
        Output("wire", "Tie wire", "count", "roll", 1, "up"),
        Output("diagonal", "Corner to corner, when it is square", "length", "ft-in"),
        Output("drop", "Low end below the high end", "length", "in"),
    ),
    formula=(
        "Concrete = length x width x thickness. Order = concrete x (1 + waste), up to the next quarter yard. In "
        "yards: square feet x inches / 324.\n\n"
        "Base to buy = (length + the strip beyond each formed end) x (width + the strip beyond each formed side) x "
        "base thickness x (1 + extra for compaction).\n\n"
        "Diagonal = sqrt(length² + width²)."
    ),
    sources=(COMMON_PRACTICE, Citation("wsdot-design-manual", "Exhibit 620-1")),
    example={"length": "20'", "width": "16'", "thickness": "4 in"},
    other_names=("yards of concrete", "parking pad", "patio", "walk", "slab calculator", "square footage"),
    cannot_decide=(
        "It is for a flat slab on ground that carries cars and people. Footings, thick edges, slabs under walls and "
        "slabs on poor ground are drawn by an engineer, and the city's drawing rules in the public way. The slope "
        "makes the surface at most half a percent larger than the plan, and is left out."
    ),
)
