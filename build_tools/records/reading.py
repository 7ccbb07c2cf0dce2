"""Reading the files of a folder, and putting those of the same work together."""

from __future__ import annotations

import json
import re
from codecs import BOM_UTF8
from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from pathlib import Path

from pydantic import TypeAdapter, ValidationError
from pydantic_core import InitErrorDetails, PydanticCustomError

from build_tools.book.content import content_of
from build_tools.records.model import Entry, Hold, Reading, Record, Records

LARGEST = 30_000_000
"""Bytes of a file of records: all of a large job has a few million."""
NO_RECORD = "is no record of this book, or it is broken"
_LIST: TypeAdapter[list[Record]] = TypeAdapter(Records)
CLOCKS_DIFFER = timedelta(minutes=15)
"""Clocks that people set by hand differ by minutes; one that is ahead by more would overrule what others enter."""


COUNT_OR_TEXT = re.compile(r'"((?:[^"\\]|\\.)*)"(?:[ \t\r\n]*:[ \t\r\n]*(-?[0-9][0-9.eE+-]*))?')
"""A text of JSON, and the figure that it names, if it names one."""
COUNTS = ("revision", "version")
LARGEST_COUNT = 2**53 - 1
"""Script tells the whole numbers up to here apart (ECMA-262, Number.MAX_SAFE_INTEGER)."""
ZONES_DIFFER = timedelta(hours=14)
"""The time of a place is at most so far ahead of UTC."""


def read_records(folder: Path) -> tuple[list[tuple[Path, list[Record]]], list[tuple[Path, str]]]:
    """The files of records in a folder and the folders in it, and the files that are none, each with the reason."""
    read, refused = [], []
    for path in sorted(folder.rglob("*.json")):
        try:
            read.append((path, records_in(content_of(path, LARGEST))))
        except ValidationError as error:
            first = error.errors()[0]
            place = ".".join(str(part) for part in first["loc"])
            why = first["msg"].removeprefix("Value error, ")
            refused.append((path, f"{NO_RECORD}: {place}: {why}" if place else f"{NO_RECORD}: {why}"))
        except OSError as error:
            refused.append((path, error.strerror or "cannot be read"))
    return read, refused


def records_in(content: bytes) -> list[Record]:
    """The records of a file, one or a list of them; raises ValidationError where one is none."""
    content = content.removeprefix(BOM_UTF8)
    try:
        text = content.decode()
    except UnicodeDecodeError:
        raise _refusal("is not UTF-8 text") from None
    is_list = content.lstrip().startswith(b"[")
    records = _LIST.validate_json(content) if is_list else [Record.model_validate_json(content)]
    _refuse_unplain(text)
    return records


def _refuse_unplain(text: str) -> None:
    """Refuse a revision that is no whole number, plainly written, that every reader takes alike."""
    for name, count in COUNT_OR_TEXT.findall(text):
        if count and json.loads(f'"{name}"') in COUNTS:
            is_plain = re.fullmatch("-?[0-9]{1,16}", count) and abs(int(count)) <= LARGEST_COUNT
            if not is_plain:
                raise _refusal(f"a whole number up to {LARGEST_COUNT} is wanted, written like 12", name, count)


def _refusal(why: str, *at: str) -> ValidationError:
    error = InitErrorDetails(type=PydanticCustomError("file", "{why}", {"why": why}), loc=at[:1], input=at[1:])
    return ValidationError.from_exception_data("Record", [error])


def without_future_entries(now: datetime, records: Iterable[Record]) -> tuple[list[Record], list[str]]:
    """The records without the entries whose time is still to come, which would count over all others; those times."""
    made, ahead = [], []
    for record in records:
        ahead += [time for entry in record.items if (time := _future_time(entry, now))]
        items = [entry for entry in record.items if not _future_time(entry, now)]
        taken = _written(now) if record.taken > _written(now + CLOCKS_DIFFER) else record.taken
        made.append(record.model_copy(update={"items": items, "taken": taken}))
    return made, ahead


def _future_time(entry: Entry, now: datetime) -> str:
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
