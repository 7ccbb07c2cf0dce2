"""The moisture that wood comes to in air of a given temperature and humidity: its equilibrium moisture content.

Wood gives off and takes up water until it is in balance with the air. The figure is percent of the dry wood's mass.
Boards need days to weeks to come to it, thick ones longer.
"""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import Answer, Citation, Output, Plot, refuse
from calculators.declaring import Help, calculator, percent, temperature
from calculators.writing import decimal

FAHRENHEIT = {
    "W": [330.0, 0.452, 0.00415],
    "K": [0.791, 0.000463, -0.000000844],
    "K1": [6.34, 0.000775, -0.0000935],
    "K2": [1.09, 0.0284, -0.0000904],
}
CELSIUS = {
    "W": [349.0, 1.29, 0.0135],
    "K": [0.805, 0.000736, -0.00000273],
    "K1": [6.27, -0.00938, -0.000303],
    "K2": [1.91, 0.0407, -0.000293],
}
"""The four constants of the equation as a + b T + c T^2, for either scale of temperature."""

MOULD_FROM = 80.0
"""Percent humidity: from here on mould grows on what stands in it."""
DECAY_FROM = 20.0
"""Percent moisture: wood below it does not rot."""


def constant(parts: list[float], temperature: float) -> float:
    """One of the four constants at a temperature.

    >>> round(constant(FAHRENHEIT["W"], 70), 3)
    381.975
    """
    return parts[0] + parts[1] * temperature + parts[2] * temperature * temperature


def balance(constants: dict[str, list[float]], temperature: float, share: float) -> float:
    """Equilibrium moisture content in percent; ``share`` is the relative humidity as a part of 1, below 1.

    >>> round(balance(FAHRENHEIT, 70, 0.4), 2), round(balance(CELSIUS, 20, 0.65), 2)
    (7.7, 12.0)

    Source: Wood Handbook FPL-GTR-190, equation 4-5.
    """
    w = constant(constants["W"], temperature)
    kh = constant(constants["K"], temperature) * share
    k1 = constant(constants["K1"], temperature)
    k2 = constant(constants["K2"], temperature)
    dissolved = k1 * kh + 2 * k1 * k2 * kh * kh
    return 1800 / w * (kh / (1 - kh) + dissolved / (1 + k1 * kh + k1 * k2 * kh * kh))


def moisture_at(temperature: float, humidity: float) -> float:
    """Equilibrium moisture content in percent, at degrees Fahrenheit and percent of relative humidity.

    >>> round(moisture_at(70, 50), 1)
    9.2
    """
    if humidity >= 100:
        refuse("humidity", f"{decimal(humidity, 1)} % is air that can hold no more water: give less than 100 %")
    return balance(FAHRENHEIT, temperature, humidity / 100)


@calculator(
    title="Moisture that wood comes to",
    summary="The moisture content that boards settle at in air of this temperature and humidity.",
    outputs=(
        Output("moisture", "Moisture content of the wood", "percent", "%", step=0.1),
        Output("drier", "With 5 points of humidity less", "percent", "%", step=0.1),
        Output("damper", "With 5 points of humidity more", "percent", "%", step=0.1),
    ),
    formula=(
        "EMC = 1800 / W x ( K h / (1 - K h) + (K1 K h + 2 K1 K2 K² h²) / (1 + K1 K h + K1 K2 K² h²) )\n\n"
        "h is the relative humidity as a part of 1. W, K, K1 and K2 follow from the temperature; see the working."
    ),
    sources=(Citation("wood-handbook", "equation 4-5, table 4-2"), Citation("emc-note", "constants for degrees F")),
    example={"temperature": "70 F", "humidity": "40 %"},
    other_names=("EMC", "equilibrium moisture content", "acclimation", "dry enough"),
    plots=(
        Plot(
            "Moisture of wood against humidity",
            x="humidity",
            y="moisture",
            start=10.0,
            end=90.0,
            curves=("temperature", (40.0, 70.0, 100.0)),
        ),
    ),
)
def wood_moisture(
    temperature: Annotated[
        float,
        temperature("Temperature of the air", "70 F, from 30 to 210 F, usually 40 to 100 F"),
        Help("Where the wood lies, not outdoors."),
    ],
    humidity: Annotated[
        float,
        percent("Relative humidity", "40 %, from 0 to 100 %, usually 20 to 80 %"),
        Help("Off the hygrometer, after it has hung there an hour. Less than 100 %."),
    ],
) -> Answer:
    """The moisture content that wood comes to, in percent, and what five points of humidity make of it.

    ``temperature`` in degrees Fahrenheit, 30 to 210; ``humidity`` in percent, below 100. The handbook
    gives one table for all species; single ones differ a little. From 35 to 180 F and 20 to 80 % the equation keeps
    within 0.5 % of the table, mostly within 0.2 % (Dry Kiln Operator's Manual).

    >>> answer = wood_moisture()
    >>> round(answer["moisture"], 1), round(answer["damper"], 1), round(answer["drier"], 1)
    (7.7, 8.5, 6.9)

    Source: Wood Handbook FPL-GTR-190, equation 4-5; the constants for degrees F from FPL-RN-0268.
    """
    moisture = moisture_at(temperature, humidity)
    celsius = (temperature - 32) * 5 / 9
    in_celsius = balance(CELSIUS, celsius, humidity / 100)
    damper = moisture_at(temperature, min(humidity + 5, (humidity + 100) / 2))
    drier = moisture_at(temperature, max(humidity - 5, 0.0))
    cautions = []
    if humidity >= MOULD_FROM:
        cautions.append("In air this damp mould grows on wood and on drywall: dry the house before wood comes in.")
    if moisture >= DECAY_FROM:
        cautions.append(f"Wood at {decimal(moisture, 1)} % can rot. It stays sound below {decimal(DECAY_FROM, 0)} %.")
    if temperature < 35 or temperature > 180 or humidity < 20 or humidity > 80:
        cautions.append("Outside 35 to 180 F or 20 to 80 % the equation can be half a percent off the table or more.")
    return {
        "moisture": moisture,
        "drier": drier,
        "damper": damper,
        "cautions": cautions,
        "working": [
            f"W = {decimal(constant(FAHRENHEIT['W'], temperature), 2)}, "
            f"K = {decimal(constant(FAHRENHEIT['K'], temperature), 4)}, "
            f"K1 = {decimal(constant(FAHRENHEIT['K1'], temperature), 3)}, "
            f"K2 = {decimal(constant(FAHRENHEIT['K2'], temperature), 3)} at {decimal(temperature, 1)} F",
            f"equation 4-5 with h = {decimal(humidity / 100, 3)}: {decimal(moisture, 2)} %",
            f"the handbook's constants for degrees C, at {decimal(celsius, 1)} C: {decimal(in_celsius, 2)} %",
        ],
    }
