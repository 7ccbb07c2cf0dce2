"""Racking a room measured: the time, and the waste beside the least possible and beside a plain first-fit lay."""

from __future__ import annotations

from dataclasses import dataclass
from time import perf_counter

from build_tools.bench.first_fit import first_fit
from calculators.flooring.racking.plan import Pile, rack, rules_of

ROOM = (240.0, 180.0)
"""Inches: 300 sq ft."""
PILES = 5
SECONDS = 1.0


@dataclass(frozen=True, slots=True)
class Racking:
    """The measurement: the longest time of a room, and waste in percent of the rows, over the same piles."""

    seconds: float
    waste: float
    first_fit_waste: float

    @property
    def passes(self) -> bool:
        """Whether each room was laid in time."""
        return self.seconds <= SECONDS

    def __str__(self) -> str:
        return (
            f"racking a 300 sq ft room: {self.seconds:.2f} s (budget {SECONDS:.0f} s, "
            f"{'pass' if self.passes else 'OVER'}); waste {self.waste:.3f} % over the least possible, "
            f"first fit {self.first_fit_waste:.3f} %"
        )


def measure_racking() -> Racking:
    """Lay one room from several drawn piles, by the search and by first fit.

    >>> measure_racking().waste < 1
    True
    """
    wide, high = ROOM
    plan = [{"name": "", "less": False, "points": [[0.0, 0.0], [wide, 0.0], [wide, high], [0.0, high]]}]
    rules = rules_of(6, 1, 18, 6, 0.125)
    seconds, used, plain_used, lineal, plain_lineal = 0.0, 0, 0, 0, 0
    for seed in range(1, PILES + 1):
        start = perf_counter()
        racked = rack(plan, 0.25, 2.25, 1.0, rules, Pile([], 33.0, 9.0, 84.0, 10.0, seed))
        seconds = max(seconds, perf_counter() - start)
        used += racked.layout.used_length(racked.boards)
        lineal += racked.lineal
        plain = first_fit(racked.runs, racked.boards, rules)
        if plain.stuck is None:
            plain_used += plain.used_length(racked.boards)
            plain_lineal += racked.lineal
    plain_waste = (plain_used / plain_lineal - 1) * 100 if plain_lineal else 100.0
    return Racking(seconds, (used / lineal - 1) * 100, plain_waste)
