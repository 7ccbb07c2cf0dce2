"""Labels to print and stick on: each has a code that opens a procedure, a job or one of its spaces on a phone."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from markupsafe import Markup

from build_tools.pages.helpers import Helpers
from build_tools.pages.page import Found, Heading, Page
from build_tools.pages.qr import qr_svg

if TYPE_CHECKING:
    from build_tools.pages.site import Maker

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


def labels_page(maker: Maker) -> Page:
    """The labels of the procedures that say where one is stuck, and of every job; a sample where no address is set."""
    helpers, say = maker.helpers(URL), maker.words
    groups = [_procedures(maker, helpers), *_jobs(maker, helpers)]
    groups = [group for group in groups if group.labels]
    if not maker.site_url and groups:
        groups = [Group("sample", say["labels_sample"], groups[0].labels[:1])]
    content = maker.fill("labels.html", helpers, groups=groups, published=bool(maker.site_url), nowhere=NOWHERE)
    headings = tuple(Heading(group.title, group.id) for group in groups)
    found = (Found(URL, say["labels_title"], say["labels_lead"]),)
    return Page(URL, say["labels_title"], content, say["labels_lead"], headings, found)


def _procedures(maker: Maker, helpers: Helpers) -> Group:
    """In the order of the trades."""
    entries = [entry for trade in maker.trades() for entry in maker.procedures_of(trade) if entry.item.label]
    labels = [
        _label(
            maker,
            maker.context.index.targets["procedure", entry.id].url,
            helpers.title("procedure", entry.id),
            helpers.title("trade", entry.trade),
            helpers.say(entry.item.label or ""),
        )
        for entry in entries
    ]
    return Group("procedures", maker.words["procedures"], labels)


def _jobs(maker: Maker, helpers: Helpers) -> list[Group]:
    """For each job a label of the job box, and one of each of its spaces."""
    say, groups = maker.words, []
    for id, whole in maker.jobs.items():
        job, url = whole.plan.job, f"jobs/{id}/index.html"
        title = helpers.say(job.title)
        labels = [_label(maker, url, title, say["labels_job"], say["labels_job_box"])]
        for name, space in job.spaces.items():
            labels.append(
                _label(maker, f"{url}#space-{name}", helpers.say(space.title), title, say["labels_space_place"])
            )
        groups.append(Group(f"job-{id}", title, labels))
    return groups


def _label(maker: Maker, url: str, title: str, over: str, place: str) -> Label:
    address = (maker.site_url or NOWHERE) + url
    return Label(title, over, place, address, qr_svg(address, maker.words["labels_code"].format(title=title)))
