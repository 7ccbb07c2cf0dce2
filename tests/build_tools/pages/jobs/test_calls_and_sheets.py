"""The calls and the day sheets of the jobs: everything of the plan is on them, and their numbers follow the job."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.commands.site import BOOK
from build_tools.pages.jobs.calls_page import calls_page
from build_tools.pages.jobs.day_sheets import sheets_of_people, sheets_page
from build_tools.pages.pictures import SitePicture
from build_tools.pages.renderer import Renderer
from build_tools.plan.calls import calls, crew_inspections
from build_tools.plan.person_days import person_days
from build_tools.plan.plan import Plan
from build_tools.plan.planned_job import PlannedJob
from build_tools.plan.planning import plan_job
from tests.builds import change, copy_book
from tests.qr_reader import modules_of, read_qr
from tests.site_pages import SitePage, attribute, text_of

JOB = "garden-studio"
ADDRESS = "https://methods.example/crew/"
NO_PICTURES: dict[tuple[str, str], SitePicture] = {}


def made(book: Path, kept: Path, site_url: str = "") -> tuple[Renderer, PlannedJob]:
    """A renderer for a book, and its small job planned as the site has it."""
    context = Context.of(load_book(book).book, Memo())
    renderer = Renderer(context, NO_PICTURES, "Crew Methods", site_url=site_url)
    entry = context.book.jobs[JOB]
    return renderer, PlannedJob(plan_job(context, entry, entry.item.start, cache=kept))


def sheets(renderer: Renderer, whole: PlannedJob) -> dict[str, SitePage]:
    """The pages of sheets by person."""
    pages = sheets_of_people(renderer, JOB, whole)
    return {page.url.rpartition("sheets-")[2].removesuffix(".html"): SitePage.of(page) for page in pages}


@pytest.fixture(scope="module")
def job(kept: Path) -> tuple[Renderer, PlannedJob]:
    """The small job of the book, on a published site."""
    return made(BOOK, kept, ADDRESS)


@pytest.fixture(scope="module")
def plan(job: tuple[Renderer, PlannedJob]) -> Plan:
    """Its plan."""
    return job[1].plan


@pytest.fixture(scope="module")
def people(job: tuple[Renderer, PlannedJob]) -> dict[str, SitePage]:
    """Its sheets by person."""
    return sheets(*job)


# Calls.


def test_every_call_is_on_the_page_in_its_order(job: tuple[Renderer, PlannedJob], plan: Plan) -> None:
    page = SitePage.of(calls_page(job[0], JOB, job[1]))
    shown = page.select(".call")
    assert len(shown) == len(calls(plan)) + len(crew_inspections(plan))
    for call, line in zip(calls(plan), shown, strict=False):
        assert f"By {call.by.hour}:{call.by:%M}" in text_of(line)
        assert f"{call.comes:%a} {call.comes.day} {call.comes:%b}" in text_of(line)
        if call.release:
            step = f"step {call.release.number}"
            assert step in text_of(line) and any(link.endswith(f"#{call.release.step}") for link in page.links())
        assert ("Due before the plan starts" in text_of(line)) == call.late


def test_the_page_leads_to_the_calendar_file(pages: dict[str, SitePage], site: Path) -> None:
    assert "calls.ics" in pages[f"jobs/{JOB}/calls.html"].links()
    assert (site / "jobs" / JOB / "calls.ics").read_bytes().startswith(b"BEGIN:VCALENDAR\r\n")


# Sheets.


def test_each_person_has_a_sheet_for_each_of_his_days(plan: Plan, people: dict[str, SitePage]) -> None:
    """What stands on the days of all people together is the plan: every stretch of work, with its times."""
    for hand in plan.job.people:
        days = person_days(plan, hand.person)
        assert [one["id"] for one in people[hand.person].select(".sheet")] == [
            f"d-{day.day.isoformat()}" for day in days
        ]
    worked = {
        (task.task, person): sum((ends - starts).total_seconds() for starts, ends in task.times)
        for hand in plan.job.people
        for day in person_days(plan, hand.person)
        for task in day.parts
        for person in [f"{hand.person} {day.day}"]
    }
    pieces = plan.prepared.problem.activities
    wanted = sum(pieces[s.activity].duration * 900 * len(s.people) for s in plan.stretches if not s.visit)
    assert sum(worked.values()) == wanted


def test_a_sheet_has_what_its_tasks_ask_for(
    job: tuple[Renderer, PlannedJob], plan: Plan, people: dict[str, SitePage]
) -> None:
    """Each step with a box, each danger, each measurement with a blank, each hold point."""
    book = plan.context.book
    for hand in plan.job.people:
        page = people[hand.person]
        for day, sheet in zip(person_days(plan, hand.person), page.select(".sheet"), strict=True):
            used = dict.fromkeys(plan.job.tasks[part.task].procedure for part in day.parts)
            procedures = [book.procedures[id].item for id in used]
            steps = [step for each in procedures for step in each.steps]
            times = {id: sum(plan.job.tasks[part.task].procedure == id for part in day.parts) for id in used}
            assert len(sheet.select(".act")) == len(steps)
            assert len(sheet.select("i")) == sum(times[id] * len(book.procedures[id].item.steps) for id in used)
            assert len(sheet.select(".gauge")) == sum(len(step.measurements) for step in steps)
            assert len(sheet.select(".stop")) == sum(step.hold is not None for step in steps)
            dangers = sum(len(each.safety) for each in procedures) + sum(len(step.messages) for step in steps)
            assert len(sheet.select(".heed")) == dangers


def test_a_danger_stands_before_the_action_that_it_guards(people: dict[str, SitePage]) -> None:
    for page in people.values():
        for step in page.select("li"):
            heeds, acts = step.select(".heed"), step.select(".act")
            if heeds and acts:
                assert heeds[-1] in acts[0].find_all_previous()


def test_the_codes_open_the_pages_of_the_published_site(people: dict[str, SitePage], plan: Plan) -> None:
    """Read as a camera reads them: the address of the procedure's page, on the site of the settings."""
    for page in people.values():
        drawn = [part.split("</svg>")[0] for part in page.html.split('<svg class="qr"')[1:]]
        found = [read_qr(modules_of(one)) for one in drawn]
        methods = page.select(".method")
        assert len(found) == len(methods) > 0
        hrefs = [attribute(method.select(".code")[0], "href") for method in methods]
        assert found == [ADDRESS + href.removeprefix("../../") for href in hrefs]


def test_without_an_address_the_page_says_what_to_set(kept: Path) -> None:
    """No code leads nowhere: the owner is told which line of which file makes them."""
    renderer, whole = made(BOOK, kept)
    assert all(not page.select(".qr") for page in sheets(renderer, whole).values())
    listed = SitePage.of(sheets_page(renderer, JOB, whole))
    assert any("site_url" in text_of(one) and "mkdocs.yml" in text_of(one) for one in listed.select(".watch"))


# Their numbers follow.


def of_task(pages: dict[str, SitePage], title: str) -> str:
    """What a method says on the first sheet that has it."""
    for page in pages.values():
        for method in page.select(".method"):
            if any(text_of(head) == title for head in method.select("h3")):
                return text_of(method)
    raise AssertionError(f"no sheet has {title!r}")


CLOSET = "Put up closet shelf and pole"


def test_the_numbers_follow_a_changed_room(people: dict[str, SitePage], tmp_path: Path, kept: Path) -> None:
    """A closet a foot wider has a longer shelf and rod, on the sheet and among its materials."""
    before = of_task(people, CLOSET)
    book = copy_book(tmp_path)
    change(book / "jobs" / f"{JOB}.yaml", "closet-width: 6'", "closet-width: 7'")
    after = of_task(sheets(*made(book, kept)), CLOSET)
    assert "wall to wall 6' 0\"" in before and "Shelf and rods, cut 5' 11-7/8\"" in before
    assert "wall to wall 7' 0\"" in after and "Shelf and rods, cut 6' 11-7/8\"" in after
    assert "Shelf board, 1x12 6 ft" in before and "Shelf board, 1x12 7 ft" in after


def test_the_numbers_follow_a_standard_that_the_job_sets_differently(
    people: dict[str, SitePage], tmp_path: Path, kept: Path
) -> None:
    """The rod hangs lower on this job: in the numbers and in what is measured. The book keeps its own."""
    before = of_task(people, CLOSET)
    book = copy_book(tmp_path)
    line = "standards: [{value: closet-rod-single, is: 60 in, why: The tenant reaches no higher.}]\ndwellings:\n"
    change(book / "jobs" / f"{JOB}.yaml", "dwellings:\n", line)
    renderer, whole = made(book, kept)
    after = of_task(sheets(renderer, whole), CLOSET)
    for words in ("Rod, the upper one of two {}", "at each socket: {}"):
        assert words.format("66 in") in before and words.format("60 in") not in before
        assert words.format("60 in") in after and words.format("66 in") not in after
    assert renderer.book.values["closet-rod-single"].item.quantity == "66 in"


def test_a_table_follows_a_standard_too(people: dict[str, SitePage], tmp_path: Path, kept: Path) -> None:
    """A table that is read on site, since the job does not know the reading, is worked out with the job's standard."""
    title = "Install a lockset"
    assert "Privacy lock, tubular36 in34-7/8 in" in of_task(people, title)
    book = copy_book(tmp_path)
    line = "standards: [{value: lock-height, is: 38 in, why: The owner of the lot asks for it.}]\ndwellings:\n"
    change(book / "jobs" / f"{JOB}.yaml", "dwellings:\n", line)
    assert "Privacy lock, tubular38 in36-7/8 in" in of_task(sheets(*made(book, kept)), title)
