"""The variants of a job side by side with its plan, each with its reason, and what would bring in a late end."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from build_tools.book.model.job import Variant
from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.gantt import GanttAxis, GanttChart, GanttItem, GanttLayout, lay_out
from build_tools.pages.jobs.names import task_name
from build_tools.pages.jobs.plan_words import Words, counted
from build_tools.pages.jobs.times import at, day
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.renderer import Renderer
from build_tools.plan.compare import figures, slots_with_closures
from build_tools.plan.plan import Plan
from build_tools.plan.planned_job import PlannedJob

AS_PLANNED = ""
"""The id of the plan itself among its variants."""
WIDE, NARROW = GanttLayout(912, side=190), GanttLayout(328)


def what_if_page(renderer: Renderer, id: str, planned: PlannedJob) -> Page:
    """The page ``what-if.html`` of a job."""
    url = f"jobs/{id}/what-if.html"
    helpers, plan, say = renderer.helpers(url), planned.plan, renderer.words
    plans = {AS_PLANNED: plan} | {other.id: other.plan for other in planned.variants if other.plan}
    titles = {AS_PLANNED: say["what_if_as_planned"]} | {other.id: other.title for other in planned.variants}
    rows = [
        {
            "title": titles[name],
            "id": name,
            "figures": figures(plans[name]) if name in plans else None,
            "cost": _cost(plans[name]) if name in plans and renderer.for_owner else "",
        }
        for name in titles
    ]
    each = [
        {
            "other": other,
            "changes": list(_changes(helpers, plan, plan.job.variants[other.id], say)),
            "comes": list(_comes(plan, other.plan, say)) if other.plan else [],
        }
        for other in planned.variants
    ]
    content = renderer.render(
        "jobs/what-if.html",
        helpers,
        plan=plan,
        job=plan.job,
        at=at,
        rows=rows,
        each=each,
        accelerations=planned.accelerations,
        with_cost=any(row["cost"] for row in rows),
        charts=[_drawn(plans, titles, look) for look in (WIDE, NARROW)] if planned.variants else [],
    )
    headings = [Heading(say["what_if_compared"], "compared")] if planned.variants else []
    headings.append(Heading(say["job_sooner"], "sooner"))
    title = say["what_if_title"]
    found = (SearchEntry(url, f"{title}: {helpers.title('job', id)}", say["what_if_lead"]),)
    return Page(url, title, content, say["what_if_lead"], tuple(headings), found)


def _cost(plan: Plan) -> str:
    """What a plan costs, for the owner; empty where nothing has a price."""
    from build_tools.plan.cost import cost_of
    from build_tools.plan.money import write_money

    cost = cost_of(plan)
    return write_money(cost.total, cost.currency) if cost.total else ""


def _changes(helpers: Helpers, plan: Plan, variant: Variant, say: Words) -> Iterator[str]:
    """What a variant changes, one line each."""
    for change in variant.tasks:
        what = []
        if change.after is not None:
            others = ", ".join(task_name(helpers, plan.job, other) for other in change.after)
            what.append(say["what_if_after"].format(others=others) if others else say["what_if_after_nothing"])
        if change.people is not None:
            what.append(say["what_if_people"].format(n=counted(change.people, "one_person", "many_persons", say)))
        if change.not_before is not None:
            what.append(say["what_if_not_before"].format(day=day(change.not_before)))
        yield f"{task_name(helpers, plan.job, change.task)}: {'; '.join(what)}"
    for hand in variant.more_people:
        days = ", ".join(say[f"day_{name}"] for name in hand.days or plan.job.days)
        key = "what_if_other_days" if hand.person in variant.without else "what_if_more"
        yield say[key].format(person=helpers.title("person", hand.person), days=days)
    back = {hand.person for hand in variant.more_people}
    for person in (person for person in variant.without if person not in back):
        yield say["what_if_without"].format(person=helpers.title("person", person))
    if variant.more_days:
        yield say["what_if_days"].format(days=", ".join(say[f"day_{name}"] for name in variant.more_days))


def _comes(plan: Plan, other: Plan, say: Words) -> Iterator[str]:
    """What comes of a variant beside the plan."""
    days = (other.end.date() - plan.end.date()).days
    time = counted(abs(days), "one_day", "many_days", say)
    yield (
        say["what_if_same_end"]
        if not days
        else say["what_if_sooner" if days < 0 else "what_if_later"].format(time=time)
    )
    ours, theirs = figures(plan), figures(other)
    closed = theirs.closed_days - ours.closed_days
    if closed:
        key = "what_if_more_closed" if closed > 0 else "what_if_fewer_closed"
        yield say[key].format(n=counted(abs(closed), "one_day", "many_days", say))
    yield say["what_if_proved"] if other.solution.end.proved else say["what_if_unproved"]
    if not plan.solution.end.proved:
        yield say["what_if_plan_unproved"]


def _drawn(plans: dict[str, Plan], titles: dict[str, str], look: GanttLayout) -> GanttChart:
    """Each plan as a bar on one axis of days, with what is closed on it."""
    first = next(iter(plans.values()))
    moments = [plan.end for plan in plans.values()] + [one.ends for plan in plans.values() for one in plan.closed]
    until = max(max(moments).date(), first.job.deadline)
    days = sorted({day for plan in plans.values() for day in plan.worktime.days if day <= until})
    slots_per_day = first.worktime.slots_per_day

    def slot(plan: Plan, number: int) -> int:
        """A slot of a plan on the axis of all."""
        index, inside = divmod(number, slots_per_day)
        return days.index(plan.worktime.days[index]) * slots_per_day + inside

    items = []
    for name, plan in plans.items():
        end = slot(plan, plan.solution.end.value - 1) + 1
        items.append(GanttItem(name, 0, end, "work", at(plan.end), sets_end=name == AS_PLANNED))
        for starts, ends in _runs(sorted(slots_with_closures(plan))):
            items.append(GanttItem(name, slot(plan, starts), slot(plan, ends - 1) + 1, "closed"))
    deadline = sum(day <= first.job.deadline for day in days) * slots_per_day
    return lay_out(items, {name: titles[name] for name in plans}, GanttAxis(days, 0, slots_per_day), look, deadline)


def _runs(slots: Sequence[int]) -> Iterator[tuple[int, int]]:
    """Slots that follow each other as spans.

    >>> list(_runs([3, 4, 5, 9]))
    [(3, 6), (9, 10)]
    """
    cuts = [0, *(n for n, (a, b) in enumerate(pairwise(slots), 1) if b != a + 1), len(slots)]
    for low, high in pairwise(cuts):
        if low < high:
            yield slots[low], slots[high - 1] + 1
