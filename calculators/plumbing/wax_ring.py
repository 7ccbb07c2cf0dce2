"""Which wax ring closes the gap between the closet flange and the bowl.

The finished floor carries the bowl; the flange is fixed to the structure. How far the floor stands above the flange
decides how much wax is needed. Too little wax never touches the bowl. Too much holds the bowl off the floor, and the
bolts that pull it down break the porcelain.
"""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, Plot, refuse
from calculators.declaring import Help, calculator, choice, length
from calculators.plumbing.wax_ring_drawing import FLANGE_WAYS, apart, wax_ring_drawing
from calculators.ways import with_way
from calculators.writing import NOISE, TAPE, inches, tape

SUBFLOOR_WAYS = ("flange above subfloor", "flange below subfloor")
GAP_WAYS = ("", "below the flange")
SQUEEZE_WAYS = ("", "short")
"""The bowl's china may lie below the top of the flange, and a ring may not reach it."""

FITS = "fits"
TOO_THIN = "too thin: will not seal"
TOO_THICK = "too thick: bowl will not come down"
LOWER = "lower the flange: it stands too high for any ring"
REPAIR = "raise the flange: flange repair, no ring reaches"


def judge(squeeze: float, least: float, most: float) -> str:
    """Whether a ring squeezed by so much seals and lets the bowl down.

    >>> [judge(0.375, 0.25, 0.875), judge(-0.125, 0.25, 0.875), judge(1.0, 0.25, 0.875)]
    ['fits', 'too thin: will not seal', 'too thick: bowl will not come down']
    """
    if squeeze < least - TAPE:
        return TOO_THIN
    if squeeze > most + TAPE:
        return TOO_THICK
    return FITS


def spacers_needed(gap: float, least: float, most: float, ring: float, spacer: float, most_spacer: float) -> int:
    """The fewest spacer rings, each ``spacer`` thick, on which a ring fits; 0 where no stack does. Inches.

    >>> [spacers_needed(1.375, 0.25, 0.875, 1.0, 0.25, 1.0), spacers_needed(2.375, 0.25, 0.875, 1.0, 0.25, 1.0)]
    [3, 0]
    """
    count = 1
    while count * spacer <= most_spacer + NOISE:
        if judge(ring - gap + count * spacer, least, most) == FITS:
            return count
        count = count + 1
    return 0


@calculator(
    title="Wax ring for this floor",
    summary="The gap from flange to bowl, the squeeze of a ring in it, and the ring to use.",
    outputs=(
        Output("rise_used", "Floor and flange", "length", "in", step=1 / 16, rounds="tape", ways=FLANGE_WAYS),
        Output("gap", "Gap from flange to bowl", "length", "in", step=1 / 16, rounds="tape", ways=GAP_WAYS),
        Output("ring_to_use", "Use", "text"),
        Output("ring_judged", "Ring judged", "length", "in", step=1 / 16),
        Output("squeeze", "Squeeze of this ring", "length", "in", step=1 / 16, rounds="tape", ways=SQUEEZE_WAYS),
        Output("fit", "This ring", "text"),
        Output("fits", "It fits", "yes-no"),
        Output(
            "thick_reach",
            "Most floor above flange for the thick ring",
            "length",
            "in",
            step=1 / 16,
            rounds="down",
            help="0 where it does not reach above the flange at all.",
        ),
        Output("spacer", "Spacer ring on the flange", "length", "in", step=1 / 16, rounds="up"),
        Output(
            "standard_rings",
            "Standard rings to order",
            "count",
            step=1,
            help="One also where the flange is mended first.",
        ),
        Output("thick_rings", "Thick rings to order", "count", step=1),
        Output("spacer_rings", "Spacer rings to order", "count", step=1, rounds="up"),
    ),
    formula=(
        "Gap = recess under the bowl + floor above flange, or recess - flange above floor. Squeeze = ring - gap, the "
        "ring on its spacers. "
        "The thinner one of the standard and the thick ring whose squeeze lies between the least and the most is the "
        "one to use. The thick ring does up to thick ring - recess - least squeeze of floor above flange. Where both "
        "are too thin, spacer rings raise the flange one by one for a standard ring."
    ),
    sources=(
        Citation("ipc", "405.4.1, thickness of a floor flange"),
        Citation("ipc", "405.4, flange anchored to the structure, joint sealed"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={"rise": "1/2 in floor above flange"},
    other_names=("wax seal", "bowl ring", "bowl wax", "toilet gasket", "jumbo ring", "extra thick ring"),
    cannot_decide=(
        "Whether the flange is sound and anchored, and what the bowl's own instructions ask for. "
        "The instructions win over this table; the inspector decides on the flange."
    ),
    drawing=wax_ring_drawing,
    plots=(
        Plot(
            "Squeeze against the rise of the floor, for two rings",
            x="rise",
            y="squeeze",
            start=-1.0,
            end=1.5,
            curves=("ring", ("standard_ring", "thick_ring")),
        ),
    ),
)
def wax_ring(
    rise_from: Annotated[
        str,
        choice(
            "Height of the floor",
            {"measured": "measured at the flange", "layers": "built up from the floor's layers"},
            default="measured",
        ),
        Help("Measure where the floor is finished; build it up from layers while it is still to come."),
    ],
    rise: Annotated[
        float,
        length(
            "Finished floor and top of the flange",
            "1/4 in flange above floor, from 2 in flange above floor to 4 in floor above flange, "
            "usually 1/4 in flange above floor to 5/8 in floor above flange",
            "in",
            ways=FLANGE_WAYS,
        ),
        Help("Level across both, on the higher one. Measure down to the lower one."),
    ],
    flange_above_subfloor: Annotated[
        float,
        length(
            "Top of the flange and subfloor",
            "1/4 in flange above subfloor, from 2 in flange below subfloor to 4 in flange above subfloor",
            "in",
            ways=SUBFLOOR_WAYS,
        ),
        Help("Used with 'layers'. A plastic flange screwed to the subfloor stands 1/4 in above it."),
    ],
    floor_layers: Annotated[
        float,
        length("Floor layers on the subfloor, together", "3/4 in, from 0 to 6 in"),
        Help("Used with 'layers'. Underlayment, thinset, tile or board, all of them."),
    ],
    recess: Annotated[
        float,
        length("Recess under the bowl", "5/8 in, from 1/8 to 2 in, usually 3/8 to 7/8 in"),
        Help("Bowl on its side, straightedge across the foot: from the straightedge to the china beside the horn."),
    ],
    ring: Annotated[
        float, length("Thickness of the ring", "0, from 0 to 4 in"), Help("To judge one. 0: the one to use.")
    ],
    standard_ring: Annotated[float, length("Standard ring", "1 in, from 1/4 to 4 in, usually 3/4 to 1-1/4 in")],
    thick_ring: Annotated[float, length("Thick ring", "1-1/2 in, from 1/4 to 4 in, usually 1-1/4 to 2 in")],
    spacer_ring: Annotated[float, length("Spacer ring, one", "1/4 in, from 1/16 to 2 in, usually 1/8 to 1/2 in")],
    least_squeeze: Annotated[
        float, length("Least squeeze that seals", "1/4 in, from 0 to 1 in, usually 1/8 to 1/2 in")
    ],
    most_squeeze: Annotated[float, length("Most squeeze that lets the bowl down", "7/8 in, from 0 to 2 in")],
    most_spacer: Annotated[float, length("Tallest stack of spacer rings", "1 in, from 0 to 3 in")],
    flange_height: Annotated[float, length("Flange belongs above the floor by", "1/4 in, from 0 to 1 in")],
) -> Answer:
    """The gap from flange to bowl, how far a ring is squeezed in it, and the ring to use.

    Inches. ``rise`` is the finished floor above the flange's top face, less than 0 below it. ``recess`` goes from
    the plane of the bowl's foot to the china that meets the wax. ``ring`` is judged on the spacers; 0 for the one
    that is named.

    Source: the gap is geometry. A plastic flange is at least 1/4 in thick (IPC 405.4.1), so one that lies on the
    finished floor gives a rise of -1/4 in. The ring thicknesses and the squeeze are common practice; no standard
    was found that gives them.

    >>> answer = wax_ring(rise=-0.25)
    >>> [answer["gap"], answer["squeeze"], answer["fit"], answer["ring_to_use"]]
    [0.375, 0.625, 'fits', '1 in ring']
    >>> answer = wax_ring(rise=0.5)
    >>> [answer["ring_to_use"], answer["ring_judged"], answer["squeeze"]]
    ['1-1/2 in ring', 1.5, 0.375]
    """
    if least_squeeze > most_squeeze:
        refuse(
            "least_squeeze",
            f"The least squeeze, {inches(least_squeeze)}, is more than the most, {inches(most_squeeze)}.",
        )
    if standard_ring > thick_ring:
        refuse(
            "thick_ring", f"The thick ring, {inches(thick_ring)}, is thinner than the other, {inches(standard_ring)}."
        )
    working = []
    floor_rise = rise
    if rise_from == "layers":
        floor_rise = floor_layers - flange_above_subfloor
        flange = with_way(SUBFLOOR_WAYS, flange_above_subfloor, inches(abs(flange_above_subfloor)))
        working.append(f"floor layers {inches(floor_layers)}, {flange}: {apart(floor_rise)}")
    gap = floor_rise + recess
    spacers = 0
    thick_rings = 0
    named = standard_ring
    if judge(standard_ring - gap, least_squeeze, most_squeeze) == FITS:
        ring_to_use = f"{inches(standard_ring)} ring"
    elif judge(thick_ring - gap, least_squeeze, most_squeeze) == FITS:
        ring_to_use = f"{inches(thick_ring)} ring"
        named = thick_ring
        thick_rings = 1
    elif standard_ring - gap > most_squeeze:
        ring_to_use = LOWER
    else:
        spacers = spacers_needed(gap, least_squeeze, most_squeeze, standard_ring, spacer_ring, most_spacer)
        ring_to_use = REPAIR
        if spacers > 0:
            raised = inches(spacers * spacer_ring)
            ring_to_use = f"raise the flange: {raised} of spacer ring, then a {inches(standard_ring)} ring"
        else:
            named = thick_ring
    raised_by = spacers * spacer_ring
    judged = named
    if ring > 0:
        judged = ring
        raised_by = 0.0
    squeeze = judged + raised_by - gap
    rule = f"gap = recess + floor above flange: {inches(recess)} + {tape(floor_rise)} = "
    if floor_rise < 0:
        rule = f"gap = recess - flange above floor: {inches(recess)} - {tape(-floor_rise)} = "
    gap_is = with_way(GAP_WAYS, gap, tape(abs(gap)))
    squeeze_is = with_way(SQUEEZE_WAYS, squeeze, tape(abs(squeeze)))
    working.append(rule + gap_is)
    of_ring = inches(judged)
    if raised_by > 0:
        of_ring = f"{of_ring} on {inches(raised_by)} of spacer"
    rule = f"squeeze = ring less gap: {of_ring} - {tape(gap)} = "
    if gap < 0:
        rule = f"squeeze = ring + what the bowl lies below the flange: {of_ring} + {tape(-gap)} = "
    working.append(rule + squeeze_is)
    working.append(f"the seal wants a squeeze of {inches(least_squeeze)} to {inches(most_squeeze)}")
    return {
        "rise_used": floor_rise,
        "gap": gap,
        "ring_judged": judged,
        "squeeze": squeeze,
        "fit": judge(squeeze, least_squeeze, most_squeeze),
        "fits": judge(squeeze, least_squeeze, most_squeeze) == FITS,
        "ring_to_use": ring_to_use,
        "thick_reach": max(0.0, thick_ring - least_squeeze - recess),
        "spacer": spacers * spacer_ring,
        "standard_rings": 1 - thick_rings,
        "thick_rings": thick_rings,
        "spacer_rings": spacers,
        "cautions": cautions_for(floor_rise, gap, thick_rings, spacers, flange_height),
        "working": working,
    }


def cautions_for(floor_rise: float, gap: float, thick_rings: int, spacers: int, flange_height: float) -> list[str]:
    """What to watch at this height of the flange. Inches."""
    height = inches(flange_height)
    cautions = []
    if gap <= NOISE:
        cautions.append("The bowl would rest on the flange, not on the floor: no ring helps. The flange comes down.")
    elif floor_rise < -flange_height - NOISE:
        cautions.append(
            f"The flange stands more than {height} above the floor. Set the bowl dry: if it rocks, lower the flange."
        )
    if floor_rise > NOISE:
        cautions.append(f"The flange lies below the floor. While the floor is open, raise it to stand {height} above.")
    if thick_rings > 0:
        cautions.append("Lower the bowl slowly: a thick ring that is hit off centre spreads into the pipe.")
    if spacers > 0:
        cautions.append(
            "Two rings stacked in place of a spacer are disputed: one can slide on the other. This crew does not."
        )
    return cautions
