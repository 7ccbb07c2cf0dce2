"""How much of each material a job orders: summed over its tasks, then rounded up to what is sold."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from build_tools.book.amounts import split_amount
from build_tools.plan.plan import Plan
from build_tools.plan.take_off import all_needed


@dataclass(frozen=True, slots=True)
class Ordered:
    """So much of a material, in its unit, in whole packs of ``pack``; ``by_task`` is what each task takes of it."""

    material: str
    quantity: float
    unit: str
    pack: str
    by_task: dict[str, float]


def ordered(plan: Plan) -> Iterator[Ordered]:
    """Every material of a job of which there is something to order."""
    by_material: dict[str, dict[str, float]] = defaultdict(lambda: defaultdict(float))
    for need in all_needed(plan.prepared.take_offs):
        by_material[need.material][need.task] += need.number
    for id, by_task in by_material.items():
        material = plan.context.book.materials[id].item
        pack = material.sold_by or f"1 {material.counted_in}"
        parts = split_amount(pack)
        size = parts.number if parts else 1.0
        packs = ceil(round(sum(by_task.values()) / size, 6))
        if packs:
            yield Ordered(id, packs * size, material.counted_in, pack, dict(by_task))
