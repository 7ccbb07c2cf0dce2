"""What a record says, a line for each step, reading, hold point and note; and the lines as CSV (RFC 4180).

The owner's page does the same in script (``browser/script/shared``), and a test holds the two together.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, fields
from typing import Any

from build_tools.book.spreadsheet import csv_text
from build_tools.records.model import Entry, Hold, Note, Reading, Record, Step, Tick
from build_tools.records.reading import entry_key

GONE = "no longer in the procedure"


@dataclass(frozen=True, slots=True)
class RecordLine:
    """One line of a record."""

    job: str
    space: str
    procedure: str
    revision: str
    step: str
    title: str
    kind: str
    what: str = ""
    limits: str = ""
    entry: str = ""
    state: str = ""
    by: str = ""
    at: str = ""


def lines_of(record: Record) -> list[RecordLine]:
    """The lines in the order of the steps, and behind them what hangs on something that is gone."""
    left = {entry_key(entry): entry for entry in record.items}
    lines = []
    for index, step in enumerate(record.steps, 1):
        number = "" if step.id == "acceptance" else str(index)
        lines += _lines_of_step(record, number, step, left)
    titles = {step.id: step.title for step in record.steps}
    for entry in left.values():
        said = _said(entry)
        if said:
            title = titles.get(entry.step, entry.step)
            kind = "step" if entry.kind == "tick" else entry.kind
            outside = isinstance(entry, Reading) and entry.verdict == "outside"
            given = {"entry": said, "state": f"outside, {GONE}" if outside else GONE}
            lines.append(_line(record, "", title, kind, entry, **given, **_measured(entry)))
    return lines


def _lines_of_step(record: Record, number: str, step: Step, left: dict[Any, Entry]) -> list[RecordLine]:
    def add(kind: str, item: Entry | None, **given: str) -> None:
        lines.append(_line(record, number, step.title, kind, item, **given))

    lines: list[RecordLine] = []
    tick = left.pop(("tick", step.id, ""), None)
    done = tick if isinstance(tick, Tick) and tick.done else None
    add("step", done, state="open" if done is None else "done" if done.print == step.print else "changed since")
    for asked in step.measures:
        found = left.pop(("reading", step.id, asked.name), None)
        reading = found if isinstance(found, Reading) and found.text else None
        entry, state = (reading.text, reading.verdict) if reading else ("", "missing")
        add("reading", reading, what=asked.what, limits=asked.limits, entry=entry, state=state)
    if step.hold is not None:
        look = left.pop(("hold", step.id, ""), None)
        passed = look if isinstance(look, Hold) and look.passed else None
        given = {"what": step.hold, "entry": _said(passed) if passed else ""}
        state = "open" if passed is None else "passed by another" if passed.role else "passed"
        add("hold", passed, state=state, **given)
    note = left.pop(("note", step.id, ""), None)
    if isinstance(note, Note) and note.text:
        add("note", note, entry=note.text)
    return lines


def _line(record: Record, number: str, title: str, kind: str, item: Entry | None, **given: str) -> RecordLine:
    return RecordLine(
        job=record.job.title or record.job.id,
        space=record.space.title or record.space.id,
        procedure=record.procedure.title,
        revision=str(item.revision if item else record.procedure.revision),
        step=number,
        title=title,
        kind=kind,
        by=item.by if item else "",
        at=item.at if item else "",
        **given,
    )


def _said(entry: Entry) -> str:
    """What was entered; nothing where it was taken back."""
    if isinstance(entry, Tick):
        return "done" if entry.done else ""
    if isinstance(entry, Hold):
        role = f"{entry.role}, " if entry.role else ""
        return f"{entry.looked}, {role}{entry.when.replace('T', ' ', 1)}" if entry.passed else ""
    return entry.text


def _measured(entry: Entry) -> dict[str, str]:
    return {"what": entry.what, "limits": entry.limits} if isinstance(entry, Reading) else {}


def csv_of(lines: Iterable[RecordLine]) -> str:
    """The lines as CSV, with a line of heads."""
    names = [field.name for field in fields(RecordLine)]
    return csv_text([names, *([getattr(line, name) for name in names] for line in lines)])
