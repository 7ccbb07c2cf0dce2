"""How many lights a room needs and where they go, by the lumen method."""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output, refuse
from calculators.declaring import Help, calculator, length, number
from calculators.power.lumen_layout_drawing import lumen_layout_drawing
from calculators.writing import NOISE, decimal, feet_inches, whole

SQ_IN = 144.0
MOST_LIGHTS = 400


def lights_for(light: float, area: float, lumens: float, use: float, loss: float) -> float:
    """How many lights, not rounded: N = E A / (F x CU x LLF). Foot-candles, square feet, lumens.

    >>> lights_for(50, 2400, 4000, 0.65, 0.80)
    57.69
    """
    return light * area / (lumens * use * loss)


def cavity_ratio(high: float, length: float, width: float) -> float:
    """The room cavity ratio 5 h (L + W) / (L W), by which a maker's table gives the coefficient of utilization.

    >>> cavity_ratio(7.5, 40, 60)
    1.5625
    """
    return 5 * high * (length + width) / (length * width)


def rows_for(count: float, length: float, width: float, most: float) -> list[int]:
    """Lights along the length and across the width: the fewest that are enough and stand no further apart than most.

    Of layouts with as few lights, the one whose spacings are the nearest to each other. Inches.

    >>> [rows_for(6, 180, 120, 96), rows_for(1, 60, 60, 96), rows_for(58, 720, 480, 200)]
    [[3, 2], [1, 1], [10, 6]]
    """
    least_along = max(1, whole(length / most, "up"))
    least_across = max(1, whole(width / most, "up"))
    needed = max(1, whole(count, "up"))
    best = [max(least_along, whole(needed / least_across, "up")), least_across]
    for across in range(least_across, max(least_across, needed) + 1):
        along = max(least_along, whole(needed / across, "up"))
        fewer = along * across < best[0] * best[1]
        same = along * across == best[0] * best[1]
        if fewer or (same and uneven(along, across, length, width) < uneven(best[0], best[1], length, width) - NOISE):
            best = [along, across]
    return best


def uneven(along: int, across: int, length: float, width: float) -> float:
    """How far the two spacings are from each other: the larger over the smaller.

    >>> uneven(3, 2, 180, 120)
    1.0
    """
    one = length / along
    other = width / across
    return max(one, other) / min(one, other)


@calculator(
    title="Lights of a room",
    summary="How many lights a room needs for its use, and how far apart they stand.",
    outputs=(
        Output("by_formula", "Lights by the formula", "number", step=0.01, rounds="up"),
        Output("count", "Lights", "count", "each", step=1, rounds="up"),
        Output("along", "Along the length", "count", step=1),
        Output("across", "Across the width", "count", step=1),
        Output("spacing_along", "Spacing along the length", "length", "ft-in", step=1 / 2),
        Output("spacing_across", "Spacing across the width", "length", "ft-in", step=1 / 2),
        Output("wall_along", "First from the end wall", "length", "ft-in", step=1 / 2),
        Output("wall_across", "First from the side wall", "length", "ft-in", step=1 / 2),
        Output("most_spacing", "Never further apart than", "length", "ft-in", step=1 / 2, rounds="down"),
        Output("gained", "Light gained, foot-candles", "number", step=0.1, rounds="down"),
        Output("cavity_ratio", "Room cavity ratio", "number", step=0.01),
    ),
    formula=(
        "Lights = light wanted x area / (lumens x coefficient of utilization x light loss factor), rounded up to full "
        "rows. Spacing = length / lights along it; the first stands half a spacing from the wall. Spacing at most 1.5 "
        "times the height above the work plane. Room cavity ratio = 5 h (L + W) / (L W)."
    ),
    sources=(Citation("ies-handbook", "lumen method, zonal cavity"), COMMON_PRACTICE),
    example={"length": "12'", "width": "10'", "light": "20"},
    other_names=("can lights", "recessed lights", "downlights", "foot-candles", "light spacing", "lumen method"),
    cannot_decide=(
        "Where joists, ducts and boxes are in the way, a light moves to the next free bay. A licensed electrician does "
        "the wiring or answers for it, and the authority having jurisdiction inspects it. Circuits are proved dead "
        "before a hand goes in."
    ),
    drawing=lumen_layout_drawing,
)
def lumen_layout(
    length: Annotated[float, length("Length of the room", "12 ft, from 2 to 200 ft", "ft-in")],
    width: Annotated[float, length("Width of the room", "10 ft, from 2 to 200 ft", "ft-in")],
    ceiling: Annotated[float, length("Height of the lights", "8 ft, from 6 to 30 ft, usually 7 to 12 ft", "ft-in")],
    work_plane: Annotated[
        float,
        length("Height of the work plane", "30 in, from 0 to 60 in"),
        Help("Counter 36 in, table 30 in, floor 0."),
    ],
    light: Annotated[float, number("Light wanted, foot-candles", "20, from 1 to 500, usually 5 to 100")],
    lumens: Annotated[float, number("Lumens of one light", "800, from 50 to 50000, usually 400 to 5000")],
    use: Annotated[
        float,
        number("Coefficient of utilization", "0.6, from 0.05 to 1.2, usually 0.3 to 0.9"),
        Help("The part of its lumens that reaches the work plane; from the maker's table, by room cavity ratio."),
    ],
    loss: Annotated[
        float, number("Light loss factor", "0.8, from 0.3 to 1, usually 0.6 to 0.95"), Help("For dirt and age.")
    ],
    most_ratio: Annotated[
        float, number("Spacing at most so many times the height", "1.5, from 0.4 to 3, usually 0.8 to 1.6")
    ],
) -> Answer:
    """The lights of a room with their spacing. Lengths in inches, light in foot-candles, ``lumens`` for one light.

    ``use`` is the coefficient of utilization and ``loss`` the light loss factor, both parts of one. Lights stand half a
    spacing from the walls, and at most ``most_ratio`` times their height above the work plane apart.

    Source: lumen method, IES Lighting Handbook.

    >>> answer = lumen_layout(length=720, width=480, ceiling=120, light=50, lumens=4000, use=0.65)
    >>> [answer["by_formula"], answer["count"], answer["along"], answer["across"]]
    [57.69, 60, 10, 6]
    """
    high = ceiling - work_plane
    if high < 12:
        refuse("work_plane", f"The lights are {decimal(high, 1)} in above the work plane: at least 12 in is wanted.")
    area = length * width / SQ_IN
    by_formula = lights_for(light, area, lumens, use, loss)
    if by_formula > MOST_LIGHTS:
        refuse(
            "lumens",
            f"{decimal(by_formula, 0)} lights, more than the {MOST_LIGHTS} that this answers for: take stronger ones.",
        )
    most = most_ratio * high
    layout = rows_for(by_formula - NOISE, length, width, most)
    along = layout[0]
    across = layout[1]
    count = along * across
    if count > MOST_LIGHTS:
        refuse(
            "most_ratio",
            f"{count} lights, more than the {MOST_LIGHTS} that this answers for: let them stand further apart.",
        )
    gained = count * lumens * use * loss / area
    cautions = []
    if gained > 1.5 * light:
        cautions.append(
            f"{decimal(gained, 0)} foot-candles is over 1-1/2 times what is wanted: weaker lights, or a dimmer."
        )
    return {
        "by_formula": by_formula,
        "count": count,
        "along": along,
        "across": across,
        "spacing_along": length / along,
        "spacing_across": width / across,
        "wall_along": length / along / 2,
        "wall_across": width / across / 2,
        "most_spacing": most,
        "gained": gained,
        "cavity_ratio": cavity_ratio(high, length, width),
        "cautions": cautions,
        "working": [
            f"area {feet_inches(length)} x {feet_inches(width)} = {decimal(area, 1)} sq ft",
            f"{decimal(light, 1)} x {decimal(area, 1)} / ({decimal(lumens, 0)} x {decimal(use, 2)} x"
            f" {decimal(loss, 2)}) = {decimal(by_formula, 2)} lights",
            f"spacing at most {decimal(most_ratio, 2)} x {feet_inches(high)} = {feet_inches(most)}",
            f"{along} along the length, {across} across the width: {count} lights, {decimal(gained, 1)} foot-candles",
        ],
    }
