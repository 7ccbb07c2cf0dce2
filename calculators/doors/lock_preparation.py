"""Where to bore a door for a lock, where the strike goes, and what does not fit.

Heights are above the finished floor. Across the door everything is measured from the high edge, the edge of the face
that the bevel leaves standing: the template folds over that one. The bore is square to the face, so on the other face
the same hole lies nearer to the edge by what the bevel takes off.
"""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, output_rows
from calculators.declaring import Guidance, Help, Law, calculator, choice, count, length, slope, yes_no
from calculators.doors.lock_fit import (
    HAIR,
    cautions_for,
    faceplate_of,
    holes_misfits,
    reach_misfits,
    refuse_sizes,
    rose_misfits,
    strike_misfits,
    thickness_misfits,
    wood_misfits,
)
from calculators.doors.lock_preparation_drawing import lock_preparation_drawing
from calculators.writing import decimal, inches

CITIES = "door security codes of cities"
READ_ONLY_THEN = Help("Read only when holes are there.")


def _inches(name: str, label: str, step: float = 1 / 16) -> Output:
    """A length output in inches."""
    return Output(name, label, "length", "in", step=step)


@calculator(
    title="Lock preparation",
    summary="Where to bore the door, where the strike goes, and what does not fit.",
    outputs=(
        _inches("cross_bore_centre", "Cross bore centre from the high edge"),
        _inches("low_edge", "The same centre from the low edge, other face", 1 / 32),
        _inches("cross_bore_diameter", "Cross bore"),
        _inches("edge_bore_diameter", "Edge bore"),
        _inches("edge_bore_centre", "Edge bore centre from either face", 1 / 32),
        _inches("edge_bore_depth", "Edge bore meets the cross bore at a depth of"),
        _inches("centre_height", "Centre of this lock above the finished floor"),
        _inches("from_door_bottom", "The same centre above the bottom of the door"),
        _inches("deadbolt_height", "Centre of the deadbolt above the finished floor"),
        _inches("faceplate_width", "Edge mortise, width"),
        _inches("faceplate_height", "Edge mortise, height"),
        _inches("mortise_depth", "Edge mortise, depth", 1 / 32),
        _inches("faceplate_top", "Mark for the top of the faceplate"),
        _inches("faceplate_bottom", "Mark for the bottom of the faceplate"),
        _inches("strike_height", "Centre of the strike above the finished floor"),
        _inches("strike_from_stop", "Centre of the strike from the stop", 1 / 32),
        _inches("strike_from_jamb_edge", "Centre of the strike from the edge of the jamb", 1 / 32),
        Output("strike_bore_depth", "Depth of the hole behind the strike", "length", "in", step=1 / 16, rounds="up"),
        Output("engagement", "Latch or bolt in the strike", "length", "in", step=1 / 16, rounds="down"),
        Output("strike_screws", "Screws at the strike", "text"),
        Output("solid_edge_needed", "Solid edge that the lock needs", "length", "in", step=1 / 16, rounds="up"),
        Output("thickness_fits", "The hardware takes this thickness", "yes-no"),
        Output("fits", "Everything fits", "yes-no"),
        output_rows(
            "misfits",
            "What does not fit",
            Output("what", "What does not fit", "text"),
            Output("mend", "What to do", "text"),
        ),
    ),
    formula=(
        "The cross bore is centred at the backset from the high edge; seen from the other face it is nearer to the edge"
        " by thickness x bevel. The deadbolt is centred at height + spacing, the strike at the height of its bolt and,"
        " from the stop, at half the thickness + the gap at the stop. The faceplate reaches half its height up and"
        " down. Engagement = throw - gap between door and jamb."
    ),
    sources=(
        Citation("bhma-a156-115", "160 and 161 preparation: bores, mortise, backset"),
        Citation("ada-2010", "404.2.7"),
        Citation("ipmc", "304.18.1"),
        Citation("municipal-door-security", "strike screws and throw"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={"kind": "deadbolt", "thickness": "1-3/4 in", "backset": "2-3/8 in", "stile": "4-1/2 in"},
    other_names=("door prep", "bore a door", "backset", "strike position", "deadbolt height"),
    cannot_decide=(
        "The template in the box goes before these figures. Whether a fire-labelled, steel or fibreglass door may be"
        " bored is for its maker; what the door of a dwelling needs is for the local code and the inspector."
    ),
    drawing=lock_preparation_drawing,
)
def lock_preparation(
    kind: Annotated[
        str,
        choice(
            "Hardware",
            {
                "tubular-passage": "Passage latch, tubular",
                "tubular-privacy": "Privacy lock, tubular",
                "tubular-keyed": "Keyed entry lock, tubular",
                "cylindrical": "Cylindrical lock",
                "deadbolt": "Deadbolt",
            },
            default="tubular-keyed",
        ),
    ],
    thickness: Annotated[
        float, length("Thickness of the door", "from 3/4 to 3 in"), Help("Measured at the edge, where the lock goes.")
    ],
    backset: Annotated[
        float,
        length("Backset", "2-3/8 in, from 1 to 8 in"),
        Help("From the high edge of the door to the centre of the cross bore."),
    ],
    cross_bore: Annotated[
        float, length("Cross bore of the hardware", "2-1/8 in, from 1-1/4 to 3 in, usually 1-1/2 to 2-1/8 in")
    ],
    edge_bore: Annotated[float, length("Edge bore of the hardware", "1 in, from 3/4 to 1-1/2 in")],
    height: Annotated[
        float,
        length("Height of knob or lever above the finished floor", "36 in, from 24 to 60 in, usually 34 to 48 in"),
    ],
    spacing: Annotated[
        float, length("Deadbolt above knob, centre to centre", "5-1/2 in, from 2-1/2 to 15 in, usually 5-1/2 to 12 in")
    ],
    under_door: Annotated[float, length("Gap under the door, above the finished floor", "1/2 in, from 0 to 2 in")],
    bevel: Annotated[float, slope("Bevel of the edge", "1:16, from level to 1:8")],
    faceplate: Annotated[
        str,
        choice(
            "Faceplate",
            {
                "series": "as the standard preparation for the backset",
                "one-inch": "1 in wide",
                "drive-in": "none: drive-in latch",
            },
            default="series",
        ),
    ],
    faceplate_height: Annotated[float, length("Height of the faceplate", "2-1/4 in, from 1 to 8 in")],
    faceplate_depth: Annotated[
        float, length("Thickness of the faceplate", "1/8 in, from 0 to 1/4 in, usually 1/16 to 3/16 in")
    ],
    rose: Annotated[float, length("Diameter of the rose", "2-5/8 in, from 1-1/4 to 5 in")],
    thickness_least: Annotated[float, length("Thinnest door, on the box", "1-3/8 in, from 3/4 to 3 in")],
    thickness_most: Annotated[float, length("Thickest door, on the box", "1-3/4 in, from 3/4 to 4 in")],
    stile: Annotated[
        float, length("Width of the solid edge", "0, from 0 to 48 in"), Help("0 for a door that is solid all through.")
    ],
    wood_behind: Annotated[float, length("Wood to leave behind the cross bore", "1/2 in, from 0 to 3 in")],
    wood_beside: Annotated[float, length("Wood to leave each side of the faceplate", "1/8 in, from 0 to 1 in")],
    stop_gap: Annotated[float, length("Gap between door and stop", "1/16 in, from 0 to 1/4 in, usually 0 to 1/8 in")],
    reveal: Annotated[
        float, length("Gap between door and jamb at the lock", "1/8 in, from 0 to 1/2 in, usually 1/16 to 3/16 in")
    ],
    latch_throw: Annotated[float, length("Throw of the latch", "1/2 in, from 1/4 to 1-1/2 in")],
    deadbolt_throw: Annotated[
        float, length("Throw of the deadbolt", "1 in, from 1 to 2 in"), Law("at least 1 in", "IPMC 304.18.1")
    ],
    behind_bolt: Annotated[float, length("Hole behind the strike, deeper than the bolt by", "1/8 in, from 0 to 1 in")],
    to_stud: Annotated[
        float,
        length("Face of the jamb to the stud", "1-1/4 in, from 1/2 to 3 in"),
        Help("The jamb and the shim space behind it."),
    ],
    strike_screw: Annotated[
        float, length("Screws at the deadbolt strike", "3 in, from 1/2 to 4 in"), Guidance("at least 3 in", CITIES)
    ],
    screws_each: Annotated[float, count("Screws at the strike of a deadbolt", "4, from 2 to 8")],
    bite_least: Annotated[
        float, length("Least screw in the stud", "3/4 in, from 1/4 to 3 in"), Guidance("at least 3/4 in", CITIES)
    ],
    accessible: Annotated[bool, yes_no("Accessible door", default="no")],
    cut: Annotated[bool, yes_no("Holes are in the door already", default="no")],
    cut_cross_bore: Annotated[float, length("Cross bore in the door", "2-1/8 in, from 1/2 to 4 in"), READ_ONLY_THEN],
    cut_edge_bore: Annotated[float, length("Edge bore in the door", "1 in, from 1/4 to 2 in"), READ_ONLY_THEN],
    cut_backset: Annotated[float, length("Backset in the door", "2-3/8 in, from 1/2 to 10 in"), READ_ONLY_THEN],
    tolerance: Annotated[float, length("Holes may be off by", "1/16 in, from 0 to 1/4 in")],
) -> Answer:
    """Bores, faceplate, strike and fit of one lock in one door.

    Lengths in inches, ``bevel`` as a ratio. Refused when the cross bore would break out of the edge, when the edge
    bore is not smaller than the cross bore, or when the hardware's thinnest door is thicker than its thickest.

    Source: the '160' and '161' preparations of ANSI/BHMA A156.115 (cross bore, edge bore, mortise, backset).

    >>> found = lock_preparation(thickness=1.75)
    >>> found["cross_bore_centre"], found["deadbolt_height"], found["strike_from_stop"], found["fits"]
    (2.375, 41.5, 0.9375, True)
    """
    centre = backset
    refuse_sizes(edge_bore, cross_bore, centre, thickness_least, thickness_most)
    width, tall, deep = faceplate_of(faceplate, centre, faceplate_height, faceplate_depth)
    deadbolt_height = height + spacing
    is_deadbolt = kind == "deadbolt"
    at = deadbolt_height if is_deadbolt else height
    thrown = deadbolt_throw if is_deadbolt else latch_throw
    off = thickness * bevel
    half = max(tall, edge_bore) / 2
    needed = centre + max(cross_bore / 2 + wood_behind, rose / 2)
    beside = max(0.0, (thickness - max(width, edge_bore)) / 2)

    misfits = thickness_misfits(thickness, thickness_least, thickness_most)
    thickness_fits = len(misfits) == 0
    misfits.extend(wood_misfits(beside, wood_beside, stile, needed))
    hole = cross_bore
    if cut:
        hole = max(cross_bore, cut_cross_bore)
        misfits.extend(
            holes_misfits(cut_cross_bore, cross_bore, cut_edge_bore, edge_bore, cut_backset, centre, tolerance + HAIR)
        )
    misfits.extend(rose_misfits(rose, hole, tolerance, is_deadbolt, spacing))
    if is_deadbolt:
        misfits.extend(strike_misfits(strike_screw, to_stud, bite_least))
    if accessible:
        misfits.extend(reach_misfits(at))

    screws = "The screws in the box, in pilot holes"
    if is_deadbolt:
        long = f"{inches(strike_screw)} long: {inches(max(0.0, strike_screw - to_stud))} into the stud"
        screws = f"{decimal(screws_each, 0)} wood screws, No. 8 or heavier, {long}"
    working = [
        f"cross bore centre from the high edge: the backset, {inches(centre)}",
        f"bevel: {inches(thickness)} x {decimal(bevel, 4)} = {inches(off, HAIR)}, so {inches(centre - off, HAIR)} from"
        " the low edge",
        f"deadbolt centre: {inches(height)} + {inches(spacing)} = {inches(deadbolt_height)}",
        f"faceplate or edge bore: {inches(at)} less and plus {inches(half)} = {inches(at - half)}, {inches(at + half)}",
        f"edge bore meets cross bore: {inches(centre)} - {inches(cross_bore / 2)} = {inches(centre - cross_bore / 2)}",
        f"strike from the stop: half of {inches(thickness)} + {inches(stop_gap)} = {inches(thickness / 2 + stop_gap)}",
        f"engagement: throw {inches(thrown)} - gap {inches(reveal)} = {inches(thrown - reveal)}",
        f"solid edge: {inches(centre)} + the larger of {inches(cross_bore / 2 + wood_behind)} (half the bore, and the"
        f" wood behind it) and {inches(rose / 2)} (half the rose) = {inches(needed)}",
    ]
    return {
        "cross_bore_centre": centre,
        "low_edge": centre - off,
        "cross_bore_diameter": cross_bore,
        "edge_bore_diameter": edge_bore,
        "edge_bore_centre": thickness / 2,
        "edge_bore_depth": centre - cross_bore / 2,
        "centre_height": at,
        "from_door_bottom": at - under_door,
        "deadbolt_height": deadbolt_height,
        "faceplate_width": width,
        "faceplate_height": tall,
        "mortise_depth": deep,
        "faceplate_top": at + half,
        "faceplate_bottom": at - half,
        "strike_height": at,
        "strike_from_stop": thickness / 2 + stop_gap,
        "strike_from_jamb_edge": thickness / 2,
        "strike_bore_depth": thrown + behind_bolt,
        "engagement": thrown - reveal,
        "strike_screws": screws,
        "solid_edge_needed": needed,
        "thickness_fits": thickness_fits,
        "fits": len(misfits) == 0,
        "misfits": misfits,
        "cautions": cautions_for(is_deadbolt, reveal, thrown, centre, width),
        "working": working,
    }
