"""Labels to print and stick on: each has a code that opens a procedure, a job or one of its spaces on a phone."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from build_tools.pages.helpers import Helpers
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.qr import qr_svg
from build_tools.pages.renderer import Renderer

URL = "labels.html"
NOWHERE = "https://crew.example/book/"
"""Where the sample leads: RFC 2606 keeps ``.example`` free of real sites, so nobody is led anywhere."""


@dataclass(frozen=True, slots=True)
class Label:
    """One label: what it opens, where it is stuck, and its code."""

    title: str
    over: str
    place: str
    address: str
    code: Markup


@dataclass(frozen=True, slots=True)
class Group:
    """Labels that stand under one heading."""

    id: str
    title: str
    labels: list[Label]


def labels_page(renderer: Renderer) -> Page:
    """The labels of the procedures that say where one is stuck, and of every job; a sample where no address is set."""
    helpers, say = renderer.helpers(URL), renderer.words
    groups = [_procedures(renderer, helpers), *_jobs(renderer, helpers)]
    groups = [group for group in groups if group.labels]
    if not renderer.site_url and groups:
        groups = [Group("sample", say["labels_sample"], groups[0].labels[:1])]
    content = renderer.render("labels.html", helpers, groups=groups, published=bool(renderer.site_url), nowhere=NOWHERE)
    headings = tuple(Heading(group.title, group.id) for group in groups)
    found = (SearchEntry(URL, say["labels_title"], say["labels_lead"]),)
    return Page(URL, say["labels_title"], content, say["labels_lead"], headings, found)


def _procedures(renderer: Renderer, helpers: Helpers) -> Group:
    """In the order of the trades."""
    entries = [entry for trade in renderer.trades() for entry in renderer.procedures_of(trade) if entry.item.label]
    labels = [
        _label(
            renderer,
            renderer.context.index.targets["procedure", entry.id].url,
            helpers.title("procedure", entry.id),
            helpers.title("trade", entry.trade),
            helpers.say(entry.item.label or ""),
        )
        for entry in entries
    ]
    return Group("procedures", renderer.words["procedures"], labels)


def _jobs(renderer: Renderer, helpers: Helpers) -> list[Group]:
    """For each job a label of the job box, and one of each of its spaces."""
    say, groups = renderer.words, []
    for id, whole in renderer.jobs.items():
        job, url = whole.plan.job, f"jobs/{id}/index.html"
        title = helpers.say(job.title)
        labels = [_label(renderer, url, title, say["labels_job"], say["labels_job_box"])]
        for name, space in job.spaces.items():
            labels.append(
                _label(renderer, f"{url}#space-{name}", helpers.say(space.title), title, say["labels_space_place"])
            )
        groups.append(Group(f"job-{id}", title, labels))
    return groups


def _label(renderer: Renderer, url: str, title: str, over: str, place: str) -> Label:
    address = (renderer.site_url or NOWHERE) + url
    return Label(title, over, place, address, qr_svg(address, renderer.words["labels_code"].format(title=title)))
