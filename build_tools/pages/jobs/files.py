"""The files of every job that are no pages: lists for a spreadsheet, a calendar for a phone."""

from __future__ import annotations

from collections.abc import Callable

from build_tools.pages.jobs.calendar import calendar
from build_tools.pages.jobs.order_list_files import order_list_csv, order_list_xlsx
from build_tools.pages.jobs.plan_file import plan_json
from build_tools.pages.renderer import Renderer
from build_tools.plan.planned_job import PlannedJob

JobFile = Callable[["Renderer", str, PlannedJob], str | bytes]
OF_A_JOB: dict[str, JobFile] = {
    "plan.json": plan_json,
    "calls.ics": calendar,
    "order-list.csv": order_list_csv,
    "order-list.xlsx": order_list_xlsx,
}
"""File name to what makes it."""


def job_files(renderer: Renderer) -> dict[str, str | bytes]:
    """Address from the top of the site to content."""
    return {
        f"jobs/{id}/{name}": make(renderer, id, planned)
        for id, planned in renderer.jobs.items()
        for name, make in OF_A_JOB.items()
    }
