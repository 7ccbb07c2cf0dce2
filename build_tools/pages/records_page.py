"""The owner's page: many records read together in the browser."""

from __future__ import annotations

from markupsafe import Markup

from build_tools.browser.in_script import data_in_script
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.renderer import Renderer

URL = "records.html"


def records_page(renderer: Renderer) -> Page:
    """The page, which holds no record: they are chosen on it."""
    helpers, say = renderer.helpers(URL), renderer.words
    addresses = {id: helpers.url("procedure", id) for id in renderer.book.procedures}
    content = renderer.render("records.html", helpers, top=helpers.top, addresses=Markup(data_in_script(addresses)))
    title, lead = say["records_title"], say["records_lead"]
    return Page(
        URL,
        title,
        content,
        lead,
        (Heading(say["records_here"], "here"), Heading(say["records_files"], "files")),
        (SearchEntry(URL, title, lead),),
    )
