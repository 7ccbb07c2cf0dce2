"""The calls of a job as a calendar file (RFC 5545): an event for each call, with an alarm, and one for each visit.

Times float, without a zone: half past seven is half past seven on whatever phone. An event keeps its UID as long as the
job and the call are the same, whatever the dates are, so that a file taken in again moves what has moved.
"""

from __future__ import annotations

from datetime import UTC, datetime, time, timedelta
from typing import TYPE_CHECKING
from uuid import UUID, uuid5

from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.calls_page import ICS, named, what_waits
from build_tools.pages.jobs.names import task_name
from build_tools.pages.jobs.times import at
from build_tools.pages.renderer import Renderer
from build_tools.plan.calls import ScheduledCall, calls
from build_tools.plan.office_hours import A_CALL
from build_tools.plan.plan import Plan
from build_tools.plan.planned_job import PlannedJob

if TYPE_CHECKING:
    from icalendar import Event

OURS = UUID("5b0f0f6e-0d0a-4a37-9c53-8f7f2a1c6b1d")
"""The namespace of our UIDs."""
RINGS = timedelta(minutes=15)
"""So long before a call its alarm rings."""


def calendar(renderer: Renderer, id: str, planned: PlannedJob) -> bytes:
    """The calendar file of a job."""
    from icalendar import Calendar, vText

    plan = planned.plan
    helpers = renderer.helpers(f"jobs/{id}/{ICS}")
    made = Calendar()
    made.add("prodid", "-//Crew Methods//Calls of a job//EN")
    made.add("version", "2.0")
    # The library knows no type of NAME (RFC 7986), and would write a text as it is.
    made.add("name", vText(f"{helpers.title('job', id)}: {renderer.words['calls_title']}"))
    for call in calls(plan):
        for event in (_to_make(renderer, helpers, plan, id, call), _visit(renderer, helpers, plan, id, call)):
            made.add_component(event)
    return bytes(made.to_ical())


def _to_make(renderer: Renderer, helpers: Helpers, plan: Plan, id: str, call: ScheduledCall) -> Event:
    """The call itself, in the half hour before it must be over at the latest; it rings."""
    from icalendar import Alarm

    say = renderer.words
    what = say["call_event"].format(what=named(renderer, helpers, call))
    event = _event(plan, helpers, id, f"{call.key} call", what, call.at, call.at + A_CALL)
    lines = [say["calls_by"].format(time=at(call.by))]
    if call.kind == "inspection":
        lines.append(helpers.say(plan.context.book.inspections[call.thing].item.who))
    event.add("description", "\n".join([*lines, *_about(renderer, helpers, plan, call)]))
    event.add("transp", "TRANSPARENT")
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", what)
    alarm.add("trigger", -RINGS)
    event.add_component(alarm)
    return event


def _visit(renderer: Renderer, helpers: Helpers, plan: Plan, id: str, call: ScheduledCall) -> Event:
    """What comes of the call."""
    what = renderer.words[f"visit_{call.kind}"].format(what=named(renderer, helpers, call))
    event = _event(plan, helpers, id, f"{call.key} visit", what, call.comes, call.leaves)
    event.add("description", "\n".join(_about(renderer, helpers, plan, call)))
    event.add("transp", "OPAQUE" if call.kind == "inspection" else "TRANSPARENT")
    return event


def _event(plan: Plan, helpers: Helpers, id: str, key: str, summary: str, starts: datetime, ends: datetime) -> Event:
    from icalendar import Event

    event = Event()
    event.add("uid", str(uuid5(OURS, f"{id} {key}")))
    event.add("dtstamp", datetime.combine(plan.prepared.today, time(), UTC))
    event.add("sequence", (plan.prepared.today - plan.job.start).days)
    event.add("dtstart", starts)
    event.add("dtend", ends)
    event.add("summary", summary)
    event.add("location", helpers.title("job", id))
    return event


def _about(renderer: Renderer, helpers: Helpers, plan: Plan, call: ScheduledCall) -> list[str]:
    """What stands below a call and its visit: when they come, for what, and what waits."""
    say = renderer.words
    come = say["calls_there" if call.kind in ("delivery", "rental") else "calls_come"]
    lines = [f"{come} {at(call.comes)}"]
    if call.materials:
        lines.append(f"{say['materials']}: {', '.join(helpers.title('material', each) for each in call.materials)}")
    if call.release is None:
        lines.append(f"{say['calls_for']} {', '.join(task_name(helpers, plan.job, task) for task in call.tasks)}")
        return lines
    step = say["step_n"].format(n=call.release.number)
    lines.append(f"{say['calls_releases']} {task_name(helpers, plan.job, call.release.task)}, {step}")
    lines.append(f"{say['calls_waits']} {what_waits(renderer, helpers, plan, call.release)}")
    return lines
