"""What to order for a job: by kind of supplier and by the day it is needed, with the day by which to order.

What is done or begun is left out: its material is on site. A lead time is counted in days on which offices work;
where nothing is said, one. What keeps comes for the first task that uses it, in one order.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from datetime import date

from build_tools.plan.calls import used_at
from build_tools.plan.lead_times import lead_days
from build_tools.plan.office_hours import add_weekdays, weekday_up_to
from build_tools.plan.order_quantities import Ordered, ordered
from build_tools.plan.plan import Plan


@dataclass(frozen=True, slots=True)
class OrderLine:
    """One material to order. ``late``: the day by which to order has passed.

    ``lead`` is the lead time in days on which offices work; 0 where nothing is said.
    """

    what: Ordered
    needed: date
    order_by: date
    lead: int
    late: bool

    @property
    def tasks(self) -> tuple[str, ...]:
        """The tasks that use it."""
        return tuple(dict.fromkeys(need.task for need in self.what.needs))


@dataclass(frozen=True, slots=True)
class SupplierOrder:
    """What one kind of supplier has to bring for one day."""

    supplier: str
    needed: date
    lines: tuple[OrderLine, ...]

    @property
    def order_by(self) -> date:
        """The day by which all of it is ordered."""
        return min(line.order_by for line in self.lines)

    @property
    def late(self) -> bool:
        """Whether the day to order a part of it has passed."""
        return any(line.late for line in self.lines)


def to_do(plan: Plan) -> list[str]:
    """The tasks that are not begun, whose material is not on site yet."""
    tasks = plan.job.tasks
    return [id for id in plan.prepared.activities if tasks[id].done is None and tasks[id].started is None]


def order_list(plan: Plan, today: date) -> list[SupplierOrder]:
    """Everything to order: by supplier, and of each by the day on which it is needed."""
    book = plan.context.book
    lots: dict[tuple[str, date], list[OrderLine]] = defaultdict(list)
    for what in ordered(plan, to_do(plan)):
        material = book.materials[what.material].item
        line = _line(plan, what, material.keeps, today)
        lots[material.supplier.inside(book.language), line.needed].append(line)
    return [
        SupplierOrder(supplier, day, tuple(sorted(lots[supplier, day], key=lambda line: line.what.material)))
        for supplier, day in sorted(lots)
    ]


def _line(plan: Plan, what: Ordered, keeps: bool, today: date) -> OrderLine:
    users = [need.task for need in what.needs]
    moments = [plan.starts(task) if keeps else used_at(plan, task, what.material) for task in users]
    needed = min(moments).date()
    lead = lead_days(plan.job, what.material)
    comes = weekday_up_to(needed, plan.job.holidays)
    order_by = add_weekdays(comes, -(lead or 1), plan.job.holidays)
    return OrderLine(what, needed, order_by, lead, order_by < today)
