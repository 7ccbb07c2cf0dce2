"""The pages of a job's plan: what stands on the drawing and in words, and the variants side by side."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest

from build_tools.book.checks.context import Context
from build_tools.pages.jobs.plan_page import plan_page
from build_tools.pages.jobs.what_if_page import what_if_page
from build_tools.pages.renderer import Renderer
from build_tools.plan.for_crew import without_private
from build_tools.plan.planned_job import PlannedJob
from build_tools.plan.planning import plan_with_variants
from tests.builds import context_of
from tests.jobs import two_rooms
from tests.site_pages import SitePage, attribute, text_of

pytestmark = pytest.mark.slow

TODAY = date(2026, 12, 1)


@pytest.fixture(scope="module")
def context(tmp_path_factory: pytest.TempPathFactory) -> Context:
    return context_of(two_rooms(tmp_path_factory.mktemp("jobs")))


@pytest.fixture(scope="module")
def planned(context: Context) -> PlannedJob:
    return plan_with_variants(context, context.book.jobs["two-rooms"], TODAY)


@pytest.fixture(scope="module")
def plan(context: Context, planned: PlannedJob) -> SitePage:
    made = plan_page(Renderer(context, {}, "Crew Methods"), "two-rooms", planned)
    return SitePage.of(made)


@pytest.fixture(scope="module")
def what_if(context: Context, planned: PlannedJob) -> SitePage:
    made = what_if_page(Renderer(context, {}, "Crew Methods"), "two-rooms", planned)
    return SitePage.of(made)


def texts(page: SitePage, tag: str, named: str = "") -> list[str]:
    return [text_of(one) for one in page.select(f"{tag}.{named}" if named else tag)]


# the plan


def test_the_top_says_the_end_and_the_days_to_spare(plan: SitePage) -> None:
    facts = [text_of(one) for one in plan.select("dd")]
    assert facts[0] == "Tue 8 Dec 13:45 no plan ends sooner: proved"
    assert facts[1] == "Fri 11 Dec 3 working days to spare"


def test_the_job_and_each_week_are_drawn_for_two_widths(plan: SitePage) -> None:
    charts = plan.select(".chart")
    assert [chart["class"][1] for chart in charts] == ["wide", "narrow"] * 2
    assert all(chart["role"] == "img" for chart in charts)
    assert attribute(charts[0], "aria-label").startswith("The whole job, drawn: a row for each place")
    assert attribute(charts[2], "aria-label").startswith("Week of Mon 7 Dec, drawn")


def test_bars_say_the_task_and_who(plan: SitePage) -> None:
    """On the bars of a week stands each task; what sets the end differs in its fill and in its words' weight."""
    week = plan.select(".chart.wide")[1]
    words = [text_of(one) for one in week.select("text")]
    assert "Set a toilet: Tobin, Wren" in words
    assert re.search(r"Install a lockset \(Front door\): (Tobin|Wren)", " ".join(words))
    assert "Electrical final" in words
    sets = [text_of(one) for one in week.select("text.sets")]
    assert "Set a toilet: Tobin, Wren" in sets
    assert not any("lockset" in text for text in sets)
    assert len(week.select("rect.sets")) == 4


def test_closed_places_are_hatched_in_each_of_their_rows(plan: SitePage) -> None:
    week = plan.select(".chart.wide")[1]
    shut = week.select("rect.shut")
    assert len(shut) == 3
    assert {one["fill"] for one in shut} == {"url(#shut)"}
    assert [one["id"] for one in plan.select("pattern")] == ["shut"]


def test_each_mark_is_explained_in_words(plan: SitePage) -> None:
    key = plan.select(".key")[0]
    assert [text_of(one).split(":")[0] for one in key.select("li")] == [
        "work, with the task and who",
        "filled, and bold words",
        "hatched from top to bottom",
        "dashed",
        "eight-sided sign",
        "double line",
    ]


def test_bars_are_drawn_to_scale(plan: SitePage) -> None:
    """A day of 8 hours: the hour of the recoat is an eighth of a day wide, wherever it is drawn."""
    for chart in plan.select(".chart"):
        bars = chart.select("rect.work.sets")
        days = [re.match(r"M([\d.]+)", attribute(one, "d")) for one in chart.select("path.day, path.week")]
        edges = sorted(float(found[1]) for found in days if found)
        assert abs(float(attribute(bars[0], "width")) - (edges[1] - edges[0]) / 8) < 0.2


def test_the_days_say_who_does_what_where_from_when_to_when(plan: SitePage) -> None:
    day = plan.select(".one-day")[0]
    assert [text_of(one) for one in day.select("h3")] == ["Mon 7 Dec"]
    assert [text_of(one) for one in day.select("h4")] == ["Tobin Reyes", "Wren Okafor"]
    assert [text_of(one) for one in day.select("li")] == [
        "7:30 to 8:30 Screen and recoat a floor Room, with Wren Okafor",
        "7:30 to 8:30 Screen and recoat a floor Room, with Tobin Reyes",
        "Closed: Room, Bath, Flat until Tue 8 Dec 8:30, after Screen and recoat a floor (Room)",
    ]
    beside = [text_of(one) for one in plan.select(".one-day")[1].select("li")]
    assert "11:00 Electrical final comes to look: Place smoke and carbon monoxide alarms, Room" in beside


def test_the_critical_path_gives_the_reason_of_each_link(plan: SitePage) -> None:
    chain = plan.select(".chain")[0]
    reasons = [text_of(one) for one in chain.select(".why")]
    assert reasons[:2] == [
        "Starts with the job.",
        "Room is closed until Tue 8 Dec 8:30, after Screen and recoat a floor (Room).",
    ]
    assert reasons[2].endswith(" is busy until then: Place smoke and carbon monoxide alarms (Room).")
    assert reasons[3] == "Bath is taken until then: Set the supply stops (Bath)."


def test_each_task_says_its_time_in_hand(plan: SitePage) -> None:
    cells = [text_of(one) for one in plan.select("td") if one["data-label"] == "In hand"]
    assert sorted(cells) == ["30 min", *["none: it sets the end date"] * 4]


def test_the_three_aims_say_how_sure_they_are(plan: SitePage) -> None:
    sure = [text_of(one) for one in plan.select(".sure")[0].select("li")]
    assert sure[0].startswith("Soonest end: Tue 8 Dec 13:45. Proved: no plan that keeps the rules ends sooner.")
    assert sure[1].startswith("Then the fewest closed hours, all places added up: 24 h. Proved:")
    assert sure[2].startswith("Then the fewest changes of place: 2. Proved:")


# what if


def test_variants_stand_beside_the_plan(what_if: SitePage) -> None:
    rows = [[text_of(one) for one in row.select("th, td")] for row in what_if.select("tr")]
    heads = ["Variant", "Ends", "Against the deadline", "Days with a place closed", "Closed hours, all places"]
    assert rows[0] == [*heads, "Labour", "Cost"]
    named = {row[0]: row[1:] for row in rows[1:]}
    assert list(named) == ["As planned", "Coat the floor last", "Ida in place of Wren, and Saturday"]
    assert named["As planned"][:5] == ["Tue 8 Dec 13:45", "3 working days to spare", "2", "24 h", "12 h"]
    assert named["Coat the floor last"][0] == "Tue 8 Dec 10:00"
    assert all(cells[-1].endswith(" dollars") for cells in named.values())


def test_each_variant_has_its_reason_its_changes_and_what_comes_of_it(what_if: SitePage) -> None:
    last, other = what_if.select(".entry")
    assert "The rooms are in use until then." in text_of(last)
    assert [text_of(one) for one in last.select("li")] == [
        "Place smoke and carbon monoxide alarms (Room): comes after nothing beyond what the book asks",
        "Screen and recoat a floor (Room): comes after Set a toilet (Bath), Set the supply stops (Bath), "
        "Install a lockset (Front door, Room), Place smoke and carbon monoxide alarms (Room); "
        "starts no sooner than Tue 8 Dec",
        "It ends on the same day.",
        "Proved: it cannot end sooner that way.",
    ]
    assert [text_of(one) for one in other.select("li")][:4] == [
        "Place smoke and carbon monoxide alarms (Room): is done by 1 person",
        "Ida Marsh works on it too, Monday, Tuesday, Wednesday, Thursday, Friday",
        "without Wren Okafor",
        "work on Saturday too",
    ]


def test_a_job_in_time_tries_nothing(what_if: SitePage) -> None:
    assert "The job is in time, so nothing was tried to bring it in." in what_if.texts()


def test_a_late_job_shows_what_was_tried(tmp_path: Path) -> None:
    context = context_of(two_rooms(tmp_path, deadline="2026-12-07"))
    made = what_if_page(
        Renderer(context, {}, "Crew Methods"),
        "two-rooms",
        plan_with_variants(context, context.book.jobs["two-rooms"], TODAY),
    )
    page = SitePage.of(made)
    tried = [text_of(one) for one in page.select(".pair")]
    assert len(tried) == 3
    assert any(text.startswith("One helper more") for text in tried)
    assert all("The job would end on" in text for text in tried)


def test_the_crew_sees_no_cost(context: Context) -> None:
    book = without_private(context.book)
    crew = Context.of(book, context.memo)
    renderer = Renderer(crew, {}, "Crew Methods", for_owner=False)
    made = what_if_page(renderer, "two-rooms", plan_with_variants(crew, book.jobs["two-rooms"], TODAY))
    assert "Cost" not in made.content
    assert "dollars" not in made.content


def test_no_id_stands_twice(plan: SitePage, what_if: SitePage) -> None:
    for page in (plan, what_if):
        assert len(page.ids()) == len(set(page.ids()))
