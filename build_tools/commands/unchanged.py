"""Whether a site is already what a build would write: neither what it is made from has changed, nor the site itself."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Iterator, Sequence
from datetime import UTC, date, datetime
from pathlib import Path

from build_tools.book.files import stamp_of, write_whole
from build_tools.commands.settings import Settings
from build_tools.environment import MADE_OF, ROOT

CODE = ("build_tools", "calculators")
OURS = {"name", "font", "logo", "favicon", "language", "features", "palette"}
"""Settings of the theme that bring no files of their own."""
FOREIGN = ("hooks", "extra_css", "extra_javascript", "extra_templates", "markdown_extensions")
"""Settings by which files can come into a site that are neither the book's nor ours."""


class BuildNote:
    """The last build of a site, as a note in the cache: what it was made from, and every file it wrote."""

    def __init__(self, settings: Settings, site: Path, options: Sequence[str]) -> None:
        self._settings, self._site, self._options = settings, site, options
        place = hashlib.sha256(str(site).encode()).hexdigest()[:32]
        self._note = settings.file.parent / ".cache" / "sites" / f"{place}.json"
        self._made_from = self._digest() if _is_plain(settings) else ""

    def stands(self) -> bool:
        """Whether a build would write the same again."""
        try:
            note = json.loads(self._note.read_text(encoding="utf-8"))
        except (OSError, ValueError):
            return False
        return bool(self._made_from) and note == self._now()

    def keep(self) -> None:
        """Note what a build has written without a warning, which the next one would have to say again."""
        if self._made_from and self._made_from == self._digest():  # else something was edited meanwhile
            write_whole(self._note, json.dumps(self._now()))

    def _now(self) -> list[object]:
        return [self._made_from, [[str(path), *stamp_of(path)] for path in _files(self._site)]]

    def _digest(self) -> str:
        """Changes with any file, setting, option or day that a site is made from."""
        days = date.today(), datetime.now(UTC).date()
        total = hashlib.sha256(repr((self._settings, self._options, days)).encode())
        folders = [self._settings.book, *(ROOT / name for name in CODE)]
        for path in [self._settings.file, *(ROOT / name for name in MADE_OF), *(p for f in folders for p in _files(f))]:
            total.update(f"{path}\0".encode())
            if path.is_file():  # a pipe or a device is never opened, and a large file not held in memory
                with path.open("rb") as opened:
                    total.update(hashlib.file_digest(opened, "sha256").digest())
        return total.hexdigest()


def _is_plain(settings: Settings) -> bool:
    """Whether no setting lets anything into a site that is not looked at here."""
    given = settings.given
    theme = given.get("theme")
    plain_theme = not isinstance(theme, dict) or theme.keys() <= OURS
    alone = len(given.get("plugins") or []) == 1 and not any(given.get(name) for name in FOREIGN)
    return plain_theme and alone and not _is_open(given)


def _is_open(given: object) -> bool:
    """Whether something in the settings is not read before the engine does, such as ``!ENV``."""
    inside = given.values() if isinstance(given, dict) else given if isinstance(given, list) else ()
    return given is None or any(map(_is_open, inside))


def _files(folder: Path) -> Iterator[Path]:
    """Every file of a folder in order, but for hidden ones and what Python compiles."""
    for here, folders, names in os.walk(folder):
        folders[:] = sorted(name for name in folders if not name.startswith((".", "__pycache__")))
        yield from (Path(here, name) for name in sorted(names) if not name.startswith("."))
