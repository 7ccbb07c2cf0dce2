"""Walks a plan quarter hour by quarter hour and names every rule that it breaks.

It reads the job and the book by itself: of the planner it uses the plan as it comes out, the classes of its data, and
the hours that a calculator gives.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from math import ceil

from build_tools.book.model.job import Hand, Task
from build_tools.book.model.procedure import Closes, Procedure, Trip
from build_tools.book.references import figure_of
from build_tools.plan.plan import Plan, Stretch
from calculators.reading import read, read_number_with_unit

QUARTER = timedelta(minutes=15)
DAY = timedelta(days=1)
NAMES = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
MAY_LEAD = {"helper": "owner lead helper friend", "lead": "owner lead friend", "licensed person": "friend"}


def broken_rules(plan: Plan, today: date) -> list[str]:
    """Every rule of the job that the plan breaks, in words; ``today`` is the day from which it was planned."""
    walker = _Walker(plan, today)
    return list(dict.fromkeys(walker.all()))


@dataclass(slots=True)
class _Occupancy:
    """A crew in a space from its first quarter to its last. ``shuts``: the places that are its alone, until when.

    ``since``: from when on they are shown as closed, when its first trip is over.
    """

    task: str
    space: str
    starts: datetime
    ends: datetime
    since: datetime
    shuts: dict[str, datetime] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Trip:
    """The crew comes: its quarter hours from ``begins`` to ``ends``, counted from the start of the task."""

    name: str
    begins: int
    ends: int
    line: Trip | None = None
    nth: int = 1


class _Walker:
    def __init__(self, plan: Plan, today: date) -> None:
        self.plan, self.job, self.today = plan, plan.job, today
        self.book = plan.context.book
        hour, minute = map(int, self.job.begins.split(":"))
        self.begins = timedelta(hours=hour, minutes=minute)
        self.day_long = timedelta(hours=read(self.job.hours, "time", "h"))
        self.hands = {hand.person: hand for hand in self.job.people}
        self.work = {id: [s for s in plan.of_task(id) if not s.visit] for id in self.job.tasks}

    def all(self) -> Iterator[str]:
        yield from self.times()
        for id, task in self.job.tasks.items():
            if task.done:
                if self.plan.of_task(id):
                    yield f"{id} is done and planned again"
                continue
            yield from self.hours(id, task)
            yield from self.trips_kept(id, task)
            yield from self.no_crumbs(id)
            yield from self.team(id, task)
            yield from self.earliest(id, task)
            yield from self.holds(id, task)
            yield from self.order(id, task)
        yield from self.walk()
        yield from self.said()

    # what the book and the job say

    def procedure(self, id: str) -> Procedure:
        return self.book.procedures[self.job.tasks[id].procedure].item

    def figure(self, text: str) -> str:
        return figure_of(text, self.book) or ""

    def clock(self, text: str) -> timedelta:
        return timedelta(hours=read(self.figure(text), "time", "h"))

    def dwelling(self, place: str) -> str:
        return (self.job.spaces[place].dwelling or "") if place in self.job.spaces else place

    def works(self, hand: Hand, day: date) -> bool:
        days = hand.days if "days" in hand.model_fields_set else self.job.days
        return NAMES[day.weekday()] in days and day not in hand.off and day not in self.job.holidays

    def is_working_day(self, day: date) -> bool:
        week = {*self.job.days}
        for hand in self.job.people:
            week |= {*(hand.days if "days" in hand.model_fields_set else self.job.days)}
        return NAMES[day.weekday()] in week and day not in self.job.holidays

    def is_office_day(self, day: date) -> bool:
        return day.weekday() < 5 and day not in self.job.holidays

    def weekdays_after(self, moment: datetime, count: int) -> datetime:
        while count:
            moment += DAY
            count -= self.is_office_day(moment.date())
        return moment

    def first_day(self) -> date:
        day = max(self.today, self.job.start)
        while not self.is_working_day(day):
            day += DAY
        return day

    def morning(self, day: date) -> datetime:
        return datetime.combine(day, time()) + self.begins

    def quarters(self, stretch: Stretch) -> Iterator[datetime]:
        """The working quarter hours of a stretch."""
        day = stretch.starts.date()
        while self.morning(day) < stretch.ends:
            if self.is_working_day(day):
                moment = self.morning(day)
                while moment < self.morning(day) + self.day_long:
                    if stretch.starts <= moment < stretch.ends:
                        yield moment
                    moment += QUARTER
            day += DAY

    def labour(self, id: str, *, whole: bool = False) -> int:
        """The quarter hours that a task takes with its people."""
        task, labour = self.job.tasks[id], self.procedure(id).labour
        if task.left and not whole:
            return self.quarters_of(read(task.left, "time", "h") / (task.people or labour.people))
        return self.trips(id)[-1].ends

    @staticmethod
    def quarters_of(hours: float) -> int:
        return max(1, ceil(hours * 4 - 1e-6))

    def trips(self, id: str) -> list[_Trip]:
        """How often the crew comes for a task; once where its book says nothing of it."""
        task, labour = self.job.tasks[id], self.procedure(id).labour
        if task.hours:
            hours = read(task.hours, "time", "h")
        elif isinstance(labour.hours, str) and labour.per == "1 each":
            hours = read(self.figure(labour.hours), "time", "h") * task.count
        elif isinstance(labour.hours, str) and task.quantity and "space:" not in task.quantity:
            share = read_number_with_unit(task.quantity)[0] / read_number_with_unit(self.figure(labour.per))[0]
            hours = read(self.figure(labour.hours), "time", "h") * share * task.count
        else:
            hours = self.plan.prepared.take_offs[id].hours
        hours /= task.people or labour.people
        if not labour.trips:
            return [_Trip("", 0, self.quarters_of(hours))]
        made: list[_Trip] = []
        for name, line in labour.trips.items():
            times = int(self.figure(line.times))
            for nth in range(1, times + 1):
                begins = made[-1].ends if made else 0
                slots = self.quarters_of(hours * float(self.figure(line.part).split()[0]) / 100 / times)
                made.append(_Trip(name, begins, begins + slots, line, nth))
        return made

    def done_before(self, id: str) -> int:
        """The quarter hours of a started task that lie before the day of planning."""
        return max(0, self.labour(id, whole=True) - self.labour(id))

    def by_trip(self, id: str) -> dict[int, list[Stretch]]:
        """The stretches of work by the number of the trip in which they begin."""
        found: dict[int, list[Stretch]] = defaultdict(list)
        trips, at = self.trips(id), self.done_before(id)
        for stretch in self.work[id]:
            number = sum(trip.ends <= at for trip in trips)
            found[min(number, len(trips) - 1)].append(stretch)
            at += len(list(self.quarters(stretch)))
        return found

    def since(self, trips: list[_Trip], number: int) -> int:
        """The number of the trip from which the wait of that one counts."""
        line = trips[number].line
        if line and line.since and trips[number].nth == 1:
            return max(n for n, trip in enumerate(trips) if trip.name == line.since)
        return number - 1

    def counts_from(self, id: str, closing: Closes) -> int:
        """The number of the trip from whose end a closing counts."""
        trips = self.trips(id)
        return max(n for n, trip in enumerate(trips) if closing.after in (None, trip.name))

    def waited(self, id: str, number: int) -> timedelta:
        """The least time from the end of that trip to the end of the last."""
        trips = self.trips(id)
        known = {number: timedelta()}
        for later in range(number + 1, len(trips)):
            line, since = trips[later].line, self.since(trips, later)
            known[later] = known[later - 1]
            if line and line.wait and line.counted_from == "end" and since in known:
                known[later] = max(known[later], known[since] + self.clock(line.wait))
        return known[len(trips) - 1]

    # rules of one task

    def times(self) -> Iterator[str]:
        for stretch in self.plan.stretches:
            inside = list(self.quarters(stretch))
            if not inside or inside[0] != stretch.starts or inside[-1] + QUARTER != stretch.ends:
                yield f"{stretch.activity} does not begin and end in working time"
            if stretch.starts < self.morning(self.first_day()):
                yield f"{stretch.activity} lies before the day of planning"
        if self.plan.stretches and self.plan.end != max(stretch.ends for stretch in self.plan.stretches):
            yield "the end is not that of the last stretch"

    def hours(self, id: str, task: Task) -> Iterator[str]:
        spent = sum(len(list(self.quarters(stretch))) for stretch in self.work[id])
        if spent != self.labour(id):
            yield f"{id} has {spent} quarter hours and takes {self.labour(id)}"

    def trips_kept(self, id: str, task: Task) -> Iterator[str]:
        """Each trip comes when its wait is over, and what is done in one go is not left overnight."""
        trips, mine = self.trips(id), self.by_trip(id)
        at = self.done_before(id)
        for number, stretches in mine.items():
            for stretch in stretches:
                at += len(list(self.quarters(stretch)))
                if stretch.trip != number or (at > trips[number].ends and number < len(trips) - 1):
                    yield f"{stretch.activity} goes on into another trip"
            line = trips[number].line
            one_day = line.in_one_day if line else self.procedure(id).labour.in_one_day
            days = {moment.date() for stretch in stretches for moment in self.quarters(stretch)}
            fits = trips[number].ends - trips[number].begins <= self.day_long / QUARTER
            if one_day and fits and len(days) > 1 and not self.looked_at(id):
                yield f"{id} is left overnight in trip {number + 1}"
            begun = self.done_before(id) > trips[number].begins
            if number and not begun and line and line.wait:
                since = self.since(trips, number)
                if since in mine:
                    one = mine[since]
                    over = one[0].starts if line.counted_from == "start" else one[-1].ends
                else:
                    over = self.over(id, task, since)
                if stretches[0].starts < over + self.clock(line.wait):
                    yield f"{id} does not wait before trip {number + 1}"

    def no_crumbs(self, id: str) -> Iterator[str]:
        """Nobody comes in the morning for the last quarter hour of a work, or begins one in the last of a day."""
        least = min(2, self.day_long // QUARTER // 2)
        for stretches in self.by_trip(id).values():
            for stretch in stretches:
                days: dict[date, int] = defaultdict(int)
                for moment in self.quarters(stretch):
                    days[moment.date()] += 1
                if len(days) > 1 and min(days.values()) < least:
                    yield f"{stretch.activity} is cut overnight with a crumb"

    def looked_at(self, id: str) -> bool:
        """Whether somebody from outside cuts the work of a task into parts."""
        return any(stretch.visit for stretch in self.plan.of_task(id))

    def over(self, id: str, task: Task, number: int) -> datetime:
        """When a trip that lies before the planning was over at the latest: see the words of the design."""
        started = task.started or self.today
        latest = max(started, self.today - DAY)
        trip, day = self.trips(id)[number], started
        days = (trip.ends - 1) // int(self.day_long / QUARTER)
        while days and day < latest:
            day += DAY
            days -= self.is_working_day(day)
        return self.morning(latest if number else min(day, latest)) + self.day_long

    def team(self, id: str, task: Task) -> Iterator[str]:
        procedure = self.procedure(id)
        teams = {stretch.people for stretch in self.work[id]}
        if len(teams) > 1:
            yield f"{id} has more than one team"
        for people in teams:
            if len(set(people)) != (task.people or procedure.labour.people):
                yield f"{id} has {len(set(people))} people"
            leads = 0
            for name in people:
                person = self.book.people[name].item
                trained = task.procedure in person.trained_in or task.procedure in self.hands[name].skills
                leads += trained and person.role in MAY_LEAD[procedure.who].split()
                if person.role == "friend" and not trained:
                    yield f"{name} is no friend for {id}"
                if task.who and name not in task.who:
                    yield f"{name} was not asked for {id}"
            if not leads:
                yield f"nobody may lead {id}"

    def earliest(self, id: str, task: Task) -> Iterator[str]:
        starts = self.plan.starts(id)
        if task.started:
            day = self.first_day()
            while not self.enough(id, task, day):
                day += DAY
            first = self.plan.of_task(id)[0]
            waits = any(trip.begins == self.done_before(id) > 0 for trip in self.trips(id))
            if not first.visit and not waits and first.starts != self.morning(day):
                yield f"{id} is started and does not go on at once"
            return
        if task.not_before and starts.date() < task.not_before:
            yield f"{id} starts before {task.not_before}"
        used = {line.material for line in self.procedure(id).materials}
        used |= {line.tool for line in self.procedure(id).tools}
        for price in self.job.prices:
            if price.lead_time and used & {price.material, price.tool}:
                days = ceil(self.clock(price.lead_time) / DAY)
                ordered = datetime.combine(max(self.today, self.job.start), time())
                if starts < self.weekdays_after(ordered, days):
                    yield f"{id} starts before its material is there"

    def enough(self, id: str, task: Task, day: date) -> bool:
        procedure = self.procedure(id)
        may = leads = 0
        for name, hand in self.hands.items():
            person = self.book.people[name].item
            trained = task.procedure in person.trained_in or task.procedure in hand.skills
            if self.works(hand, day) and (not task.who or name in task.who):
                may += person.role != "friend" or trained
                leads += trained and person.role in MAY_LEAD[procedure.who].split()
        return leads > 0 and max(may, leads) >= (task.people or procedure.labour.people)

    def holds(self, id: str, task: Task) -> Iterator[str]:
        """Each look from outside is there, at its share of the work, with its notice, before the rest."""
        procedure = self.procedure(id)
        steps = [(n, s.hold.inspection) for n, s in enumerate(procedure.steps, 1) if s.hold]
        outside = [(n, each) for n, each in steps if self.book.inspections[each].item.by == "outside"]
        whole, left = max(self.labour(id), self.labour(id, whole=True)), self.labour(id)
        shares = [(max(1, round(whole * n / len(procedure.steps))) - (whole - left), each) for n, each in outside]
        wanted = [(share, each) for share, each in shares if share >= 0]
        stretches = self.plan.of_task(id)
        if [stretch.visit for stretch in stretches if stretch.visit] != [each for _, each in wanted]:
            yield f"{id} has other visits than its book"
            return
        spent, last, number = 0, self.morning(self.first_day()), 0
        for before, stretch in zip([None, *stretches], stretches, strict=False):
            if before and stretch.starts < before.ends:
                yield f"{stretch.activity} starts before {before.activity} is over"
            if not stretch.visit:
                spent += len(list(self.quarters(stretch)))
                last = stretch.ends
                continue
            if spent != wanted[number][0]:
                yield f"{stretch.activity} is at another share of the work"
            number += 1
            yield from self.visit(stretch, before, last)

    def visit(self, stretch: Stretch, before: Stretch | None, last: datetime) -> Iterator[str]:
        inspection = self.book.inspections[stretch.visit].item
        notice = self.figure(
            next((v.notice for v in self.job.visits if v.inspection == stretch.visit), inspection.notice)
        )
        ready = before.ends if before else last
        called = ready if inspection.called == "when ready" else self.morning(self.first_day())
        wait = self.clock(notice)
        comes = self.weekdays_after(called, wait // DAY) if "day" in notice else called + wait
        if stretch.starts < comes:
            yield f"{stretch.activity} comes before its notice is over"
        if not self.is_office_day(stretch.starts.date()) or stretch.ends - stretch.starts != 2 * QUARTER:
            yield f"{stretch.activity} is not on a weekday"

    def order(self, id: str, task: Task) -> Iterator[str]:
        if task.started:
            return
        starts = self.plan.starts(id)
        for other, first in self.job.tasks.items():
            said = any(
                line.procedure == first.procedure and self.reaches(line.where, task.space, first.space)
                for line in self.procedure(id).before
            )
            if other == id or not (said or other in task.after):
                continue
            if not first.done and starts < self.plan.ends(other):
                yield f"{id} starts before {other} is over"
            for closing in self.procedure(other).closes if said else []:
                number = self.counts_from(other, closing)
                mine = self.by_trip(other).get(number)
                worked = mine[-1].ends if mine else datetime.min
                if not mine and first.started:
                    worked = self.over(other, first, number)
                if first.done:
                    worked = self.morning(first.done) + self.day_long - self.waited(other, number)
                    worked = max(worked, self.morning(first.done) + self.day_long - self.clock(closing.time))
                if closing.shuts_out == "next work" and starts < worked + self.clock(closing.time):
                    yield f"{id} does not wait for {other}"

    def reaches(self, where: str, here: str, there: str) -> bool:
        if where == "same dwelling":
            one, other = self.dwelling(here), self.dwelling(there)
            return one == other or "" in (one, other)
        return where == "whole job" or here == there

    # rules between tasks

    def closed_by(self, id: str, trip: int | None = None) -> dict[str, timedelta]:
        """The places that a task closes to everybody after that trip, and for how long; none, when all is done."""
        found: dict[str, timedelta] = {}
        places = [*self.job.spaces, *self.job.dwellings]
        for closing in self.procedure(id).closes:
            number = self.counts_from(id, closing)
            if closing.shuts_out != "everybody" or trip not in (None, number):
                continue
            wait = self.clock(closing.time)
            if trip is None:
                wait = max(timedelta(), wait - self.waited(id, number))
            for place in places:
                if self.lies_in(place, self.job.tasks[id].space, closing.where, set()):
                    found[place] = max(found.get(place, timedelta()), wait)
        return found

    def lies_in(self, place: str, closed: str, where: str, seen: set[str]) -> bool:
        if where == "whole job" or place == closed:
            return True
        whole_dwelling = where == "same dwelling" or closed not in self.job.spaces
        if whole_dwelling and self.dwelling(place) == self.dwelling(closed):
            return True
        ways = self.job.spaces[place].reached_through if place in self.job.spaces else []
        return any(way not in seen and self.lies_in(way, closed, where, seen | {place}) for way in ways)

    def occupancies(self) -> list[_Occupancy]:
        found = []
        for id, task in self.job.tasks.items():
            if task.done:
                until = self.morning(task.done) + self.day_long
                shuts = {place: until + wait for place, wait in self.closed_by(id).items()}
                found.append(_Occupancy(id, task.space, until, until, until, shuts))
                continue
            number_of = {one.activity: number for number, those in self.by_trip(id).items() for one in those}
            trips = self.trips(id)
            for closing in self.procedure(id).closes if task.started else []:
                number = self.counts_from(id, closing)
                if trips[number].ends <= self.done_before(id):
                    until = min(self.over(id, task, number) + self.clock(closing.time), self.plan.starts(id))
                    shuts = dict.fromkeys(self.closed_by(id, number), until)
                    found.append(_Occupancy(id, task.space, datetime.min, datetime.min, datetime.min, shuts))
            groups: list[list[Stretch]] = [[]]
            for stretch in self.plan.of_task(id):
                if stretch.visit:
                    groups.append([])
                    continue
                last = groups[-1][-1] if groups[-1] else None
                if last and number_of[last.activity] != (number := number_of[stretch.activity]):
                    line = trips[number].line
                    if not (line and line.shut):
                        groups.append([])
                groups[-1].append(stretch)
            for group in filter(None, groups):
                first = number_of[group[0].activity]
                since = max(one.ends for one in group if number_of[one.activity] == first)
                occupancy = _Occupancy(id, task.space, group[0].starts, group[-1].ends, since)
                last_trip = number_of[group[-1].activity]
                if group[-1] is self.by_trip(id)[last_trip][-1]:
                    closed = self.closed_by(id, last_trip)
                    occupancy.shuts = {place: occupancy.ends + wait for place, wait in closed.items()}
                line = trips[first].line
                goes_on = trips[first].begins == self.done_before(id) and group[0] is self.plan.of_task(id)[0]
                if line and line.shut and task.started and goes_on:
                    occupancy.starts = self.morning(self.first_day())
                found.append(occupancy)
        return found

    def walk(self) -> Iterator[str]:
        """Every working quarter hour: who is where, and what is closed."""
        occupancies = self.occupancies()
        working: dict[datetime, list[Stretch]] = defaultdict(list)
        for stretch in self.plan.stretches:
            for moment in self.quarters(stretch):
                working[moment].append(stretch)
        for moment, stretches in sorted(working.items()):
            people = [person for stretch in stretches for person in stretch.people]
            for person in {person for person in people if people.count(person) > 1}:
                yield f"{person} is in two places"
            for person in people:
                if not self.works(self.hands[person], moment.date()):
                    yield f"{person} works on a day off"
            here = [occupancy for occupancy in occupancies if occupancy.starts <= moment < occupancy.ends]
            for place in self.crowded(here):
                yield f"too many crews in {place}"
            for stretch in stretches:
                space = self.job.tasks[stretch.task].space
                for occupancy in occupancies:
                    own = occupancy.task == stretch.task and occupancy.starts <= moment < occupancy.ends
                    if not own and space in occupancy.shuts and occupancy.starts <= moment < occupancy.shuts[space]:
                        yield f"{stretch.task} is in {space} while {occupancy.task} closes it"

    def crowded(self, here: list[_Occupancy]) -> Iterator[str]:
        for place in {occupancy.space for occupancy in here}:
            room = self.job.spaces[place].crews if place in self.job.spaces else 1
            if sum(occupancy.space == place for occupancy in here) > room:
                yield place

    def said(self) -> Iterator[str]:
        """The closings that the plan shows are those that follow from it."""
        shown = sorted((closed.place, closed.task, closed.starts) for closed in self.plan.closed)
        wanted = sorted(
            (place, occupancy.task, occupancy.since)
            for occupancy in self.occupancies()
            if occupancy.starts < occupancy.ends
            for place in occupancy.shuts
        )
        if shown != wanted:
            yield "the closings that the plan shows are not those that follow from it"
