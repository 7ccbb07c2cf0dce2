"""A bar chart of work laid out: a row for each place, time to scale along x with the nights left out.

Words stand over their bar and are never shrunk: what would meet in a row goes into lanes, one under the other. The same
layout serves a wide screen and a phone, with another width.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Literal

from build_tools.pages.fit_out.sequence_chart import wrapped

LETTER = 6.3
"""Width of an average letter of the chart's words, in pixels."""
LINE = 14
BAR = 9
GAP = 6
"""Between two lanes, and between two bars of a lane."""
HEAD = 22
"""Height of the line of dates."""
LETTERS = 30
"""The longest line of words over a bar."""
LEAST = 4
"""The narrowest bar, so that a quarter hour is still seen."""


@dataclass(frozen=True, slots=True)
class GanttItem:
    """What goes on in a place from one slot to another. ``sets_end``: it is of the chain that sets the end date."""

    row: str
    starts: int
    ends: int
    kind: Literal["work", "visit", "closed", "wait"]
    words: str = ""
    sets_end: bool = False


@dataclass(frozen=True, slots=True)
class GanttLayout:
    """How a chart is drawn: its width, the width of the column with the places (0: their names stand over the rows)."""

    width: float
    side: float = 0
    worded: bool = True


@dataclass(frozen=True, slots=True)
class GanttBar:
    """A drawn item: its box, and its words in lines, each with the place of its first or last letter."""

    item: GanttItem
    x: float
    y: float
    width: float
    height: float
    lines: tuple[tuple[float, str], ...] = ()
    words_x: float = 0
    to_left: bool = False


@dataclass(frozen=True, slots=True)
class GanttRow:
    """A place: its name in lines, and what is drawn in it."""

    id: str
    y: float
    height: float
    lines: tuple[tuple[float, str], ...]
    bars: tuple[GanttBar, ...]


@dataclass(frozen=True, slots=True)
class GanttDay:
    """A day of the axis, with its words where there is room for them."""

    x: float
    width: float
    words: str
    new_week: bool


@dataclass(slots=True)
class GanttChart:
    """All that is drawn. ``deadline`` is the x of the evening of the last day, where it lies on the chart."""

    width: float
    height: float
    side: float
    days: list[GanttDay] = field(default_factory=list)
    rows: list[GanttRow] = field(default_factory=list)
    deadline: float | None = None


@dataclass(frozen=True, slots=True)
class GanttAxis:
    """Working days side by side; ``first`` is the number of the first of them on the axis of the whole plan."""

    days: Sequence[date]
    first: int
    slots_per_day: int

    def x(self, slot: int, look: GanttLayout) -> float:
        """Where a slot begins."""
        part = (slot - self.first * self.slots_per_day) / (len(self.days) * self.slots_per_day)
        return round(look.side + max(0.0, min(1.0, part)) * (look.width - look.side), 1)

    def cut(self, item: GanttItem) -> GanttItem | None:
        """The part of an item that lies on the axis."""
        low, high = self.first * self.slots_per_day, (self.first + len(self.days)) * self.slots_per_day
        starts, ends = max(item.starts, low), min(item.ends, high)
        return replace(item, starts=starts, ends=ends) if starts < ends else None


def lay_out(
    items: Sequence[GanttItem], names: dict[str, str], axis: GanttAxis, look: GanttLayout, deadline: int | None = None
) -> GanttChart:
    """The chart of what lies on the axis; ``names`` are the places in their order, those with nothing are left out."""
    shown = [part for part in (axis.cut(item) for item in items) if part]
    chart = GanttChart(look.width, HEAD, look.side, _days(axis, look))
    for id, name in names.items():
        mine = sorted((item for item in shown if item.row == id), key=lambda item: (item.starts, item.ends))
        if mine:
            row = _row(id, name, mine, axis, look, chart.height)
            chart.rows.append(row)
            chart.height += row.height
    if deadline is not None:
        chart.deadline = axis.x(deadline, look)
    return chart


def _days(axis: GanttAxis, look: GanttLayout) -> list[GanttDay]:
    width = (look.width - look.side) / len(axis.days)
    made = []
    for number, day in enumerate(axis.days):
        new_week = number == 0 or day.isocalendar()[:2] != axis.days[number - 1].isocalendar()[:2]
        words = ""
        if width >= 11 * LETTER:
            words = f"{day:%a} {day.day} {day:%b}"
        elif width >= 7 * LETTER:
            words = f"{day:%a} {day.day}"
        elif new_week:
            words = f"{day.day} {day:%b}"
        made.append(GanttDay(round(look.side + number * width, 1), round(width, 1), words, new_week))
    return made


def _row(id: str, name: str, items: list[GanttItem], axis: GanttAxis, look: GanttLayout, top: float) -> GanttRow:
    letters = int((look.side or look.width) / LETTER)
    name_lines = wrapped(name, letters)
    over = 0.0 if look.side else len(name_lines) * LINE + 2
    lanes: list[list[GanttBar]] = []
    for item in items:
        bar = _bar(item, axis, look)
        lane = next((lane for lane in lanes if _left(bar) >= _right(lane[-1]) + GAP), None)
        if lane is None:
            lanes.append([bar])
        else:
            lane.append(bar)
    y = top + over + GAP
    bars: list[GanttBar] = []
    for lane in lanes:
        lines = max(len(bar.lines) for bar in lane)
        for bar in lane:
            first = y + (lines - len(bar.lines)) * LINE
            words = tuple((first + LINE * (n + 1) - 4, text) for n, (_, text) in enumerate(bar.lines))
            bars.append(replace(bar, y=y + lines * LINE, lines=words))
        y += lines * LINE + BAR + GAP
    height = max(y - top, len(name_lines) * LINE + 2 * GAP)
    bars = [replace(bar, y=top, height=height) if bar.item.kind == "closed" else bar for bar in bars]
    bars.sort(key=lambda bar: bar.item.kind != "closed")  # what is closed lies under what is written over it
    heads = tuple((top + GAP + LINE * (n + 1) - 4, text) for n, text in enumerate(name_lines))
    return GanttRow(id, top, height, heads, tuple(bars))


def _bar(item: GanttItem, axis: GanttAxis, look: GanttLayout) -> GanttBar:
    """An item with its words, still without a height to stand at."""
    x, end = axis.x(item.starts, look), axis.x(item.ends, look)
    width = max(end - x, LEAST)
    if not look.worded or not item.words:
        return GanttBar(item, x, 0, width, BAR)
    lines = wrapped(item.words, LETTERS)
    long = max(map(len, lines)) * LETTER
    to_left = x + long > look.width
    words_x = max(x + width, long) if to_left else x  # near the middle of a phone's chart neither side has room
    return GanttBar(item, x, 0, width, BAR, tuple((0.0, text) for text in lines), words_x, to_left)


def _left(bar: GanttBar) -> float:
    long = max((len(text) for _, text in bar.lines), default=0) * LETTER
    return min(bar.x, bar.words_x - long) if bar.to_left else bar.x


def _right(bar: GanttBar) -> float:
    long = max((len(text) for _, text in bar.lines), default=0) * LETTER
    return max(bar.x + bar.width, bar.words_x if bar.to_left else bar.words_x + long)
