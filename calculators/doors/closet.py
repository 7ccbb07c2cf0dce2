"""A closet fitted out: heights of rods and shelf, what to cut, where the brackets go, how far it sags."""

from __future__ import annotations

from calculators.declaration import (
    COMMON_PRACTICE,
    CREW_RULE,
    Answer,
    Calculator,
    Choice,
    Citation,
    Input,
    Output,
    Plot,
    Rule,
    refuse,
)
from calculators.doors.beams import BOTH_ENDS_REST, flat_section, longest_span, round_section, uniform_sag
from calculators.doors.closet_drawing import closet_drawing
from calculators.writing import NOISE, TAPE, decimal, feet_inches, inches, rounded, tape, whole

FOOT = 12.0
REACH_LEAST = 15.0
REACH_MOST = 48.0
HAND_ROOM = 8.0
LEAST_HANG = 36.0
NOT_ASKED = "not asked"
IN_REACH = "all within reach"


def bracket_places(width: float, longest: float) -> list[float]:
    """Where the brackets go, from the left wall, so that no span is longer than the longest. Inches.

    >>> [bracket_places(96, 36), bracket_places(36, 36)]
    [[32.0, 64.0], []]
    """
    spans = whole(width / longest, "up")
    places = []
    for at in range(1, spans):
        places.append(width * at / spans)
    return places


def out_of_reach(heights: list[float]) -> str:
    """The heights that somebody in a wheelchair does not reach, as words (ADA 308.2.1, 308.3.1). Inches.

    >>> [out_of_reach([44, 46]), out_of_reach([10, 66])]
    ['all within reach', 'out of reach: 10 in, 66 in']
    """
    outside = []
    for height in heights:
        if height < REACH_LEAST - TAPE or height > REACH_MOST + TAPE:
            outside.append(tape(height))
    if len(outside) == 0:
        return IN_REACH
    return "out of reach: " + ", ".join(outside)


def check_places(rod: float, low: float, shelf_top: float, height: float, double: bool) -> None:
    """Refuse rods and shelf that do not go into the closet."""
    if double and low >= rod:
        refuse("low_rod", f"The low rod, {inches(low)}, is not below the high one, {inches(rod)}.")
    if shelf_top >= height:
        refuse("height", f"The shelf's top, {inches(shelf_top)}, is not below the ceiling, {feet_inches(height)}.")


def closet(
    width: float = 60.0,
    depth: float = 24.0,
    height: float = 96.0,
    hang: str = "single",
    single_rod: float = 66.0,
    low_rod: float = 40.0,
    high_rod: float = 80.0,
    shelf_gap: float = 2.5,
    rod_setback: float = 12.0,
    shelf_depth: float = 11.25,
    shelf_thickness: float = 0.75,
    cleat_thickness: float = 0.75,
    socket: float = 2.0,
    play: float = 0.125,
    most_span: float = 36.0,
    shelf_load: float = 10.0,
    shelf_stiffness: float = 1000000.0,
    rod_load: float = 15.0,
    rod_diameter: float = 1.25,
    rod_wall: float = 0.0,
    rod_stiffness: float = 1400000.0,
    sag_part: float = 144.0,
    accessible: bool = False,
) -> Answer:
    """Heights, cut lengths, brackets and sag of a closet's shelf and rods.

    Lengths in inches, loads in pounds a foot, stiffness in pounds a square inch. Rod heights are to the centre, from
    the finished floor. Shelf and rods are taken as simple spans between supports under an even load:
    sag = 5 w L^4 / (384 E I). The limit is span / ``sag_part``.

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
    rod = single_rod
    levels = 1
    if double:
        rod = high_rod
        levels = 2
    shelf_bottom = rod + shelf_gap
    shelf_top = shelf_bottom + shelf_thickness
    check_places(rod, low_rod, shelf_top, height, double)
    if shelf_depth > depth:
        refuse("shelf_depth", f"The shelf, {inches(shelf_depth)}, is deeper than the closet, {inches(depth)}.")
    if rod_setback + rod_diameter / 2 >= depth:
        refuse("rod_setback", f"The rod, {inches(rod_setback)} from the back, is not inside {inches(depth)} of depth.")
    if 2 * rod_wall >= rod_diameter:
        refuse("rod_wall", f"A wall of {inches(rod_wall)} leaves no hole in a rod of {inches(rod_diameter)}.")

    places = bracket_places(width, most_span)
    spans = len(places) + 1
    span = width / spans
    limit = span / sag_part
    shelf_section = flat_section(shelf_depth, shelf_thickness)
    rod_section = round_section(rod_diameter, rod_wall)
    shelf_sag = uniform_sag(shelf_load / FOOT, span, shelf_stiffness, shelf_section, BOTH_ENDS_REST)
    rod_sag = uniform_sag(rod_load / FOOT, span, rod_stiffness, rod_section, BOTH_ENDS_REST)
    shelf_span = longest_span(shelf_load / FOOT, sag_part, shelf_stiffness, shelf_section, BOTH_ENDS_REST)
    rod_span = longest_span(rod_load / FOOT, sag_part, rod_stiffness, rod_section, BOTH_ENDS_REST)
    heights = [rod, shelf_top]
    if double:
        heights = [low_rod, rod, shelf_top]
    reach = NOT_ASKED
    if accessible:
        reach = out_of_reach(heights)

    cut = width - play
    side_cleat = min(max(shelf_depth, rod_setback + socket), depth) - cleat_thickness
    pieces = [
        {"length": cut, "count": 1, "name": "shelf", "stock": "shelf"},
        {"length": cut, "count": levels, "name": "rod", "stock": "rod"},
        {"length": width, "count": levels, "name": "back cleat", "stock": "cleat"},
        {"length": side_cleat, "count": 2 * levels, "name": "side cleat", "stock": "cleat"},
    ]
    marks = []
    for at in range(len(places)):
        marks.append({"bracket": at + 1, "place": places[at]})
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
        "second_rod": second(double, low_rod),
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


def second(double: bool, low_rod: float) -> float:
    """The height of the second rod; 0 where there is none."""
    if double:
        return low_rod
    return 0.0


def cautions_for(front: float, setback: float, above: float, double: bool, clear: float, reach: str) -> list[str]:
    """What to watch: room for hangers in front of and behind the rod, room above the shelf, reach. Inches."""
    cautions: list[str] = []
    room = min(front, setback)
    if room < 11 - TAPE:
        cautions.append(f"{tape(room)} from the rod to the wall or the door: a hanger needs about 11 in.")
    if above < HAND_ROOM - TAPE:
        cautions.append(f"{tape(above)} above the shelf: too low to put a box on it.")
    if double and clear < LEAST_HANG - TAPE:
        cautions.append(f"{tape(clear)} between the rods: shirts hang on the low one. {inches(LEAST_HANG)} is least.")
    if reach != NOT_ASKED and reach != IN_REACH:
        low = inches(REACH_LEAST)
        cautions.append(f"Reach from a wheelchair is {low} to {inches(REACH_MOST)}; {reach}.")
    return cautions


SIDE = "From the finished floor to the rod's centre."

CALCULATOR = Calculator(
    name="closet",
    title="Closet rods and shelf",
    trade="doors",
    summary="Heights of rods and shelf, what to cut, where the brackets go, and how far it sags.",
    function=closet,
    inputs=(
        Input("width", "Width, wall to wall", "length", "ft-in", 60.0, 12, 240, (24, 144), help="At the shelf."),
        Input("depth", "Depth, back wall to the doors", "length", "in", 24.0, 8, 72, (22, 30)),
        Input("height", "Height of the ceiling", "length", "ft-in", 96.0, 36, 192, (84, 120)),
        Input(
            "hang", "Hang", "choice", default="single", choices=(Choice("single", "single"), Choice("double", "double"))
        ),
        Input("single_rod", "Rod of a single hang", "length", "in", 66.0, 12, 120, (60, 72), help=SIDE),
        Input("low_rod", "Low rod of a double hang", "length", "in", 40.0, 12, 96, (36, 44), help=SIDE),
        Input("high_rod", "High rod of a double hang", "length", "in", 80.0, 24, 144, (78, 86), help=SIDE),
        Input("shelf_gap", "Rod's centre to the shelf's underside", "length", "in", 2.5, 1, 12, (2, 4)),
        Input("rod_setback", "Back wall to the rod's centre", "length", "in", 12.0, 4, 36, (11, 14)),
        Input("shelf_depth", "Depth of the shelf", "length", "in", 11.25, 3, 36, (9.25, 16)),
        Input("shelf_thickness", "Thickness of the shelf", "length", "in", 0.75, 0.25, 3, (0.625, 1.5)),
        Input("cleat_thickness", "Thickness of the cleats", "length", "in", 0.75, 0.25, 2),
        Input("socket", "Side cleat past the rod's centre, for the socket", "length", "in", 2.0, 0.5, 6),
        Input("play", "Shelf and rod shorter than the closet", "length", "in", 0.125, 0, 1, (0.0625, 0.25)),
        Input("most_span", "Longest span between supports", "length", "in", 36.0, 6, 96, (24, 48)),
        Input("shelf_load", "Load on the shelf, a foot", "number", "lb", 10.0, 0.1, 200, (5, 50)),
        Input(
            "shelf_stiffness",
            "Stiffness of the shelf, E in psi",
            "number",
            "",
            1000000.0,
            50000,
            40000000,
            (200000, 2000000),
            help="Softwood board or plywood about 1,000,000; particleboard about 300,000.",
        ),
        Input("rod_load", "Load on the rod, a foot", "number", "lb", 15.0, 0.1, 200, (5, 40)),
        Input("rod_diameter", "Diameter of the rod", "length", "in", 1.25, 0.5, 3, (1, 1.5)),
        Input("rod_wall", "Wall of a tube", "length", "in", 0.0, 0, 1, help="0 for a solid rod."),
        Input(
            "rod_stiffness",
            "Stiffness of the rod, E in psi",
            "number",
            "",
            1400000.0,
            100000,
            40000000,
            (1000000, 30000000),
            help="Hardwood about 1,400,000; steel about 29,000,000.",
        ),
        Input(
            "sag_part",
            "Sag at most span divided by",
            "number",
            "",
            144.0,
            50,
            1000,
            (144, 360),
            Rule("least", 144, "the woodwork standards", "guidance"),
        ),
        Input("accessible", "Check the reach from a wheelchair", "yes-no", default=False),
    ),
    outputs=(
        Output("top_rod", "Rod, the upper one of two", "length", "in", 0.125),
        Output("second_rod", "Low rod", "length", "in", 0.125, help="0 where there is one rod."),
        Output("shelf_bottom", "Shelf's underside, the cleats' top", "length", "in", 0.125),
        Output("shelf_top", "Shelf's top", "length", "in", 0.125),
        Output("shelf_length", "Shelf and rods, cut", "length", "ft-in", 0.0625, "down"),
        Output("side_cleat", "Side cleats, cut", "length", "in", 0.0625),
        Output(
            "pieces",
            "To cut",
            "rows",
            columns=(
                Output("length", "Length", "length", "ft-in", 0.0625, "down"),
                Output("count", "Count", "count", step=1),
                Output("name", "Piece", "text"),
                Output("stock", "Out of", "text"),
            ),
        ),
        Output("shelf_run", "Shelf, together", "length", "ft", 0.1, "up"),
        Output("rod_run", "Rods, together", "length", "ft", 0.1, "up"),
        Output("cleat_run", "Cleats, together", "length", "ft", 0.1, "up"),
        Output("sockets", "Pairs of sockets", "count", "pair", step=1, rounds="up"),
        Output("brackets", "Brackets", "count", "each", step=1, rounds="up"),
        Output(
            "bracket_places",
            "Brackets, from the left wall",
            "rows",
            columns=(
                Output("bracket", "Bracket", "count", step=1),
                Output("place", "To its centre", "length", "in", 0.125),
            ),
        ),
        Output("span", "Span between supports", "length", "in", 0.125, "up"),
        Output("sag_limit", "Sag at most", "length", "in", 0.01, "down"),
        Output("shelf_sag", "Sag of the shelf", "length", "in", 0.01, "up"),
        Output("shelf_holds", "Shelf within the limit", "yes-no"),
        Output("shelf_span", "Longest span of this shelf", "length", "in", 0.125, "down"),
        Output("rod_sag", "Sag of the rod", "length", "in", 0.01, "up"),
        Output("rod_holds", "Rod within the limit", "yes-no"),
        Output("rod_span", "Longest span of this rod", "length", "in", 0.125, "down"),
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
        Plot("Sag of the shelf against its thickness", "shelf_thickness", "shelf_sag", 0.5, 1.5),
        Plot("Sag of the rod against its diameter", "rod_diameter", "rod_sag", 0.75, 1.75),
    ),
)
