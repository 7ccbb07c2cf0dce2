"""Drawn inputs, as people give them and as they should not: the same for the same seed."""

from __future__ import annotations

from random import Random
from typing import Any

from calculators.declaration import Calculator, Input
from calculators.units import UNITS, from_inside
from calculators.writing import decimal
from calculators.writing_units import exactly, write

JUNK = [
    "", " ", "abc", "1,5", "1,200", "1 613", "1/0", "7/3", "-", "--3", "3 lb", "12 psi", "5'", "5 ft 13 in", "1:48",
    "level", "2 %", "90 deg", "1e3", "½", "⅞\"", "٣", "١٢", "constructor", "toString", "__proto__", "NaN", "Infinity",
    "1.2.3", "1234567890123456", "999999999999999", "0", "-0", "+4", "4 in 12", "1/4 in per ft", "yes", "0x10", "1:0",
    "3 dogs", "5' 3-1/2\"", "5′ 3½″", "63 1/2", "21 °C", "70 F", "İ", "Σ", "\ufeff3", "3\u2003in", "a, b; c", "😀",
    "1 h 30 min", "1\u00a0613 mm",
]  # fmt: skip
OPENING = ["14' x 12'", "corners 0,0 14',0 14',12' 0,12'", "walls 14' right 12' right 14' right 12'"]


def number_text(random: Random, value: float) -> str:
    """A number as one of the ways in which people write it."""
    rough = [f"{value:.3f}", f"{value:.1f}", f"{value:g}", decimal(value, 2), decimal(value, 6), str(int(value))]
    sixteenths = round(abs(value) * 16)
    ones, part = divmod(sixteenths, 16)
    sign = "-" if value < 0 else ""
    fractions = (
        [f"{sign}{ones} {part}/16", f"{sign}{ones}-{part}/16", f"{sign}{part}/16"] if part else [f"{sign}{ones}"]
    )
    return random.choice([text for text in rough if "e" not in text] + fractions)


def figure_text(random: Random, item: Input, value: float) -> str:
    """A value of the inside as text, in the input's unit or another, and with its way where it has two."""
    if item.ways:
        text = size_text(random, item, abs(value))
        return f"{text} {item.ways[value < 0]}" if random.random() < 0.95 else text
    return size_text(random, item, value)


def size_text(random: Random, item: Input, value: float) -> str:
    """A value of the inside without its way."""
    units = list(UNITS.get(item.quantity, {}))
    ways = [
        exactly(value, item.quantity, item.unit),
        write(value, item.quantity, item.unit),
        number_text(random, from_inside(value, item.quantity, item.unit) if _has(item) else value),
    ]
    if units:
        unit = random.choice(units)
        if unit == "1:n":
            ways.append(f"1:{number_text(random, from_inside(value, 'slope', unit))}")
        elif unit == "ft-in":
            feet = int(abs(value) // 12)
            ways.append(f"{feet}' {number_text(random, abs(value) - feet * 12)}\"")
            ways.append(f"{feet} ft - {number_text(random, abs(value) - feet * 12)} in")
        else:
            ways.append(f"{number_text(random, from_inside(value, item.quantity, unit))} {unit}")
    text = random.choice(ways)
    return random.choice(
        [text, text, f" {text} ", text.upper(), text.replace("'", "’").replace("-", "–"), text.replace(" ", "")]
    )


def _has(item: Input) -> bool:
    return item.unit in UNITS.get(item.quantity, {})


def figure(random: Random, item: Input) -> float:
    """A number: ordinary, near or at a limit, or far outside."""
    edges = [edge for edge in (item.least, item.most) if edge is not None]
    low, high = item.usual or (item.least or 0.0, item.most if item.most is not None else 100.0)
    at = random.random()
    if edges and at < 0.12:
        edge = random.choice(edges)
        near = random.choice([0.0, 1e-12, 1e-9, 1e-6, 1 / 64, 0.5]) * random.choice([-1, 1])
        return edge + near
    if at < 0.16:
        return random.choice([-1.0, 1.0, 0.0, 2.0]) * random.choice([0.1, 1.0, 10.0, 1e3, 1e6]) * (abs(high) + 1)
    if at < 0.25 and edges:
        low, high = item.least if item.least is not None else low, item.most if item.most is not None else high
    if item.quantity == "count":
        return float(random.randint(int(low), max(int(low), int(min(high, low + 200)))))
    drawn = random.uniform(low, high)
    return random.choice([drawn, round(drawn), round(drawn * 16) / 16, round(drawn, 2)])


def length(random: Random) -> str:
    """A side of a room."""
    feet, inches = random.randint(1, 30), random.choice([0, 0, 3, 6, 7.5])
    return random.choice(
        [f"{feet}'", f"{feet}' {inches}\"", f"{feet} ft {inches} in", f"{feet * 305} mm", f"{feet / 3:.2f} m"]
    )


def plan_text(random: Random) -> str:
    """A plan, sound or not."""
    a, b = length(random), length(random)
    tight_a, tight_b = f"{random.randint(2, 30)}'", f"{random.randint(2, 30)}'6\""
    shapes = [
        f"{a} x {b}",
        f"{a} by {b}",
        f"kitchen: {a} x {b}",
        f"corners 0,0 {tight_a},0 {tight_a},{tight_b} 0,{tight_b}",
        f"corners 0,0 {tight_a},{tight_b} {tight_a},0 0,{tight_b}",
        f"walls {a} right {b} right {a} right {b}",
        f"walls {a} right {b} left {a} right {b} right {a}",
        f"walls 10' right 45 {a} right 10' right 135 {b}",
    ]
    first = random.choice([*shapes, random.choice(JUNK)])
    more = random.choice(
        ["", "", f"; {random.choice(shapes)}", f"; less {random.randint(1, 4)}' x 2'", f"\nless {a} x {b}"]
    )
    return first + more


def given_text(random: Random, item: Input) -> str:
    """A text for an input."""
    if random.random() < 0.03:
        return random.choice(JUNK)
    if item.quantity == "choice":
        choice = random.choice(item.choices)
        return random.choice([choice.name, choice.label, choice.name.upper(), choice.name[1:], f" {choice.name}"])
    if item.quantity == "yes-no":
        return random.choice(["yes", "no", "Yes", "n", "TRUE", "false", "perhaps"])
    if item.quantity == "text":
        return random.choice(["kitchen", " hall ", "Bath 2", "", "O’Neill", "½ bath"])
    if item.quantity == "plan":
        return plan_text(random)
    return figure_text(random, item, figure(random, item))


def rows_given(random: Random, item: Input) -> Any:
    """Rows, as text or as cells."""
    rows = []
    for _ in range(random.choice([0, 1, 1, 2, 3, 5])):
        cells = {}
        for column in item.columns:
            if column.default is None or random.random() < 0.6:
                good = column.quantity == "text" and random.random() < 0.95
                cells[column.name] = random.choice(["A", "B", "front", "12"]) if good else given_text(random, column)
        rows.append(cells)
    if random.random() < 0.05 and rows:
        rows[0][random.choice(["widht", "constructor", "x"])] = "1"
    if random.random() < 0.5:
        return rows
    return "; ".join(", ".join(row.get(column.name, "").replace(",", "") for column in item.columns) for row in rows)


def case(random: Random, calculator: Calculator, number: int) -> dict[str, Any]:
    """One case: for each input a text, a value of the inside, or nothing; two in three cases are ordinary jobs."""
    texts: dict[str, Any] = {}
    values: dict[str, Any] = {}
    wild = random.random() < 0.35
    for item in calculator.inputs:
        left_out = random.random() < (0.25 if item.default is not None else 0.02)
        if left_out:
            continue
        if item.quantity == "rows":
            texts[item.name] = rows_given(random, item)
        elif item.quantity in ("choice", "yes-no", "text", "plan"):
            texts[item.name] = given_text(random, item) if wild else tame_text(random, item)
        elif random.random() < 0.5:
            values[item.name] = figure(random, item) if wild else tame(random, item)
        else:
            value = figure(random, item) if wild else tame(random, item)
            texts[item.name] = figure_text(random, item, value)
            if wild and random.random() < 0.05:
                texts[item.name] = random.choice(JUNK)
    return {"texts": texts, "values": values, "metric": random.random() < 0.2, "draws": number < 300}


def tame(random: Random, item: Input) -> float:
    """A number that an ordinary job has."""
    low, high = item.usual or (item.least or 0.0, item.most if item.most is not None else 100.0)
    if item.default is not None and random.random() < 0.3:
        return float(item.default)
    low, high = max(low, item.least if item.least is not None else low), min(high, item.most or high)
    if item.quantity == "count":
        return float(random.randint(int(low), max(int(low), int(min(high, low + 12)))))
    drawn = random.uniform(low, high)
    return random.choice([drawn, min(high, max(low, round(drawn * 16) / 16))])


def tame_text(random: Random, item: Input) -> str:
    """A text that is read."""
    if item.quantity == "choice":
        return random.choice(item.choices).name
    if item.quantity == "yes-no":
        return random.choice(["yes", "no"])
    if item.quantity == "plan":
        return random.choice([f"{length(random)} x {length(random)}", *OPENING])
    return "kitchen"
