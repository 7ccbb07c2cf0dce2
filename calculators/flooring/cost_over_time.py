"""Two floors compared over decades: what each has cost by each year, and from when the dearer one is the cheaper.

Arithmetic on the figures that are put in, no forecast. The prices that it starts with are invented.
"""

from __future__ import annotations

from math import floor
from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, Answer, Output, Plot, output_rows
from calculators.declaring import Help, InputAnnotation, area, calculator, choice, count, number, percent
from calculators.writing import NOISE, decimal

MONEY = "dollars"
INVENTED = Help("Invented: put in your own price.")


def due(year: float, every: float) -> bool:
    """Whether something that comes every so many years comes in that year; 0 years is never.

    >>> due(30, 10), due(35, 10), due(30, 0)
    (True, False, False)
    """
    return False if every < 1 else abs(year / every - floor(year / every + 0.5)) < NOISE


def cost_in(
    year: float, install: float, refinish: float, refinish_every: float, replace: float, replace_every: float
) -> float:
    """What a floor costs in one year, for a square foot and in the prices of today; year 0 is when it is laid.

    A floor that is replaced is not refinished in that year, and its years of refinishing start anew.

    >>> cost_in(0, 12, 4, 10, 14, 30), cost_in(10, 12, 4, 10, 14, 30), cost_in(30, 12, 4, 10, 14, 30)
    (12, 4, 14)
    """
    if year == 0:
        return install
    if due(year, replace_every):
        return replace
    age = year - replace_every * floor(year / replace_every) if replace_every >= 1 else year
    return refinish if due(age, refinish_every) else 0.0


def worth_today(cost: float, year: float, rate: float) -> float:
    """A cost of a later year at its worth today; ``rate`` in percent a year, compounded yearly.

    >>> round(worth_today(110.0, 1, 10), 6), worth_today(50.0, 7, 0)
    (100.0, 50.0)
    """
    worth = cost
    done = 0
    while done < year:
        worth = worth / (1 + rate / 100)
        done = done + 1
    return worth


def price(label: str, default: str) -> InputAnnotation:
    """An input for what a square foot costs."""
    return number(label, f"{default}, from 0 to 1000 dollars", MONEY)


def every(label: str, default: str) -> InputAnnotation:
    """An input for the years between two works."""
    return count(label, f"{default}, from 0 to 100", "years")


@calculator(
    title="Two floors over the years",
    summary="What two floors have cost by each year, laying, refinishing and replacing, and where they break even.",
    outputs=(
        Output("total_first", "First floor, all years", "number", MONEY, step=1),
        Output("total_second", "Second floor, all years", "number", MONEY, step=1),
        Output("a_year_first", "First floor, a year", "number", MONEY, step=1),
        Output("a_year_second", "Second floor, a year", "number", MONEY, step=1),
        Output("difference", "Difference", "number", MONEY, step=1),
        Output("cheaper", "Has cost less in the end", "text"),
        Output("break_even", "Break-even", "text"),
        Output("break_even_year", "First year of break-even; 0 for none", "count", step=1),
        Output("cost", "Cost of the floor asked for", "number", MONEY, step=1),
        output_rows(
            "years_list",
            "Cost so far",
            Output("year", "Year", "count", step=1),
            Output("first", "First floor", "number", MONEY, step=1),
            Output("second", "Second floor", "number", MONEY, step=1),
        ),
    ),
    formula=(
        "Cost by a year = area x (laying + each refinishing + each replacing up to that year).\n\n"
        "With a discount rate a cost of year n counts as cost / (1 + rate)^n. Prices stay those of today.\n\n"
        "Arithmetic on the figures that you put in, and no better than they are; the starting prices are invented."
    ),
    sources=(COMMON_PRACTICE,),
    example={
        "area": "300 sq ft",
        "install_a": "12",
        "refinish_a": "4",
        "refinish_every_a": "10",
        "install_b": "6",
        "replace_b": "8",
        "replace_every_b": "12",
    },
    other_names=("life-cycle cost", "break-even", "hardwood or vinyl", "payback", "present worth"),
    cannot_decide=(
        "What prices, rates and years will be. Nor what a floor is worth to who lives on it, or to who buys the house."
    ),
    plots=(Plot("Cost so far", x="years", y="cost", start=1.0, end=60.0, curves=("asked", ("first", "second"))),),
)
def cost_over_time(
    area: Annotated[float, area("Floor area", "300 sq ft, from 1 to 20000 sq ft")],
    years: Annotated[float, count("Years to look ahead", "40, from 1 to 100, usually 5 to 60", "years")],
    rate: Annotated[float, percent("Discount rate a year; 0 for none", "0, from 0 to 30 %, usually 0 to 10 %")],
    install_a: Annotated[float, price("First floor, laid, a sq ft", "12 dollars"), INVENTED],
    refinish_a: Annotated[float, price("First floor, refinished, a sq ft", "4 dollars"), INVENTED],
    refinish_every_a: Annotated[float, every("First floor, years between refinishing; 0 for never", "10")],
    replace_a: Annotated[float, price("First floor, torn out and replaced, a sq ft", "0 dollars"), INVENTED],
    replace_every_a: Annotated[float, every("First floor, years until it is replaced; 0 for never", "0")],
    install_b: Annotated[float, price("Second floor, laid, a sq ft", "6 dollars"), INVENTED],
    refinish_b: Annotated[float, price("Second floor, refinished, a sq ft", "0 dollars"), INVENTED],
    refinish_every_b: Annotated[float, every("Second floor, years between refinishing; 0 for never", "0")],
    replace_b: Annotated[float, price("Second floor, torn out and replaced, a sq ft", "8 dollars"), INVENTED],
    replace_every_b: Annotated[float, every("Second floor, years until it is replaced; 0 for never", "12")],
    asked: Annotated[
        str,
        choice("Floor asked for", {"first": "the first floor", "second": "the second floor"}, default="first"),
        Help("Whose cost stands on its own line, and is drawn."),
    ],
) -> Answer:
    """The sum of what two floors cost by each year, and the year from which the one dearer to lay has cost less.

    Prices in dollars a square foot of today, ``area`` in square feet, whole years up to 100, ``rate`` in percent a
    year. Costs of a year fall at its end; those of the last year count. Prices are taken not to change; to let them
    rise, take that off the rate.

    >>> answer = cost_over_time(area=100)
    >>> answer["total_first"], answer["total_second"], answer["break_even_year"]
    (2800.0, 3000.0, 24)

    Source: sums, and present worth as any text on engineering economy has it: cost / (1 + rate)^years.
    """
    last = floor(years + NOISE)
    first = 0.0
    second = 0.0
    rows = []
    dearer_is_first = install_a >= install_b
    break_even = 0
    ahead_since = 0
    for year in range(last + 1):
        in_first = cost_in(year, install_a, refinish_a, refinish_every_a, replace_a, replace_every_a)
        in_second = cost_in(year, install_b, refinish_b, refinish_every_b, replace_b, replace_every_b)
        first = first + area * worth_today(in_first, year, rate)
        second = second + area * worth_today(in_second, year, rate)
        if in_first > 0 or in_second > 0 or year == last:
            rows.append({"year": year, "first": first, "second": second})
        lead = second - first
        if not dearer_is_first:
            lead = -lead
        ahead = lead >= -NOISE and year > 0
        if ahead and break_even == 0:
            break_even = year
        if ahead and ahead_since == 0:
            ahead_since = year
        if not ahead:
            ahead_since = 0
    cautions = cost_cautions("first", refinish_every_a, replace_every_a, last)
    cautions.extend(cost_cautions("second", refinish_every_b, replace_every_b, last))
    cost = second if asked == "second" else first
    return {
        "total_first": first,
        "total_second": second,
        "a_year_first": first / last,
        "a_year_second": second / last,
        "difference": abs(first - second),
        "cheaper": cheaper_in_words(first, second),
        "break_even": break_even_in_words(install_a, install_b, break_even, ahead_since, last),
        "break_even_year": break_even,
        "cost": cost,
        "years_list": rows,
        "cautions": cautions,
        "working": [
            f"{decimal(area, 0)} sq ft to lay: {decimal(area * install_a, 0)} and {decimal(area * install_b, 0)} "
            "dollars",
            in_words("first", refinish_a, refinish_every_a, replace_a, replace_every_a),
            in_words("second", refinish_b, refinish_every_b, replace_b, replace_every_b),
            discount_in_words(rate),
        ],
    }


def discount_in_words(rate: float) -> str:
    """How later costs count."""
    if rate == 0:
        return "a cost counts the same in every year"
    return f"a cost of year n counts as cost / (1 + {decimal(rate / 100, 4)})^n"


def in_words(name: str, refinish: float, refinish_every: float, replace: float, replace_every: float) -> str:
    """The later costs of a floor as one line."""
    text = "never refinished"
    if refinish_every >= 1:
        text = f"refinished every {decimal(refinish_every, 0)} years for {decimal(refinish, 2)} dollars a sq ft"
    if replace_every < 1:
        return f"the {name} floor: {text}, never replaced"
    price = f"{decimal(replace, 2)} dollars a sq ft"
    return f"the {name} floor: {text}, replaced every {decimal(replace_every, 0)} years for {price}"


def cheaper_in_words(first: float, second: float) -> str:
    """Which floor has cost less in the end."""
    if abs(first - second) < 0.005:
        return "neither: both have cost the same"
    if first < second:
        return "the first floor"
    return "the second floor"


def break_even_in_words(install_a: float, install_b: float, break_even: int, ahead_since: int, last: int) -> str:
    """From when the floor that is dearer to lay has cost no more than the other.

    >>> break_even_in_words(12, 6, 24, 36, 40)
    'the first floor has cost no more from year 24, and stays so from year 36'
    """
    dearer = "second" if install_b > install_a else "first"
    if abs(install_a - install_b) < 0.005:
        return "both cost the same to lay"
    if break_even == 0:
        return f"the {dearer} floor costs more to lay and does not make it up in {last} years"
    if ahead_since == 0:
        return f"the {dearer} floor has cost no more in year {break_even}, but not at the end"
    if ahead_since == break_even:
        return f"the {dearer} floor has cost no more from year {break_even} on"
    return f"the {dearer} floor has cost no more from year {break_even}, and stays so from year {ahead_since}"


def cost_cautions(name: str, refinish_every: float, replace_every: float, last: int) -> list[str]:
    """What to watch: a cost just before the end, a floor that nothing is ever done to."""
    cautions = []
    if replace_every < 1 and refinish_every < 1:
        cautions.append(f"Nothing is ever done to the {name} floor: is that so for {last} years?")
    if due(last, replace_every):
        cautions.append(f"The {name} floor is replaced in the last year and paid for years that are not counted.")
    return cautions
