"""Everything of the site that is no page: styles, fonts, signs, pictures and the open data."""

from __future__ import annotations

import json
from functools import lru_cache
from pathlib import Path

from build_tools.book.checks.calculators import standards
from build_tools.book.checks.context import Context
from build_tools.browser.form_script import FOLDERS, FORM, joined
from build_tools.browser.offline import page_script
from build_tools.browser.on_site import on_site_script, steps_form_script
from build_tools.browser.scripts import make_scripts, script_problems
from build_tools.pages.fonts import make_fonts
from build_tools.pages.icons import icons
from build_tools.pages.on_site import places_script
from build_tools.pages.open_data import book_json, book_schema
from build_tools.pages.pictures import SitePicture
from build_tools.pages.plots import plots_of
from build_tools.pages.theme_style import frame_style, tight
from build_tools.pages.words import words
from build_tools.records.model import record_schema

ASSETS = Path(__file__).parent / "assets"
STYLES = (
    *("base", "frame"),  # every page
    *("procedure", "figures", "lists", "print", "drawings", "forms"),  # the pages of the book
    *("fit-out", "calls", "cost", "labels", "load-out", "on-site", "order-list", "plan", "day-sheets", "steps", "walk"),
)
"""The style sheets of ``assets/css`` in their order: of two rules of equal weight the later one holds.

First what every page has, then the pages of the book, then one sheet for each of the rest.
"""


def site_files(
    context: Context, pictures: dict[tuple[str, str], SitePicture], edition: str, cache: Path
) -> dict[str, str | bytes]:
    """Address from the top of the site to content. ``cache`` is the folder of the cache."""
    made: dict[str, str | bytes] = {f"assets/{path.name}": path.read_bytes() for path in sorted(ASSETS.glob("*.svg"))}
    made |= {f"assets/fonts/{name}": content for name, content in make_fonts(cache / "fonts").items()}
    made |= {shown.url: shown.content for shown in pictures.values()}
    made |= make_scripts(context, cache)
    say = words(context.book.language)
    made["assets/script/form.js"] = joined(*FORM)
    made["assets/script/search.js"] = joined("search")
    made["assets/script/page.js"] = page_script(say)
    made |= {f"assets/script/{name}.js": on_site_script(name, say) for name in FOLDERS}
    made["assets/script/steps-form.js"] = steps_form_script(say)
    made["assets/script/places.js"] = places_script(context)
    made["record.schema.json"] = record_schema()
    made |= {f"assets/{name}": content for name, content in icons().items()}
    made["book.json"] = book_json(context, edition)
    made["book.schema.json"] = _schema()
    return made


def prebuild_assets(context: Context, cache: Path) -> None:
    """Put what takes long to make into the cache: the fonts, the compiled calculators, the plots."""
    make_fonts(cache / "fonts")
    script_problems(context, cache)
    if not any(standards(context)):
        for calculator in context.calculators.values():
            plots_of(context, calculator, cache / "plots")


@lru_cache
def _schema() -> str:
    return json.dumps(book_schema(), indent=1)


@lru_cache
def whole_style(theme: str) -> str:
    """The one style sheet of the pages: what they use of the theme's, then ours."""
    ours = style_sheet()
    return frame_style(theme, ours) + "\n" + tight(ours)


def style_sheet() -> str:
    """The style sheets, one after another in the order of :data:`STYLES`."""
    return "".join((ASSETS / "css" / f"{name}.css").read_text(encoding="utf-8") for name in STYLES)
