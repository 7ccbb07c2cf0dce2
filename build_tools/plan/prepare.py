"""Makes of a job the problem that is solved: activities of work, teams, places, waits and visits on one axis of time.

A task is cut into its trips, where an inspector from outside must look, and at the length of a day; its activities keep
one team. What lies before the day of planning is not planned: done tasks leave only what they still close.
"""

from __future__ import annotations

from datetime import date, datetime, time, timedelta

from build_tools.book import quantities
from build_tools.book.book import Book, Entry
from build_tools.book.checks.context import Context
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Closes
from build_tools.plan.axis import OpenTask, axis_of, week_of
from build_tools.plan.crew import EligibleCrew, eligible_crew, hands_of
from build_tools.plan.horizon import MOST, NO_TEAM
from build_tools.plan.lag_tables import LagTables
from build_tools.plan.lead_times import delivery_day
from build_tools.plan.needs import TakeOff
from build_tools.plan.notice import notice_of
from build_tools.plan.precedence import TaskPrecedence, closed_places, precedences
from build_tools.plan.prepared import InspectionVisit, Prepared
from build_tools.plan.problem import Activity, Infeasible, Occupancy, Precedence, Problem, Team
from build_tools.plan.segments import Segment, segments_of
from build_tools.plan.start_windows import VISIT, day_chunks, not_cut_short, office_visits, within_a_day
from build_tools.plan.still_closed import still_closed
from build_tools.plan.take_off import take_off
from build_tools.plan.trips import last_of, left_when_done, trips_of
from build_tools.plan.worktime import SLOTS_PER_HOUR, WEEK, is_working_day
from calculators.reading import read


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
        self.trips = {id: trips_of(self.book, self.job, id, self.take_offs[id].hours) for id in self.job.tasks}
        self.open = {
            id: OpenTask(
                self.trips[id],
                segments_of(self.book, self.job, id, self.trips[id]),
                eligible_crew(self.book, self.hands, task),
            )
            for id, task in self.job.tasks.items()
            if task.done is None
        }
        self.slots_per_day = max(1, round(read(self.job.hours, "time", "h") * SLOTS_PER_HOUR))
        hour, minute = (int(part) for part in self.job.begins.split(":"))
        self.begins = time(hour, minute)
        self.closed = still_closed(self.book, self.job, self._evening)
        self.worktime = axis_of(
            self.book,
            self.job,
            self.open,
            self.precedences,
            self.hands,
            today,
            max((until.date() for until in self.closed.values()), default=None),
            self.begins,
            self.slots_per_day,
        )
        self.problem = Problem(self.worktime.slots, slots_per_day=self.worktime.slots_per_day)
        self.lags = LagTables(self.worktime, self.problem.lags)
        self.made = Prepared(entry, self.worktime, self.problem, self.take_offs, self.precedences)
        self.made.trips, self.made.hands, self.made.today = self.trips, self.hands, today

    def prepare(self) -> Prepared:
        self._people()
        self._places()
        for id in self.open:
            self._task(id)
        for link in self.precedences:
            self._link(link)
        for place, until in self.closed.items():
            self._close(place, self.worktime.slot_at(until))
        return self.made

    def _people(self) -> None:
        for hand in self.hands:
            off = [day for day in self.worktime.days if WEEK[day.weekday()] not in hand.days or day in hand.off]
            self.problem.people[hand.person] = self.worktime.blocked(off)

    def _places(self) -> None:
        for name, space in self.job.spaces.items():
            self.problem.places[name] = space.crews
        for name in self.job.dwellings:
            self.problem.places.setdefault(name, 1)

    def _task(self, id: str) -> None:
        """The activities of a task, its team, its occupancies of its space, and what it closes."""
        task = self.job.tasks[id]
        found = self.open[id].crew
        self.problem.teams[id] = Team(found.size, found.eligible, found.leads)
        earliest = 0
        if task.started is None:
            earliest = self.worktime.first_of(
                max(task.not_before or self.today, delivery_day(self.book, self.job, task, self.today))
            )
        self.made.activities[id] = []
        self.made.closings[id] = self.book.procedures[task.procedure].item.closes
        occupancies: list[list[str]] = []
        held = True
        for number, segment in enumerate(self.open[id].segments):
            trip = self.trips[id][segment.trip]
            names = []
            for slots in day_chunks(segment.slots, self.slots_per_day):
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
        return self._was_over(id, number) + timedelta(hours=quantities.hours(self.book, closing.time))

    def _first_start(self, id: str) -> int:
        """The slot in which a started task goes on; its own crew is not kept out."""
        return next((self.problem.activities[name].start or 0 for name in self.made.activities[id][:1]), 0)

    def _add_activity(self, id: str, found: EligibleCrew, segment: Segment, slots: int, earliest: int) -> str:
        """The next activity of a task; its name."""
        name = f"{id} {len(self.made.activities[id]) + 1}"
        before = self.made.activities[id][-1:]
        activity = Activity(name, slots, [Precedence(before[0])] if before else [], team=id, earliest=earliest)
        within = self.trips[id][segment.trip].in_one_day
        activity.allowed = within_a_day(self.worktime, slots) if within else not_cut_short(self.worktime, slots)
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
                Precedence(since[0], self.lags.from_start(trip.wait, slots))
            )
        else:
            self.problem.activities[name].predecessors.append(Precedence(since[-1], self.lags.of(trip.wait)))

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
        week, day = week_of(self.job, self.hands), started
        while days and day < latest:
            day += timedelta(days=1)
            days -= is_working_day(day, week, self.job.holidays)
        return self._evening(min(day, latest))

    def _visit(self, id: str, inspection: str, step: str, number: int) -> None:
        item = self.book.inspections[inspection].item
        notice = notice_of(self.book, self.job, inspection)
        before = self.made.activities[id][-1:]
        name = f"{id} visit {number + 1}"
        ready = item.called == "when ready"
        activity = Activity(name, VISIT)
        if before:
            activity.predecessors.append(
                Precedence(before[0], self.lags.notice(notice, self.job.holidays) if ready else "")
            )
        if not ready or not before:
            start = datetime.combine(self.worktime.days[0], self.worktime.begins)
            activity.earliest = self.worktime.slot_at(notice.over(start, self.job.holidays))
        activity.allowed = office_visits(self.worktime, self.job.holidays)
        self.problem.activities[name] = activity
        # Nobody looks over a wet floor.
        self.problem.occupancies.append(Occupancy(self.job.tasks[id].space, name, name))
        self.made.activities[id].append(name)
        self.made.visits.append(
            InspectionVisit(name, id, step, inspection, notice.text, notice.weekdays, notice.hours, ready)
        )

    def _occupy(self, id: str, names: list[str]) -> None:
        """The space of activities that follow each other without a break, and what they close to everybody."""
        task = self.job.tasks[id]
        first, last = names[0], names[-1]
        own = [name for name in names if self.made.trip_of[name] == self.made.trip_of[first]]
        since = own[-1] if own[-1] != last else ""
        waits: dict[str, str] = {}
        for closing in self.made.closings[id]:
            if closing.shuts_out == "everybody" and last == self._closes_after(id, closing):
                wait = self.lags.of(quantities.hours(self.book, closing.time))
                for place in closed_places(self.job, task.space, closing.where):
                    if place not in waits or self.lags.longer(wait, waits[place]):
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
                Precedence(id, self.lags.of(quantities.hours(self.book, closing.time)))
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
