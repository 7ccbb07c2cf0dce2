"""What a planning problem is: activities of work, what comes after what, who may do them, and the places that they
fill.

It knows nothing of houses: the tests give it published scheduling problems of the same shape. Times are slots, whole
numbers from 0; what a slot is, :mod:`~build_tools.plan.worktime` knows.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass, field

Spans = list[tuple[int, int]]
"""Stretches of slots, each from its start to its end."""


@dataclass(slots=True)
class Precedence:
    """An activity may start only when another has ended and the wait is over.

    ``lag`` names a table of the problem: for each slot at which the other may end, the first slot to start in.
    """

    predecessor: str
    lag: str = ""


@dataclass(slots=True)
class Activity:
    """Work that is done in one go: ``duration`` slots long, by the team of that name, with so much of each resource.

    ``start`` fixes it. ``allowed`` are the only slots in which it may start (spans in their order); empty, any.
    """

    id: str
    duration: int
    predecessors: list[Precedence] = field(default_factory=list)
    team: str = ""
    demands: dict[str, int] = field(default_factory=dict)
    earliest: int = 0
    start: int | None = None
    allowed: Spans = field(default_factory=list)

    def next_start(self, at: int) -> int | None:
        """The first slot from there in which it is allowed to start; None where there is none."""
        if not self.allowed:
            return at
        index = bisect_right(self.allowed, at, key=lambda span: span[0]) - 1
        if index >= 0 and at < self.allowed[index][1]:
            return at
        return self.allowed[index + 1][0] if index + 1 < len(self.allowed) else None


@dataclass(slots=True)
class Team:
    """So many people out of those who may; at least one of them out of ``leads``. The same for all its activities."""

    size: int
    eligible: list[str]
    leads: list[str]


@dataclass(slots=True)
class Occupancy:
    """A place is filled from the start of one activity to the end of another, and closed for a wait after it.

    With such a wait nobody else is in the place from the start on. ``worked_in`` names the place where the work is when
    it is not this one: then this one is closed by it (the vapour of a finish, a floor that is the only way in).
    ``since`` names the activity from whose end the place counts as closed, where that is not the last one.
    """

    place: str
    first: str
    last: str
    closure_lag: str = ""
    worked_in: str = ""
    since: str = ""


@dataclass(slots=True)
class Problem:
    """All of it.

    ``horizon`` is the last slot. ``lags`` holds the tables that lags name, ``places`` how many crews each takes,
    ``closed_until`` until when one is closed from before, ``resources`` how much there is of each, ``people`` when each
    is away.
    """

    horizon: int
    activities: dict[str, Activity] = field(default_factory=dict)
    teams: dict[str, Team] = field(default_factory=dict)
    people: dict[str, Spans] = field(default_factory=dict)
    occupancies: list[Occupancy] = field(default_factory=list)
    places: dict[str, int] = field(default_factory=dict)
    closed_until: dict[str, int] = field(default_factory=dict)
    resources: dict[str, int] = field(default_factory=dict)
    lags: dict[str, list[int]] = field(default_factory=dict)
    slots_per_day: int = 32

    def ready(self, end: int, lag: str) -> int:
        """The first slot to start in after a work that ends at ``end``, and a wait where one is named."""
        return self.lags[lag][end] if lag else end


@dataclass(frozen=True, slots=True)
class Objective:
    """How far an objective was carried: its value and the best one that is not ruled out. It may be counted alone."""

    value: int
    bound: int
    sought: bool = True

    @property
    def proved(self) -> bool:
        """Whether nothing better is possible."""
        return self.value == self.bound


@dataclass(frozen=True, slots=True)
class Solution:
    """When each activity starts, who is on each team, and how good that is."""

    starts: dict[str, int]
    teams: dict[str, tuple[str, ...]]
    end: Objective
    closed: Objective
    moves: Objective


class Infeasible(Exception):
    """No plan keeps all the rules, whatever the end date; ``activities`` (or tasks) cannot be placed together.

    ``proved``: it cannot be; otherwise none was found in time.
    """

    def __init__(self, message: str, activities: tuple[str, ...] = (), *, proved: bool = True) -> None:
        super().__init__(message)
        self.message = message
        self.activities = activities
        self.proved = proved

    @property
    def tasks(self) -> tuple[str, ...]:
        """The tasks of the activities, each once."""
        return tuple(dict.fromkeys(activity.partition(" ")[0] for activity in self.activities))
