"""The pages about the whole fit-out: the sequence of the work, who looks when, and what can hurt."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from build_tools.book.book import ProcedureEntry
from build_tools.book.model.step import Message, Step
from build_tools.book.sequence import direct, in_order, links
from build_tools.pages.fit_out.sequence_chart import BOX, LINE, PAD, SequenceChart, lay_out
from build_tools.pages.helpers import Helpers
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.renderer import Renderer

WORDS = ("DANGER", "WARNING", "CAUTION", "NOTICE")


def sequence_page(renderer: Renderer) -> Page:
    """The sequence of the whole fit-out: the chart, and the same as a list."""
    helpers = renderer.helpers("sequence.html")
    graph = direct(links(renderer.book))
    trades = renderer.trades()
    lane = {id: trades.index(entry.trade) for id, entry in renderer.book.procedures.items() if entry.trade in trades}
    graph = {id: [other for other in before if other in lane] for id, before in graph.items() if id in lane}
    titles = {id: helpers.title("procedure", id) for id in lane}
    holds = {id: len(list(_holds(renderer.book.procedures[id]))) for id in lane}
    given = (trades, titles, graph, lane, holds, [helpers.title("trade", trade) for trade in trades])
    return renderer.context.memo.named(
        "page sequence", given, lambda: _sequence(renderer, helpers, graph, lane, titles, holds)
    )


def _sequence(
    renderer: Renderer,
    helpers: Helpers,
    graph: dict[str, list[str]],
    lane: dict[str, int],
    titles: dict[str, str],
    holds: dict[str, int],
) -> Page:
    trades = renderer.trades()
    sequence = in_order(graph, lane, lambda id: (lane[id], titles[id]))
    chart = lay_out(sequence, graph, lane, titles, len(trades))
    listed = [
        {
            "id": id,
            "url": helpers.url("procedure", id),
            "title": titles[id],
            "lane": lane[id],
            "trade": helpers.title("trade", trades[lane[id]]),
            "holds": holds[id],
            "before": [{"id": other, "title": titles[other]} for other in graph[id]],
        }
        for id in sequence
    ]
    content = renderer.render(
        "sequence.html",
        helpers,
        chart=drawn(chart),
        trades=[helpers.title("trade", trade) for trade in trades],
        listed=listed,
        count=len(sequence),
    )
    say = renderer.words
    headings = (Heading(say["sequence_drawn"], "drawn"), Heading(say["sequence_listed"], "listed"))
    # Each line is marked in the lane of its trade; how many trades there are stands in the book.
    style = f".sequence{{--lanes:{len(trades)}}}" + "".join(f".lane-{n}{{--lane:{n}}}" for n in range(len(trades)))
    found = (_found(renderer, "sequence"),)
    return Page("sequence.html", say["sequence_title"], content, say["sequence_lead"], headings, found, style=style)


def drawn(chart: SequenceChart) -> dict[str, Any]:
    """What the template draws: the chart, with the places of the letters in each box."""
    return {
        "width": chart.width,
        "height": chart.height,
        "paths": chart.paths,
        "lanes": chart.lanes,
        "box": BOX,
        "boxes": [
            {
                "id": box.id,
                "x": box.x,
                "y": box.y,
                "height": box.height,
                "lines": [(line, box.y + PAD + LINE * (n + 1) - 4) for n, line in enumerate(box.lines)],
            }
            for box in chart.boxes
        ],
    }


def holds_page(renderer: Renderer) -> Page:
    """Every hold point in the order of the work, and under each the inspection that releases it."""
    helpers = renderer.helpers("holds.html")
    graph = direct(links(renderer.book))
    trade = {id: entry.trade for id, entry in renderer.book.procedures.items()}
    met: dict[str, list[dict[str, Any]]] = {}
    for id in in_order(graph, trade, lambda id: (trade[id], id)):
        for number, step in _holds(renderer.book.procedures[id]):
            met.setdefault(step.hold.inspection, []).append(  # type: ignore[union-attr]
                {"procedure": id, "step": step, "number": number}
            )
    said = [*met, *sorted(set(renderer.book.inspections) - set(met))]
    content = renderer.render("holds.html", helpers, inspections=[(id, met.get(id, [])) for id in said])
    say = renderer.words
    headings = tuple(Heading(helpers.title("inspection", id), id) for id in said)
    return Page("holds.html", say["holds_title"], content, say["holds_lead"], headings, (_found(renderer, "holds"),))


def dangers_page(renderer: Renderer) -> Page:
    """What can hurt on the job, what protects, and each step that warns of it."""
    helpers = renderer.helpers("dangers.html")
    met: dict[str, list[dict[str, Any]]] = {}
    for id, entry in renderer.book.procedures.items():
        for step, message in _messages(entry):
            if message.danger:
                met.setdefault(message.danger, []).append({"procedure": id, "step": step, "word": message.word})
    for places in met.values():
        places.sort(key=lambda place: (WORDS.index(place["word"]), helpers.title("procedure", place["procedure"])))
    entries = sorted(renderer.book.dangers.values(), key=lambda entry: helpers.title("danger", entry.id).lower())
    content = renderer.render("dangers.html", helpers, entries=entries, met=met)
    say = renderer.words
    found = tuple(
        SearchEntry(
            f"dangers.html#{entry.id}",
            helpers.title("danger", entry.id),
            helpers.words(entry.item.hazard),
            tuple(helpers.say(name) for name in entry.item.other_names),
        )
        for entry in entries
    )
    urgent = tuple(
        SearchEntry(
            f"dangers.html#{entry.id}-now",
            f"{say['afterwards']}: {helpers.title('danger', entry.id)}",
            helpers.words(entry.item.afterwards),
            emergency=tuple(helpers.say(phrase) for phrase in entry.item.emergency),
        )
        for entry in entries
        if entry.item.emergency
    )
    headings = tuple(Heading(helpers.title("danger", entry.id), entry.id) for entry in entries)
    page = (_found(renderer, "dangers"), *found, *urgent)
    return Page("dangers.html", say["dangers_title"], content, say["dangers_lead"], headings, page)


def _holds(entry: ProcedureEntry) -> Iterator[tuple[int, Step]]:
    """The steps of a procedure that hold, with their numbers."""
    return ((number, step) for number, step in enumerate(entry.item.steps, 1) if step.hold)


def _messages(entry: ProcedureEntry) -> Iterator[tuple[Step | None, Message]]:
    """The safety messages of a procedure with their steps; those for all of it have none."""
    for message in entry.item.safety:
        yield None, message
    for step in entry.item.steps:
        for message in step.messages:
            yield step, message


def _found(renderer: Renderer, page: str) -> SearchEntry:
    return SearchEntry(f"{page}.html", renderer.words[f"{page}_title"], renderer.words[f"{page}_lead"])
