"""A live form as the tests use it: typed into by keys, or filled at once, and read back."""

from __future__ import annotations

from typing import Any

from selenium.webdriver.common.keys import Keys
from selenium.webdriver.remote.webelement import WebElement

from tests.browser.window import Window

PAGE = "plumbing/toilet-set.html"
RING = "#choose-ring"
"""The page and the step of the wax ring, where most is tried."""
WRITE = """
    const [root, given] = arguments;
    for (const rest of root.querySelectorAll('.rest')) rest.open = true;
    for (const [name, text] of Object.entries(given)) {
        const field = root.querySelector(`[data-input="${name}"]`);
        const radio = [...field.querySelectorAll('input[type=radio]')].find(one => one.value === text);
        if (radio) { radio.click(); continue; }
        const box = field.querySelector('.puts-in input, textarea');
        const way = [...field.querySelectorAll('.two-ways input[type=radio]')].find(one => text.endsWith(one.value));
        box.value = way ? text.slice(0, -way.value.length).trim() : text;
        box.dispatchEvent(new Event('input', {bubbles: true}));
        box.dispatchEvent(new Event('change', {bubbles: true}));
        way?.click();
    }
"""
"""Puts texts into the fields at once, as keys would; the controls of rows are left as they are."""
READ = """
    const root = arguments[0];
    const texts = (all, cell) => [...all].map(cell);
    const said = one => one.textContent;
    const line = one => [one.dataset.output, said(one.lastChild)];
    const lines = texts(root.querySelectorAll('.answer > div:not([hidden])'), line);
    return {
        answer: Object.fromEntries(lines),
        tables: texts(root.querySelectorAll('.comes .answer-rows'), table =>
            texts(table.querySelectorAll('tbody tr'), row => texts(row.children, said))),
        cautions: texts(root.querySelectorAll('.comes .watch'), one => said(one.lastChild)),
        working: texts(root.querySelectorAll('.comes details li'), said),
        stale: Boolean(root.querySelector('.comes.stale')),
        wrong: texts(root.querySelectorAll('.field .wrong'), said).filter(Boolean),
    };
"""


class LiveForm:
    """A form of the open page, ready to be typed into; ``place`` is a selector of what it stands in."""

    def __init__(self, window: Window, place: str) -> None:
        self.window = window
        self.place = place
        window.script("document.querySelector(arguments[0]).scrollIntoView()", place)
        self.root: WebElement = window.until(lambda: window.find(f"{place} .live"), f"a live form in {place}")

    def read(self) -> dict[str, Any]:
        """All that it says now."""
        found: dict[str, Any] = self.window.script(READ, self.root)
        return found

    def says(self, output: str) -> str:
        """The text of one output."""
        return str(self.read()["answer"][output])

    def field(self, name: str) -> WebElement:
        """The field of an input; a folded one is unfolded."""
        self.window.script("for (const rest of arguments[0].querySelectorAll('.rest')) rest.open = true", self.root)
        selector = f"{self.place} [data-input={name}]"
        found: WebElement = self.window.until(lambda: self.window.find(selector), selector)
        return found

    def box(self, name: str) -> WebElement:
        """The box that somebody types into."""
        return self.field(name).find_element("css selector", "input:not([type=radio]), textarea")

    def type(self, name: str, text: str) -> None:
        """Type a text over what stands in a box; a way at its end is picked."""
        ways = self.field(name).find_elements("css selector", ".two-ways label")
        way = next((one for one in ways if text.endswith(one.text)), None)
        self.box(name).send_keys(Keys.CONTROL + "a")
        self.box(name).send_keys((text.removesuffix(way.text).strip() if way else text) or Keys.DELETE)
        if way:
            way.click()

    def write(self, given: dict[str, str]) -> None:
        """Put texts into fields at once."""
        self.field(next(iter(given)))
        self.window.script(WRITE, self.root, given)

    def press(self, words: str, inside: WebElement | None = None) -> None:
        """Press the button with those words."""
        buttons = (inside or self.root).find_elements("css selector", "button")
        next(one for one in buttons if words in (one.text, one.get_attribute("aria-label"))).click()
