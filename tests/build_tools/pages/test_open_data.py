"""What the built site says to programs: structured data, the open book, and the search index."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from build_tools.commands.site import BOOK
from tests.site_pages import SitePage, resolve, text_of
from tests.tables import cells, procedures, tables, values

WRITTEN = procedures(BOOK)
TRADE = {path.stem: path.parent.name for path in BOOK.glob("*/*.yaml")}
DURATION = re.compile(r"P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?)?")


def minutes(duration: str) -> int:
    """The minutes of an ISO 8601 duration of days, hours and minutes."""
    match = DURATION.fullmatch(duration)
    assert match and any(match.groups()), duration
    days, hours, rest = (int(part or 0) for part in match.groups())
    return (days * 24 + hours) * 60 + rest


@pytest.fixture(scope="module")
def book(site: Path) -> dict[str, Any]:
    """The open data."""
    data: dict[str, Any] = json.loads((site / "book.json").read_text(encoding="utf-8"))
    return data


@pytest.fixture(scope="module")
def index(site: Path) -> list[dict[str, Any]]:
    """The entries of the search."""
    script = (site / "assets" / "script" / "found.js").read_text(encoding="utf-8")
    data = json.loads(script.removeprefix("window.crewSearch=").rstrip(";\n"))
    parts = ("location", "title", "names", "weight", "text", "emergency")
    assert all(len(entry) in (5, 6) for entry in data["entries"])
    return [dict(zip(parts, entry, strict=False)) for entry in data["entries"]]


@pytest.mark.parametrize("id", WRITTEN)
def test_a_procedure_is_a_how_to(id: str, pages: dict[str, SitePage]) -> None:
    """The page carries a schema.org HowTo with each step of the YAML in order, and times that agree."""
    page = pages[f"{TRADE[id]}/{id}.html"]
    scripts = page.select("script[type='application/ld+json']")
    assert len(scripts) == 1
    data = json.loads(scripts[0].get_text())
    assert (data["@context"], data["@type"], data["name"]) == ("https://schema.org", "HowTo", WRITTEN[id]["title"])
    steps = WRITTEN[id]["steps"]
    assert [step["url"] for step in data["step"]] == [f"#{step['id']}" for step in steps]
    assert [step["position"] for step in data["step"]] == list(range(1, len(steps) + 1))
    assert all(step["@type"] == "HowToStep" and step["name"] and step["text"] for step in data["step"])
    assert len(data["tool"]) == len(WRITTEN[id]["tools"])
    assert len(data["supply"]) == len(WRITTEN[id].get("materials", []))
    assert minutes(data["totalTime"]) >= minutes(data["performTime"]) > 0


def test_the_open_book_keeps_its_schema(book: dict[str, Any], site: Path) -> None:
    """``book.json`` validates against the schema beside it, and the schema refuses a book without its procedures."""
    schema = json.loads((site / "book.schema.json").read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    assert [f"{list(mistake.path)}: {mistake.message}" for mistake in validator.iter_errors(book)] == []
    assert not validator.is_valid({name: part for name, part in book.items() if name != "procedures"})
    assert not validator.is_valid({**book, "procedures": {"hang-door": {"title": 3}}})


def test_the_open_book_is_the_whole_book(book: dict[str, Any]) -> None:
    """Every procedure with its steps, and every crew standard, stand in the open data as they are written."""
    assert set(book["procedures"]) == set(WRITTEN)
    for id, procedure in book["procedures"].items():
        assert [step["id"] for step in procedure["steps"]] == [step["id"] for step in WRITTEN[id]["steps"]]
    assert {id: value["quantity"] for id, value in book["values"].items()} == {
        id: value["quantity"] for id, value in values(BOOK).items()
    }


@pytest.mark.parametrize(
    ("place", "table"), tables(BOOK).items(), ids=lambda given: "-".join(given) if isinstance(given, tuple) else ""
)
def test_the_open_tables_are_what_the_calculators_say(
    place: tuple[str, str], table: dict[str, Any], book: dict[str, Any]
) -> None:
    """Each cell of each computed table is what its calculator answers."""
    step = next(step for step in book["procedures"][place[0]]["steps"] if step["id"] == place[1])
    assert [[list(cell.values()) for cell in row["cells"]] for row in step["computed"]["rows"]] == cells(table, BOOK)


def test_search_leads_only_to_what_is_there(index: list[dict[str, Any]], pages: dict[str, SitePage]) -> None:
    """Each address of the search index is a page, or a place on one, and has words."""
    wrong = []
    ids = {url: set(page.ids()) for url, page in pages.items()}
    for entry in index:
        file, anchor = resolve("index.html", entry["location"] or "index.html")
        if file not in pages or (anchor and anchor not in ids[file]) or not entry["title"].strip():
            wrong.append(entry["location"])
    assert wrong == []


def found(index: list[dict[str, Any]], word: str) -> list[str]:
    """The addresses whose entry holds a word."""
    pattern = re.compile(rf"\b{re.escape(word)}\b", re.IGNORECASE)
    return [entry["location"] for entry in index if pattern.search(json.dumps(entry, ensure_ascii=False))]


@pytest.mark.parametrize(
    ("word", "page"),
    [
        ("commode", "plumbing/toilet-set.html"),
        ("doorknob", "doors/lockset-install.html"),
        ("apron", "concrete/approach-forming.html"),
    ],
)
def test_other_words_are_found(word: str, page: str, index: list[dict[str, Any]]) -> None:
    """What people say in place of the title finds the procedure."""
    assert page in found(index, word)


def test_every_step_is_found(index: list[dict[str, Any]], pages: dict[str, SitePage]) -> None:
    """Each step of each procedure is in the index at its own place, with its action as the title."""
    titles = {entry["location"]: entry["title"] for entry in index}
    for id, procedure in WRITTEN.items():
        url = f"{TRADE[id]}/{id}.html"
        actions = [text_of(action) for action in pages[url].select(".do")]
        assert [titles[f"{url}#{step['id']}"] for step in procedure["steps"]] == actions
    assert "plumbing/toilet-set.html#settle-bowl" in found(index, "twisting")
