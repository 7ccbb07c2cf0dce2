"""Small books and jobs made in code, and drawn ones: everything that a plan has to keep, in a few spaces and days."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from random import Random
from typing import Any

from build_tools.book.book import Book, Entry, ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.memo import Memo
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Labour, Procedure
from build_tools.book.model.reference import Inspection, Material, Person
from build_tools.book.yaml_reader import Document

NOWHERE = Document("procedures/jobs/drawn.yaml", "")
WEEK = ["monday", "tuesday", "wednesday", "thursday", "friday"]
BOARD = Material.model_validate({"title": "Board", "counted_in": "each", "buy": "Dry.", "supplier": "Yard"})
Fields = dict[str, Any]


def procedure(
    hours: str = "4 h", people: int = 1, steps: int = 2, holds: dict[int, str] | None = None, **more: Any
) -> Procedure:
    """A procedure with the least that one must have; ``holds`` are inspections by the number of their step."""
    made: list[Fields] = [{"id": f"s{number}", "do": "Do it."} for number in range(1, steps + 1)]
    for number, inspection in (holds or {}).items():
        made[number - 1]["hold"] = {"inspection": inspection, "stops": "The rest."}
    labour = {"people": people, "hours": hours, "per": more.pop("per", "1 each"), "basis": "common practice"}
    labour["trips"] = more.pop("trips", {})
    revision = {"number": 1, "date": "2026-01-01", "changed": "New.", "approved_by": "alda-fenn"}
    check = {"check": "Look.", "passes": "Good.", "outside": "Again."}
    least = {"title": "P", "summary": "S.", "revision": revision, "who": "helper", "alone": "Yes.", "labour": labour}
    return Procedure.model_validate(least | {"steps": made, "acceptance": [check]} | more)


def trip(part: str, **more: Any) -> Fields:
    """A line of ``trips``."""
    return {"title": "coat", "part": part, **more}


def closes(time: str, shuts_out: str = "everybody", where: str = "same space", after: str | None = None) -> Fields:
    """A line of ``closes``."""
    return {
        "after": after,
        "what": "It.",
        "shuts_out": shuts_out,
        "where": where,
        "for": time,
        "why": "So.",
        "basis": "common practice",
    }


def before(other: str, where: str = "same space", needed: str = "if planned") -> Fields:
    """A line of ``before``."""
    return {"procedure": other, "where": where, "needed": needed, "why": "So."}


def inspection(notice: str, by: str = "outside", called: str = "ahead") -> Inspection:
    """Somebody looks."""
    given = {"title": "I", "who": "He", "notice": notice, "looks_at": "It.", "by": by, "called": called}
    return Inspection.model_validate(given)


def book_of(
    procedures: dict[str, Procedure],
    people: dict[str, Fields] | None = None,
    inspections: dict[str, Inspection] | None = None,
) -> Context:
    """A book of those; without people, Alda leads and may do everything."""
    everything = list(procedures)
    people = people or {"alda-fenn": {"role": "lead", "trained_in": everything}}
    book = Book(
        procedures={id: ProcedureEntry(id, each, NOWHERE) for id, each in procedures.items()},
        people={id: Entry(id, Person.model_validate({"name": id, **each}), NOWHERE) for id, each in people.items()},
        inspections={id: Entry(id, each, NOWHERE) for id, each in (inspections or {}).items()},
        materials={"board": Entry("board", BOARD, NOWHERE)},
    )
    return Context.of(book, Memo(), {})


def job_of(tasks: dict[str, Fields], **more: Any) -> Entry[Job]:
    """A job of those tasks; without more it begins on Monday, 7 December 2026, in one room of one house."""
    least = {
        "title": "J",
        "summary": "S.",
        "start": "2026-12-07",
        "deadline": "2026-12-31",
        "hours": "8 h",
        "dwellings": {"house": {"title": "House"}},
        "spaces": {"room": {"title": "Room", "dwelling": "house"}},
        "people": [{"person": "alda-fenn"}],
    }
    tasks = {id: {"space": "room", **task} for id, task in tasks.items()}
    return Entry("drawn", Job.model_validate(least | {"tasks": tasks} | more), NOWHERE)


@dataclass(frozen=True, slots=True)
class Drawn:
    """A drawn job with its book and the day from which it is planned."""

    context: Context
    entry: Entry[Job]
    today: date


def draw(seed: int, most: int = 9) -> Drawn:
    """The job of that number: always the same one."""
    chance = Random(seed)
    procedures = _procedures(chance, Random(f"trips of {seed}"))
    people = _people(chance, list(procedures))
    days = {
        "early": inspection(chance.choice(["0 h", "24 h", "1 day"]), called="ahead"),
        "late": inspection(chance.choice(["3 h", "24 h", "2 days"]), called="when ready"),
        "own": inspection("1 h", by="crew"),
    }
    start = date(2026, 12, 1) + timedelta(days=chance.randrange(7))
    begun = chance.random() < 0.3
    today = start + timedelta(days=chance.randrange(1, 6)) if begun else start
    spaces = _spaces(chance)
    job = {
        "start": start,
        "deadline": start + timedelta(days=40),
        "begins": chance.choice(["7:30", "8:00"]),
        "hours": chance.choice(["8 h", "6 h", "4 h"]),
        "days": WEEK + (["saturday"] if chance.random() < 0.3 else []),
        "holidays": [start + timedelta(days=chance.randrange(10)) for _ in range(chance.randrange(3))],
        "dwellings": {"one": {"title": "One"}, "two": {"title": "Two"}},
        "spaces": spaces,
        "people": [_hand(chance, id, start) for id in people],
        "prices": [{"material": "board", "lead_time": "2 days"}] if chance.random() < 0.5 else [],
        "visits": [{"inspection": "late", "notice": "1 h", "why": "So."}] if chance.random() < 0.3 else [],
    }
    tasks = _tasks(chance, list(procedures), [*spaces, "one"], chance.randint(3, most), start)
    if begun:
        _begin(chance, tasks, today)
    return Drawn(book_of(procedures, people, days), job_of(tasks, **job), today)


def _procedures(chance: Random, of_trips: Random) -> dict[str, Procedure]:
    made: dict[str, Procedure] = {}
    for number in range(chance.randint(3, 6)):
        where = ["same space", "same dwelling", "whole job"]
        shut = ["everybody", "next work", "users"]
        steps = chance.randint(1, 4)
        holds = {chance.randint(1, steps): chance.choice(["early", "late", "own"])} if chance.random() < 0.4 else {}
        made[f"p{number}"] = procedure(
            hours=f"{chance.choice([0.5, 1, 2, 3, 5, 8, 11])} h",
            people=chance.choice([1, 1, 2]),
            steps=steps,
            holds=holds,
            per=chance.choice(["1 each", "10 sq ft"]),
            who=chance.choice(["helper", "lead"]),
            before=[before(id, chance.choice(where)) for id in made if chance.random() < 0.4],
            closes=[
                closes(chance.choice(["2 h", "12 h", "24 h", "3 days"]), chance.choice(shut), chance.choice(where))
                for _ in range(chance.choice([0, 0, 1, 2]))
            ],
            materials=[{"material": "board", "quantity": "1 each", "per": "each"}] if chance.random() < 0.2 else [],
        )
    return {id: _with_trips(of_trips, each) if of_trips.random() < 0.4 else each for id, each in made.items()}


def _with_trips(chance: Random, made: Procedure) -> Procedure:
    """The same work in several trips, each with its wait; closings count from any that others do not join."""
    trips: Fields = {}
    free: list[str] = []
    for number, part in enumerate(chance.choice([["100 %"], ["60 %", "40 %"], ["50 %", "20 %", "30 %"]])):
        line = trip(part, times=chance.choice(["1", "1", "2", "3"]), in_one_day=chance.random() < 0.3)
        line |= {"wait": chance.choice(["2 h", "12 h", "24 h"]), "counted_from": chance.choice(["start", "end"])}
        line["shut"] = chance.random() < 0.5
        if number > 1 and chance.random() < 0.5:
            line["since"] = "one"
        if number and line["shut"]:
            free.pop()
        free.append(["one", "two", "three"][number])
        trips[free[-1]] = line
    closings = [each.model_copy(update={"after": chance.choice([None, *free])}) for each in made.closes]
    labour = Labour.model_validate({**made.labour.model_dump(), "trips": trips})
    return made.model_copy(update={"labour": labour, "closes": closings})


def _people(chance: Random, procedures: list[str]) -> dict[str, Fields]:
    """A lead who may do everything, a helper, and at times a friend who may do a part."""
    part = chance.sample(procedures, len(procedures) // 2)
    people: dict[str, Fields] = {"alda-fenn": {"role": "lead", "trained_in": procedures}}
    people["bram-tolle"] = {"role": "helper", "trained_in": part}
    if chance.random() < 0.5:
        people["cato-rusk"] = {"role": "friend", "trained_in": part[:2]}
    if chance.random() < 0.5:
        people["dorit-vane"] = {"role": "helper"}
    return people


def _hand(chance: Random, id: str, start: date) -> Fields:
    hand: Fields = {
        "person": id,
        "off": [start + timedelta(days=chance.randrange(12))] if chance.random() < 0.4 else [],
    }
    if id != "alda-fenn" and chance.random() < 0.4:
        hand["days"] = chance.choice([["monday", "tuesday", "thursday"], [*WEEK[1:], "saturday"]])
    return hand


def _spaces(chance: Random) -> Fields:
    made: Fields = {}
    for number in range(chance.randint(1, 5)):
        space = {
            "title": f"R{number}",
            "dwelling": chance.choice(["one", "one", "two", None]),
            "length": "5 ft",
            "width": "4 ft",
            "crews": chance.choice([1, 1, 2]),
            "reached_through": [name for name in made if chance.random() < 0.25],
        }
        made[f"r{number}"] = space
    return made


def _tasks(chance: Random, procedures: list[str], places: list[str], count: int, start: date) -> dict[str, Fields]:
    order = sorted(chance.choices(procedures, k=count))
    tasks: dict[str, Fields] = {}
    for number, procedure_id in enumerate(order):
        task: Fields = {"procedure": procedure_id, "space": chance.choice(places), "quantity": "10 sq ft"}
        if chance.random() < 0.3:
            task["count"] = 2
        if chance.random() < 0.2 and tasks:
            task["after"] = [chance.choice(list(tasks))]
        if chance.random() < 0.15:
            task["not_before"] = start + timedelta(days=chance.randrange(8))
        if chance.random() < 0.1:
            task["who"] = ["alda-fenn", "bram-tolle"]
        tasks[f"t{number}"] = task
    return tasks


def _begin(chance: Random, tasks: dict[str, Fields], today: date) -> None:
    """The first tasks are done, and perhaps the next one is started."""
    done = chance.randint(1, max(1, len(tasks) // 2))
    for number, task in enumerate(tasks.values()):
        if number < done:
            task["done"] = today - timedelta(days=chance.randint(1, 3))
        elif number == done and chance.random() < 0.6:
            task["started"] = today - timedelta(days=1)
            if chance.random() < 0.5:
                task["left"] = "1 h"
