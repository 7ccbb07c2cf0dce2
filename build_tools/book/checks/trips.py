"""The trips of a work: their parts make the whole, and each waits for one that comes before it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from build_tools.book.amounts import read_with_unit
from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.model.procedure import Trip
from build_tools.book.references import figure_of
from build_tools.book.yaml_reader import Location
from calculators.reading import Unreadable, read

MOST_TIMES = 20
"""Trips alike. More is a slip of the pen."""


def of_procedure(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """Parts, times and waits of the trips, and what closings count from."""
    trips = entry.item.labour.trips
    parts: list[float] = []
    for number, (name, trip) in enumerate(trips.items()):
        at: Location = ("labour", "trips", name)
        yield from _figures(context, entry, at, trip, parts)
        yield from _waits(entry, at, number, trip, list(trips)[:number])
    if trips and len(parts) == len(trips) and abs(sum(parts) - 100) > 1e-6:
        yield entry.error(("labour", "trips"), f"the parts come to {sum(parts):g} %, and make the whole work: 100 %")
    if trips and entry.item.labour.in_one_day:
        yield entry.error(
            ("labour", "in_one_day"), "work with trips is not done in one day", "write it at the trip that is"
        )
    yield from _closings(entry)


def _figures(
    context: Context, entry: ProcedureEntry, at: Location, trip: Trip, parts: list[float]
) -> Iterator[Diagnostic]:
    try:
        parts.append(read(figure_of(trip.part, context.book) or "100 %", "percent", "%"))
        if not 0 < parts[-1] <= 100:
            yield entry.error((*at, "part"), f"'{trip.part}' is no part of the work")
    except Unreadable as trouble:
        yield entry.error((*at, "part"), str(trouble))
    try:
        times = read(figure_of(trip.times, context.book) or "1", "count", "")
        if not 1 <= times <= MOST_TIMES:
            yield entry.error((*at, "times"), f"'{trip.times}' is no number of trips: 1 to {MOST_TIMES} are wanted")
    except Unreadable as trouble:
        yield entry.error((*at, "times"), str(trouble))
    try:
        if read_with_unit(figure_of(trip.wait or "0 h", context.book) or "0 h", "time", "h") < 0:
            yield entry.error((*at, "wait"), f"'{trip.wait}' is no time to wait")
    except Unreadable as trouble:
        yield entry.error((*at, "wait"), str(trouble))


def _waits(entry: ProcedureEntry, at: Location, number: int, trip: Trip, earlier: list[str]) -> Iterator[Diagnostic]:
    """A trip after another one says how long it waits for it, and the first one waits only for itself."""
    first_alone = not number and trip.times == "1"
    if trip.wait is None and not first_alone:
        yield entry.error(at, "does not say how long it waits", "write 'wait: 24 h', or take it into the trip before")
    if trip.wait is not None and first_alone:
        yield entry.error((*at, "wait"), "is that of the first trip, which waits for nothing", "leave it out")
    if trip.since is not None and trip.since not in earlier:
        hint = did_you_mean(trip.since, earlier) or "name one of those before it"
        yield entry.error((*at, "since"), f"no trip before this one is called '{trip.since}'", hint)


def _closings(entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """A closing counts from a trip that others do not join, and what is shut between trips is closed after them."""
    trips = entry.item.labour.trips
    names = list(trips)
    joined = {before for before, name in pairwise(names) if trips[name].shut}
    counted = set()
    for index, closing in enumerate(entry.item.closes):
        if closing.after is not None and closing.after not in trips:
            yield entry.error(
                ("closes", index, "after"), f"there is no trip '{closing.after}'", did_you_mean(closing.after, names)
            )
        elif closing.after in joined and closing.shuts_out == "everybody":
            yield entry.error(
                ("closes", index, "after"),
                f"the trip after '{closing.after}' says 'shut', so the closing counts from a later one",
            )
        elif closing.shuts_out == "everybody" and names:
            counted.add(closing.after or names[-1])
    for number, (name, trip) in enumerate(trips.items()):
        until = next((other for other in names[number:] if other not in joined), name)
        if trip.shut and until not in counted:
            yield entry.error(
                ("labour", "trips", name, "shut"),
                f"nothing is closed to everybody after '{until}'",
                "say in 'closes' what is shut, or leave 'shut' out",
            )
