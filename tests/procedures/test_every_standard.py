"""Every crew standard of the book is changed, one at a time and in memory, and all that rests on it moves with it.

No site is built: calculators, tables, worked forms, scripts, readings and orders are asked directly.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from math import ceil
from types import SimpleNamespace
from typing import Any, cast

import pytest

from build_tools.book.amounts import read_figure, split_amount
from build_tools.book.book import Entry
from build_tools.book.calls import settle, shown_input
from build_tools.book.checks.context import Context
from build_tools.book.model.job import Job
from build_tools.book.model.step import Measurement, Step
from build_tools.book.model.table import Axis, Call, Form, Table
from build_tools.book.prose import prose_links
from build_tools.book.references import figure_of, named_value
from build_tools.book.traverse import traverse
from build_tools.browser.scripts import standards_of
from build_tools.commands.compute import _described
from build_tools.pages.helpers import Helpers
from build_tools.pages.on_site import content_hash, measure_data
from build_tools.plan.needs import TakeOff
from build_tools.plan.order_quantities import Ordered, _ordered
from build_tools.plan.plan import Plan
from build_tools.plan.take_off import take_off
from calculators.declaration import Calculator, Refused
from calculators.run import run
from tests.standards import IDS, context, given, other, other_of, probes, starts, with_other

pytestmark = pytest.mark.slow

DEFAULTS = [id for id in IDS if context().book.values[id].item.default_of]


@pytest.mark.parametrize("id", DEFAULTS)
def test_calculators_start_at_the_new_figure_everywhere(id: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """In the page's form and script, on the terminal, and in every call that does not give the input."""
    monkeypatch.setattr("build_tools.pages.helpers.drawn", lambda *_: None)  # the drawing takes the same values
    before, after = context(), with_other(id)
    for calculator, name in starts(id):
        item = calculator.input(name)
        assert item is not None
        value, old = given(id)[f"{calculator.name}.{name}"], settle(before.book, calculator, {}).values[name]
        assert value != old
        assert settle(after.book, calculator, {}).values[name] == value
        assert standards_of(after, calculator)[name] == value
        new = other_of(id, calculator.name, name)
        assert any(line.split()[0] == name and f" {new} (crew standard)" in line for line in lines(after, calculator))
        helpers = Helpers(after, "", {})
        called = settle(after.book, calculator, example(calculator, name))
        worked = helpers.worked(replace(called, answer=some_answer(calculator.name)), "x", {})
        (line,) = [line for line in (*worked["inputs"], *worked["rest"]) if line["name"] == name]
        assert (line["label"], line["text"]) == (item.label, shown_input(item, value))
        assert line["standard"]["written"] == new


@lru_cache
def some_answer(name: str) -> dict[str, Any]:
    """An answer of a calculator, for what shows one beside its inputs."""
    return run(context().calculators[name], probes(name)[0])


def lines(of: Context, calculator: Calculator) -> list[str]:
    """The inputs of a calculator as the terminal lists them."""
    return [line.strip() for line in _described(calculator, of.book)]


def example(calculator: Calculator, without: str) -> dict[str, Any]:
    """The example of a calculator without one of its inputs."""
    return {name: written for name, written in calculator.example.items() if name != without}


@pytest.mark.parametrize("id", DEFAULTS)
def test_answers_rest_on_it(id: str) -> None:
    """For some inputs at least, the answer is another one: nothing starts at a standard and then goes by a constant."""
    for calculator, name in starts(id):
        item = calculator.input(name)
        assert item is not None
        old = settle(context().book, calculator, {}).values[name]
        others = [given(id)[f"{calculator.name}.{name}"], item.least, item.most]
        assert any(
            answers_differ(calculator, values, name, old, new)
            for new in others
            if new is not None
            for values in probes(calculator.name)
        ), name


def answers_differ(calculator: Calculator, values: dict[str, Any], name: str, old: Any, new: Any) -> bool:
    """Whether an output is another one, the lines of working left out."""
    answers = []
    for value in (old, new):
        try:
            answer = run(calculator, {**values, name: value})
        except Refused as refused:
            answer = {"refused": refused.message}
        answers.append({key: each for key, each in answer.items() if key != "working"})
    return answers[0] != answers[1]


def uses(id: str) -> Iterator[tuple[str, Any, Any]]:
    """Where procedures name a standard or call what starts at it: the procedure, its step or itself, and the part."""
    names = {calculator.name for calculator, _ in starts(id)}
    for procedure, entry in context().book.procedures.items():
        for part in (entry.item, *entry.item.steps):
            for _, _, found in traverse(part):
                if isinstance(found, Call | Form | Table) and found.calculator in names:
                    yield procedure, part, found


@pytest.mark.parametrize("id", DEFAULTS)
def test_forms_tables_and_amounts_of_every_page_go_by_it(id: str) -> None:
    """Each is what comes of giving the new figure outright, where the page does not give another one itself."""
    after = with_other(id)
    for procedure, _, part in uses(id):
        calculator = after.calculators[part.calculator]
        for _, name in (each for each in starts(id) if each[0] is calculator):
            if isinstance(part, Table):
                table(after, id, part, name)
                continue
            written = part.inputs.get(name)
            if written is not None and not (isinstance(written, str) and named_value(written) == id):
                continue  # the page asks for something of its own here
            assert settle(after.book, calculator, part.inputs).values[name] == given(id)[f"{part.calculator}.{name}"], (
                procedure
            )


def table(after: Context, id: str, part: Table, name: str) -> None:
    """A table is that of the new figure, and an axis marks the line of it."""
    axes = [axis.input for axis in (part.down, part.across) if axis is not None]
    if name in axes:
        computed, troubles = after.table(part)
        assert troubles == []
        values = {row.value for row in computed.rows if row.ours} if axes[0] == name else set()
        columns = zip(computed.column_values, computed.column_ours, strict=False)
        values |= {value for value, ours in columns if ours} if name == part_across(part) else set()
        assert values <= {given(id)[f"{part.calculator}.{name}"]} or axis_is_set(part, name)
        return
    if name in part.fixed and named_value(str(part.fixed[name])) != id:
        return
    few = part.model_copy(update={"down": short(part.down), "across": short(part.across) if part.across else None})
    outright = few.model_copy(update={"fixed": {**part.fixed, name: other_of(id, part.calculator, name)}})
    assert [row.cells for row in after.table(few)[0].rows] == [row.cells for row in after.table(outright)[0].rows]


def short(axis: Axis) -> Axis:
    """The two ends of an axis, so that a table is soon worked out."""
    ends = [axis.values[0], axis.values[-1]] if axis.values else [axis.start or "", axis.to or ""]
    return Axis(input=axis.input, values=list(dict.fromkeys(ends)), ours=axis.ours)


def part_across(part: Table) -> str:
    """The input across; nothing where there is none."""
    return part.across.input if part.across else ""


def axis_is_set(part: Table, name: str) -> bool:
    """Whether the table itself says which line of the axis is the crew's own."""
    axis = part.down if part.down.input == name else part.across
    return axis is not None and axis.ours is not None


@pytest.mark.parametrize("id", IDS)
def test_every_place_that_names_it_shows_the_new_figure(id: str) -> None:
    """Links in prose, figures in fields, limits of readings, prints of ticks, titles with a size, packs and sticks."""
    before, after = context(), with_other(id)
    (link,) = prose_links(f"[](value:{id})")
    shown = Helpers(after, "", {}).resolve(link)
    assert shown is not None
    assert shown[1] == other(id).removesuffix(" each")
    assert figure_of(f"value:{id}", after.book) == other(id)
    for step in steps_by_standard().get(id, ()):
        assert content_hash(step, before) != content_hash(step, after)
        for measured in step.measurements:
            if id in limits_of(measured):
                assert measure_data(measured, before) != measure_data(measured, after)


@lru_cache
def steps_by_standard() -> dict[str, list[Step]]:
    """The steps of all procedures that name a standard, in a field or in prose."""
    found: dict[str, list[Step]] = defaultdict(list)
    for entry in context().book.procedures.values():
        for step in entry.item.steps:
            for id in set(re.findall(r"value:([a-z0-9-]+)", step.model_dump_json())):
                found[id].append(step)
    return found


def limits_of(measured: Measurement) -> set[str | None]:
    """The standards that a reading is held against."""
    names = ("target", "within", "plus", "minus", "least", "most")
    return {named_value(str(getattr(part, name, None))) for part in measured.sides for name in names}


def worked_out() -> Iterator[tuple[Step, Call]]:
    """The limits of readings that a calculator gives, with their steps."""
    for entry in context().book.procedures.values():
        for step in entry.item.steps:
            limits = [each for one in step.measurements for side in one.sides for each in (side.least, side.most)]
            yield from ((step, each) for each in limits if isinstance(each, Call))


def test_a_limit_that_is_worked_out_moves() -> None:
    """A thicker ring, a deeper bowl: what passes goes with them, and so does the print of a tick."""
    found = list(worked_out())
    assert found
    for step, limit in found:
        moved = set()
        for input, standard in context().book.standards(limit.calculator).items():
            id = named_value(standard) or ""
            after = with_other(id)
            outright = limit.model_copy(
                update={"inputs": {input: other_of(id, limit.calculator, input), **limit.inputs}}
            )
            assert after.figure(limit) == context().figure(outright)
            if after.figure(limit) != context().figure(limit):
                moved.add(id)
                assert content_hash(step, after) != content_hash(step, context())
        assert moved, step.id


SIZED = sorted(
    (scheme, id, cast("str", named_value(entry.item.size)))
    for scheme in ("material", "tool")
    for id, entry in context().book.kind(scheme).items()
    if entry.item.size and named_value(entry.item.size)
)


@pytest.mark.parametrize(("scheme", "id", "value"), SIZED)
def test_a_size_in_a_title_moves(scheme: str, id: str, value: str) -> None:
    """On the page, in the order list and its files alike: all take the title from the index."""
    book = with_other(value).book
    assert Context.of(book, context().memo).index.targets[scheme, id].title.endswith(f", {other(value)}")


@lru_cache
def tasks() -> list[tuple[Entry[Job], str]]:
    """One task of each procedure of the demo's jobs, which have no standards of their own here."""
    found: dict[str, tuple[Entry[Job], str]] = {}
    for entry in context().book.jobs.values():
        plain = replace(entry, item=entry.item.model_copy(update={"standards": []}))
        for id, task in entry.item.tasks.items():
            found.setdefault(task.procedure, (plain, id))
    return list(found.values())


@lru_cache
def taken_before(at: int) -> TakeOff:
    """What a task takes by the book as it is."""
    return take_off(context(), *tasks()[at])


@lru_cache
def named_in(procedure: str) -> dict[str, str | None]:
    """The standards that the hours and the amounts of a procedure name, by material; hours without one."""
    item = context().book.procedures[procedure].item
    hours = named_value(item.labour.hours) if isinstance(item.labour.hours, str) else None
    plain = {line.material: named_value(line.quantity) for line in item.materials if isinstance(line.quantity, str)}
    return {"": hours, **plain}


@lru_cache
def called_in(procedure: str) -> set[str]:
    """The calculators that amounts of a procedure come from."""
    lines = context().book.procedures[procedure].item.materials
    return {line.quantity.calculator for line in lines if isinstance(line.quantity, Call)}


@pytest.mark.parametrize("id", IDS)
def test_what_a_job_takes_moves(id: str) -> None:
    """Hours and amounts that name the standard go with it; those of a calculator are what its new figure gives."""
    after = with_other(id)
    names = {calculator.name for calculator, _ in starts(id)}
    part = read_figure(other(id))[0] / read_figure(context().book.values[id].item.quantity)[0]
    for at, (entry, task) in enumerate(tasks()):
        item = entry.item.tasks[task]
        named = named_in(item.procedure)
        if id not in named.values() and not names & called_in(item.procedure):
            continue
        old, new = taken_before(at), take_off(after, entry, task)
        assert new.diagnostics == []
        if named[""] == id and item.hours is None:
            assert new.hours == pytest.approx(old.hours * part)
        same = outright(entry, task, id)
        for was, now in zip(old.materials, new.materials, strict=True):
            if named.get(now.material) == id:
                assert now.number == pytest.approx(was.number * part)
            elif now.calculator in names:
                assert now.number == pytest.approx(same[now.material]), now.material


def outright(entry: Entry[Job], task: str, id: str) -> dict[str, float]:
    """What the task takes of each material by the book as it is, when it gives the new figure itself."""
    item = entry.item.tasks[task]
    inputs = {name: dict(given) for name, given in item.inputs.items()}
    for calculator, name in starts(id):
        if calculator.name in called_in(item.procedure):
            inputs.setdefault(calculator.name, {}).setdefault(name, other_of(id, calculator.name, name))
    more = {**entry.item.tasks, task: item.model_copy(update={"inputs": inputs})}
    made = take_off(context(), replace(entry, item=entry.item.model_copy(update={"tasks": more})), task)
    return {need.material: need.number for need in made.materials}


PACKED = sorted(
    (id, value, field)
    for id, entry in context().book.materials.items()
    for field, written in (
        ("sold_by", entry.item.sold_by),
        ("spare", entry.item.spare),
        *(("stock", s) for s in entry.item.stock),
    )
    if written and (value := named_value(written))
)


@pytest.mark.parametrize(("id", "value", "field"), PACKED)
def test_an_order_is_in_the_new_packs_and_sticks(id: str, value: str, field: str) -> None:
    old, new = ordered(context(), id), ordered(with_other(value), id)
    assert old is not None
    assert new is not None
    if field == "sold_by":
        assert split_amount(new.pack) == split_amount(other(value)) or new.cuts is not None
    elif old.cuts is None or new.cuts is None:
        assert old.material == id  # ordered by the stick of the calculator, whose stock is the same standard
    elif field == "stock":
        assert set(new.cuts.sticks) != set(old.cuts.sticks)
    else:
        sticks = sum(old.cuts.sticks.values()) - old.cuts.spare
        assert new.cuts.spare == ceil(sticks * read_figure(other(value))[0] / 100)


def ordered(of: Context, material: str) -> Ordered | None:
    """The order of a material for the tasks of a job that use it."""
    for entry in context().book.jobs.values():
        needs = [
            need
            for id, task in entry.item.tasks.items()
            if any(line.material == material for line in of.book.procedures[task.procedure].item.materials)
            for need in take_off(of, entry, id).materials
            if need.material == material
        ]
        if any(need.number for need in needs):
            return _ordered(cast("Plan", SimpleNamespace(context=of, job=entry.item)), material, needs)
    return None
