"""Structured data of a procedure page: schema.org HowTo as JSON-LD."""

from __future__ import annotations

from typing import Any

from build_tools.book.book import ProcedureEntry
from build_tools.book.model.step import Step
from build_tools.browser.in_script import data_in_script
from build_tools.pages.helpers import Helpers
from calculators.reading import Unreadable, read


def how_to(entry: ProcedureEntry, helpers: Helpers) -> str:
    """The JSON-LD of a procedure, safe to stand in a script element.

    Times are ISO 8601 durations: ``performTime`` is the time of the work with its crew, and ``totalTime`` adds the
    longest wait that it closes something off for.
    """
    item = entry.item
    perform = _hours(helpers.figure(item.labour.hours)) / item.labour.people
    closed = max((_hours(helpers.figure(closes.time)) for closes in item.closes), default=0.0)
    data: dict[str, Any] = {
        "@context": "https://schema.org",
        "@type": "HowTo",
        "name": helpers.say(item.title),
        "alternateName": [helpers.say(name) for name in item.other_names],
        "description": helpers.words(item.summary),
        "inLanguage": helpers.context.book.language,
        "version": str(item.revision.number),
        "dateModified": item.revision.date.isoformat(),
        "performTime": _duration(perform),
        "totalTime": _duration(perform + closed),
        "tool": [{"@type": "HowToTool", "name": helpers.title("tool", line.tool)} for line in item.tools],
        "supply": [
            {
                "@type": "HowToSupply",
                "name": helpers.title("material", line.material),
                "requiredQuantity": helpers.figure(line.quantity),
            }
            for line in item.materials
        ],
        "step": [
            {
                "@type": "HowToStep",
                "position": number,
                "url": f"#{step.id}",
                "name": helpers.words(step.do),
                "text": _step_text(step, helpers),
            }
            for number, step in enumerate(item.steps, 1)
        ],
    }
    return data_in_script(data)


def _step_text(step: Step, helpers: Helpers) -> str:
    texts = [step.detail] if step.detail else []
    texts += [key.point for key in step.key_points]
    return " ".join(helpers.words(text) for text in texts) or helpers.words(step.do)


def _hours(text: str) -> float:
    try:
        return read(text, "time", "h")
    except Unreadable:
        return 0.0


def _duration(hours: float) -> str:
    """Hours as an ISO 8601 duration.

    >>> _duration(1.5), _duration(49)
    ('PT1H30M', 'P2DT1H')
    """
    minutes = round(hours * 60)
    days, minutes = divmod(minutes, 24 * 60)
    whole, minutes = divmod(minutes, 60)
    time = (f"{whole}H" if whole else "") + (f"{minutes}M" if minutes else "")
    return f"P{f'{days}D' if days else ''}{f'T{time}' if time else ''}" if days or time else "PT0M"
