"""A tile floor: the layout across the room, and what to order for it.

Published rules used here: the most lippage and its joint widths, the joint at least three times the difference of the
tiles, movement joints (tile standards). All else is geometry: tiles in a room, ridges of a notched trowel, joints
between tiles.
"""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, refuse
from calculators.declaring import Guidance, Help, area, calculator, choice, count, length, mass, percent, volume, yes_no
from calculators.flooring.floor_inputs import Layout
from calculators.flooring.tile_drawing import tile_drawing
from calculators.flooring.tile_joints import bed_of, field_cautions, joint_share, joints_in, tile_cautions
from calculators.flooring.tile_layout import balanced, full_at_start
from calculators.writing import decimal, feet_inches, inches

WIDE_JOINT = 0.25
"""Inches of joint: from here on the standard allows more lippage."""
SQUARE_INCHES = 144
CUBIC_INCHES = 1728


@calculator(
    title="Tile floor: layout and what to order",
    summary="Cuts at the walls without a sliver, tiles, boxes, mortar by the trowel's notch, and grout.",
    outputs=(
        Output("area", "Floor to tile", "area", "sq ft", step=0.1),
        Output("full_along", "Full tiles along the room", "count", step=1),
        Output("full_across", "Full tiles across", "count", step=1),
        Output("cut_along", "Last tile along the room", "length", "in", step=1 / 16),
        Output("cut_across", "First and last tile across", "length", "in", step=1 / 16),
        Output("gap_along", "Gap at the walls, along", "length", "in", step=1 / 16),
        Output("gap_across", "Gap at the walls, across", "length", "in", step=1 / 16),
        Output("pieces", "Pieces laid in the whole rectangle", "count", step=1),
        Output("tiles", "Tiles to order", "count", "tiles", step=1, rounds="up"),
        Output("boxes", "Boxes", "count", "boxes", step=1, rounds="up"),
        Output("bed", "Mortar under the tile, pressed", "length", "in", step=1 / 32),
        Output("mortar", "Mortar, mixed", "volume", "cu ft", step=0.1, rounds="up"),
        Output("bags", "Bags of mortar", "count", "bags", step=1, rounds="up"),
        Output("sheets", "Sheets of backer", "count", "sheets", step=1, rounds="up"),
        Output("grout", "Grout, dry", "mass", "lb", step=1 / 2, rounds="up"),
        Output("grout_bags", "Bags of grout", "count", "bags", step=1, rounds="up"),
        Output("edge", "Joint along the walls", "length", "ft", step=1, rounds="up"),
        Output("movement", "Movement joints in the field", "count", step=1),
        Output("lippage", "Most lippage, beside the tile's own warp", "length", "in", step=1 / 32, rounds="down"),
    ),
    formula=(
        "Balanced: one full tile fewer than fits, and what is left is halved, so that no cut is under half a tile.\n\n"
        "Tiles = area x (1 + waste) / (tile with its joint); laid straight, at least the pieces and the broken.\n\n"
        "Bed = notch depth x sin 45 deg / 2. Mortar = area x (bed + bed of the backer) x (1 + waste).\n\n"
        "Grout = area x (1 - tile / tile with its joint) x thickness x weight x (1 + waste)."
    ),
    sources=(
        Citation("ansi-a108", "A108.02, 4.3: lippage, joint width, large tiles; cuts large and balanced"),
        Citation("tcna-handbook", "EJ171, movement joints"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={"length": "8'", "width": "5'"},
    other_names=("tile estimate", "tile layout", "thinset calculator", "grout calculator", "how many tiles"),
    cannot_decide=(
        "The bags of mortar and grout say what they make, and the trowel is proved by lifting a tile. Whether the "
        "floor is stiff enough for tile is a matter of its joists."
    ),
    drawing=tile_drawing,
)
def tile_take_off(
    length: Annotated[float, length("Room, from the doorway to the far wall", "8 ft, from 2 to 100 ft", "ft-in")],
    width: Annotated[float, length("Room, across", "5 ft, from 2 to 100 ft", "ft-in")],
    more_area: Annotated[float, area("More floor: alcoves, doorways", "0, from 0 to 5000 sq ft")],
    less_area: Annotated[float, area("Floor not tiled: tub, built-ins", "0, from 0 to 5000 sq ft")],
    tile_length: Annotated[float, length("Tile, along the room", "12 in, from 1 to 48 in, usually 4 to 24 in")],
    tile_width: Annotated[float, length("Tile, across the room", "12 in, from 1 to 48 in, usually 4 to 24 in")],
    thickness: Annotated[float, length("Thickness of the tile", "5/16 in, from 1/8 to 1 in, usually 1/4 to 1/2 in")],
    joint: Annotated[
        float,
        length("Joint between tiles", "1/8 in, from 1/32 to 3/4 in, usually 1/16 to 3/8 in"),
        Guidance("at least 1/16 in", "ANSI A108.02, 4.3"),
    ],
    gap: Annotated[float, length("Gap at every wall", "1/4 in, from 1/16 to 1 in, usually 1/8 to 1/2 in")],
    layout: Layout,
    doorway: Annotated[
        str,
        choice(
            "At the doorway",
            {"balanced": "Cuts alike at both ends", "full": "A full tile at the doorway"},
            default="balanced",
        ),
    ],
    waste: Annotated[float, percent("Cutting waste, straight", "10 %, from 0 to 50 %, usually 5 to 15 %")],
    waste_diagonal: Annotated[float, percent("Cutting waste, diagonal", "15 %, from 0 to 50 %, usually 12 to 20 %")],
    spare: Annotated[float, percent("Broken, on top of the pieces laid", "5 %, from 0 to 50 %, usually 2 to 10 %")],
    tiles_per_box: Annotated[float, count("Tiles in a box", "10, from 1 to 500")],
    notch_width: Annotated[
        float, length("Notch of the trowel, wide", "1/4 in, from 1/16 to 1 in, usually 3/16 to 1/2 in")
    ],
    notch_depth: Annotated[
        float, length("Notch of the trowel, deep", "3/8 in, from 1/16 to 1 in, usually 3/16 to 1/2 in")
    ],
    back_butter: Annotated[bool, yes_no("Backs buttered", default="no")],
    butter: Annotated[float, length("Mortar that buttering adds", "1/32 in, from 0 to 1/4 in")],
    backer_bed: Annotated[float, length("Mortar under the backer, 0 for none", "1/16 in, from 0 to 1/2 in")],
    sheet_area: Annotated[float, area("Backer in a sheet", "15 sq ft, from 1 to 100 sq ft")],
    bag_fills: Annotated[
        float, volume("A bag of mortar makes", "0.6 cu ft, from 0.05 to 2 cu ft, usually 0.5 to 0.75 cu ft")
    ],
    mortar_waste: Annotated[float, percent("Mortar left in the bucket", "10 %, from 0 to 50 %")],
    grout_weight: Annotated[
        float, mass("Dry grout for a cubic foot of joint", "100 lb, from 50 to 150 lb, usually 90 to 120 lb")
    ],
    grout_bag: Annotated[float, mass("Grout in a bag", "10 lb, from 1 to 60 lb")],
    grout_waste: Annotated[float, percent("Grout washed off", "10 %, from 0 to 50 %")],
    most_run: Annotated[
        float,
        length("Movement joints at most apart", "25 ft, from 5 to 40 ft, usually 8 to 25 ft", "ft-in"),
        Guidance("at most 25 ft", "EJ171 for floors indoors"),
    ],
    lippage_most: Annotated[
        float,
        length("Most lippage, joints under 1/4 in", "1/32 in, from 0 to 1/8 in"),
        Guidance("at most 1/32 in", "ANSI A108.02, 4.3.7"),
        Help("Twice as much from 1/4 in on."),
    ],
) -> Answer:
    """Layout, tiles, mortar and grout of a rectangular room.

    Lengths in inches, areas in square feet, ``bag_fills`` in cubic feet of mixed mortar. The tile's length runs
    with the room's length; the doorway is at the start of the length.

    >>> answer = tile_take_off(backer_bed=0, grout_bag=25)
    >>> answer["area"], answer["pieces"], answer["cut_along"], answer["cut_across"]
    (40.0, 40, 11.3125, 11.5)

    Source: plane geometry; most lippage and movement joints by the tile standards.
    """
    area = length * width / SQUARE_INCHES + more_area - less_area
    if area <= 0:
        refuse("less_area", f"what is not tiled takes the whole floor: {decimal(area, 1)} sq ft are left")
    if length - 2 * gap < tile_length + joint:
        refuse("tile_length", f"a tile {inches(tile_length)} long does not go into {feet_inches(length)} of room whole")
    if width - 2 * gap < tile_width + joint:
        refuse("tile_width", f"a tile {inches(tile_width)} wide does not go into {feet_inches(width)} of room whole")
    along = balanced(length, tile_length, joint, gap)
    if doorway == "full":
        along = full_at_start(length, tile_length, joint, gap)
    across = balanced(width, tile_width, joint, gap)
    pieces = along["pieces"] * across["pieces"]

    module = (tile_length + joint) * (tile_width + joint) / SQUARE_INCHES
    extra = waste_diagonal if layout == "diagonal" else waste
    by_area = area / module * (1 + extra / 100)
    share = area / (length * width / SQUARE_INCHES)
    by_layout = pieces * share * (1 + spare / 100)
    tiles = max(by_area, by_layout) if layout == "straight" else by_area
    working = [
        f"{decimal(area, 1)} sq ft / {decimal(module, 3)} sq ft a tile with its joint, and {decimal(extra, 0)} %: "
        f"{decimal(by_area, 1)} tiles"
    ]
    if layout == "straight":
        working.append(
            f"laid: {decimal(along['pieces'], 0)} x {decimal(across['pieces'], 0)} = {decimal(pieces, 0)} pieces, each "
            f"from a tile of its own; over {decimal(share, 2)} of the room and {decimal(spare, 0)} % broken: "
            f"{decimal(by_layout, 1)} tiles"
        )

    bed = bed_of(notch_width, notch_depth)
    if back_butter:
        bed = bed + butter
    mortar = area * (bed + backer_bed) / 12 * (1 + mortar_waste / 100)
    working.append(
        f"a bed of {decimal(bed, 3)} in, {decimal(backer_bed, 3)} in under the backer, over {decimal(area, 1)} sq ft "
        f"and {decimal(mortar_waste, 0)} %: "
        f"{decimal(mortar, 2)} cu ft; a bag fills {decimal(bag_fills, 2)} cu ft"
    )
    joints = joint_share(tile_length, tile_width, joint)
    grout = area * joints * thickness / 12 * (1 + grout_waste / 100)
    working.append(
        f"joints are {decimal(joints * 100, 2)} % of the floor, {inches(thickness)} deep, and "
        f"{decimal(grout_waste, 0)} %: {decimal(grout * CUBIC_INCHES, 0)} cu in; "
        f"{decimal(grout_weight, 0)} lb a cu ft: {decimal(grout * grout_weight, 1)} lb"
    )
    lippage = 2 * lippage_most if joint >= WIDE_JOINT else lippage_most
    cut_along = tile_length if along["last"] == 0 else along["last"]
    cut_across = tile_width if across["last"] == 0 else across["last"]
    movement = joints_in(length, most_run) + joints_in(width, most_run)
    cautions = tile_cautions(tile_length, tile_width, joint, layout, back_butter)
    cautions.extend(field_cautions(layout, cut_along, tile_length, movement, most_run))
    return {
        "area": area,
        "full_along": along["full"],
        "full_across": across["full"],
        "cut_along": cut_along,
        "cut_across": cut_across,
        "gap_along": along["gap"],
        "gap_across": across["gap"],
        "pieces": pieces,
        "tiles": tiles,
        "boxes": tiles / tiles_per_box,
        "bed": bed,
        "mortar": mortar,
        "bags": mortar / bag_fills,
        "sheets": area * (1 + waste / 100) / sheet_area,
        "grout": grout * grout_weight,
        "grout_bags": grout * grout_weight / grout_bag,
        "edge": 2 * (length + width),
        "movement": movement,
        "lippage": lippage,
        "cautions": cautions,
        "working": working,
    }
