"""Every reading of the book that is outside says by how much, in either units, and what it says is so."""

from __future__ import annotations

import json
import re
from functools import lru_cache
from typing import Any

import pytest
from py_mini_racer import MiniRacer

from build_tools.browser.compiler.bundle import compile_calculators
from build_tools.browser.form_script import WORDS, pieces
from build_tools.commands.site import BOOK
from build_tools.pages.on_site import measure_data
from build_tools.pages.words import words
from calculators.registry import CALCULATORS
from calculators.units import UNITS
from tests.builds import context_of
from tests.script_engine import new_engine

pytestmark = pytest.mark.slow

PIECES = pieces("elements/make", "elements/ways", "limits", "figures", "enter/1-reading")


@lru_cache
def measures() -> dict[str, dict[str, Any]]:
    """What each reading of the book is held against, by its place."""
    context = context_of(BOOK)
    return {
        f"{id}#{step.id} {number}": json.loads(measure_data(one, context))
        for id, entry in context.book.procedures.items()
        for step in entry.item.steps
        for number, one in enumerate(step.measurements)
    }


@lru_cache
def engine() -> MiniRacer:
    """An engine with the functions of the readings and what they read figures with."""
    made = new_engine()
    made.eval(compile_calculators([CALCULATORS["wax-ring"]]).core)
    say = {key.removeprefix("do_"): text for key, text in words().items() if key.startswith("do_")}
    joined = "\n".join(piece.read_text(encoding="utf-8") for piece in PIECES).replace(WORDS, json.dumps(say))
    made.eval(f"var told = (() => {{ {joined} return {{ readText, verdictOf, outsideWords }} }})();")
    return made


def judged(data: dict[str, Any], text: str, units: str = "us") -> tuple[str, str]:
    """The verdict of a typed reading and what is said of it."""
    call = f"""(() => {{
        const data = {json.dumps(data)}, unit = crew.unit(data.quantity, data.unit, {json.dumps(units == "metric")});
        const {{ value = null, why = "" }} = told.readText(data, {json.dumps(text)}, unit);
        const verdict = told.verdictOf(data, value);
        return JSON.stringify([verdict, verdict === "outside" ? told.outsideWords(data, value, unit) : why]); }})()"""
    verdict, said = json.loads(str(engine().eval(call)))
    return verdict, said


def limit(**data: Any) -> dict[str, Any]:
    """A reading of inches with those limits, where nothing else is said."""
    return {"name": "gap", "quantity": "length", "unit": "in", **data}


def outside(data: dict[str, Any]) -> list[str]:
    """Texts that lie outside the limits, from far above and far below, with the words of each way."""
    limits = [*data.get("ways", []), data]
    figures = [one[side] for one in limits for side in ("low", "high") if side in one]
    over, under = UNITS.get(data["quantity"], {}).get(data["unit"], [1, 1])
    sizes = [abs(figure) * under / over for figure in figures] or [0]
    unit = {"ft-in": "in", "1:n": "%"}.get(data["unit"], data["unit"])
    text, nothing = f"{max(sizes) * 3 + 60:.0f} {unit}", f"0 {unit}"
    return [f"{text} {way['way']}" for way in data["ways"]] if "ways" in data else [text, nothing]


@pytest.mark.parametrize("units", ["us", "metric"])
def test_what_is_outside_says_by_how_much(units: str) -> None:
    """No reading of the book is outside without a figure, or by nothing: temperatures, pressures and counts as well."""
    told = {}
    for place, data in measures().items():
        for text in outside(data):
            verdict, said = judged(data, text, units)
            if verdict == "outside":
                told[place, text] = said
    assert {data["quantity"] for data in measures().values()} >= {"length", "temperature", "number", "time", "percent"}
    assert len({place for place, _ in told}) == len(measures())
    silent = {
        place: said
        for place, said in told.items()
        if not said.startswith("Outside: never") and not re.search(r"by \S*[1-9]\S* ?\S+", said)
    }
    assert silent == {}


@pytest.mark.parametrize(
    ("data", "text", "units", "said"),
    [
        (limit(quantity="temperature", unit="F", low=50), "45", "us", "Outside by 5 F, too little."),
        (limit(quantity="temperature", unit="F", low=50), "5", "metric", "Outside by 5 C, too little."),
        (limit(quantity="number", unit="psi", high=80), "92.5", "us", "Outside by 12.5 psi, too much."),
        (limit(quantity="number", unit="each", low=4), "3", "us", "Outside by 1 each, too little."),
        (limit(quantity="slope", unit="1:n", high=1 / 12), "1:10", "us", "Outside by 1.667 %, too much."),
        (limit(low=-0.125, high=0.125), "1/4", "us", "Outside by 1/8 in."),
        (limit(low=-0.125, high=0.125), "-1/4", "us", "Outside by 1/8 in."),
        (limit(high=0.015625), "0.02", "us", "Outside by 0.004375 in, too much."),
    ],
)
def test_by_how_much(data: dict[str, Any], text: str, units: str, said: str) -> None:
    """A difference of heat is no place on a scale, a small one is told in figures, an even reading has no side."""
    assert judged(data, text, units) == ("outside", said)


@pytest.mark.parametrize(
    ("data", "text", "verdict"),
    [
        (limit(high=0.125), "-1/4", "unread"),
        (limit(low=0.25), "-1/4", "outside"),
        (limit(quantity="temperature", unit="F", high=32), "-4", "pass"),
        (limit(low=-0.125, high=0.125), "-1/8", "pass"),
    ],
)
def test_a_minus_is_no_way_to_pass(data: dict[str, Any], text: str, verdict: str) -> None:
    """Who writes -1/4 for a gap of a quarter inch does not pass by its sign."""
    assert judged(data, text)[0] == verdict


@pytest.mark.parametrize(
    ("data", "text", "verdict"),
    [
        (limit(low=36), "914 mm", "pass"),
        (limit(low=36), "913 mm", "outside"),
        (limit(low=36), "35-31/32", "outside"),
        (limit(high=0.625), "16 mm", "pass"),
        (limit(high=0.625), "5 / 8", "pass"),
        (limit(high=0.625), "21/32", "outside"),
        (limit(high=0.0625), "2 mm", "outside"),
    ],
)
def test_a_limit_in_inches_is_met_in_whole_millimetres(data: dict[str, Any], text: str, verdict: str) -> None:
    """Codes print 36 in as 914 mm: half a millimetre is nothing at 3/8 in and more; no mark of the tape is so near."""
    assert judged(data, text)[0] == verdict
