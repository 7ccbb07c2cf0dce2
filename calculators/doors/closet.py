"""A closet fitted out: heights of rods and shelf, what to cut, where the brackets go, how far it sags."""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, Plot, output_rows
from calculators.declaring import Guidance, Help, calculator, choice, length, number, yes_no
from calculators.doors.beams import flat_section, longest_span, round_section, uniform_sag
from calculators.doors.closet_drawing import closet_drawing
from calculators.doors.closet_places import (
    NOT_ASKED,
    bracket_places,
    cautions_for,
    check_depths,
    check_places,
    out_of_reach,
)
from calculators.writing import NOISE, decimal, feet_inches, inches, rounded

SIDE = "From the finished floor to the rod's centre."


@calculator(
    title="Closet rods and shelf",
    summary="Heights of rods and shelf, what to cut, where the brackets go, and how far it sags.",
    outputs=(
        Output("top_rod", "Rod, the upper one of two", "length", "in", step=1 / 8),
        Output("second_rod", "Low rod", "length", "in", step=1 / 8, help="0 where there is one rod."),
        Output("shelf_bottom", "Shelf's underside, the cleats' top", "length", "in", step=1 / 8),
        Output("shelf_top", "Shelf's top", "length", "in", step=1 / 8),
        Output("shelf_length", "Shelf and rods, cut", "length", "ft-in", step=1 / 16, rounds="down"),
        Output("side_cleat", "Side cleats, cut", "length", "in", step=1 / 16),
        output_rows(
            "pieces",
            "To cut",
            Output("length", "Length", "length", "ft-in", step=1 / 16, rounds="down"),
            Output("count", "Count", "count", step=1),
            Output("name", "Piece", "text"),
            Output("stock", "Out of", "text"),
        ),
        Output("shelf_run", "Shelf, together", "length", "ft", step=0.1, rounds="up"),
        Output("rod_run", "Rods, together", "length", "ft", step=0.1, rounds="up"),
        Output("cleat_run", "Cleats, together", "length", "ft", step=0.1, rounds="up"),
        Output("sockets", "Pairs of sockets", "count", "pair", step=1, rounds="up"),
        Output("brackets", "Brackets", "count", "each", step=1, rounds="up"),
        output_rows(
            "bracket_places",
            "Brackets, from the left wall",
            Output("bracket", "Bracket", "count", step=1),
            Output("place", "To its centre", "length", "in", step=1 / 8),
        ),
        Output("span", "Span between supports", "length", "in", step=1 / 8, rounds="up"),
        Output("sag_limit", "Sag at most", "length", "in", step=0.01, rounds="down"),
        Output("shelf_sag", "Sag of the shelf", "length", "in", step=0.01, rounds="up"),
        Output("shelf_holds", "Shelf within the limit", "yes-no"),
        Output("shelf_span", "Longest span of this shelf", "length", "in", step=1 / 8, rounds="down"),
        Output("rod_sag", "Sag of the rod", "length", "in", step=0.01, rounds="up"),
        Output("rod_holds", "Rod within the limit", "yes-no"),
        Output("rod_span", "Longest span of this rod", "length", "in", step=1 / 8, rounds="down"),
        Output("reach", "Reach", "text"),
    ),
    formula=(
        "Shelf's underside = rod + gap. Cut = width - play. Spans = width / longest span, rounded up; brackets stand "
        "evenly between.\n\n"
        "Sag = 5 w L^4 / (384 E I), for a span L that rests on its ends under an even load w. I = width x thickness^3 "
        "/ 12 for a shelf, pi (D^4 - d^4) / 64 for a rod. Sag at most L / 144. Twice the span sags 16 times as far; "
        "twice the thickness, an eighth."
    ),
    sources=(
        Citation("graphic-standards", "closets, rod heights, from memory"),
        Citation("woodwork-standards-2009", "shelf sag, span / 144, from memory"),
        Citation("wood-handbook", "deflection of straight beams, Eq. 9-2"),
        Citation("ada-2010", "308.2.1, 308.3.1"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={"width": "8'", "hang": "double"},
    other_names=("wardrobe", "hanging rod", "closet pole", "coat closet", "shelf and pole", "reach-in"),
    cannot_decide=(
        "What the wall holds: brackets and cleats are screwed to studs or blocking, so a bracket goes to the nearest "
        "stud that keeps each span within the longest. Wood under a load that stays sags on, about twice as far in "
        "years. Whether a unit must be accessible, and how, is for the local code and the building department. A light "
        "in the closet keeps its distance: [](calculator:closet-light-place)."
    ),
    drawing=closet_drawing,
    plots=(
        Plot("Sag of the shelf against its thickness", x="shelf_thickness", y="shelf_sag", start=0.5, end=1.5),
        Plot("Sag of the rod against its diameter", x="rod_diameter", y="rod_sag", start=0.75, end=1.75),
    ),
)
def closet(
    width: Annotated[
        float,
        length("Width, wall to wall", "5 ft, from 1 to 20 ft, usually 2 to 12 ft", "ft-in"),
        Help("At the shelf."),
    ],
    depth: Annotated[float, length("Depth, back wall to the doors", "24 in, from 8 to 72 in, usually 22 to 30 in")],
    height: Annotated[float, length("Height of the ceiling", "8 ft, from 3 to 16 ft, usually 7 to 10 ft", "ft-in")],
    hang: Annotated[str, choice("Hang", {"single": "single", "double": "double"}, default="single")],
    single_rod: Annotated[
        float, length("Rod of a single hang", "66 in, from 12 to 120 in, usually 60 to 72 in"), Help(SIDE)
    ],
    low_rod: Annotated[
        float, length("Low rod of a double hang", "40 in, from 12 to 96 in, usually 36 to 44 in"), Help(SIDE)
    ],
    high_rod: Annotated[
        float, length("High rod of a double hang", "80 in, from 24 to 144 in, usually 78 to 86 in"), Help(SIDE)
    ],
    shelf_gap: Annotated[
        float, length("Rod's centre to the shelf's underside", "2-1/2 in, from 1 to 12 in, usually 2 to 4 in")
    ],
    rod_setback: Annotated[
        float, length("Back wall to the rod's centre", "12 in, from 4 to 36 in, usually 11 to 14 in")
    ],
    shelf_depth: Annotated[float, length("Depth of the shelf", "11-1/4 in, from 3 to 36 in, usually 9-1/4 to 16 in")],
    shelf_thickness: Annotated[
        float, length("Thickness of the shelf", "3/4 in, from 1/4 to 3 in, usually 5/8 to 1-1/2 in")
    ],
    cleat_thickness: Annotated[float, length("Thickness of the cleats", "3/4 in, from 1/4 to 2 in")],
    socket: Annotated[float, length("Side cleat past the rod's centre, for the socket", "2 in, from 1/2 to 6 in")],
    play: Annotated[
        float, length("Shelf and rod shorter than the closet", "1/8 in, from 0 to 1 in, usually 1/16 to 1/4 in")
    ],
    most_span: Annotated[float, length("Longest span between supports", "36 in, from 6 to 96 in, usually 24 to 48 in")],
    shelf_load: Annotated[float, number("Load on the shelf, a foot", "10 lb, from 0.1 to 200 lb, usually 5 to 50 lb")],
    shelf_stiffness: Annotated[
        float,
        number("Stiffness of the shelf, E in psi", "1000000, from 50000 to 40000000, usually 200000 to 2000000"),
        Help("Softwood board or plywood about 1,000,000; particleboard about 300,000."),
    ],
    rod_load: Annotated[float, number("Load on the rod, a foot", "15 lb, from 0.1 to 200 lb, usually 5 to 40 lb")],
    rod_diameter: Annotated[float, length("Diameter of the rod", "1-1/4 in, from 1/2 to 3 in, usually 1 to 1-1/2 in")],
    rod_wall: Annotated[float, length("Wall of a tube", "0, from 0 to 1 in"), Help("0 for a solid rod.")],
    rod_stiffness: Annotated[
        float,
        number("Stiffness of the rod, E in psi", "1400000, from 100000 to 40000000, usually 1000000 to 30000000"),
        Help("Hardwood about 1,400,000; steel about 29,000,000."),
    ],
    sag_part: Annotated[
        float,
        number("Sag at most span divided by", "144, from 50 to 1000, usually 144 to 360"),
        Guidance("at least 144", "the woodwork standards"),
    ],
    accessible: Annotated[bool, yes_no("Check the reach from a wheelchair", default="no")],
) -> Answer:
    """Heights, cut lengths, brackets and sag of a closet's shelf and rods.

    Lengths in inches, loads in pounds a foot, stiffness in pounds a square inch. Shelf and rods are taken as simple
    spans between supports.

    Source: beam formulas, any beam table. Rod heights: Architectural Graphic Standards, from memory. Span / 144:
    Architectural Woodwork Standards, from memory. Reach: 2010 ADA Standards 308.2.1, 308.3.1.

    >>> answer = closet(width=96, hang="double", most_span=36)
    >>> [answer["top_rod"], answer["second_rod"], answer["shelf_bottom"], answer["brackets"], answer["span"]]
    [80.0, 40.0, 82.5, 4, 32.0]
    >>> answer = closet(width=36, shelf_load=10)
    >>> [answer["shelf_sag"], answer["sag_limit"]]
    [0.0461, 0.25]
    """
    double = hang == "double"
    rod = high_rod if double else single_rod
    levels = 2 if double else 1
    shelf_bottom = rod + shelf_gap
    shelf_top = shelf_bottom + shelf_thickness
    check_places(rod, low_rod, shelf_top, height, double)
    check_depths(depth, shelf_depth, rod_setback, rod_diameter, rod_wall)

    places = bracket_places(width, most_span)
    spans = len(places) + 1
    span = width / spans
    limit = span / sag_part
    shelf_section = flat_section(shelf_depth, shelf_thickness)
    rod_section = round_section(rod_diameter, rod_wall)
    shelf_sag = uniform_sag(shelf_load / 12, span, shelf_stiffness, shelf_section)
    rod_sag = uniform_sag(rod_load / 12, span, rod_stiffness, rod_section)
    shelf_span = longest_span(shelf_load / 12, sag_part, shelf_stiffness, shelf_section)
    rod_span = longest_span(rod_load / 12, sag_part, rod_stiffness, rod_section)
    heights = [low_rod, rod, shelf_top] if double else [rod, shelf_top]
    reach = out_of_reach(heights) if accessible else NOT_ASKED

    cut = width - play
    side_cleat = min(max(shelf_depth, rod_setback + socket), depth) - cleat_thickness
    pieces = [
        {"length": cut, "count": 1, "name": "shelf", "stock": "shelf"},
        {"length": cut, "count": levels, "name": "rod", "stock": "rod"},
        {"length": width, "count": levels, "name": "back cleat", "stock": "cleat"},
        {"length": side_cleat, "count": 2 * levels, "name": "side cleat", "stock": "cleat"},
    ]
    marks = [{"bracket": at + 1, "place": place} for at, place in enumerate(places)]
    holds = shelf_sag <= limit + NOISE
    rod_holds = rod_sag <= limit + NOISE
    shelf_most = rounded(shelf_span, 0.5, "down")
    rod_most = rounded(rod_span, 0.5, "down")
    clear = rod - low_rod
    cautions = cautions_for(depth - rod_setback, rod_setback, height - shelf_top, double, clear, reach)
    if not holds:
        cautions.append(f"The shelf sags {decimal(shelf_sag, 2)} in: supports at most {inches(shelf_most)} apart.")
    if not rod_holds:
        cautions.append(f"The rod sags {decimal(rod_sag, 2)} in: supports at most {inches(rod_most)} apart.")
    return {
        "top_rod": rod,
        "second_rod": low_rod if double else 0.0,
        "shelf_bottom": shelf_bottom,
        "shelf_top": shelf_top,
        "shelf_length": cut,
        "side_cleat": side_cleat,
        "pieces": pieces,
        "shelf_run": cut,
        "rod_run": cut * levels,
        "cleat_run": (width + 2 * side_cleat) * levels,
        "sockets": levels,
        "brackets": len(places) * levels,
        "bracket_places": marks,
        "span": span,
        "sag_limit": limit,
        "shelf_sag": shelf_sag,
        "shelf_holds": holds,
        "shelf_span": shelf_span,
        "rod_sag": rod_sag,
        "rod_holds": rod_holds,
        "rod_span": rod_span,
        "reach": reach,
        "cautions": cautions,
        "working": [
            f"shelf's underside: rod {inches(rod)} + {inches(shelf_gap)} = {inches(shelf_bottom)}",
            f"shelf and rods: {feet_inches(width)} less {inches(play)} of play = {feet_inches(cut)}",
            f"spans: {feet_inches(width)} / {inches(most_span)}, up = {spans}; each {inches(span)}",
            f"limit: {inches(span)} / {decimal(sag_part, 0)} = {decimal(limit, 3)} in",
            f"shelf: I = {decimal(shelf_section, 4)} in4, sag {decimal(shelf_sag, 3)} in",
            f"rod: I = {decimal(rod_section, 4)} in4, sag {decimal(rod_sag, 3)} in",
        ],
    }
