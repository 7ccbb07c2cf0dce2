"""The cut lists of a job: which piece comes out of which stick, for all tasks together."""

from __future__ import annotations

from collections import Counter
from typing import Any

from build_tools.pages.drawings import drawn
from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.amounts import sticks
from build_tools.pages.jobs.names import task_name
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.renderer import Renderer
from build_tools.plan.cuts import Cuts
from build_tools.plan.order_list import to_do
from build_tools.plan.order_quantities import Ordered, ordered
from build_tools.plan.plan import Plan
from build_tools.plan.planned_job import PlannedJob
from calculators.run import shown
from calculators.writing import feet_inches


def cuts_page(renderer: Renderer, id: str, planned: PlannedJob) -> Page:
    """A section for each material that is cut to length."""
    url = f"jobs/{id}/cuts.html"
    plan, say = planned.plan, renderer.words
    helpers = Helpers(plan.context, "../" * url.count("/"), renderer.pictures)
    every = list(ordered(plan, to_do(plan)))
    lists = [_list(helpers, plan, what, what.cuts) for what in every if what.cuts]
    run = [what.material for what in every if not what.cuts and plan.context.book.materials[what.material].item.stock]
    content = renderer.render("jobs/cuts.html", helpers, job=plan.job, lists=lists, by_length=run)
    headings = tuple(Heading(helpers.title("material", each["id"]), each["id"]) for each in lists)
    title = say["cuts_title"]
    found = (SearchEntry(url, f"{title}: {helpers.title('job', id)}", say["cuts_lead"]),)
    return Page(url, title, content, say["cuts_lead"], headings, found)


def _list(helpers: Helpers, plan: Plan, what: Ordered, cuts: Cuts) -> dict[str, Any]:
    texts = shown(cuts.called.calculator, cuts.answer)
    return {
        "id": what.material,
        "buy": sticks(cuts.sticks),
        "spare": cuts.spare,
        "tasks": [task_name(helpers, plan.job, need.task) for need in what.needs],
        "cuts": [
            {**text, "pieces": _pieces(row["parts"])}
            for text, row in zip(texts["cuts"], cuts.answer["cuts"], strict=True)
        ],
        "proved": cuts.answer["proved"],
        "proof": texts["proof"],
        "bought": texts["bought"],
        "waste": texts["waste"],
        "by_hand": cuts.answer["by_hand"] - cuts.answer["sticks"],
        "joined": [
            f"{feet_inches(piece.length)} {piece.name}, {task_name(helpers, plan.job, task)}"
            for task, piece in cuts.joined
        ],
        "drawing": drawn(cuts.called, f"cuts-{what.material}"),
    }


def _pieces(parts: list[dict[str, Any]]) -> list[str]:
    """The pieces of a stick, those that are alike together.

    >>> print(*_pieces([{"length": 60.0, "name": "rod"}, {"length": 60.0, "name": "rod"}]))
    2 x 5' 0" rod
    """
    alike = Counter((part["length"], part["name"]) for part in parts)
    return [f"{count} x {feet_inches(length)} {name}" for (length, name), count in alike.items()]
