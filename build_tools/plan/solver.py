"""OR-Tools CP-SAT as every search of a plan uses it: what it finds depends on the problem alone.

It works on one core with a fixed seed, and stops by its own count of work, never by a clock: a busy machine takes
longer and finds the same. Workers side by side tell each other what they find when they find it, so with two of them
each run would differ; those that wait for each other (``interleave_search``) prove less in the same processor time.
"""

from __future__ import annotations

from dataclasses import dataclass

from ortools.sat.python import cp_model

A_MOMENT = 0.05
"""Work that a search may do at least, to take over what is known."""


@dataclass(slots=True)
class Effort:
    """The work that several searches may do together, in the solver's units: two seconds of one core or more each."""

    most: float
    spent: float = 0.0

    @property
    def left(self) -> float:
        """What may still be done; a moment at least."""
        return self.until(1.0)

    def until(self, part: float) -> float:
        """What may be done until that part of it is spent; a moment at least."""
        return max(self.most * part - self.spent, A_MOMENT)

    def search(
        self,
        model: cp_model.CpModel,
        limit: float,
        callback: cp_model.CpSolverSolutionCallback | None = None,
        *,
        for_bounds: bool = False,
    ) -> SearchResult:
        """Search within that limit. ``for_bounds``: it shows what no plan can reach, rather than a better plan."""
        solver = cp_model.CpSolver()
        solver.parameters.catch_sigint_signal = False  # else Ctrl-C cuts off all that comes after
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 1
        solver.parameters.max_deterministic_time = limit
        solver.parameters.cp_model_probing_level = 1  # more of it takes as long as the search
        solver.parameters.linearization_level = 0  # whole numbers alone: nothing is rounded, and more is proved
        solver.parameters.use_objective_lb_search = for_bounds
        status = solver.solve(model, callback)
        self.spent += solver.response_proto.deterministic_time
        return SearchResult(solver, status)


@dataclass(frozen=True, slots=True)
class SearchResult:
    """What a search came to."""

    solver: cp_model.CpSolver
    status: cp_model.CpSolverStatus

    @property
    def found(self) -> bool:
        """Whether there is a plan."""
        return self.status in (cp_model.OPTIMAL, cp_model.FEASIBLE)

    @property
    def proved(self) -> bool:
        """Whether the search ended by itself: the plan is the best one, or there is none."""
        return self.status in (cp_model.OPTIMAL, cp_model.INFEASIBLE)

    @property
    def value(self) -> int:
        """The objective's value in the plan that was found."""
        return round(self.solver.objective_value)

    @property
    def bound(self) -> int:
        """The best value of the objective that is not ruled out: 0 where a search that was cut short knows nothing."""
        if self.status == cp_model.OPTIMAL:
            return self.value
        return max(round(self.solver.best_objective_bound), 0) if self.found else 0
