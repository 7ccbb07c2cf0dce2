"""What a job says of itself: its dates and hours, and the names and measures that are known inside it alone."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Sequence
from datetime import date, timedelta
from graphlib import CycleError, TopologicalSorter

from build_tools.book.amounts import read_figure, read_with_unit
from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.model.job import Hand, Job, Opening, Space, Task
from build_tools.book.references import figure_of
from build_tools.book.yaml_reader import Location
from build_tools.plan.checks.money import of_money
from build_tools.plan.crew import eligible_crew, hands_of, teams
from build_tools.plan.measures import sizes
from build_tools.plan.precedence import unknown_tasks
from build_tools.plan.worktime import WEEK
from calculators.declaration import Calculator
from calculators.doors.lock_schedule import FUNCTIONS
from calculators.reading import Unreadable
from calculators.ways import way_at_end

YEARS = range(1970, 2200)
LONGEST = timedelta(days=3 * 365)
"""From the start of a job to its deadline. More is a slip of the pen."""
QUARTER = 0.25


def of_job_file(context: Context, entry: Entry[Job]) -> Iterator[Diagnostic]:
    """The mistakes that can be seen in the job file alone, with the book's names."""
    yield from _dates(entry)
    yield from _working_day(entry)
    yield from _spaces(entry, context.calculators.values())
    for name, opening in entry.item.openings.items():
        yield from _opening(entry, name, opening)
    yield from _people(entry)
    for id, task in entry.item.tasks.items():
        yield from _task(entry, id, task)
    yield from unknown_tasks(entry)
    yield from _lists(context, entry)
    yield from of_money(entry)
    yield from _away(context, entry)


def _dates(entry: Entry[Job]) -> Iterator[Diagnostic]:
    job = entry.item
    given = [("start", job.start), ("deadline", job.deadline)]
    odd = [name for name, day in given if day.year not in YEARS]
    for name in odd:
        yield entry.error((name,), f"{getattr(job, name)} cannot be meant: is the year right?")
    if odd:
        return
    if job.deadline < job.start:
        yield entry.error(("deadline",), f"the deadline {job.deadline} lies before the start {job.start}")
    elif job.deadline - job.start > LONGEST:
        yield entry.error(
            ("deadline",),
            f"the deadline {job.deadline} lies more than three years after the start {job.start}: is the year right?",
        )
    for id, task in job.tasks.items():
        if task.not_before and task.not_before > job.deadline + LONGEST:
            yield entry.error(
                ("tasks", id, "not_before"), f"{task.not_before} lies years after the deadline: is the year right?"
            )


def _working_day(entry: Entry[Job]) -> Iterator[Diagnostic]:
    """The hours of a day are whole quarters, and the day ends before midnight."""
    job = entry.item
    minutes = _minutes(job.begins)
    if minutes is None:
        yield entry.error(("begins",), f"'{job.begins}' is not a time of day", "write it like 7:30")
    hours, diagnostics = _figure(entry, ("hours",), job.hours, "time", "h")
    yield from diagnostics
    if hours is None:
        return
    if hours < 1 or hours > 24 or abs(hours / QUARTER - round(hours / QUARTER)) > 1e-9:
        yield entry.error(("hours",), f"'{job.hours}' is no working day: 1 to 24 hours are wanted, in whole quarters")
    elif minutes is not None and minutes + hours * 60 > 24 * 60:
        yield entry.error(("hours",), f"a day that begins at {job.begins} and has {job.hours} goes beyond midnight")


def _minutes(text: str) -> int | None:
    """Minutes from midnight, or None where the text is no time of day."""
    hour, colon, minute = text.partition(":")
    if not (colon and hour.isdecimal() and minute.isdecimal() and len(hour) <= 2 and len(minute) == 2):
        return None
    return int(hour) * 60 + int(minute) if int(hour) < 24 and int(minute) < 60 else None


def _spaces(entry: Entry[Job], calculators: Iterable[Calculator]) -> Iterator[Diagnostic]:
    job = entry.item
    ways = [way for calculator in calculators for item in calculator.inputs for way in item.ways]
    for name, space in job.spaces.items():
        at: Location = ("spaces", name)
        if name in job.dwellings:
            yield entry.error((*at, ""), f"'{name}' is a dwelling too", "give one of them another name")
        yield from _known(entry, (*at, "dwelling"), space.dwelling, job.dwellings, "dwelling")
        for index, other in enumerate(space.reached_through):
            yield from _known(entry, (*at, "reached_through", index), other, job.spaces, "space")
        yield from _measures(entry, at, space, ways)
    graph = {name: [way for way in space.reached_through if way in job.spaces] for name, space in job.spaces.items()}
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as cycle:
        around = list(reversed(cycle.args[1]))
        message = "these are reached through each other: " + " through ".join(f"'{name}'" for name in around)
        if len(around) == 2:
            message = f"'{around[0]}' is reached through itself"
        yield entry.error(("spaces", around[0], "reached_through"), message, "name the way in from outside")


def _measures(entry: Entry[Job], at: Location, space: Space, ways: Sequence[str]) -> Iterator[Diagnostic]:
    """The sizes of a space; a measure that goes two ways ends with the words of one of ``ways``."""
    good = True
    for side in ("length", "width"):
        text = getattr(space, side)
        if text is not None:
            value, diagnostics = _figure(entry, (*at, side), text, "length", "ft")
            yield from diagnostics
            good = good and value is not None
    try:
        if good:
            sizes(space)
    except Unreadable as trouble:
        yield entry.error((*at, "rooms") if space.rooms else at, str(trouble))
    for name, text in space.measures.items():
        try:
            read_figure(text.removesuffix(way_at_end(ways, text)))
        except Unreadable as trouble:
            yield entry.error((*at, "measures", name), str(trouble))


def _opening(entry: Entry[Job], name: str, opening: Opening) -> Iterator[Diagnostic]:
    at: Location = ("openings", name)
    yield from _known(entry, (*at, "space"), opening.space, entry.item.spaces, "space")
    if opening.lock is not None and opening.lock not in FUNCTIONS:
        hint = did_you_mean(opening.lock, FUNCTIONS) or "known here: " + ", ".join(FUNCTIONS)
        yield entry.error((*at, "lock"), f"there is no lock function '{opening.lock}'", hint)
    for side in ("width", "height"):
        text = getattr(opening, side)
        if text is not None:
            yield from _figure(entry, (*at, side), text, "length", "in")[1]


def _people(entry: Entry[Job]) -> Iterator[Diagnostic]:
    seen: set[str] = set()
    for index, hand in enumerate(entry.item.people):
        if hand.person in seen:
            yield entry.error(("people", index), f"'{hand.person}' is named twice", "keep one line")
        seen.add(hand.person)


def _task(entry: Entry[Job], id: str, task: Task) -> Iterator[Diagnostic]:
    job, at = entry.item, ("tasks", id)
    yield from _known(entry, (*at, "space"), task.space, {**job.spaces, **job.dwellings}, "space or dwelling")
    yield from _known(entry, (*at, "opening"), task.opening, job.openings, "opening")
    for index, person in enumerate(task.who):
        names = [hand.person for hand in job.people]
        yield from _known(entry, (*at, "who", index), person, names, "person")
    for name in ("hours", "left"):
        text = getattr(task, name)
        if text is not None and "space:" not in text:
            yield from _figure(entry, (*at, name), text, "time", "h")[1]


def _lists(context: Context, entry: Entry[Job]) -> Iterator[Diagnostic]:
    """What is done already, prices, visits, and the standards of this job."""
    job = entry.item
    for index, done in enumerate(job.already_done):
        yield from _known(entry, ("already_done", index, "space"), done.space, job.spaces, "space")
        yield from _known(entry, ("already_done", index, "dwelling"), done.dwelling, job.dwellings, "dwelling")
    for index, price in enumerate(job.prices):
        if price.lead_time:
            yield from _wait(entry, ("prices", index, "lead_time"), price.lead_time)
    for index, visit in enumerate(job.visits):
        yield from _wait(entry, ("visits", index, "notice"), figure_of(visit.notice, context.book) or "")
    for index, each in enumerate(job.standards):
        yield from _same_kind(context, entry, index, each.value, each.is_)


def _known(entry: Entry[Job], at: Location, name: str | None, known: Iterable[str], what: str) -> Iterator[Diagnostic]:
    names = list(known)
    if name is not None and name not in names:
        yield entry.error(at, f"there is no {what} '{name}' in this job", did_you_mean(name, names))


def _figure(
    entry: Entry[Job], at: Location, text: str, quantity: str, unit: str
) -> tuple[float | None, list[Diagnostic]]:
    """A figure above nought, or None with the reason."""
    try:
        value = read_with_unit(text, quantity, unit)
    except Unreadable as trouble:
        return None, [entry.error(at, str(trouble))]
    if value <= 0:
        return None, [entry.error(at, f"'{text}' is not above nought")]
    return value, []


def _wait(entry: Entry[Job], at: Location, text: str) -> Iterator[Diagnostic]:
    """A time to wait: nought or more, and not years."""
    try:
        hours = read_with_unit(text, "time", "h")
    except Unreadable as trouble:
        yield entry.error(at, str(trouble))
        return
    if not 0 <= hours <= LONGEST / timedelta(hours=1):
        yield entry.error(at, f"'{text}' is no time to wait: nought to three years are wanted")


def _same_kind(context: Context, entry: Entry[Job], index: int, value: str, here: str) -> Iterator[Diagnostic]:
    usual = context.book.values[value].item.quantity
    at: Location = ("standards", index, "is")
    try:
        wanted, given = read_figure(usual)[1], read_figure(here)[1]
    except Unreadable as trouble:
        yield entry.error(at, str(trouble))
        return
    if wanted != given:
        yield entry.error(at, f"'{here}' cannot stand for '{usual}': it is of another kind")


def _away(context: Context, entry: Entry[Job]) -> Iterator[Diagnostic]:
    """People of whom the job has nothing, since they are away from its start to its deadline."""
    job = entry.item
    hands = hands_of(job)
    days = [job.start + timedelta(days=n) for n in range(min((job.deadline - job.start).days, LONGEST.days) + 1)]
    there = [hand for hand in hands if any(_works(job, hand, day) for day in days)]
    for index, hand in enumerate(hands):
        if hand in there or not days:
            continue
        needing = _needs(context, entry, hands, there, hand.person)
        message = f"'{hand.person}' is away on every working day of this job"
        if needing:
            lines = ", ".join(f"'{id}' in line {entry.document.place(('tasks', id, ''))[0]}" for id in needing)
            yield entry.error(("people", index), message, f"without those who are away there is nobody for {lines}")
        else:
            yield entry.warning(("people", index), message, "leave the line out")


def _needs(context: Context, entry: Entry[Job], hands: list[Hand], there: list[Hand], person: str) -> list[str]:
    """The open tasks for which there is no team without those who are away, this person among them."""
    return [
        id
        for id, task in entry.item.tasks.items()
        if not task.done
        and person in eligible_crew(context.book, hands, task).eligible
        and not any(teams(eligible_crew(context.book, there, task), there))
    ]


def _works(job: Job, hand: Hand, day: date) -> bool:
    off: Container[date] = (*hand.off, *job.holidays)
    return WEEK[day.weekday()] in hand.days and day not in off
