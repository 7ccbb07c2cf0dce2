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

from build_tools.plan.problem import After, Problem, Stay, Team

Taken = list[tuple[int, int, int]]
"""Spans of slots with how much of a place or a resource each takes."""
Found = tuple[dict[str, int], dict[str, tuple[str, ...]]]
MOST_TEAMS = 40
"""Of so many teams that a task may have, the best is looked for."""
ORDERS, STRAY = 40, 0.5
"""How many orders are tried, and how far each strays from the work that lies behind."""


def first_plan(problem: Problem, last: Found | None = None, enough: int = 0, orders: int = ORDERS) -> Found | None:
    """When each piece starts and who is on each team; None where this way finds no room before the horizon.

    ``last`` is the plan of some pieces that is kept: the others have to be done before. No more orders are tried once
    one ends by the slot ``enough``.
    """
    chance = Random(1)
    best: Found | None = None
    for stray in [0.0] + [STRAY] * orders:
        made = _Placer(problem, chance, stray).place(last)
        if made and (best is None or end_of(problem, made[0]) < end_of(problem, best[0])):
            best = made
            if end_of(problem, made[0]) <= enough:
                break
    return best


def end_of(problem: Problem, starts: dict[str, int]) -> int:
    """The slot with which the last piece ends."""
    return max((starts[id] + piece.slots for id, piece in problem.pieces.items()), default=0)


@dataclass(slots=True)
class _Placer:
    problem: Problem
    chance: Random
    stray: float
    starts: dict[str, int] = field(default_factory=dict)
    teams: dict[str, tuple[str, ...]] = field(default_factory=dict)
    busy: dict[str, list[tuple[int, int]]] = field(default_factory=dict)
    held: dict[str, Taken] = field(default_factory=lambda: defaultdict(list))
    closers: dict[tuple[str, str], Taken] = field(default_factory=lambda: defaultdict(list))
    used: dict[str, Taken] = field(default_factory=lambda: defaultdict(list))
    stays: dict[str, list[Stay]] = field(default_factory=lambda: defaultdict(list))

    def place(self, last: Found | None = None) -> Found | None:
        problem = self.problem
        self.busy = {person: list(away) for person, away in problem.people.items()}
        for place, until in problem.shut.items():
            self.held[place].append((0, until, problem.places[place]))
        for stay in problem.stays:
            self.stays[stay.first].append(stay)
        units = list(self._in_order(self._units()))
        kept, teams = last or ({}, {})
        for unit in units:
            if kept.keys() >= set(unit):
                self._put(unit, [kept[name] for name in unit], teams.get(problem.pieces[unit[0]].team, ()))
        for unit in units:
            if unit[0] not in self.starts and not self._place(unit):
                return None
        return (self.starts, self.teams) if not last or self._in_time() else None

    def _in_time(self) -> bool:
        """Whether everything is done before what comes after it."""
        return all(
            self._after(link, self.starts) <= self.starts[piece.id]
            for piece in self.problem.pieces.values()
            for link in piece.after
            if piece.start is None and link.other in self.starts
        )

    def _after(self, link: After, starts: Mapping[str, int]) -> int:
        """The first slot in which the later piece of a link may start."""
        return self.problem.ready(starts[link.other] + self.problem.pieces[link.other].slots, link.wait)

    def _units(self) -> list[list[str]]:
        """Pieces that fill a place without a break are placed together, every other one by itself."""
        names = list(self.problem.pieces)
        at = {name: index for index, name in enumerate(names)}
        units, inside = [], set()
        for stay in self.problem.stays:
            if not stay.worked_in and stay.first not in inside:
                team = self.problem.pieces[stay.first].team
                between = names[at[stay.first] : at[stay.last] + 1]
                units.append([name for name in between if self.problem.pieces[name].team == team])
                inside |= set(units[-1])
        return units + [[name] for name in names if name not in inside]

    def _in_order(self, units: list[list[str]]) -> Iterator[list[str]]:
        """What comes before first, and of those that may come next the one with the most work behind it."""
        unit_of = {name: number for number, unit in enumerate(units) for name in unit}
        before: list[set[int]] = [
            {unit_of[link.other] for name in unit for link in self.problem.pieces[name].after if link.other in unit_of}
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
                own = sum(self.problem.pieces[name].slots for name in units[number])
                weight[number] = own + max((work_from(later) for later in behind[number]), default=0)
            return weight[number]

        def rank(number: int) -> tuple[bool, float, int]:
            begun = any(self.problem.pieces[name].start is not None for name in units[number])
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
        first = self.problem.pieces[unit[0]]
        team = self.problem.teams.get(first.team)
        ways = [self.teams.get(first.team)] if not team or first.team in self.teams else list(_ways(team))
        found = [made for way in ways if (made := self._earliest(unit, way or ())) is not None]
        if not found:
            return False
        self._put(unit, *min(found, key=lambda made: (made[0][-1], made[0][0])))
        return True

    def _put(self, unit: list[str], starts: list[int], way: tuple[str, ...]) -> None:
        """Note when the pieces start, and what they take."""
        team = self.problem.pieces[unit[0]].team
        for name, start in zip(unit, starts, strict=True):
            piece = self.problem.pieces[name]
            self.starts[name] = start
            for person in way if piece.slots else ():
                self.busy[person].append((start, start + piece.slots))
            for resource, amount in piece.uses.items():
                self.used[resource].append((start, start + piece.slots, amount))
        if team in self.problem.teams:
            self.teams[team] = way
        for stay, span in self._spans(unit, starts):
            (self.closers[stay.place, stay.worked_in] if stay.worked_in else self.held[stay.place]).append(span)

    def _earliest(self, unit: list[str], way: tuple[str, ...]) -> tuple[list[int], tuple[str, ...]] | None:
        """The earliest starts of the pieces with these people."""
        at = 0
        while (starts := self._line_up(unit, way, at)) is not None:
            later = [self._clash(stay, span) for stay, span in self._spans(unit, starts)]
            worst = max((slot for slot in later if slot is not None), default=None)
            if worst is None:
                return starts, way
            if self.problem.pieces[unit[0]].start is not None:
                return None
            at = max(worst, starts[0] + 1)
        return None

    def _line_up(self, unit: list[str], way: tuple[str, ...], at: int) -> list[int] | None:
        """The pieces one after another from that slot on, each when its people and resources are free."""
        starts: list[int] = []
        known = ChainMap({}, self.starts)
        for name in unit:
            piece = self.problem.pieces[name]
            for link in piece.after if piece.start is None else ():
                if link.other in known:
                    at = max(at, self._after(link, known))
            wanted = max(at, piece.earliest) if piece.start is None else piece.start
            free = self._free(name, way, wanted)
            if free is None or (piece.start is not None and free != piece.start):
                return None
            starts.append(free)
            known[name] = free
            at = free + piece.slots
        return starts

    def _free(self, name: str, way: tuple[str, ...], at: int) -> int | None:
        """The first slot from there in which a piece may start."""
        piece = self.problem.pieces[name]
        while at + piece.slots <= self.problem.horizon:
            later = [b for person in way for a, b in self.busy[person] if a < at + piece.slots and at < b]
            for resource, amount in piece.uses.items():
                span = (at, at + piece.slots, amount)
                later += [slot for slot in [_over(self.used[resource], span, self.problem.resources[resource])] if slot]
            following = piece.next_start(at)
            if following is None:
                return None
            if following > at:
                later.append(following)
            if not later:
                return at
            at = max(later)
        return None

    def _spans(self, unit: list[str], starts: list[int]) -> Iterator[tuple[Stay, tuple[int, int, int]]]:
        """What the stays that begin with this unit take of their places."""
        for stay in self.stays[unit[0]]:
            end = starts[-1] + self.problem.pieces[unit[-1]].slots
            until = self.problem.ready(end, stay.closed)
            yield stay, (starts[0], until, self.problem.places[stay.place] if stay.closed else 1)

    def _clash(self, stay: Stay, span: tuple[int, int, int]) -> int | None:
        """The slot at which the first of what is in the way has gone; None where there is room."""
        room, held = self.problem.places[stay.place], self.held[stay.place]
        if stay.worked_in:
            return _over(held + self.closers[stay.place, stay.worked_in], span, room)
        groups = [taken for (place, _), taken in self.closers.items() if place == stay.place] or [[]]
        return max((slot for taken in groups if (slot := _over(held + taken, span, room)) is not None), default=None)


def _ways(team: Team) -> Iterator[tuple[str, ...]]:
    """Teams that the work may have, those first whose people may lead least."""
    order = sorted(team.may, key=lambda person: person in team.leads)
    found = 0
    for way in combinations(order, team.size):
        if found < MOST_TEAMS and (not team.leads or set(way) & set(team.leads)):
            found += 1
            yield way


def _over(taken: Taken, span: tuple[int, int, int], room: int) -> int | None:
    """When the first of what overlaps a span ends, where all of it together is too much; None where it is not."""
    start, end, amount = span
    meet = [one for one in taken if one[0] < end and start < one[1]]
    points = {start, *(one[0] for one in meet if one[0] > start)}
    fullest = max(sum(weight for a, b, weight in meet if a <= at < b) for at in points)
    return min(one[1] for one in meet) if fullest + amount > room else None
