"""The mortar under tiles, the joints between them, and what to watch. Lengths in inches."""

from __future__ import annotations

from math import pi, sin

from calculators.writing import NOISE, decimal, feet_inches, inches, whole

LARGE = 15.0
"""Inches of edge: from here on a tile counts as large, wants a flatter floor and its back buttered."""


def bed_of(notch_width: float, notch_depth: float) -> float:
    """Thickness of the mortar once the ridges are pressed flat, in inches.

    The trowel is held at 45 degrees, so a ridge is as high as the notch is deep times sin 45; the teeth are as wide as
    the notches, so ridges cover half of the floor.

    >>> round(bed_of(0.25, 0.25), 4), round(bed_of(0.25, 0.375), 4)
    (0.0884, 0.1326)
    """
    tooth = notch_width
    return notch_depth * sin(pi / 4) * notch_width / (notch_width + tooth)


def joint_share(length: float, width: float, joint: float) -> float:
    """The part of a tiled floor that is joint: one tile's cell less the tile, over the cell.

    >>> joint_share(12.0, 12.0, 0.0), round(joint_share(12.0, 12.0, 0.125), 5)
    (0.0, 0.02051)
    """
    return 1 - length * width / ((length + joint) * (width + joint))


def joints_in(run: float, most: float) -> int:
    """Movement joints across a run, beside those at the walls.

    >>> joints_in(240.0, 300.0), joints_in(300.0, 300.0), joints_in(301.0, 300.0)
    (0, 0, 1)
    """
    return whole(run / most - NOISE, "up") - 1


def tile_cautions(tile_length: float, tile_width: float, joint: float, layout: str, back_butter: bool) -> list[str]:
    """What to watch: large tiles, joints that are too narrow, a diagonal of tiles that are not square."""
    cautions = []
    edge = max(tile_length, tile_width)
    if edge >= LARGE - NOISE:
        cautions.append(
            f"An edge of {inches(edge)} is a large tile: the floor is flat within 1/8 in in 10 ft, and joints are not "
            "offset by more than a third."
        )
        if not back_butter:
            cautions.append("Butter the backs of tiles this large: set that, and the mortar counts it.")
    if joint < 1 / 16:
        cautions.append("A joint is never under 1/16 in, and three times the difference between the tiles.")
    if layout == "diagonal" and abs(tile_length - tile_width) > NOISE:
        cautions.append("Laid diagonally, a tile that is not square looks like a mistake: take square ones.")
    return cautions


def field_cautions(layout: str, cut_along: float, tile_length: float, movement: float, most_run: float) -> list[str]:
    """What to watch: a sliver at the far wall, and a floor that takes movement joints."""
    cautions = []
    if layout == "straight" and cut_along < tile_length / 2 - NOISE:
        cautions.append(
            f"The cut at the far wall is {inches(cut_along)}, a sliver under half a tile: take the balanced layout, or "
            "move the first tile by half."
        )
    if movement > 0:
        cautions.append(
            f"The floor is longer than {feet_inches(most_run)}: it takes movement joints in the field, "
            f"{decimal(movement, 0)} of them."
        )
    return cautions
