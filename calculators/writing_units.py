"""Values with their units as people in the trade write them: `2-1/2 cu yd`, `1:48`, `3 bundles`."""

from __future__ import annotations

from typing import Any

from calculators.units import from_inside
from calculators.writing import (
    NOISE,
    SIXTEENTH,
    decimal,
    feet_and_inches,
    fraction,
    is_binary,
    rounded,
    stepped,
    tape_step,
    ten_to,
    whole,
)


def one_of(unit: str) -> str:
    """The unit word for one: `bundles` is `bundle`. The last word is the one that changes.

    >>> [one_of("bundles"), one_of("boxes"), one_of("days"), one_of("in"), one_of("glass"), one_of("s")]
    ['bundle', 'box', 'day', 'in', 'glass', 's']
    """
    for ending in ["ches", "shes", "xes", "sses"]:
        if unit.endswith(ending):
            return unit[0 : len(unit) - 2]
    return unit[0 : len(unit) - 1] if len(unit) > 1 and unit.endswith("s") and not unit.endswith("ss") else unit


def with_unit(number: str, unit: str) -> str:
    """A written number and its unit word, in the singular for one."""
    if unit == "":
        return number
    if number == "1" or number == "-1":
        return number + " " + one_of(unit)
    return number + " " + unit


def write_slope(value: float, unit: str, step: float, rounds: str) -> str:
    """A slope. ``1:n`` rounds n the other way, as a larger n is a smaller slope; no slope is `level`."""
    if unit == "1:n":
        if abs(value) < NOISE:
            return "level"
        other = rounds
        if rounds == "up":
            other = "down"
        if rounds == "down":
            other = "up"
        n = stepped(1 / abs(value), step, other)
        if value < 0:
            return "-1:" + n
        return "1:" + n
    written = from_inside(value, "slope", unit)
    if unit == "in/ft":
        on_tape = abs(written - rounded(written, SIXTEENTH, "nearest")) < NOISE
        if is_binary(step):
            return fraction(written, step, rounds) + " in/ft"
        if step == 0 and on_tape:
            return fraction(written, SIXTEENTH, rounds) + " in/ft"
    return stepped(written, step, rounds) + " " + unit


def write(value: Any, quantity: str, unit: str, step: float = 0.0, rounds: str = "nearest") -> str:
    """A value of the inside as text in the written unit, in whole steps of that unit (for ``ft-in`` of inches).

    A step of 0 is 1/16 in for lengths in ``in`` and ``ft-in``, and four significant figures for all else.
    A length in ``in`` and a volume in ``cu yd`` whose step is a fraction of the tape are written as fractions. One that
    ``rounds`` to the ``tape`` is a length that is held against a limit: see :func:`tape_step`.

    >>> [write(63.5, "length", "ft-in"), write(67.5, "volume", "cu yd", 0.25, "up"), write(0.02, "slope", "%")]
    ['5\\' 3-1/2"', '2-1/2 cu yd', '2 %']
    """
    if quantity == "yes-no":
        if value is True:
            return "yes"
        return "no"
    if quantity == "choice" or quantity == "text":
        return str(value)
    if quantity == "slope":
        return write_slope(value, unit, step, rounds)
    written = from_inside(value, quantity, unit)
    mark = SIXTEENTH if step == 0 else step
    if rounds == "tape":
        if unit == "in" or unit == "ft-in":
            mark = tape_step(written)
        rounds = "nearest"
    if quantity == "length" and unit == "ft-in":
        return feet_and_inches(written, mark, rounds)
    if quantity == "length" and unit == "in" and is_binary(mark):
        return fraction(written, mark, rounds) + " in"
    if quantity == "volume" and unit == "cu yd" and is_binary(step):
        return fraction(written, step, rounds) + " cu yd"
    return with_unit(stepped(written, step, rounds), unit)


def fewest(x: float) -> str:
    """x with as few decimal places as come within a millionth of it, nine at most."""
    places = 0
    while places < 9 and abs(rounded(x, 1 / ten_to(places), "nearest") - x) > abs(x) / 1000000:
        places = places + 1
    return decimal(x, places)


def exactly(value: Any, quantity: str, unit: str) -> str:
    """A value as a person gave it, for messages: as many places as it takes, up to a millionth of the value.

    >>> [exactly(0.375, "length", "in"), exactly(0.065, "length", "in"), exactly(1 / 48, "slope", "1:n")]
    ['3/8 in', '0.065 in', '1:48']
    """
    if quantity == "yes-no" or quantity == "choice" or quantity == "text":
        return write(value, quantity, unit)
    written = from_inside(value, quantity, unit)
    on_tape = abs(written * 64 - whole(written * 64, "nearest")) < 1e-6
    if quantity == "length" and unit == "ft-in" and on_tape:
        return feet_and_inches(written, 1 / 64, "nearest")
    if quantity == "length" and unit == "ft-in":
        return fewest(written) + " in"
    if on_tape and (unit == "in" or unit == "in/ft"):
        return fraction(written, 1 / 64, "nearest") + " " + unit
    if quantity == "slope" and unit == "1:n":
        if value > 0:
            return "1:" + fewest(written)
        return write_slope(value, "%", 0.0, "nearest")
    return with_unit(fewest(written), unit)
