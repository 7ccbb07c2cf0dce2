"""What a job costs, for the owner: by kind, by dwelling, by trade, line by line, and what the variants would cost."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.times import day
from build_tools.pages.page import Heading, Page
from build_tools.pages.renderer import Renderer
from build_tools.plan.cost import EARLIER, KINDS, Cost, CostLine, cost_of
from build_tools.plan.money import write_money
from build_tools.plan.planned_job import PlannedJob
from calculators.writing import decimal

TITLED = {"material": "material", "labour": "person", "rental": "tool"}
"""The scheme of what each kind of line names."""
CENT = 0.01


def cost_page(renderer: Renderer, id: str, planned: PlannedJob) -> Page:
    """The page of the cost. It is found by its link alone, and not in the search."""
    url = f"jobs/{id}/cost.html"
    helpers, say, job = renderer.helpers(url), renderer.words, planned.plan.job
    cost = cost_of(planned)
    dwellings = {name: helpers.say(each.title) for name, each in job.dwellings.items()} | {"": say["cost_outside"]}
    trades = {trade: helpers.title("trade", trade) for trade in set(cost.trades.values())}
    content = renderer.render(
        "jobs/cost.html",
        helpers,
        job=job,
        cost=cost,
        money=lambda number: write_money(number, cost.currency),
        figure=lambda number: write_money(number, ""),
        kinds=[(kind, say[f"cost_{kind}"]) for kind in KINDS],
        lines={kind: [_shown(renderer, helpers, line) for line in _dearest_first(cost.of(kind))] for kind in KINDS},
        unpriced=[_shown(renderer, helpers, line) for line in cost.unpriced],
        groups=[
            {"title": say["cost_by_dwelling"], "id": "dwellings", "rows": _rows(cost, cost.dwellings, dwellings)},
            {"title": say["cost_by_trade"], "id": "trades", "rows": _rows(cost, cost.trades, trades)},
        ],
        plans=_plans(renderer, planned, cost),
    )
    headings = [Heading(say["cost_by_dwelling"], "dwellings"), Heading(say["cost_by_trade"], "trades")]
    headings += [Heading(say["cost_variants"], "variants")] if planned.variants else []
    headings += [Heading(say[f"cost_{kind}"], kind) for kind in KINDS]
    return Page(url, say["cost_title"], content, say["cost_lead"], tuple(headings))


def _dearest_first(lines: list[CostLine]) -> list[CostLine]:
    return sorted((line for line in lines if line.amount is not None), key=lambda line: -(line.amount or 0.0))


def _shown(renderer: Renderer, helpers: Helpers, line: CostLine) -> dict[str, Any]:
    """A line with its name, where it is explained, its quantity and its price."""
    scheme = TITLED[line.kind]
    earlier = line.kind == "labour" and line.thing == EARLIER
    name = renderer.words["cost_earlier"] if earlier else helpers.title(scheme, line.thing)
    misfit = line.each is not None and line.amount is None
    return {
        "name": name,
        "url": "" if earlier else helpers.url(scheme, line.thing),
        "quantity": _amount(line.quantity, line.unit),
        "each": "" if line.each is None else _price(line),
        "amount": line.amount,
        "why": renderer.words["cost_misfit" if misfit else "cost_no_price"],
    }


def _price(line: CostLine) -> str:
    """The price, with what it is for where that is not one of what is counted."""
    each = line.each or 0.0
    by_one = line.amount is not None and abs(each * line.quantity - line.amount) < CENT
    return decimal(each, 2) if by_one else f"{decimal(each, 2)} for {line.per}"


def _amount(number: float, unit: str) -> str:
    return decimal(number, 2) if unit == "each" else f"{decimal(number, 2)} {unit}"


def _rows(cost: Cost, groups: Mapping[str, str], titles: Mapping[str, str]) -> list[dict[str, Any]]:
    """The sums of each group, the dearest first."""
    rows = [
        {"title": titles[group], "sums": sums, "total": sum(sums.values())}
        for group, sums in cost.summed(groups).items()
    ]
    return sorted(rows, key=lambda row: -row["total"])


def _plans(renderer: Renderer, planned: PlannedJob, cost: Cost) -> list[dict[str, Any]]:
    """The plan and its variants beside each other."""
    plans = [{"title": renderer.words["cost_as_planned"], "end": day(planned.plan.end), "cost": cost, "more": 0.0}]
    for variant in planned.variants:
        if variant.plan is not None:
            other = cost_of(variant.plan)
            more = other.total - cost.total
            plans.append({"title": variant.title, "end": day(variant.plan.end), "cost": other, "more": more})
    return plans
