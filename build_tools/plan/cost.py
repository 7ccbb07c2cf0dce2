"""What a job costs: materials, labour and rented tools, against the budget.

Every amount is shared out over the tasks that it is for, so that it can be summed by dwelling and by trade. What has no
price is named and is in no sum.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from math import ceil
from typing import Literal

from build_tools.plan.calls import runs
from build_tools.plan.money import MoneyAmount, read_money, times
from build_tools.plan.order_quantities import Ordered, ordered
from build_tools.plan.plan import Plan
from build_tools.plan.planned_job import PlannedJob
from build_tools.plan.precedence import dwelling_of
from build_tools.plan.worktime import SLOTS_PER_HOUR
from calculators.reading import read

Kind = Literal["material", "labour", "rental"]
KINDS: tuple[Kind, ...] = ("material", "labour", "rental")
EARLIER = ""
"""The id of whoever worked before the day of planning: the job says what is done, and not who did it."""
A_DAY = "1 day"


@dataclass(frozen=True, slots=True)
class CostLine:
    """One line of the cost: so much of a material, so many hours of a person, so many days of a rented tool.

    ``each`` is the price of ``per``. ``amount`` is None where there is no price, or none that fits the unit. ``shares``
    are the parts of the line by task; they add up to 1.
    """

    kind: Kind
    thing: str
    quantity: float
    unit: str
    each: float | None
    per: str
    amount: float | None
    shares: Mapping[str, float]


@dataclass(slots=True)
class Cost:
    """All lines, in one currency. ``dwellings`` and ``trades`` say of each task where it belongs ('' is outside)."""

    currency: str
    budget: float | None
    lines: list[CostLine] = field(default_factory=list)
    dwellings: dict[str, str] = field(default_factory=dict)
    trades: dict[str, str] = field(default_factory=dict)

    @property
    def total(self) -> float:
        """The sum of all lines that have a price."""
        return sum(line.amount or 0.0 for line in self.lines)

    @property
    def left(self) -> float | None:
        """What is left of the budget; less than nothing when it is overrun."""
        return None if self.budget is None else self.budget - self.total

    @property
    def unpriced(self) -> list[CostLine]:
        """The lines without a price."""
        return [line for line in self.lines if line.amount is None]

    def of(self, kind: Kind) -> list[CostLine]:
        """The lines of one kind."""
        return [line for line in self.lines if line.kind == kind]

    def sum_of(self, kind: Kind) -> float:
        """The sum of the lines of one kind."""
        return sum(line.amount or 0.0 for line in self.of(kind))

    def summed(self, groups: Mapping[str, str]) -> dict[str, dict[Kind, float]]:
        """The sums by group and kind; ``groups`` says of each task which group it is in."""
        found: dict[str, dict[Kind, float]] = defaultdict(lambda: dict.fromkeys(KINDS, 0.0))
        for line in self.lines:
            for task, share in line.shares.items():
                found[groups[task]][line.kind] += share * (line.amount or 0.0)
        return dict(found)


def cost_of(planned: PlannedJob | Plan) -> Cost:
    """The cost of a plan, or of the plan of a whole job."""
    plan = planned.plan if isinstance(planned, PlannedJob) else planned
    job = plan.job
    made = Cost("", None)
    if job.money is not None:
        budget = read_money(job.money.budget)
        made.budget, made.currency = budget.number, budget.currency
    for id, task in job.tasks.items():
        made.dwellings[id] = dwelling_of(job, task.space)
        made.trades[id] = plan.context.book.procedures[task.procedure].trade
    made.lines = [*_materials(plan), *_labour(plan), *_rentals(plan)]
    made.currency = made.currency or next((money.currency for money in _amounts(plan)), "")
    return made


def _amounts(plan: Plan) -> Iterator[MoneyAmount]:
    for text in (*(price.price for price in plan.job.prices), *(hand.rate for hand in plan.prepared.hands)):
        if text:
            yield read_money(text)


def _price(plan: Plan, thing: str) -> tuple[float, str] | None:
    """The price of a material or a tool, and what it is for ('' where nothing is said)."""
    for price in plan.job.prices:
        if thing in (price.material, price.tool) and price.price:
            return read_money(price.price).number, price.per or ""
    return None


def _materials(plan: Plan) -> Iterator[CostLine]:
    for order in ordered(plan):
        price = _price(plan, order.material)
        each, per = price if price else (None, "")
        per = per or order.pack
        count = times(order.quantity, order.unit, per)
        amount = each * count if each is not None and count is not None else None
        yield CostLine("material", order.material, order.quantity, order.unit, each, per, amount, _shared(order))


def _shared(order: Ordered) -> dict[str, float]:
    whole = sum(order.by_task.values())
    if not whole:
        return {task: 1 / len(order.by_task) for task in order.by_task}
    return {task: number / whole for task, number in order.by_task.items()}


def _labour(plan: Plan) -> Iterator[CostLine]:
    """The hours of each person, and those that were worked before the day of planning."""
    job, activities = plan.job, plan.prepared.problem.activities
    rates = {hand.person: hand.rate for hand in plan.prepared.hands}
    usual = job.money.labour_rate if job.money else None
    hours: dict[str, dict[str, float]] = defaultdict(lambda: defaultdict(float))
    for task, one in job.tasks.items():
        before = _worked(plan, task) if one.done or one.started else 0.0
        if before:
            hours[EARLIER][task] += before
    for stretch in plan.stretches:
        for person in stretch.people:
            hours[person][stretch.task] += activities[stretch.activity].duration / SLOTS_PER_HOUR
    for person in sorted(hours, key=[EARLIER, *rates].index):
        mine, rate = hours[person], rates.get(person) or usual
        each = read_money(rate).number if rate else None
        count = sum(mine.values())
        amount = None if each is None else each * count
        shares = {task: number / count for task, number in mine.items()}
        yield CostLine("labour", person, count, "h", each, "1 h", amount, shares)


def _worked(plan: Plan, task: str) -> float:
    """The hours of a task that were worked before the day of planning."""
    left = plan.job.tasks[task].left
    whole = plan.prepared.take_offs[task].hours
    if plan.job.tasks[task].done:
        return whole
    return max(0.0, whole - read(left, "time", "h")) if left else 0.0


def _rentals(plan: Plan) -> Iterator[CostLine]:
    """The working days on which each rented tool is here, from the day it comes to the day it goes back."""
    book, activities = plan.context.book, plan.prepared.problem.activities
    users: dict[str, list[str]] = defaultdict(list)
    for task in plan.prepared.activities:
        for line in book.procedures[plan.job.tasks[task].procedure].item.tools:
            if book.tools[line.tool].item.rented and task not in users[line.tool]:
                users[line.tool].append(task)
    for tool, tasks in users.items():
        price = _price(plan, tool)
        each, per = price if price else (None, "")
        per = per or A_DAY
        used: dict[str, float] = defaultdict(float)
        days, paid = 0, 0.0
        for run in runs(plan, [one for task in tasks for one in plan.of_task(task) if not one.visit]):
            here = _days(plan, run[0].starts.date(), max(one.ends for one in run).date())
            days += here
            paid += ceil(times(here, "days", per) or 0.0)
            for stretch in run:
                used[stretch.task] += activities[stretch.activity].duration
        whole = sum(used.values())
        if days:
            amount = each * paid if each is not None and paid else None
            shares = {task: slots / whole for task, slots in used.items()}
            yield CostLine("rental", tool, days, "days", each, per, amount, shares)


def _days(plan: Plan, first: date, last: date) -> int:
    return sum(first <= day <= last for day in plan.worktime.days)
