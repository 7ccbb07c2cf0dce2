"""The plan of a job as a page: drawn to scale, day by day, what sets the end, time in hand, how sure it is."""

from __future__ import annotations

from typing import Any

from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.names import place, trip_name
from build_tools.pages.jobs.plan_chart import charts
from build_tools.pages.jobs.plan_words import in_hand, lines_beside, sureness, why
from build_tools.pages.jobs.times import at
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.renderer import Renderer
from build_tools.plan.compare import figures
from build_tools.plan.daily_schedule import ScheduleDay, daily_schedule
from build_tools.plan.plan import Plan
from build_tools.plan.planned_job import PlannedJob
from build_tools.plan.reasons import CriticalLink, reasons


def plan_page(renderer: Renderer, id: str, planned: PlannedJob) -> Page:
    """The page ``plan.html`` of a job."""
    url = f"jobs/{id}/plan.html"
    helpers, plan, say = renderer.helpers(url), planned.plan, renderer.words
    chain = reasons(plan)
    on_critical_path = {link.task for link in chain}
    content = renderer.render(
        "jobs/plan.html",
        helpers,
        plan=plan,
        job=plan.job,
        at=at,
        figures=figures(plan),
        days=[_day(renderer, helpers, plan, each) for each in daily_schedule(plan)],
        chain=[
            {
                "link": link,
                "name": _name(helpers, plan, link, say),
                "place": place(helpers, plan.job, link.task),
                "why": why(helpers, plan, link, say),
            }
            for link in chain
        ],
        tasks=[_in_hand(renderer, helpers, plan, task, task in on_critical_path) for task in _by_start(plan)],
        sure=sureness(plan, say),
        **charts(helpers, plan, say),
    )
    headings = [(say["plan_drawn"], "drawn"), (say["plan_days"], "days"), (say["plan_critical_path"], "chain")]
    headings += [(say["plan_float"], "slack"), (say["plan_sure"], "sure")]
    title = say["plan_title"]
    found = (SearchEntry(url, f"{title}: {helpers.title('job', id)}", say["plan_lead"]),)
    return Page(url, title, content, say["plan_lead"], tuple(Heading(*each) for each in headings), found)


def _day(renderer: Renderer, helpers: Helpers, plan: Plan, day: ScheduleDay) -> dict[str, Any]:
    """A day as the template shows it: a block for each person, then visits, closed places and waits."""
    people = []
    for hand in plan.prepared.hands:
        parts = [
            {
                "part": part,
                "procedure": plan.job.tasks[part.task].procedure,
                "place": place(helpers, plan.job, part.task),
                "trip": trip_name(helpers, plan, part.task, part.trip, renderer.words),
                "with": [helpers.title("person", other) for other in part.people if other != hand.person],
            }
            for part in day.of(hand.person)
        ]
        if parts:
            people.append({"id": hand.person, "parts": parts})
    visits = [{"visit": one, "place": place(helpers, plan.job, one.task)} for one in day.visits]
    return {
        "day": day.day,
        "people": people,
        "visits": visits,
        "beside": lines_beside(helpers, plan, day, renderer.words),
    }


def _in_hand(renderer: Renderer, helpers: Helpers, plan: Plan, task: str, on_critical_path: bool) -> dict[str, Any]:
    planned = task in plan.prepared.activities
    return {
        "procedure": plan.job.tasks[task].procedure,
        "place": place(helpers, plan.job, task),
        "starts": plan.starts(task) if planned else None,
        "ends": plan.ends(task) if planned else None,
        "in_hand": in_hand(plan, task, on_critical_path, renderer.words),
        "sets_end": on_critical_path,
    }


def _by_start(plan: Plan) -> list[str]:
    """The tasks in the order in which they start, those that are done first."""
    planned = plan.prepared.activities
    return sorted(plan.job.tasks, key=lambda task: (task in planned, plan.starts(task) if task in planned else None))


def _name(helpers: Helpers, plan: Plan, link: CriticalLink, say: dict[str, str]) -> str:
    if link.visit:
        return helpers.title("inspection", link.visit)
    title = helpers.title("procedure", plan.job.tasks[link.task].procedure)
    trip = trip_name(helpers, plan, link.task, link.trip, say)
    return say["task_trip"].format(task=title, trip=trip) if trip else title
