"""The order list of a job as a page: by supplier and day, with the working behind each line folded under it."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.amounts import as_sold, of_unit
from build_tools.pages.jobs.names import task_name
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.renderer import Renderer
from build_tools.plan.needs import MaterialNeed
from build_tools.plan.order_list import OrderLine, SupplierOrder, order_list
from build_tools.plan.plan import Plan
from build_tools.plan.planned_job import PlannedJob

CSV, XLSX = "order-list.csv", "order-list.xlsx"


def order_list_page(renderer: Renderer, id: str, planned: PlannedJob) -> Page:
    """What to order first, then every supplier with his days."""
    url = f"jobs/{id}/order-list.html"
    plan, say = planned.plan, renderer.words
    helpers = Helpers(plan.context, "../" * url.count("/"), renderer.pictures)
    lots = order_list(plan, planned.today)
    suppliers = [
        {"name": name, "id": f"s-{number}", "lots": [_shown(helpers, plan, lot) for lot in those]}
        for number, (name, those) in enumerate(groupby(lots, key=lambda lot: lot.supplier), 1)
    ]
    content = renderer.render(
        "jobs/order-list.html",
        helpers,
        job=plan.job,
        first=sorted(lots, key=lambda lot: (lot.order_by, lot.needed, lot.supplier)),
        anchors={each["name"]: each["id"] for each in suppliers},
        suppliers=suppliers,
        late=sum(line.late for lot in lots for line in lot.lines),
        csv=CSV,
        xlsx=XLSX,
    )
    headings = [Heading(say["order_list_first"], "first"), *(Heading(each["name"], each["id"]) for each in suppliers)]
    title = say["order_list_title"]
    found = (SearchEntry(url, f"{title}: {helpers.title('job', id)}", say["order_list_lead"]),)
    return Page(url, title, content, say["order_list_lead"], tuple(headings), found)


def _shown(helpers: Helpers, plan: Plan, lot: SupplierOrder) -> dict[str, Any]:
    return {"lot": lot, "lines": [_line(helpers, plan, line) for line in lot.lines]}


def _line(helpers: Helpers, plan: Plan, line: OrderLine) -> dict[str, Any]:
    what = line.what
    return {
        "line": line,
        "buy": as_sold(what, what.quantity),
        "needed": of_unit(what.needed, what.unit) if what.needed != what.quantity and what.cuts is None else "",
        "needs": [_need(helpers, plan, what.unit, need) for need in what.needs],
    }


def _need(helpers: Helpers, plan: Plan, unit: str, need: MaterialNeed) -> dict[str, Any]:
    """How a task came to what it takes."""
    return {
        "need": need,
        "task": task_name(helpers, plan.job, need.task),
        "procedure": plan.job.tasks[need.task].procedure,
        "amount": of_unit(need.number, unit),
    }
