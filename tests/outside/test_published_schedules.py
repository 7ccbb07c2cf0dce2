"""The solver that plans a job, on problems whose optimum is published or proved by trying everything."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from typing import Any

import networkx
import pytest
import yaml

from build_tools.environment import ROOT
from build_tools.plan.problem import Activity, Precedence, Problem
from build_tools.plan.solve import solve

INSTANCES = ROOT.parent / "shared" / "psplib"
"""Instances of PSPLIB, where a copy lies beside the project: they come without a licence to pass them on."""
J30 = {"j301_1": 43, "j301_2": 47, "j305_1": 53, "j309_1": 83, "j3048_10": 54}
"""PSPLIB set J30, Kolisch and Sprecher, EJOR 96 (1996) 205-216; optima of Demeulemeester and Herroelen, 1995."""


def read_instance(path: Path) -> Problem:
    """An instance file of PSPLIB (``.sm``)."""
    lines = path.read_text().splitlines()

    def line_after(heading: str) -> int:
        return next(number for number, line in enumerate(lines) if line.startswith(heading)) + 1

    jobs = int(next(line for line in lines if line.startswith("jobs")).split(":")[1])
    following = [[int(word) for word in line.split()] for line in lines[line_after("PRECEDENCE") + 1 :][:jobs]]
    work = [[int(word) for word in line.split()] for line in lines[line_after("REQUESTS") + 2 :][:jobs]]
    capacity = [int(word) for word in lines[line_after("RESOURCEAVAIL") + 1].split()]
    names = [f"R{number}" for number in range(len(capacity))]
    problem = Problem(horizon=sum(row[2] for row in work), resources=dict(zip(names, capacity, strict=True)))
    for number, _, slots, *demands in work:
        problem.activities[str(number)] = Activity(str(number), slots, demands=dict(zip(names, demands, strict=True)))
    for number, _, _, *next_ in following:
        for other in next_:
            problem.activities[str(other)].predecessors.append(Precedence(str(number)))
    return problem


SMALL = yaml.safe_load((Path(__file__).parent / "schedules.yaml").read_text(encoding="utf-8"))
"""Instances of our own, so that no checkout tries nothing."""


def small(instance: dict[str, Any]) -> Problem:
    """An instance of our own as the solver takes it."""
    names = [f"R{number}" for number in range(len(instance["capacity"]))]
    problem = Problem(horizon=200, resources=dict(zip(names, instance["capacity"], strict=True)))
    for id, each in instance["activities"].items():
        before = [Precedence(other) for other in each["predecessors"]]
        problem.activities[id] = Activity(
            id, each["duration"], before, demands=dict(zip(names, each["demands"], strict=True))
        )
    return problem


def soonest_end(problem: Problem) -> int:
    """The soonest end, by trying every order in which work can be put down, each activity as early as it fits.

    One of these plans is always the best (Kolisch, EJOR 90 (1996) 320-333, on active schedules; from memory). An order
    is left once the longest path behind its last activity reaches the best end so far.
    """
    activities = problem.activities
    tail: dict[str, int] = {}
    for id in reversed(activities):
        behind = [tail[other] for other in tail if Precedence(id) in activities[other].predecessors]
        tail[id] = activities[id].duration + max(behind, default=0)
    best = sum(activity.duration for activity in activities.values()) + 1

    def go_on(ends: dict[str, int], used: Counter[tuple[int, str]]) -> None:
        nonlocal best
        if len(ends) == len(activities):
            best = min(best, max(ends.values()))
            return
        for id, activity in activities.items():
            before = [link.predecessor for link in activity.predecessors]
            if id in ends or not ends.keys() >= set(before):
                continue
            start = max((ends[other] for other in before), default=0)
            while any(
                used[slot, name] + need > problem.resources[name]
                for slot in range(start, start + activity.duration)
                for name, need in activity.demands.items()
            ):
                start += 1
            if start + tail[id] < best:
                taken = {
                    (start + slot, name): need
                    for slot in range(activity.duration)
                    for name, need in activity.demands.items()
                }
                go_on({**ends, id: start + activity.duration}, used + Counter(taken))

    go_on({}, Counter())
    return best


@pytest.mark.parametrize("number", range(len(SMALL)))
def test_the_optimum_of_our_own_is_what_every_order_gives(number: int) -> None:
    assert soonest_end(small(SMALL[number])) == SMALL[number]["optimum"]


def instances() -> dict[str, tuple[Problem, int]]:
    """Our own instances with their optimum, and those of PSPLIB where their folder is there: then all of them."""
    found = {f"our own {number}": (small(each), each["optimum"]) for number, each in enumerate(SMALL)}
    if INSTANCES.is_dir():
        found |= {name: (read_instance(INSTANCES / f"{name}.sm"), optimum) for name, optimum in J30.items()}
    return found


def test_the_solver_reaches_the_optimum() -> None:
    found = instances()
    assert len(found) >= 6
    for name, (problem, optimum) in found.items():
        solution = solve(problem, objectives=1)
        assert (name, solution.end.value, solution.end.proved) == (name, optimum, True)


HOUSE = {
    # activity: duration, predecessors, and in the textbook earliest start
    "A": (2, "", 0),
    "B": (4, "A", 2),
    "C": (10, "B", 6),
    "D": (6, "C", 16),
    "E": (4, "C", 16),
    "F": (5, "E", 20),
    "G": (7, "D", 22),
    "H": (9, "EG", 29),
    "I": (7, "C", 16),
    "J": (8, "FI", 25),
    "K": (4, "J", 33),
    "L": (5, "J", 33),
    "M": (2, "H", 38),
    "N": (6, "KL", 38),
}
"""The construction project of Hillier and Lieberman, Introduction to Operations Research, chapter on project networks:
44 weeks along A B C E F J L N (from memory; checked here by networkx)."""


def network() -> Problem:
    """The textbook's network, with people and machines without end."""
    problem = Problem(horizon=200)
    for name, (slots, before, _) in HOUSE.items():
        problem.activities[name] = Activity(name, slots, [Precedence(other) for other in before])
    return problem


def test_a_textbook_network_ends_when_the_book_says() -> None:
    graph: networkx.DiGraph[str] = networkx.DiGraph()
    for name, (_, before, _) in HOUSE.items():
        graph.add_edges_from((other, name, {"weight": HOUSE[other][0]}) for other in before)
        graph.add_edge(name, "end", weight=HOUSE[name][0])
    solution = solve(network(), objectives=1)
    assert solution.end.proved
    assert solution.end.value == 44 == networkx.dag_longest_path_length(graph)
    assert networkx.dag_longest_path(graph) == ["A", "B", "C", "E", "F", "J", "L", "N", "end"]


@pytest.mark.parametrize(("name", "earliest"), [(name, row[2]) for name, row in HOUSE.items()])
def test_earliest_starts_of_the_textbook(name: str, earliest: int) -> None:
    problem = network()
    for id in list(problem.activities):
        if id != name and not reaches(problem, id, name):
            del problem.activities[id]
    assert solve(problem, objectives=1).end.value == earliest + HOUSE[name][0]


def reaches(problem: Problem, one: str, other: str) -> bool:
    """Whether an activity comes before another, near or far."""
    return any(
        link.predecessor == one or reaches(problem, one, link.predecessor)
        for link in problem.activities[other].predecessors
    )
