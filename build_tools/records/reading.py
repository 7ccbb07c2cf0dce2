"""Reading the files of a folder, and putting those of the same work together."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from pathlib import Path

from pydantic import TypeAdapter, ValidationError

from build_tools.book.content import content_of
from build_tools.records.model import Entry, Hold, Reading, Record, Records

LARGEST = 30_000_000
"""Bytes of a file of records: all of a large job has a few million."""
NO_RECORD = "is no record of this book, or it is broken"
_LIST: TypeAdapter[list[Record]] = TypeAdapter(Records)
CLOCKS_DIFFER = timedelta(minutes=15)
"""Clocks that people set by hand differ by minutes; one that is ahead by more would overrule what others enter."""


ZONES_DIFFER = timedelta(hours=14)
"""The time of a place is at most so far ahead of UTC."""


def read_records(folder: Path) -> tuple[list[tuple[Path, list[Record]]], list[tuple[Path, str]]]:
    """The files of records in a folder and the folders in it, and the files that are none, each with the reason."""
    read, refused = [], []
    for path in sorted(folder.rglob("*.json")):
        try:
            read.append((path, records_in(content_of(path, LARGEST))))
        except ValidationError as problem:
            first = problem.errors()[0]
            place = ".".join(str(part) for part in first["loc"])
            why = first["msg"].removeprefix("Value error, ")
            refused.append((path, f"{NO_RECORD}: {place}: {why}" if place else f"{NO_RECORD}: {why}"))
        except OSError as problem:
            refused.append((path, problem.strerror or "cannot be read"))
    return read, refused


def records_in(content: bytes) -> list[Record]:
    """The records of a file, one or a list of them; raises ValidationError where one is none."""
    if content.lstrip().startswith(b"["):
        return _LIST.validate_json(content)
    return [Record.model_validate_json(content)]


def made_by(now: datetime, records: Iterable[Record]) -> tuple[list[Record], list[str]]:
    """The records without the entries whose time is still to come, which would count over all others; those times."""
    made, ahead = [], []
    for record in records:
        ahead += [time for entry in record.items if (time := _ahead_of(entry, now))]
        items = [entry for entry in record.items if not _ahead_of(entry, now)]
        taken = _written(now) if record.taken > _written(now + CLOCKS_DIFFER) else record.taken
        made.append(record.model_copy(update={"items": items, "taken": taken}))
    return made, ahead


def _ahead_of(entry: Entry, now: datetime) -> str:
    """The time of an entry that is still to come, when it was made or when somebody looked; else empty."""
    if entry.at > _written(now + CLOCKS_DIFFER):
        return entry.at
    looked = f"{entry.when}:00.000Z" if isinstance(entry, Hold) and entry.when else ""
    return looked if looked > _written(now + ZONES_DIFFER + CLOCKS_DIFFER) else ""


def _written(time: datetime) -> str:
    return time.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def entry_key(entry: Entry) -> tuple[str, str, str]:
    """What an entry is about: of two with the same key the later counts."""
    return entry.kind, entry.step, entry.name if isinstance(entry, Reading) else ""


def merged(records: Iterable[Record]) -> list[Record]:
    """Records of the same work as one: of each entry the latest, the steps of the latest edition."""
    works: dict[tuple[str, str, str], Record] = {}
    for record in records:
        key = (record.job.id, record.space.id, record.procedure.id)
        before = works.get(key)
        works[key] = _together(before, record) if before else record
    return sorted(works.values(), key=_order)


def _together(before: Record, record: Record) -> Record:
    entries = {entry_key(entry): entry for entry in before.items}
    for entry in record.items:
        there = entries.get(entry_key(entry))
        if there is None or there.at < entry.at:
            entries[entry_key(entry)] = entry
    age = (record.procedure.revision, record.taken)
    latest = record if age > (before.procedure.revision, before.taken) else before
    return latest.model_copy(update={"items": list(entries.values())})


def _order(record: Record) -> tuple[str, ...]:
    # By code units of UTF-16, as a script compares texts, so that both list in the same order.
    names = (record.job.title, record.space.title, record.procedure.title, record.procedure.id)
    return tuple(name.encode("utf-16-be").hex() for name in names)
