"""The page of a procedure, with what search finds on it."""

from __future__ import annotations

from markupsafe import Markup

from build_tools.book.book import ProcedureEntry
from build_tools.pages.helpers import Helpers
from build_tools.pages.linked_data import how_to
from build_tools.pages.page import Heading, Page, SearchEntry, foot_style
from build_tools.pages.renderer import Renderer


def procedure_page_remembered(renderer: Renderer, entry: ProcedureEntry) -> Page:
    """The page as it was made before, where nothing of it has changed."""
    return renderer.context.memo.of("page", entry.item, renderer.around(entry), lambda: procedure_page(renderer, entry))


def procedure_page(renderer: Renderer, entry: ProcedureEntry) -> Page:
    """The page of a procedure."""
    url = f"{entry.trade}/{entry.id}.html"
    helpers = renderer.helpers(url, entry.folder)
    item = entry.item
    approved = renderer.book.people.get(item.revision.approved_by)
    revision, title = item.revision, helpers.say(item.title)
    by = approved.item.name if approved else revision.approved_by
    foot = renderer.words["foot"].format(title=title, n=revision.number, date=revision.date.isoformat(), by=by)
    forms = {step.calculator.calculator for step in item.steps if step.calculator}
    content = renderer.render(
        "procedure.html",
        helpers,
        procedure={
            "id": entry.id,
            "trade": entry.trade,
            "item": item,
            "after": renderer.linked(helpers, renderer.after[entry.id]),
            "approved_by": by,
        },
        live=renderer.live(helpers, [renderer.context.calculators[name] for name in sorted(forms)], has_steps=True),
        top=helpers.top,
    )
    data = Markup('<script type="application/ld+json">{}</script>').format(Markup(how_to(entry, helpers)))
    summary = helpers.words(item.summary)
    return Page(
        url,
        title,
        content + str(data),
        summary,
        _headings(renderer, entry, helpers),
        tuple(_found(entry, url, helpers)),
        style=foot_style(foot),
    )


def _headings(renderer: Renderer, entry: ProcedureEntry, helpers: Helpers) -> tuple[Heading, ...]:
    item, say = entry.item, renderer.words
    steps = tuple(
        Heading(f"{number}. {helpers.words(step.do).rstrip('.')}", step.id) for number, step in enumerate(item.steps, 1)
    )
    parts = [
        ("before", bool(item.before or item.safety or item.closes), ()),
        ("tools", bool(item.tools), ()),
        ("materials", bool(item.materials), ()),
        ("steps", True, steps),
        ("acceptance", True, ()),
        ("after", bool(renderer.after[entry.id]), ()),
        ("questions", bool(item.questions), ()),
        ("sources", bool(item.sources), ()),
    ]
    return tuple(Heading(say[name], name, below) for name, there, below in parts if there)


def _found(entry: ProcedureEntry, url: str, helpers: Helpers) -> list[SearchEntry]:
    """The procedure itself, ahead of everything else in a search, and each of its steps."""
    item = entry.item
    title = helpers.say(item.title)
    names = tuple(helpers.say(name) for name in item.other_names)
    found = [SearchEntry(url, title, helpers.words(item.summary), names, boost=4)]
    for step in item.steps:
        parts = [helpers.words(step.detail)] if step.detail else []
        parts += [helpers.words(text) for key in step.key_points for text in (key.point, key.why)]
        parts += [helpers.words(m.hazard) for m in step.messages] + [helpers.words(m.what) for m in step.measurements]
        found.append(SearchEntry(f"{url}#{step.id}", helpers.words(step.do), " ".join(parts)))
    return found
