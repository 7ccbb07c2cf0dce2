"""A solved plan is drawn together, and its critical path runs from the start to the end without a hole."""

from __future__ import annotations

from build_tools.plan.critical_path import critical_path
from build_tools.plan.left_shift import left_shift
from build_tools.plan.problem import Activity, Objective, Occupancy, Precedence, Problem, Solution, Team
from build_tools.plan.solve import solve

DAY = 8


def two_people() -> Problem:
    """Two days of two people: a floor that closes its room over night, and a shelf in another room."""
    problem = Problem(
        horizon=5 * DAY, people={"alda-fenn": [], "bram-tolle": []}, places={"room": 1, "hall": 1}, slots_per_day=DAY
    )
    problem.lags = {"dries": [min(5 * DAY, -(-(end + 4) // DAY) * DAY) for end in range(5 * DAY + 1)]}
    for id, slots in (("floor 1", 3), ("door 1", 2), ("shelf 1", 2)):
        task = id.removesuffix(" 1")
        problem.activities[id] = Activity(id, slots, team=task)
        problem.teams[task] = Team(1, ["alda-fenn", "bram-tolle"], ["alda-fenn", "bram-tolle"])
    problem.activities["door 1"].predecessors.append(Precedence("floor 1", "dries"))
    problem.occupancies = [
        Occupancy("room", "floor 1", "floor 1", "dries"),
        Occupancy("room", "door 1", "door 1"),
        Occupancy("hall", "shelf 1", "shelf 1"),
    ]
    return problem


def test_nothing_is_later_than_it_must_be() -> None:
    problem = two_people()
    loose = Solution(
        {"floor 1": 1, "door 1": DAY + 2, "shelf 1": 6},
        {"floor": ("alda-fenn",), "door": ("alda-fenn",), "shelf": ("bram-tolle",)},
        Objective(DAY + 4, DAY + 2),
        Objective(DAY - 4, 0),
        Objective(0, 0),
    )
    settled = left_shift(problem, loose)
    assert settled.starts == {"floor 1": 1, "door 1": DAY, "shelf 1": 0}  # the floor keeps its room closed no longer
    assert settled.teams == loose.teams
    assert left_shift(problem, loose, objectives=1).starts["floor 1"] == 0


def test_the_critical_path_says_what_let_go_last() -> None:
    problem = two_people()
    solution = left_shift(problem, solve(problem))
    links = critical_path(problem, solution)
    assert [activity for activity, _ in links] == ["floor 1", "door 1"]
    assert links[0][1] is None
    held = links[1][1]
    assert held is not None
    assert (held.reason, held.lag) == ("after", "dries")


def test_an_activity_with_a_day_of_its_own_begins_the_critical_path() -> None:
    problem = two_people()
    problem.activities["door 1"].earliest = 2 * DAY
    links = critical_path(problem, left_shift(problem, solve(problem)))
    assert links == [("door 1", None)]


def test_the_moves_have_a_bound() -> None:
    """Four tasks in turn, each in a place of its own, for one person: three moves, and no fewer are possible."""
    problem = Problem(horizon=20, people={"alda-fenn": []}, slots_per_day=DAY)
    for number in range(4):
        id, task, place = f"task{number} 1", f"task{number}", f"place{number}"
        problem.activities[id] = Activity(id, 2, team=task)
        problem.teams[task] = Team(1, ["alda-fenn"], ["alda-fenn"])
        problem.places[place] = 1
        problem.occupancies.append(Occupancy(place, id, id))
    moves = solve(problem).moves
    assert (moves.value, moves.bound, moves.proved) == (3, 3, True)
