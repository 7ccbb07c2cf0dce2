"""A plan in sentences: spans of working time, why a link of the chain starts when it does, how sure the plan is."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.names import task_and_trip, task_name
from build_tools.pages.jobs.times import at, day
from build_tools.plan.daily_schedule import ScheduleDay
from build_tools.plan.plan import Plan
from build_tools.plan.problem import Objective
from build_tools.plan.reasons import CriticalLink
from build_tools.plan.worktime import SLOTS_PER_HOUR

Words = dict[str, str]


def span(slots: int, slots_per_day: int, say: Words) -> str:
    """Working time as people say it; a day is a working day.

    >>> from build_tools.pages.words import words
    >>> [span(slots, 32, words()) for slots in (1, 6, 32, 75)]
    ['15 min', '1 h 30 min', '1 day', '2 days 2 h 45 min']
    """
    days, rest = divmod(slots, slots_per_day)
    hours, quarters = divmod(rest, SLOTS_PER_HOUR)
    parts = [counted(days, "one_day", "many_days", say)] if days else []
    parts += [say["time_hours"].format(n=hours)] if hours else []
    parts += [say["time_minutes"].format(n=quarters * 15)] if quarters or not slots else []
    return " ".join(parts)


def counted(n: int, one: str, many: str, say: Words) -> str:
    """A count with its noun, by the words for one and for many."""
    return say[one] if n == 1 else say[many].format(n=n)


def place_name(helpers: Helpers, plan: Plan, place: str) -> str:
    """A space or a dwelling by its title; a space with its dwelling where the job has several."""
    job = plan.job
    if place not in job.spaces:
        return helpers.say(job.dwellings[place].title)
    space = job.spaces[place]
    title = helpers.say(space.title)
    if space.dwelling and len(job.dwellings) > 1:
        title += f" ({helpers.say(job.dwellings[space.dwelling].title)})"
    return title


def first_names(helpers: Helpers, plan: Plan) -> dict[str, str]:
    """What people are called on the bars: the first name, or the whole one where two share it."""
    full = {hand.person: helpers.title("person", hand.person) for hand in plan.prepared.hands}
    short = [name.split()[0] for name in full.values()]
    return {id: name.split()[0] if short.count(name.split()[0]) == 1 else name for id, name in full.items()}


def why(helpers: Helpers, plan: Plan, link: CriticalLink, say: Words) -> str:
    """The reason of a link, in one or two sentences."""
    what = link.what
    if link.kind == "person":
        what = helpers.title("person", what)
    elif link.kind in ("place", "closed"):
        what = place_name(helpers, plan, what)
    elif link.kind in ("visit", "call"):
        what = helpers.title("inspection", what)
    other = task_and_trip(helpers, plan, link.predecessor, link.predecessor_trip, say) if link.predecessor else ""
    until = at(link.until) if link.until else ""
    sentences = [say["why_" + link.kind.replace(" ", "_")].format(other=other, what=what, until=until)]
    if link.spare:
        sentences.append(say["why_spare"].format(time=span(link.spare, plan.worktime.slots_per_day, say)))
    elif (
        link.until
        and link.until < link.starts
        and plan.worktime.slot_at(link.until) < plan.worktime.slot_at(link.starts)
    ):
        sentences.append(say["why_office"] if link.visit else say["why_people_back"].format(time=at(link.starts)))
    return " ".join(sentences)


def lines_beside(helpers: Helpers, plan: Plan, day: ScheduleDay, say: Words) -> list[tuple[str, str, str]]:
    """What is closed and what waits on a day: the kind for its mark, what in few words, and the sentence."""
    shut: dict[tuple[str, datetime], list[str]] = {}
    for one in day.closed:
        shut.setdefault((one.task, one.ends), []).append(place_name(helpers, plan, one.place))
    lines = []
    for (task, ends), places in shut.items():
        text = say["plan_shut_until"].format(task=task_name(helpers, plan.job, task), until=at(ends))
        lines.append(("closed", f"{say['plan_shut']} {', '.join(places)}", text))
    for lag in day.lags:
        if lag.visit:
            inspection = helpers.title("inspection", lag.visit)
            text = say["plan_called_until"].format(inspection=inspection, until=at(lag.ends))
            lines.append(("wait", say["plan_called"], text))
        else:
            later = ", ".join(task_and_trip(helpers, plan, task, trip, say) for task, trip in lag.later)
            task = task_and_trip(helpers, plan, lag.task, lag.trip, say)
            text = say["plan_sets_until"].format(task=task, until=at(lag.ends), later=later)
            lines.append(("wait", say["plan_sets"], text))
    return lines


def in_hand(plan: Plan, task: str, on_critical_path: bool, say: Words) -> str:
    """How much later a task may start."""
    done = plan.job.tasks[task].done
    if done:
        return say["float_done"].format(day=day(done))
    slots = plan.total_float_of(task)
    if slots:
        return span(slots, plan.worktime.slots_per_day, say)
    return say["float_sets"] if on_critical_path else say["float_none"]


def sureness(plan: Plan, say: Words) -> list[tuple[str, str]]:
    """What is known of each of the three aims: its name, and a sentence or two."""
    solution = plan.solution
    hours = [say["time_hours"].format(n=f"{solution.closed.value / SLOTS_PER_HOUR:g}"), str(solution.moves.value)]
    values = [at(plan.end), *hours]
    made = []
    for name, objective, value in zip(
        ("end", "closed", "moves"), (solution.end, solution.closed, solution.moves), values, strict=True
    ):
        made.append((say[f"sure_{name}"], " ".join([f"{value}.", *_known(plan, name, objective, say)])))
    if not any(occupancy.closure_lag for occupancy in plan.prepared.problem.occupancies):
        made[1] = (made[1][0], say["sure_none"])
    return made


def _known(plan: Plan, name: str, objective: Objective, say: Words) -> Sequence[str]:
    if objective.proved:
        return [say[f"sure_{name}_proved"]]
    if not objective.sought:
        return [say["sure_counted"]]
    gap = objective.value - objective.bound
    if name == "moves":
        least, between = str(objective.bound), str(gap)
    elif name == "closed":
        least, between = (say["time_hours"].format(n=f"{slots / SLOTS_PER_HOUR:g}") for slots in (objective.bound, gap))
    else:
        least, between = at(plan.worktime.ends(objective.bound)), span(gap, plan.worktime.slots_per_day, say)
    return [say["sure_not"].format(least=least, gap=between)]
