"""A first plan of a problem: one stretch of work after another, each as early as its people and places are free.

It is nobody's plan. The solver starts from it, and needs no time on the axis beyond its end: a better plan ends sooner.
Several orders are tried, and the one that ends first is taken.
"""

from __future__ import annotations

from collections import ChainMap, defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from heapq import heapify, heappop, heappush
from itertools import combinations
from random import Random

from build_tools.plan.problem import Occupancy, Precedence, Problem, Team

Reservations = list[tuple[int, int, int]]
"""Spans of slots with how much of a place or a resource each takes."""
Schedule = tuple[dict[str, int], dict[str, tuple[str, ...]]]
MOST_TEAMS = 40
"""Of so many teams that a task may have, the best is looked for."""
ORDERS, STRAY = 40, 0.5
"""How many orders are tried, and how far each strays from the work that lies behind."""


def initial_schedule(
    problem: Problem, last: Schedule | None = None, enough: int = 0, orders: int = ORDERS
) -> Schedule | None:
    """When each activity starts and who is on each team; None where this way finds no room before the horizon.

    ``last`` is the plan of some activities that is kept: the others have to be done before. No more orders are tried
    once one ends by the slot ``enough``.
    """
    chance = Random(1)
    best: Schedule | None = None
    for stray in [0.0] + [STRAY] * orders:
        made = _ScheduleGenerator(problem, chance, stray).place(last)
        if made and (best is None or end_of(problem, made[0]) < end_of(problem, best[0])):
            best = made
            if end_of(problem, made[0]) <= enough:
                break
    return best


def end_of(problem: Problem, starts: dict[str, int]) -> int:
    """The slot with which the last activity ends."""
    return max((starts[id] + activity.duration for id, activity in problem.activities.items()), default=0)


@dataclass(slots=True)
class _ScheduleGenerator:
    problem: Problem
    chance: Random
    stray: float
    starts: dict[str, int] = field(default_factory=dict)
    teams: dict[str, tuple[str, ...]] = field(default_factory=dict)
    busy: dict[str, list[tuple[int, int]]] = field(default_factory=dict)
    held: dict[str, Reservations] = field(default_factory=lambda: defaultdict(list))
    closers: dict[tuple[str, str], Reservations] = field(default_factory=lambda: defaultdict(list))
    used: dict[str, Reservations] = field(default_factory=lambda: defaultdict(list))
    occupancies: dict[str, list[Occupancy]] = field(default_factory=lambda: defaultdict(list))

    def place(self, last: Schedule | None = None) -> Schedule | None:
        problem = self.problem
        self.busy = {person: list(away) for person, away in problem.people.items()}
        for place, until in problem.closed_until.items():
            self.held[place].append((0, until, problem.places[place]))
        for occupancy in problem.occupancies:
            self.occupancies[occupancy.first].append(occupancy)
        units = list(self._in_order(self._units()))
        kept, teams = last or ({}, {})
        for unit in units:
            if kept.keys() >= set(unit):
                self._put(unit, [kept[name] for name in unit], teams.get(problem.activities[unit[0]].team, ()))
        for unit in units:
            if unit[0] not in self.starts and not self._place(unit):
                return None
        return (self.starts, self.teams) if not last or self._in_time() else None

    def _in_time(self) -> bool:
        """Whether everything is done before what comes after it."""
        return all(
            self._after(link, self.starts) <= self.starts[activity.id]
            for activity in self.problem.activities.values()
            for link in activity.predecessors
            if activity.start is None and link.predecessor in self.starts
        )

    def _after(self, link: Precedence, starts: Mapping[str, int]) -> int:
        """The first slot in which the later activity of a link may start."""
        return self.problem.ready(
            starts[link.predecessor] + self.problem.activities[link.predecessor].duration, link.lag
        )

    def _units(self) -> list[list[str]]:
        """Activities that fill a place without a break are placed together, every other one by itself."""
        names = list(self.problem.activities)
        at = {name: index for index, name in enumerate(names)}
        units, inside = [], set()
        for occupancy in self.problem.occupancies:
            if not occupancy.worked_in and occupancy.first not in inside:
                team = self.problem.activities[occupancy.first].team
                between = names[at[occupancy.first] : at[occupancy.last] + 1]
                units.append([name for name in between if self.problem.activities[name].team == team])
                inside |= set(units[-1])
        return units + [[name] for name in names if name not in inside]

    def _in_order(self, units: list[list[str]]) -> Iterator[list[str]]:
        """What comes before first, and of those that may come next the one with the most work behind it."""
        unit_of = {name: number for number, unit in enumerate(units) for name in unit}
        before: list[set[int]] = [
            {
                unit_of[link.predecessor]
                for name in unit
                for link in self.problem.activities[name].predecessors
                if link.predecessor in unit_of
            }
            - {number}
            for number, unit in enumerate(units)
        ]
        behind: dict[int, set[int]] = defaultdict(set)
        for number, those in enumerate(before):
            for other in those:
                behind[other].add(number)
        weight: dict[int, int] = {}

        def work_from(number: int) -> int:
            if number not in weight:
                own = sum(self.problem.activities[name].duration for name in units[number])
                weight[number] = own + max((work_from(later) for later in behind[number]), default=0)
            return weight[number]

        def rank(number: int) -> tuple[bool, float, int]:
            begun = any(self.problem.activities[name].start is not None for name in units[number])
            return not begun, -work_from(number) * self.chance.uniform(1 - self.stray, 1 + self.stray), number

        ready = [rank(number) for number, those in enumerate(before) if not those]
        heapify(ready)
        while ready:
            number = heappop(ready)[2]
            yield units[number]
            for later in behind[number]:
                before[later].discard(number)
                if not before[later]:
                    heappush(ready, rank(later))

    def _place(self, unit: list[str]) -> bool:
        first = self.problem.activities[unit[0]]
        team = self.problem.teams.get(first.team)
        team_choices = (
            [self.teams.get(first.team)] if not team or first.team in self.teams else list(_team_choices(team))
        )
        found = [made for team_choice in team_choices if (made := self._earliest(unit, team_choice or ())) is not None]
        if not found:
            return False
        self._put(unit, *min(found, key=lambda made: (made[0][-1], made[0][0])))
        return True

    def _put(self, unit: list[str], starts: list[int], team_choice: tuple[str, ...]) -> None:
        """Note when the activities start, and what they take."""
        team = self.problem.activities[unit[0]].team
        for name, start in zip(unit, starts, strict=True):
            activity = self.problem.activities[name]
            self.starts[name] = start
            for person in team_choice if activity.duration else ():
                self.busy[person].append((start, start + activity.duration))
            for resource, amount in activity.demands.items():
                self.used[resource].append((start, start + activity.duration, amount))
        if team in self.problem.teams:
            self.teams[team] = team_choice
        for occupancy, span in self._spans(unit, starts):
            (
                self.closers[occupancy.place, occupancy.worked_in]
                if occupancy.worked_in
                else self.held[occupancy.place]
            ).append(span)

    def _earliest(self, unit: list[str], team_choice: tuple[str, ...]) -> tuple[list[int], tuple[str, ...]] | None:
        """The earliest starts of the activities with these people."""
        at = 0
        while (starts := self._line_up(unit, team_choice, at)) is not None:
            later = [self._clash(occupancy, span) for occupancy, span in self._spans(unit, starts)]
            worst = max((slot for slot in later if slot is not None), default=None)
            if worst is None:
                return starts, team_choice
            if self.problem.activities[unit[0]].start is not None:
                return None
            at = max(worst, starts[0] + 1)
        return None

    def _line_up(self, unit: list[str], team_choice: tuple[str, ...], at: int) -> list[int] | None:
        """The activities one after another from that slot on, each when its people and resources are free."""
        starts: list[int] = []
        known = ChainMap({}, self.starts)
        for name in unit:
            activity = self.problem.activities[name]
            for link in activity.predecessors if activity.start is None else ():
                if link.predecessor in known:
                    at = max(at, self._after(link, known))
            wanted = max(at, activity.earliest) if activity.start is None else activity.start
            free = self._free(name, team_choice, wanted)
            if free is None or (activity.start is not None and free != activity.start):
                return None
            starts.append(free)
            known[name] = free
            at = free + activity.duration
        return starts

    def _free(self, name: str, team_choice: tuple[str, ...], at: int) -> int | None:
        """The first slot from there in which an activity may start."""
        activity = self.problem.activities[name]
        while at + activity.duration <= self.problem.horizon:
            later = [b for person in team_choice for a, b in self.busy[person] if a < at + activity.duration and at < b]
            for resource, amount in activity.demands.items():
                span = (at, at + activity.duration, amount)
                later += [slot for slot in [_over(self.used[resource], span, self.problem.resources[resource])] if slot]
            following = activity.next_start(at)
            if following is None:
                return None
            if following > at:
                later.append(following)
            if not later:
                return at
            at = max(later)
        return None

    def _spans(self, unit: list[str], starts: list[int]) -> Iterator[tuple[Occupancy, tuple[int, int, int]]]:
        """What the occupancies that begin with this unit take of their places."""
        for occupancy in self.occupancies[unit[0]]:
            end = starts[-1] + self.problem.activities[unit[-1]].duration
            until = self.problem.ready(end, occupancy.closure_lag)
            yield occupancy, (starts[0], until, self.problem.places[occupancy.place] if occupancy.closure_lag else 1)

    def _clash(self, occupancy: Occupancy, span: tuple[int, int, int]) -> int | None:
        """The slot at which the first of what is in the way has gone; None where there is room."""
        room, held = self.problem.places[occupancy.place], self.held[occupancy.place]
        if occupancy.worked_in:
            return _over(held + self.closers[occupancy.place, occupancy.worked_in], span, room)
        groups = [reservations for (place, _), reservations in self.closers.items() if place == occupancy.place] or [[]]
        return max(
            (slot for reservations in groups if (slot := _over(held + reservations, span, room)) is not None),
            default=None,
        )


def _team_choices(team: Team) -> Iterator[tuple[str, ...]]:
    """Teams that the work may have, those first whose people may lead least."""
    order = sorted(team.eligible, key=lambda person: person in team.leads)
    found = 0
    for team_choice in combinations(order, team.size):
        if found < MOST_TEAMS and (not team.leads or set(team_choice) & set(team.leads)):
            found += 1
            yield team_choice


def _over(reservations: Reservations, span: tuple[int, int, int], room: int) -> int | None:
    """When the first of what overlaps a span ends, where all of it together is too much; None where it is not."""
    start, end, amount = span
    meet = [one for one in reservations if one[0] < end and start < one[1]]
    points = {start, *(one[0] for one in meet if one[0] > start)}
    fullest = max(sum(weight for a, b, weight in meet if a <= at < b) for at in points)
    return min(one[1] for one in meet) if fullest + amount > room else None
