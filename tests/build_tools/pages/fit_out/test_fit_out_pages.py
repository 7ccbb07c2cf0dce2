"""The pages about the whole fit-out: nothing of the book is missing in the chart, the hold points and the dangers."""

from __future__ import annotations

from collections import Counter
from functools import cache
from typing import Any

import pytest
import yaml
from bs4 import Tag

from build_tools.commands.site import BOOK
from tests.site_pages import SitePage, attribute, resolve, text_of

Pages = dict[str, SitePage]
Place = tuple[str, str]
"""A page and an anchor on it."""


@cache
def reference(kind: str) -> dict[str, Any]:
    """Every entry of one kind, as it is written."""
    files = sorted((BOOK / "reference" / kind).glob("*.yaml"))
    return {id: entry for file in files for id, entry in yaml.load(file.read_text("utf-8"), yaml.BaseLoader).items()}


@cache
def procedures() -> dict[str, Any]:
    """Every procedure as it is written, by the address of its page."""
    files = sorted(file for trade in reference("trades") for file in (BOOK / trade).glob("*.yaml"))
    return {
        f"{file.parent.name}/{file.stem}.html": yaml.load(file.read_text("utf-8"), yaml.BaseLoader) for file in files
    }


def led_to(page: SitePage, around: Tag) -> list[Place]:
    """Where the links within an element lead, in the order of their lines."""
    links = around.select("a")
    return [resolve(page.url, attribute(link, "href")) for link in links if link.has_attr("href")]


def section(page: SitePage, id: str) -> Tag:
    """The section of that id."""
    found = [one for one in page.select("section") if one.get("id") == id]
    assert len(found) == 1, f"{page.url} has {len(found)} sections '{id}'"
    return found[0]


def warned() -> dict[str, Counter[Place]]:
    """Each danger with the steps that warn of it; a message for the whole procedure has no step."""
    found: dict[str, Counter[Place]] = {id: Counter() for id in reference("dangers")}
    for url, data in procedures().items():
        for message in data.get("safety", []):
            if "danger" in message:
                found[message["danger"]][url, ""] += 1
        for step in data["steps"]:
            for message in step.get("messages", []):
                if "danger" in message:
                    found[message["danger"]][url, step["id"]] += 1
    return found


def held() -> dict[str, list[Place]]:
    """Each inspection with the steps that wait for it."""
    found: dict[str, list[Place]] = {id: [] for id in reference("inspections")}
    for url, data in procedures().items():
        for step in data["steps"]:
            if "hold" in step:
                found[step["hold"]["inspection"]].append((url, step["id"]))
    return found


def test_each_procedure_is_a_link_in_the_chart(pages: Pages) -> None:
    """Once, by its title."""
    page = pages["sequence.html"]
    (chart,) = page.select(".sequence-chart")
    assert sorted(led_to(page, chart)) == [(url, "") for url in sorted(procedures())]
    titles = [attribute(link, "aria-label") for link in chart.select("a")]
    wanted = [data["title"] for data in procedures().values()]
    assert sorted(
        title.rsplit(", ", 1)[0] if title.endswith(("hold point", "hold points")) else title for title in titles
    ) == sorted(wanted)


def test_each_procedure_is_a_link_in_the_list(pages: Pages) -> None:
    """Once, after everything that must be done first."""
    page = pages["sequence.html"]
    (listed,) = page.select(".sequence")
    urls = [url for url, _ in led_to(page, listed)]
    assert sorted(urls) == sorted(procedures())
    place = {url.removesuffix(".html").split("/")[1]: number for number, url in enumerate(urls)}
    early = [
        f"{url} stands before {line['procedure']}"
        for url, data in procedures().items()
        for line in data.get("before", [])
        if "procedure" in line and place[url.removesuffix(".html").split("/")[1]] < place[line["procedure"]]
    ]
    assert early == []


def test_the_chart_marks_what_holds(pages: Pages) -> None:
    """A box has the hold sign where the procedure has a hold point, and the list says how many."""
    page = pages["sequence.html"]
    (chart,) = page.select(".sequence-chart")
    links = chart.select("a")
    marked = {resolve(page.url, attribute(link, "href"))[0] for link in links if link.select(".stop")}
    assert marked == {url for places in held().values() for url, _ in places}


def test_each_line_of_the_chart_is_a_link_of_the_book(pages: Pages) -> None:
    """As many lines as links remain when those that follow from others are left out: none at all would be a fault."""
    page = pages["sequence.html"]
    (chart,) = page.select(".sequence-chart")
    lines = [one for one in chart.select("path") if not one.has_attr("class")]
    given = sum("procedure" in line for data in procedures().values() for line in data.get("before", []))
    assert len(procedures()) - 1 <= len(lines) <= given


def test_each_trade_has_its_lane(pages: Pages) -> None:
    """With its title at the head."""
    page = pages["sequence.html"]
    in_order = sorted(reference("trades").values(), key=lambda trade: int(trade["order"]))
    assert [text_of(head) for head in page.select("text.head")] == [trade["title"] for trade in in_order]


def test_every_hold_point_is_there(pages: Pages) -> None:
    """Under its inspection, with a link to the step; an inspection without one says so."""
    page = pages["holds.html"]
    for id, places in held().items():
        entry = section(page, id)
        stops = entry.select(".stops-at")
        found = [place for around in stops for place in led_to(page, around) if place[1] and place[0] in procedures()]
        assert set(places) <= set(found), f"{id}: {set(places) - set(found)}"
        assert bool(places) == bool(stops), id


def test_every_inspection_says_who_looks(pages: Pages) -> None:
    """Who, and how long ahead he is called."""
    page = pages["holds.html"]
    for id, inspection in reference("inspections").items():
        words = text_of(section(page, id))
        assert inspection["who"] in words, id
        assert inspection["title"] in words, id


def test_each_danger_lists_each_step_that_warns_of_it(pages: Pages) -> None:
    """As often as it is warned of, and no other."""
    page = pages["dangers.html"]
    for id, places in warned().items():
        folds = section(page, id).select(".fold")
        assert len(folds) == 1, f"'{id}': no step warns of it"
        assert Counter(led_to(page, folds[0])) == places, id
        assert text_of(folds[0].select(".n")[0]) == str(places.total()), id


def test_each_danger_says_what_protects(pages: Pages) -> None:
    """In the order of the book, each with where it comes from and the gear as links; and what to do after."""
    page = pages["dangers.html"]
    for id, danger in reference("dangers").items():
        entry = section(page, id)
        (protects,) = entry.select(".protects")
        lines = [line for line in protects.select("li") if line.parent is protects]
        assert len(lines) == len(danger["protects"]), id
        for line, protection in zip(lines, danger["protects"], strict=True):
            assert text_of(line.select(".basis")[0]), id
            gear = [anchor for file, anchor in led_to(page, line) if file == "tools.html"]
            assert set(protection.get("tools", [])) <= set(gear), id
        assert entry.select(".said"), id


@pytest.mark.parametrize(
    ("url", "kind"), [("sequence.html", ""), ("holds.html", "inspections"), ("dangers.html", "dangers")]
)
def test_headings_and_ids(url: str, kind: str, pages: Pages) -> None:
    """One title, a heading for each entry with the entry's own words, no id twice."""
    page = pages[url]
    assert len(page.select("h1")) == 1
    titles = [entry["title"] for entry in reference(kind).values()] if kind else []
    heads = [text_of(head) for head in page.select("h2")]
    assert sorted(heads) == sorted(titles) if kind else len(heads) == 2
    assert [id for id, times in Counter(page.ids()).items() if times > 1] == []


def test_the_pages_are_in_the_navigation(pages: Pages) -> None:
    """From every page of the book one comes to all three."""
    wanted = {"sequence.html", "holds.html", "dangers.html"}
    for page in pages.values():
        if page.url != "404.html":
            assert wanted <= {resolve(page.url, link)[0] for link in page.links()}, page.url
