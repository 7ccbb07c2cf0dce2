"""A safety message stands before the step that it guards."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic


def before_what_they_guard(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """A message at a step guards that step or a later one."""
    number = {step.id: index for index, step in enumerate(entry.item.steps)}
    for index, step in enumerate(entry.item.steps):
        for place, message in enumerate(step.messages):
            guarded = message.guards
            if guarded is not None and number.get(guarded, index) < index:
                yield entry.error(
                    ("steps", index, "messages", place),
                    f"this {message.word} stands at step '{step.id}', after step '{guarded}' that it guards",
                    f"move it to step '{guarded}' or before it",
                )
