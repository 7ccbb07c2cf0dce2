"""How strong concrete is after some days of warm or cold weather, and who may cross it when.

Concrete gains strength by age and by warmth. The days are counted as days at 73 F: a cold day counts for less (the
maturity method), and one published curve tells the strength of ordinary concrete at that age.
"""

from __future__ import annotations

from typing import Annotated, Any, TypedDict

from calculators.concrete.maturity import (
    CURVES,
    DAY,
    FREEZING,
    STANDARD_CURE,
    YEAR,
    counted_hours,
    days_to_share,
    hours_until,
    pace,
    share_at,
    spells_of,
    stretch,
)
from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, Plot
from calculators.declaring import Guidance, Help, Law, calculator, choice, number, rows, temperature, time
from calculators.writing import NOISE, decimal, rounded
from calculators.writing_units import with_unit

COLD = 40.0
"""An average below it has nights that freeze: the line where cold weather begins, ACI 306R."""
ADVICE = "much published advice"
HOT = 100.0


def ready_after(share: float, wait: float, cement: str, weather: list[dict[str, Any]], warmth: list[float]) -> float:
    """Hours until the share is reached and the wait is over; -1 for more than a year, -2 for never by the curve.

    ``warmth`` is the temperature behind the rows, and the datum.

    >>> ready_after(0.35, 48, "ordinary", [], [73, 32])
    48
    """
    days = days_to_share(share, cement)
    if days < 0:
        return -2.0
    hours = hours_until(days * DAY, weather, warmth[0], warmth[1])
    return -1.0 if hours < 0 or hours > YEAR else max(hours, wait)


def in_words(hours: float) -> str:
    """A wait in days, up to the next half day.

    >>> [in_words(24), in_words(61), in_words(-1)]
    ['1 day', '3 days', 'not in this weather']
    >>> [in_words(-2), in_words(-3)]
    ['never: this mix does not get so strong', 'not known: it froze too young']
    """
    if hours < -2.5:
        return "not known: it froze too young"
    if hours < -1.5:
        return "never: this mix does not get so strong"
    if hours < 0:
        return "not in this weather"
    return with_unit(decimal(rounded(hours / DAY, 0.5, "up"), 1), "days")


class Weather(TypedDict):
    """A time of weather and how warm it was."""

    time: Annotated[float, time("Time", "from 0 to 365 days")]
    temperature: Annotated[float, temperature("Average", "from -40 to 130 F")]


@calculator(
    title="Strength of concrete by days and warmth",
    summary="How strong the slab is after these days of weather, and when people, cars and trucks may cross.",
    outputs=(
        Output("strength_then", "Strength at that age", "number", "psi", step=10, rounds="down"),
        Output("percent", "Of the 28-day strength", "percent", "%", step=1, rounds="down"),
        Output("may_cross", "May cross at that age", "text"),
        Output("walk", "People, after", "text"),
        Output("car", "A car, after", "text"),
        Output("truck", "A truck, after", "text"),
        Output("equivalent_age", "Counts as, at 73 F", "time", "days", step=0.1, rounds="down"),
        Output("maturity", "Maturity", "number", "C-h", step=1),
    ),
    formula=(
        "Each stretch of weather counts as days at 73 F: days x (average - datum) / (73 F - datum), and nothing below "
        "the datum. Their sum is t. Strength = 28-day strength x t / (4.0 + 0.85 t); with early-strength cement "
        "t / (2.3 + 0.92 t). Maturity is the same sum in Celsius: hours x (average - datum).\n\n"
        "Each crossing waits for its strength, and never less than the crew's wait."
    ),
    sources=(
        Citation("aci-209", "Eq. 2-1, Table 2.2.1"),
        Citation("astm-c1074", "Eq. 1, datum temperature"),
        Citation("aci-306", "freezing before 500 psi, from memory"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={"weather": [{"time": "2 days", "temperature": "50 F"}], "temperature": "60 F", "age": "7 days"},
    other_names=("maturity", "concrete curing time", "strength gain", "when to drive on concrete"),
    cannot_decide=(
        "How strong this concrete is: that is found by cylinders cured beside the slab, or by the mix's own maturity "
        "curve from a laboratory. The curve is for moist-cured concrete; a slab that dried out, fly ash, slag and "
        "added water are slower. For anything that carries people or a building, the engineer decides."
    ),
    plots=(
        Plot(
            "Strength against days, cold, cool and mild",
            x="age",
            y="strength_then",
            start=0,
            end=672,
            curves=("temperature", (40.0, 55.0, 73.0)),
            limits=("walk_strength", "car_strength", "truck_strength"),
        ),
    ),
)
def concrete_strength(
    weather: Annotated[
        list[dict[str, Any]],
        rows("Weather since the pour", Weather, default=""),
        Help("The slab's average, day and night; without a thermometer in it the air's."),
    ],
    temperature: Annotated[float, temperature("Average after that", "73 F, from -40 to 130 F")],
    age: Annotated[float, time("Age", "7 days, from 0 to 365 days"), Help("From the last broom stroke.")],
    strength: Annotated[float, number("Strength of the mix at 28 days", "4000 psi, from 2000 to 10000 psi")],
    cement: Annotated[
        str, choice("Cement", {"ordinary": "ordinary, Type I", "early": "early strength, Type III"}, default="ordinary")
    ],
    datum: Annotated[
        float,
        temperature("Datum temperature", "32 F, from 0 to 50 F"),
        Guidance("at least 32 F", "ASTM C1074"),
        Help("At or below it nothing is gained. 32 F unless a laboratory has found the mix's own."),
    ],
    walk_strength: Annotated[
        float,
        number("People cross at", "800 psi, from 500 to 10000 psi"),
        Guidance("at least 800 psi", "common practice"),
    ],
    car_strength: Annotated[
        float,
        number("Cars cross at", "1400 psi, from 500 to 10000 psi"),
        Guidance("at least 1400 psi", "common practice"),
    ],
    truck_strength: Annotated[
        float,
        number("Trucks cross at", "2800 psi, from 500 to 10000 psi"),
        Guidance("at least 2800 psi", "common practice"),
    ],
    walk_wait: Annotated[
        float, time("Never before, on foot", "24 h, from 12 to 8760 h"), Guidance("at least 24 h", ADVICE)
    ],
    car_wait: Annotated[
        float, time("Never before, a car", "2 days, from 1 to 365 days"), Guidance("at least 7 days", ADVICE)
    ],
    truck_wait: Annotated[
        float, time("Never before, a truck", "7 days, from 3 to 365 days"), Guidance("at least 7 days", ADVICE)
    ],
    frost_safe: Annotated[
        float, number("Safe from one frost at", "500 psi, from 500 to 2000 psi"), Law("at least 500 psi", "ACI 306R")
    ],
) -> Answer:
    """Strength at an age in the weather given, and when people, cars and trucks may cross.

    ``weather`` is a list of {"time": h, "temperature": F} from the pour on; behind it ``temperature`` (F) goes on.
    ``age`` and the waits in hours, strengths in psi, ``strength`` is the mix's at 28 days.
    Equivalent age = sum of hours x (temperature - datum) / (73 F - datum); strength = 28-day strength x t / (a + b t).

    Sources: ACI 209R-92 Eq. 2-1 (a = 4.0 days, b = 0.85; Type III cement 2.3 and 0.92); ASTM C1074, Eq. 1 and the
    datum of 32 F (0 C); frost-safe at 500 psi, ACI 306R (from memory). Strengths to cross at: this crew's rule.

    >>> answer = concrete_strength(temperature=50.0)
    >>> [answer["strength_then"], answer["percent"], answer["walk"], answer["car"], answer["truck"]]
    [1859.09, 46.477, '2.5 days', '5 days', '16 days']
    """
    counted = counted_hours(age, weather, temperature, datum)
    share = share_at(counted / DAY, cement)
    warmth = [temperature, datum]
    walk = ready_after(walk_strength / strength, walk_wait, cement, weather, warmth)
    car = ready_after(car_strength / strength, car_wait, cement, weather, warmth)
    truck = ready_after(truck_strength / strength, truck_wait, cement, weather, warmth)
    spells = spells_of(weather, temperature, age)
    frozen = weak_at(spells, FREEZING, strength, cement, datum, frost_safe)
    chilled = weak_at(spells, COLD, strength, cement, datum, frost_safe)
    if frozen:
        walk = -3.0
        car = -3.0
        truck = -3.0
    return {
        "strength_then": share * strength,
        "percent": share * 100,
        "may_cross": may_cross(age, walk, car, truck),
        "walk": in_words(walk),
        "car": in_words(car),
        "truck": in_words(truck),
        "equivalent_age": counted,
        "maturity": counted * (STANDARD_CURE - datum) * 5 / 9,
        "cautions": cautions_for(spells, age, frozen, chilled, frost_safe),
        "working": working_of(weather, temperature, age, strength, cement, datum),
    }


def may_cross(age: float, walk: float, car: float, truck: float) -> str:
    """Who may cross at that age. Hours; a time below 0 never comes.

    >>> [may_cross(12, 24, 48, 168), may_cross(48, 24, 48, 168), may_cross(400, 24, 48, -1)]
    ['nobody', 'people and cars', 'people and cars']
    """
    if truck >= 0 and age >= truck - NOISE and age >= car - NOISE:
        return "people, cars and trucks"
    if car >= 0 and age >= car - NOISE:
        return "people and cars"
    if walk >= 0 and age >= walk - NOISE:
        return "people on foot"
    return "nobody"


def working_of(
    rows: list[dict[str, Any]], temperature: float, age: float, strength: float, cement: str, datum: float
) -> list[str]:
    """The arithmetic, one line a stretch of weather."""
    lines = []
    clock = 0.0
    for row in rows:
        part = min(row["time"], age - clock)
        if part > 0:
            lines.append(stretch(part, row["temperature"], datum))
        clock = clock + max(0.0, part)
    if age > clock:
        lines.append(stretch(age - clock, temperature, datum))
    counted = counted_hours(age, rows, temperature, datum) / DAY
    share = share_at(counted, cement)
    below = f"({decimal(CURVES[cement][0], 2)} + {decimal(CURVES[cement][1], 2)} x {decimal(counted, 2)})"
    lines.append(
        f"share of the 28-day strength: {decimal(counted, 2)} / {below} = {decimal(share * 100, 1)} %; of "
        f"{decimal(strength, 0)} psi: {decimal(share * strength, 0)} psi"
    )
    return lines


def weak_at(spells: list[dict[str, Any]], at: float, strength: float, cement: str, datum: float, safe: float) -> bool:
    """Whether a stretch at or below ``at`` begins before the concrete has the strength to bear one frost.

    >>> cold = {"time": 24, "temperature": 30}
    >>> mild = {"time": 72, "temperature": 60}
    >>> [weak_at([cold], 32, 4000, "ordinary", 32, 500), weak_at([mild, cold], 32, 4000, "ordinary", 32, 500)]
    [True, False]
    """
    counted = 0.0
    for spell in spells:
        weak = share_at(counted / DAY, cement) * strength < safe
        if spell["temperature"] <= at and weak:
            return True
        counted = counted + spell["time"] * pace(spell["temperature"], datum)
    return False


def cautions_for(spells: list[dict[str, Any]], age: float, frozen: bool, chilled: bool, frost_safe: float) -> list[str]:
    """What to watch in this weather."""
    cautions = []
    if frozen:
        cautions.append(
            f"It freezes before the concrete has {decimal(frost_safe, 0)} psi: fresh concrete that freezes once never "
            "gets its strength. These figures do not hold for it; blankets go on before, or the pour waits."
        )
    if chilled and not frozen:
        cautions.append(
            "An average of 40 F or less has nights that freeze: blankets until it has the strength for one."
        )
    if any(spell["temperature"] > HOT for spell in spells):
        cautions.append("Over 100 F concrete is strong early and weaker for good: later strengths here are too high.")
    if age < DAY:
        cautions.append("In the first day the curve says more than there is: concrete has to set first.")
    return cautions
