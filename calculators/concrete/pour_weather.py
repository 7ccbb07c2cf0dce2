"""Whether the day suits a pour: how fast the slab will dry, and the limits of heat, cold, rain and frozen ground.

Water that leaves the top faster than it rises from below cracks the slab before it is hard. Two published equations
tell the rate from the air, the concrete and the wind; the larger one counts.
"""

from __future__ import annotations

from typing import Annotated

from calculators.concrete.evaporation import menzel, saturation_pressure, uno, wind_that_dries
from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output, Plot
from calculators.declaring import Guidance, Help, Law, calculator, choice, number, percent, temperature, yes_no
from calculators.writing import NOISE, decimal

PROTECT = "wind break upwind, fog over the slab, cover or evaporation retarder after each pass; or pour at dawn"


@calculator(
    title="Weather for a pour",
    summary="Whether this day suits a pour: how fast the slab dries, heat, cold, rain and frozen ground.",
    outputs=(
        Output("verdict", "Verdict", "text"),
        Output("evaporation", "Drying, the larger of both", "number", "lb/sq ft/h", step=0.01, rounds="up"),
        Output("todo", "Against drying", "text"),
        Output("calm", "Without it", "text", help="The wind up to which the slab dries slowly enough by itself."),
        Output("menzel", "Drying by Menzel", "number", "lb/sq ft/h", step=0.001),
        Output("uno", "Drying by Uno", "number", "lb/sq ft/h", step=0.001),
        Output("passes", "Pour as planned", "yes-no"),
    ),
    formula=(
        "Menzel: W = 0.44 (e0 - ea) (0.253 + 0.096 V), in lb/sq ft/h; e0 is the vapour pressure of water at the "
        "concrete's temperature and ea that of the air, in psi; V is the wind in mph.\n\n"
        "Uno: E = 5 ([Tc + 18]^2.5 - r [Ta + 18]^2.5) (V + 4) / 1,000,000, in kg/m2/h; C and km/h; r is the humidity "
        "as a share.\n\n"
        "Vapour pressure at saturation: 6.112 exp(17.62 t / (243.12 + t)) hPa, t in C."
    ),
    sources=(
        Citation("aci-301", "5.3.2.1, wet weather"),
        Citation("aci-305", "305R, evaporation of surface moisture; 305.1, temperature at discharge"),
        Citation("uno-1998"),
        Citation("wmo-8", "Annex 4.B"),
        Citation("aci-306", "1.1, Table 3.1; Table 5.1 and frozen ground, from memory"),
        Citation("hover-2020"),
        COMMON_PRACTICE,
    ),
    example={
        "air": "80 F",
        "humidity": "50 %",
        "mix": "87 F",
        "wind": "12",
        "coldest": "50 F",
        "rain": "dry",
        "frozen": "no",
    },
    other_names=("evaporation rate", "plastic shrinkage cracks", "hot weather concreting", "cold weather concreting"),
    cannot_decide=(
        "An estimate: the true rate may be 40 % more or less. Mixes that hardly bleed (silica fume, low water) crack "
        "earlier, from about 0.1 lb/sq ft/h. The limits of cold are for slabs under 12 in. Whoever leads the pour "
        "decides on the day, by the surface and not by the figure; the city's and the engineer's limits rule."
    ),
    plots=(
        Plot(
            "Drying against wind, in dry, middling and damp air",
            x="wind",
            y="evaporation",
            start=0,
            end=25,
            curves=("humidity", (20.0, 50.0, 80.0)),
            limits=("act_above",),
        ),
    ),
)
def pour_weather(
    air: Annotated[float, temperature("Air at the pour", "80 F, from -40 to 125 F")],
    humidity: Annotated[float, percent("Relative humidity", "50 %, from 1 to 100 %")],
    mix: Annotated[
        float,
        temperature("Concrete", "80 F, from 33 to 125 F"),
        Help("From the ticket or by thermometer. Before the truck comes: the air's, and 10 F more in summer."),
    ],
    wind: Annotated[
        float,
        number("Wind at the slab", "10 mph, from 0 to 60 mph", "mph"),
        Help("Average, 20 in above the slab. A forecast is for 33 ft up, where it blows harder: the safe side."),
    ],
    coldest: Annotated[
        float,
        temperature("Coldest air of the three days after the pour", "50 F, from -40 to 110 F"),
        Help("The forecast's lowest, all three nights: as long as a cold slab is protected."),
    ],
    rain: Annotated[
        str,
        choice(
            "Rain, sleet or snow until the cure is on",
            {"dry": "none is forecast", "possible": "may come", "falling": "falls"},
            default="dry",
        ),
    ],
    frozen: Annotated[bool, yes_no("Ground, base or forms hold frost, ice or snow", default="no")],
    act_above: Annotated[
        float,
        number("Act above", "0.2 lb/sq ft/h, from 0.05 to 0.25 lb/sq ft/h", "lb/sq ft/h"),
        Guidance("at most 0.2 lb/sq ft/h", "ACI 305R"),
    ],
    hottest_mix: Annotated[
        float, temperature("Hottest mix", "95 F, from 70 to 95 F"), Law("at most 95 F", "ACI 305.1")
    ],
    coldest_mix: Annotated[
        float,
        temperature("Coldest mix", "55 F, from 55 to 70 F"),
        Law("at least 55 F", "ACI 306R for slabs under 12 in"),
    ],
    coldest_air: Annotated[
        float, temperature("Coldest air without protection", "40 F, from 40 to 60 F"), Law("at least 40 F", "ACI 306R")
    ],
) -> Answer:
    """How fast the fresh slab dries, and whether heat, cold, rain or frozen ground forbids the pour.

    Temperatures in F, ``wind`` in mph at 20 in above the slab, evaporation in lb/sq ft/h. ``air`` (at the pour) and
    ``coldest`` (until the three days of protection are over) are both held against ``coldest_air``.

    Sources: Menzel's equation as in ACI 305R; Uno 1998; saturation pressure by WMO Guide No. 8; act above
    0.2 lb/sq ft/h, ACI 305R; mix at most 95 F, ACI 305.1; air 40 F and mix 55 F for sections under 12 in, ACI 306R,
    with three days of protection and no concrete on frozen ground (these two from memory); none while rain, sleet or
    snow falls, ACI 301 5.3.2.1; the true rate may differ by 40 % (Hover, ACI SP-338, 2020).

    >>> answer = pour_weather(air=80, humidity=50, mix=87, wind=12)
    >>> [answer["menzel"], answer["uno"], answer["verdict"]]
    [0.236, 0.233, 'pour only with the drying held back']
    >>> pour_weather(mix=97)["verdict"]
    'refuse the load: too hot'
    >>> [pour_weather(air=25)["verdict"], pour_weather(coldest=30)["verdict"], pour_weather(frozen=True)["verdict"]]
    ['put it off: too cold', 'put it off: too cold', 'put it off: frozen ground']
    """
    by_menzel = menzel(air, humidity, mix, wind)
    by_uno = uno(air, humidity, mix, wind)
    rate = max(by_menzel, by_uno)
    fast = rate > act_above + NOISE
    cold = min(air, coldest) < coldest_air - NOISE
    verdict = "pour"
    if rain == "possible":
        verdict = "pour only with a cover for the whole slab at hand"
    if fast:
        verdict = "pour only with the drying held back"
    if fast and rain == "possible":
        verdict = "pour only with the drying held back and a cover for the whole slab at hand"
    if rain == "falling":
        verdict = "put it off: rain or snow"
    if cold:
        verdict = "put it off: too cold"
    if frozen:
        verdict = "put it off: frozen ground"
    if mix < coldest_mix - NOISE:
        verdict = "refuse the load: too cold"
    if mix > hottest_mix + NOISE:
        verdict = "refuse the load: too hot"
    todo = PROTECT if fast else "nothing beyond the usual cure"
    cautions = cautions_for_cold(mix, coldest_mix, cold, coldest_air, frozen)
    cautions.extend(cautions_for(rate, fast, act_above, mix, hottest_mix, rain))
    return {
        "evaporation": rate,
        "menzel": by_menzel,
        "uno": by_uno,
        "verdict": verdict,
        "todo": todo,
        "calm": wind_that_dries(air, humidity, mix, act_above),
        "passes": verdict == "pour",
        "cautions": cautions,
        "working": [
            f"vapour at the concrete {decimal(saturation_pressure(mix), 3)} psi; in the air {decimal(humidity, 0)} % "
            f"of {decimal(saturation_pressure(air), 3)} psi",
            f"Menzel: 0.44 x difference x (0.253 + 0.096 x {decimal(wind, 1)}) = {decimal(by_menzel, 3)} lb/sq ft/h",
            f"Uno: {decimal(by_uno, 3)} lb/sq ft/h; the larger counts, act above {decimal(act_above, 3)}",
            f"air {decimal(air, 0)} F at the pour, {decimal(coldest, 0)} F at its coldest; {decimal(coldest_air, 0)} F "
            "is the least for both",
        ],
    }


def cautions_for_cold(mix: float, coldest_mix: float, cold: bool, coldest_air: float, frozen: bool) -> list[str]:
    """What to watch when it is cold."""
    cautions = []
    if frozen:
        cautions.append(
            "No concrete on frozen ground, ice or snow: it sinks when the ground thaws. Blankets until it is soft."
        )
    if mix < coldest_mix - NOISE:
        cautions.append(f"The mix is under {decimal(coldest_mix, 0)} F: it is to arrive, and to be kept, above that.")
    if cold:
        cautions.append(
            f"Air below {decimal(coldest_air, 0)} F: wait, or heated mix and blankets for three days, and nothing is "
            "placed on frozen ground. A heater that burns fuel under a cover kills by its fumes: vent it outside."
        )
    return cautions


def cautions_for(rate: float, fast: bool, act_above: float, mix: float, hottest_mix: float, rain: str) -> list[str]:
    """What to watch in heat, wind and rain."""
    cautions = []
    if rain != "dry":
        cautions.append(
            "Rain on fresh concrete thins its top for good: cover and battens for all of it stand there before the "
            "truck, and no pass is made over water."
        )
    if mix > hottest_mix + NOISE:
        cautions.append(
            f"The mix is over {decimal(hottest_mix, 0)} F: it sets too fast and ends weaker. The plant cools it with "
            "ice or chilled water, or it is poured at night."
        )
    if fast:
        cautions.append(
            f"Above {decimal(act_above, 3)} lb/sq ft/h the top cracks before it is hard: protection stands before the "
            "truck comes, and stays until the cure is on."
        )
    elif rate > act_above / 1.4 + NOISE:
        cautions.append(
            "Within 40 % of the limit, which is how far off the estimate may be: have the protection ready."
        )
    if rate <= NOISE:
        cautions.append("The air wets the slab instead of drying it: bleed water stays long. Wait with the finish.")
    return cautions
