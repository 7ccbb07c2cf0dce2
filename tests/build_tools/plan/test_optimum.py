"""The proved end is the least there is; the critical path and the total float of a plan are true."""

from __future__ import annotations

from datetime import datetime, time, timedelta
from itertools import combinations, pairwise, product
from random import Random

import networkx
import pytest

from build_tools.book.model.procedure import Procedure
from build_tools.plan.critical_path import critical_path, total_float
from build_tools.plan.left_shift import left_shift
from build_tools.plan.planning import plan_job
from build_tools.plan.problem import Activity, Infeasible, Occupancy, Precedence, Problem, Solution, Team
from build_tools.plan.solve import solve
from build_tools.plan.worktime import SLOTS_PER_HOUR
from tests.build_tools.plan.drawn_jobs import WEEK, Fields, before, book_of, closes, job_of, procedure

pytestmark = pytest.mark.slow

HORIZON = 26
POSSIBLE = [seed for seed in range(61) if seed != 42]
"""The 42nd small problem has no solution before its horizon; it has a test of its own."""
Starts = dict[str, int]
Teams = dict[str, tuple[str, ...]]


def small(seed: int, rooms: int = 2) -> Problem:
    """A problem of two to eight activities, with everything that a problem may have; ``rooms``: crews in place c."""
    chance = Random(seed)
    long = [min(HORIZON, slot + chance.choice([3, 3, 5])) for slot in range(HORIZON + 1)]
    lags = {"long": [max(long[: slot + 1]) for slot in range(HORIZON + 1)]}
    lags["morning"] = [-(-slot // 4) * 4 for slot in range(HORIZON + 1)]
    problem = Problem(HORIZON, lags=lags, slots_per_day=4, places={"a": 1, "b": 1, "c": rooms})
    problem.people = {"alda-fenn": [(4, 6)] if chance.random() < 0.5 else [], "bram-tolle": []}
    ends: list[str] = []
    for number in range(chance.randint(2, 4)):
        name = f"t{number}"
        size = chance.choice([1, 1, 2])
        problem.teams[name] = Team(
            size, ["alda-fenn", "bram-tolle"], chance.choice([["alda-fenn"], ["alda-fenn", "bram-tolle"]])
        )
        if size == 1:
            problem.teams[name].eligible = problem.teams[name].leads
        activities = [f"{name} {part}" for part in range(chance.choice([1, 1, 2]))]
        for part, id in enumerate(activities):
            predecessors = [Precedence(activities[part - 1])] if part else []
            if not part and ends and chance.random() < 0.4:
                predecessors.append(Precedence(chance.choice(ends), chance.choice(["", "long"])))
            problem.activities[id] = Activity(id, chance.randint(1, 3), predecessors, team=name)
        place = chance.choice("abc")
        closed = chance.choice(["", "", "long", "morning"])
        problem.occupancies.append(Occupancy(place, activities[0], activities[-1], closed))
        if closed and chance.random() < 0.7:
            other = chance.choice([each for each in "abc" if each != place])
            problem.occupancies.append(Occupancy(other, activities[0], activities[-1], closed, worked_in=place))
        if chance.random() < 0.2:
            id = f"{name} visit"
            problem.activities[id] = Activity(id, 1, [Precedence(activities[-1], "long")], allowed=[(8, 11), (16, 19)])
            activities.append(id)
        ends.append(activities[-1])
    if chance.random() < 0.3:
        problem.closed_until["a"] = 3
    return problem


def end_of(problem: Problem, starts: Starts, id: str) -> int:
    return starts[id] + problem.activities[id].duration


def allowed(problem: Problem, starts: Starts, teams: Teams, id: str) -> bool:
    """Whether the activity ``id`` may stand where it does beside those that stand already."""
    activity, start = problem.activities[id], starts[id]
    end = start + activity.duration
    for link in activity.predecessors:
        ready = end_of(problem, starts, link.predecessor)
        if start < (problem.lags[link.lag][ready] if link.lag else ready):
            return False
    if activity.allowed and not any(a <= start < b for a, b in activity.allowed):
        return False
    for person in teams.get(activity.team, ()):
        if any(a < end and start < b for a, b in problem.people[person]):
            return False
        for other, at in starts.items():
            busy = person in teams.get(problem.activities[other].team, ())
            if other != id and busy and at < end and start < end_of(problem, starts, other):
                return False
    return True


def places_kept(problem: Problem, starts: Starts) -> bool:
    """Whether the occupancies that are known in whole keep to their places, slot by slot."""
    known = [occupancy for occupancy in problem.occupancies if occupancy.first in starts and occupancy.last in starts]
    spans = []
    for occupancy in known:
        end = end_of(problem, starts, occupancy.last)
        spans.append(
            (
                occupancy,
                starts[occupancy.first],
                problem.lags[occupancy.closure_lag][end] if occupancy.closure_lag else end,
            )
        )
    for occupancy, first, _ in spans:
        if not occupancy.worked_in and first < problem.closed_until.get(occupancy.place, 0):
            return False
    for (one, a, b), (other, c, d) in combinations(spans, 2):
        if one.place != other.place:
            continue
        works, others = end_of(problem, starts, one.last), end_of(problem, starts, other.last)
        if not one.worked_in and other.closure_lag and a < d and c < works:
            return False
        if not other.worked_in and one.closure_lag and a < others and c < b:
            return False
    for place, room in problem.places.items():
        here = [(a, b) for occupancy, a, b in spans if occupancy.place == place and not occupancy.worked_in]
        if any(sum(a <= slot < b for a, b in here) > room for slot in range(HORIZON)):
            return False
    return True


def least_end(problem: Problem, stop: int) -> int:
    """The least end of all plans, by trying every start and every team; ``stop`` if none ends before it."""
    best = stop
    order = list(problem.activities)

    def place(number: int, starts: Starts, teams: Teams) -> None:
        nonlocal best
        if number == len(order):
            best = min(best, max(end_of(problem, starts, id) for id in order))
            return
        id = order[number]
        for start in range(best - problem.activities[id].duration):
            now = {**starts, id: start}
            if allowed(problem, now, teams, id) and places_kept(problem, now):
                place(number + 1, now, teams)

    choices = [
        [team for team in combinations(each.eligible, each.size) if set(team) & set(each.leads)]
        for each in problem.teams.values()
    ]
    for chosen in product(*choices):
        place(0, {}, dict(zip(problem.teams, chosen, strict=True)))
    return best


@pytest.mark.parametrize("seed", POSSIBLE)
def test_the_end_is_the_least_that_a_search_of_everything_finds(seed: int) -> None:
    problem = small(seed)
    solution = solve(problem, objectives=1)
    assert solution.end.proved
    found = solution.end.value
    assert all(allowed(problem, solution.starts, solution.teams, id) for id in problem.activities)
    assert places_kept(problem, solution.starts)
    assert least_end(problem, found) == found


def test_what_the_solver_calls_impossible_a_search_does_not_find_either() -> None:
    problem = small(42)
    with pytest.raises(Infeasible):
        solve(problem, objectives=1)
    assert least_end(problem, HORIZON + 1) == HORIZON + 1


# The critical path and the total float


def ready_after(problem: Problem, starts: Starts, id: str, lag: str) -> int:
    end = end_of(problem, starts, id)
    return problem.lags[lag][end] if lag else end


def pushed(problem: Problem, solution: Solution, id: str, start: int) -> Starts | None:
    """The plan with one activity later and the rest pushed on in its order; None where something finds no place."""
    old = solution.starts
    starts = {id: start}
    for other in sorted(
        problem.activities, key=lambda activity: (old[activity], problem.activities[activity].duration)
    ):
        if other == id:
            continue
        at = old[other]
        while not in_order(problem, solution, {**starts, other: at}, other):
            at += 1
            if at + problem.activities[other].duration > HORIZON:
                return None
        starts[other] = at
    return starts


def in_order(problem: Problem, solution: Solution, starts: Starts, id: str) -> bool:
    """Whether an activity stands right, and after all that stood before it."""
    old = solution.starts
    before = {other: at for other, at in starts.items() if other == id or old[other] < old[id]}
    if not allowed(problem, before, solution.teams, id):
        return False
    for other in before:
        same = set(solution.teams.get(problem.activities[other].team, ())) & set(
            solution.teams.get(problem.activities[id].team, ())
        )
        if other != id and same and starts[id] < end_of(problem, starts, other):
            return False
    for occupancy, first in product(problem.occupancies, problem.occupancies):
        follows = (
            occupancy.first == id
            and first.place == occupancy.place
            and first.last in before
            and first.last != occupancy.last
        )
        elsewhere = occupancy.worked_in and first.worked_in
        free = (
            ready_after(problem, starts, first.last, "" if occupancy.worked_in else first.closure_lag) if follows else 0
        )
        if not elsewhere and old[first.first] < old[id] and starts[id] < free:
            return False
    return places_kept(problem, before)


@pytest.mark.parametrize("seed", range(40))
def test_total_float_is_the_time_by_which_an_activity_can_be_late(seed: int) -> None:
    """Later by its total float the plan ends as before; later by more it does not, or a rule is broken."""
    problem = small(seed, rooms=1)
    solution = left_shift(problem, solve(problem, objectives=1), 1)
    end = solution.end.value
    spare = total_float(problem, solution)
    for id, activity in problem.activities.items():
        latest = solution.starts[id] + spare[id]
        for start in range(latest, end - activity.duration + 1):
            starts = pushed(problem, solution, id, start)
            good = starts is not None and all(
                in_order(problem, solution, starts, other) and end_of(problem, starts, other) <= end
                for other in problem.activities
            )
            assert good == (start == latest), (id, start)


@pytest.mark.parametrize("seed", range(40))
def test_the_critical_path_is_whole_and_its_reasons_are_true(seed: int) -> None:
    """From an activity that nothing held to the end: each link let the next one go, and nothing let it go later."""
    problem = small(seed)
    solution = left_shift(problem, solve(problem, objectives=1), 1)
    starts, teams = solution.starts, solution.teams
    path = critical_path(problem, solution)
    assert end_of(problem, starts, path[-1][0]) == solution.end.value
    assert path[0][1] is None
    for (earlier, _), (later, dependency) in pairwise(path):
        assert dependency is not None
        assert (dependency.predecessor, dependency.successor) == (earlier, later)
        free = ready_after(problem, starts, earlier, dependency.lag)
        assert free <= starts[later]
        others = {activity: at for activity, at in starts.items() if activity != later}
        for slot in range(free, starts[later]):
            moved = {**others, later: slot}
            own = {
                later: slot,
                **{link.predecessor: starts[link.predecessor] for link in problem.activities[later].predecessors},
            }
            assert not (allowed(problem, own, teams, later) and all_right(problem, moved, teams)), (later, slot)
        if dependency.reason == "after":
            assert Precedence(earlier, dependency.lag) in problem.activities[later].predecessors
        elif dependency.reason == "person":
            assert dependency.what in {*teams[problem.activities[earlier].team]} & {
                *teams[problem.activities[later].team]
            }
        else:
            mine = [occupancy for occupancy in problem.occupancies if occupancy.place == dependency.what]
            dries = next(occupancy for occupancy in mine if occupancy.first == later).worked_in
            lags = {
                occupancy.closure_lag if not dries or occupancy.worked_in else ""
                for occupancy in mine
                if occupancy.last == earlier
            }
            assert dependency.lag in lags


def all_right(problem: Problem, starts: Starts, teams: Teams) -> bool:
    return all(allowed(problem, starts, teams, id) for id in problem.activities) and places_kept(problem, starts)


# Where neither people nor places bind


@pytest.mark.parametrize("seed", range(25))
def test_without_people_and_places_the_end_is_the_longest_path(seed: int) -> None:
    """Work goes on day and night, each task has its own person and room: networkx finds the same end."""
    chance = Random(seed)
    procedures: dict[str, Procedure] = {}
    people: dict[str, Fields] = {}
    tasks: dict[str, Fields] = {}
    spaces: Fields = {}
    graph: networkx.DiGraph[str] = networkx.DiGraph()
    for number in range(chance.randint(3, 9)):
        id, hours, lag = f"p{number}", chance.randint(1, 40), chance.choice([0, 0, 5, 30])
        first = [other for other in procedures if chance.random() < 0.35]
        procedures[id] = procedure(
            f"{hours} h",
            before=[before(other, "whole job") for other in first],
            closes=[closes(f"{lag} h", "next work")] if lag else [],
        )
        graph.add_edge(id, "end", weight=hours)
        graph.add_edges_from((other, id, {"weight": graph.nodes[other]["weight"]}) for other in first)
        graph.add_node(id, weight=hours + lag)
        people[f"w{number}"] = {"role": "lead", "trained_in": [id]}
        spaces[f"r{number}"] = {"title": "R", "dwelling": "house"}
        tasks[f"t{number}"] = {"procedure": id, "space": f"r{number}"}
    week = [*WEEK, "saturday", "sunday"]
    entry = job_of(
        tasks, spaces=spaces, people=[{"person": id} for id in people], days=week, begins="0:00", hours="24 h"
    )
    plan = plan_job(book_of(procedures, people), entry, entry.item.start, objectives=1)
    hours = networkx.dag_longest_path_length(graph)
    assert plan.solution.end.proved
    assert plan.solution.end.value == hours * SLOTS_PER_HOUR
    assert plan.end == datetime.combine(entry.item.start, time()) + timedelta(hours=hours)
