"""How much a board and a floor swell or shrink across the grain between two moistures or two seasons.

Along the grain wood hardly moves. Across it, it moves by a part of its width for each percent of moisture, more when
it is flat-sawn. What comes out is the movement of free wood; nails and neighbours hold some of it back, and what they
hold back is stress.
"""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, Plot
from calculators.declaring import Help, calculator, choice, length, percent, temperature
from calculators.flooring.wood_moisture import moisture_at
from calculators.flooring.wood_species import FROM_MEMORY, NAMES, coefficient
from calculators.writing import decimal, feet_inches, inches

SATURATION = 30.0
"""Percent: above it wood does not swell any more."""
LINEAR_FROM = 6.0
LINEAR_TO = 14.0
"""Percent: between these the coefficients hold."""


def shrinkage(part: float) -> float:
    """Shrinkage from green to oven-dry in percent of the green width, for a coefficient.

    The coefficients are parts of the width at 10 %, the middle of their range, so
    part = (S / 30) / (100 - 20 S / 30) with S in percent. White fir, 0.00245: the handbook's table 4-3 prints 7.0.

    >>> round(shrinkage(0.00245), 1)
    7.0
    """
    return 100 * SATURATION * part / (1 + 20 * part)


def change(width: float, part: float, start: float, end: float) -> float:
    """Change of a width between two moistures in percent; above 0 it swells.

    Equation 13-2 where both lie in 6 to 14 %, else equation 13-3. Neither exceeds 30 %.

    >>> round(change(2.25, 0.00369, 6, 9), 4)
    0.0249
    """
    if min(start, end) >= LINEAR_FROM and max(start, end) <= LINEAR_TO:
        return width * part * (end - start)
    return from_green(width, shrinkage(part), start, end)


def from_green(width: float, shrinks: float, start: float, end: float) -> float:
    """Equation 13-3: the change of a width, from the shrinkage between green and oven-dry in percent.

    >>> round(from_green(10, 8.6, 12, 6), 3)
    -0.181
    """
    return width * (end - start) / (SATURATION * 100 / shrinks - SATURATION + start)


WIDTH = ("wider", "narrower")


@calculator(
    title="How much a floor moves",
    summary=(
        "Swelling or shrinking of a board and of a room between two moistures or two seasons, and the gap it asks."
    ),
    outputs=(
        Output("coefficient", "Change of width for 1 % of moisture", "number", step=0.00001, help="As a part of it."),
        Output("start", "Moisture at first", "percent", "%", step=0.1),
        Output("end", "Moisture later", "percent", "%", step=0.1),
        Output("board_change", "Change of one board", "length", "in", step=0.001, ways=WIDTH),
        Output("room_change", "Change of the room, if nothing held it", "length", "in", step=0.01, ways=WIDTH),
        Output("gap_needed", "Gap at each wall that takes the swelling", "length", "in", step=1 / 16, rounds="up"),
        Output("gap_crew", "The crew's gap", "length", "in", step=1 / 16),
        Output("gap_industry", "Gap as wide as the board is thick", "length", "in", step=1 / 16),
        Output("crew_takes", "The crew's gap takes it", "yes-no"),
        Output("industry_takes", "The gap of the board's thickness takes it", "yes-no"),
    ),
    formula=(
        "From 6 to 14 % moisture: change = width x coefficient x (moisture later - moisture at first).\n\n"
        "Beyond: change = width x (later - first) / (3000 / S - 30 + first), S the shrinkage from green to oven-dry in "
        "percent. S is worked out from the coefficient, which is the part of the width at 10 %.\n\n"
        "Gap at each wall = half of the room's swelling."
    ),
    sources=(
        Citation("wood-handbook", "equations 13-2 and 13-3, table 13-5"),
        Citation("wood-floor-installation-guidelines", "expansion space: the thickness of the board"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={"species": "red-oak", "cut": "flat", "moisture_from": "6 %", "moisture_to": "9 %", "room_width": "15'"},
    other_names=("expansion gap", "wood shrinkage", "cupping", "seasonal gaps", "dimensional change"),
    cannot_decide=(
        "Whether a floor may be laid: that the moisture readings say. Nails, glue and neighbours hold wood back, so "
        "the true movement is less, and the maker's own gap comes before any figure here."
    ),
    plots=(
        Plot(
            "Change of one board, laid at the first moisture",
            x="moisture_to",
            y="board_change",
            start=4.0,
            end=16.0,
            curves=("cut", ("flat", "quarter")),
        ),
    ),
)
def wood_movement(
    species: Annotated[str, choice("Species", NAMES, default="red-oak")],
    cut: Annotated[
        str,
        choice("Cut", {"flat": "flat-sawn", "quarter": "quarter-sawn"}, default="flat"),
        Help("On the board's end: rings lying along the face are flat-sawn, standing up to it quarter-sawn."),
    ],
    by: Annotated[
        str,
        choice(
            "Between",
            {"moisture": "two readings of moisture", "seasons": "two humidities of the house"},
            default="moisture",
        ),
    ],
    moisture_from: Annotated[float, percent("Moisture when it is laid", "6 %, from 0 to 30 %, usually 4 to 14 %")],
    moisture_to: Annotated[float, percent("Moisture later", "9 %, from 0 to 30 %, usually 4 to 14 %")],
    temperature: Annotated[
        float,
        temperature("Temperature of the house", "70 F, from 30 to 120 F, usually 55 to 90 F"),
        Help("Used with 'seasons'."),
    ],
    humidity_from: Annotated[float, percent("Humidity at first", "30 %, from 0 to 99 %"), Help("Used with 'seasons'.")],
    humidity_to: Annotated[float, percent("Humidity later", "50 %, from 0 to 99 %"), Help("Used with 'seasons'.")],
    board_width: Annotated[float, length("Face width of a board", "2-1/4 in, from 1 to 12 in")],
    room_width: Annotated[float, length("Room, across the boards", "12 ft, from 1 to 100 ft", "ft-in")],
    gap: Annotated[float, length("The crew's gap at each wall", "1/4 in, from 0 to 2 in")],
    thickness: Annotated[float, length("Thickness of the board", "3/4 in, from 1/4 to 2 in")],
) -> Answer:
    """The change of one board and of a whole room across the boards, and the gap at each wall that takes it.

    Widths in inches. With ``by`` 'seasons' the moistures are those that wood comes to at ``temperature`` and the
    two humidities. The gap is half of the room's swelling, nothing when it shrinks. Limits: 0 to 30 % moisture.

    >>> answer = wood_movement(room_width=180)
    >>> round(answer["board_change"], 4), round(answer["room_change"], 2), round(answer["gap_needed"], 2)
    (0.0249, 1.99, 1.0)

    Source: Wood Handbook FPL-GTR-190, equations 13-2 and 13-3, table 13-5.
    """
    start = moisture_from
    end = moisture_to
    working = []
    if by == "seasons":
        start = moisture_at(temperature, humidity_from)
        end = moisture_at(temperature, humidity_to)
        working.append(
            f"at {decimal(temperature, 1)} F wood comes to {decimal(start, 2)} % in air of "
            f"{decimal(humidity_from, 1)} %, and to {decimal(end, 2)} % in air of {decimal(humidity_to, 1)} %"
        )
    start = min(start, SATURATION)
    end = min(end, SATURATION)
    part = coefficient(species, cut)
    board = change(board_width, part, start, end)
    room = change(room_width, part, start, end)
    needed = max(room, 0.0) / 2
    if min(start, end) >= LINEAR_FROM and max(start, end) <= LINEAR_TO:
        working.append(
            f"equation 13-2: {inches(board_width)} x {decimal(part, 5)} x ({decimal(end, 2)} - {decimal(start, 2)}) = "
            f"{decimal(board, 4)} in a board"
        )
    else:
        working.append(
            f"outside 6 to 14 %: equation 13-3 with a shrinkage of {decimal(shrinkage(part), 1)} % from green to dry: "
            f"{decimal(board, 4)} in a board"
        )
    boards = room_width / board_width
    working.append(f"{decimal(boards, 1)} boards in {feet_inches(room_width)}: {decimal(room, 3)} in")
    working.append(f"half of the swelling at each wall: {decimal(needed, 3)} in")
    cautions = movement_cautions(start, end, needed, gap, thickness, board)
    if species in FROM_MEMORY:
        cautions.append("The coefficient of this species is from memory: look it up in the handbook's table 13-5.")
    return {
        "coefficient": part,
        "start": start,
        "end": end,
        "board_change": board,
        "room_change": room,
        "gap_needed": needed,
        "gap_crew": gap,
        "gap_industry": thickness,
        "crew_takes": needed <= gap,
        "industry_takes": needed <= thickness,
        "cautions": cautions,
        "working": working,
    }


def movement_cautions(start: float, end: float, needed: float, gap: float, thickness: float, board: float) -> list[str]:
    """What to watch: swelling beyond the gaps, cracks, the saturation point."""
    cautions = []
    if needed > gap and needed <= thickness:
        cautions.append(
            f"Free wood would take {inches(needed)} at each wall, more than the crew's {inches(gap)}. Lay it at the "
            "moisture it will have, or leave the wider gap."
        )
    if needed > max(gap, thickness):
        cautions.append(
            f"Free wood would take {inches(needed)} at each wall, more than any gap under a base shoe. Nails hold part "
            f"of it back; the rest is mended by laying nearer to the middle of the range than {decimal(start, 1)} %."
        )
    if board < -0.0156:
        cautions.append(
            f"Each joint opens by up to {inches(-board, 1 / 64)}: a crack that one sees. Boards nailed swollen do it."
        )
    if max(start, end) >= SATURATION:
        cautions.append("From 30 % on wood is saturated and swells no more; it is counted as 30 %.")
    return cautions
