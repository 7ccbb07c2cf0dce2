"""How much of each material a job orders: summed over its tasks, then rounded up to what is sold.

What is cut to length is packed into the lengths that are sold, over all tasks together. What does not keep comes to
each task by itself, and is rounded there.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from math import ceil

from build_tools.book import quantities
from build_tools.book.amounts import split_amount
from build_tools.plan.cuts import Cuts, cuts_of
from build_tools.plan.needs import MaterialNeed, all_needs
from build_tools.plan.plan import Plan
from calculators.units import from_inside


@dataclass(frozen=True, slots=True)
class Ordered:
    """So much of a material, in its unit, in whole packs of ``pack``; ``by_task`` is what each task takes of it.

    ``needs`` say how each task came to it, and ``cuts`` how the pieces come out of what is ordered.
    """

    material: str
    quantity: float
    unit: str
    pack: str
    by_task: dict[str, float]
    needs: tuple[MaterialNeed, ...] = ()
    cuts: Cuts | None = None

    @property
    def needed(self) -> float:
        """What the tasks take together, in the unit of the material and not rounded."""
        return sum(self.by_task.values())

    @property
    def size(self) -> float:
        """How much is in a pack, in the unit of the material."""
        parts = split_amount(self.pack)
        return parts.number if parts else 1.0


def ordered(plan: Plan, tasks: Collection[str] | None = None) -> Iterator[Ordered]:
    """Every material of which there is something to order, for those tasks of a job or for all."""
    lots: dict[tuple[str, str], list[MaterialNeed]] = defaultdict(list)
    for need in all_needs(plan.prepared.take_offs):
        if tasks is None or need.task in tasks:
            keeps = plan.context.book.materials[need.material].item.keeps
            lots[need.material, "" if keeps else need.task].append(need)
    for (id, _), needs in lots.items():
        made = _ordered(plan, id, needs)
        if made.quantity:
            yield made


def _ordered(plan: Plan, id: str, needs: list[MaterialNeed]) -> Ordered:
    material = plan.context.book.materials[id].item
    by_task: dict[str, float] = defaultdict(float)
    for need in needs:
        by_task[need.task] += need.number
    unit = material.counted_in
    pack = quantities.text(plan.context.book, material.sold_by) if material.sold_by else ""
    made = Ordered(id, 0.0, unit, pack or f"1 {unit}", dict(by_task), tuple(need for need in needs if need.number))
    cuts = cuts_of(plan, id, needs)
    if cuts is not None:
        quantity = _bought(cuts, unit)
        return Ordered(id, quantity, unit, f"1 {unit}", made.by_task, made.needs, cuts)
    packs = ceil(round(made.needed / made.size, 6))
    return Ordered(id, packs * made.size, unit, made.pack, made.by_task, made.needs)


def _bought(cuts: Cuts, unit: str) -> float:
    """The sticks of a cut list in the unit of their material: a length, or how many."""
    if unit == "ft":
        return from_inside(sum(length * count for length, count in cuts.sticks.items()), "length", "ft")
    return float(sum(cuts.sticks.values()))
