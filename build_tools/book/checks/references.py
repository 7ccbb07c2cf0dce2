"""Every reference leads somewhere: procedure, step, value, term, tool, material, calculator, inspection, source."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from build_tools.book.book import FIELD, Entry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.prose import SCHEMES
from build_tools.book.references import Reference, references_of

WEB = ("https://", "http://", "mailto:", "tel:")


def of_entry(context: Context, entry: Entry[Any]) -> Iterator[Diagnostic]:
    """The references of one entry."""
    step_ids = {step.id for step in getattr(entry.item, "steps", [])}
    for ref in references_of(entry, context.book, context.memo):
        if ref.prose is not None and not ref.scheme:
            yield from _web_address(entry, ref)
        elif ref.scheme == "image":
            yield entry.error(ref.location, "a picture stands in 'photo' or 'drawing' of a step, not in prose")
        elif (ref.scheme, ref.target) not in context.index.targets:
            if {(ref.scheme, ref.target), (ref.scheme, "*")} & context.book.unread:
                continue  # it is there, and its own mistake is named
            what = "calculator" if ref.scheme == "calculator" else ref.scheme
            yield entry.error(
                ref.location,
                f"{_who(entry, ref)} refers to {what} '{ref.target}', which is not in the book",
                did_you_mean(ref.target, context.index.names(ref.scheme)) or _where(context, entry, ref),
            )
        elif ref.step:
            known = context.index.steps.get(ref.target, ())
            if ref.step not in known:
                yield entry.error(
                    ref.location,
                    f"{_who(entry, ref)} refers to step '{ref.step}' of '{ref.target}', which has no such step",
                    did_you_mean(ref.step, known),
                )
    for location, guarded in _guards(entry):
        if guarded not in step_ids:
            yield entry.error(
                location, f"guards step '{guarded}', which this procedure has not", did_you_mean(guarded, step_ids)
            )


def of_reference_entries(context: Context) -> Iterator[Diagnostic]:
    """The references of everything that is not a procedure."""
    for scheme, entry in context.book.entries():
        if scheme != "procedure":
            yield from of_entry(context, entry)


def _where(context: Context, entry: Entry[Any], ref: Reference) -> str:
    """How what is referred to gets into the book."""
    folder = entry.document.file.partition("/")[0]
    match ref.scheme:
        case "procedure":
            return f"write it, beginning with 'python3 -m build_tools new TRADE/{ref.target}'"
        case "job":
            return f"write it, beginning with 'python3 -m build_tools new jobs/{ref.target}'"
        case "calculator":
            return "'python3 -m build_tools compute' lists those that there are"
        case "person":
            return f"add it to {folder}/crew/people.yaml"
    files = dict.fromkeys(known.document.file for known in context.book.kind(ref.scheme).values())
    own = [file for file in files if Path(file).stem == getattr(entry, "trade", "")] or list(files)
    return f"add it to {own[0] if len(own) == 1 else f'a file of {folder}/reference/{FIELD[ref.scheme]}'}"


def _web_address(entry: Entry[Any], ref: Reference) -> Iterator[Diagnostic]:
    assert ref.prose is not None
    address = ref.prose.address
    if address.startswith(WEB):
        return
    scheme = address.partition(":")[0]
    hint = did_you_mean(scheme, SCHEMES) or "write it as one of " + ", ".join(f"{scheme}:..." for scheme in SCHEMES)
    yield entry.error(ref.location, f"the link '{address}' is no reference of the book and no web address", hint)


def _guards(entry: Entry[Any]) -> Iterator[tuple[tuple[str | int, ...], str]]:
    for index, message in enumerate(getattr(entry.item, "safety", [])):
        if message.guards:
            yield ("safety", index, "guards"), message.guards
    for number, step in enumerate(getattr(entry.item, "steps", [])):
        for index, message in enumerate(step.messages):
            if message.guards:
                yield ("steps", number, "messages", index, "guards"), message.guards


def _who(entry: Entry[Any], ref: Reference) -> str:
    if len(ref.location) > 1 and ref.location[0] == "steps":
        return f"step '{entry.item.steps[ref.location[1]].id}'"
    return f"'{ref.location[0]}'" if entry.at == () else f"'{entry.id}'"
