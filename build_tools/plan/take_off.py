"""What one task takes: its labour hours and its materials, worked out and not yet rounded to packs."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field

from build_tools.book import quantities
from build_tools.book.amounts import measured, read_figure, split_amount
from build_tools.book.book import Entry
from build_tools.book.calls import CallResult, departures
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.model.base import Written
from build_tools.book.model.job import Job, Task
from build_tools.book.model.procedure import MaterialLine, Procedure
from build_tools.book.model.table import Amount, Call
from build_tools.book.yaml_reader import Location
from build_tools.plan.example import example_of, missing_inputs, settings_of
from build_tools.plan.measures import UnknownMeasure, columns_of, known_sizes, substitute_measures
from build_tools.plan.needs import MaterialNeed, TakeOff, cut_pieces_of
from calculators.answering import split_rows
from calculators.declaration import Refused
from calculators.reading import Unreadable, read
from calculators.units import from_inside, to_inside
from calculators.writing import decimal

SIZES = ("length", "area", "volume")


def take_off(context: Context, entry: Entry[Job], id: str) -> TakeOff:
    """What the task ``id`` of a job takes. Whatever cannot be worked out is among the diagnostics."""
    return _TaskReader(context, entry, id).read()


@dataclass(slots=True)
class _TaskReader:
    context: Context
    entry: Entry[Job]
    id: str
    diagnostics: list[Diagnostic] = field(default_factory=list)
    unsized: set[str] = field(default_factory=set)

    @property
    def task(self) -> Task:
        return self.entry.item.tasks[self.id]

    @property
    def procedure(self) -> Procedure:
        return self.context.book.procedures[self.task.procedure].item

    def read(self) -> TakeOff:
        labour = self.procedure.labour
        self.look_for_sizes()
        self.look_for_served()
        times = self.times(quantities.text(self.context.book, labour.per), ("tasks", self.id))
        hours = self.hours(labour.hours, times)
        made = TakeOff(hours, times, diagnostics=self.diagnostics)
        made.materials = [self.needed(line) for line in self.procedure.materials]
        return made

    def look_for_sizes(self) -> None:
        """Say which calculators lack what the book gives for its own example alone."""
        hours = [] if self.task.hours is not None else [self.procedure.labour.hours]
        examples: dict[str, dict[str, None]] = defaultdict(dict)
        for amount in (*hours, *(line.quantity for line in self.procedure.materials)):
            if isinstance(amount, Call):
                calculator = self.context.calculators[amount.calculator]
                examples[calculator.name] |= dict.fromkeys(example_of(self.context.book, calculator, amount.inputs))
        for name, example in examples.items():
            missing = missing_inputs(self.context.calculators[name], example, self.task.inputs.get(name, {}))
            if missing:
                self.unsized.add(name)
                said = ", ".join(f"{each}: {self.size_here(name, each)}" for each in missing)
                self.say(
                    ("tasks", self.id),
                    f"gives '{name}' no {_and(missing)}: the book's own example would be ordered",
                    f"write 'inputs: {{{name}: {{{said}}}}}'",
                )

    def size_here(self, calculator: str, name: str) -> str:
        """Where the task's space has such a size, how it is taken; else what is to be filled in."""
        space = self.entry.item.spaces.get(self.task.space)
        declared = self.context.calculators[calculator].input(name)
        measure = "rooms" if declared and declared.quantity == "plan" else name.replace("_", "-")
        return f"'space:{measure}'" if space is not None and measure in known_sizes(space) else "..."

    def look_for_served(self) -> None:
        """Say what the task does not count though a material goes by it, and what it counts for nothing."""
        known = list(dict.fromkeys(line.serves for line in self.procedure.materials if line.serves))
        for name in self.task.serves:
            if name not in known:
                hint = did_you_mean(name, known) or (f"known here: {', '.join(known)}" if known else "")
                self.say(
                    ("tasks", self.id, "serves", name), f"no material of '{self.task.procedure}' is counted by it", hint
                )
        missing = [name for name in known if self.written_of(name) is None]
        if missing:
            said = ", ".join(f"{name}: ..." for name in missing)
            self.say(
                ("tasks", self.id),
                f"does not say its {_and(missing)}: materials of '{self.task.procedure}' are counted by that",
                f"write 'serves: {{{said}}}', 0 where there are none; or measures of these names in its space",
            )

    def written_of(self, served: str) -> str | None:
        """What the task says of something that a material goes by, or else its space."""
        space = self.entry.item.spaces.get(self.task.space)
        return self.task.serves.get(served) or (space.measures.get(served) if space is not None else None)

    def hours(self, amount: Amount, times: float) -> float:
        task = self.task
        if task.hours is not None:
            return self.figure(task.hours, "time", "h", ("tasks", self.id, "hours"))
        if isinstance(amount, Call):
            output = self.context.calculators[amount.calculator].output(amount.output)
            value, _ = self.called(amount)
            return to_inside(value, "time", output.unit) * self.calls(amount) if output else 0.0
        return quantities.hours(self.context.book, amount) * times

    def needed(self, line: MaterialLine) -> MaterialNeed:
        work = quantities.text(self.context.book, line.work) if line.work else ""
        served, share = self.served(line, work) if line.serves else (None, "")
        if isinstance(line.quantity, Call):
            value, called = self.called(line.quantity)
            count = self.calls(line.quantity) if served is None else served
            answer = called.answer or {}
            return MaterialNeed(
                self.id,
                line.material,
                value * count,
                "" if count == 1 else f"x {share or decimal(count, 2)}",
                line.quantity.calculator,
                tuple(answer.get("working", ())),
                tuple(departures(self.context.book, called)),
                tuple(cut_pieces_of(answer, line.cut, round(count))) if line.cut else (),
            )
        number = quantities.amount(self.context.book, line.quantity).number
        if served is None:
            served = self.times(work, ("tasks", self.id)) if work else float(self.task.count)
            share = f"{self.shown_quantity(work)} / {work}" if work else str(self.task.count)
        return MaterialNeed(self.id, line.material, number * served, f"{decimal(number, 2)} x {share}")

    def served(self, line: MaterialLine, work: str) -> tuple[float, str]:
        """How often the quantity of a material goes into what it serves in this task, and that in words."""
        name = line.serves or ""
        at: Location = ("tasks", self.id, "serves", name) if name in self.task.serves else ("tasks", self.id)
        written = self.written_of(name)
        if written is None:
            return 0.0, ""
        text = self.put_in_space(written, at)
        try:
            size, kind = read_figure(text)
            one, wanted = read_figure(work or "1")
        except Unreadable as trouble:
            self.say(at, str(trouble))
            return 0.0, ""
        if not size:  # nothing, in whatever unit
            return 0.0, f"{text} ({name.replace('-', ' ')})"
        if kind != wanted:
            self.say(at, f"'{text}' does not fit: '{line.material}' goes by {work or 'a number'} of {name}")
            return 0.0, ""
        if size < 0:
            self.say(at, f"'{text}' is less than nothing")
            return 0.0, ""
        return size / one, f"{text} ({name.replace('-', ' ')})" + (f" / {work}" if work else "")

    def calls(self, amount: Call) -> int:
        """How often the answer of a calculator counts: a list that the task gives is the whole list already."""
        given = self.task.inputs.get(amount.calculator, {}).values()
        return 1 if any(isinstance(written, list) for written in given) else self.task.count

    def called(self, amount: Call) -> tuple[float, CallResult]:
        """A calculator with the inputs of the task and the settings of the book: the output as a bare number."""
        calculator = self.context.calculators[amount.calculator]
        output = calculator.output(amount.output)
        given = self.inputs(amount.calculator)
        if amount.calculator in self.unsized:
            return 0.0, CallResult(calculator, {})
        settings = settings_of(self.context.book, calculator, amount.inputs)
        called = self.context.call_with(amount.calculator, {**settings, **given})
        at: Location = ("tasks", self.id, "inputs", amount.calculator)
        for complaint in called.complaints:
            place = (*at, complaint.input) if complaint.input in given else ("tasks", self.id)
            self.say(place, f"calculator '{amount.calculator}': {complaint.message}", complaint.hint)
        if called.answer is None or output is None:
            return 0.0, called
        return from_inside(float(called.answer[output.name]), output.quantity, output.unit), called

    def inputs(self, calculator: str) -> dict[str, Written]:
        """What the task gives a calculator, with what it takes of spaces and openings put in."""
        made: dict[str, Written] = {}
        declared = self.context.calculators[calculator]
        for name, written in self.task.inputs.get(calculator, {}).items():
            try:
                made[name] = substitute_measures(written, self.entry.item, self.task.space, columns_of(declared, name))
            except UnknownMeasure as unknown:
                at = ("tasks", self.id, "inputs", calculator, name)
                self.say(at, unknown.message, did_you_mean(unknown.name, unknown.known))
                continue
            self.look_for_columns(calculator, name, written, made[name])
        return made

    def look_for_columns(self, calculator: str, name: str, written: Written, made: Written) -> None:
        """Say which rows of a list lack a size: the calculator would order by its own; 0 in its place is none."""
        item = self.context.calculators[calculator].input(name)
        if item is None or item.quantity != "rows":
            return
        try:
            rows = split_rows(item, made, name, item.label) if isinstance(made, str) else made
        except Refused:
            return  # the calculator says so itself
        sizes = [column.name for column in item.columns if column.quantity in SIZES and column.default]
        for index, row in enumerate(rows):
            missing = [size for size in sizes if not row.get(size, "").strip()]
            at: Location = ("tasks", self.id, "inputs", calculator, name)
            if not isinstance(written, str):
                opening = written[index].get("opening")
                at = ("openings", opening) if opening in self.entry.item.openings else (*at, index)
            if missing:
                said = ", ".join(f"{each}: ..." for each in missing)
                self.say(at, f"has no {_and(missing)}: '{calculator}' orders by that", f"write '{said}'")

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
                made = substitute_measures(task.quantity, job, task.space)
            except UnknownMeasure as unknown:
                self.say(("tasks", self.id, "quantity"), unknown.message, did_you_mean(unknown.name, unknown.known))
                return None
            return str(made)
        space = job.spaces.get(task.space)
        if space is not None and read_figure(per)[1] == "area":
            return known_sizes(space).get("area")
        return None

    def put_in_space(self, written: str, at: Location) -> str:
        """A text with the measures that it takes of spaces put in."""
        try:
            return str(substitute_measures(written, self.entry.item, self.task.space))
        except UnknownMeasure as unknown:
            self.say(at, unknown.message, did_you_mean(unknown.name, unknown.known))
            return "0"

    def shown_quantity(self, per: str) -> str:
        """How much work the task is, as what is counted so is written."""
        parts = split_amount(per)
        if parts is None or not measured(parts.unit):
            return str(self.task.count)
        text = self.quantity(per) or "0"
        return text if self.task.count == 1 else f"{self.task.count} x {text}"

    def figure(self, text: str, quantity: str, unit: str, at: Location) -> float:
        try:
            return read(str(substitute_measures(text, self.entry.item, self.task.space)), quantity, unit)
        except (Unreadable, UnknownMeasure) as trouble:
            self.say(at, str(trouble))
            return 0.0

    def say(self, at: Location, message: str, hint: str = "") -> None:
        diagnostic = self.entry.error(at, message, hint)
        if diagnostic not in self.diagnostics:
            self.diagnostics.append(diagnostic)


def _and(names: Sequence[str]) -> str:
    """Names as a list in a sentence.

    >>> _and(["rooms"]), _and(["length", "width", "ends"])
    ("'rooms'", "'length', 'width' and 'ends'")
    """
    quoted = [f"'{name}'" for name in names]
    return " and ".join([", ".join(quoted[:-1]), quoted[-1]] if len(quoted) > 1 else quoted)
