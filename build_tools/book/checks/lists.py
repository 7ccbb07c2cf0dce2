"""Steps have ids of their own; tools and materials of the steps are those of the lists, and the other way round."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.references import references_of


def step_ids(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """No two steps share an id: people's ticks and links hang on it."""
    first: dict[str, int] = {}
    for index, step in enumerate(entry.item.steps):
        if step.id in first:
            line, _ = entry.document.place(("steps", first[step.id], "id"))
            yield entry.error(("steps", index, "id"), f"the step id '{step.id}' is taken already in line {line}")
        elif step.id in PAGE_SECTIONS:
            yield entry.error(("steps", index, "id"), f"the step id '{step.id}' is the name of a section of the page")
        first.setdefault(step.id, index)


PAGE_SECTIONS = {"before", "tools", "materials", "steps", "acceptance", "questions", "sources", "revision", "after"}


def tools_and_materials(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """A step uses what the procedure lists, and what is listed is used by a step, a message or prose of one."""
    for scheme, field in (("tool", "tools"), ("material", "materials")):
        listed: dict[str, int] = {}
        for index, line in enumerate(getattr(entry.item, field)):
            id = getattr(line, scheme)
            if id in listed:
                yield entry.error((field, index, scheme), f"{scheme} '{id}' is listed twice")
            listed.setdefault(id, index)
        used: set[str] = set()
        for ref in references_of(entry, context.book, context.memo):
            if ref.scheme != scheme or ref.location[0] not in ("steps", "safety", "acceptance"):
                continue
            used.add(ref.target)
            by_step = ref.prose is None
            if by_step and ref.target not in listed and ref.target in context.book.kind(scheme):
                step = entry.item.steps[int(ref.location[1])].id
                yield entry.error(
                    ref.location,
                    f"step '{step}' uses {scheme} '{ref.target}', which the procedure does not list",
                    did_you_mean(ref.target, listed) or f"add it to '{field}'",
                )
        for id, index in listed.items():
            if id not in used:
                yield entry.error(
                    (field, index, scheme), f"{scheme} '{id}' is listed, but no step uses it", "name it at its step"
                )
