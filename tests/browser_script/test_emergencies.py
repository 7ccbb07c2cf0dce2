"""Emergency words in the search of the whole book, in V8: what to do now comes first, and no word is mistaken."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tests.browser_script.test_search import PIECES
from tests.script_engine import new_engine

TYPED = {
    "first aid": "somebody-hurt", "911": "somebody-hurt", "ambulance": "somebody-hurt", "accident": "somebody-hurt",
    "he is unconscious": "somebody-hurt", "somebody is hurt": "somebody-hurt", "ambulence": "somebody-hurt",
    "bleeding": "saws", "bleding": "saws", "I cut myself": "saws", "cut off my finger": "saws", "lots of blood": "saws",
    "electrocuted": "live-power", "got an electric shock": "live-power", "i smell gas": "fuel-gas",
    "carbon monoxide": "fuel-gas", "something in my eye": "flying-chips", "burned my hand": "hot-water",
    "stepped on a nail": "points-underfoot", "shot a nail in the hand": "nailers", "he fell off the ladder": "falls",
    "broken arm": "falls", "swallowed glue": "chemicals", "poisoned": "chemicals", "heat stroke": "knees-and-heat",
    "trench caved in": "trench", "hit a gas line": "buried-lines", "pinned under the cabinet": "tipping",
    "needle stick": "filth", "house is on fire": "way-out", "hit a power line": "overhead-wires",
}  # fmt: skip
FIRST = {
    "somebody-hurt": "unconscious, passed out, blacked out, faint, numb, frostbite, bandage, choking, not breathing,"
    " snake, sting, allergic",
    "knees-and-heat": "stroke",
    "bad-air": "dizzy",
    "fuel-gas": "explosion, gas smell",
    "trench": "buried, cave in, collapse",
    "live-power": "shock, electrocuted",
    "chemicals": "poison, swallowed",
    "tipping": "crushed, pinned",
    "heat-and-cloth": "burn, burned, smoke, fire",
    "flying-chips": "eye",
    "points-underfoot": "nail in foot",
    "saws": "cut finger, amputated",
}
"""For each danger the words that lead to what to do then before all else."""
BEHIND = [
    ("stroke", "dangers.html#somebody-hurt-now"),
    ("dizzy", "dangers.html#fuel-gas-now"),
    ("burned", "dangers.html#hot-water-now"),
    ("fire", "dangers.html#way-out-now"),
    ("smoke", "dangers.html#way-out-now"),
    ("buried", "concrete/utility-marks.html"),
    ("smoke", "power/alarm-places.html"),
    ("fire", "power/alarm-places.html"),
    ("crushed stone", "materials.html#base-aggregate"),
    ("collapse", "dangers.html#trench"),
]
"""What is found by such a word all the same."""
ORDINARY = ("crushed stone", "cut-off saw", "bleed water", "fire extinguisher", "eye protection", "pole", "toilet")


@pytest.fixture(scope="module")
def engine(site: Path) -> Any:
    """V8 with the search and everything that the built book can be searched for."""
    engine = new_engine()
    engine.eval("var window = this;")
    engine.eval((site / "assets/script/found.js").read_text(encoding="utf-8"))
    engine.eval("".join(path.read_text(encoding="utf-8") for path in PIECES))
    engine.eval("const ready = makeReady(crewSearch.entries);")
    return engine


def found(engine: Any, typed: str) -> dict[str, Any]:
    """The addresses that a search gives, and the words that were taken for others."""
    answer = json.loads(engine.eval(f"JSON.stringify(search({json.dumps(typed)}, ready, crewSearch.words))"))
    return {"found": [entry[0] for entry in answer["found"]], "meant": answer["meant"]}


@pytest.mark.parametrize(("typed", "danger"), TYPED.items())
def test_what_to_do_now_comes_first(engine: Any, typed: str, danger: str) -> None:
    answer = found(engine, typed)
    assert f"dangers.html#{danger}-now" in answer["found"][:2]
    assert answer["meant"] in ([], ["bleeding"], ["ambulance"])


@pytest.mark.parametrize(("danger", "typed"), [(id, one) for id, some in FIRST.items() for one in some.split(", ")])
def test_one_word_leads_to_what_to_do_first(engine: Any, danger: str, typed: str) -> None:
    answer = found(engine, typed)
    assert (answer["found"][0], answer["meant"]) == (f"dangers.html#{danger}-now", [])


@pytest.mark.parametrize(("typed", "address"), BEHIND)
def test_what_to_do_hides_nothing(engine: Any, typed: str, address: str) -> None:
    """Behind it stands what the word finds at other times."""
    assert address in found(engine, typed)["found"][1:6]


@pytest.mark.parametrize("typed", ORDINARY)
def test_what_is_no_emergency_still_finds_its_page(engine: Any, typed: str) -> None:
    """The first answers of an ordinary search are not all about what has happened."""
    assert any(not address.endswith("-now") for address in found(engine, typed)["found"][:4])


def test_every_emergency_leads_to_its_place(engine: Any) -> None:
    """Every phrase of every danger is found by itself, whole."""
    phrases = json.loads(engine.eval("JSON.stringify(crewSearch.entries.filter(e => e[5]).map(e => [e[0], e[5]]))"))
    assert len(phrases) > 25
    lost = [one for address, some in phrases for one in some if address not in found(engine, one)["found"][:3]]
    assert lost == []
