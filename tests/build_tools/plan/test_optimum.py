"""The proved end is the least there is; the chain and the slack of a plan are true."""

from __future__ import annotations

from datetime import datetime, time, timedelta
from itertools import combinations, pairwise, product
from random import Random

import networkx
import pytest

from build_tools.book.model.procedure import Procedure
from build_tools.plan.chain import chain, slack
from build_tools.plan.planning import plan_job
from build_tools.plan.problem import After, Impossible, Piece, Problem, Solution, Stay, Team
from build_tools.plan.settle import settle
from build_tools.plan.solve import solve
from build_tools.plan.worktime import A_HOUR
from tests.build_tools.plan.drawn_jobs import WEEK, Fields, before, book_of, closes, job_of, procedure

HORIZON = 26
POSSIBLE = [seed for seed in range(61) if seed != 42]
"""The 42nd small problem has no solution before its horizon; it has a test of its own."""
Starts = dict[str, int]
Teams = dict[str, tuple[str, ...]]


def small(seed: int, rooms: int = 2) -> Problem:
    """A problem of two to eight pieces, with everything that a problem may have; ``rooms``: crews in place c."""
    chance = Random(seed)
    long = [min(HORIZON, slot + chance.choice([3, 3, 5])) for slot in range(HORIZON + 1)]
    waits = {"long": [max(long[: slot + 1]) for slot in range(HORIZON + 1)]}
    waits["morning"] = [-(-slot // 4) * 4 for slot in range(HORIZON + 1)]
    problem = Problem(HORIZON, waits=waits, a_day=4, places={"a": 1, "b": 1, "c": rooms})
    problem.people = {"alda-fenn": [(4, 6)] if chance.random() < 0.5 else [], "bram-tolle": []}
    ends: list[str] = []
    for number in range(chance.randint(2, 4)):
        name = f"t{number}"
        size = chance.choice([1, 1, 2])
        problem.teams[name] = Team(
            size, ["alda-fenn", "bram-tolle"], chance.choice([["alda-fenn"], ["alda-fenn", "bram-tolle"]])
        )
        if size == 1:
            problem.teams[name].may = problem.teams[name].leads
        pieces = [f"{name} {part}" for part in range(chance.choice([1, 1, 2]))]
        for part, id in enumerate(pieces):
            after = [After(pieces[part - 1])] if part else []
            if not part and ends and chance.random() < 0.4:
                after.append(After(chance.choice(ends), chance.choice(["", "long"])))
            problem.pieces[id] = Piece(id, chance.randint(1, 3), after, team=name)
        place = chance.choice("abc")
        closed = chance.choice(["", "", "long", "morning"])
        problem.stays.append(Stay(place, pieces[0], pieces[-1], closed))
        if closed and chance.random() < 0.7:
            other = chance.choice([each for each in "abc" if each != place])
            problem.stays.append(Stay(other, pieces[0], pieces[-1], closed, worked_in=place))
        if chance.random() < 0.2:
            id = f"{name} visit"
            problem.pieces[id] = Piece(id, 1, [After(pieces[-1], "long")], allowed=[(8, 11), (16, 19)])
            pieces.append(id)
        ends.append(pieces[-1])
    if chance.random() < 0.3:
        problem.shut["a"] = 3
    return problem


def end_of(problem: Problem, starts: Starts, id: str) -> int:
    return starts[id] + problem.pieces[id].slots


def allowed(problem: Problem, starts: Starts, teams: Teams, id: str) -> bool:
    """Whether the piece ``id`` may stand where it does beside those that stand already."""
    piece, start = problem.pieces[id], starts[id]
    end = start + piece.slots
    for link in piece.after:
        ready = end_of(problem, starts, link.other)
        if start < (problem.waits[link.wait][ready] if link.wait else ready):
            return False
    if piece.allowed and not any(a <= start < b for a, b in piece.allowed):
        return False
    for person in teams.get(piece.team, ()):
        if any(a < end and start < b for a, b in problem.people[person]):
            return False
        for other, at in starts.items():
            busy = person in teams.get(problem.pieces[other].team, ())
            if other != id and busy and at < end and start < end_of(problem, starts, other):
                return False
    return True


def places_kept(problem: Problem, starts: Starts) -> bool:
    """Whether the stays that are known in whole keep to their places, slot by slot."""
    known = [stay for stay in problem.stays if stay.first in starts and stay.last in starts]
    spans = []
    for stay in known:
        end = end_of(problem, starts, stay.last)
        spans.append((stay, starts[stay.first], problem.waits[stay.closed][end] if stay.closed else end))
    for stay, first, _ in spans:
        if not stay.worked_in and first < problem.shut.get(stay.place, 0):
            return False
    for (one, a, b), (other, c, d) in combinations(spans, 2):
        if one.place != other.place:
            continue
        works, others = end_of(problem, starts, one.last), end_of(problem, starts, other.last)
        if not one.worked_in and other.closed and a < d and c < works:
            return False
        if not other.worked_in and one.closed and a < others and c < b:
            return False
    for place, room in problem.places.items():
        here = [(a, b) for stay, a, b in spans if stay.place == place and not stay.worked_in]
        if any(sum(a <= slot < b for a, b in here) > room for slot in range(HORIZON)):
            return False
    return True


def least_end(problem: Problem, stop: int) -> int:
    """The least end of all plans, by trying every start and every team; ``stop`` if none ends before it."""
    best = stop
    order = list(problem.pieces)

    def place(number: int, starts: Starts, teams: Teams) -> None:
        nonlocal best
        if number == len(order):
            best = min(best, max(end_of(problem, starts, id) for id in order))
            return
        id = order[number]
        for start in range(best - problem.pieces[id].slots):
            now = {**starts, id: start}
            if allowed(problem, now, teams, id) and places_kept(problem, now):
                place(number + 1, now, teams)

    choices = [
        [team for team in combinations(each.may, each.size) if set(team) & set(each.leads)]
        for each in problem.teams.values()
    ]
    for chosen in product(*choices):
        place(0, {}, dict(zip(problem.teams, chosen, strict=True)))
    return best


@pytest.mark.parametrize("seed", POSSIBLE)
def test_the_end_is_the_least_that_a_search_of_everything_finds(seed: int) -> None:
    problem = small(seed)
    solution = solve(problem, aims=1)
    assert solution.end.proved
    found = solution.end.value
    assert all(allowed(problem, solution.starts, solution.teams, id) for id in problem.pieces)
    assert places_kept(problem, solution.starts)
    assert least_end(problem, found) == found


def test_what_the_solver_calls_impossible_a_search_does_not_find_either() -> None:
    problem = small(42)
    with pytest.raises(Impossible):
        solve(problem, aims=1)
    assert least_end(problem, HORIZON + 1) == HORIZON + 1


# The chain and the slack


def ready_after(problem: Problem, starts: Starts, id: str, wait: str) -> int:
    end = end_of(problem, starts, id)
    return problem.waits[wait][end] if wait else end


def pushed(problem: Problem, solution: Solution, id: str, start: int) -> Starts | None:
    """The plan with one piece later and the rest pushed on in its order; None where something finds no place."""
    old = solution.starts
    starts = {id: start}
    for other in sorted(problem.pieces, key=lambda piece: (old[piece], problem.pieces[piece].slots)):
        if other == id:
            continue
        at = old[other]
        while not in_order(problem, solution, {**starts, other: at}, other):
            at += 1
            if at + problem.pieces[other].slots > HORIZON:
                return None
        starts[other] = at
    return starts


def in_order(problem: Problem, solution: Solution, starts: Starts, id: str) -> bool:
    """Whether a piece stands right, and after all that stood before it."""
    old = solution.starts
    before = {other: at for other, at in starts.items() if other == id or old[other] < old[id]}
    if not allowed(problem, before, solution.teams, id):
        return False
    for other in before:
        same = set(solution.teams.get(problem.pieces[other].team, ())) & set(
            solution.teams.get(problem.pieces[id].team, ())
        )
        if other != id and same and starts[id] < end_of(problem, starts, other):
            return False
    for stay, first in product(problem.stays, problem.stays):
        follows = stay.first == id and first.place == stay.place and first.last in before and first.last != stay.last
        elsewhere = stay.worked_in and first.worked_in
        free = ready_after(problem, starts, first.last, "" if stay.worked_in else first.closed) if follows else 0
        if not elsewhere and old[first.first] < old[id] and starts[id] < free:
            return False
    return places_kept(problem, before)


@pytest.mark.parametrize("seed", range(40))
def test_slack_is_the_time_by_which_a_piece_can_be_late(seed: int) -> None:
    """Later by its slack the plan ends as before; later by more it does not, or a rule is broken."""
    problem = small(seed, rooms=1)
    solution = settle(problem, solve(problem, aims=1), 1)
    end = solution.end.value
    spare = slack(problem, solution)
    for id, piece in problem.pieces.items():
        latest = solution.starts[id] + spare[id]
        for start in range(latest, end - piece.slots + 1):
            starts = pushed(problem, solution, id, start)
            good = starts is not None and all(
                in_order(problem, solution, starts, other) and end_of(problem, starts, other) <= end
                for other in problem.pieces
            )
            assert good == (start == latest), (id, start)


@pytest.mark.parametrize("seed", range(40))
def test_the_chain_is_whole_and_its_reasons_are_true(seed: int) -> None:
    """From a piece that nothing held to the end: each link is what let the next one go, and nothing let it go later."""
    problem = small(seed)
    solution = settle(problem, solve(problem, aims=1), 1)
    starts, teams = solution.starts, solution.teams
    links = chain(problem, solution)
    assert end_of(problem, starts, links[-1][0]) == solution.end.value
    assert links[0][1] is None
    for (earlier, _), (later, hold) in pairwise(links):
        assert hold is not None
        assert (hold.earlier, hold.later) == (earlier, later)
        free = ready_after(problem, starts, earlier, hold.wait)
        assert free <= starts[later]
        others = {piece: at for piece, at in starts.items() if piece != later}
        for slot in range(free, starts[later]):
            moved = {**others, later: slot}
            own = {later: slot, **{link.other: starts[link.other] for link in problem.pieces[later].after}}
            assert not (allowed(problem, own, teams, later) and all_right(problem, moved, teams)), (later, slot)
        if hold.reason == "after":
            assert After(earlier, hold.wait) in problem.pieces[later].after
        elif hold.reason == "person":
            assert hold.what in {*teams[problem.pieces[earlier].team]} & {*teams[problem.pieces[later].team]}
        else:
            mine = [stay for stay in problem.stays if stay.place == hold.what]
            dries = next(stay for stay in mine if stay.first == later).worked_in
            waits = {stay.closed if not dries or stay.worked_in else "" for stay in mine if stay.last == earlier}
            assert hold.wait in waits


def all_right(problem: Problem, starts: Starts, teams: Teams) -> bool:
    return all(allowed(problem, starts, teams, id) for id in problem.pieces) and places_kept(problem, starts)


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
        id, hours, wait = f"p{number}", chance.randint(1, 40), chance.choice([0, 0, 5, 30])
        first = [other for other in procedures if chance.random() < 0.35]
        procedures[id] = procedure(
            f"{hours} h",
            before=[before(other, "whole job") for other in first],
            closes=[closes(f"{wait} h", "next work")] if wait else [],
        )
        graph.add_edge(id, "end", weight=hours)
        graph.add_edges_from((other, id, {"weight": graph.nodes[other]["weight"]}) for other in first)
        graph.add_node(id, weight=hours + wait)
        people[f"w{number}"] = {"role": "lead", "trained_in": [id]}
        spaces[f"r{number}"] = {"title": "R", "dwelling": "house"}
        tasks[f"t{number}"] = {"procedure": id, "space": f"r{number}"}
    week = [*WEEK, "saturday", "sunday"]
    entry = job_of(
        tasks, spaces=spaces, people=[{"person": id} for id in people], days=week, begins="0:00", hours="24 h"
    )
    plan = plan_job(book_of(procedures, people), entry, entry.item.start, aims=1)
    hours = networkx.dag_longest_path_length(graph)
    assert plan.solution.end.proved
    assert plan.solution.end.value == hours * A_HOUR
    assert plan.end == datetime.combine(entry.item.start, time()) + timedelta(hours=hours)
