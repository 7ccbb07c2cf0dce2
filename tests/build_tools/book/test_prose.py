"""Prose: references, HTML and bare words; and the direct reading of plain prose against markdown-it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from build_tools.book import prose
from build_tools.book.prose import ProseLink, html, plain, prose_links


def resolve(link: ProseLink) -> tuple[str, str] | None:
    """Every target is known but those called 'nowhere'."""
    if link.target == "nowhere":
        return None
    return f"../{link.target}.html", f"The {link.target} & more"


PIECES = st.sampled_from(
    [
        "words",
        "6 in",
        "1/4",
        "'",
        '"',
        "- ",
        "1. ",
        "[](value:gap)",
        "[a link](tool:saw)",
        "[b](procedure:x#y)",
        "*",
        "**bold**",
        "<b>",
        "&",
        "  ",
        "\n",
        "\n\n",
        "#",
        "`code`",
        "[",
        "]",
        "](",
        "(term:x)",
        "!",
        "|",
        "é",
        "“",
        "\\",
        "https://example.com",
        "[web](https://example.com)",
        "[bad](nothing:x)",
        " ",
        " ",
        " ",
    ]
)


@settings(max_examples=1500, deadline=None)
@given(text=st.lists(PIECES, max_size=8).map("".join))
def test_plain_prose_reads_as_markdown_does(text: str) -> None:
    """What the direct reading takes, markdown-it renders to the same HTML, words and references."""
    if prose._simple(text) is None:
        return
    direct = [html(text, resolve, block=block) for block in (True, False)], plain(text, resolve), prose_links(text)
    kept = prose._simple
    try:
        prose._simple = lambda text: None  # type: ignore[assignment]
        full = [html(text, resolve, block=block) for block in (True, False)], plain(text, resolve), prose_links(text)
    finally:
        prose._simple = kept
    assert direct == full


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Level it.", "<p>Level it.</p>\n"),
        ("A [](value:gap) gap", '<p>A <a href="../gap.html" class="ref ref-value">The gap &amp; more</a> gap</p>\n'),
        ("Use <b>it</b>", "<p>Use &lt;b&gt;it&lt;/b&gt;</p>\n"),
        ("- a\n- b", "<ul>\n<li>a</li>\n<li>b</li>\n</ul>\n"),
        ("*[](tool:saw)*", '<p><em><a href="../saw.html" class="ref ref-tool">The saw &amp; more</a></em></p>\n'),
        ("[web](https://example.com)", '<p><a href="https://example.com">web</a></p>\n'),
    ],
)
def test_html(text: str, expected: str) -> None:
    """Markdown becomes HTML, raw HTML is shown as text, and an empty link takes its target's title."""
    assert html(text, resolve, block=True) == expected


def test_a_single_paragraph_can_stand_in_a_heading() -> None:
    """Without ``block`` the paragraph's own element is left out."""
    assert html("Level *it*", resolve, block=False) == "Level <em>it</em>"


def test_plain_words_carry_titles_and_no_marks() -> None:
    """Search and structured data get words alone."""
    assert plain("Set *a* [](value:gap)\nof [it](term:it).", resolve) == "Set a The gap & more of it."
