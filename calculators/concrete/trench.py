"""A trench that people work in: how far its walls are laid back, what comes out of it, and how they get out.

A cubic yard of earth weighs more than a small car, and a wall falls without warning. The federal rule gives the
steepest slope by soil; whoever is trained to judge the soil says on the site which soil it is.
"""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from calculators.concrete.trench_drawing import trench_drawing
from calculators.concrete.trench_rules import (
    ABOVE_EDGE,
    BY_LOOK,
    ENGINEER_FROM,
    HEAP,
    LEAN,
    RUN_OF_SOIL,
    SHORED,
    SLOPE_WORDS,
    cautions_for,
    footing_in_words,
    ladders_for,
    ladders_in_words,
    pit_volume,
    protection,
    under_footing,
    wall_angle,
)
from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output, refuse
from calculators.declaring import Help, Law, calculator, choice, length, percent
from calculators.writing import NOISE, decimal, feet_inches


@calculator(
    title="Trench: slope, spoil and ways out",
    summary="How wide a trench is at the top, what comes out of it and where that lies, and how people get out.",
    outputs=(
        Output("protection", "Protection of the walls", "text"),
        Output("beside_footing", "Beside the footing", "text"),
        Output("slope", "Slope, across to up", "text"),
        Output("angle", "Angle from level, at most", "angle", "deg", step=1, rounds="down"),
        Output("top_width", "Width at the top", "length", "ft-in", step=1, rounds="up"),
        Output("top_length", "Length at the top", "length", "ft-in", step=1, rounds="up"),
        Output("spoil_from_edge", "Spoil from the edge, at least", "length", "ft-in", step=1, rounds="up"),
        Output("heap_width", "Width of the spoil heap", "length", "ft-in", step=1, rounds="up"),
        Output("heap_height", "Height of the spoil heap", "length", "ft-in", step=1, rounds="up"),
        Output("ground", "Ground taken, spoil on one side", "length", "ft-in", step=1, rounds="up"),
        Output("fence", "Fence round the trench and its spoil", "length", "ft", step=1, rounds="up"),
        Output("bank", "Earth in the ground", "volume", "cu yd", step=1 / 2, rounds="up"),
        Output("loose", "Spoil, loose", "volume", "cu yd", step=1 / 2, rounds="up"),
        Output("ladders", "Ladders, ramps or steps", "count", step=1, rounds="up"),
        Output(
            "ladders_apart", "One for each", "length", "ft-in", step=1, rounds="down", help="Half as far from each end."
        ),
        Output(
            "ladder_length", "Ladder, at least", "length", "ft-in", step=1, rounds="up", help="3 ft above the edge."
        ),
    ),
    formula=(
        "Top = bottom + 2 x depth x run, along and across. Run for 1 up: rock 0, type A 3/4, type B 1, type C, filled "
        "ground and soil not judged 1-1/2. Earth = depth / 6 x (bottom + 4 x middle + top). Loose = earth x "
        "(1 + swell). The heap lies at 1-1/2 to 1 along one side.\n\n"
        "Footing: the bottom stays away from it by the run x what the trench is deeper than it, 1 at least. "
        "Where the slope's top would reach it, there is no slope: the trench is shored or shielded.\n\n"
        "Ways out: from 4 ft deep, one for each 50 ft, so that nobody has more than 25 ft to go."
    ),
    sources=(
        Citation("osha-excavation", "(c)(2) ways out, (g) air, (i)(2) footings, (j)(2) spoil, (k) inspections"),
        Citation("osha-subpart-p", "1926.652(a)(1), (b); App. A; App. B, Table B-1"),
        Citation("osha-ladders", "(b)(1), (b)(5)(i)"),
        Citation("osha-falls", "(b)(7)(i)"),
        Citation("irc", "P2604.4, trenches beside footings"),
        COMMON_PRACTICE,
    ),
    example={"depth": "6'", "width": "2'", "length": "60'", "footing": "20'", "soil": "b"},
    other_names=("excavation", "ditch", "sloping and benching", "shoring", "cave-in", "spoil pile"),
    cannot_decide=(
        "Which soil it is, and whether anybody may go in: a competent person decides that on the site (29 CFR "
        "1926.650), and he may ask for flatter walls. Shores and boxes go by their maker's tables. Layers, water, "
        "buildings, roads and poles near by, and anything deeper than 20 ft are a registered professional engineer's. "
        "Nobody digs before the lines are marked (811). State plans may be stricter."
    ),
    drawing=trench_drawing,
)
def trench(
    depth: Annotated[float, length("Depth", "5 ft, from 6 in to 100 ft", "ft-in")],
    width: Annotated[float, length("Width of the bottom", "2 ft, from 6 in to 20 ft, usually 18 in to 6 ft", "ft-in")],
    length: Annotated[float, length("Length of the bottom", "40 ft, from 1 to 1000 ft", "ft-in")],
    footing: Annotated[
        float,
        length("From the bottom's near side to the nearest footing, level", "from 0 to 200 ft", "ft-in"),
        Help("Of a house, a wall, a chimney, a porch. If none is near, the way to the nearest that you see."),
    ],
    footing_depth: Annotated[
        float,
        length("Bottom of that footing below the ground", "1 ft, from 0 to 20 ft", "ft-in"),
        Help("From the drawing. Not known: leave it shallow."),
    ],
    soil: Annotated[
        str,
        choice(
            "Soil",
            {
                "unknown": "not judged",
                "fill": "filled ground, as beside a house: type C",
                "c": "type C: sand, gravel, soft or wet soil",
                "b": "type B: medium clay or silt that holds together",
                "a": "type A: stiff clay, never dug, dry, no shaking",
                "stable-rock": "stable rock",
            },
            default="unknown",
        ),
        Help("The competent person judges it on the site, by eye and by hand (App. A). In doubt, the weaker."),
    ],
    walls: Annotated[
        str,
        choice(
            "Walls",
            {"sloped": "sloped at every depth", "by-depth": "upright where the depth asks for no protection"},
            default="sloped",
        ),
    ],
    protect_from: Annotated[
        float,
        length("Protected from a depth of", "5 ft, from 2 to 5 ft", "ft-in"),
        Law("at most 5 ft", "29 CFR 1926.652(a)(1)(ii)"),
    ],
    set_back: Annotated[
        float,
        length("Spoil from the edge", "2 ft, from 2 to 20 ft", "ft-in"),
        Law("at least 2 ft", "29 CFR 1926.651(j)(2)"),
    ],
    swell: Annotated[
        float,
        percent("Loose over what was in the ground", "25 %, from 0 to 80 %, usually 10 to 50 %"),
        Help("Sand and gravel 10 to 15, ordinary earth 25, clay 30 to 40, broken rock 50 and more."),
    ],
) -> Answer:
    """Slope, width at the top, spoil and ways out of a trench.

    Lengths in inches, volumes in cu ft. ``walls`` is 'sloped' at every depth, or 'by-depth': upright while the
    depth stays under ``protect_from``. The ends are sloped like the sides.

    Sources: 29 CFR 1926.652(a)(1), (b)(1)(i) and (b)(4); Subpart P App. A and App. B, Table B-1; 1926.651(c)(2),
    (i)(2) and (j)(2); IRC P2604.4; 1926.1053(b)(1) and (b)(5)(i); 1926.501(b)(7)(i). Swell and the slope of the heap:
    common practice.

    >>> answer = trench(depth=60, width=24, length=480, footing=240)
    >>> [answer["slope"], answer["top_width"], answer["ladders"], answer["protection"]]
    ['1-1/2 to 1', 204.0, 1, 'needed: slope, shore or shield']
    """
    if depth > ENGINEER_FROM:
        refuse(
            "depth",
            f"{feet_inches(depth)} is deeper than 20' 0\". A registered professional engineer designs the protection "
            "(29 CFR 1926 Subpart P, App. B); this gives no figures for it.",
        )
    needed = protection(depth, soil, protect_from)
    undermined = under_footing(depth, footing, footing_depth, soil)
    beside = "stop: an engineer draws it, or the trench moves" if undermined else "clear of it"
    run = RUN_OF_SOIL[soil]
    slope = SLOPE_WORDS[soil]
    if walls == "by-depth" and needed == BY_LOOK:
        run = 0.0
        slope = "upright"
    reaches = run > 0 and footing <= run * depth + NOISE
    if reaches:
        run = 0.0
        slope = "none: it would reach the footing"
        needed = SHORED
        if not undermined:
            beside = "no slope: shore it, and ask the competent person first"
    top_width = width + 2 * run * depth
    top_length = length + 2 * run * depth
    bank = pit_volume(length, width, depth, run) / 1728
    loose = bank * (1 + swell / 100)
    heap_area = loose * 1728 / top_length
    heap_height = sqrt(heap_area / HEAP)
    heap_width = 2 * HEAP * heap_height
    ladders = ladders_for(depth, length)
    apart = 0.0
    ladder_length = 0.0
    if ladders > 0:
        apart = length / ladders
        lean = max(LEAN, run)
        ladder_length = (depth + ABOVE_EDGE) * sqrt(1 + lean * lean)
    return {
        "protection": needed,
        "beside_footing": beside,
        "slope": slope,
        "angle": wall_angle(run),
        "top_width": top_width,
        "top_length": top_length,
        "spoil_from_edge": set_back,
        "heap_width": heap_width,
        "heap_height": heap_height,
        "ground": top_width + set_back + heap_width,
        "fence": 2 * (top_length + top_width + set_back + heap_width),
        "bank": bank,
        "loose": loose,
        "ladders": ladders,
        "ladders_apart": apart,
        "ladder_length": ladder_length,
        "cautions": cautions_for(depth, soil, needed, run, undermined),
        "working": [
            f"top = bottom + 2 x depth x run: {feet_inches(width)} + 2 x {feet_inches(depth)} x {decimal(run, 2)} = "
            f"{feet_inches(top_width)} wide, {feet_inches(top_length)} long",
            f"in the ground {decimal(bank / 27, 1)} cu yd; loose, plus {decimal(swell, 0)} %: {decimal(loose / 27, 1)} "
            "cu yd",
            ladders_in_words(depth, length, ladders),
            footing_in_words(depth, footing, footing_depth, soil),
        ],
    }
