"""Makes of a job the problem that is solved: activities of work, teams, places, waits and visits on one axis of time.

A task is cut into its trips, where an inspector from outside must look, and at the length of a day; its activities keep
one team. What lies before the day of planning is not planned: done tasks leave only what they still close.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from graphlib import TopologicalSorter
from math import ceil

from build_tools.book import quantities
from build_tools.book.book import Book, Entry
from build_tools.book.checks.context import Context
from build_tools.book.model.job import Hand, Job, Task
from build_tools.book.model.procedure import Closes
from build_tools.plan.crew import EligibleCrew, eligible_crew, hands_of
from build_tools.plan.horizon import MOST, NO_TEAM, SerialSchedule
from build_tools.plan.office_hours import A_CALL, add_weekdays, answered_from
from build_tools.plan.precedence import TaskPrecedence, closed_places, precedences
from build_tools.plan.problem import Activity, Infeasible, Occupancy, Precedence, Problem, Spans, Team
from build_tools.plan.take_off import TakeOff, take_off
from build_tools.plan.trips import PlannedTrip, last_of, left_when_done, trips_of
from build_tools.plan.worktime import SLOTS_PER_HOUR, WEEK, Worktime, is_weekday, working_days
from calculators.reading import read

VISIT = 2
"""Slots that an inspector's visit takes."""
LEAST = 2
"""Slots: so much of a work is done at least before a night and after it; else it is not cut there."""


@dataclass(frozen=True, slots=True)
class InspectionVisit:
    """Somebody from outside looks at a task: which inspection, at which step, and how long ahead he is called."""

    activity: str
    task: str
    step: str
    inspection: str
    notice: str
    weekdays: int | None
    hours: float
    when_ready: bool


@dataclass(frozen=True, slots=True)
class Segment:
    """A part of a task that is done without waiting: a trip, or what a look from outside cuts it into.

    ``trip`` is the number of the trip; ``begins``, whether it begins with this part. ``hold_point`` is the inspection
    that ends the part, with its step.
    """

    slots: int
    trip: int
    begins: bool
    hold_point: tuple[str, str] | None


@dataclass(slots=True)
class Prepared:
    """The problem with what its names mean. ``trip_of`` is the number of the trip of each activity of work."""

    job: Entry[Job]
    worktime: Worktime
    problem: Problem
    take_offs: dict[str, TakeOff]
    precedences: list[TaskPrecedence]
    activities: dict[str, list[str]] = field(default_factory=dict)
    trips: dict[str, list[PlannedTrip]] = field(default_factory=dict)
    trip_of: dict[str, int] = field(default_factory=dict)
    visits: list[InspectionVisit] = field(default_factory=list)
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
        self.precedences = precedences(self.book, self.job)
        self.hands = hands_of(self.job)
        self.open = [id for id, task in self.job.tasks.items() if task.done is None]
        self.trips = {id: trips_of(self.book, self.job, id, self.take_offs[id].hours) for id in self.job.tasks}
        self.eligible_crew: dict[str, EligibleCrew] = {
            id: eligible_crew(self.book, self.hands, self.job.tasks[id]) for id in self.open
        }
        self.slots_per_day = max(1, round(read(self.job.hours, "time", "h") * SLOTS_PER_HOUR))
        hour, minute = (int(part) for part in self.job.begins.split(":"))
        self.begins = time(hour, minute)
        self.worktime = self._axis()
        self.problem = Problem(self.worktime.slots, slots_per_day=self.worktime.slots_per_day)
        self.made = Prepared(
            entry,
            self.worktime,
            self.problem,
            self.take_offs,
            self.precedences,
            trips=self.trips,
            hands=self.hands,
            today=today,
        )

    def prepare(self) -> Prepared:
        self._people()
        self._places()
        for id in self.open:
            self._task(id)
        for link in self.precedences:
            self._link(link)
        for place, until in still_closed(self.book, self.job, self._evening).items():
            self._close(place, self.worktime.slot_at(until))
        return self.made

    def _axis(self) -> Worktime:
        """The working days that a plan with one task after another would take."""
        job = self.job
        week = sorted({*job.days, *(day for hand in self.hands for day in hand.days)}, key=WEEK.index)
        serial = SerialSchedule(self.today, self.hands, self.slots_per_day, job.holidays)
        for until in still_closed(self.book, job, self._evening).values():
            serial.not_before(next(iter(job.tasks)), until.date() + timedelta(days=1))
        for id in self._in_order():
            self._one_after_another(id, serial, week)
        days = range(self.today.toordinal(), serial.day.toordinal() + 1)
        count = sum(_works(date.fromordinal(day), week, job.holidays) for day in days)
        return working_days(self.today, count + 1, self.begins, self.slots_per_day, week, job.holidays)

    def _in_order(self) -> list[str]:
        """The open tasks, those that are started first, each before what comes after it."""
        graph: dict[str, list[str]] = {id: [] for id in self.open}
        for link in self.precedences:
            if link.successor in graph and link.predecessor in graph and self.job.tasks[link.successor].started is None:
                graph[link.successor].append(link.predecessor)
        order = list(TopologicalSorter(graph).static_order())
        return sorted(order, key=lambda id: self.job.tasks[id].started is None)

    def _one_after_another(self, id: str, serial: SerialSchedule, week: Collection[str]) -> None:
        task = self.job.tasks[id]
        serial.not_before(id, max(task.not_before or self.today, self._delivery(task)))
        segments = self._segments(id)
        for segment in segments:
            if segment.begins:
                serial.wait(id, self.trips[id][segment.trip].wait + (24 if task.started else 0))
            for slots in self._day_chunks(segment.slots):
                serial.work(id, self.eligible_crew[id], slots)
            if segment.hold_point is not None:
                _, weekdays, hours = self._notice(segment.hold_point[0])
                days = ceil(hours / 24) if weekdays is None else weekdays
                serial.visit(id, days + 1, week)  # a call in the evening is made in the morning
        closes = self.book.procedures[task.procedure].item.closes
        waits = [self._hours(closing) for closing in closes if closing.shuts_out != "users"]
        serial.wait(id, max(waits, default=0))
        if waits and len(segments) > 1:
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

    def _used(self, id: str) -> tuple[int, int]:
        """How long a task takes with its people, in slots, and how much of that is done of one that is started."""
        task = self.job.tasks[id]
        whole = sum(trip.slots for trip in self.trips[id])
        if task.left is None:
            return whole, 0
        people = task.people or self.book.procedures[task.procedure].item.labour.people
        left = max(1, ceil(round(read(task.left, "time", "h") / people * SLOTS_PER_HOUR, 6)))
        return max(whole, left), max(whole - left, 0)

    def _task(self, id: str) -> None:
        """The activities of a task, its team, its occupancies of its space, and what it closes."""
        task = self.job.tasks[id]
        found = self.eligible_crew[id]
        self.problem.teams[id] = Team(found.size, found.eligible, found.leads)
        earliest = 0
        if task.started is None:
            earliest = self.worktime.first_of(max(task.not_before or self.today, self._delivery(task)))
        self.made.activities[id] = []
        self.made.closings[id] = self.book.procedures[task.procedure].item.closes
        occupancies: list[list[str]] = []
        held = True
        for number, segment in enumerate(self._segments(id)):
            trip = self.trips[id][segment.trip]
            names = []
            for slots in self._day_chunks(segment.slots):
                names.append(self._add_activity(id, found, segment, slots, earliest))
            if names:
                if segment.begins:
                    self._lag_for_trip(id, segment.trip, names[0])
                if trip.shut and segment.begins and not held:
                    occupancies[-1] += names
                else:
                    occupancies.append(names)
                held = False
            if segment.hold_point is not None:
                self._visit(id, segment.hold_point[0], segment.hold_point[1], number)
                held = True
        for names in occupancies:
            self._occupy(id, names)
        for closing in self.made.closings[id]:
            if closing.shuts_out == "everybody":
                until = min(self.worktime.slot_at(self._over_since(id, closing)), self._first_start(id))
                for place in closed_places(self.job, task.space, closing.where):
                    self._close(place, until)

    def _over_since(self, id: str, closing: Closes) -> datetime:
        """Until when a closing lasts whose trip lies before the day of planning; the first slot where it lies after."""
        if self.job.tasks[id].started is None or self._closes_after(id, closing):
            return self.worktime.starts(0)
        number = last_of(self.book.procedures[self.job.tasks[id].procedure].item, closing, self.trips[id])
        return self._was_over(id, number) + timedelta(hours=self._hours(closing))

    def _first_start(self, id: str) -> int:
        """The slot in which a started task goes on; its own crew is not kept out."""
        return next((self.problem.activities[name].start or 0 for name in self.made.activities[id][:1]), 0)

    def _day_chunks(self, slots: int) -> list[int]:
        """A part cut at the length of a day; no crumb of it is left for another one."""
        slots_per_day = self.slots_per_day
        full, rest = divmod(slots, slots_per_day)
        more = max(self._least() - rest, 0) if full and rest else 0
        chunks = [*[slots_per_day] * full, rest + more]
        if more:
            chunks[-2] -= more
        return [chunk for chunk in chunks if chunk]

    def _least(self) -> int:
        return min(LEAST, self.slots_per_day // 2)

    def _add_activity(self, id: str, found: EligibleCrew, segment: Segment, slots: int, earliest: int) -> str:
        """The next activity of a task; its name."""
        name = f"{id} {len(self.made.activities[id]) + 1}"
        before = self.made.activities[id][-1:]
        activity = Activity(name, slots, [Precedence(before[0])] if before else [], team=id, earliest=earliest)
        within = self.trips[id][segment.trip].in_one_day
        activity.allowed = self._within_a_day(slots) if within else self._not_cut_short(slots)
        if self.job.tasks[id].started is not None and not before:
            activity.start = self._goes_on(id, found, segment, activity)
        self.problem.activities[name] = activity
        self.made.activities[id].append(name)
        self.made.trip_of[name] = segment.trip
        return name

    def _lag_for_trip(self, id: str, number: int, name: str) -> None:
        """A trip waits for that from which its time counts."""
        trip = self.trips[id][number]
        since = [activity for activity in self.made.activities[id] if self.made.trip_of.get(activity) == trip.since]
        if not trip.wait or name in since:
            return
        if not since:
            activity = self.problem.activities[name]
            over = self._was_over(id, trip.since) + timedelta(hours=trip.wait)
            activity.earliest = max(activity.earliest, self.worktime.slot_at(over))
        elif trip.from_start:
            slots = self.problem.activities[since[0]].duration
            self.problem.activities[name].predecessors.append(
                Precedence(since[0], self._lag_from_start(trip.wait, slots))
            )
        else:
            self.problem.activities[name].predecessors.append(Precedence(since[-1], self._lag(trip.wait)))

    def _goes_on(self, id: str, found: EligibleCrew, segment: Segment, activity: Activity) -> int:
        """When a started task goes on: as soon as a team of those who may is there, and the trip's wait is over.

        What is shut meanwhile stays shut.
        """
        slots_per_day, trip = self.worktime.slots_per_day, self.trips[id][segment.trip]
        waited = 0
        if segment.begins and trip.wait:
            waited = self.worktime.slot_at(self._was_over(id, trip.since) + timedelta(hours=trip.wait))
        for day in range(waited // slots_per_day, len(self.worktime.days)):
            start = max(day * slots_per_day, waited)
            if activity.next_start(start) != start:
                continue
            there = {
                person
                for person in found.eligible
                if not any(a < start + activity.duration and start < b for a, b in self.problem.people[person])
            }
            if len(there) >= found.size and there & set(found.leads):
                return start
        raise Infeasible(NO_TEAM, (id,))

    def _was_over(self, id: str, number: int) -> datetime:
        """When a trip before the day of planning was over at the latest, by what the job says of its task.

        The first one began on the day ``started``, and each working day had a part of it; of a later one nothing is
        known but that it is over.
        """
        task = self.job.tasks[id]
        started = task.started or self.today
        latest = max(started, self.today - timedelta(days=1))
        days = (self.trips[id][number].slots - 1) // self.worktime.slots_per_day if number == 0 else MOST.days
        day = started
        while days and day < latest:
            day += timedelta(days=1)
            days -= self._is_working_day(day)
        return self._evening(min(day, latest))

    def _is_working_day(self, day: date) -> bool:
        week = {*self.job.days, *(name for hand in self.hands for name in hand.days)}
        return _works(day, week, self.job.holidays)

    def _segments(self, id: str) -> list[Segment]:
        """The parts of a task in their order; the last has no look from outside at its end, and may be empty.

        Of a started task those that are left; an inspection at its very beginning is still to come.
        """
        steps = self.book.procedures[self.job.tasks[id].procedure].item.steps
        whole, used = self._used(id)
        looks: list[tuple[int, tuple[str, str]]] = []
        for number, step in enumerate(steps, 1):
            if step.hold and self.book.inspections[step.hold.inspection].item.by == "outside":
                until = max(round(whole * number / len(steps)), 1)
                if until >= used:
                    looks.append((max([until, *(at for at, _ in looks)]), (step.hold.inspection, step.id)))
        segments: list[Segment] = []
        at, begins = used, 0
        for number, trip in enumerate(self.trips[id]):
            last = number == len(self.trips[id]) - 1
            ends = whole if last else begins + trip.slots
            while looks and looks[0][0] <= ends:
                until, look = looks.pop(0)
                segments.append(Segment(until - at, number, at == begins, look))
                at = until
            if at < ends or last:
                segments.append(Segment(ends - at, number, at == begins, None))
                at = ends
            begins = ends
        return segments

    def _visit(self, id: str, inspection: str, step: str, number: int) -> None:
        item = self.book.inspections[inspection].item
        notice, weekdays, hours = self._notice(inspection)
        before = self.made.activities[id][-1:]
        name = f"{id} visit {number + 1}"
        ready = item.called == "when ready"
        activity = Activity(name, VISIT)
        if before:
            activity.predecessors.append(
                Precedence(before[0], self._notice_wait(notice, weekdays, hours) if ready else "")
            )
        if not ready or not before:
            start = datetime.combine(self.worktime.days[0], self.worktime.begins)
            activity.earliest = self.worktime.slot_at(self._notice_over(start, weekdays, hours))
        activity.allowed = self._office_hours()
        self.problem.activities[name] = activity
        self.problem.occupancies.append(
            Occupancy(self.job.tasks[id].space, name, name)
        )  # nobody looks over a wet floor
        self.made.activities[id].append(name)
        self.made.visits.append(InspectionVisit(name, id, step, inspection, notice, weekdays, hours, ready))

    def _notice(self, inspection: str) -> tuple[str, int | None, float]:
        """The notice of an inspection on this job: its figure, in weekdays where it is given in days, and in hours."""
        usual = self.book.inspections[inspection].item.notice
        notice = next((visit.notice for visit in self.job.visits if visit.inspection == inspection), usual)
        text, hours = quantities.text(self.book, notice), quantities.hours(self.book, notice)
        return text, (round(hours / 24) if "day" in text else None), hours

    def _notice_wait(self, notice: str, weekdays: int | None, hours: float) -> str:
        name = f"notice {notice}"
        if name not in self.problem.lags:
            self.problem.lags[name] = [
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
        slots_per_day = self.worktime.slots_per_day
        return [
            (index * slots_per_day, (index + 1) * slots_per_day - slots + 1) for index in range(len(self.worktime.days))
        ]

    def _not_cut_short(self, slots: int) -> Spans:
        """When work may start that goes on over a night, if at all, with the least on both sides of it."""
        slots_per_day, least = self.worktime.slots_per_day, self._least()
        spans = []
        for day in range(0, self.worktime.slots, slots_per_day):
            spans.append((day, day + slots_per_day - slots + 1))
            if day + slots_per_day - slots + least <= day + slots_per_day - least:
                spans.append((day + slots_per_day - slots + least, day + slots_per_day - least + 1))
        return spans

    def _office_hours(self) -> Spans:
        """When somebody from outside may come: weekdays that are no holidays, so that he is done before evening."""
        slots_per_day = self.worktime.slots_per_day
        return [
            (index * slots_per_day, (index + 1) * slots_per_day - VISIT + 1)
            for index, day in enumerate(self.worktime.days)
            if is_weekday(day, self.job.holidays)
        ]

    def _occupy(self, id: str, names: list[str]) -> None:
        """The space of activities that follow each other without a break, and what they close to everybody."""
        task = self.job.tasks[id]
        first, last = names[0], names[-1]
        own = [name for name in names if self.made.trip_of[name] == self.made.trip_of[first]]
        since = own[-1] if own[-1] != last else ""
        waits: dict[str, str] = {}
        for closing in self.made.closings[id]:
            if closing.shuts_out == "everybody" and last == self._closes_after(id, closing):
                wait = self._lag(self._hours(closing))
                for place in closed_places(self.job, task.space, closing.where):
                    if place not in waits or _longer(wait, waits[place]):
                        waits[place] = wait
        self.problem.occupancies.append(Occupancy(task.space, first, last, waits.pop(task.space, ""), since=since))
        for place, wait in waits.items():
            self.problem.occupancies.append(Occupancy(place, first, last, wait, worked_in=task.space, since=since))
        start = self.problem.activities[first].start
        if start and self.trips[id][self.made.trip_of[first]].shut:
            for place in {task.space, *waits}:
                self._close(place, start)

    def _close(self, place: str, until: int) -> None:
        if until:
            self.problem.closed_until[place] = max(until, self.problem.closed_until.get(place, 0))

    def _closes_after(self, id: str, closing: Closes) -> str:
        """The activity from whose end a closing counts; empty where that is done."""
        number = last_of(self.book.procedures[self.job.tasks[id].procedure].item, closing, self.trips[id])
        return next((name for name in reversed(self.made.activities[id]) if self.made.trip_of.get(name) == number), "")

    def _hours(self, closing: Closes) -> float:
        return quantities.hours(self.book, closing.time)

    def _lag(self, hours: float) -> str:
        name = f"{hours:.10g} h"
        if name not in self.problem.lags:
            self.problem.lags[name] = self.worktime.ready(timedelta(hours=hours))
        return name

    def _lag_from_start(self, hours: float, slots: int) -> str:
        """A wait that counts from the start of an activity of that length, by the end that it has then."""
        name = f"{hours:.10g} h from the start of {slots}"
        if name not in self.problem.lags:
            wait = timedelta(hours=hours)
            self.problem.lags[name] = [
                max(end, self.worktime.slot_at(self.worktime.starts(max(end - slots, 0)) + wait))
                for end in range(self.worktime.slots + 1)
            ]
        return name

    def _link(self, link: TaskPrecedence) -> None:
        """The later task waits for the end of the earlier one, and from its last work for what it asks of next work."""
        later = self.made.activities.get(link.successor)
        if not later or self.job.tasks[link.successor].started is not None:
            return
        first = self.problem.activities[later[0]]
        procedure = self.book.procedures[self.job.tasks[link.predecessor].procedure].item
        closes = [] if link.asked else [c for c in procedure.closes if c.shuts_out == "next work"]
        earlier = self.made.activities.get(link.predecessor)
        if earlier:
            counted = [self._closes_after(link.predecessor, closing) for closing in closes]
            first.predecessors += [
                Precedence(id, self._lag(self._hours(closing)))
                for id, closing in zip(counted, closes, strict=True)
                if id
            ]
            if earlier[-1] not in counted:
                first.predecessors.append(Precedence(earlier[-1]))
            for closing in closes:
                first.earliest = max(first.earliest, self.worktime.slot_at(self._over_since(link.predecessor, closing)))
        done = self.job.tasks[link.predecessor].done
        if done is not None:
            for closing in closes:
                moment = self._evening(done) + timedelta(
                    hours=left_when_done(self.book, self.job, link.predecessor, closing)
                )
                first.earliest = max(first.earliest, self.worktime.slot_at(moment))

    def _evening(self, day: date) -> datetime:
        return datetime.combine(day, self.begins) + timedelta(hours=self.slots_per_day / SLOTS_PER_HOUR)

    def _delivery(self, task: Task) -> date:
        """The day on which what the task uses can be there, if it is ordered on the day of planning."""
        procedure = self.book.procedures[task.procedure].item
        used = {line.material for line in procedure.materials} | {line.tool for line in procedure.tools}
        longest = max((lead_days(self.job, thing) for thing in used), default=0)
        return add_weekdays(self.today, longest, self.job.holidays)


def still_closed(book: Book, job: Job, evening: Callable[[date], datetime]) -> dict[str, datetime]:
    """Until when each place is closed by what is done already; ``evening`` is when work ends on a day."""
    found: dict[str, datetime] = {}
    for id, task in job.tasks.items():
        for closing in book.procedures[task.procedure].item.closes if task.done else []:
            if closing.shuts_out == "everybody" and task.done:
                until = evening(task.done) + timedelta(hours=left_when_done(book, job, id, closing))
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
