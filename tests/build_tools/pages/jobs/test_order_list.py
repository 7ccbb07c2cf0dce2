"""The order list, cut lists and load-out of a job as pages and files."""

from __future__ import annotations

import csv
import io
import re
from datetime import date
from html import unescape
from typing import Any
from zipfile import ZipFile

import pytest
from openpyxl import load_workbook

from build_tools.pages.jobs import order_list_files
from build_tools.pages.jobs.cuts_page import cuts_page
from build_tools.pages.jobs.load_out_page import load_out_page
from build_tools.pages.jobs.order_list_files import order_list_csv, order_list_xlsx
from build_tools.pages.jobs.order_list_page import order_list_page
from build_tools.pages.renderer import Renderer
from build_tools.plan.load_out import load_out
from build_tools.plan.order_list import order_list
from build_tools.plan.planned_job import PlannedJob
from tests.build_tools.plan.fit_out_jobs import FLOOR, closet, planned

TODAY = date(2026, 12, 7)
TASKS: dict[str, Any] = {
    "boards": FLOOR,
    "one": closet("6 ft"),
    "two": closet("6 ft"),
    "sand": {"procedure": "floor-sanding", "quantity": "2000 sq ft"},
}
PRICES: dict[str, Any] = {
    "prices": [{"material": "strip-flooring", "price": "4321 dollars", "lead_time": "2 days"}],
    "money": {"budget": "9000 dollars"},
}


@pytest.fixture(scope="module")
def job() -> PlannedJob:
    return PlannedJob(planned(TASKS, **PRICES), today=TODAY)


@pytest.fixture(scope="module")
def renderer(job: PlannedJob) -> Renderer:
    return Renderer(job.plan.context, {}, "Crew Methods")


def words(content: str) -> str:
    """What stands on a page, without its marks."""
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", content)).split())


def test_every_line_stands_with_the_working_one_tap_away(renderer: Renderer, job: PlannedJob) -> None:
    page = order_list_page(renderer, "drawn", job)
    lines = [line for lot in order_list(job.plan, TODAY) for line in lot.lines]
    assert page.content.count("<details>") == len(lines)
    text = words(page.content)
    for line in lines:
        assert renderer.book.materials[line.what.material].item.title.inside() in text
    assert "Room: 20' 0\" x 15' 0\"" in text
    assert "2 working days to come" in text
    assert "4321" not in page.content


def test_a_day_that_has_passed_is_a_warning(renderer: Renderer, job: PlannedJob) -> None:
    late = PlannedJob(job.plan, today=date(2026, 12, 30))
    assert "The day to order has passed for" in order_list_page(renderer, "drawn", late).content
    early = PlannedJob(job.plan, today=date(2026, 11, 30))
    assert "has passed" not in order_list_page(renderer, "drawn", early).content


def test_csv_and_workbook_hold_the_same_lines_and_no_price(renderer: Renderer, job: PlannedJob) -> None:
    lots = order_list(job.plan, TODAY)
    read = list(csv.reader(io.StringIO(order_list_csv(renderer, "drawn", job))))
    made = order_list_xlsx(renderer, "drawn", job)
    sheet = load_workbook(io.BytesIO(made)).active
    assert sheet is not None
    cells = [list(row) for row in sheet.iter_rows(values_only=True)]
    assert len(read) == len(cells) == 1 + sum(len(lot.lines) for lot in lots)
    assert read[0] == cells[0]
    assert [row[3] for row in read] == [row[3] for row in cells]
    assert str(cells[1][1])[:10] == read[1][1]
    assert [float(row[4]) for row in read[1:]] == [float(str(row[4])) for row in cells[1:]]
    everything = b"".join(ZipFile(io.BytesIO(made)).read(name) for name in ZipFile(io.BytesIO(made)).namelist())
    assert b"4321" not in everything
    assert b"dollar" not in everything
    assert made == order_list_xlsx(renderer, "drawn", job)


@pytest.mark.parametrize("text", ["=cmd|' /C calc'!A0", "@sum(A1)", "\n +1+1", "＝1+1", "-1+1"])
def test_a_spreadsheet_runs_nothing_of_the_list(
    renderer: Renderer, job: PlannedJob, monkeypatch: pytest.MonkeyPatch, text: str
) -> None:
    """A supplier's name is text in both files; a quantity is a number all the same."""
    row = next(order_list_files.rows(renderer, "drawn", job))._replace(supplier=text, quantity=-2.5)
    monkeypatch.setattr(order_list_files, "rows", lambda *_: iter([row]))
    given = list(csv.reader(io.StringIO(order_list_csv(renderer, "drawn", job), newline="")))[1]
    sheet = load_workbook(io.BytesIO(order_list_xlsx(renderer, "drawn", job))).active
    assert sheet is not None
    (cells,) = sheet.iter_rows(min_row=2)
    shown = f"'{text}"
    assert (given[0], given[4]) == (shown, "-2.5")
    assert (cells[0].value, cells[0].data_type, cells[4].value) == (shown, "s", -2.5)


def test_cut_lists_draw_the_sticks_and_say_what_is_proved(renderer: Renderer, job: PlannedJob) -> None:
    page = cuts_page(renderer, "drawn", job)
    assert page.content.count("<svg") == 3  # shelf, cleats, rods
    assert len(set(re.findall(r'<section class="part" aria-labelledby="([^"]+)"', page.content))) == 3
    assert "proved: less length cannot do it" in page.content
    assert "2 x 5' 11-7/8\" rod (Room)" in words(page.content)


def test_each_day_has_its_sheet_with_boxes_to_tick(renderer: Renderer, job: PlannedJob) -> None:
    page = load_out_page(renderer, "drawn", job)
    loads = load_out(job.plan)
    assert page.content.count('class="truck"') == len(loads)
    assert page.content.count('type="checkbox"') == sum(len(load.tools) + len(load.materials) for load in loads)
    text = words(page.content)
    assert "fetch today" in text
    assert "back tonight" in text
    assert "Delivered: be there to take it" in text
