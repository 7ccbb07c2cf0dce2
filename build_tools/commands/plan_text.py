"""A plan as text for the terminal, in the words of its page."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Sequence

from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.names import task_and_trip, task_name
from build_tools.pages.jobs.plan_words import Words, counted, in_hand, lines_beside, sureness, why
from build_tools.pages.jobs.times import at, clock, day
from build_tools.pages.words import words
from build_tools.plan.compare import figures
from build_tools.plan.daily_schedule import ScheduleDay, daily_schedule
from build_tools.plan.plan import Plan
from build_tools.plan.reasons import reasons
from build_tools.plan.what_if import Acceleration

WIDTH = 110


def plan_text(plan: Plan, variant: str | None, accelerations: Sequence[Acceleration]) -> str:
    """The end and the spare days, the days, the chain that sets the end, time in hand, how sure it is."""
    helpers, say = Helpers(plan.context, "", {}), words(plan.context.book.language)
    critical_path = reasons(plan)
    on_critical_path = {link.task for link in critical_path}
    title = helpers.say(plan.job.title)
    if variant is not None:
        title += f": {helpers.say(plan.job.variants[variant].title)}"
    lines = [title, *_table(_facts(plan, say))]
    for each in daily_schedule(plan):
        lines += ["", day(each.day), *_day(helpers, plan, each, say)]
    lines += ["", f"{say['plan_critical_path']}:"]
    for link in critical_path:
        name = task_and_trip(helpers, plan, link.task, link.trip, say)
        if link.visit:
            name = helpers.title("inspection", link.visit)
        lines += [f"    {at(link.starts)}  {name}", *_wrapped(why(helpers, plan, link, say), 8)]
    lines += ["", f"{say['plan_float']}:"]
    lines += _table(
        (task_name(helpers, plan.job, id), in_hand(plan, id, id in on_critical_path, say)) for id in plan.job.tasks
    )
    lines += ["", f"{say['plan_sure']}:"]
    for name, text in sureness(plan, say):
        lines += _wrapped(f"{name}: {text}", 4)
    if accelerations:
        lines += ["", f"{say['job_sooner']}:", *_table(_tried(plan, accelerations, say))]
    if plan.job.variants and variant is None:
        lines += ["", f"{say['what_if_title']} (--variant NAME):"]
        lines += _table((id, helpers.say(other.title)) for id, other in plan.job.variants.items())
    return "\n".join(lines)


def _facts(plan: Plan, say: Words) -> Iterator[tuple[str, str]]:
    found = figures(plan)
    proved = say["job_proved"] if plan.solution.end.proved else say["job_unproved"]
    yield say["job_ends"], f"{at(plan.end)} ({proved})"
    yield say["job_deadline"], f"{day(plan.job.deadline)}: {_spare(plan.days_to_spare, say)}"
    yield say["plan_from"], day(plan.worktime.days[0])
    yield say["plan_labour"], say["time_hours"].format(n=f"{found.labour_hours:g}")
    yield say["plan_closed_days"], str(found.closed_days)


def _spare(days: int, say: Words) -> str:
    if days >= 0:
        return counted(days, "one_day_spare", "many_days_spare", say)
    return counted(-days, "one_day_short", "many_days_short", say)


def _day(helpers: Helpers, plan: Plan, each: ScheduleDay, say: Words) -> Iterator[str]:
    rows = []
    for hand in plan.prepared.hands:
        for part in each.of(hand.person):
            others = [helpers.title("person", other) for other in part.people if other != hand.person]
            what = task_and_trip(helpers, plan, part.task, part.trip, say)
            if others:
                what += ", " + say["plan_with"].format(people=", ".join(others))
            times = f"{clock(part.starts)} {say['to']} {clock(part.ends)}"
            rows.append((helpers.title("person", hand.person), times, what))
    yield from _table(rows) if rows else [f"    {say['plan_nobody']}"]
    for visit in each.visits:
        inspection = helpers.title("inspection", visit.visit)
        what = task_name(helpers, plan.job, visit.task)
        yield from _wrapped(f"{clock(visit.starts)} {inspection} {say['plan_comes']} {what}", 4)
    for _, what, text in lines_beside(helpers, plan, each, say):
        yield from _wrapped(f"{what} {text}", 4)


def _tried(plan: Plan, accelerations: Sequence[Acceleration], say: Words) -> Iterator[tuple[str, str]]:
    for one in accelerations:
        if one.plan:
            days = one.days_sooner(plan)
            gain = counted(days, "one_day_sooner", "many_days_sooner", say) if days > 0 else say["no_sooner"]
            yield one.what, f"{at(one.plan.end)}, {gain}"


def _table(rows: Iterable[Sequence[str]]) -> list[str]:
    made = [list(row) for row in rows]
    if not made:
        return []
    widths = [max(len(row[column]) for row in made) for column in range(len(made[0]))]
    return ["    " + "  ".join(map(str.ljust, row, widths)).rstrip() for row in made]


def _wrapped(text: str, indent: int) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=" " * indent, subsequent_indent=" " * (indent + 2))
