"""Drawings and plots in a real browser on a phone: letters large enough, none over another, none cut off."""

from __future__ import annotations

from typing import Any

from calculators.drawing_text import text_width
from calculators.registry import CALCULATORS
from tests.browser.window import PHONE, Window

SHOWN = [each.name for each in CALCULATORS.values() if each.drawing is not None or each.plots]
LEAST = 11.0
"""Pixels: letters smaller than that are hard to read on a phone at arm's length."""
GATHER = """
    const [names, done] = arguments;
    const form = document.querySelector('.worked-form');
    const pages = names.map(name => fetch(`${name}.html`).then(page => page.text()));
    Promise.all(pages).then(texts => {
        texts.forEach((text, at) => {
            const page = new DOMParser().parseFromString(text, 'text/html');
            for (const figure of page.querySelectorAll('figure.drawn')) {
                figure.dataset.of = names[at];
                form.append(figure);
            }
        });
        done(true);
    });
"""
"""Puts the drawings of all pages into the form of the open one, where they stand as wide as in their own."""
TEXTS = """
    return [...document.querySelectorAll('figure[data-of] svg')].map(svg => {
        const box = svg.getBoundingClientRect();
        const size = parseFloat(getComputedStyle(svg.querySelector('text')).fontSize);
        const texts = [...svg.querySelectorAll('text')].map(text => {
            const at = text.getBoundingClientRect();
            return [text.textContent, text.getComputedTextLength(), at.left, at.top, at.right, at.bottom];
        });
        return {name: svg.closest('figure').dataset.of, kind: svg.classList[0], texts,
                letters: size * box.width / svg.viewBox.baseVal.width,
                box: [box.left, box.top, box.right, box.bottom], phone: document.documentElement.clientWidth};
    });
"""


def test_drawings_can_be_read_on_a_phone(window: Window) -> None:
    window.width(PHONE)
    window.open("calculators/wax-ring.html")
    assert window.driver.execute_async_script(GATHER, SHOWN)
    figures: list[dict[str, Any]] = window.script(TEXTS)
    assert {figure["name"] for figure in figures} == set(SHOWN)
    for figure in figures:
        name = figure["name"]
        assert figure["letters"] >= LEAST, name
        assert figure["box"][0] >= 0 and figure["box"][2] <= figure["phone"], name
        for number, (text, long, *place) in enumerate(figure["texts"]):
            says = f"{name}: '{text}'"
            assert long <= text_width(text) + 0.5 or figure["kind"] == "plot", f"{says} runs wider than laid out"
            assert _inside(place, figure["box"]), f"{says} is cut off"
            others = [other for other, _, *there in figure["texts"][:number] if _meet(place, there)]
            assert others == [], f"{says} stands over {others}"


def _inside(place: list[float], box: list[float]) -> bool:
    return place[0] >= box[0] - 1 and place[2] <= box[2] + 1 and place[1] >= box[1] - 3 and place[3] <= box[3] + 3


def _meet(one: list[float], other: list[float]) -> bool:
    """Whether two texts share more than the air over and under their letters, a quarter of a line."""
    across = min(one[2], other[2]) - max(one[0], other[0])
    down = min(one[3], other[3]) - max(one[1], other[1])
    return across > 4 and down > 4
