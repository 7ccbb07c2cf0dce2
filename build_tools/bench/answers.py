"""How soon a page answers a key in Chromium, its processor slowed to a quarter as a cheap phone's is.

Whatever else the machine does slows a page as well. So each answer is timed beside a fixed piece of work of the same
moment, and stands as its share of that work: the middle share, times what the work takes in the quietest moment.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from typing import TYPE_CHECKING, Any

from build_tools.bench.measure import Failed
from build_tools.bench.serving import served

if TYPE_CHECKING:
    from selenium.webdriver import Chrome

THROTTLE = 4
KEY_MS, SEARCH_MS = 16.0, 100.0
FORMS = ("plumbing/toilet-set.html", "concrete/approach-forming.html", "flooring/flooring-receiving.html")
TYPED = ("water closet", "tolet", "closet flange height", "5/8 drywall")
"""Searches: another name, a slip, several words, and what is hardly there."""
ROUNDS = 12
PATIENCE = 60
TIMING = """
const done = arguments[arguments.length - 1], rounds = arguments[0], typed = arguments[1];
const pause = () => new Promise(go => setTimeout(go, 200));
const took = (does) => { const from = performance.now(); does(); return performance.now() - from; };
const work = () => {
  const list = [];
  for (let at = 0; at < 20000; at += 1) list.push((at * 7919) % 10007 + "");
  list.sort();
};
const type = (field, text) => {
  field.value = text;
  field.dispatchEvent(new Event("input", { bubbles: true }));
  document.body.offsetHeight;
};
"""
KEYS = (
    TIMING
    + """
(async () => {
  const found = {};
  for (const root of document.querySelectorAll(".live[data-calculator]")) {
    const name = root.dataset.calculator;
    if (found[name]) continue;
    const declared = crew.calculators[name].declaration.inputs;
    const plain = declared.filter((one) => one.usual && !one.ways.length);
    const input = plain.find((one) => root.querySelector(`[data-input="${one.name}"] .puts-in input`));
    if (!input) continue;
    const field = root.querySelector(`[data-input="${input.name}"] .puts-in input`);
    found[name] = [];
    for (let round = 0; round < rounds; round += 1) {
      const [low, high] = input.usual;
      const text = crew.exactly(low + (high - low) * (round % 5) / 5, input.quantity, input.unit);
      found[name].push([took(() => type(field, text)), took(work)]);
      await pause();
    }
  }
  done(found);
})();
"""
)
SEARCH = (
    TIMING
    + """
(async () => {
  const field = document.querySelector(".crew-search input");
  const found = {};
  for (const words of typed) {
    found[words] = [];
    for (let end = 1; end <= words.length; end += 1) {
      found[words].push([took(() => type(field, words.slice(0, end))), took(work)]);
      await pause();
    }
  }
  done(found);
})();
"""
)


@dataclass(frozen=True, slots=True)
class Answer:
    """How long what was typed waited for its answer, slowed; ``share`` is of the fixed piece of work."""

    what: str
    share: float
    milliseconds: float
    budget: float

    @property
    def passes(self) -> bool:
        """Whether it keeps its budget."""
        return self.milliseconds <= self.budget

    def __str__(self) -> str:
        verdict = "pass" if self.passes else "OVER"
        return (
            f"{self.what}: {self.milliseconds:.1f} ms at {THROTTLE}x (budget {self.budget:.0f} ms, {verdict}); "
            f"{self.share:.2f} of a fixed piece of work"
        )


def measure_keys(site: Path, pages: tuple[str, ...] = FORMS) -> list[Answer]:
    """The answers of the calculators of these pages, one a calculator."""
    found: dict[str, list[list[float]]] = {}
    with served(site) as address, _browser() as browser:
        for page in pages:
            browser.get(address + page)
            _until(
                browser,
                "const roots = [...document.querySelectorAll('[data-calculator][data-start]')];"
                "const next = roots.find((one) => !one.classList.contains('live'));"
                "next?.scrollIntoView(); return roots.length && !next",
            )
            found |= _slowed(browser, KEYS, ROUNDS, [])
    quiet = _quietest(found)
    return [
        _answer(f"a key in '{name}'", [key / work for key, work in pairs], quiet, KEY_MS)
        for name, pairs in found.items()
    ]


def measure_search(site: Path, typed: tuple[str, ...] = TYPED) -> list[Answer]:
    """The answers of the search: for each text the slowest quarter of its keys."""
    with served(site) as address, _browser() as browser:
        browser.get(address + "index.html")
        _until(browser, "return document.readyState === 'complete'")
        browser.execute_script("document.querySelector('[data-find]').click()")
        _until(browser, "return document.querySelector('.crew-search[open]')")
        found = _slowed(browser, SEARCH, 0, list(typed))
    quiet = _quietest(found)
    return [
        _answer(
            f"a key of the search '{words}'", _slowest_quarter([key / work for key, work in pairs]), quiet, SEARCH_MS
        )
        for words, pairs in found.items()
    ]


def _slowest_quarter(shares: list[float]) -> list[float]:
    return sorted(shares)[-max(1, len(shares) // 4) :]


def _quietest(found: dict[str, list[list[float]]]) -> float:
    return min(work for pairs in found.values() for _, work in pairs)


def _answer(what: str, shares: list[float], quiet: float, budget: float) -> Answer:
    share = median(shares)
    return Answer(what, share, share * quiet, budget)


def _slowed(browser: Chrome, script: str, *given: object) -> dict[str, list[list[float]]]:
    browser.execute_cdp_cmd("Emulation.setCPUThrottlingRate", {"rate": THROTTLE})
    found: dict[str, list[list[float]]] = browser.execute_async_script(script, *given)
    browser.execute_cdp_cmd("Emulation.setCPUThrottlingRate", {"rate": 1})
    return found


def _until(browser: Chrome, condition: str) -> Any:
    from selenium.common.exceptions import TimeoutException
    from selenium.webdriver.support.wait import WebDriverWait

    try:
        return WebDriverWait(browser, PATIENCE, 0.1).until(lambda _: browser.execute_script(condition))
    except TimeoutException:
        raise Failed(f"the page {browser.current_url} did not get ready") from None


@contextmanager
def _browser() -> Iterator[Chrome]:
    from selenium.webdriver import Chrome, ChromeOptions
    from selenium.webdriver.chrome.service import Service

    options = ChromeOptions()
    for each in ("--headless=new", "--no-sandbox", "--disable-gpu", "--window-size=412,823"):
        options.add_argument(each)
    browser = Chrome(options=options, service=Service(shutil.which("chromedriver")))
    browser.set_script_timeout(600)
    try:
        yield browser
    finally:
        browser.quit()
