"""What one task takes: its labour hours and its materials, worked out and not yet rounded to packs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from build_tools.book.amounts import measured, read_figure, split_amount
from build_tools.book.book import Entry
from build_tools.book.calls import Called, shown_input
from build_tools.book.checks.context import Context
from build_tools.book.model.base import Written
from build_tools.book.model.job import Job, Task
from build_tools.book.model.table import Amount, Call
from build_tools.book.problems import Problem, did_you_mean
from build_tools.book.uses import figure_of
from build_tools.book.yaml_reader import Location
from build_tools.plan.measures import Unknown, columns_of, known_sizes, put_in
from calculators.declaration import Answer, Calculator
from calculators.reading import Unreadable, read
from calculators.units import from_inside, to_inside
from calculators.writing import decimal


@dataclass(frozen=True, slots=True)
class Piece:
    """Pieces of one length, in inches, that are cut for a task."""

    length: float
    count: int
    name: str


@dataclass(frozen=True, slots=True)
class Needed:
    """So much of a material for one task: ``number`` in the material's unit, not rounded, and how it was found.

    ``given`` are the inputs that the calculator took, as they are written. ``example``: a size that the task does not
    give is that of the book's own example. ``pieces`` are those of what is cut to length.
    """

    task: str
    material: str
    number: float
    how: str
    calculator: str = ""
    working: tuple[str, ...] = ()
    given: tuple[tuple[str, str], ...] = ()
    example: bool = False
    pieces: tuple[Piece, ...] = ()


@dataclass(slots=True)
class TakeOff:
    """Labour hours of all people together, and materials. ``times`` is how often the hours' measure goes into it."""

    hours: float
    times: float
    materials: list[Needed] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)


def take_off(context: Context, entry: Entry[Job], id: str) -> TakeOff:
    """What the task ``id`` of a job takes. Whatever cannot be worked out is among the problems."""
    return _TaskReader(context, entry, id).read()


@dataclass(slots=True)
class _TaskReader:
    context: Context
    entry: Entry[Job]
    id: str
    problems: list[Problem] = field(default_factory=list)

    @property
    def task(self) -> Task:
        return self.entry.item.tasks[self.id]

    def read(self) -> TakeOff:
        procedure = self.context.book.procedures[self.task.procedure].item
        labour = procedure.labour
        times = self.times(figure_of(labour.per, self.context.book) or "", ("tasks", self.id))
        hours = self.hours(labour.hours, times)
        made = TakeOff(hours, times, problems=self.problems)
        for line in procedure.materials:
            work = figure_of(line.work, self.context.book) if line.work else ""
            made.materials.append(self.needed(line.material, line.quantity, work or "", line.cut))
        return made

    def hours(self, amount: Amount, times: float) -> float:
        task = self.task
        if task.hours is not None:
            return self.figure(task.hours, "time", "h", ("tasks", self.id, "hours"))
        if isinstance(amount, Call):
            output = self.context.calculators[amount.calculator].output(amount.output)
            value, _, _ = self.called(amount)
            return to_inside(value, "time", output.unit) * self.calls(amount) if output else 0.0
        text = figure_of(amount, self.context.book) or "0 h"
        return read(text, "time", "h") * times

    def needed(self, material: str, amount: Amount, work: str, cut: str | None) -> Needed:
        if isinstance(amount, Call):
            value, called, example = self.called(amount)
            count = self.calls(amount)
            how = "" if count == 1 else f"x {count}"
            answer = called.answer or {}
            return Needed(
                self.id,
                material,
                value * count,
                how,
                amount.calculator,
                tuple(answer.get("working", ())),
                tuple(shown_inputs(called)),
                example,
                tuple(pieces_of(answer, cut, count)) if cut else (),
            )
        parts = split_amount(figure_of(amount, self.context.book) or "")
        number = parts.number if parts else 0.0
        times = self.times(work, ("tasks", self.id)) if work else float(self.task.count)
        share = f"{self.shown_quantity()} / {work}" if work else str(self.task.count)
        return Needed(self.id, material, number * times, f"{decimal(number, 2)} x {share}")

    def calls(self, amount: Call) -> int:
        """How often the answer of a calculator counts: a list that the task gives is the whole list already."""
        given = self.task.inputs.get(amount.calculator, {}).values()
        return 1 if any(isinstance(written, list) for written in given) else self.task.count

    def called(self, amount: Call) -> tuple[float, Called, bool]:
        """A calculator with the inputs of the task over those of the book: the output as a bare number."""
        calculator = self.context.calculators[amount.calculator]
        output = calculator.output(amount.output)
        given = self.inputs(amount.calculator)
        called = self.context.call_with(amount.calculator, {**amount.inputs, **given})
        at: Location = ("tasks", self.id, "inputs", amount.calculator)
        for complaint in called.complaints:
            place = (*at, complaint.input) if complaint.input in given else ("tasks", self.id)
            self.say(place, f"calculator '{amount.calculator}': {complaint.message}", complaint.hint)
        if called.answer is None or output is None:
            return 0.0, called, False
        value = from_inside(float(called.answer[output.name]), output.quantity, output.unit)
        return value, called, any(_sizes(calculator, name) for name in amount.inputs if name not in given)

    def inputs(self, calculator: str) -> dict[str, Written]:
        """What the task gives a calculator, with what it takes of spaces and openings put in."""
        made: dict[str, Written] = {}
        declared = self.context.calculators[calculator]
        for name, written in self.task.inputs.get(calculator, {}).items():
            try:
                made[name] = put_in(written, self.entry.item, self.task.space, columns_of(declared, name))
            except Unknown as unknown:
                at = ("tasks", self.id, "inputs", calculator, name)
                self.say(at, unknown.message, did_you_mean(unknown.name, unknown.known))
        return made

    def times(self, per: str, at: Location) -> float:
        """How often a stated amount of work goes into the task: 126 sq ft for hours per 100 sq ft is 1.26 times."""
        parts = split_amount(per)
        if parts is None or not parts.number:
            return float(self.task.count)
        if not measured(parts.unit):
            return self.task.count / parts.number
        quantity = self.quantity(per)
        if quantity is None:
            if self.task.quantity is None:
                self.say(at, f"does not say how much: '{self.task.procedure}' counts by {per}", "write 'quantity: ...'")
            return 0.0
        try:
            size, kind = read_figure(quantity)
            one, wanted = read_figure(per)
        except Unreadable as trouble:
            self.say((*at, "quantity"), str(trouble))
            return 0.0
        if kind != wanted:
            self.say((*at, "quantity"), f"'{quantity}' does not fit: '{self.task.procedure}' counts by {per}")
            return 0.0
        return size / one * self.task.count

    def quantity(self, per: str) -> str | None:
        """The quantity of the task; where it gives none, the area of its space for what is counted by area."""
        task, job = self.task, self.entry.item
        if task.quantity is not None:
            try:
                made = put_in(task.quantity, job, task.space)
            except Unknown as unknown:
                self.say(("tasks", self.id, "quantity"), unknown.message, did_you_mean(unknown.name, unknown.known))
                return None
            return str(made)
        space = job.spaces.get(task.space)
        if space is not None and read_figure(per)[1] == "area":
            return known_sizes(space).get("area")
        return None

    def shown_quantity(self) -> str:
        quantity = self.task.quantity or "space:area"
        try:
            text = str(put_in(quantity, self.entry.item, self.task.space))
        except Unknown:
            text = quantity
        return text if self.task.count == 1 else f"{self.task.count} x {text}"

    def figure(self, text: str, quantity: str, unit: str, at: Location) -> float:
        try:
            return read(str(put_in(text, self.entry.item, self.task.space)), quantity, unit)
        except (Unreadable, Unknown) as trouble:
            self.say(at, str(trouble))
            return 0.0

    def say(self, at: Location, message: str, hint: str = "") -> None:
        problem = self.entry.error(at, message, hint)
        if problem not in self.problems:
            self.problems.append(problem)


def _sizes(calculator: Calculator, name: str) -> bool:
    """Whether an input says how large or how much, and is no setting."""
    declared = calculator.input(name)
    return declared is not None and declared.quantity in {"rows", "plan", "length", "area"}


def shown_inputs(called: Called) -> Iterator[tuple[str, str]]:
    """What a calculator took, beside what it starts at by itself: the label of each input and its text."""
    for each in called.calculator.inputs:
        value = called.values.get(each.name)
        if value not in (None, [], "") and value != each.default:
            yield each.label, shown_input(each, value)


def pieces_of(answer: Answer, stock: str, times: int) -> Iterator[Piece]:
    """The pieces of an answer that come out of that stock.

    >>> [*pieces_of({"pieces": [{"length": 60.0, "count": 2, "name": "rod", "stock": "rod"}]}, "rod", 3)]
    [Piece(length=60.0, count=6, name='rod')]
    """
    for row in answer.get("pieces", ()):
        if row["stock"] == stock:
            yield Piece(row["length"], round(row["count"]) * times, row.get("name") or row["piece"])


def all_needed(take_offs: dict[str, TakeOff]) -> Iterator[Needed]:
    """Every line of every task."""
    for made in take_offs.values():
        yield from made.materials
