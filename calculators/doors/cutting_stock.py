"""Packing pieces into stock lengths with the least stock: the model that the solver proves.

Runs in Python alone. A *pattern* is a way to cut one stick: how many of each length. Where the patterns can be listed,
the model chooses how often each is cut; where there are too many, those that matter are made one by one. Either way
the solver is OR-Tools (CP-SAT, and GLOP for fractions), which also gives a bound that no packing can beat. It runs
on one thread with one limit for all of it in its own units of work, so that the same question has the same answer on
every machine. It is not asked where the list made by hand costs no more than the sum of the lengths: nothing can beat
that.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor, gcd
from typing import Any

from calculators.writing import NOISE

MOST_PATTERNS = 6_000
MOST_VISITS = 200_000
"""Beginnings of patterns that are looked at; with hundreds of lengths the full ones lie far between."""
MOST_ROUNDS = 300
A_ROUND = 3e-5
"""Work of a round for each length, stock and way beside what the solver counts: putting its questions together."""
GRAIN = 10_000
"""Parts of an inch where lengths are whole numbers; pieces are rounded up and sticks down."""


@dataclass(frozen=True, slots=True)
class Stock:
    """A length that is sold, in inches, and what one costs: whole units of whatever is to be least."""

    length: float
    cost: int


@dataclass(frozen=True, slots=True)
class Question:
    """Lengths (longest first, no two alike), how many of each, the stock, and what the saw takes. Inches."""

    lengths: tuple[float, ...]
    counts: tuple[int, ...]
    stock: tuple[Stock, ...]
    kerf: float
    trim: float

    def room(self, stock: Stock) -> float:
        """What a stick holds when each piece is taken with one kerf: the last piece needs none."""
        return stock.length - self.trim + self.kerf


@dataclass(frozen=True, slots=True)
class Stick:
    """One stick: which stock, and how many of each length are cut from it."""

    stock: int
    counts: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Packing:
    """An answer: its sticks, what they cost, the least that any answer costs, and whether the two are one."""

    sticks: tuple[Stick, ...]
    cost: int
    least: int

    @property
    def proved(self) -> bool:
        """Whether nothing cheaper exists."""
        return self.cost == self.least


def first_fit(question: Question) -> list[Stick]:
    """The pieces, longest first, each into the first of the longest sticks that has room; then the cheapest stick each.

    By hand one would do so. It takes at most 11/9 of the fewest sticks, and 6/9 of a stick.
    """
    longest = max(question.room(stock) for stock in question.stock)
    left: list[float] = []
    cut: list[list[int]] = []
    for at, (length, count) in enumerate(zip(question.lengths, question.counts, strict=True)):
        for _ in range(count):
            takes = length + question.kerf
            stick = next((n for n, room in enumerate(left) if takes <= room + NOISE), len(left))
            if stick == len(left):
                left.append(longest)
                cut.append([0] * len(question.lengths))
            left[stick] -= takes
            cut[stick][at] += 1
    return [Stick(_cheapest(question, longest - room), tuple(counts)) for room, counts in zip(left, cut, strict=True)]


def _cheapest(question: Question, taken: float) -> int:
    fitting = [n for n, stock in enumerate(question.stock) if taken <= question.room(stock) + NOISE]
    return min(fitting, key=lambda n: question.stock[n].cost)


def patterns(question: Question, stock: Stock, most: int = MOST_PATTERNS) -> list[tuple[int, ...]] | None:
    """Every full way to cut one stick: no piece that is still wanted would fit beside. None where there are too many.

    >>> patterns(Question((30.0, 20.0), (9, 9), (Stock(96.0, 1),), 0.0, 0.0), Stock(96.0, 1))
    [(3, 0), (2, 1), (1, 3), (0, 4)]
    """
    found: list[tuple[int, ...]] = []
    takes = [length + question.kerf for length in question.lengths]
    begun: list[tuple[float, tuple[int, ...]]] = [(question.room(stock), ())]
    visits = 0
    while begun:
        room, counts = begun.pop()
        visits += 1
        if len(found) > most or visits > MOST_VISITS:
            return None
        at = len(counts)
        while at < len(takes) and takes[at] > room + NOISE:
            at += 1
        counts += (0,) * (at - len(counts))
        if at < len(takes):
            fits = min(question.counts[at], floor((room + NOISE) / takes[at]))
            begun += [(room - count * takes[at], (*counts, count)) for count in range(fits + 1)]
        elif any(counts) and not any(
            count < want and take <= room + NOISE
            for take, count, want in zip(takes, counts, question.counts, strict=True)
        ):
            found.append(counts)
    return found


def pack(question: Question, work: float) -> Packing:
    """The cheapest packing that is found within so much work of the solver, and the least that any costs."""
    by_hand = first_fit(question)
    least = by_material(question)
    if _cost(question, by_hand) <= least:
        return Packing(tuple(by_hand), _cost(question, by_hand), _cost(question, by_hand))
    listed = [patterns(question, stock) for stock in question.stock]
    known = [each for each in listed if each is not None]
    if len(known) == len(listed):
        ways = [Stick(stock, counts) for stock, each in enumerate(known) for counts in each]
        sticks, least = _choose(question, ways, least, work)
    else:
        sticks, least = by_columns(question, by_hand, least, work)
    if not sticks or _cost(question, sticks) > _cost(question, by_hand):
        sticks = by_hand
    return Packing(tuple(sticks), _cost(question, sticks), min(least, _cost(question, sticks)))


def _cost(question: Question, sticks: list[Stick]) -> int:
    return sum(question.stock[stick.stock].cost for stick in sticks)


def by_material(question: Question) -> int:
    """The least cost by the sum of the lengths alone, at the best cost an inch."""
    need = sum(
        (length + question.kerf) * count for length, count in zip(question.lengths, question.counts, strict=True)
    )
    step = _step(question)
    return ceil(need * min(stock.cost / question.room(stock) for stock in question.stock) / step - 1e-6) * step


def _choose(question: Question, ways: list[Stick], least: int, work: float) -> tuple[list[Stick], int]:
    """The cheapest choice among these ways to cut, and the least that any choice among them costs.

    ``least`` is a bound that is known before. Of choices as cheap, one with few sticks. No sticks where none was found.
    """
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    times = [model.new_int_var(0, _most_times(question, way), f"way {n}") for n, way in enumerate(ways)]
    for at, count in enumerate(question.counts):
        model.add(sum(way.counts[at] * time for way, time in zip(ways, times, strict=True) if way.counts[at]) >= count)
    step = _step(question)
    cost = sum(question.stock[way.stock].cost // step * time for way, time in zip(ways, times, strict=True))
    model.add(cost >= least // step)
    model.minimize(cost)
    solver = _solver(cp_model, work * 4 / 5 if len(question.stock) > 1 else work)
    if solver.solve(model) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return [], least
    least = max(least, ceil(solver.best_objective_bound - 1e-6) * step)
    taken = [solver.value(time) for time in times]
    if len(question.stock) > 1:
        model.add(cost == round(solver.objective_value))
        model.minimize(sum(times))
        for time, now in zip(times, taken, strict=True):
            model.add_hint(time, now)
        solver = _solver(cp_model, max(work / 5, work - solver.deterministic_time))
        if solver.solve(model) in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            taken = [solver.value(time) for time in times]
    sticks = [way for way, now in zip(ways, taken, strict=True) for _ in range(now)]
    return _without_surplus(question, sticks), least


def _step(question: Question) -> int:
    """Every cost is a whole number of this."""
    return gcd(*(stock.cost for stock in question.stock))


def _most_times(question: Question, way: Stick) -> int:
    return max(ceil(want / count) for want, count in zip(question.counts, way.counts, strict=True) if count)


def by_columns(question: Question, by_hand: list[Stick], known: int, work: float) -> tuple[list[Stick], int]:
    """Ways to cut are made one by one, each the one that would lower the cost most (Gilmore and Gomory).

    The choice in fractions is a bound: its cost, over the most that one way is worth for what it costs. The ways get
    half of the work at most, and no more are made once they cannot raise the bound.
    """
    ways = list(dict.fromkeys(by_hand))
    step = _step(question)
    bound, spent = known, 0.0
    for _ in range(MOST_ROUNDS):
        cost, worths = _in_fractions(question, ways)
        best = []
        for stock in range(len(question.stock)):
            worth, way, took = _worth_most(question, stock, worths, work / 4)
            best.append((worth, way))
            spent += took
        over = max(worth / question.stock[way.stock].cost for worth, way in best)
        bound = max(bound, ceil(cost / max(1.0, over) / step - 1e-5) * step)
        better = [way for worth, way in best if worth > question.stock[way.stock].cost * (1 + 1e-6) and any(way.counts)]
        new = [way for way in better if way not in ways]
        spent += A_ROUND * (len(question.lengths) * len(question.stock) + len(ways))
        if not new or bound >= ceil(cost / step - 1e-5) * step or spent > work / 2:
            break
        ways += new
    return _choose(question, ways, bound, work - min(spent, work / 2))[0], bound


def _in_fractions(question: Question, ways: list[Stick]) -> tuple[float, list[float]]:
    """The least cost where a way may be cut a fraction of a time, and what one more piece of each length is worth."""
    from ortools.linear_solver.python import model_builder

    model = model_builder.Model()  # type: ignore[no-untyped-call]  # the library's own
    times = [model.new_num_var(0.0, float("inf"), f"way {n}") for n in range(len(ways))]
    cut: list[list[Any]] = [[] for _ in question.lengths]
    for way, time in zip(ways, times, strict=True):
        for at, count in enumerate(way.counts):
            if count:
                cut[at].append(count * time)
    rows = [model.add(sum(pieces) >= count) for pieces, count in zip(cut, question.counts, strict=True)]
    model.minimize(sum(question.stock[way.stock].cost * time for way, time in zip(ways, times, strict=True)))
    solver = model_builder.Solver("GLOP")
    solver.solve(model)
    return solver.objective_value, [max(0.0, solver.dual_value(row)) for row in rows]


def _worth_most(question: Question, stock: int, worths: list[float], work: float) -> tuple[float, Stick, float]:
    """The way to cut a stick of that stock whose pieces are worth most, with a bound on that worth, and the work."""
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    takes = [ceil((length + question.kerf) * GRAIN - 1e-3) for length in question.lengths]
    room = floor(question.room(question.stock[stock]) * GRAIN + 1e-3)
    cut = [model.new_int_var(0, min(want, room // take), "") for want, take in zip(question.counts, takes, strict=True)]
    model.add(sum(take * piece for take, piece in zip(takes, cut, strict=True)) <= room)
    model.maximize(sum(round(worth * GRAIN) * piece for worth, piece in zip(worths, cut, strict=True)))
    solver = _solver(cp_model, work)
    if solver.solve(model) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return float("inf"), Stick(stock, (0,) * len(takes)), solver.deterministic_time
    rounding = 0.5 * sum(min(want, room // take) for want, take in zip(question.counts, takes, strict=True))
    bound = (solver.best_objective_bound + rounding) / GRAIN
    return bound, Stick(stock, tuple(solver.value(piece) for piece in cut)), solver.deterministic_time


def _solver(cp_model: Any, work: float) -> Any:
    solver = cp_model.CpSolver()
    solver.parameters.catch_sigint_signal = False  # else Ctrl-C cuts off all that comes after
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.linearization_level = 2
    solver.parameters.max_deterministic_time = work
    return solver


def _without_surplus(question: Question, sticks: list[Stick]) -> list[Stick]:
    """The same sticks with the pieces that are over taken out, from the last ones first."""
    over = [sum(stick.counts[at] for stick in sticks) - want for at, want in enumerate(question.counts)]
    kept: list[Stick] = []
    for stick in reversed(sticks):
        counts = list(stick.counts)
        for at in range(len(counts)):
            spare = min(over[at], counts[at])
            counts[at] -= spare
            over[at] -= spare
        kept.append(Stick(stick.stock, tuple(counts)))
    return kept[::-1]
