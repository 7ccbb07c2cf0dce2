"""The last work planned by itself: the whole cannot end sooner, and the rest fits in before it by the rules."""

from __future__ import annotations

import pytest

from build_tools.plan.initial_schedule import Schedule, end_of, initial_schedule
from build_tools.plan.model import build_model
from build_tools.plan.prepare import prepare
from build_tools.plan.problem import Activity, Precedence, Problem, Team
from build_tools.plan.solve import solve
from build_tools.plan.solver import Effort
from build_tools.plan.standards import context_of
from build_tools.plan.tail import earliest_starts, fit_before_tail, plan_tail
from tests.build_tools.plan.drawn_jobs import draw
from tests.build_tools.plan.fit_out_jobs import book

pytestmark = pytest.mark.slow


def optimum(problem: Problem, latest: int, kept: Schedule | None = None) -> tuple[dict[str, int], int] | None:
    """The starts and the end of the soonest plan, by the rules alone; with ``kept``, of that plan."""
    from ortools.sat.python import cp_model

    made = build_model(problem, latest)
    if kept:
        for id, start in kept[0].items():
            made.model.add(made.start[id] == start)
        for (team, person), on in made.on.items():
            made.model.add(on == (person in kept[1][team]))
    made.model.minimize(made.last)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = 20
    if solver.solve(made.model) != cp_model.OPTIMAL:
        return None
    return {id: solver.value(start) for id, start in made.start.items()}, solver.value(made.last)


@pytest.mark.parametrize("seed", range(30))
def test_it_never_promises_too_much(seed: int) -> None:
    drawn = draw(seed)
    problem = prepare(drawn.context, drawn.entry, drawn.today).problem
    first = initial_schedule(problem)
    if first is None:
        return
    latest = end_of(problem, first[0])
    best = optimum(problem, latest)
    assert best is not None
    earliest = earliest_starts(problem)
    assert all(slot <= best[0][id] for id, slot in earliest.items())
    for share in (0.0, 0.2, 0.5, 1.0):
        last = plan_tail(problem, latest, share, Effort(10))
        assert last.bound <= best[1]
        for found in (
            initial_schedule(problem, last.found, last.bound) if last.found else None,
            fit_before_tail(problem, last.found, last.bound, first, Effort(10), 10) if last.found else None,
        ):
            if found:
                assert optimum(problem, end_of(problem, found[0]), found) is not None, "the plan breaks a rule"
        if share == 1.0:
            assert last.bound == best[1]


def test_the_earliest_start_knows_results_waits_and_days_off() -> None:
    problem = Problem(
        horizon=100, people={"alda-fenn": [(0, 5)], "bela-quist": [(0, 5), (12, 40)]}, lags={"dry": [*range(10, 111)]}
    )
    problem.teams = {
        "a": Team(1, ["alda-fenn", "bela-quist"], ["alda-fenn"]),
        "b": Team(2, ["alda-fenn", "bela-quist"], ["alda-fenn"]),
    }
    problem.activities = {
        "b 1": Activity("b 1", 4, [Precedence("a 1")], team="b"),
        "a 1": Activity("a 1", 4, team="a"),
        "c 1": Activity("c 1", 1, [Precedence("a 1", "dry")], allowed=[(0, 3), (30, 31)]),
        "d 1": Activity("d 1", 1, [Precedence("c 1")], start=2),
    }
    assert earliest_starts(problem) == {"a 1": 5, "b 1": 40, "c 1": 30, "d 1": 2}


def test_the_last_work_is_as_late_as_may_be() -> None:
    """One pair of hands for two activities at the end: the bound knows it, where the longest chain does not."""
    problem = Problem(
        horizon=60, people={"alda-fenn": []}, teams={name: Team(1, ["alda-fenn"], ["alda-fenn"]) for name in "abcd"}
    )
    for name, slots, before in (("a", 10, ""), ("b", 10, "a"), ("c", 8, "b"), ("d", 8, "b")):
        predecessors = [Precedence(f"{before} 1")] if before else []
        problem.activities[f"{name} 1"] = Activity(f"{name} 1", slots, predecessors, team=name)
    last = plan_tail(problem, 60, 0.4, Effort(10))
    assert last.bound == 36
    assert last.found is not None and sorted(last.found[0].values()) == [20, 28]


def test_the_end_of_the_longest_job_is_proved_in_its_time() -> None:
    entry = max(book().book.jobs.values(), key=lambda each: len(each.item.tasks))
    problem = prepare(context_of(book(), entry), entry, entry.item.start).problem
    assert len(problem.activities) > 100
    assert solve(problem, objectives=1).end.proved


def test_a_long_activity_counts_though_it_is_not_among_the_last() -> None:
    problem = Problem(
        horizon=100,
        activities={"a": Activity("a", 40), "b": Activity("b", 1), "c": Activity("c", 1, [Precedence("b")])},
    )
    last = plan_tail(problem, 60, 0.0, Effort(10))
    assert last.bound == 40
    assert last.found is not None and list(last.found[0]) == ["c"]
    assert solve(problem, objectives=1).end.value == 40
