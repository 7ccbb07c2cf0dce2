"""Texts and marks of a drawing on paper: how wide a text runs, how it breaks into lines, what a renderer is given.

Paper units are pixels when a drawing is shown ``PAPER`` wide, which is a phone's column; y goes down there.
A mark is a plain dict of texts that says one element of the picture; two small renderers write them out.
"""

from __future__ import annotations

from typing import Any, TypedDict

from calculators.writing import decimal

Mark = dict[str, Any]


class Placed(TypedDict):
    """The marks so far, and the edges of what they take up."""

    marks: list[Mark]
    left: float
    top: float
    right: float
    bottom: float


PAPER = 330.0
"""Width of every drawing."""
SIZE = 12.0
"""Height of the letters."""
LINE = 13.5
"""From one line of a text to the next."""
NARROW = " .,:;'|!ijltfrI()[]-/"
WIDE = "mwMWQOG%@"


def text_width(text: str) -> float:
    """How wide a text runs at most; a little more than the site's own letters do.

    >>> text_width("2-1/4 in") < text_width("2-1/4 inches") < text_width("WWWWWWW")
    True
    """
    ems = 0.0
    for i in range(len(text)):
        letter = text[i]
        if letter in NARROW:
            ems = ems + 0.31
        elif letter in WIDE:
            ems = ems + 0.85
        elif letter.upper() == letter and letter.lower() != letter:
            ems = ems + 0.6
        else:
            ems = ems + 0.52
    return ems * SIZE


def wrapped(text: str, width: float) -> list[str]:
    """A text in lines no wider than that; a longer word has a line of its own.

    >>> wrapped("wax ring, squeezed 5/8 in", 60.0)
    ['wax ring,', 'squeezed', '5/8 in']
    """
    lines: list[str] = []
    now = ""
    for word in text.split(" "):
        longer = now + " " + word if now != "" else word
        # A unit stays with its figure.
        if now != "" and text_width(longer) > width and word != "in" and word != "ft":
            lines.append(now)
            now = word
        else:
            now = longer
    lines.append(now)
    return lines


def number(x: float) -> str:
    """A coordinate as it is written out, to a hundredth."""
    return decimal(x, 2)


def path(points: list[list[float]], closed: bool, look: str, fill: str) -> Mark:
    """Straight lines through points of the paper.

    >>> path([[0.0, 0.0], [10.0, 2.5]], False, "outline", "none")["d"]
    'M0 0L10 2.5'
    """
    d = ""
    for i in range(len(points)):
        letter = "M" if i == 0 else "L"
        d = d + letter + number(points[i][0]) + " " + number(points[i][1])
    if closed:
        d = d + "Z"
    return {"kind": "path", "d": d, "look": look, "fill": fill}


def stroke(x1: float, y1: float, x2: float, y2: float, look: str) -> Mark:
    """One straight line of the paper."""
    return path([[x1, y1], [x2, y2]], False, look, "none")


def round_mark(x: float, y: float, radius: float, look: str, fill: str) -> Mark:
    """A circle of the paper."""
    return {"kind": "circle", "cx": number(x), "cy": number(y), "r": number(radius), "look": look, "fill": fill}


def written(x: float, y: float, text: str, anchor: str, upright: bool) -> Mark:
    """A line of text from its baseline; ``upright`` ones are read from the right."""
    turn = "rotate(-90 " + number(x) + " " + number(y) + ")" if upright else ""
    return {"kind": "text", "x": number(x), "y": number(y), "anchor": anchor, "turn": turn, "text": text}
