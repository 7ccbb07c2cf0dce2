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
from build_tools.book.model.procedure import Procedure
from build_tools.book.uses import figure_of
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
class _Stay:
    """A crew in a space from its first quarter to its last. ``shuts``: the places that are its alone, until when."""

    task: str
    space: str
    starts: datetime
    ends: datetime
    shuts: dict[str, datetime] = field(default_factory=dict)


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
        people = task.people or labour.people
        if task.left and not whole:
            hours = read(task.left, "time", "h")
        elif task.hours:
            hours = read(task.hours, "time", "h")
        elif isinstance(labour.hours, str) and labour.per == "1 each":
            hours = read(self.figure(labour.hours), "time", "h") * task.count
        elif isinstance(labour.hours, str) and task.quantity and "space:" not in task.quantity:
            share = read_number_with_unit(task.quantity)[0] / read_number_with_unit(self.figure(labour.per))[0]
            hours = read(self.figure(labour.hours), "time", "h") * share * task.count
        else:
            hours = self.plan.prepared.take_offs[id].hours
        return max(1, ceil(hours * 4 / people - 1e-6))

    # rules of one task

    def times(self) -> Iterator[str]:
        for stretch in self.plan.stretches:
            inside = list(self.quarters(stretch))
            if not inside or inside[0] != stretch.starts or inside[-1] + QUARTER != stretch.ends:
                yield f"{stretch.piece} does not begin and end in working time"
            if stretch.starts < self.morning(self.first_day()):
                yield f"{stretch.piece} lies before the day of planning"
        if self.plan.stretches and self.plan.end != max(stretch.ends for stretch in self.plan.stretches):
            yield "the end is not that of the last stretch"

    def hours(self, id: str, task: Task) -> Iterator[str]:
        spent = sum(len(list(self.quarters(stretch))) for stretch in self.work[id])
        if spent != self.labour(id):
            yield f"{id} has {spent} quarter hours and takes {self.labour(id)}"

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
            if not first.visit and first.starts != self.morning(day):
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
                yield f"{stretch.piece} starts before {before.piece} is over"
            if not stretch.visit:
                spent += len(list(self.quarters(stretch)))
                last = stretch.ends
                continue
            if spent != wanted[number][0]:
                yield f"{stretch.piece} is at another share of the work"
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
            yield f"{stretch.piece} comes before its notice is over"
        if not self.is_office_day(stretch.starts.date()) or stretch.ends - stretch.starts != 2 * QUARTER:
            yield f"{stretch.piece} is not on a weekday"

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
            worked = self.work[other][-1].ends if self.work[other] else datetime.min
            if first.done:
                worked = self.morning(first.done) + self.day_long
            for closing in self.procedure(other).closes if said else []:
                if closing.shuts_out == "next work" and starts < worked + self.clock(closing.time):
                    yield f"{id} does not wait for {other}"

    def reaches(self, where: str, here: str, there: str) -> bool:
        if where == "same dwelling":
            one, other = self.dwelling(here), self.dwelling(there)
            return one == other or "" in (one, other)
        return where == "whole job" or here == there

    # rules between tasks

    def closed_by(self, task: Task) -> dict[str, timedelta]:
        """The places that a task closes to everybody after it, and for how long."""
        found: dict[str, timedelta] = {}
        places = [*self.job.spaces, *self.job.dwellings]
        for closing in self.book.procedures[task.procedure].item.closes:
            if closing.shuts_out != "everybody":
                continue
            for place in places:
                if self.lies_in(place, task.space, closing.where, set()):
                    found[place] = max(found.get(place, timedelta()), self.clock(closing.time))
        return found

    def lies_in(self, place: str, closed: str, where: str, seen: set[str]) -> bool:
        if where == "whole job" or place == closed:
            return True
        whole_dwelling = where == "same dwelling" or closed not in self.job.spaces
        if whole_dwelling and self.dwelling(place) == self.dwelling(closed):
            return True
        ways = self.job.spaces[place].reached_through if place in self.job.spaces else []
        return any(way not in seen and self.lies_in(way, closed, where, seen | {place}) for way in ways)

    def stays(self) -> list[_Stay]:
        found = []
        for id, task in self.job.tasks.items():
            if task.done:
                until = self.morning(task.done) + self.day_long
                shuts = {place: until + wait for place, wait in self.closed_by(task).items()}
                found.append(_Stay(id, task.space, until, until, shuts))
                continue
            groups: list[list[Stretch]] = [[]]
            for stretch in self.plan.of_task(id):
                if stretch.visit:
                    groups.append([])
                else:
                    groups[-1].append(stretch)
            mine = [_Stay(id, task.space, group[0].starts, group[-1].ends) for group in groups if group]
            if mine:
                ends = mine[-1].ends
                mine[-1].shuts = {place: ends + wait for place, wait in self.closed_by(task).items()}
            found += mine
        return found

    def walk(self) -> Iterator[str]:
        """Every working quarter hour: who is where, and what is closed."""
        stays = self.stays()
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
            here = [stay for stay in stays if stay.starts <= moment < stay.ends]
            for place in self.crowded(here):
                yield f"too many crews in {place}"
            for stretch in stretches:
                space = self.job.tasks[stretch.task].space
                for stay in stays:
                    own = stay.task == stretch.task and stay.starts <= moment < stay.ends
                    if not own and space in stay.shuts and stay.starts <= moment < stay.shuts[space]:
                        yield f"{stretch.task} is in {space} while {stay.task} closes it"

    def crowded(self, here: list[_Stay]) -> Iterator[str]:
        for place in {stay.space for stay in here}:
            room = self.job.spaces[place].crews if place in self.job.spaces else 1
            if sum(stay.space == place for stay in here) > room:
                yield place

    def said(self) -> Iterator[str]:
        """The closings that the plan shows are those that follow from it."""
        shown = sorted((closed.place, closed.task, closed.starts) for closed in self.plan.closed)
        wanted = sorted(
            (place, stay.task, stay.ends)
            for stay in self.stays()
            if not self.job.tasks[stay.task].done
            for place in stay.shuts
        )
        if shown != wanted:
            yield "the closings that the plan shows are not those that follow from it"
