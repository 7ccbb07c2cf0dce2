"""The rules of a planning problem as variables and constraints for OR-Tools CP-SAT, without an aim."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, field
from typing import Any

from ortools.sat.python import cp_model

from build_tools.plan.first_plan import Found
from build_tools.plan.problem import Impossible, Piece, Problem, Team


@dataclass(slots=True)
class Model:
    """The problem as variables: starts of pieces, who is on a team, spans that places are closed."""

    problem: Problem
    model: cp_model.CpModel
    start: dict[str, Any] = field(default_factory=dict)
    end: dict[str, Any] = field(default_factory=dict)
    on: dict[tuple[str, str], Any] = field(default_factory=dict)
    ready: dict[tuple[str, str], Any] = field(default_factory=dict)
    closed: list[Any] = field(default_factory=list)
    last: Any = None
    latest: int = 0

    def hint(self, near: Found) -> None:
        """A plan that is known, for the solver to begin from."""
        self.model.clear_hints()  # type: ignore[no-untyped-call]
        for id, start in near[0].items():
            if self.problem.pieces[id].start is None:
                self.model.add_hint(self.start[id], start)
        for (team, person), on in self.on.items():
            self.model.add_hint(on, person in near[1][team])

    def found(self, solver: cp_model.CpSolver) -> Found:
        """The plan that a solver has come to."""
        starts = {id: int(solver.value(start)) for id, start in self.start.items()}
        return starts, {
            name: tuple(person for person in team.may if solver.boolean_value(self.on[name, person]))
            for name, team in self.problem.teams.items()
        }


def model_of(problem: Problem, latest: int | None = None) -> Model:
    """The rules of a problem, without an aim. ``latest`` is the slot by which all is done, where one is known."""
    made = Model(problem, cp_model.CpModel(), latest=problem.horizon if latest is None else latest)
    for piece in problem.pieces.values():
        _place_piece(made, piece)
    for piece in problem.pieces.values():
        for link in piece.after:
            if link.other in made.start and piece.start is None:
                made.model.add(made.start[piece.id] >= _ready(made, link.other, link.wait))
    _teams(made)
    _resources(made)
    _stays(made)
    made.last = made.model.new_int_var(0, made.latest, "last")
    made.model.add_max_equality(made.last, list(made.end.values()) or [0])
    return made


def _place_piece(made: Model, piece: Piece) -> None:
    latest = made.latest - piece.slots
    if piece.start is not None:
        made.start[piece.id] = made.model.new_constant(piece.start)
    elif piece.allowed:
        spans = [[max(a, piece.earliest), min(b - 1, latest)] for a, b in piece.allowed]
        spans = [[first, last] for first, last in spans if first <= last]
        if not spans:
            raise Impossible("there is no time in which it may start", (piece.id,))
        domain = cp_model.Domain.from_intervals(spans)
        made.start[piece.id] = made.model.new_int_var_from_domain(domain, piece.id)
    else:
        if piece.earliest > latest:
            raise Impossible("it would end after the last day that is planned", (piece.id,))
        made.start[piece.id] = made.model.new_int_var(piece.earliest, latest, piece.id)
    made.end[piece.id] = made.start[piece.id] + piece.slots


def _ready(made: Model, piece: str, wait: str) -> Any:
    """The first slot to start in after a piece and a wait."""
    if not wait:
        return made.end[piece]
    key = (piece, wait)
    if key not in made.ready:
        table = made.problem.waits[wait][: made.latest + 1]
        ready = made.model.new_int_var(0, made.problem.horizon * 2, f"{piece} + {wait}")
        end = made.end[piece]
        literals = []
        for run in straight_runs(table):
            here = made.model.new_bool_var("")
            literals.append(here)
            made.model.add(end >= run.first).only_enforce_if(here)
            made.model.add(end <= run.last).only_enforce_if(here)
            made.model.add(ready == run.least + (end - run.first) * run.slope).only_enforce_if(here)
        made.model.add_exactly_one(literals)
        gaps = [after - slot for slot, after in enumerate(table)]
        made.model.add(ready >= end + min(gaps))  # says nothing new, and lets the solver see it sooner
        made.ready[key] = ready
    return made.ready[key]


@dataclass(frozen=True, slots=True)
class Run:
    """A part of a table that is straight: from slot ``first`` to ``last`` it begins at ``least`` and rises by slope."""

    first: int
    last: int
    least: int
    slope: int


def straight_runs(table: list[int]) -> list[Run]:
    """A table as few straight parts, each level or rising by one a slot: far less for the solver than every entry.

    >>> straight_runs([2, 3, 4, 4, 4])
    [Run(first=0, last=2, least=2, slope=1), Run(first=3, last=4, least=4, slope=0)]
    """
    runs: list[Run] = []
    first = 0
    while first < len(table):
        longest = Run(first, first, table[first], 0)
        for slope in (0, 1):
            last = first
            while last + 1 < len(table) and table[last + 1] == table[last] + slope:
                last += 1
            if last > longest.last:
                longest = Run(first, last, table[first], slope)
        runs.append(longest)
        first = longest.last + 1
    return runs


def _teams(made: Model) -> None:
    """Who is on each team, and nobody in two places at once or at work while away."""
    problem, model = made.problem, made.model
    busy: dict[str, list[Any]] = defaultdict(list)
    for name, team in problem.teams.items():
        for person in team.may:
            made.on[name, person] = model.new_bool_var(f"{person} on {name}")
        model.add(sum(made.on[name, person] for person in team.may) == team.size)
        if team.leads and set(team.leads) != set(team.may):
            model.add_bool_or([made.on[name, person] for person in team.leads])
    whole: list[tuple[Any, Team]] = []
    for piece in problem.pieces.values():
        if piece.team and piece.slots:
            for person in problem.teams[piece.team].may:
                present = made.on[piece.team, person]
                busy[person].append(
                    model.new_optional_interval_var(
                        made.start[piece.id], piece.slots, made.end[piece.id], present, f"{person} {piece.id}"
                    )
                )
            interval = model.new_interval_var(made.start[piece.id], piece.slots, made.end[piece.id], piece.id)
            whole.append((interval, problem.teams[piece.team]))
    away = {
        person: [model.new_fixed_size_interval_var(a, b - a, f"{person} away") for a, b in spans if a < made.latest]
        for person, spans in problem.people.items()
    }
    for person, spans in away.items():
        if busy[person]:
            model.add_no_overlap([*busy[person], *spans])
    _groups(made, whole, away)


def _groups(made: Model, whole: list[tuple[Any, Team]], away: dict[str, list[Any]]) -> None:
    """No group of people does more at once than it has hands. It says nothing new, and gives a bound on the end."""
    groups = [frozenset(made.problem.people)]
    groups += [frozenset(names) for _, team in whole for names in (team.may, team.leads)]
    for group in dict.fromkeys(groups):  # in their order: a set of names has another one in each run
        intervals, sizes = [], []
        for interval, team in whole:
            size = team.size if group.issuperset(team.may) else bool(team.leads) and group.issuperset(team.leads)
            if size:
                intervals.append(interval)
                sizes.append(int(size))
        if intervals:
            absent = [span for person in sorted(group) for span in away[person]]
            made.model.add_cumulative([*intervals, *absent], [*sizes, *([1] * len(absent))], len(group))


def _resources(made: Model) -> None:
    for name, capacity in made.problem.resources.items():
        intervals, amounts = [], []
        for piece in made.problem.pieces.values():
            if piece.uses.get(name) and piece.slots:
                intervals.append(
                    made.model.new_interval_var(made.start[piece.id], piece.slots, made.end[piece.id], piece.id)
                )
                amounts.append(piece.uses[name])
        if intervals:
            made.model.add_cumulative(intervals, amounts, capacity)


def _stays(made: Model) -> None:
    """No more crews in a place than it takes, and nobody while it is closed.

    What closes a place from elsewhere keeps out who works in it; two closings may run at the same time.
    """
    held: dict[str, list[tuple[Any, int]]] = defaultdict(list)
    worked: dict[str, list[tuple[Any, int]]] = defaultdict(list)
    from_elsewhere: dict[str, dict[str, list[tuple[Any, int]]]] = defaultdict(lambda: defaultdict(list))
    for stay in made.problem.stays:
        if stay.place in made.problem.shut and not stay.worked_in:
            made.model.add(made.start[stay.first] >= made.problem.shut[stay.place])
        capacity = made.problem.places[stay.place]
        first, last = made.start[stay.first], made.end[stay.last]
        until = _ready(made, stay.last, stay.closed)
        size = made.model.new_int_var(0, made.problem.horizon * 2, "")
        crews = capacity if stay.closed else 1
        whole = (made.model.new_interval_var(first, size, until, stay.first), crews)
        if stay.worked_in:
            from_elsewhere[stay.place][stay.worked_in].append(whole)
        else:
            held[stay.place].append(whole)
            size = made.model.new_int_var(0, made.problem.horizon, "")
            work = (made.model.new_interval_var(first, size, last, stay.first), crews) if stay.closed else whole
            worked[stay.place].append(work)
        if stay.closed:
            made.closed.append(until - made.end[stay.since or stay.last])
    for place, stays in held.items():
        capacity = made.problem.places[place]
        closers = list(from_elsewhere[place].values())
        if not closers or any(whole is not work for whole, work in zip(stays, worked[place], strict=True)):
            _share(made, stays, capacity)
        for closing in closers:
            _share(made, [*worked[place], *closing], capacity)


def _share(made: Model, intervals: list[tuple[Any, int]], capacity: int) -> None:
    if capacity == 1:
        made.model.add_no_overlap([interval for interval, _ in intervals])
    else:
        made.model.add_cumulative([interval for interval, _ in intervals], [size for _, size in intervals], capacity)
