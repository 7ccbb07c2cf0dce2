"""What a job has to know of materials: for how much work a quantity is, what is cut, and how it is sold."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.book.amounts import measured, read_figure, split_amount
from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.model.procedure import MaterialLine
from build_tools.book.model.table import Call
from build_tools.book.references import figure_of
from build_tools.book.yaml_reader import Location
from calculators.reading import Unreadable, read


def of_procedure(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """A plain quantity says for how much work it is, where the hours are counted by what is measured."""
    per = split_amount(figure_of(entry.item.labour.per, context.book) or "")
    for index, line in enumerate(entry.item.materials):
        at: Location = ("materials", index)
        if line.cut is not None:
            yield from _cut(context, entry, at, line)
        if line.work is not None:
            yield from _work(context, entry, at, line.work, per.unit if per and not line.serves else "")
        elif per and measured(per.unit) and not (line.serves or isinstance(line.quantity, Call)):
            yield entry.error(
                at,
                f"'{line.material}' does not say for how much work it is, and the hours are counted by {per.unit}",
                f"write 'work: ...' with a figure in {per.unit} beside 'per', or 'serves: doorways', if by them",
            )


def _work(context: Context, entry: ProcedureEntry, at: Location, written: str, unit: str) -> Iterator[Diagnostic]:
    text = figure_of(written, context.book)
    amount = split_amount(text) if text is not None else None
    if text is None:
        return
    if amount is None or not amount.number:
        yield entry.error((*at, "work"), f"'{written}' is no amount of work", f"write it like '100 {unit}'")
    elif measured(unit) and (not measured(amount.unit) or _kind(text) != _kind(f"1 {unit}")):
        yield entry.error((*at, "work"), f"'{written}' does not fit: the hours are counted by {unit}")


def _kind(text: str) -> str:
    return read_figure(text)[1]


def _cut(context: Context, entry: ProcedureEntry, at: Location, line: MaterialLine) -> Iterator[Diagnostic]:
    calculator = context.calculators.get(line.quantity.calculator) if isinstance(line.quantity, Call) else None
    pieces = calculator.output("pieces") if calculator else None
    if pieces is None or "stock" not in {column.name for column in pieces.columns}:
        yield entry.error((*at, "cut"), f"'{line.material}' is cut to length, and no calculator lists its pieces")
    material = context.book.materials.get(line.material)
    if material is not None and not material.item.stock:
        yield entry.error(
            (*at, "cut"),
            f"'{line.material}' is cut to length, and does not say in which lengths it is sold",
            "write 'stock: [8 ft, 12 ft]' where the material is described",
        )


def of_materials(context: Context) -> Iterator[Diagnostic]:
    """Packs are in the unit of their material, stock lengths are lengths, and spare is a part."""
    for entry in context.book.materials.values():
        material = entry.item
        pack = split_amount(figure_of(material.sold_by, context.book) or "") if material.sold_by else None
        if material.sold_by and (pack is None or not pack.number or pack.unit != material.counted_in):
            yield entry.error(
                ("sold_by",), f"'{material.sold_by}' is no pack of what is counted in '{material.counted_in}'"
            )
        figures: list[tuple[Location, str, str, str]] = [
            (("stock", index), each, "length", "ft") for index, each in enumerate(material.stock)
        ]
        if material.spare:
            figures.append((("spare",), material.spare, "percent", "%"))
        for at, written, quantity, unit in figures:
            try:
                read(figure_of(written, context.book) or f"1 {unit}", quantity, unit)
            except Unreadable as trouble:
                yield entry.error(at, str(trouble))
