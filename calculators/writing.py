"""Numbers and lengths as people in the trade write them: `2-1/2`, `5' 3-1/2"`.

Rounding has one rule. 'nearest' takes a half away from zero (1/32 in is 1/16 in to the nearest 1/16, -1/32 in is
-1/16 in). 'up' is towards the larger number and 'down' towards the smaller. What lies within a thousand-millionth of a
step (for large numbers a little more) is that step, so that the noise of arithmetic never orders one bundle more.
"""

from __future__ import annotations

from math import ceil, floor

SIXTEENTH = 0.0625
NOISE = 1e-9
TAPE = 0.02
"""Inches, half a millimetre: a length that is held against a limit reaches it when it is this near. The marks of a tape
lie further apart, and codes round so too: the IRC prints 36 inches as 914 mm (from memory)."""


def whole(x: float, direction: str) -> int:
    """The whole number nearest to x, or the next one up or down.

    >>> [whole(2.5, "nearest"), whole(-2.5, "nearest"), whole(2.0000000001, "up"), whole(2.1, "up")]
    [3, -3, 2, 3]
    """
    grain = min(0.001, max(NOISE, abs(x) * 1e-12))
    if direction == "up":
        return ceil(x - grain)
    if direction == "down":
        return floor(x + grain)
    if x < 0:
        return -floor(0.5 + grain - x)
    return floor(x + 0.5 + grain)


def rounded(x: float, step: float, direction: str) -> float:
    """x in whole steps; 'nearest' takes a half away from zero. A step of 0 leaves x as it is.

    >>> [rounded(2.27, 0.25, "up"), rounded(1 / 32, 1 / 16, "nearest"), rounded(0.31, 0.1, "nearest")]
    [2.5, 0.0625, 0.3]
    """
    if step == 0:
        return x
    steps = whole(x / step, direction)
    in_one = floor(1 / step + 0.5)
    return steps / in_one if in_one > 0 and abs(in_one * step - 1) < NOISE else steps * step


def ten_to(places: int) -> int:
    """10, so many times."""
    power = 1
    for _ in range(places):
        power = power * 10
    return power


def digits_of(count: int) -> str:
    """A whole number, not negative, as text, to fifteen figures: as many as a float and a script hold without fail.

    >>> [digits_of(0), digits_of(1234567), digits_of(12345678901234567890)]
    ['0', '1234567', '12345678901234600000']
    """
    zeros = ""
    while count >= 1000000000000000:
        count = floor(count / 10 + 0.5)
        zeros = zeros + "0"
    return str(count) + zeros


def decimal(x: float, places: int) -> str:
    """x with at most so many decimal places, without zeros at the end. Up to 1e15.

    >>> [decimal(2.5, 2), decimal(3.0, 1), decimal(-0.004, 2), decimal(1 / 3, 3)]
    ['2.5', '3', '0', '0.333']
    """
    scaled = whole(abs(x) * ten_to(places), "nearest")
    digits = digits_of(scaled)
    while len(digits) <= places:
        digits = "0" + digits
    point = len(digits) - places
    end = len(digits)
    while end > point and digits[end - 1] == "0":
        end = end - 1
    written = digits[0:point]
    if end > point:
        written = written + "." + digits[point:end]
    return "-" + written if x < 0 and scaled > 0 else written


def four_figures(x: float) -> str:
    """x to four significant figures; the whole part keeps all of its figures.

    >>> [four_figures(1 / 3), four_figures(61.3333), four_figures(123456.7), four_figures(0.0012345)]
    ['0.3333', '61.33', '123457', '0.001235']
    """
    places = 3
    size = abs(x)
    while size >= 10 and places > 0:
        size = size / 10
        places = places - 1
    while 0 < size < 1 and places < 12:
        size = size * 10
        places = places + 1
    return decimal(x, places)


def is_binary(step: float) -> bool:
    """Whether a step is a fraction of the tape: whole sixty-fourths.

    >>> [is_binary(1 / 16), is_binary(0.25), is_binary(0.1)]
    [True, True, False]
    """
    return step > 0 and floor(step * 64) == step * 64


def places_of(step: float) -> int:
    """How many decimal places a step needs.

    >>> [places_of(1), places_of(0.25), places_of(0.005)]
    [0, 2, 3]
    """
    places = 0
    while places < 9 and abs(step * ten_to(places) - floor(step * ten_to(places) + 0.5)) > NOISE:
        places = places + 1
    return places


def stepped(x: float, step: float, rounds: str) -> str:
    """x in whole steps as a decimal; four significant figures for a step of 0."""
    return four_figures(x) if step == 0 else decimal(rounded(x, step, rounds), places_of(step))


def mixed(sixty_fourths: int) -> str:
    """A number of sixty-fourths, not negative, as a mixed number in lowest terms.

    >>> [mixed(80), mixed(24), mixed(128), mixed(0)]
    ['1-1/4', '3/8', '2', '0']
    """
    ones = floor(sixty_fourths / 64)
    over = sixty_fourths - ones * 64
    under = 64
    while over > 0 and floor(over / 2) * 2 == over:
        over = floor(over / 2)
        under = floor(under / 2)
    if over == 0:
        return digits_of(ones)
    part = str(over) + "/" + str(under)
    return part if ones == 0 else digits_of(ones) + "-" + part


def fraction(x: float, step: float, rounds: str) -> str:
    """x as a mixed number in lowest terms, in whole steps; the step is a whole number of sixty-fourths.

    >>> [fraction(1.25, 1 / 16, "nearest"), fraction(-0.375, 1 / 16, "nearest"), fraction(2.27, 0.25, "up")]
    ['1-1/4', '-3/8', '2-1/2']
    """
    count = whole(rounded(x, step, rounds) * 64, "nearest")
    return "-" + mixed(-count) if count < 0 else mixed(count)


def inches(x: float, step: float = SIXTEENTH) -> str:
    """A length in inches, to the nearest 1/16 in; a half goes away from zero.

    >>> [inches(1.25), inches(-0.375), inches(0.999), inches(0)]
    ['1-1/4 in', '-3/8 in', '1 in', '0 in']
    """
    return fraction(x, step, "nearest") + " in"


def tape_step(x: float) -> float:
    """The mark to which a length is told that is held against a limit: the sixteenth that it is, or a thirty-second.

    What is told as a limit is then never judged as short of it, nor what is told as short of it as reaching it.

    >>> [fraction(x, tape_step(x), "nearest") for x in (36 - 0.4 / 25.4, 14.96875, 15.015625)]
    ['36', '14-31/32', '15']
    """
    return SIXTEENTH / 2 if abs(x - rounded(x, SIXTEENTH, "nearest")) > TAPE else SIXTEENTH


def near(limit: float) -> float:
    """How little a length may miss a limit and still reach it: half a millimetre, from 3/8 in on. Inches.

    >>> [near(36), near(1 / 16)]
    [0.02, 1e-09]
    """
    return NOISE if limit < 0.375 else TAPE


def tape(x: float) -> str:
    """A length in inches that is held against a limit.

    >>> [tape(14.96875), tape(15.01)]
    ['14-31/32 in', '15 in']
    """
    return fraction(x, tape_step(x), "nearest") + " in"


def feet_and_inches(x: float, step: float, rounds: str) -> str:
    """A length in inches as feet and inches, in whole steps of inches."""
    count = whole(rounded(x, step, rounds) * 64, "nearest")
    sign = ""
    if count < 0:
        sign = "-"
        count = -count
    feet = floor(count / 768)
    rest = mixed(count - feet * 768) + '"'
    return sign + rest if feet == 0 else sign + digits_of(feet) + "' " + rest


def feet_inches(x: float, step: float = SIXTEENTH) -> str:
    """A length in inches as feet and inches, to the nearest 1/16 in; a half goes away from zero. Never 12 in.

    >>> [feet_inches(63.5), feet_inches(60), feet_inches(3.5), feet_inches(11 + 31 / 32)]
    ['5\\' 3-1/2"', '5\\' 0"', '3-1/2"', '1\\' 0"']
    """
    return feet_and_inches(x, step, "nearest")
