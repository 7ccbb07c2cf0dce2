"""The load-out of a job: a sheet for each working day with what goes into the truck, to be ticked."""

from __future__ import annotations

from typing import Any

from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.amounts import as_sold
from build_tools.pages.jobs.names import task_name
from build_tools.pages.jobs.times import day as written
from build_tools.pages.page import Heading, Page, SearchEntry, foot_style
from build_tools.pages.renderer import Renderer
from build_tools.plan.load_out import DayLoad, LoadMaterial, load_out
from build_tools.plan.plan import Plan
from build_tools.plan.planned_job import PlannedJob


def load_out_page(renderer: Renderer, id: str, planned: PlannedJob) -> Page:
    """Every day on which somebody works."""
    url = f"jobs/{id}/load.html"
    plan, say = planned.plan, renderer.words
    helpers = Helpers(plan.context, "../" * url.count("/"), renderer.pictures)
    loads = [_shown(helpers, plan, load) for load in load_out(plan)]
    content = renderer.render("jobs/load.html", helpers, id=id, job=plan.job, loads=loads, top=helpers.top)
    headings = tuple(Heading(written(each["day"]), f"d-{each['day'].isoformat()}") for each in loads)
    title = say["load_title"]
    found = (SearchEntry(url, f"{title}: {helpers.title('job', id)}", say["load_lead"]),)
    foot = foot_style(f"{title}, {helpers.title('job', id)}")
    return Page(url, title, content, say["load_lead"], headings, found, style=foot)


def _shown(helpers: Helpers, plan: Plan, load: DayLoad) -> dict[str, Any]:
    def by_name(scheme: str, id: str) -> str:
        return helpers.title(scheme, id).lower()

    tools = plan.context.book.tools
    materials: list[dict[str, Any]] = [
        {
            "out": out,
            "id": out.what.material,
            "line": _line(plan, out),
            "amount": as_sold(out.what, out.quantity),
        }
        for out in load.materials
    ]
    materials.sort(key=lambda each: by_name("material", each["id"]))
    ordered = sorted(load.tools, key=lambda tool: by_name("tool", tool.tool))
    return {
        "day": load.day,
        "tasks": [task_name(helpers, plan.job, task) for task in load.tasks],
        "rented": [tool for tool in ordered if tool.back],
        "wear": [tool for tool in ordered if not tool.back and tools[tool.tool].item.protects],
        "tools": [tool for tool in ordered if not tool.back and not tools[tool.tool].item.protects],
        "materials": [each for each in materials if not each["out"].delivered],
        "delivered": [each for each in materials if each["out"].delivered],
    }


def _line(plan: Plan, out: LoadMaterial) -> str:
    """The name of a material's line within its day, on which its tick hangs. What does not keep has a line a task."""
    id = out.what.material
    keeps = plan.context.book.materials[id].item.keeps
    return ":".join(["material", id, *(() if keeps else out.tasks)])
