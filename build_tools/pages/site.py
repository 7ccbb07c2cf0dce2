"""Every page of the site, made from the checked book.

:func:`make_pages` is the story from top to bottom: home, trades, procedures, calculators, and one page for each kind
of entry.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path
from typing import Any

from markupsafe import Markup

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.index import PAGE_OF
from build_tools.book.order import after, links
from build_tools.pages.calculator_page import calculator_page
from build_tools.pages.filling import templates
from build_tools.pages.fit_out.pages import dangers_page, holds_page, order_page
from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.times import clock, day
from build_tools.pages.labels import labels_page
from build_tools.pages.linked_data import how_to
from build_tools.pages.live import live_page
from build_tools.pages.page import Found, Heading, Page, foot_style
from build_tools.pages.pictures import Shown
from build_tools.pages.records_page import records_page
from build_tools.pages.words import words
from build_tools.plan.planned_job import PlannedJob
from calculators.declaration import Calculator

HERE = Path(__file__).parent
FIT_OUT = ("order", "holds", "dangers")
"""The pages about the whole fit-out."""
REFERENCE = {scheme: page for scheme, page in PAGE_OF.items() if page not in FIT_OUT}
"""The schemes whose entries stand on a page of reference."""


@lru_cache
def signs() -> dict[str, Markup]:
    """The signs that stand inside the pages: file name to SVG."""
    folder = HERE / "assets" / "signs"
    return {path.stem: Markup(path.read_text(encoding="utf-8").strip()) for path in folder.glob("*.svg")}


class Maker:
    """Makes the pages of one book."""

    def __init__(
        self, context: Context, pictures: dict[tuple[str, str], Shown], site_name: str, cache: Path | None = None
    ) -> None:
        self.context = context
        self.book = context.book
        self.pictures = pictures
        self.site_name = site_name
        self.cache = cache
        self.words = words(self.book.language)
        self.after = after(links(context.book))
        self.jobs: dict[str, PlannedJob] = {}
        self.for_owner = True
        self.site_url = ""
        """The address at which the site is published, ending in ``/``; empty where the settings have none."""

    def helpers(self, url: str, folder: str = "") -> Helpers:
        """The helpers for the page at that address."""
        return Helpers(self.context, "../" * url.count("/"), self.pictures, folder)

    def fill(self, template: str, helpers: Helpers, **given: Any) -> str:
        """A template filled for one page."""
        names = {"t": self.words, "signs": signs(), "day": day, "clock": clock, **helpers.names(), **given}
        return templates(self.book.language).get_template(template).render(names)

    def live(self, helpers: Helpers, calculators: Iterable[Calculator], has_steps: bool = False) -> dict[str, str]:
        """What makes the forms of these calculators live on a page, and the boxes of its steps, in one script."""
        data = live_page(calculators, self.words, helpers.top)
        needs = ("steps-form" if data else "steps") if has_steps else "form"
        script = f"{helpers.top}assets/script/{needs}.js" if data or has_steps else ""
        return {"data": data, "script": script, "top": helpers.top}

    def procedures_of(self, trade: str) -> list[ProcedureEntry]:
        """The procedures of a trade by title."""
        return sorted(
            (entry for entry in self.book.procedures.values() if entry.trade == trade),
            key=lambda entry: self.context.index.targets["procedure", entry.id].title,
        )

    def listed(self, helpers: Helpers, entries: list[ProcedureEntry]) -> list[dict[str, str]]:
        """Procedures as a list of links."""
        return [
            {
                "url": helpers.url("procedure", entry.id),
                "title": helpers.title("procedure", entry.id),
                "summary": first_sentence(helpers.words(entry.item.summary)),
            }
            for entry in entries
        ]

    def linked(self, helpers: Helpers, ids: list[str]) -> list[dict[str, str]]:
        """Procedures as bare links."""
        return [
            {"url": helpers.url("procedure", id), "title": helpers.title("procedure", id), "summary": ""} for id in ids
        ]

    def around(self, entry: ProcedureEntry) -> tuple[object, ...]:
        """What the page of a procedure is made from besides the procedure itself."""
        beside = sorted(shown.url for (folder, _), shown in self.pictures.items() if folder == entry.folder)
        return self.context.fingerprint, tuple(self.after[entry.id]), tuple(beside)

    def has_pictures(self, entry: ProcedureEntry) -> bool:
        """Whether every photo and drawing of a procedure could be made."""
        wanted = [picture.file for step in entry.item.steps for picture in (step.photo, step.drawing) if picture]
        return all((entry.folder, file) in self.pictures for file in wanted)

    def trades(self) -> list[str]:
        """The trades in the order that the book gives them."""
        return sorted(self.book.trades, key=lambda id: (self.book.trades[id].item.order, id))


def make_pages(maker: Maker) -> list[Page]:
    """Every page, the home page first."""
    pages = [_home(maker)]
    pages += [_trade(maker, trade) for trade in maker.trades()]
    pages += [_procedure_remembered(maker, entry) for entry in maker.book.procedures.values()]
    pages += [order_page(maker), holds_page(maker), dangers_page(maker)]
    if maker.jobs:
        from build_tools.pages.jobs.pages import job_pages  # they bring the solver: only a book with jobs loads it

        pages += job_pages(maker)
    pages += [labels_page(maker), records_page(maker)]
    pages.append(_calculators(maker))
    pages += [calculator_page(maker, calculator) for calculator in maker.context.calculators.values()]
    pages += [_entries_remembered(maker, scheme, page) for scheme, page in REFERENCE.items()]
    return pages


def _home(maker: Maker) -> Page:
    helpers = maker.helpers("index.html")
    book, index = maker.book, maker.context.index
    trades = [
        {
            "id": id,
            "title": helpers.title("trade", id),
            "summary": helpers.words(book.trades[id].item.summary),
            "procedures": maker.listed(helpers, maker.procedures_of(id)),
        }
        for id in maker.trades()
    ]
    tools = []
    for id, tool in sorted(book.tools.items(), key=lambda item: index.targets["tool", item[0]].title):
        users = [key[1] for key in index.used_in.get(("tool", id), []) if key[0] == "procedure"]
        if users and not tool.item.protects:
            pages = maker.linked(helpers, sorted(users))
            tools.append({"title": helpers.title("tool", id), "url": helpers.url("tool", id), "procedures": pages})
    fit_out = [
        {"url": f"{page}.html", "title": maker.words[f"{page}_title"], "summary": maker.words[f"{page}_lead"]}
        for page in FIT_OUT
    ]
    fit_out += [
        {"url": f"{page}.html", "title": maker.words[f"{page}_title"], "summary": maker.words[f"{page}_lead"]}
        for page in ("labels", "records")
    ]
    counts = {
        "procedures": len(book.procedures),
        "calculators": len(maker.context.calculators),
        "sources": len(book.sources),
    }
    content = maker.fill(
        "home.html",
        helpers,
        site_name=maker.site_name,
        trades=trades,
        tools=tools,
        fit_out=fit_out,
        counts=counts,
    )
    headings = [Heading(maker.words["by_trade"], "by-trade"), Heading(maker.words["by_tool"], "by-tool")]
    headings.append(Heading(maker.words["whole_house"], "whole"))
    return Page("index.html", maker.words["home"], content, maker.words["home_lead"], tuple(headings))


def _trade(maker: Maker, id: str) -> Page:
    url = f"{id}/index.html"
    helpers = maker.helpers(url)
    trade = maker.book.trades[id].item
    title, summary = helpers.say(trade.title), helpers.words(trade.summary)
    calculators = [
        {"url": helpers.url("calculator", name), "title": calculator.title, "summary": calculator.summary}
        for name, calculator in maker.context.calculators.items()
        if calculator.trade == id
    ]
    content = maker.fill(
        "trade.html",
        helpers,
        trade={"id": id, "title": title, "summary": summary},
        procedures=maker.listed(helpers, maker.procedures_of(id)),
        calculators=calculators,
    )
    headings = [Heading(maker.words["procedures"], "procedures")]
    headings += [Heading(maker.words["calculators"], "calculators")] if calculators else []
    return Page(url, title, content, summary, tuple(headings), (Found(url, title, summary),))


def _procedure_remembered(maker: Maker, entry: ProcedureEntry) -> Page:
    return maker.context.memo.of("page", entry.item, maker.around(entry), lambda: procedure_page(maker, entry))


def procedure_page(maker: Maker, entry: ProcedureEntry) -> Page:
    """The page of a procedure."""
    url = f"{entry.trade}/{entry.id}.html"
    helpers = maker.helpers(url, entry.folder)
    item = entry.item
    approved = maker.book.people.get(item.revision.approved_by)
    revision, title = item.revision, helpers.say(item.title)
    by = approved.item.name if approved else revision.approved_by
    foot = maker.words["foot"].format(title=title, n=revision.number, date=revision.date.isoformat(), by=by)
    forms = {step.calculator.calculator for step in item.steps if step.calculator}
    content = maker.fill(
        "procedure.html",
        helpers,
        procedure={
            "id": entry.id,
            "trade": entry.trade,
            "item": item,
            "after": maker.linked(helpers, maker.after[entry.id]),
            "approved_by": by,
        },
        live=maker.live(helpers, [maker.context.calculators[name] for name in sorted(forms)], has_steps=True),
        top=helpers.top,
    )
    data = Markup('<script type="application/ld+json">{}</script>').format(Markup(how_to(entry, helpers)))
    summary = helpers.words(item.summary)
    return Page(
        url,
        title,
        content + str(data),
        summary,
        _headings(maker, entry, helpers),
        tuple(_found(entry, url, helpers)),
        style=foot_style(foot),
    )


def _headings(maker: Maker, entry: ProcedureEntry, helpers: Helpers) -> tuple[Heading, ...]:
    item, say = entry.item, maker.words
    steps = tuple(
        Heading(f"{number}. {helpers.words(step.do).rstrip('.')}", step.id) for number, step in enumerate(item.steps, 1)
    )
    parts = [
        ("before", bool(item.before or item.safety or item.closes), ()),
        ("tools", bool(item.tools), ()),
        ("materials", bool(item.materials), ()),
        ("steps", True, steps),
        ("acceptance", True, ()),
        ("after", bool(maker.after[entry.id]), ()),
        ("questions", bool(item.questions), ()),
        ("sources", bool(item.sources), ()),
    ]
    return tuple(Heading(say[name], name, below) for name, there, below in parts if there)


def _found(entry: ProcedureEntry, url: str, helpers: Helpers) -> list[Found]:
    """The procedure itself, ahead of everything else in a search, and each of its steps."""
    item = entry.item
    title = helpers.say(item.title)
    names = tuple(helpers.say(name) for name in item.other_names)
    found = [Found(url, title, helpers.words(item.summary), names, boost=4)]
    for step in item.steps:
        parts = [helpers.words(step.detail)] if step.detail else []
        parts += [helpers.words(text) for key in step.key_points for text in (key.point, key.why)]
        parts += [helpers.words(m.hazard) for m in step.messages] + [helpers.words(m.what) for m in step.measurements]
        found.append(Found(f"{url}#{step.id}", helpers.words(step.do), " ".join(parts)))
    return found


def _calculators(maker: Maker) -> Page:
    url = "calculators/index.html"
    helpers = maker.helpers(url)
    trades = [
        {
            "id": id,
            "title": helpers.title("trade", id),
            "calculators": [
                {"url": helpers.url("calculator", name), "title": calculator.title, "summary": calculator.summary}
                for name, calculator in maker.context.calculators.items()
                if calculator.trade == id
            ],
        }
        for id in maker.trades()
    ]
    content = maker.fill("calculators.html", helpers, trades=trades)
    headings = tuple(Heading(str(trade["title"]), str(trade["id"])) for trade in trades if trade["calculators"])
    return Page(url, maker.words["calculators"], content, maker.words["calculators_lead"], headings)


def _entries_remembered(maker: Maker, scheme: str, kind: str) -> Page:
    items = [entry.item for entry in maker.book.kind(scheme).values()]
    users = [maker.context.index.used_in.get((scheme, id)) for id in maker.book.kind(scheme)]
    given = (maker.context.fingerprint, items, users)
    return maker.context.memo.named(f"page {kind}", given, lambda: _entries(maker, scheme, kind))


def _entries(maker: Maker, scheme: str, kind: str) -> Page:
    url = f"{kind}.html"
    helpers = maker.helpers(url)
    entries = sorted(maker.book.kind(scheme).values(), key=lambda entry: helpers.title(scheme, entry.id).lower())
    content = maker.fill("entries.html", helpers, kind=kind, scheme=scheme, entries=entries)
    title = maker.words[{"values": "standards", "crew": "people"}.get(kind, kind)]
    found = tuple(
        Found(
            f"{url}#{entry.id}",
            helpers.title(scheme, entry.id),
            _meaning(helpers, entry.item),
            _names(helpers, entry.item),
        )
        for entry in entries
    )
    headings = tuple(Heading(helpers.title(scheme, entry.id), entry.id) for entry in entries)
    return Page(url, title, content, maker.words[f"{kind}_lead"], headings, found)


def _meaning(helpers: Helpers, item: Any) -> str:
    for field in ("means", "use", "buy", "looks_at", "note"):
        text = getattr(item, field, None)
        if text is not None:
            return helpers.words(text)
    return ""


def _names(helpers: Helpers, item: Any) -> tuple[str, ...]:
    return tuple(helpers.say(name) for name in getattr(item, "other_names", ()))


def first_sentence(text: str) -> str:
    """The first sentence, to stand in a list.

    >>> first_sentence("Set it level. Then seal it.")
    'Set it level.'
    """
    end = text.find(". ")
    return text if end < 0 else text[: end + 1]


def navigation(context: Context, pages: list[Page]) -> list[Any]:
    """The navigation: home, the trades, the fit-out, the calculators, and the reference pages.

    It names pages by their source (``plumbing/index.md``) and stays this small whatever the number of procedures.
    """
    titles = {page.url: page.title for page in pages}

    def line(url: str) -> dict[str, str]:
        return {titles[url]: url.removesuffix(".html") + ".md"}

    trades = sorted(context.book.trades, key=lambda id: (context.book.trades[id].item.order, id))
    say = words(context.book.language)
    return [
        {say["home"]: "index.md"},
        *(line(f"{id}/index.html") for id in trades),
        {say["fit_out"]: [*(line(f"{page}.html") for page in FIT_OUT), line("labels.html"), line("records.html")]},
        *([line("jobs/index.html")] if context.book.jobs else []),
        line("calculators/index.html"),
        {say["reference"]: [line(f"{page}.html") for page in REFERENCE.values()]},
    ]
