"""The calls of a job: whom to call, by when, when they come, and the hold point that each releases."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from build_tools.book.model.step import Step
from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.names import place, task_name
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.renderer import Renderer
from build_tools.plan.calls import Release, ScheduledCall, calls, crew_inspections
from build_tools.plan.plan import Plan
from build_tools.plan.planned_job import PlannedJob

ICS = "calls.ics"


def calls_page(renderer: Renderer, id: str, planned: PlannedJob) -> Page:
    """Every call by the day on which it is due, then what the crew looks at itself."""
    url = f"jobs/{id}/calls.html"
    helpers, plan, say = renderer.helpers(url), planned.plan, renderer.words
    made = calls(plan)
    days = [
        {"day": day, "calls": [_shown(renderer, helpers, plan, call) for call in those]}
        for day, those in groupby(made, key=lambda call: call.at.date())
    ]
    own = [
        {
            "look": look,
            "place": place(helpers, plan.job, look.release.task),
            "procedure": plan.job.tasks[look.release.task].procedure,
            "step": _step(plan, look.release),
            "waits": what_waits(renderer, helpers, plan, look.release),
        }
        for look in crew_inspections(plan)
    ]
    content = renderer.render(
        "jobs/calls.html",
        helpers,
        plan=plan,
        job=plan.job,
        days=days,
        crew_inspections=own,
        late=sum(call.late for call in made),
        ics=ICS,
    )
    headings = (
        Heading(say["calls_to_make"], "calls"),
        Heading(say["calls_phone"], "phone"),
        Heading(say["calls_own"], "own"),
    )
    title = say["calls_title"]
    found = (SearchEntry(url, f"{title}: {helpers.title('job', id)}", say["calls_lead"]),)
    return Page(url, title, content, say["calls_lead"], headings, found)


def named(renderer: Renderer, helpers: Helpers, call: ScheduledCall) -> str:
    """Who or what is called for."""
    match call.kind:
        case "inspection":
            return helpers.title("inspection", call.thing)
        case "rental":
            return helpers.title("tool", call.thing)
        case "friend":
            return helpers.title("person", call.thing)
        case _:
            return call.thing[:1].upper() + call.thing[1:]


def what_waits(renderer: Renderer, helpers: Helpers, plan: Plan, release: Release) -> str:
    """What waits for a hold point: the steps that follow, and the tasks that come next."""
    say, found = renderer.words, []
    if release.steps:
        first, last = release.steps[0], release.steps[-1]
        words = "step_n" if first == last else "steps_n"
        found.append(say[words].format(n=first, to=last))
    found += [task_name(helpers, plan.job, task) for task in release.tasks]
    return "; ".join(found) or say["calls_end"]


def _shown(renderer: Renderer, helpers: Helpers, plan: Plan, call: ScheduledCall) -> dict[str, Any]:
    release = call.release
    return {
        "call": call,
        "name": named(renderer, helpers, call),
        "kind": renderer.words[f"calls_{call.kind}"],
        "tasks": [
            {"procedure": plan.job.tasks[task].procedure, "name": task_name(helpers, plan.job, task)}
            for task in call.tasks
        ],
        "step": _step(plan, release) if release else None,
        "waits": what_waits(renderer, helpers, plan, release) if release else "",
    }


def _step(plan: Plan, release: Release) -> Step:
    return plan.context.book.procedures[plan.job.tasks[release.task].procedure].item.steps[release.number - 1]
