"""Planning a job measured: the time to the proof that no plan ends sooner, and what the plan is worth.

The job has forty tasks in two dwellings for three people, with floors that close rooms and inspectors who are called.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from time import perf_counter

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.book.model.job import Job
from build_tools.book.yaml_reader import read_text
from build_tools.plan.checks import check_job
from build_tools.plan.planning import plan_job

BUDGET = 10.0
TODAY = date(2026, 12, 1)
HEAD = """\
title: Two dwellings
summary: Made up, to be measured.
start: 2026-12-07
deadline: 2027-02-26
holidays: [2026-12-25, 2027-01-01]
already_done: [{procedure: finishing-order}]
people:
  - {person: ida-marsh, days: [monday, tuesday, thursday]}
  - {person: tobin-reyes}
  - {person: wren-okafor, off: [2026-12-11]}
dwellings: {left: {title: Left}, right: {title: Right}}
"""
TASKS = """\
circuits: {procedure: circuits-proved-dead, space: house}
boards: {procedure: flooring-receiving, space: room, quantity: "space:area"}
subfloor: {procedure: subfloor-preparation, space: room}
subfloor-bath: {procedure: subfloor-preparation, space: bath}
tile: {procedure: tile-floor, space: bath}
rack: {procedure: strip-floor-racking, space: room}
nail: {procedure: floor-nailing, space: room}
fill: {procedure: floor-filling, space: room}
sand: {procedure: floor-sanding, space: room}
finish: {procedure: floor-finishing, space: room}
door: {procedure: prehung-door, space: bath}
trim: {procedure: interior-trim, space: room, count: 3}
base: {procedure: base-and-shoe, space: room, quantity: "space:perimeter"}
stops: {procedure: supply-stops, space: bath, count: 3}
toilet: {procedure: toilet-set, space: bath}
tub: {procedure: tub-trim, space: bath}
lights: {procedure: surface-light, space: room, count: 4}
alarms: {procedure: alarm-places, space: room}
lock: {procedure: lockset-install, space: room}
closet: {procedure: closet-shelf-pole, space: room}
"""
_OPENINGS = "openings: [{opening: door, sides: '2'}]"
_STRIPS = "inputs: {strip-floor-take-off: {rooms: 'space:rooms'}}"
GIVEN = {
    "boards": _STRIPS,
    "subfloor": _STRIPS,
    "subfloor-bath": _STRIPS,
    "tile": "inputs: {tile-take-off: {length: 'space:length', width: 'space:width'}}",
    "nail": _STRIPS,
    "fill": _STRIPS,
    "finish": "inputs: {floor-finish: {rooms: 'space:rooms'}}",
    "trim": f"inputs: {{trim-take-off: {{{_OPENINGS}}}}}",
    "base": f"inputs: {{trim-take-off: {{rooms: 'space:rooms', {_OPENINGS}}}}}",
    "alarms": (
        "inputs: {alarm-places: {storeys: '1', sleeping_rooms: '1', sleeping_areas: '1', fuel: 'no', garage: 'no'}}"
    ),
    "lock": "inputs: {lock-schedule: {openings: [{opening: door}]}}",
    "closet": "inputs: {closet: {width: 6'}}",
}
"""The sizes that the tasks' calculators ask for, by task."""


@dataclass(frozen=True, slots=True)
class Planning:
    """The measurement: seconds to the proved end from reading on, and of the whole plan with its other aims.

    ``days`` is how long the plan is, ``ratio`` is that of its working days to those of one task after another.
    """

    tasks: int
    proof_seconds: float
    seconds: float
    proved: bool
    days: int
    ratio: float

    @property
    def passes(self) -> bool:
        """Whether the end was proved in time. The other aims have shares of a time of their own."""
        return self.proved and self.proof_seconds <= BUDGET

    def __str__(self) -> str:
        proof = f"end {'proved' if self.proved else 'not proved'} in {self.proof_seconds:.2f} s"
        return (
            f"planning a job of {self.tasks} tasks: {proof} (budget {BUDGET:.0f} s, "
            f"{'pass' if self.passes else 'OVER'}), all aims in {self.seconds:.2f} s; {self.days} working days, "
            f"{self.ratio:.2f} of one task after another"
        )


def job_text() -> str:
    """The job as its file would have it."""
    spaces, doors, tasks = [], [], []
    for house, size in (("left", "length: 22', width: 14'"), ("right", "length: 18', width: 13'")):
        counts = "measures: {turned-rows: '0', lower-doorways: '0', doors: '2'}"
        spaces.append(f"  {house}-room: {{title: Room, dwelling: {house}, {size}, crews: 2, {counts}}}")
        counts = "measures: {doorways: '1', sealed-joints: 8', tubs: '1'}"
        bath = f"length: 8', width: 5', reached_through: [{house}-room], {counts}"
        spaces.append(f"  {house}-bath: {{title: Bath, dwelling: {house}, {bath}}}")
        doors.append(
            f"  {house}-door: {{title: Door, space: {house}-bath, lock: bathroom, width: 30 in, height: 80 in}}"
        )
        for line in TASKS.splitlines():
            name = line.partition(":")[0]
            mine = f"{line[:-1]}, {GIVEN[name]}}}" if name in GIVEN else line
            mine = mine.replace("opening: door", f"opening: {house}-door").replace("space: house", f"space: {house}")
            for room in ("room", "bath"):
                mine = mine.replace(f"space: {room}", f"space: {house}-{room}")
            tasks.append(f"  {house}-{mine}")
    return HEAD + "\n".join(["spaces:", *spaces, "openings:", *doors, "tasks:", *tasks]) + "\n"


def measure_planning(real: Path) -> Planning:
    """Plan the job with the procedures of the real book, with nothing kept from before."""
    document = read_text(job_text(), "procedures/jobs/two-dwellings.yaml")
    entry = Entry("two-dwellings", Job.model_validate(document.data), document)
    book = load_book(real).book
    context = Context.of(replace(book, jobs={entry.id: entry}), Memo())
    diagnostics = [str(diagnostic) for diagnostic in check_job(context, entry, TODAY) if diagnostic.severity == "error"]
    if diagnostics:
        raise ValueError("\n".join(diagnostics))
    began = perf_counter()
    proof = plan_job(context, entry, TODAY, objectives=1).solution.end.proved
    proved_after = perf_counter()
    plan = plan_job(context, entry, TODAY)
    seconds = perf_counter() - proved_after
    days = sum(day <= plan.end.date() for day in plan.worktime.days)
    ratio = days / len(plan.worktime.days)
    return Planning(len(plan.job.tasks), proved_after - began, seconds, proof, days, ratio)
