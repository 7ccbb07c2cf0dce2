"""The calendar file against RFC 5545, 'Internet Calendaring and Scheduling Core Object Specification' (September 2009).

Read twice: by rules of that document, written down here section by section and line by line, and by the library
icalendar, which must give back the words and times that went in.
"""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta
from functools import cache
from pathlib import Path
from typing import Any

import icalendar
import pytest

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.book.model.job import Job
from build_tools.book.model.reference import Inspection
from build_tools.commands.site import BOOK
from build_tools.pages.jobs.calendar import calendar
from build_tools.pages.renderer import Renderer
from build_tools.plan.calls import calls
from build_tools.plan.planned_job import PlannedJob
from build_tools.plan.planning import plan_job
from tests.build_tools.plan.drawn_jobs import book_of, job_of, procedure

AWKWARD = 'Fußboden; Wände, "Türen" \\ and n: größer als siebenundfünfzig Buchstaben, über die Zeile hinaus'
"""Signs that mean something in the file, letters of two octets, and more than a line of them."""
START = date(2026, 12, 7)


@dataclass
class Component:
    """A component as the lines give it: its kind, its properties (name, parameters, value) and those within."""

    kind: str
    properties: list[tuple[str, str, str]] = field(default_factory=list)
    within: list[Component] = field(default_factory=list)

    def values(self, name: str) -> list[str]:
        """The values of a property."""
        return [value for one, _, value in self.properties if one == name]

    def all(self, kind: str) -> list[Component]:
        """The components of that kind directly within."""
        return [one for one in self.within if one.kind == kind]


def content_lines(file: bytes) -> list[str]:
    """Section 3.1: lines end in CRLF, none is longer than 75 octets without it, and a fold is CRLF and one space."""
    assert file.endswith(b"\r\n")
    raw = file.removesuffix(b"\r\n").split(b"\r\n")
    assert all(b"\r" not in line and b"\n" not in line for line in raw)
    assert max(len(line) for line in raw) <= 75
    lines: list[str] = []
    for line in raw:
        text = line.decode("utf-8")  # a letter of several octets is not cut, which a reader by lines needs
        if text[:1] in (" ", "\t"):
            lines[-1] += text[1:]
        else:
            lines.append(text)
    return lines


LINE = re.compile(r'([A-Z0-9-]+)((?:;[A-Z0-9-]+=(?:"[^"\x00-\x1f]*"|[^";:,\x00-\x1f]*))*):(.*)')
"""Section 3.1: ``contentline = name *(";" param) ":" value``."""


def read(file: bytes) -> Component:
    """Sections 3.4 and 3.6: one calendar, its components one within another, each ended where it was begun."""
    top = Component("")
    open_ones = [top]
    for line in content_lines(file):
        found = LINE.fullmatch(line)
        assert found is not None, line
        name, parameters, value = found.groups()
        if name == "BEGIN":
            open_ones[-1].within.append(Component(value))
            open_ones.append(open_ones[-1].within[-1])
        elif name == "END":
            assert open_ones.pop().kind == value
        else:
            open_ones[-1].properties.append((name, parameters, value))
    assert open_ones == [top] and [one.kind for one in top.within] == ["VCALENDAR"] and top.properties == []
    return top.within[0]


def plain(text: str) -> str:
    r"""Section 3.3.11: in TEXT a backslash stands before ``\``, ``;``, ``,`` and ``n`` alone, and those never bare."""
    assert re.fullmatch(r"(?:[^\\;,\x00-\x08\x0a-\x1f\x7f]|\\[\\;,nN])*", text), text
    return re.sub(r"\\(.)", lambda found: "\n" if found[1] in "nN" else found[1], text)


def floating(component: Component, name: str) -> datetime:
    """Section 3.3.5, form 1: a local time, without ``Z`` and without a zone."""
    ((parameters, value),) = [(given, text) for one, given, text in component.properties if one == name]
    assert parameters == "" and re.fullmatch(r"\d{8}T\d{6}", value), value
    return datetime.strptime(value, "%Y%m%dT%H%M%S")


def check(made: Component) -> None:
    """The rules for what stands in the calendar, its events and their alarms."""
    assert made.values("VERSION") == ["2.0"] and len(made.values("PRODID")) == 1  # section 3.6
    assert made.values("METHOD") == []
    events = made.all("VEVENT")
    uids = [event.values("UID") for event in events]
    assert all(len(uid) == 1 for uid in uids) and len({uid[0] for uid in uids}) == len(uids)  # 3.6.1, 3.8.4.7
    for event in events:
        names = Counter(name for name, _, _ in event.properties)
        assert max(names.values()) == 1  # 3.6.1: each of those that we use at most once
        assert names["DTSTAMP"] and names["DTSTART"] and names["DTEND"] and not names["DURATION"]
        assert re.fullmatch(r"\d{8}T\d{6}Z", event.values("DTSTAMP")[0])  # 3.8.7.2: in UTC
        assert floating(event, "DTEND") > floating(event, "DTSTART")  # 3.8.2.2
        assert re.fullmatch(r"\d+", event.values("SEQUENCE")[0])  # 3.8.7.4
        assert event.values("TRANSP")[0] in ("OPAQUE", "TRANSPARENT")  # 3.8.2.7
        for name in ("SUMMARY", "DESCRIPTION", "LOCATION"):
            assert plain(event.values(name)[0])
        for alarm in event.all("VALARM"):  # 3.6.6: what a DISPLAY alarm must have
            assert alarm.values("ACTION") == ["DISPLAY"]
            assert plain(alarm.values("DESCRIPTION")[0])
            assert re.fullmatch(r"-PT\d+M", alarm.values("TRIGGER")[0])  # 3.3.6: a duration, before the start


def whole(context: Context, entry: Entry[Job], today: date) -> tuple[Renderer, PlannedJob]:
    """A planned job and the renderer of its pages."""
    return Renderer(context, {}, "Book"), PlannedJob(plan_job(context, entry, today, objectives=1))


@cache
def awkward(start: date = START, job: str = "drawn") -> bytes:
    """The calendar of a job whose every name is hard to write."""
    look = {"title": AWKWARD, "who": f"He, {AWKWARD}", "notice": "24 h", "looks_at": "It.", "by": "outside"}
    form = procedure("10 h", steps=3, holds={2: "look"}, title=AWKWARD)
    made = book_of({"form": form}, inspections={"look": Inspection.model_validate(look)})
    tasks: dict[str, dict[str, Any]] = {"a": {"procedure": "form"}, "b": {"procedure": "form", "after": ["a"]}}
    entry = replace(job_of(tasks, start=start, title=AWKWARD), id=job)
    context = Context.of(replace(made.book, jobs={job: entry}, _standards=None), Memo(), {})
    renderer, planned = whole(context, entry, start)
    return calendar(renderer, job, planned)


@cache
def of_the_book(job: str, kept: Path) -> tuple[bytes, PlannedJob]:
    """The calendar of a job of the crew's book, planned as the site has it."""
    context = Context.of(load_book(BOOK).book, Memo())
    entry = context.book.jobs[job]
    planned = PlannedJob(plan_job(context, entry, entry.item.start, cache=kept))
    return calendar(Renderer(context, {}, "Book"), job, planned), planned


JOBS = sorted(path.stem for path in (BOOK / "jobs").glob("*.yaml"))


def test_a_file_full_of_awkward_words_keeps_the_rules() -> None:
    made = read(awkward())
    check(made)
    assert plain(made.all("VEVENT")[1].values("SUMMARY")[0]) == f"{AWKWARD} comes"


@pytest.mark.parametrize("job", JOBS)
def test_the_files_of_the_book_keep_the_rules(job: str, kept: Path) -> None:
    """Each call has its event, which rings, and each visit one that does not."""
    file, planned = of_the_book(job, kept)
    made = read(file)
    check(made)
    expected = calls(planned.plan)
    rings = [len(event.all("VALARM")) for event in made.all("VEVENT")]
    assert rings == [1, 0] * len(expected)
    starts = [floating(event, "DTSTART") for event in made.all("VEVENT")]
    assert starts == [moment for call in expected for moment in (call.at, call.comes)]


@pytest.mark.parametrize("job", JOBS)
def test_icalendar_reads_the_same_out_of_it(job: str, kept: Path) -> None:
    file, planned = of_the_book(job, kept)
    made = icalendar.Calendar.from_ical(file)
    assert made.errors == []
    events: list[Any] = list(made.walk("VEVENT"))
    expected = calls(planned.plan)
    for call, event, visit in zip(expected, events[::2], events[1::2], strict=True):
        assert event.errors == [] and visit.errors == []
        assert (event["DTSTART"].dt, visit["DTSTART"].dt, visit["DTEND"].dt) == (call.at, call.comes, call.leaves)
        assert event["DTSTART"].dt.tzinfo is None
        assert event.walk("VALARM")[0]["TRIGGER"].dt == timedelta(minutes=-15)


def test_icalendar_reads_awkward_words_as_they_were() -> None:
    events: list[Any] = list(icalendar.Calendar.from_ical(awkward()).walk("VEVENT"))
    assert str(events[0]["SUMMARY"]) == f"Call: {AWKWARD}"
    assert str(events[0]["LOCATION"]) == AWKWARD
    assert str(events[0]["DESCRIPTION"]).splitlines()[1] == f"He, {AWKWARD}"


def uids(file: bytes) -> list[str]:
    """The UIDs of a file in their order."""
    return [event.values("UID")[0] for event in read(file).all("VEVENT")]


def test_an_event_keeps_its_uid_when_its_day_moves() -> None:
    """The same job two weeks later: the same events at other times. Another job has none of them."""
    later = awkward(START + timedelta(days=14))
    assert uids(later) == uids(awkward()) and later != awkward()
    assert not set(uids(awkward(START, "another"))) & set(uids(awkward()))


def test_the_file_is_the_same_in_each_run() -> None:
    """DTSTAMP is the day from which the job is planned, not the moment of the build."""
    first = awkward()
    awkward.cache_clear()
    assert awkward() == first
    assert {event.values("DTSTAMP")[0] for event in read(first).all("VEVENT")} == {"20261207T000000Z"}


@pytest.mark.parametrize(
    ("wrong", "right"),
    [(b"\n", b"\r\n"), (b"20261207T000000", b"20261207T000000Z"), (b"Fu\xc3\x9fboden; W", b"Fu\xc3\x9fboden\\; W")],
)
def test_the_reader_here_sees_what_is_wrong(wrong: bytes, right: bytes) -> None:
    """The rules above find a bare line end, a stamp that is not in UTC and an unescaped semicolon."""
    with pytest.raises(AssertionError):
        check(read(awkward().replace(right, wrong)))
