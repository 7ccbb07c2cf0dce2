"""The owner's page: many records read together in the browser."""

from __future__ import annotations

from typing import TYPE_CHECKING

from markupsafe import Markup

from build_tools.browser.in_script import data_in_script
from build_tools.pages.page import Found, Heading, Page

if TYPE_CHECKING:
    from build_tools.pages.site import Maker

URL = "records.html"


def records_page(maker: Maker) -> Page:
    """The page, which holds no record: they are chosen on it."""
    helpers, say = maker.helpers(URL), maker.words
    addresses = {id: helpers.url("procedure", id) for id in maker.book.procedures}
    content = maker.fill("records.html", helpers, top=helpers.top, addresses=Markup(data_in_script(addresses)))
    title, lead = say["records_title"], say["records_lead"]
    return Page(
        URL,
        title,
        content,
        lead,
        (Heading(say["records_here"], "here"), Heading(say["records_files"], "files")),
        (Found(URL, title, lead),),
    )
