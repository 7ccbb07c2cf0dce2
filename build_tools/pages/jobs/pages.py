"""Every page of every job: the list of jobs, and for each an overview with the pages that hang on it."""

from __future__ import annotations

from collections.abc import Callable

from build_tools.pages.jobs.calls_page import calls_page
from build_tools.pages.jobs.cost_page import cost_page
from build_tools.pages.jobs.cuts_page import cuts_page
from build_tools.pages.jobs.day_sheets import sheets_of_people, sheets_page
from build_tools.pages.jobs.load_out_page import load_out_page
from build_tools.pages.jobs.order_list_page import order_list_page
from build_tools.pages.jobs.plan_page import plan_page
from build_tools.pages.jobs.what_if_page import what_if_page
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.renderer import Renderer
from build_tools.plan.planned_job import PlannedJob

JobPage = Callable[["Renderer", str, PlannedJob], Page]
OF_A_JOB: dict[str, JobPage] = {
    "plan": plan_page,
    "what-if": what_if_page,
    "order-list": order_list_page,
    "cuts": cuts_page,
    "load": load_out_page,
    "calls": calls_page,
    "sheets": sheets_page,
}
"""The pages that hang on the overview, by name, in the order in which they are listed."""
OWNERS: dict[str, JobPage] = {"cost": cost_page}
"""The same, for the owner's build alone."""
BELOW: list[Callable[[Renderer, str, PlannedJob], list[Page]]] = [sheets_of_people]
"""Pages that hang on one of those and are not listed on the overview."""


def job_pages(renderer: Renderer) -> list[Page]:
    """The pages of all jobs; none where the book has no job."""
    if not renderer.jobs:
        return []
    pages = [_list(renderer)]
    for id, planned in renderer.jobs.items():
        below = [make(renderer, id, planned) for make in pages_of_a_job(renderer).values()]
        pages += [_overview(renderer, id, planned, below), *below]
        pages += [page for make in BELOW for page in make(renderer, id, planned)]
    return pages


def pages_of_a_job(renderer: Renderer) -> dict[str, JobPage]:
    """The pages of a job in this build."""
    return OF_A_JOB | (OWNERS if renderer.for_owner else {})


def _list(renderer: Renderer) -> Page:
    helpers = renderer.helpers("jobs/index.html")
    jobs = [
        {
            "url": helpers.url("job", id),
            "title": helpers.title("job", id),
            "summary": helpers.words(planned.plan.job.summary),
        }
        for id, planned in renderer.jobs.items()
    ]
    content = renderer.render("jobs/list.html", helpers, jobs=jobs)
    say = renderer.words
    return Page("jobs/index.html", say["jobs"], content, say["jobs_lead"])


def _overview(renderer: Renderer, id: str, planned: PlannedJob, below: list[Page]) -> Page:
    from build_tools.plan.standards import changed

    url = f"jobs/{id}/index.html"
    helpers = renderer.helpers(url)
    plan = planned.plan
    links = [{"url": page.url.rpartition("/")[2], "title": page.title, "summary": page.description} for page in below]
    spaces = []
    for name, space in plan.job.spaces.items():
        tasks = [task for task, each in plan.job.tasks.items() if each.space == name]
        spaces.append({"id": name, "space": space, "tasks": tasks})
    content = renderer.render(
        "jobs/overview.html",
        helpers,
        id=id,
        plan=plan,
        job=plan.job,
        links=links,
        spaces=spaces,
        changed=changed(renderer.book, plan.job),
        accelerations=planned.accelerations,
    )
    say = renderer.words
    title = helpers.title("job", id)
    headings = [Heading(say["job_pages"], "pages"), Heading(say["job_spaces"], "spaces")]
    found = (SearchEntry(url, title, helpers.words(plan.job.summary), boost=3),)
    return Page(url, title, content, helpers.words(plan.job.summary), tuple(headings), found)
