"""No danger is set up by the book itself: what protects stands before the first step that needs it, on every page.

Each rule reads the files of the book alone. A tool stands for its danger, an inspection for what may not be done before
it, and a few words for what no page may tell.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest
import yaml

from build_tools.commands.site import BOOK
from calculators.reading import read

Step = dict[str, Any]

WARNED = {
    "nailers": ("finish-nailer", "brad-nailer", "floor-nailer"),
    "saws": ("table-saw", "miter-saw", "circular-saw", "jigsaw", "undercut-saw", "tile-wet-saw"),
    "silica": ("cut-off-saw", "demolition-hammer", "tile-wet-saw"),
    "running-machines": ("drum-sander", "floor-edger", "floor-buffer", "plate-compactor"),
    "hand-tools": ("hole-saw-cross-bore", "hole-saw-set", "spade-bit-edge-bore"),
    "finish-vapour": ("floor-finish", "mineral-spirits", "rubbing-alcohol", "countertop-glue"),
    "rags-that-heat": ("floor-finish",),
    "chemicals": ("pvc-cement", "pvc-primer", "gap-foam", "household-ammonia"),
    "wet-cement": ("tile-mortar", "tile-grout", "post-concrete"),
    "live-power": ("wire-stripper", "torque-screwdriver", "insulated-screwdriver"),
    "buried-lines": ("form-stakes", "post-hole-digger", "mini-excavator"),
    "pressure-tests": ("test-plugs",),
    "hot-water": ("water-thermometer",),
}
"""For a danger, tools and materials that bring it: none is used before the page has warned of it."""

HELD = {
    "old-paint-word": ("shop-vacuum", "floor-scraper", "utility-knife", "drum-sander", "flat-bar"),
    "dead-proved": ("wire-stripper", "torque-screwdriver", "long-nose-pliers"),
}
"""For an inspection, the tools that a page which has its hold does not use before it."""

ENGINES = ("cut-off-saw", "plate-compactor", "mini-excavator", "trash-pump")
CLOSED = re.compile(r"\b(garage|closed place|in a pit|crawl space|indoors)\b")


@cache
def pages() -> dict[str, dict[str, Any]]:
    """Every procedure as it is written, by trade and name."""
    trades = yaml.load((BOOK / "reference/trades/trades.yaml").read_text("utf-8"), yaml.BaseLoader)
    files = sorted(file for trade in trades for file in (BOOK / trade).glob("*.yaml"))
    return {f"{file.parent.name}/{file.stem}": yaml.load(file.read_text("utf-8"), yaml.BaseLoader) for file in files}


def used(step: Step) -> set[str]:
    """The tools and materials of a step."""
    named = [*step.get("tools", []), *step.get("materials", [])]
    return {one if isinstance(one, str) else one.get("tool") or one["material"] for one in named}


def said(part: Any) -> str:
    """Every text in a step or a part of one."""
    if isinstance(part, dict):
        return " ".join(said(value) for value in part.values())
    if isinstance(part, list):
        return " ".join(said(value) for value in part)
    return str(part)


def first_use(page: dict[str, Any], things: tuple[str, ...]) -> int | None:
    """The number of the first step that uses one of them."""
    return next((at for at, step in enumerate(page["steps"]) if used(step) & set(things)), None)


def warned_from(page: dict[str, Any], danger: str) -> int | None:
    """The first step that a message of that danger guards; a message that guards none holds from where it stands."""
    ids = [step["id"] for step in page["steps"]]
    at = [(0, message) for message in page.get("safety", [])]
    at += [(number, message) for number, step in enumerate(page["steps"]) for message in step.get("messages", [])]
    guarded = [
        ids.index(message["guards"]) if "guards" in message else number
        for number, message in at
        if message.get("danger") == danger
    ]
    return min(guarded, default=None)


def too_late() -> Iterator[str]:
    """Each page that uses a tool before it has warned of the tool's danger."""
    for name, page in pages().items():
        for danger, things in WARNED.items():
            first = first_use(page, things)
            warned = warned_from(page, danger)
            if first is not None and (warned is None or warned > first):
                step = page["steps"][first]
                yield f"{name}#{step['id']}: uses {', '.join(used(step) & set(things))} before a word on '{danger}'"


def test_a_danger_is_told_before_its_tool_is_in_hand() -> None:
    assert list(too_late()) == []


@pytest.mark.parametrize("danger", WARNED)
def test_each_danger_of_the_list_is_met_somewhere(danger: str) -> None:
    """A tool that was renamed would make the rule above pass for nothing."""
    for thing in WARNED[danger]:
        assert any(first_use(page, (thing,)) is not None for page in pages().values()), thing


def held(page: dict[str, Any]) -> Iterator[tuple[int, str]]:
    """The holds of a page: the number of the step, and the inspection."""
    for number, step in enumerate(page["steps"]):
        if "hold" in step:
            yield number, step["hold"]["inspection"]


@pytest.mark.parametrize("inspection", HELD)
def test_what_a_hold_is_for_is_not_done_before_it(inspection: str) -> None:
    found = 0
    for name, page in pages().items():
        for number, what in held(page):
            if what == inspection:
                found += 1
                first = first_use(page, HELD[inspection])
                assert first is None or first >= number, f"{name}#{page['steps'][first]['id']} stands before the hold"
    assert found > 0


def test_nobody_is_sent_into_a_trench_before_its_signature() -> None:
    """Until the hold of the entry a spade works from the ground above, and every step before it says so."""
    page = pages()["concrete/trench-safety"]
    hold = next(number for number, what in held(page) if what == "trench-entry")
    ids = [step["id"] for step in page["steps"]]
    assert [one for one in ids if one in ("protect", "ladders", "air-water")] == ["protect", "ladders", "air-water"]
    assert max(ids.index(one) for one in ("protect", "ladders", "air-water")) < hold < ids.index("work-inside")
    for step in page["steps"][:hold]:
        text = " ".join(said(step).split())
        for sentence in re.split(r"(?<=[.:;]) ", text):
            if re.search(r"\b(digs?|bared?|climbs?)\b.*\bby hand\b", sentence):
                assert re.search(r"ground above|while somebody digs", sentence), f"{step['id']}: {sentence}"
    for name, other in pages().items():
        if first_use(other, ("trench-ladder",)) is not None and name != "concrete/trench-safety":
            assert "trench-safety" in [one.get("procedure") for one in other["before"]], name


def test_no_engine_is_sent_into_a_closed_place() -> None:
    """Where a step with an engine speaks of a garage, a pit or indoors, it says that no engine runs there."""
    spoken = 0
    for name, page in pages().items():
        for step in page["steps"]:
            text = " ".join(said(step).split())
            if used(step) & set(ENGINES) and CLOSED.search(text):
                spoken += 1
                assert re.search(r"[Nn]o engine", text), f"{name}#{step['id']}"
    assert spoken >= 2


def test_a_drain_that_is_stopped_is_left_shut() -> None:
    """The cleanouts' own page forbids to open a plug with sewage behind it, so no other page tells to."""
    for name, page in pages().items():
        assert not re.search(r"open (the|a|its)\s+\[cleanout\]\(procedure:cleanout-access", said(page)), name


def test_a_box_is_tried_after_it_is_proved_dead() -> None:
    page = pages()["power/switch-device"]
    ids = [step["id"] for step in page["steps"]]
    hold = next(number for number, what in held(page) if what == "dead-proved")
    assert hold < ids.index("count-box")


def test_every_wire_is_tested_to_a_ground_that_was_proved() -> None:
    """An open neutral without a ground reads nothing on a live wire: the reference comes first, and from elsewhere."""
    page = pages()["power/circuits-proved-dead"]
    steps = {step["id"]: number for number, step in enumerate(page["steps"])}
    assert steps["bring-ground"] < steps["open-box"] < steps["test-pairs"]
    assert "another circuit" in said(page["steps"][steps["bring-ground"]])
    table = [row for row in page["steps"][steps["test-pairs"]]["detail"].splitlines() if row.startswith("|")]
    assert "each wire" in table[2] and "known ground" in table[2]


def test_gas_is_sought_high_and_low() -> None:
    """Natural gas rises, propane sinks: a page that has somebody smell at low places has him smell at high ones too."""
    for name, page in pages().items():
        for check in (check for step in page["steps"] for check in step.get("checks", [])):
            text = " ".join(said(check).split())
            if re.search(r"\b[Ss]mell\b", text) and re.search(r"\blow\b", text):
                assert re.search(r"\bhigh\b", text), f"{name}: {text}"


def test_a_screw_from_below_ends_inside_its_shelf() -> None:
    values = yaml.load((BOOK / "reference/values/doors.yaml").read_text("utf-8"), yaml.BaseLoader)
    screw, shelf = (
        read(values[one]["quantity"], "length", "in") for one in ("bracket-screw-length", "closet-shelf-thickness")
    )
    assert screw <= shelf - 0.125
    step = next(one for one in pages()["doors/closet-shelf-pole"]["steps"] if one["id"] == "set-shelf")
    assert "bracket-screw" in used(step)
    assert re.search(r"From below .*bracket-screw-length", " ".join(step["detail"].split()))


def test_steel_is_cut_by_a_blade_for_steel() -> None:
    for name, page in pages().items():
        for step in page["steps"]:
            if "closet-rod-stock" in used(step):
                assert "hacksaw-short" in used(step), f"{name}#{step['id']}"


def test_each_rule_sees_its_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    """The nailer of a page is moved ahead of its word, and the rule says so."""
    page = {
        "steps": [
            {"id": "nail", "tools": ["brad-nailer"]},
            {"id": "warn", "messages": [{"danger": "nailers", "word": "WARNING"}]},
        ]
    }
    monkeypatch.setattr("tests.procedures.test_dangers_in_order.pages", lambda: {"doors/x": page})
    assert list(too_late()) == ["doors/x#nail: uses brad-nailer before a word on 'nailers'"]
    page["steps"].reverse()
    assert list(too_late()) == []
