"""Makes of a job the problem that is solved: pieces of work, teams, places, waits and visits on one axis of time.

A task is cut where an inspector from outside must look, and at the length of a day; its pieces keep one team. What
lies before the day of planning is not planned: done tasks leave only what they still close.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from graphlib import TopologicalSorter
from math import ceil

from build_tools.book.book import Book, Entry
from build_tools.book.checks.context import Context
from build_tools.book.model.job import Hand, Job, Task
from build_tools.book.model.procedure import Closes
from build_tools.book.uses import figure_of
from build_tools.plan.crew import Able, able, hands_of
from build_tools.plan.horizon import NO_TEAM, Serial
from build_tools.plan.links import Link, closed_places, links
from build_tools.plan.office import A_CALL, add_weekdays, answered_from
from build_tools.plan.problem import After, Impossible, Piece, Problem, Spans, Stay, Team
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
        self.hands = hands_of(self.job)
        self.open = [id for id, task in self.job.tasks.items() if task.done is None]
        self.able: dict[str, Able] = {id: able(self.book, self.hands, self.job.tasks[id]) for id in self.open}
        self.a_day = max(1, round(read(self.job.hours, "time", "h") * A_HOUR))
        hour, minute = (int(part) for part in self.job.begins.split(":"))
        self.begins = time(hour, minute)
        self.worktime = self._axis()
        self.problem = Problem(self.worktime.slots, a_day=self.worktime.a_day)
        self.made = Prepared(
            entry, self.worktime, self.problem, self.take_offs, self.links, hands=self.hands, today=today
        )

    def prepare(self) -> Prepared:
        self._people()
        self._places()
        for id in self.open:
            self._task(id)
        for link in self.links:
            self._link(link)
        for place, until in still_closed(self.book, self.job, self._evening).items():
            slot = self.worktime.slot_at(until)
            if slot:
                self.problem.shut[place] = slot
        return self.made

    def _axis(self) -> Worktime:
        """The working days that a plan with one task after another would take."""
        job = self.job
        week = sorted({*job.days, *(day for hand in self.hands for day in hand.days)}, key=WEEK.index)
        serial = Serial(self.today, self.hands, self.a_day, job.holidays)
        for until in still_closed(self.book, job, self._evening).values():
            serial.not_before(next(iter(job.tasks)), until.date() + timedelta(days=1))
        for id in self._in_order():
            self._one_after_another(id, serial, week)
        days = range(self.today.toordinal(), serial.day.toordinal() + 1)
        count = sum(_works(date.fromordinal(day), week, job.holidays) for day in days)
        return working_days(self.today, count + 1, self.begins, self.a_day, week, job.holidays)

    def _in_order(self) -> list[str]:
        """The open tasks, those that are started first, each before what comes after it."""
        graph: dict[str, list[str]] = {id: [] for id in self.open}
        for link in self.links:
            if link.later in graph and link.earlier in graph and self.job.tasks[link.later].started is None:
                graph[link.later].append(link.earlier)
        order = list(TopologicalSorter(graph).static_order())
        return sorted(order, key=lambda id: self.job.tasks[id].started is None)

    def _one_after_another(self, id: str, serial: Serial, week: Collection[str]) -> None:
        task = self.job.tasks[id]
        serial.not_before(id, max(task.not_before or self.today, self._delivery(task)))
        parts = self._parts(id)
        for slots, hold in parts:
            if slots:
                serial.work(id, self.able[id], slots)
            if hold is not None:
                _, weekdays, hours = self._notice(hold[0])
                days = ceil(hours / 24) if weekdays is None else weekdays
                serial.visit(id, days + 1, week)  # a call in the evening is made in the morning
        closes = self.book.procedures[task.procedure].item.closes
        waits = [self._hours(closing) for closing in closes if closing.shuts_out != "users"]
        serial.wait(id, max(waits, default=0))
        if waits and len(parts) > 1:
            serial.visit(id, 0, week)  # a look waits until its place is open again

    def _people(self) -> None:
        for hand in self.hands:
            off = [day for day in self.worktime.days if WEEK[day.weekday()] not in hand.days or day in hand.off]
            self.problem.people[hand.person] = self.worktime.blocked(off)

    def _places(self) -> None:
        for name, space in self.job.spaces.items():
            self.problem.places[name] = space.crews
        for name in self.job.dwellings:
            self.problem.places.setdefault(name, 1)

    def _slots(self, id: str, *, whole: bool = False) -> int:
        """How long a task takes with its people, in slots: what is left of it, or the whole."""
        task = self.job.tasks[id]
        hours = self.take_offs[id].hours
        if task.left is not None and not whole:
            hours = read(task.left, "time", "h")
        people = task.people or self.book.procedures[task.procedure].item.labour.people
        return max(1, ceil(round(hours / people * A_HOUR, 6)))

    def _task(self, id: str) -> None:
        """The pieces of a task, its team, its stay in its space, and what it closes."""
        task = self.job.tasks[id]
        found = self.able[id]
        self.problem.teams[id] = Team(found.size, found.may, found.leads)
        earliest = 0
        if task.started is None:
            earliest = self.worktime.first_of(max(task.not_before or self.today, self._delivery(task)))
        self.made.pieces[id] = []
        stretches = []
        for number, (slots, hold) in enumerate(self._parts(id)):
            chunks = [self.worktime.a_day] * (slots // self.worktime.a_day) + [slots % self.worktime.a_day]
            mine = []
            for chunk in filter(None, chunks):
                name = f"{id} {len(self.made.pieces[id]) + 1}"
                before = self.made.pieces[id][-1:]
                piece = Piece(name, chunk, [After(before[0])] if before else [], team=id, earliest=earliest)
                if self.book.procedures[task.procedure].item.labour.in_one_day:
                    piece.allowed = self._within_a_day(chunk)
                if task.started is not None and not before:
                    piece.start = self._first_together(id, found, chunk)
                self.problem.pieces[name] = piece
                self.made.pieces[id].append(name)
                mine.append(name)
            if mine:
                stretches.append((mine[0], mine[-1]))
            if hold is not None:
                self._visit(id, hold[0], hold[1], number)
        self.made.closings[id] = self.book.procedures[task.procedure].item.closes
        for first, last in stretches:
            self._stay(id, first, last, closes=(first, last) == stretches[-1])

    def _first_together(self, id: str, found: Able, slots: int) -> int:
        """The first slot from which a team of those who may is there so long: a started task goes on then."""
        for day in range(len(self.worktime.days)):
            start = day * self.worktime.a_day
            there = {
                person
                for person in found.may
                if not any(a < start + slots and start < b for a, b in self.problem.people[person])
            }
            if len(there) >= found.size and there & set(found.leads):
                return start
        raise Impossible(NO_TEAM, (id,))

    def _parts(self, id: str) -> list[tuple[int, tuple[str, str] | None]]:
        """The slots of each stretch of a task, and the inspection and step that end it: the last has none.

        Of a started task that is the part that is left; an inspection at its very beginning is still to come.
        """
        task = self.job.tasks[id]
        steps = self.book.procedures[task.procedure].item.steps
        left = self._slots(id)
        whole = max(left, self._slots(id, whole=True))
        parts: list[tuple[int, tuple[str, str] | None]] = []
        used = whole - left
        for number, step in enumerate(steps, 1):
            if step.hold and self.book.inspections[step.hold.inspection].item.by == "outside":
                until = max(round(whole * number / len(steps)), 1)
                if until >= whole - left:
                    until = max(used, until)
                    parts.append((until - used, (step.hold.inspection, step.id)))
                    used = until
        parts.append((whole - used, None))
        return parts

    def _visit(self, id: str, inspection: str, step: str, number: int) -> None:
        item = self.book.inspections[inspection].item
        notice, weekdays, hours = self._notice(inspection)
        before = self.made.pieces[id][-1:]
        name = f"{id} visit {number + 1}"
        ready = item.called == "when ready"
        piece = Piece(name, VISIT)
        if before:
            piece.after.append(After(before[0], self._notice_wait(notice, weekdays, hours) if ready else ""))
        if not ready or not before:
            start = datetime.combine(self.worktime.days[0], self.worktime.begins)
            piece.earliest = self.worktime.slot_at(self._notice_over(start, weekdays, hours))
        piece.allowed = self._office_hours()
        self.problem.pieces[name] = piece
        self.problem.stays.append(Stay(self.job.tasks[id].space, name, name))  # nobody looks over a wet floor
        self.made.pieces[id].append(name)
        self.made.visits.append(Visit(name, id, step, inspection, notice, weekdays, hours, ready))

    def _notice(self, inspection: str) -> tuple[str, int | None, float]:
        """The notice of an inspection on this job: its figure, in weekdays where it is given in days, and in hours."""
        usual = self.book.inspections[inspection].item.notice
        notice = next((visit.notice for visit in self.job.visits if visit.inspection == inspection), usual)
        text = figure_of(notice, self.book) or "0 h"
        hours = read(text, "time", "h")
        return text, (round(hours / 24) if "day" in text else None), hours

    def _notice_wait(self, notice: str, weekdays: int | None, hours: float) -> str:
        name = f"notice {notice}"
        if name not in self.problem.waits:
            self.problem.waits[name] = [
                self.worktime.slot_at(self._notice_over(self.worktime.ends(slot), weekdays, hours))
                for slot in range(self.worktime.slots + 1)
            ]
        return name

    def _notice_over(self, moment: datetime, weekdays: int | None, hours: float) -> datetime:
        """When somebody may come who can be called from a moment on: his notice counts from the end of the call."""
        if not hours:
            return moment
        off = self.job.holidays
        called = answered_from(moment, off) + A_CALL
        if weekdays is None:
            return called + timedelta(hours=hours)
        return datetime.combine(add_weekdays(called.date(), weekdays, off), called.time())

    def _within_a_day(self, slots: int) -> Spans:
        """When work may start that is done before the evening."""
        a_day = self.worktime.a_day
        return [(index * a_day, (index + 1) * a_day - slots + 1) for index in range(len(self.worktime.days))]

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
        for closing in shut if closes else []:
            wait = self._wait(closing)
            for place in closed_places(self.job, task.space, closing.where):
                if place not in waits or _longer(wait, waits[place]):
                    waits[place] = wait
        self.problem.stays.append(Stay(task.space, first, last, waits.pop(task.space, "")))
        for place, wait in waits.items():
            self.problem.stays.append(Stay(place, first, last, wait, worked_in=task.space))

    def _hours(self, closing: Closes) -> float:
        return read(figure_of(closing.time, self.book) or "0 h", "time", "h")

    def _wait(self, closing: Closes) -> str:
        hours = self._hours(closing)
        name = f"{hours:.10g} h"
        if name not in self.problem.waits:
            self.problem.waits[name] = self.worktime.ready(timedelta(hours=hours))
        return name

    def _link(self, link: Link) -> None:
        """The later task waits for the end of the earlier one, and from its last work for what it asks of next work."""
        later = self.made.pieces.get(link.later)
        if not later or self.job.tasks[link.later].started is not None:
            return
        first = self.problem.pieces[later[0]]
        procedure = self.book.procedures[self.job.tasks[link.earlier].procedure].item
        closes = [] if link.asked else [c for c in procedure.closes if c.shuts_out == "next work"]
        earlier = self.made.pieces.get(link.earlier)
        if earlier:
            work = [id for id in earlier if self.problem.pieces[id].team][-1:]
            first.after += [After(id, self._wait(closing)) for id in work for closing in closes]
            if work != earlier[-1:] or not closes:
                first.after.append(After(earlier[-1]))
        done = self.job.tasks[link.earlier].done
        if done is not None:
            for closing in closes:
                moment = self._evening(done) + timedelta(hours=self._hours(closing))
                first.earliest = max(first.earliest, self.worktime.slot_at(moment))

    def _evening(self, day: date) -> datetime:
        return datetime.combine(day, self.begins) + timedelta(hours=self.a_day / A_HOUR)

    def _delivery(self, task: Task) -> date:
        """The day on which what the task uses can be there, if it is ordered on the day of planning."""
        procedure = self.book.procedures[task.procedure].item
        used = {line.material for line in procedure.materials} | {line.tool for line in procedure.tools}
        longest = max((lead_days(self.job, thing) for thing in used), default=0)
        return add_weekdays(self.today, longest, self.job.holidays)


def still_closed(book: Book, job: Job, evening: Callable[[date], datetime]) -> dict[str, datetime]:
    """Until when each place is closed by what is done already; ``evening`` is when work ends on a day."""
    found: dict[str, datetime] = {}
    for task in job.tasks.values():
        for closing in book.procedures[task.procedure].item.closes if task.done else []:
            if closing.shuts_out == "everybody" and task.done:
                hours = read(figure_of(closing.time, book) or "0 h", "time", "h")
                until = evening(task.done) + timedelta(hours=hours)
                for place in closed_places(job, task.space, closing.where):
                    found[place] = max(until, found.get(place, until))
    return found


def _works(day: date, week: Collection[str], off: Collection[date]) -> bool:
    return WEEK[day.weekday()] in week and day not in off


def _longer(one: str, other: str) -> bool:
    return float(one.removesuffix(" h")) > float(other.removesuffix(" h"))


def lead_days(job: Job, thing: str) -> int:
    """The working days from an order to the delivery of a material or a tool; 0 where nothing is said."""
    times = [price.lead_time for price in job.prices if thing in (price.material, price.tool) and price.lead_time]
    return max((ceil(read(text, "time", "h") / 24) for text in times), default=0)
