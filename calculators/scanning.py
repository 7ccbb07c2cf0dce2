"""The pieces of written figures: signs made plain, numbers, fractions, unit words.

Each function takes a text and a place in it, and gives back what stands there and the place behind it; nothing
found gives the same place back.
"""

from __future__ import annotations

from typing import NoReturn

from calculators.unit_words import UNIT_WORDS

DIGITS = "0123456789"
LETTERS = "abcdefghijklmnopqrstuvwxyz"

LOOKALIKES = "′’‘´ʹ″”“„ʺ−–—‐‑⁄∕×²³\u00a0\u2007\u2009\u200a\u202f\t\n\r"
PLAIN_SIGNS = list("'''''\"\"\"\"\"-----//x23        ")
"""Typographic signs, and the plain one that each stands for."""

FRACTION_SIGNS = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
FRACTIONS = ["1/2", "1/3", "2/3", "1/4", "3/4", "1/5", "2/5", "3/5", "4/5", "1/6", "5/6", "1/8", "3/8", "5/8", "7/8"]
"""Signs of fractions, and the fraction that each stands for."""

COMMA = (
    "has a comma that could be a decimal point or a thousands mark: write a point for decimals (1.5) "
    "and a comma only before each three figures (1,200)"
)


class Unreadable(ValueError):
    """A text that is not the figure wanted. ``text`` is what was given, ``why`` the rest of the sentence."""

    def __init__(self, text: str, why: str) -> None:
        super().__init__(f"'{text}' {why}")
        self.text = text
        self.why = why


def unreadable(text: str, why: str) -> NoReturn:
    """Stop with a sentence that starts with the text given."""
    raise Unreadable(text, why)


def plain(text: str) -> str:
    """A text in small letters with plain quotes, dashes, spaces and fractions, and no point after a short word.

    >>> [plain("5′ 3½″"), plain("300 Sq. Ft."), plain("21 °C")]
    ['5\\' 3 1/2 "', '300 sq ft', '21  deg c']
    """
    out = ""
    for sign in text:
        last = out[len(out) - 1] if len(out) > 0 else ""
        if sign in FRACTION_SIGNS:
            if len(last) > 0 and last in DIGITS:
                out = out + " "
            out = out + FRACTIONS[FRACTION_SIGNS.find(sign)] + " "
        elif sign in LOOKALIKES:
            out = out + PLAIN_SIGNS[LOOKALIKES.find(sign)]
        elif sign == "°" or sign == "º":
            out = out + " deg "
        elif sign != "." or len(last) == 0 or last not in LETTERS:
            out = out + sign.lower()
    return out.replace("''", '"').strip()


def spaces_end(text: str, at: int) -> int:
    """The place behind the spaces."""
    while at < len(text) and text[at] == " ":
        at = at + 1
    return at


def digits_end(text: str, at: int) -> int:
    """The place behind the digits."""
    while at < len(text) and text[at] in DIGITS:
        at = at + 1
    return at


def is_at(text: str, at: int, signs: str) -> bool:
    """Whether one of the signs stands there."""
    return at < len(text) and text[at] in signs


def fraction_at(text: str, at: int) -> tuple[float, int]:
    """A common fraction such as 3/8; a phone's keyboard may put spaces around its bar.

    >>> [fraction_at("3/8 in", 0), fraction_at("3 / 8", 0), fraction_at("3 in", 0)]
    [(0.375, 3), (0.375, 5), (0.0, 0)]
    """
    over = digits_end(text, at)
    bar = spaces_end(text, over)
    start = spaces_end(text, bar + 1)
    under = digits_end(text, start)
    if over == at or not is_at(text, bar, "/") or under == start:
        return (0.0, at)
    bottom = float(text[start:under])
    if bottom == 0 or over - at + under - start > 11:
        unreadable(text, "has a fraction that cannot be: write for example 3/8")
    return (float(text[at:over]) / bottom, under)


def grouped(text: str, at: int) -> tuple[str, int]:
    """The digits of a whole number whose thousands may be parted by commas or by single spaces.

    A space parts thousands (the SI Brochure groups digits in threes with a space) where one to three figures come
    before it and exactly three after; three figures that start a fraction are not thousands.
    """
    first = digits_end(text, at)
    end = first
    digits = text[at:end]
    may_group = 0 < first - at <= 3 and text[at] != "0"
    if is_at(text, end, ","):
        while is_at(text, end, ","):
            group = digits_end(text, end + 1)
            if not may_group or group - end != 4:
                unreadable(text, COMMA)
            digits = digits + text[end + 1 : group]
            end = group
        return (digits, end)
    while may_group and is_at(text, end, " ") and digits_end(text, end + 1) - end == 4:
        group = digits_end(text, end + 1)
        if is_at(text, group, ",") or is_at(text, spaces_end(text, group), "/"):
            return (digits, end)
        digits = digits + text[end + 1 : group]
        end = group
    return (digits, end)


def amount(text: str, at: int) -> tuple[float, int]:
    """An unsigned number: 63, 63.5, .5, 1/2, 5 / 8, 63 1/2, 63-1/2, 1,200 or 1 613.

    >>> [amount("63-1/2 in", 0), amount("1,200 lb", 0), amount("3/8", 0), amount("in", 0)]
    [(63.5, 6), (1200.0, 5), (0.375, 3), (0.0, 0)]
    """
    part, end = fraction_at(text, at)
    if end > at:
        return (part, end)
    digits, end = grouped(text, at)
    if len(digits) > 15:
        unreadable(text, "has more figures than a measurement has")
    if is_at(text, end, ".") and digits_end(text, end + 1) > end + 1:
        point = end
        end = digits_end(text, point + 1)
        if is_at(text, end, ","):
            unreadable(text, COMMA)
        return (float("0" + digits + text[point:end]), end)
    if end == at:
        return (0.0, at)
    ones = float(digits)
    start = spaces_end(text, end) if not is_at(text, end, "-") else end + 1
    if start > end:
        part, after = fraction_at(text, start)
        if after > start:
            if part >= 1:
                unreadable(text, "has a fraction of one or more after a whole number: write for example 1-3/8")
            return (ones + part, after)
    return (ones, end)


def word_end(text: str, at: int) -> int:
    """The place behind a word of letters; a 2 or 3 at its end belongs to it, as in m2 and yd3."""
    end = at
    while is_at(text, end, LETTERS):
        end = end + 1
    if end > at and is_at(text, end, "23") and not is_at(text, end + 1, LETTERS + DIGITS + "-./ '\""):
        return end + 1
    if end > at and is_at(text, end, "23") and is_at(text, end + 1, " ") and not is_at(text, end + 2, DIGITS):
        return end + 1
    return end


def unit_at(text: str, at: int) -> tuple[str, int]:
    """A unit word, of one word or two; or the first word there, which may be no unit.

    >>> [unit_at("sq ft", 0), unit_at("in long", 0), unit_at('"', 0), unit_at("5", 0)]
    [('sq ft', 5), ('in', 2), ('"', 1), ('', 0)]
    """
    if is_at(text, at, "\"'%"):
        return (text[at], at + 1)
    end = word_end(text, at)
    if end > at:
        second = spaces_end(text, end)
        second_end = word_end(text, second)
        pair = text[at:end] + " " + text[second:second_end]
        if pair in UNIT_WORDS:
            return (pair, second_end)
    return (text[at:end], end)
