"""The sheets of a job: one for each person and day, to be printed and taken along.

The book is the book of this job (``plan.context``): a standard that the job sets differently is different here too.
"""

from __future__ import annotations

from typing import Any

from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.day_sheet_steps import general_messages, line_count, materials, sheet_steps
from build_tools.pages.jobs.names import place, trip_name
from build_tools.pages.jobs.times import day as written
from build_tools.pages.page import Heading, Page, SearchEntry, foot_style
from build_tools.pages.qr import qr_svg
from build_tools.pages.renderer import Renderer
from build_tools.plan.person_days import PersonDay, person_days
from build_tools.plan.plan import Plan
from build_tools.plan.planned_job import PlannedJob

FULL = 225
"""Lines beyond which a day is printed smaller and without what a hazard does, so that it keeps to two sheets."""


def sheets_page(renderer: Renderer, id: str, planned: PlannedJob) -> Page:
    """Who has which sheets."""
    url = f"jobs/{id}/sheets.html"
    helpers, say = _helpers(renderer, planned.plan, url), renderer.words
    people: list[dict[str, Any]] = [
        {"id": hand.person, "days": days}
        for hand in planned.plan.job.people
        if (days := person_days(planned.plan, hand.person))
    ]
    content = renderer.render(
        "jobs/sheets.html", helpers, job=planned.plan.job, people=people, codes=bool(renderer.site_url)
    )
    headings = tuple(Heading(helpers.title("person", each["id"]), each["id"]) for each in people)
    found = (SearchEntry(url, f"{say['sheets_title']}: {helpers.title('job', id)}", say["sheets_lead"]),)
    return Page(url, say["sheets_title"], content, say["sheets_lead"], headings, found)


def sheets_of_people(renderer: Renderer, id: str, planned: PlannedJob) -> list[Page]:
    """A page for each person with a sheet for each of his days."""
    return [
        _of_person(renderer, id, planned.plan, hand.person, days)
        for hand in planned.plan.job.people
        if (days := person_days(planned.plan, hand.person))
    ]


def _of_person(renderer: Renderer, id: str, plan: Plan, person: str, days: list[PersonDay]) -> Page:
    url = f"jobs/{id}/sheets-{person}.html"
    helpers, say = _helpers(renderer, plan, url), renderer.words
    title = say["sheets_of"].format(name=helpers.title("person", person))
    sheets = [_sheet(renderer, helpers, plan, day) for day in days]
    content = renderer.render("jobs/sheets_of.html", helpers, id=id, job=plan.job, title_text=title, sheets=sheets)
    headings = tuple(Heading(written(day.day), f"d-{day.day.isoformat()}") for day in days)
    foot = foot_style(f"{title}, {helpers.title('job', id)}")
    return Page(url, title, content, say["sheets_lead"], headings, style=foot)


def _helpers(renderer: Renderer, plan: Plan, url: str) -> Helpers:
    return Helpers(plan.context, "../" * url.count("/"), renderer.pictures)


def _sheet(renderer: Renderer, helpers: Helpers, plan: Plan, day: PersonDay) -> dict[str, Any]:
    """One day: its tasks with their times, and each method once for all the tasks that follow it."""
    groups: dict[str, list[str]] = {}
    for part in day.parts:
        tasks = groups.setdefault(plan.job.tasks[part.task].procedure, [])
        if part.task not in tasks:
            tasks.append(part.task)
    book = plan.context.book
    wear = dict.fromkeys(
        line.tool
        for procedure in groups
        for line in book.procedures[procedure].item.tools
        if book.tools[line.tool].item.protects
    )
    begun = {part.task for part in day.parts if part.before}
    parts = [
        {
            "part": part,
            "place": place(helpers, plan.job, part.task),
            "trip": trip_name(helpers, plan, part.task, part.trip, renderer.words),
            "procedure": plan.job.tasks[part.task].procedure,
            "with": [helpers.title("person", other) for other in part.people if other != day.person],
            "note": plan.job.tasks[part.task].note,
        }
        for part in day.parts
    ]
    comes = [{"visit": one, "place": place(helpers, plan.job, one.task)} for one in day.comes]
    methods = [_method(renderer, helpers, plan, procedure, tasks, begun) for procedure, tasks in groups.items()]
    return {
        "day": day.day,
        "person": day.person,
        "parts": parts,
        "comes": comes,
        "wear": list(wear),
        "methods": methods,
        "full": sum(method["lines"] for method in methods) > FULL,
    }


def _method(
    renderer: Renderer, helpers: Helpers, plan: Plan, procedure: str, tasks: list[str], begun: set[str]
) -> dict[str, Any]:
    item = plan.context.book.procedures[procedure].item
    title = helpers.title("procedure", procedure)
    made = sheet_steps(helpers, plan, item, tasks)
    full = renderer.site_url + plan.context.index.targets["procedure", procedure].url
    return {
        "procedure": procedure,
        "places": [place(helpers, plan.job, task) for task in tasks],
        "first": general_messages(item),
        "steps": made,
        "lines": line_count(made, tasks),
        "materials": materials(plan, [task for task in tasks if task not in begun]),
        "code": qr_svg(full, renderer.words["sheet_code"].format(title=title), "m") if renderer.site_url else "",
    }
