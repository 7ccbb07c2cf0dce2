"""Two floors that meet at a doorway: how high each comes to stand, and what goes between them."""

from __future__ import annotations

from typing import Annotated, Any

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, Sheet
from calculators.declaring import Law, calculator, length
from calculators.drawing import dimension, leader, line, rectangle, sheet
from calculators.writing import NOISE, inches

BEVEL = 2.0
"""Run of a bevel for each inch that it rises."""


def floor_heights_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """A section through the doorway: 0, 0 is on the subfloor where the two meet; tile left, strip right."""
    wide = 3.0
    joint = 0.25
    tile_top = answer["tile_height"]
    strip_top = answer["strip_height"]
    tile_high = inches(tile_top, 0.03125)
    strip_high = inches(strip_top, 0.03125)
    apart = inches(answer["difference"], 0.03125)
    backer_low = values["backer_bed"]
    bed_low = backer_low + values["backer"]
    tile_low = bed_low + values["bed"]
    shapes = [
        rectangle(-wide, -0.75, 2 * wide + joint, 0.75, "wood", "outline"),
        rectangle(-wide, 0.0, wide, bed_low, "concrete", "outline"),
        rectangle(-wide, bed_low, wide, values["bed"], "paper", "fine"),
        rectangle(-wide, tile_low, wide, values["tile"], "tile", "cut"),
        rectangle(joint, 0.0, wide, values["felt"], "paper", "fine"),
        rectangle(joint, values["felt"], wide, values["strip"], "wood", "cut"),
        line(-wide, max(tile_top, strip_top), wide + joint, max(tile_top, strip_top), "hidden"),
        dimension(-wide, 0.0, -wide, tile_top, tile_high, "left"),
        dimension(wide + joint, 0.0, wide + joint, strip_top, strip_high, "right"),
        leader(-wide * 0.7, tile_low + values["tile"] / 2, "tile " + inches(values["tile"]), "above"),
        leader(-wide * 0.4, bed_low / 2, "backer " + inches(values["backer"]) + " and its bed", "below"),
        leader(wide * 0.6, values["felt"] + values["strip"] / 2, "strip " + inches(values["strip"]), "above"),
        leader(joint / 2, 0.1, "joint with trim or sealant", "below"),
    ]
    alt = (
        f"A section through the doorway on one subfloor. Left, tile: backer {inches(values['backer'])} in its bed, "
        f"mortar, and tile {inches(values['tile'])}, {tile_high} high. Right, strip {inches(values['strip'])}, "
        f"on felt, {strip_high} high. They differ by {apart}: {answer['meeting']}."
    )
    return sheet("Where tile meets strip", alt, shapes)


@calculator(
    title="Where tile meets strip",
    summary="The height of each floor above the subfloor, and what goes between: flush, a reducer, or other layers.",
    outputs=(
        Output("tile_height", "Tile above the subfloor", "length", "in", step=1 / 32),
        Output("strip_height", "Strip above the subfloor", "length", "in", step=1 / 32),
        Output("difference", "Difference", "length", "in", step=1 / 32),
        Output("higher", "Higher", "text"),
        Output("meeting", "How they meet", "text"),
        Output("what", "What goes between", "text"),
        Output("backer_flush", "Backer that would make them flush", "length", "in", step=1 / 32),
        Output("bevel", "Width of a bevel of 1:2", "length", "in", step=1 / 16, rounds="up"),
        Output(
            "reducer", "Reducer for the doorway", "length", "ft", step=0.1, rounds="up", help="0 where they meet flush."
        ),
    ),
    formula=(
        "Tile = backer and its bed + mortar + tile. Strip = felt + strip. Both from the same subfloor.\n\n"
        "Within the flush limit: flush. Up to the most with a bevel: a reducer, bevelled at 1:2 where the difference "
        "is more than may stand upright. Above: other layers."
    ),
    sources=(Citation("ada-2010", "303.2 and 303.3"), COMMON_PRACTICE, CREW_RULE),
    example={"tile": "5/16 in", "backer": "1/4 in"},
    other_names=("transition height", "tile to wood transition", "floor thickness", "reducer height"),
    cannot_decide="Whether the dwelling has to be accessible, and what the local code asks of a step at a door.",
    drawing=floor_heights_drawing,
)
def floor_heights(
    strip: Annotated[float, length("Strip, thickness", "3/4 in, from 1/4 to 1-1/2 in")],
    felt: Annotated[float, length("Felt under the strip", "1/32 in, from 0 to 1/4 in")],
    tile: Annotated[float, length("Tile, thickness", "5/16 in, from 1/8 to 1 in, usually 1/4 to 1/2 in")],
    bed: Annotated[
        float, length("Mortar under the tile, pressed", "1/8 in, from 1/32 to 3/4 in, usually 1/16 to 1/4 in")
    ],
    backer: Annotated[float, length("Backer or membrane", "1/4 in, from 0 to 1 in, usually 1/8 to 5/8 in")],
    backer_bed: Annotated[float, length("Mortar under it, pressed", "1/16 in, from 0 to 1/2 in")],
    flush_within: Annotated[float, length("Counts as flush within", "1/16 in, from 0 to 1/4 in")],
    upright_most: Annotated[
        float, length("Most upright difference", "1/4 in, from 0 to 1/4 in"), Law("at most 1/4 in", "2010 ADA 303.2")
    ],
    bevel_most: Annotated[
        float,
        length("Most difference with a bevel", "1/2 in, from 1/8 to 1/2 in"),
        Law("at most 1/2 in", "2010 ADA 303.3"),
    ],
    doorway: Annotated[float, length("Width of the doorway", "36 in, from 12 to 144 in, usually 24 to 72 in")],
) -> Answer:
    """How high strip and tile stand above the same subfloor, and what goes between. All in inches.

    >>> answer = floor_heights()
    >>> answer["strip_height"], answer["tile_height"], answer["meeting"], answer["reducer"]
    (0.78125, 0.75, 'flush', 0.0)

    Source: sums; 1/4 in upright and 1/2 in with a bevel of 1:2 are the limits of accessible floors (303.2, 303.3).
    """
    strip_height = strip + felt
    tile_height = tile + bed + backer + backer_bed
    difference = tile_height - strip_height
    apart = abs(difference)
    meeting = "flush"
    what = "An edge trim in the joint, level with both, and flexible sealant."
    cautions: list[str] = []
    if apart > flush_within + NOISE:
        meeting = "reducer"
        what = f"A reducer that falls {inches(apart, 0.03125)}; no edge stands upright."
        if apart > upright_most + NOISE:
            cautions.append(
                f"The difference is over {inches(upright_most)}: it is bevelled, at least {inches(apart * BEVEL)} wide."
            )
    if apart > bevel_most + NOISE:
        meeting = "change the layers"
        what = f"Raise the lower floor by {inches(apart, 0.03125)} with a panel under all of it, before either is laid."
        cautions.append(f"Over {inches(bevel_most)} is a ramp or a step. It is settled in the subfloor.")
    reducer = doorway if meeting == "reducer" else 0.0
    higher = "tile"
    raise_by = -difference
    if difference < 0:
        higher = "strip"
    if apart <= flush_within + NOISE:
        higher = "neither"
    return {
        "tile_height": tile_height,
        "strip_height": strip_height,
        "difference": apart,
        "higher": higher,
        "meeting": meeting,
        "what": what,
        "backer_flush": max(0.0, backer + raise_by),
        "bevel": apart * BEVEL,
        "reducer": reducer,
        "cautions": cautions,
        "working": [
            f"tile {inches(tile, 0.03125)} + bed {inches(bed, 0.03125)} + backer {inches(backer, 0.03125)} + its bed "
            f"{inches(backer_bed, 0.03125)} = {inches(tile_height, 0.03125)}",
            f"strip {inches(strip, 0.03125)} + felt {inches(felt, 0.03125)} = {inches(strip_height, 0.03125)}",
        ],
    }
