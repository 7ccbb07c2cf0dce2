"""Runs MkDocs with the book's settings."""

from __future__ import annotations

import argparse
import json
import os
import tempfile
from collections.abc import Sequence
from datetime import date
from importlib import import_module
from pathlib import Path

from build_tools.commands.settings import settings
from build_tools.environment import ROOT

BOOK = ROOT / "procedures"
"""The book that comes with the project."""
CACHE = ROOT / ".cache"
"""Where builds of the project's own book keep what takes long to make."""
QUIET = {"NO_MKDOCS_2_WARNING": "1", "DISABLE_MKDOCS_2_WARNING": "true"}
"""The theme's notice on its own future stays out of the output; DEVELOPERS.md has what it says."""


def add_jobs(parser: argparse.ArgumentParser) -> None:
    """The options that say for whom a site is made and from which day its jobs are planned."""
    parser.add_argument(
        "--for",
        dest="made_for",
        choices=("owner", "crew"),
        default="owner",
        help="for whom: the crew's site holds no price, rate, budget or private note (owner, if left out)",
    )
    add_today(parser)


def add_today(parser: argparse.ArgumentParser) -> None:
    """The option that says from which day jobs are planned."""
    parser.add_argument(
        "--today",
        type=_day,
        metavar="YYYY-MM-DD",
        help="the day from which what is left of a job is planned (this day, if left out)",
    )


def extra_of(arguments: argparse.Namespace) -> dict[str, str]:
    """What these options put into the settings; nothing where they say what holds anyway."""
    extra = {} if arguments.made_for == "owner" else {"made_for": arguments.made_for}
    return extra if arguments.today is None else {**extra, "today": arguments.today.isoformat()}


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"'{text}' is not a day: write it like 2026-12-07") from None


def mkdocs(arguments: Sequence[str], book: Path, **extra: str) -> int:
    """Run MkDocs with these arguments; its exit code. :func:`settings_for` says more."""
    own = settings()
    if book == own.book and not extra:
        return _run([*arguments, "--config-file", str(own.file)])
    with tempfile.TemporaryDirectory() as folder:
        cache = {"cache": str(own.file.parent / ".cache")} if book == own.book else {}
        return _run([*arguments, "--config-file", str(settings_for(book, Path(folder), **extra, **cache))])


def settings_for(book: Path, folder: Path, **extra: str) -> Path:
    """Write an ``mkdocs.yml`` into the folder that is the project's own, but for a book that lies elsewhere.

    ``extra`` is put into the settings of that name: for whom the site is made (``made_for``), the day that jobs are
    planned from (``today``), where what takes long to make is kept (``cache``; beside the settings, if left out).
    """
    own = settings()
    lines = {
        "INHERIT": str(own.file),
        "docs_dir": str(book),
        "site_dir": str(folder / "site"),
        "watch": [str(ROOT / name) for name in ("build_tools", "calculators")] if book == own.book else [],
        "extra": extra,
    }
    file = folder / "mkdocs.yml"
    # JSON is YAML, and quotes any path rightly.
    file.write_text("".join(f"{name}: {json.dumps(value)}\n" for name, value in lines.items()), encoding="utf-8")
    return file


def _run(arguments: Sequence[str]) -> int:
    """Be MkDocs for a while: with no second process, whatever ends this one ends the preview, and frees its port."""
    os.environ.update(QUIET)
    click, engine = import_module("click"), import_module("mkdocs.__main__")
    try:
        engine.cli.main([*arguments], "mkdocs", standalone_mode=False)
    except click.Abort:
        raise KeyboardInterrupt from None
    except click.ClickException as failed:
        failed.show()
        return int(failed.exit_code)
    return 0
