"""A rectangular slab on ground: concrete, base, forms, stakes and bars."""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from calculators.concrete import slab_inputs as slab
from calculators.concrete.approach_shape import bars_both_ways
from calculators.concrete.slab_drawing import slab_drawing
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
from calculators.declaring import Guidance, Help, calculator, count, length, slope
from calculators.writing import decimal, feet_inches, inches, whole


@calculator(
    title="Concrete for a rectangular slab",
    summary="Concrete, base, form boards, stakes and bars for a pad or a walk, and the diagonal to square it by.",
    outputs=(
        Output("area", "Area", "area", "sq ft", step=0.1),
        *slab.BOUGHT,
        Output("boards", "Form boards", "count", "boards", step=1, rounds="up"),
        *slab.EDGES_AND_BARS,
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
    drawing=slab_drawing,
    plots=(
        Plot(
            "Concrete against the length, for three thicknesses",
            x="length",
            y="concrete",
            start=96,
            end=480,
            curves=("thickness", (4, 5, 6)),
        ),
    ),
)
def slab_concrete(
    length: Annotated[
        float, length("Length, the way it falls", "20 ft, from 1 to 200 ft, usually 3 to 60 ft", "ft-in")
    ],
    width: Annotated[float, length("Width", "10 ft, from 1 to 200 ft, usually 3 to 40 ft", "ft-in")],
    thickness: Annotated[float, length("Slab thickness", "5 in, from 2 to 16 in, usually 4 to 8 in")],
    fall: Annotated[
        float,
        slope("Fall along its length", "2.5 %, from 0 to 10 %, usually 1 to 5 %"),
        Guidance("at least 2 %", "IRC R401.3 beside a house"),
    ],
    ends: Annotated[
        float, count("Ends that have a form", "2, from 0 to 2"), Help("The others meet a wall or an old slab.")
    ],
    sides: Annotated[
        float, count("Sides that have a form", "2, from 0 to 2"), Help("The others meet a wall or an old slab.")
    ],
    base_thickness: Annotated[float, length("Base thickness, compacted", "4 in, from 0 to 24 in, usually 4 to 12 in")],
    base_beyond: slab.BaseBeyond,
    base_loose: slab.BaseLoose,
    base_weight: slab.BaseWeight,
    waste: slab.Waste,
    truck: slab.Truck,
    bag_yield: slab.BagYield,
    stake_spacing: slab.StakeSpacing,
    board: Annotated[float, length("Form boards are long", "16 ft, from 4 to 24 ft, usually 8 to 20 ft", "ft-in")],
    reinforced: slab.Reinforced,
    bar_spacing: slab.BarSpacing,
    bar_cover: Annotated[float, length("Bar ends from the edge", "3 in, from 1-1/2 to 5 in, usually 2 to 4 in")],
    bar_lap: slab.BarLap,
    bar_stock: slab.BarStock,
    support_spacing: slab.SupportSpacing,
    bars_a_roll: slab.BarsARoll,
) -> Answer:
    """Quantities of one rectangular slab of the same thickness all over.

    Lengths in inches, ``fall`` as a ratio, ``base_weight`` in lb a loose cubic yard, ``truck`` in cu ft. At an edge
    without a form the slab meets something that stands, with a strip between.

    A slab of 20' x 16', 4 in thick, is 106.7 cu ft (a supplier's worked example):

    >>> answer = slab_concrete(width=192, thickness=4, fall=0, base_beyond=0, waste=5)
    >>> [round(answer["concrete"], 3), answer["forms"], answer["boards"]]
    [106.667, 864.0, 5]
    """
    area = length * width
    concrete = area * thickness / CUBIC_FOOT

    base_length = length + ends * base_beyond
    base_width = width + sides * base_beyond
    base = base_length * base_width * base_thickness / CUBIC_FOOT
    to_buy = bought(concrete, waste, truck, bag_yield, base, base_loose, base_weight)

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
        bars = bars_both_ways(length, 0.0, 0.0, 0.0, 0.0, width, bar_spacing, bar_cover, bar_lap, bar_stock)
        under = supports(area, support_spacing)

    working = [
        f"{feet_inches(length)} x {feet_inches(width)} = {decimal(area / 144, 1)} sq ft; x {inches(thickness)} = "
        f"{decimal(concrete, 2)} cu ft; 27 cu ft a yard: {decimal(concrete / CUBIC_YARD, 2)} cu yd.",
        f"Plus {order_words(to_buy['order'], waste)}",
        f"Base: {feet_inches(base_length)} x {feet_inches(base_width)} x {inches(base_thickness)} "
        f"{base_words(base, base_loose, base_weight)}",
        f"Forms: {decimal(ends, 0)} x {feet_inches(width)} + {decimal(sides, 0)} x {feet_inches(length)} = "
        f"{feet_inches(forms)}.",
    ]
    return {
        "area": area / 144,
        **to_buy,
        "forms": forms,
        "boards": whole(forms / board, "up"),
        "stakes": pins,
        "strip": strip,
        "bars": bars,
        "supports": under,
        "wire": bars / bars_a_roll,
        "diagonal": sqrt(length * length + width * width),
        "drop": fall * length,
        "cautions": loads_cautions(to_buy["loads"]),
        "working": working,
    }
