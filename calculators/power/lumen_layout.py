"""How many lights a room needs and where they go, by the lumen method."""

from __future__ import annotations

from calculators.declaration import COMMON_PRACTICE, Answer, Calculator, Citation, Input, Output, refuse
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


def lumen_layout(
    length: float = 144.0,
    width: float = 120.0,
    ceiling: float = 96.0,
    work_plane: float = 30.0,
    light: float = 20.0,
    lumens: float = 800.0,
    use: float = 0.6,
    loss: float = 0.8,
    most_ratio: float = 1.5,
) -> Answer:
    """The lights of a room with their spacing. Lengths in inches, light in foot-candles, ``lumens`` for one light.

    ``use`` is the coefficient of utilization and ``loss`` the light loss factor, both parts of one. Lights stand half a
    spacing from the walls, and at most ``most_ratio`` times their height above the work plane apart.

    Source: lumen method, IES Lighting Handbook.

    >>> answer = lumen_layout(720, 480, 120, 30, 50, 4000, 0.65, 0.8, 1.5)
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


CALCULATOR = Calculator(
    name="lumen-layout",
    title="Lights of a room",
    trade="power",
    summary="How many lights a room needs for its use, and how far apart they stand.",
    function=lumen_layout,
    inputs=(
        Input("length", "Length of the room", "length", "ft-in", 144.0, 24, 2400),
        Input("width", "Width of the room", "length", "ft-in", 120.0, 24, 2400),
        Input("ceiling", "Height of the lights", "length", "ft-in", 96.0, 72, 360, (84, 144)),
        Input(
            "work_plane",
            "Height of the work plane",
            "length",
            "in",
            30.0,
            0,
            60,
            help="Counter 36 in, table 30 in, floor 0.",
        ),
        Input("light", "Light wanted, foot-candles", "number", "", 20.0, 1, 500, (5, 100)),
        Input("lumens", "Lumens of one light", "number", "", 800.0, 50, 50000, (400, 5000)),
        Input(
            "use",
            "Coefficient of utilization",
            "number",
            "",
            0.6,
            0.05,
            1.2,
            (0.3, 0.9),
            help="The part of its lumens that reaches the work plane; from the maker's table, by room cavity ratio.",
        ),
        Input("loss", "Light loss factor", "number", "", 0.8, 0.3, 1, (0.6, 0.95), help="For dirt and age."),
        Input("most_ratio", "Spacing at most so many times the height", "number", "", 1.5, 0.4, 3, (0.8, 1.6)),
    ),
    outputs=(
        Output("by_formula", "Lights by the formula", "number", "", 0.01, "up"),
        Output("count", "Lights", "count", "each", step=1, rounds="up"),
        Output("along", "Along the length", "count", step=1),
        Output("across", "Across the width", "count", step=1),
        Output("spacing_along", "Spacing along the length", "length", "ft-in", 0.5),
        Output("spacing_across", "Spacing across the width", "length", "ft-in", 0.5),
        Output("wall_along", "First from the end wall", "length", "ft-in", 0.5),
        Output("wall_across", "First from the side wall", "length", "ft-in", 0.5),
        Output("most_spacing", "Never further apart than", "length", "ft-in", 0.5, "down"),
        Output("gained", "Light gained, foot-candles", "number", "", 0.1, "down"),
        Output("cavity_ratio", "Room cavity ratio", "number", "", 0.01),
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
