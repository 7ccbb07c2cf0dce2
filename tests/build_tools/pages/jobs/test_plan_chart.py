"""The chart of a plan: nothing meets in a row, words stay on the sheet, and a chart of any width says the same."""

from __future__ import annotations

from datetime import date, timedelta

from hypothesis import example, given
from hypothesis import strategies as st

from build_tools.pages.jobs.gantt import LETTER, GanttAxis, GanttBar, GanttItem, GanttLayout, lay_out

A_DAY = 32
WEEK = [date(2026, 12, 7) + timedelta(days=n) for n in range(5)]
NAMES = {"room": "Room", "bath": "A bath with a very long name, upstairs", "yard": "Yard"}
words = st.sampled_from(["", "Set a toilet: Ida, Wren", "Receive flooring and let it settle to the house: Ida, Tobin"])
items = st.lists(
    st.builds(
        lambda row, start, long, kind, text, sets: GanttItem(row, start, start + long, kind, text, sets),
        st.sampled_from(list(NAMES)),
        st.integers(0, 7 * A_DAY),
        st.integers(1, 2 * A_DAY),
        st.sampled_from(["work", "visit", "closed", "wait"]),
        words,
        st.booleans(),
    ),
    max_size=14,
)
looks = st.sampled_from(
    [
        GanttLayout(912, side=112),
        GanttLayout(328),
        GanttLayout(912, side=112, worded=False),
        GanttLayout(328, worded=False),
    ]
)


def boxes(bar: GanttBar) -> list[tuple[float, float, float, float]]:
    """Where a bar and its words are; what is closed has no bar of its own, it lies under the whole row."""
    found = [] if bar.item.kind == "closed" else [(bar.x, bar.y, bar.x + bar.width, bar.y + bar.height)]
    for y, text in bar.lines:
        long = len(text) * LETTER
        left = bar.words_x - long if bar.to_left else bar.words_x
        found.append((left, y - 10, left + long, y + 2))
    return found


LONG = "Receive flooring and let it settle to the house: Ida, Tobin"


@given(items, looks)
@example([GanttItem("room", 78, 79, "work", LONG)], GanttLayout(328))  # neither side of the bar has room for the words
def test_nothing_meets_and_nothing_leaves_the_sheet(drawn: list[GanttItem], look: GanttLayout) -> None:
    chart = lay_out(drawn, NAMES, GanttAxis(WEEK, 0, A_DAY), look, deadline=3 * A_DAY)
    for row in chart.rows:
        mine = [(bar, box) for bar in row.bars for box in boxes(bar)]
        for n, (bar, (left, top, right, bottom)) in enumerate(mine):
            assert row.y <= top
            assert bottom <= row.y + row.height + 1
            assert right <= look.width + 4
            assert left >= 0
            for other, box in mine[n + 1 :]:
                if other is not bar:
                    apart = right <= box[0] or box[2] <= left or bottom <= box[1] or box[3] <= top
                    assert apart, (bar, other)
    assert chart.height == 22 + sum(row.height for row in chart.rows)


@given(items, looks)
def test_what_lies_in_the_week_is_drawn_once_and_to_scale(drawn: list[GanttItem], look: GanttLayout) -> None:
    chart = lay_out(drawn, NAMES, GanttAxis(WEEK, 0, A_DAY), look)
    inside = [item for item in drawn if item.starts < 5 * A_DAY]
    bars = [bar for row in chart.rows for bar in row.bars]
    assert len(bars) == len(inside)
    slot = (look.width - look.side) / (5 * A_DAY)
    for bar in bars:
        assert abs(bar.x - look.side - bar.item.starts * slot) < 0.1
        assert abs(bar.width - max(4, (bar.item.ends - bar.item.starts) * slot)) < 0.11


def test_a_later_week_shows_its_own_part() -> None:
    item = GanttItem("room", 4 * A_DAY, 6 * A_DAY, "work", "Long work: Ida")
    chart = lay_out([item], NAMES, GanttAxis(WEEK, 5, A_DAY), GanttLayout(328))
    (bar,) = chart.rows[0].bars
    assert (bar.x, bar.item.starts, bar.item.ends) == (0.0, 5 * A_DAY, 6 * A_DAY)
    assert round(bar.width, 1) == 65.6


def test_days_say_as_much_as_there_is_room_for() -> None:
    many = [WEEK[0] + timedelta(days=n) for n in range(40) if (WEEK[0] + timedelta(days=n)).weekday() < 5]

    def said(days: list[date], look: GanttLayout) -> list[str]:
        return [day.words for day in lay_out([], {}, GanttAxis(days, 0, A_DAY), look).days]

    assert said(WEEK, GanttLayout(912, side=112))[0] == "Mon 7 Dec"
    assert said(WEEK, GanttLayout(328))[0] == "Mon 7"
    assert said(many, GanttLayout(328)).count("") == len(many) - 6
    assert said(many, GanttLayout(328))[5] == "14 Dec"
