"""Makes of a job the problem that is solved: pieces of work, teams, places, waits and visits on one axis of time.

A task is cut where an inspector from outside must look, and at the length of a day; its pieces keep one team. What
lies before the day of planning is not planned: done tasks leave only what they still close.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from math import ceil

from build_tools.book.book import Book, Entry
from build_tools.book.checks.context import Context
from build_tools.book.model.job import Hand, Job, Task
from build_tools.book.model.procedure import Closes
from build_tools.book.model.reference import Inspection
from build_tools.book.uses import figure_of
from build_tools.plan.crew import able
from build_tools.plan.links import Link, dwelling_of, links
from build_tools.plan.problem import After, Piece, Problem, Spans, Stay, Team
from build_tools.plan.take_off import TakeOff, take_off
from build_tools.plan.worktime import A_HOUR, WEEK, Worktime, is_weekday, working_days
from calculators.reading import read

VISIT = 2
"""Slots that an inspector's visit takes."""


@dataclass(frozen=True, slots=True)
class Visit:
    """Somebody from outside looks at a task: which inspection, at which step, and how long ahead he is called."""

    piece: str
    task: str
    step: str
    inspection: str
    notice: str
    weekdays: int | None
    hours: float
    when_ready: bool


@dataclass(slots=True)
class Prepared:
    """The problem with what its names mean."""

    job: Entry[Job]
    worktime: Worktime
    problem: Problem
    take_offs: dict[str, TakeOff]
    links: list[Link]
    pieces: dict[str, list[str]] = field(default_factory=dict)
    visits: list[Visit] = field(default_factory=list)
    hands: list[Hand] = field(default_factory=list)
    closings: dict[str, list[Closes]] = field(default_factory=dict)
    today: date = date.min


def prepare(context: Context, entry: Entry[Job], today: date, take_offs: dict[str, TakeOff] | None = None) -> Prepared:
    """The problem of a job whose checks found nothing. ``today`` is the day from which it is planned."""
    return _Preparer(context, entry, max(today, entry.item.start), take_offs).prepare()


class _Preparer:
    def __init__(self, context: Context, entry: Entry[Job], today: date, take_offs: dict[str, TakeOff] | None) -> None:
        self.context, self.entry, self.job, self.today = context, entry, entry.item, today
        self.book: Book = context.book
        self.take_offs = take_offs or {id: take_off(context, entry, id) for id in self.job.tasks}
        self.links = links(self.book, self.job)
        self.open = [id for id, task in self.job.tasks.items() if task.done is None]
        self.worktime = self._axis()
        self.problem = Problem(self.worktime.slots, a_day=self.worktime.a_day)
        self.made = Prepared(
            entry, self.worktime, self.problem, self.take_offs, self.links, hands=self.job.people, today=today
        )

    def prepare(self) -> Prepared:
        self._people()
        self._places()
        for id in self.open:
            self._task(id)
        for link in self.links:
            self._link(link)
        for id, task in self.job.tasks.items():
            if task.done is not None:
                self._still_closed(id, task.done)
        return self.made

    def _axis(self) -> Worktime:
        """Working days enough for all the work one after another, with what must be waited for."""
        job = self.job
        a_day = max(1, round(read(job.hours, "time", "h") * A_HOUR))
        week = sorted({*job.days, *(day for hand in job.people for day in hand.days)}, key=WEEK.index)
        slots = sum(self._slots(id) for id in self.open)
        days_off = sum(len(hand.off) for hand in job.people)
        waits = sum(
            read(figure_of(c.time, self.book) or "0 h", "time", "h") / 24 + 1
            for id in self.open
            for c in self.book.procedures[job.tasks[id].procedure].item.closes
            if c.shuts_out != "users"
        )
        count = ceil(slots / a_day) + ceil(min(waits, 120)) + days_off + 30
        hour, minute = (int(part) for part in job.begins.split(":"))
        return working_days(self.today, count, time(hour, minute), a_day, week, job.holidays)

    def _people(self) -> None:
        for hand in self.job.people:
            off = [day for day in self.worktime.days if WEEK[day.weekday()] not in hand.days or day in hand.off]
            self.problem.people[hand.person] = self.worktime.blocked(off)

    def _places(self) -> None:
        for name, space in self.job.spaces.items():
            self.problem.places[name] = space.crews
        for name in self.job.dwellings:
            self.problem.places.setdefault(name, 1)

    def _slots(self, id: str) -> int:
        """How long a task takes with its people, in slots."""
        task = self.job.tasks[id]
        hours = self.take_offs[id].hours
        if task.left is not None:
            hours = read(task.left, "time", "h")
        people = task.people or self.book.procedures[task.procedure].item.labour.people
        return max(1, ceil(round(hours / people * A_HOUR, 6)))

    def _task(self, id: str) -> None:
        """The pieces of a task, its team, its stay in its space, and what it closes."""
        task = self.job.tasks[id]
        found = able(self.book, self.job.people, task)
        self.problem.teams[id] = Team(found.size, found.may, found.leads)
        earliest = self.worktime.first_of(task.not_before) if task.not_before else 0
        earliest = max(earliest, self._delivered(task))
        self.made.pieces[id] = []
        for number, (slots, visit) in enumerate(self._parts(id)):
            chunks = [self.worktime.a_day] * (slots // self.worktime.a_day) + [slots % self.worktime.a_day]
            mine = []
            for chunk in filter(None, chunks):
                name = f"{id} {len(self.made.pieces[id]) + 1}"
                before = self.made.pieces[id][-1:]
                piece = Piece(name, chunk, [After(before[0])] if before else [], team=id, earliest=earliest)
                if task.started is not None and not before:
                    piece.start = 0
                self.problem.pieces[name] = piece
                self.made.pieces[id].append(name)
                mine.append(name)
            last = visit is None
            if mine:
                self._stay(id, mine[0], mine[-1], closes=last)
            if visit is not None:
                self._visit(id, visit[0], visit[1], number)

    def _parts(self, id: str) -> list[tuple[int, tuple[str, str] | None]]:
        """The slots of each stretch of a task, and the inspection and step that end it: the last has none."""
        task = self.job.tasks[id]
        steps = self.book.procedures[task.procedure].item.steps
        slots = self._slots(id)
        parts: list[tuple[int, tuple[str, str] | None]] = []
        used = 0
        for number, step in enumerate(steps, 1):
            if task.started is None and step.hold and self.book.inspections[step.hold.inspection].item.by == "outside":
                until = max(used, round(slots * number / len(steps)), 1)
                parts.append((until - used, (step.hold.inspection, step.id)))
                used = until
        parts.append((max(slots - used, 0), None))
        return parts

    def _visit(self, id: str, inspection: str, step: str, number: int) -> None:
        item = self.book.inspections[inspection].item
        notice = next((visit.notice for visit in self.job.visits if visit.inspection == inspection), item.notice)
        weekdays, hours = self._notice(notice)
        before = self.made.pieces[id][-1]
        name = f"{id} visit {number + 1}"
        ready = item.called == "when ready"
        piece = Piece(name, VISIT, [After(before, self._notice_wait(item, notice) if ready else "")])
        if not ready:
            start = datetime.combine(self.worktime.days[0], self.worktime.begins)
            moment = start + timedelta(hours=hours) if weekdays is None else self._weekdays_on(start, weekdays)
            piece.earliest = self.worktime.slot_at(moment)
        piece.allowed = self._office_hours()
        self.problem.pieces[name] = piece
        self.made.pieces[id].append(name)
        self.made.visits.append(Visit(name, id, step, inspection, notice, weekdays, hours, ready))

    def _notice(self, notice: str) -> tuple[int | None, float]:
        """Weekdays where a notice is given in days, and its hours."""
        text = figure_of(notice, self.book) or "0 h"
        hours = read(text, "time", "h")
        return (round(hours / 24) if "day" in text else None), hours

    def _notice_wait(self, item: Inspection, notice: str) -> str:
        weekdays, hours = self._notice(notice)
        name = f"notice {notice}"
        if name not in self.problem.waits:
            self.problem.waits[name] = (
                self.worktime.ready(timedelta(hours=hours))
                if weekdays is None
                else self.worktime.ready_after_days(weekdays, self.job.holidays)
            )
        return name

    def _weekdays_on(self, start: datetime, count: int) -> datetime:
        day = start
        while count:
            day += timedelta(days=1)
            count -= is_weekday(day.date(), self.job.holidays)
        return day

    def _office_hours(self) -> Spans:
        """When somebody from outside may come: weekdays that are no holidays, so that he is done before evening."""
        a_day = self.worktime.a_day
        return [
            (index * a_day, (index + 1) * a_day - VISIT + 1)
            for index, day in enumerate(self.worktime.days)
            if is_weekday(day, self.job.holidays)
        ]

    def _stay(self, id: str, first: str, last: str, *, closes: bool) -> None:
        """The space of a stretch of a task and, after its last one, what is closed to everybody."""
        task = self.job.tasks[id]
        shut = [c for c in self.book.procedures[task.procedure].item.closes if c.shuts_out == "everybody"]
        waits: dict[str, str] = {}
        if closes:
            self.made.closings[id] = self.book.procedures[task.procedure].item.closes
            for closing in shut:
                wait = self._wait(closing)
                for place in self._closed_places(task.space, closing.where):
                    if place not in waits or _longer(wait, waits[place]):
                        waits[place] = wait
        self.problem.stays.append(Stay(task.space, first, last, waits.pop(task.space, "")))
        for place, wait in waits.items():
            self.problem.stays.append(Stay(place, first, last, wait, from_end=True))

    def _closed_places(self, space: str, where: str) -> list[str]:
        """The places that a closing reaches, and those that are reached only through them."""
        if where == "whole job":
            shut = set(self.problem.places)
        elif where == "same dwelling":
            dwelling = dwelling_of(self.job, space)
            shut = {name for name in self.problem.places if dwelling_of(self.job, name) == dwelling} | {space}
        else:
            shut = {space}
        grown = True
        while grown:
            more = {n for n, s in self.job.spaces.items() if n not in shut and set(s.reached_through) & shut}
            shut |= more
            grown = bool(more)
        return sorted(shut)

    def _wait(self, closing: Closes) -> str:
        hours = read(figure_of(closing.time, self.book) or "0 h", "time", "h")
        name = f"{hours:g} h"
        if name not in self.problem.waits:
            self.problem.waits[name] = self.worktime.ready(timedelta(hours=hours))
        return name

    def _link(self, link: Link) -> None:
        """The later task waits for the last piece of the earlier one, and for what that asks of next work."""
        later = self.made.pieces.get(link.later)
        if not later:
            return
        first = self.problem.pieces[later[0]]
        procedure = self.book.procedures[self.job.tasks[link.earlier].procedure].item
        waits = [] if link.asked else [self._wait(c) for c in procedure.closes if c.shuts_out == "next work"]
        earlier = self.made.pieces.get(link.earlier)
        if earlier:
            first.after += [After(earlier[-1], wait) for wait in (waits or [""])]
        done = self.job.tasks[link.earlier].done
        if done is not None:
            evening = self._evening(done)
            for wait in waits:
                moment = evening + timedelta(hours=float(wait.removesuffix(" h")))
                first.earliest = max(first.earliest, self.worktime.slot_at(moment))

    def _still_closed(self, id: str, done: date) -> None:
        """What a finished task keeps closed beyond the day of planning."""
        task = self.job.tasks[id]
        for closing in self.book.procedures[task.procedure].item.closes:
            if closing.shuts_out != "everybody":
                continue
            hours = read(figure_of(closing.time, self.book) or "0 h", "time", "h")
            until = self.worktime.slot_at(self._evening(done) + timedelta(hours=hours))
            if until:
                for place in self._closed_places(task.space, closing.where):
                    self.problem.shut.setdefault(place, []).append((0, until))

    def _evening(self, day: date) -> datetime:
        return datetime.combine(day, self.worktime.begins) + timedelta(hours=self.worktime.a_day / A_HOUR)

    def _delivered(self, task: Task) -> int:
        """The first slot at which what the task uses can be there, if it is ordered on the day of planning."""
        used = {line.material for line in self.book.procedures[task.procedure].item.materials}
        longest = max((lead_days(self.job, material) for material in used), default=0)
        return self.worktime.first_of(add_weekdays(self.today, longest, self.job.holidays)) if longest else 0


def _longer(one: str, other: str) -> bool:
    return float(one.removesuffix(" h")) > float(other.removesuffix(" h"))


def lead_days(job: Job, material: str) -> int:
    """The working days from an order to the delivery of a material; 0 where nothing is said."""
    times = [price.lead_time for price in job.prices if price.material == material and price.lead_time]
    return max((ceil(read(text, "time", "h") / 24) for text in times), default=0)


def add_weekdays(day: date, count: int, off: Collection[date]) -> date:
    """The weekday so many weekdays later (before, for a negative count).

    >>> add_weekdays(date(2026, 12, 4), 2, [])
    datetime.date(2026, 12, 8)
    """
    step = timedelta(days=1 if count >= 0 else -1)
    left = abs(count)
    while left:
        day += step
        left -= is_weekday(day, off)
    return day
