"""The rules of a planning problem as variables and constraints for OR-Tools CP-SAT, without an objective."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, field
from typing import Any

from ortools.sat.python import cp_model

from build_tools.plan.initial_schedule import Schedule
from build_tools.plan.problem import Activity, Infeasible, Problem, Team


@dataclass(slots=True)
class ConstraintModel:
    """The problem as variables: starts of activities, who is on a team, spans that places are closed."""

    problem: Problem
    model: cp_model.CpModel
    start: dict[str, Any] = field(default_factory=dict)
    end: dict[str, Any] = field(default_factory=dict)
    on: dict[tuple[str, str], Any] = field(default_factory=dict)
    ready: dict[tuple[str, str], Any] = field(default_factory=dict)
    closed: list[Any] = field(default_factory=list)
    last: Any = None
    latest: int = 0

    def hint(self, near: Schedule) -> None:
        """A plan that is known, for the solver to begin from."""
        self.model.clear_hints()  # type: ignore[no-untyped-call]
        for id, start in near[0].items():
            if self.problem.activities[id].start is None:
                self.model.add_hint(self.start[id], start)
        for (team, person), on in self.on.items():
            self.model.add_hint(on, person in near[1][team])

    def found(self, solver: cp_model.CpSolver) -> Schedule:
        """The plan that a solver has come to."""
        starts = {id: int(solver.value(start)) for id, start in self.start.items()}
        return starts, {
            name: tuple(person for person in team.eligible if solver.boolean_value(self.on[name, person]))
            for name, team in self.problem.teams.items()
        }


def build_model(problem: Problem, latest: int | None = None) -> ConstraintModel:
    """The rules of a problem, without an objective. ``latest`` is the slot by which all is done, where one is known."""
    made = ConstraintModel(problem, cp_model.CpModel(), latest=problem.horizon if latest is None else latest)
    for activity in problem.activities.values():
        _place_piece(made, activity)
    for activity in problem.activities.values():
        for link in activity.predecessors:
            if link.predecessor in made.start and activity.start is None:
                made.model.add(made.start[activity.id] >= _ready(made, link.predecessor, link.lag))
    _teams(made)
    _resources(made)
    _stays(made)
    made.last = made.model.new_int_var(0, made.latest, "last")
    made.model.add_max_equality(made.last, list(made.end.values()) or [0])
    return made


def _place_piece(made: ConstraintModel, activity: Activity) -> None:
    latest = made.latest - activity.duration
    if activity.start is not None:
        made.start[activity.id] = made.model.new_constant(activity.start)
    elif activity.allowed:
        spans = [[max(a, activity.earliest), min(b - 1, latest)] for a, b in activity.allowed]
        spans = [[first, last] for first, last in spans if first <= last]
        if not spans:
            raise Infeasible("there is no time in which it may start", (activity.id,))
        domain = cp_model.Domain.from_intervals(spans)
        made.start[activity.id] = made.model.new_int_var_from_domain(domain, activity.id)
    else:
        if activity.earliest > latest:
            raise Infeasible("it would end after the last day that is planned", (activity.id,))
        made.start[activity.id] = made.model.new_int_var(activity.earliest, latest, activity.id)
    made.end[activity.id] = made.start[activity.id] + activity.duration


def _ready(made: ConstraintModel, activity: str, lag: str) -> Any:
    """The first slot to start in after an activity and a wait."""
    if not lag:
        return made.end[activity]
    key = (activity, lag)
    if key not in made.ready:
        table = made.problem.lags[lag][: made.latest + 1]
        ready = made.model.new_int_var(0, made.problem.horizon * 2, f"{activity} + {lag}")
        end = made.end[activity]
        literals = []
        for segment in linear_segments(table):
            here = made.model.new_bool_var("")
            literals.append(here)
            made.model.add(end >= segment.first).only_enforce_if(here)
            made.model.add(end <= segment.last).only_enforce_if(here)
            made.model.add(ready == segment.least + (end - segment.first) * segment.slope).only_enforce_if(here)
        made.model.add_exactly_one(literals)
        gaps = [predecessors - slot for slot, predecessors in enumerate(table)]
        made.model.add(ready >= end + min(gaps))  # says nothing new, and lets the solver see it sooner
        made.ready[key] = ready
    return made.ready[key]


@dataclass(frozen=True, slots=True)
class LinearSegment:
    """A part of a table that is straight: from slot ``first`` to ``last`` it begins at ``least`` and rises by slope."""

    first: int
    last: int
    least: int
    slope: int


def linear_segments(table: list[int]) -> list[LinearSegment]:
    """A table as few straight parts, each level or rising by one a slot: far less for the solver than every entry.

    >>> linear_segments([2, 3, 4, 4, 4])
    [LinearSegment(first=0, last=2, least=2, slope=1), LinearSegment(first=3, last=4, least=4, slope=0)]
    """
    segments: list[LinearSegment] = []
    first = 0
    while first < len(table):
        longest = LinearSegment(first, first, table[first], 0)
        for slope in (0, 1):
            last = first
            while last + 1 < len(table) and table[last + 1] == table[last] + slope:
                last += 1
            if last > longest.last:
                longest = LinearSegment(first, last, table[first], slope)
        segments.append(longest)
        first = longest.last + 1
    return segments


def _teams(made: ConstraintModel) -> None:
    """Who is on each team, and nobody in two places at once or at work while away."""
    problem, model = made.problem, made.model
    busy: dict[str, list[Any]] = defaultdict(list)
    for name, team in problem.teams.items():
        for person in team.eligible:
            made.on[name, person] = model.new_bool_var(f"{person} on {name}")
        model.add(sum(made.on[name, person] for person in team.eligible) == team.size)
        if team.leads and set(team.leads) != set(team.eligible):
            model.add_bool_or([made.on[name, person] for person in team.leads])
    whole: list[tuple[Any, Team]] = []
    for activity in problem.activities.values():
        if activity.team and activity.duration:
            for person in problem.teams[activity.team].eligible:
                present = made.on[activity.team, person]
                busy[person].append(
                    model.new_optional_interval_var(
                        made.start[activity.id],
                        activity.duration,
                        made.end[activity.id],
                        present,
                        f"{person} {activity.id}",
                    )
                )
            interval = model.new_interval_var(
                made.start[activity.id], activity.duration, made.end[activity.id], activity.id
            )
            whole.append((interval, problem.teams[activity.team]))
    away = {
        person: [model.new_fixed_size_interval_var(a, b - a, f"{person} away") for a, b in spans if a < made.latest]
        for person, spans in problem.people.items()
    }
    for person, spans in away.items():
        if busy[person]:
            model.add_no_overlap([*busy[person], *spans])
    _groups(made, whole, away)


def _groups(made: ConstraintModel, whole: list[tuple[Any, Team]], away: dict[str, list[Any]]) -> None:
    """No group of people does more at once than it has hands. It says nothing new, and gives a bound on the end."""
    groups = [frozenset(made.problem.people)]
    groups += [frozenset(names) for _, team in whole for names in (team.eligible, team.leads)]
    for group in dict.fromkeys(groups):  # in their order: a set of names has another one in each run
        intervals, sizes = [], []
        for interval, team in whole:
            size = team.size if group.issuperset(team.eligible) else bool(team.leads) and group.issuperset(team.leads)
            if size:
                intervals.append(interval)
                sizes.append(int(size))
        if intervals:
            absent = [span for person in sorted(group) for span in away[person]]
            made.model.add_cumulative([*intervals, *absent], [*sizes, *([1] * len(absent))], len(group))


def _resources(made: ConstraintModel) -> None:
    for name, capacity in made.problem.resources.items():
        intervals, amounts = [], []
        for activity in made.problem.activities.values():
            if activity.demands.get(name) and activity.duration:
                intervals.append(
                    made.model.new_interval_var(
                        made.start[activity.id], activity.duration, made.end[activity.id], activity.id
                    )
                )
                amounts.append(activity.demands[name])
        if intervals:
            made.model.add_cumulative(intervals, amounts, capacity)


def _stays(made: ConstraintModel) -> None:
    """No more crews in a place than it takes, and nobody while it is closed.

    What closes a place from elsewhere keeps out who works in it; two closings may run at the same time.
    """
    held: dict[str, list[tuple[Any, int]]] = defaultdict(list)
    worked: dict[str, list[tuple[Any, int]]] = defaultdict(list)
    from_elsewhere: dict[str, dict[str, list[tuple[Any, int]]]] = defaultdict(lambda: defaultdict(list))
    for occupancy in made.problem.occupancies:
        if occupancy.place in made.problem.closed_until and not occupancy.worked_in:
            made.model.add(made.start[occupancy.first] >= made.problem.closed_until[occupancy.place])
        capacity = made.problem.places[occupancy.place]
        first, last = made.start[occupancy.first], made.end[occupancy.last]
        until = _ready(made, occupancy.last, occupancy.closure_lag)
        size = made.model.new_int_var(0, made.problem.horizon * 2, "")
        crews = capacity if occupancy.closure_lag else 1
        whole = (made.model.new_interval_var(first, size, until, occupancy.first), crews)
        if occupancy.worked_in:
            from_elsewhere[occupancy.place][occupancy.worked_in].append(whole)
        else:
            held[occupancy.place].append(whole)
            size = made.model.new_int_var(0, made.problem.horizon, "")
            work = (
                (made.model.new_interval_var(first, size, last, occupancy.first), crews)
                if occupancy.closure_lag
                else whole
            )
            worked[occupancy.place].append(work)
        if occupancy.closure_lag:
            made.closed.append(until - made.end[occupancy.since or occupancy.last])
    for place, occupancies in held.items():
        capacity = made.problem.places[place]
        closers = list(from_elsewhere[place].values())
        if not closers or any(whole is not work for whole, work in zip(occupancies, worked[place], strict=True)):
            _share(made, occupancies, capacity)
        for closing in closers:
            _share(made, [*worked[place], *closing], capacity)


def _share(made: ConstraintModel, intervals: list[tuple[Any, int]], capacity: int) -> None:
    if capacity == 1:
        made.model.add_no_overlap([interval for interval, _ in intervals])
    else:
        made.model.add_cumulative([interval for interval, _ in intervals], [size for _, size in intervals], capacity)
