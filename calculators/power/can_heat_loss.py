"""Heat lost through recessed lights in an insulated ceiling, against surface lights under it."""

from __future__ import annotations

from math import pi
from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, Plot, refuse
from calculators.declaring import Help, calculator, choice, count, length, number
from calculators.writing import decimal, inches

BTU_A_KWH = 3412.142
AIR = 1.08
"""Btu/h for each cubic foot a minute of air and degree F: 0.075 lb/cu ft x 0.24 Btu/(lb F) x 60."""
AROUND = 3.0
"""Inches that insulation is kept from a light that is not rated for contact with it (NEC 410.116(B))."""


def disc(diameter: float) -> float:
    """The area in square feet of a disc by its diameter in inches.

    >>> disc(12)
    0.7854
    """
    return pi * diameter * diameter / 4 / 144


@calculator(
    title="Heat lost through recessed lights",
    summary="What recessed lights in an insulated ceiling lose in a year, against surface lights.",
    outputs=(
        Output("recessed", "Recessed, Btu a year", "number", step=1000),
        Output("surface", "Surface, the same area, Btu a year", "number", step=1000),
        Output("more", "More by recessing, Btu a year", "number", step=1000),
        Output("more_kwh", "The same in kWh of heat", "number", step=1),
        Output("times", "So many times as much", "number", step=0.1),
        Output("area", "Area of ceiling", "area", "sq ft", step=0.01),
        Output("by_air", "Of it by air, Btu a year", "number", step=1000),
    ),
    formula=(
        "Heat in a year = (area / R + 1.08 x cfm) x 24 x degree days. Area is that of the housing, or 3 in more all "
        "around where insulation must keep off. A surface light leaves the insulation whole: area / R of the ceiling. "
        "It is a steady estimate: sun, wind, the lamp's own heat and the frame between are left out."
    ),
    sources=(
        Citation("ashrae-fundamentals", "degree-day method, from memory"),
        Citation("nec", "410.116(B), from memory"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={"count": "6", "kind": "contact", "r_ceiling": "38"},
    other_names=("can lights", "downlights", "IC rated", "air leakage", "insulation", "heat loss"),
    cannot_decide=(
        "Whether a light may be buried: its label says IC or it does not. The energy code of the place sets the "
        "ceiling's R and how tight a recessed light must be. A licensed electrician does the wiring or answers for it, "
        "and the authority having jurisdiction inspects it. Circuits are proved dead before a hand goes in."
    ),
    plots=(
        Plot(
            "Heat lost by recessing against leaking air",
            x="leak",
            y="more_kwh",
            start=0.0,
            end=3.0,
            curves=("kind", ("contact", "no-contact")),
        ),
    ),
)
def can_heat_loss(
    count: Annotated[float, count("Lights", "6, from 1 to 200")],
    kind: Annotated[
        str,
        choice(
            "Recessed light",
            {"contact": "rated for contact with insulation (IC)", "no-contact": "not rated for contact"},
            default="contact",
        ),
    ],
    diameter: Annotated[float, length("Diameter of the housing", "7 in, from 2 to 24 in, usually 4 to 10 in")],
    r_ceiling: Annotated[float, number("R of the insulated ceiling", "38, from 1 to 100, usually 11 to 60")],
    r_can: Annotated[
        float,
        number("R over and around the light", "4, from 0.5 to 60, usually 1 to 20"),
        Help("Bare metal and air films, about 2; with some insulation over it, more."),
    ],
    leak: Annotated[
        float,
        number("Air through one light, cfm, season's average", "0.5, from 0 to 20, usually 0 to 3"),
        Help("0 for a sealed one. An old open housing leaks several times as much as a gasketed one."),
    ],
    degree_days: Annotated[
        float, number("Heating degree days, F, base 65", "5000, from 100 to 15000, usually 1000 to 9000")
    ],
) -> Answer:
    """Heat in a year through the patches of ceiling that recessed lights take, and through the same area insulated.

    ``diameter`` in inches; R in h sq ft F/Btu; ``leak`` in cubic feet a minute for one light, on average over the
    heating season; ``degree_days`` in F days, base 65 F.

    Source: steady heat flow and degree days as in any handbook of heating; NEC 410.116(B) for the 3 in.

    >>> answer = can_heat_loss(count=1, kind="contact", diameter=12, r_ceiling=40, r_can=4, leak=0, degree_days=5000)
    >>> [answer["recessed"], answer["surface"], answer["times"]]
    [23561.9, 2356.19, 10.0]
    """
    if r_can > r_ceiling:
        refuse("r_can", f"R {decimal(r_can, 1)} over the light is more than the ceiling's R {decimal(r_ceiling, 1)}.")
    across = diameter
    r_patch = r_can
    if kind == "no-contact":
        across = diameter + 2 * AROUND
    area = disc(across) * count
    by_wall = area / r_patch
    by_air = AIR * leak * count
    hours = 24 * degree_days
    recessed = (by_wall + by_air) * hours
    surface = area / r_ceiling * hours
    cautions = []
    if kind == "no-contact":
        cautions.append(
            "Insulation that touches a light not rated for contact overheats it and can set the ceiling on fire: "
            "keep it 3 in away, all around and above."
        )
    if leak > 0:
        cautions.append("Warm air that leaks past a light carries moisture into the roof, where it condenses.")
    return {
        "recessed": recessed,
        "surface": surface,
        "more": recessed - surface,
        "more_kwh": (recessed - surface) / BTU_A_KWH,
        "times": recessed / surface,
        "area": area,
        "by_air": by_air * hours,
        "cautions": cautions,
        "working": [
            f"area: {decimal(count, 0)} discs of {inches(across)} = {decimal(area, 2)} sq ft",
            f"recessed: {decimal(area, 2)} / R {decimal(r_patch, 1)} + 1.08 x {decimal(leak * count, 2)} cfm"
            f" = {decimal(by_wall + by_air, 3)} Btu/h for each degree",
            f"surface: {decimal(area, 2)} / R {decimal(r_ceiling, 1)} = {decimal(area / r_ceiling, 3)}"
            " Btu/h for each degree",
            f"24 h x {decimal(degree_days, 0)} degree days: {decimal(recessed, 0)} against {decimal(surface, 0)} Btu"
            " a year",
        ],
    }
