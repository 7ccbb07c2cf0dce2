"""Contraction joints: how far apart, how deep, and how a pad is divided into panels."""

from __future__ import annotations

from typing import Annotated

from calculators.concrete.joint_spacing_drawing import joint_spacing_drawing
from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output
from calculators.declaring import Guidance, Help, Law, calculator, choice, count, length, number, yes_no
from calculators.writing import NOISE, decimal, feet_inches, inches, whole

BETTER_RATIO = 1.25
EARLY_ENTRY_DEPTH = 1.0
STIFF_UNDER = 4.0
"""Inches of slump: PCA's table has one column for 4 to 6 in, and one for less."""


def factor(aggregate: str, slump: float) -> float:
    """Spacing as a multiple of the thickness: 24, 30 or 36. Inches of slump.

    >>> [factor("up-to-3-4", 4), factor("over-3-4", 6), factor("over-3-4", 3.5)]
    [24.0, 30.0, 36.0]
    """
    if slump < STIFF_UNDER - NOISE:
        return 36.0
    if aggregate == "over-3-4":
        return 30.0
    return 24.0


def ratio_of(one: float, other: float) -> float:
    """The long side over the short side.

    >>> [ratio_of(6, 9), ratio_of(9, 6)]
    [1.5, 1.5]
    """
    return max(one, other) / min(one, other)


def least_panels(length: float, width: float, spacing: float, most_ratio: float) -> list[int]:
    """The fewest panels along the length and across the width, none longer than the spacing or out of square.

    Of layouts with as few panels, the one with the least sawing. A strip that is much longer than wide needs about
    length / width panels, so the search looks no further than that.

    >>> least_panels(240, 192, 96, 1.5)
    [3, 2]
    """
    first = whole(width / spacing, "up")
    last = first + whole(2.5 * width / length, "up") + 3
    best: list[int] = []
    for across in range(first, last + 1):
        strip = width / across
        along = max(whole(length / spacing, "up"), whole(length / (strip * most_ratio), "up"))
        if ratio_of(length / along, strip) <= most_ratio + NOISE:
            better = len(best) == 0
            if len(best) > 0:
                fewer = along * across < best[0] * best[1]
                same = along * across == best[0] * best[1]
                less = sawing(along, across, length, width) < sawing(best[0], best[1], length, width)
                better = fewer or (same and less)
            if better:
                best = [along, across]
    return best


def sawing(along: int, across: int, length: float, width: float) -> float:
    """Length of the joints that divide the pad into so many panels along its length and across its width.

    >>> sawing(3, 2, 240, 192)
    624
    """
    return (along - 1) * width + (across - 1) * length


AGGREGATES = {"up-to-3-4": "up to 3/4 in", "over-3-4": "over 3/4 in"}


@calculator(
    title="Contraction joints of a slab",
    summary="How far apart and how deep the joints of a plain slab go, and how a pad is divided.",
    outputs=(
        Output("spacing", "Joints at most apart", "length", "ft-in", step=1 / 2, rounds="down"),
        Output("table_spacing", "The table's figure, in whole feet", "length", "ft", step=1),
        Output("joint_depth", "Depth of the joint, at least", "length", "in", step=1 / 16, rounds="up"),
        Output("panels_along", "Panels along the length", "count", step=1),
        Output("panels_across", "Panels across the width", "count", step=1),
        Output("panel_length", "Panel, along the length", "length", "ft-in"),
        Output("panel_width", "Panel, across the width", "length", "ft-in"),
        Output("ratio", "Long side over short side", "number", step=0.01),
        Output("joints", "Length of joints", "length", "ft", step=1, rounds="up"),
        Output("verdict", "Layout", "text"),
    ),
    formula=(
        "Spacing = thickness x 24 (slump 4 to 6 in, stone up to 3/4 in), x 30 (larger stone) or x 36 (slump under "
        "4 in), and never more than the most set.\n\n"
        "Depth of the joint = thickness / 4; 1 in with an early-entry saw.\n\n"
        "Panels: the fewest that keep both sides within the spacing and the long side within 1.5 times the short."
    ),
    sources=(
        Citation("pca-floors", "joint spacing table, 2nd ed. 1983"),
        Citation("aci-302", "joint spacing, depth and panel shape"),
        COMMON_PRACTICE,
    ),
    example={"thickness": "6 in", "length": "12'", "width": "6'"},
    other_names=("control joints", "saw cuts", "crack control"),
    cannot_decide=(
        "It is for plain slabs on ground. Joints at manholes, inside corners and old slabs follow those, and the "
        "city's standard drawing rules where it shows joints. Reinforced and structural slabs are an engineer's."
    ),
    drawing=joint_spacing_drawing,
)
def joint_spacing(
    thickness: Annotated[float, length("Slab thickness", "6 in, from 3 to 12 in, usually 4 to 10 in")],
    aggregate: Annotated[str, choice("Largest stone", AGGREGATES, default="up-to-3-4")],
    slump: Annotated[float, length("Slump", "4 in, from 1 to 6 in, usually 2 to 5 in")],
    most_spacing: Annotated[
        float,
        length("Never further apart than", "18 ft, from 4 to 30 ft, usually 8 to 18 ft", "ft-in"),
        Guidance("at most 18 ft", "ACI 302.1R"),
    ],
    length: Annotated[float, length("Length of the pad", "12 ft, from 1 to 200 ft", "ft-in")],
    width: Annotated[float, length("Width of the pad", "6 ft, from 1 to 200 ft", "ft-in")],
    most_ratio: Annotated[
        float,
        number("Long side at most so many times the short", "1.5, from 1.25 to 1.5"),
        Law("at most 1.5", "ACI 302.1R"),
    ],
    along: Annotated[int, count("Panels along the length", "0, from 0 to 200"), Help("0: the fewest that fit.")],
    across: Annotated[int, count("Panels across the width", "0, from 0 to 200"), Help("0: the fewest that fit.")],
    early_entry: Annotated[bool, yes_no("Early-entry saw", default="no")],
) -> Answer:
    """Joint spacing by the thickness, and the panels of a pad. All lengths in inches.

    ``along`` and ``across`` are panels wanted along the length and across the width; 0 takes the fewest that fit.

    A plain 4 in slab of ordinary mix wants a joint every 8 ft (PCA, Concrete Floors on Ground, 2nd ed.):

    >>> answer = joint_spacing(thickness=4, length=240, width=192)
    >>> answer["spacing"] / 12, answer["joint_depth"]
    (8.0, 1.0)
    """
    by_rule = factor(aggregate, slump) * thickness
    spacing = min(by_rule, most_spacing)
    panels = least_panels(length, width, spacing, most_ratio)
    if along == 0 and across == 0:
        along = panels[0]
        across = panels[1]
    if along == 0:
        along = whole(length / spacing, "up")
    if across == 0:
        across = whole(width / spacing, "up")
    panel_length = length / along
    panel_width = width / across
    ratio = ratio_of(panel_length, panel_width)
    joint_depth = EARLY_ENTRY_DEPTH if early_entry else thickness / 4

    faults: list[str] = []
    if panel_length > spacing + NOISE:
        faults.append(f"panels {feet_inches(panel_length)} along the length are over {feet_inches(spacing)}")
    if panel_width > spacing + NOISE:
        faults.append(f"panels {feet_inches(panel_width)} across the width are over {feet_inches(spacing)}")
    if ratio > most_ratio + NOISE:
        faults.append(f"the long side is {decimal(ratio, 2)} times the short one, over {decimal(most_ratio, 2)}")
    verdict = "pass"
    cautions: list[str] = []
    for fault in faults:
        verdict = "fail"
        cautions.append(f"It will crack by itself: {fault}. {panels[0]} x {panels[1]} panels fit.")
    if len(faults) == 0 and ratio > BETTER_RATIO + NOISE:
        cautions.append(
            f"The long side is {decimal(ratio, 2)} times the short one: within the limit, "
            f"and {decimal(BETTER_RATIO, 2)} or less is better."
        )
    joints = sawing(along, across, length, width)
    working = [
        f"{decimal(by_rule / thickness, 0)} x {inches(thickness)} = {feet_inches(by_rule)}; "
        f"at most {feet_inches(most_spacing)}: a joint every {feet_inches(spacing)}.",
        f"Panels: {feet_inches(length)} / {decimal(along, 0)} = {feet_inches(panel_length)} "
        f"by {feet_inches(width)} / {decimal(across, 0)} = {feet_inches(panel_width)}; ratio {decimal(ratio, 2)}.",
        f"Joints: {decimal(along - 1, 0)} x {feet_inches(width)} + {decimal(across - 1, 0)} x {feet_inches(length)} "
        f"= {feet_inches(joints)}.",
    ]
    return {
        "spacing": spacing,
        "table_spacing": whole(by_rule / 12, "nearest") * 12.0,
        "joint_depth": joint_depth,
        "panels_along": along,
        "panels_across": across,
        "panel_length": panel_length,
        "panel_width": panel_width,
        "ratio": ratio,
        "joints": joints,
        "verdict": verdict,
        "cautions": cautions,
        "working": working,
    }
