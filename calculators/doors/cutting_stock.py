"""Packing pieces into stock lengths with the least stock: the model that the solver proves.

Runs in Python alone. A *pattern* is a way to cut one stick: how many of each length. Where the patterns can be listed,
the model chooses how often each is cut; where there are too many, it places pieces into single sticks. Either way
the solver is OR-Tools CP-SAT, which also gives a bound that no packing can beat. It runs on one thread with a limit in
its own units of work, so that the same question has the same answer on every machine. It is not asked where the list
made by hand costs no more than the sum of the lengths: nothing can beat that.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor, gcd
from typing import Any

from calculators.writing import NOISE

MOST_PATTERNS = 6_000
GRAIN = 10_000
"""Parts of an inch in the model that places single pieces; pieces are rounded up and sticks down."""


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

    def add(at: int, room: float, counts: list[int]) -> bool:
        if at == len(takes):
            spare = [take for take, count, want in zip(takes, counts, question.counts, strict=True) if count < want]
            if not spare or min(spare) > room + NOISE:
                found.append(tuple(counts))
            return len(found) <= most
        fits = min(question.counts[at], floor((room + NOISE) / takes[at]))
        return all(add(at + 1, room - count * takes[at], [*counts, count]) for count in range(fits, -1, -1))

    return found if add(0, question.room(stock), []) else None


def pack(question: Question, work: float) -> Packing:
    """The cheapest packing that is found within so much work of the solver, and the least that any costs."""
    by_hand = first_fit(question)
    if _cost(question, by_hand) <= by_material(question):
        return Packing(tuple(by_hand), _cost(question, by_hand), _cost(question, by_hand))
    listed = [patterns(question, stock) for stock in question.stock]
    known = [each for each in listed if each is not None]
    if len(known) == len(listed):
        sticks, least = _by_patterns(question, known, by_hand, work)
    else:
        sticks, least = _by_sticks(question, by_hand, work)
    cost = _cost(question, sticks)
    step = gcd(*(stock.cost for stock in question.stock))
    least = ceil(max(least, by_material(question)) / step) * step
    return Packing(tuple(sticks), cost, min(cost, least))


def _cost(question: Question, sticks: list[Stick]) -> int:
    return sum(question.stock[stick.stock].cost for stick in sticks)


def by_material(question: Question) -> int:
    """The least cost by the sum of the lengths alone, at the best cost an inch."""
    need = sum(
        (length + question.kerf) * count for length, count in zip(question.lengths, question.counts, strict=True)
    )
    if len(question.stock) == 1:
        return ceil(need / question.room(question.stock[0]) - NOISE) * question.stock[0].cost
    return ceil(need * min(stock.cost / question.room(stock) for stock in question.stock) - 1e-6)


def _by_patterns(
    question: Question, listed: list[list[tuple[int, ...]]], by_hand: list[Stick], work: float
) -> tuple[list[Stick], int]:
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    ways = [Stick(stock, counts) for stock, each in enumerate(listed) for counts in each]
    times = [model.new_int_var(0, _most_times(question, way), f"way {n}") for n, way in enumerate(ways)]
    for at, count in enumerate(question.counts):
        model.add(sum(way.counts[at] * time for way, time in zip(ways, times, strict=True) if way.counts[at]) >= count)
    _minimise(model, question, ways, times, by_hand)
    solver = _solver(cp_model, work)
    status = solver.solve(model)
    least = ceil(solver.best_objective_bound / _weight(question, by_hand) - 1e-6)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return by_hand, least
    sticks = [way for way, time in zip(ways, times, strict=True) for _ in range(solver.value(time))]
    return _without_surplus(question, sticks), _settled(question, sticks, least, status == cp_model.OPTIMAL)


def _most_times(question: Question, way: Stick) -> int:
    return max(ceil(want / count) for want, count in zip(question.counts, way.counts, strict=True) if count)


def _weight(question: Question, by_hand: list[Stick]) -> int:
    """With several kinds of stock, of equal costs the fewest sticks win: costs are weighed, and each stick counts 1."""
    if len(question.stock) == 1:
        return 1
    return sum(question.counts) + 1


def _minimise(model: Any, question: Question, ways: list[Stick], times: list[Any], by_hand: list[Stick]) -> None:
    if len(question.stock) == 1:
        cost = question.stock[0].cost
        model.add(sum(times) >= by_material(question) // cost)
        model.minimize(cost * sum(times))
        return
    weight = _weight(question, by_hand)
    model.minimize(sum((question.stock[way.stock].cost * weight + 1) * t for way, t in zip(ways, times, strict=True)))


def _settled(question: Question, sticks: list[Stick], least: int, optimal: bool) -> int:
    return _cost(question, sticks) if optimal else least


def _by_sticks(question: Question, by_hand: list[Stick], work: float) -> tuple[list[Stick], int]:
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    takes = [ceil((length + question.kerf) * GRAIN - 1e-3) for length in question.lengths]
    rooms = [floor(question.room(stock) * GRAIN + 1e-3) for stock in question.stock]
    used: list[list[Any]] = []
    cut: list[list[Any]] = []
    for n, hint in enumerate(by_hand):
        used.append([model.new_bool_var(f"stick {n} of stock {s}") for s in range(len(rooms))])
        cut.append([model.new_int_var(0, want, f"stick {n} piece {i}") for i, want in enumerate(question.counts)])
        model.add_at_most_one(used[n])
        model.add(
            sum(take * piece for take, piece in zip(takes, cut[n], strict=True))
            <= sum(room * one for room, one in zip(rooms, used[n], strict=True))
        )
        for s, one in enumerate(used[n]):
            model.add_hint(one, s == hint.stock)
        for piece, count in zip(cut[n], hint.counts, strict=True):
            model.add_hint(piece, count)
        if n > 0:
            model.add(sum(used[n]) <= sum(used[n - 1]))
    for at, count in enumerate(question.counts):
        model.add(sum(pieces[at] for pieces in cut) == count)
    ways = [Stick(s, ()) for ones in used for s in range(len(ones))]
    _minimise(model, question, ways, [one for ones in used for one in ones], by_hand)
    solver = _solver(cp_model, work)
    status = solver.solve(model)
    least = ceil(solver.best_objective_bound / _weight(question, by_hand) - 1e-6)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return by_hand, least
    sticks = [
        Stick(s, tuple(solver.value(piece) for piece in cut[n]))
        for n, ones in enumerate(used)
        for s, one in enumerate(ones)
        if solver.value(one)
    ]
    return sticks, _settled(question, sticks, least, status == cp_model.OPTIMAL)


def _solver(cp_model: Any, work: float) -> Any:
    solver = cp_model.CpSolver()
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
