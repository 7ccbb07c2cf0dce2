"""The solver that plans a job, on problems whose optimum is published."""

from __future__ import annotations

from pathlib import Path

import networkx
import pytest

from build_tools.plan.problem import Activity, Precedence, Problem
from build_tools.plan.solve import solve

INSTANCES = Path(__file__).parents[3] / "shared" / "psplib"
"""Instances of PSPLIB, where a copy lies beside the project: they come without a licence to pass them on."""
J30 = {"j301_1": 43, "j301_2": 47, "j305_1": 53, "j309_1": 83, "j3048_10": 54}
"""PSPLIB set J30, Kolisch and Sprecher, EJOR 96 (1996) 205-216; optima of Demeulemeester and Herroelen, 1995."""


def read_instance(path: Path) -> Problem:
    """An instance file of PSPLIB (``.sm``)."""
    lines = path.read_text().splitlines()

    def predecessors(heading: str) -> int:
        return next(number for number, line in enumerate(lines) if line.startswith(heading)) + 1

    jobs = int(next(line for line in lines if line.startswith("jobs")).split(":")[1])
    following = [[int(word) for word in line.split()] for line in lines[predecessors("PRECEDENCE") + 1 :][:jobs]]
    work = [[int(word) for word in line.split()] for line in lines[predecessors("REQUESTS") + 2 :][:jobs]]
    capacity = [int(word) for word in lines[predecessors("RESOURCEAVAIL") + 1].split()]
    names = [f"R{number}" for number in range(len(capacity))]
    problem = Problem(horizon=sum(row[2] for row in work), resources=dict(zip(names, capacity, strict=True)))
    for number, _, slots, *demands in work:
        problem.activities[str(number)] = Activity(str(number), slots, demands=dict(zip(names, demands, strict=True)))
    for number, _, _, *next_ in following:
        for other in next_:
            problem.activities[str(other)].predecessors.append(Precedence(str(number)))
    return problem


def test_the_solver_reaches_the_published_optimum() -> None:
    """Every instance that lies beside the project; the network below is always tried."""
    for path in sorted(INSTANCES.glob("*.sm")) if INSTANCES.is_dir() else []:
        solution = solve(read_instance(path), objectives=1)
        assert solution.end.proved
        assert solution.end.value == J30[path.stem], path.stem


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
