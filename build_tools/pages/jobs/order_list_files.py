"""The order list as files for a spreadsheet: CSV (RFC 4180) and a workbook (OOXML). Neither holds a price."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator, Sequence
from datetime import date
from typing import Any, NamedTuple
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from build_tools.book.spreadsheet import cell_text, csv_text
from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.amounts import as_sold
from build_tools.pages.jobs.names import task_name
from build_tools.pages.renderer import Renderer
from build_tools.plan.order_list import order_list
from build_tools.plan.planned_job import PlannedJob

WIDTHS = (22, 13, 13, 44, 10, 10, 22, 12, 60, 44)
"""Of the columns of the workbook, in letters."""
WRITTEN = re.compile(rb"(<dcterms:(created|modified)[^>]*>)[^<]*")


class OrderRow(NamedTuple):
    """One line of the list. ``quantity`` is what is bought, in ``unit``; ``needed_quantity`` what the tasks take."""

    supplier: str
    needed: date
    order_by: date
    material: str
    quantity: float
    unit: str
    buy: str
    needed_quantity: float
    tasks: str
    watch: str


def rows(renderer: Renderer, id: str, planned: PlannedJob) -> Iterator[OrderRow]:
    """The lines in the order of the page."""
    plan, say = planned.plan, renderer.words
    helpers = Helpers(plan.context, "", renderer.pictures)
    for lot in order_list(plan, planned.today):
        for line in lot.lines:
            yield OrderRow(
                lot.supplier,
                lot.needed,
                line.order_by,
                helpers.title("material", line.what.material),
                round(line.what.quantity, 3),
                line.what.unit,
                as_sold(line.what, line.what.quantity),
                round(line.what.needed, 3),
                "; ".join(task_name(helpers, plan.job, task) for task in line.tasks),
                say["order_list_late"] if line.late else "",
            )


def order_list_csv(renderer: Renderer, id: str, planned: PlannedJob) -> str:
    """The list as comma-separated values, days as ``2026-12-07``."""
    return csv_text([_heads(renderer), *rows(renderer, id, planned)])


def order_list_xlsx(renderer: Renderer, id: str, planned: PlannedJob) -> bytes:
    """The list as a workbook of one sheet, ready to be sorted, filtered and printed."""
    lines = [_heads(renderer), *rows(renderer, id, planned)]
    given = (renderer.words["order_list_title"], lines, planned.today)
    return renderer.context.memo.named(f"workbook {id}", given, lambda: _workbook(*given))


def _workbook(title: str, lines: list[Sequence[Any]], today: date) -> bytes:
    from openpyxl import Workbook
    from openpyxl.styles import Alignment, Font
    from openpyxl.utils import get_column_letter
    from openpyxl.worksheet.properties import PageSetupProperties

    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.title = title
    for row in lines:
        sheet.append([cell_text(each) if isinstance(each, str) else each for each in row])
    for column, width in enumerate(WIDTHS, 1):
        letter = get_column_letter(column)
        sheet.column_dimensions[letter].width = width
        sheet[f"{letter}1"].font = Font(bold=True)
    for cells in sheet.iter_rows(min_row=2):
        for cell in cells:
            cell.alignment = Alignment(vertical="top", wrap_text=True)
            if isinstance(cell.value, date):
                cell.number_format = "yyyy-mm-dd"
    sheet.freeze_panes = "A2"
    sheet.auto_filter.ref = sheet.dimensions
    sheet.print_title_rows = "1:1"
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight = 1, 0
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    made = io.BytesIO()
    book.save(made)
    return _always_the_same(made.getvalue(), today)


def _heads(renderer: Renderer) -> list[str]:
    return [renderer.words[f"order_list_column_{name}"] for name in OrderRow._fields]


def _always_the_same(workbook: bytes, today: date) -> bytes:
    """A workbook without the moment at which it was written, so that the same list makes the same file."""
    made = io.BytesIO()
    moment = f"{today.isoformat()}T00:00:00Z".encode()
    with ZipFile(io.BytesIO(workbook)) as old, ZipFile(made, "w", ZIP_DEFLATED) as new:
        for name in old.namelist():
            new.writestr(ZipInfo(name), WRITTEN.sub(rb"\g<1>" + moment, old.read(name)), ZIP_DEFLATED)
    return made.getvalue()
