"""The search's own functions in V8: slips of spelling, and the order of what is found."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from build_tools.browser.form_script import SCRIPTS
from tests.script_engine import new_engine

PIECES = sorted((SCRIPTS / "search").glob("[12]-*.js"))
ENTRIES = [
    ["plumbing/toilet-set.html", "Set a toilet", "commode, WC, throne", 4, "Set a tank toilet on a closet flange."],
    ["plumbing/toilet-set.html#flange", "Check the flange", "", 1, "The flange of the toilet is anchored."],
    ["terms.html#closet-flange", "Closet flange", "toilet flange", 1, "The ring that the bowl is bolted to."],
    ["doors/lockset-install.html", "Install a lockset", "doorknob, door handle", 4, "Bore the door and set the lock."],
    ["plumbing/vanity-faucet.html", "Set a vanity and its faucet", "bathroom sink", 4, "A vanity with its top."],
    ["concrete/drain-line.html#bed", "Bed the pipe", "bedding", 1, "Sand for the bedding. A room in the saw cut."],
    ["dangers.html#saws-now", "When it has happened: Saws", "", 1, "Press on it.", ["bleeding", "cut myself"]],
]
WORDS = ["toilet", "flange", "closet", "together", "lockset", "doorknob", "vanity", "faucet", "commode", "bathroom"]
WORDS += ["bedding", "bleeding", "room", "myself"]


@pytest.fixture(scope="module")
def engine() -> Any:
    """V8 with the functions that need no page."""
    engine = new_engine()
    engine.eval("".join(path.read_text(encoding="utf-8") for path in PIECES))
    engine.eval(f"const ready = makeReady({json.dumps(ENTRIES)}); const known = {json.dumps(WORDS)};")
    return engine


def found(engine: Any, typed: str) -> dict[str, Any]:
    """What a search gives: the addresses, and the words that were meant."""
    answer = json.loads(engine.eval(f"JSON.stringify(search({json.dumps(typed)}, ready, known))"))
    return {"found": [entry[0] for entry in answer["found"]], "meant": answer["meant"]}


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("toilet", "plumbing/toilet-set.html"),
        ("Commode", "plumbing/toilet-set.html"),
        ("doork", "doors/lockset-install.html"),
        ("bathroom sink", "plumbing/vanity-faucet.html"),
        ("closet flange", "terms.html#closet-flange"),
        ("set vanity", "plumbing/vanity-faucet.html"),
    ],
)
def test_what_is_meant_stands_first(engine: Any, typed: str, first: str) -> None:
    answer = found(engine, typed)
    assert answer["found"][0] == first
    assert answer["meant"] == []


@pytest.mark.parametrize(
    ("typed", "meant", "first"),
    [
        ("tolet", "toilet", "plumbing/toilet-set.html"),
        ("tiolet", "toilet", "plumbing/toilet-set.html"),
        ("vanitty", "vanity", "plumbing/vanity-faucet.html"),
        ("fauset", "faucet", "plumbing/vanity-faucet.html"),
        ("commodde", "commode", "plumbing/toilet-set.html"),
        ("lokset", "lockset", "doors/lockset-install.html"),
    ],
)
def test_a_slip_is_forgiven_and_said(engine: Any, typed: str, meant: str, first: str) -> None:
    answer = found(engine, typed)
    assert answer["meant"] == [meant]
    assert answer["found"][0] == first


@pytest.mark.parametrize("typed", ["bedxxng", "roof", "bedings", "rooz"])
def test_a_word_is_not_made_into_another_one(engine: Any, typed: str) -> None:
    """Two slips in a short word, or one wrong letter in a very short one, make another word of it."""
    assert found(engine, typed) == {"found": [], "meant": []}


@pytest.mark.parametrize(
    "typed", ["bleeding", "bleding", "I am bleeding badly", "help i cut myself!", "saw cut myself", "bedding bleeding"]
)
def test_an_emergency_is_answered_first_whatever_else_was_typed(engine: Any, typed: str) -> None:
    assert found(engine, typed)["found"][0] == "dangers.html#saws-now"


def test_an_emergency_comes_once_and_other_answers_behind_it(engine: Any) -> None:
    assert found(engine, "cut myself")["found"] == ["dangers.html#saws-now"]
    assert found(engine, "cut")["found"] == ["concrete/drain-line.html#bed", "dangers.html#saws-now"]


def test_every_word_must_stand_somewhere(engine: Any) -> None:
    assert found(engine, "vanity doorknob")["found"] == []
    assert found(engine, "zzqqxx")["found"] == []
    assert found(engine, "  ")["found"] == []


def plain_slips(one: str, other: str) -> int:
    """Slips between two words by the book's definition: insert, leave out, change, swap two neighbours."""
    table = [[max(i, j) if 0 in (i, j) else 0 for j in range(len(other) + 1)] for i in range(len(one) + 1)]
    for i in range(1, len(one) + 1):
        for j in range(1, len(other) + 1):
            choices = [table[i - 1][j] + 1, table[i][j - 1] + 1, table[i - 1][j - 1] + (one[i - 1] != other[j - 1])]
            if i > 1 and j > 1 and one[i - 1] == other[j - 2] and one[i - 2] == other[j - 1]:
                choices.append(table[i - 2][j - 2] + 1)
            table[i][j] = min(choices)
    return table[-1][-1]


@given(st.text("abc", max_size=7), st.text("abc", max_size=7), st.integers(0, 3))
def test_slips_are_counted_right(engine: Any, one: str, other: str, most: int) -> None:
    counted = engine.eval(f"slips({json.dumps(one)}, {json.dumps(other)}, {most})")
    assert counted == min(plain_slips(one, other), most + 1)
