"""Pieces cut from stock lengths with the least stock, proved by a solver. Runs when the book is built."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor
from typing import Annotated, Any, TypedDict

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, output_rows, refuse
from calculators.declaring import Help, calculator, count, length, number, rows, text, time
from calculators.doors.cut_list_drawing import cut_list_drawing
from calculators.doors.cutting_stock import Packing, Question, Stick, Stock, first_fit, pack
from calculators.writing import NOISE, decimal, feet_inches, inches

Rows = list[dict[str, Any]]

MOST_PIECES = 1000
MOST_STOCK = 20
LEAST_PRICE = 0.01
WORK_A_SECOND = 0.3
"""The solver's own unit of work for each second asked for: about what a small machine does."""
COST_GRAIN = 1000
"""Parts of an inch, or of a unit of money, in which stock is weighed."""


@dataclass(slots=True)
class Wanted:
    """A piece that is still to be cut, and how many of it."""

    length: float
    name: str
    left: int


class PieceToCut(TypedDict):
    """Pieces of one length."""

    length: Annotated[float, length("Length", 'from 1/2" to 40 ft', "ft-in")]
    count: Annotated[float, count("How many", "1, from 1 to 1000")]
    name: Annotated[str, text("Name", default="")]


class StockLength(TypedDict):
    """A length that the store sells."""

    length: Annotated[float, length("Length", 'from 6" to 40 ft, usually 6 to 20 ft', "ft-in")]
    price: Annotated[float, number("Price", "0, from 0 to 10000"), Help("0: the least length is bought.")]


@calculator(
    title="Cut list",
    summary="Which pieces are cut from which stick, so that the fewest are bought; proved.",
    outputs=(
        Output("sticks", "Sticks", "count", "each", step=1, rounds="up"),
        output_rows(
            "order",
            "To buy",
            Output("length", "Stock", "length", "ft-in"),
            Output("count", "How many", "count", step=1, rounds="up"),
            Output("price", "Price of one", "number", step=0.01),
        ),
        output_rows(
            "cuts",
            "Cuts",
            Output("times", "Sticks", "count", step=1),
            Output("stock", "Stock", "length", "ft-in"),
            Output("cuts", "Cut", "text"),
            Output("offcut", "Left over", "length", "in", step=1 / 16, rounds="down"),
        ),
        Output("bought", "Length bought", "length", "ft-in"),
        Output("cut", "Length of the pieces", "length", "ft-in"),
        Output("waste", "Waste", "percent", "%", step=0.1),
        Output("price", "Price", "number", step=0.01),
        Output("proved", "Proved least", "yes-no"),
        Output("proof", "Proof", "text"),
        Output("gap", "Gap to the bound", "percent", "%", step=0.1, rounds="up"),
        Output("by_hand", "Sticks, cut longest first by hand", "count", step=1),
    ),
    formula=(
        "The pieces of a stick, and a kerf between each two, are no longer than the stick less its trim. Every full "
        "way to cut a stick is listed; a solver (OR-Tools CP-SAT) chooses how often each is cut so that each piece is "
        "there and the stock is least, and proves that less cannot do. Where the ways are too many to list, they are "
        "made one by one, each the one that lowers the cost most, and the answer says how near the bound it came."
    ),
    sources=(Citation("cutting-stock", "the model of patterns"), COMMON_PRACTICE, CREW_RULE),
    example={
        "pieces": [
            {"length": "4' 11-7/8\"", "count": 2, "name": "shelf"},
            {"length": "5'", "count": 4, "name": "back cleat"},
            {"length": "13-1/4 in", "count": 8, "name": "side cleat"},
        ],
        "stock": [{"length": "12'"}],
    },
    other_names=("cutting list", "cut plan", "stick list", "trim list", "board optimizing", "cutting stock"),
    cannot_decide=(
        "Which sticks are straight and sound: knots and split ends come off, so look the sticks over and buy a spare. "
        "Cut the long pieces first, and measure at the place before the cut."
    ),
    on_site=False,
    drawing=cut_list_drawing,
)
def cut_list(
    pieces: Annotated[Rows, rows("Pieces", PieceToCut)],
    stock: Annotated[Rows, rows("Stock lengths", StockLength)],
    kerf: Annotated[float, length("Saw kerf", "1/8 in, from 0 to 1/2 in, usually 1/16 to 3/16 in")],
    trim: Annotated[float, length("Squared off each stick", "0, from 0 to 12 in, usually 0 to 2 in")],
    seconds: Annotated[
        float,
        time("Solver's time at most", "10 s, from 1 to 120 s"),
        Help("In the solver's own count, so that every machine gives the same list."),
    ],
) -> Answer:
    """The cuts of every stick, so that the least stock is bought. Lengths in inches, ``seconds`` in hours.

    The saw takes ``kerf`` between two pieces; ``trim`` is squared off each stick. With no prices, the sum of the
    lengths is least; with prices, their sum. Of answers as good, one with few sticks.

    Source: the cutting stock problem, solved as an integer model by OR-Tools CP-SAT; see ``cutting_stock``.

    >>> stock = [{"length": 96.0, "price": 0.0}]
    >>> answer = cut_list(pieces=[{"length": 31.0, "count": 5, "name": "cleat"}], stock=stock)
    >>> [answer["sticks"], answer["proved"], answer["cuts"][0]["cuts"], answer["cuts"][0]["offcut"]]
    [2, True, '3 x 2\\' 7" cleat', 2.625]
    """
    check_rows(pieces, stock, trim)
    priced = stock[0]["price"] > 0
    question = question_of(pieces, stock, kerf, trim, priced)
    packing = pack(question, seconds * 3600 * WORK_A_SECOND)
    ordered = sorted(
        packing.sticks, key=lambda stick: (-question.stock[stick.stock].length, tuple(-n for n in stick.counts))
    )
    cuts = named_cuts(question, ordered, pieces)
    bought = sum(question.stock[stick.stock].length for stick in ordered)
    cut = sum(piece["length"] * piece["count"] for piece in pieces)
    order = order_of(question, ordered, stock)
    return {
        "sticks": len(ordered),
        "order": order,
        "cuts": cuts,
        "bought": bought,
        "cut": cut,
        "waste": (bought - cut) / bought * 100,
        "price": sum(row["count"] * row["price"] for row in order),
        "proved": packing.proved,
        "proof": proof(packing, question, priced, seconds * 3600),
        "gap": (packing.cost - packing.least) / packing.cost * 100,
        "by_hand": len(first_fit(question)),
        "cautions": cautions_for(packing, len(stock), priced),
        "working": [
            f"{sum(question.counts)} pieces, together {feet_inches(cut)}",
            *(f"{row['count']} sticks of {feet_inches(row['length'])}" for row in order),
            f"bought {feet_inches(bought)}: waste {decimal((bought - cut) / bought * 100, 1)} %, kerf {inches(kerf)}",
            proof(packing, question, priced, seconds * 3600),
        ],
    }


def check_rows(pieces: Rows, stock: Rows, trim: float) -> None:
    """Refuse lists that hold nothing, too much, a piece longer than every stick, or some prices only."""
    if not pieces:
        refuse("pieces", "No pieces are given.")
    if not stock:
        refuse("stock", "No stock length is given.")
    if sum(piece["count"] for piece in pieces) > MOST_PIECES:
        refuse("pieces", f"More than the {MOST_PIECES} pieces that this answers for: make a list a room.")
    if len(stock) > MOST_STOCK:
        refuse("stock", f"More than the {MOST_STOCK} stock lengths that this answers for.")
    for each in stock:
        if each["length"] - trim < NOISE:
            refuse("stock", f"{inches(trim)} of trim leave nothing of a stick of {feet_inches(each['length'])}.")
        if 0 < each["price"] < LEAST_PRICE:
            refuse("stock", f"A price is at least {LEAST_PRICE}, or 0 where none is known.")
    longest = max(each["length"] for each in stock)
    for piece in pieces:
        if piece["length"] > longest - trim + NOISE:
            called = f" ({piece['name']})" if piece["name"] else ""
            refuse(
                "pieces",
                f"A piece of {feet_inches(piece['length'])}{called} does not come out of the longest stock,"
                f" {feet_inches(longest)}, less {inches(trim)} of trim.",
            )
    if len({each["price"] > 0 for each in stock}) > 1:
        refuse("stock", "Some stock has a price and some has none: give all prices or none.")


def question_of(pieces: Rows, stock: Rows, kerf: float, trim: float, priced: bool) -> Question:
    """The question for the packing: pieces of one length together, longest first."""
    lengths: dict[float, int] = {}
    for piece in pieces:
        same = next((length for length in lengths if abs(length - piece["length"]) < NOISE), piece["length"])
        lengths[same] = lengths.get(same, 0) + floor(piece["count"])
    ordered = tuple(sorted(lengths, reverse=True))
    costs = [round((each["price"] if priced else each["length"]) * COST_GRAIN) for each in stock]
    sticks = tuple(Stock(each["length"], cost) for each, cost in zip(stock, costs, strict=True))
    return Question(ordered, tuple(lengths[length] for length in ordered), sticks, kerf, trim)


def named_cuts(question: Question, sticks: list[Stick], pieces: Rows) -> Rows:
    """Each way of cutting with how often it is cut; names are handed out in the order in which they were given."""
    wanted = [Wanted(piece["length"], piece["name"], floor(piece["count"])) for piece in pieces]
    rows: Rows = []
    for stick in sticks:
        stock = question.stock[stick.stock].length
        taken = [one for at, count in enumerate(stick.counts) for one in _hand_out(wanted, question.lengths[at], count)]
        left = stock - question.trim - sum(length * count + question.kerf * count for length, _, count in taken)
        text = ", ".join(f"{count} x {feet_inches(length)} {name}".strip() for length, name, count in taken)
        row = {"times": 1, "stock": stock, "cuts": text, "offcut": max(0.0, left), "parts": _parts(taken)}
        same = next((each for each in rows if (each["stock"], each["cuts"]) == (stock, text)), None)
        if same:
            same["times"] += 1
        else:
            rows.append(row)
    return rows


def _parts(taken: list[tuple[float, str, int]]) -> list[dict[str, Any]]:
    return [{"length": length, "name": name} for length, name, count in taken for _ in range(count)]


def _hand_out(wanted: list[Wanted], length: float, count: int) -> list[tuple[float, str, int]]:
    given: list[tuple[float, str, int]] = []
    if not count:
        return given
    for one in wanted:
        if abs(one.length - length) < NOISE and one.left > 0 and count > 0:
            now = min(one.left, count)
            one.left -= now
            count -= now
            given.append((one.length, one.name, now))
    return given


def order_of(question: Question, sticks: list[Stick], stock: Rows) -> Rows:
    """How many of each stock length to buy."""
    rows = []
    for at, each in enumerate(stock):
        count = sum(stick.stock == at for stick in sticks)
        if count:
            rows.append({"length": each["length"], "count": count, "price": each["price"]})
    return rows


def proof(packing: Packing, question: Question, priced: bool, seconds: float) -> str:
    """What the solver has proved, in words."""
    one = len(question.stock) == 1
    if packing.proved:
        return f"proved: {'fewer sticks' if one else 'a lower price' if priced else 'less length'} cannot do it"
    least = packing.least // question.stock[0].cost if one else packing.least / COST_GRAIN
    what = f"{least} sticks" if one else decimal(least, 2) if priced else feet_inches(least)
    part = decimal((packing.cost - packing.least) / packing.cost * 100, 1)
    return f"not proved within {decimal(seconds, 0)} s of the solver: {what} at least, a gap of {part} %"


def cautions_for(packing: Packing, kinds: int, priced: bool) -> list[str]:
    """What to watch."""
    cautions = []
    if not packing.proved:
        cautions.append("A better list may exist: give the solver more time, or fewer stock lengths.")
    if kinds > 1 and not priced:
        cautions.append("The least length is bought. Where a longer stick costs more for each foot, give the prices.")
    return cautions
