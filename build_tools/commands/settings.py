"""The settings of the site, read without its engine: where the book lies, where the site goes, what it is called."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from build_tools.book.content import FileRefused, content_of
from build_tools.commands.usage_error import UsageError
from build_tools.environment import ROOT

OWN = ROOT / "mkdocs.yml"
PLUGIN = "crew-methods"
LONGEST_CHAIN = 10
LARGEST = 2_000_000
"""Bytes of a file of settings."""


@dataclass(frozen=True, slots=True)
class Settings:
    """``mkdocs.yml``: the file, and what the commands need of it. ``site_url`` is empty or ends in ``/``.

    ``given`` is all that it says, in the files that it inherits from too.
    """

    file: Path
    book: Path
    site: Path
    site_name: str
    site_url: str
    given: dict[str, Any]


def settings() -> Settings:
    """The settings of this folder where they are those of a book, or else the project's own."""
    file = Path.cwd() / OWN.name
    given = _read(file) if file.is_file() and file != OWN else {}
    if not _is_of_a_book(given):
        file, given = OWN, _read(OWN)
    url = _text(given, "site_url", "")
    return Settings(
        file,
        (file.parent / _text(given, "docs_dir", "docs")).resolve(),
        (file.parent / _text(given, "site_dir", "site")).resolve(),
        _text(given, "site_name", "Crew Methods"),
        f"{url.rstrip('/')}/" if url else "",
        given,
    )


def _is_of_a_book(given: dict[str, Any]) -> bool:
    plugins = given.get("plugins")
    return isinstance(plugins, list | dict) and PLUGIN in plugins


def _read(file: Path, chain: int = 0) -> dict[str, Any]:
    """The settings as they are written; what the engine's own tags say (``!ENV``) is left open, as None."""
    import yaml

    class Loader(yaml.SafeLoader):
        pass

    Loader.add_multi_constructor("!", lambda *_: None)
    Loader.add_multi_constructor("tag:yaml.org,2002:python/", lambda *_: None)
    try:
        given = yaml.load(content_of(file, LARGEST).decode("utf-8-sig"), Loader)
    except FileRefused as refused:
        raise UsageError(f"{file}: {refused.strerror}") from None
    except (yaml.YAMLError, UnicodeDecodeError) as mistake:
        raise UsageError(f"{file}: cannot be read: {mistake}") from None
    if not isinstance(given, dict):
        raise UsageError(f"{file}: holds no settings")
    above = given.get("INHERIT")
    if isinstance(above, str) and chain < LONGEST_CHAIN:
        return {**_read(file.parent / above, chain + 1), **given}
    return given


def _text(given: dict[str, Any], name: str, otherwise: str) -> str:
    value = given.get(name, otherwise)
    if value is None and name in ("docs_dir", "site_dir"):
        raise UsageError(f"'{name}' of mkdocs.yml cannot be read here: name the folder, with --book or --site")
    return str(value or otherwise)
