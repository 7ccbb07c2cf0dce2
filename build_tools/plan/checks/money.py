"""The checks of the money in a job: every amount can be read, and all are in one currency."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.book.book import Entry
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.model.job import Hand, Job
from build_tools.book.yaml_reader import Location
from build_tools.plan.money import read_money
from calculators.reading import Unreadable


def of_money(entry: Entry[Job]) -> Iterator[Diagnostic]:
    """Amounts that are none, and those in another currency than the first."""
    currency = ""
    for at, text in _amounts(entry.item):
        try:
            amount = read_money(text)
        except Unreadable as trouble:
            yield entry.error(at, str(trouble))
            continue
        currency = currency or amount.currency
        if amount.currency != currency:
            yield entry.error(at, f"'{text}' is not in {currency}, in which this job counts")


def _amounts(job: Job) -> Iterator[tuple[Location, str]]:
    if job.money:
        yield ("money", "budget"), job.money.budget
        if job.money.labour_rate:
            yield ("money", "labour_rate"), job.money.labour_rate
    for index, price in enumerate(job.prices):
        if price.price:
            yield ("prices", index, "price"), price.price
    yield from _rates(job.people, ("people",))
    for name, variant in job.variants.items():
        yield from _rates(variant.more_people, ("variants", name, "more_people"))


def _rates(people: list[Hand], at: Location) -> Iterator[tuple[Location, str]]:
    for index, hand in enumerate(people):
        if hand.rate:
            yield (*at, index, "rate"), hand.rate
