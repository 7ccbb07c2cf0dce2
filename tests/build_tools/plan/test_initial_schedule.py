"""The plan that the solver starts from keeps the rules: the solver takes it over as it is."""

from __future__ import annotations

import pytest

from build_tools.plan.initial_schedule import end_of, initial_schedule
from build_tools.plan.model import build_model
from build_tools.plan.prepare import prepare
from build_tools.plan.problem import Activity, Occupancy, Precedence, Problem, Team
from tests.build_tools.plan.drawn_jobs import draw

pytestmark = pytest.mark.slow


@pytest.mark.parametrize("seed", range(40))
def test_a_first_plan_is_a_plan(seed: int) -> None:
    from ortools.sat.python import cp_model

    drawn = draw(seed)
    problem = prepare(drawn.context, drawn.entry, drawn.today).problem
    found = initial_schedule(problem)
    if found is None:
        return
    made = build_model(problem, end_of(problem, found[0]))
    for id, start in found[0].items():
        made.model.add(made.start[id] == start)
    for (team, person), on in made.on.items():
        made.model.add(on == (person in found[1][team]))
    solver = cp_model.CpSolver()
    assert solver.status_name(solver.solve(made.model)) == "OPTIMAL"


def test_it_waits_for_people_places_and_results() -> None:
    problem = Problem(horizon=100, places={"room": 1}, people={"alda-fenn": [(0, 5)]}, lags={"dry": [*range(10, 111)]})
    problem.teams = {"a": Team(1, ["alda-fenn"], ["alda-fenn"]), "b": Team(1, ["alda-fenn"], ["alda-fenn"])}
    problem.activities = {
        "a 1": Activity("a 1", 4, team="a"),
        "b 1": Activity("b 1", 4, [Precedence("a 1", "dry")], team="b", allowed=[(30, 31)]),
    }
    problem.occupancies = [Occupancy("room", "a 1", "a 1"), Occupancy("room", "b 1", "b 1")]
    assert initial_schedule(problem) == ({"a 1": 5, "b 1": 30}, {"a": ("alda-fenn",), "b": ("alda-fenn",)})


def test_where_there_is_no_room_there_is_none() -> None:
    problem = Problem(horizon=3, activities={"a": Activity("a", 2), "b": Activity("b", 2, [Precedence("a")])})
    assert initial_schedule(problem) is None
