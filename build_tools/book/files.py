"""The files of the book on disk: when each changed, how messages call it, reading many of them at once; writing."""

from __future__ import annotations

import os
from collections.abc import Iterable
from functools import partial
from pathlib import Path

from build_tools.book.cores import shared_out
from build_tools.book.yaml_reader import Document, read_document

Stamp = tuple[int, int]
"""A file's time and size."""


def stamp_of(path: Path) -> Stamp:
    """The stamp of a file; noughts where there is none."""
    try:
        stat = path.stat()
    except OSError:
        return (0, 0)
    return (stat.st_mtime_ns, stat.st_size)


def shown_path(path: Path, folder: Path) -> str:
    """The path as messages give it: from the name of the folder of the book on."""
    return (Path(folder.name) / path.relative_to(folder)).as_posix()


def is_yaml(path: Path) -> bool:
    """Whether a file is one of the book."""
    return path.suffix in (".yaml", ".yml")


def read_ahead(paths: Iterable[Path], folder: Path) -> dict[Path, tuple[Stamp, Document]]:
    """The files of a large book, read on every core; none of a small one."""
    new = [path for path in paths if is_yaml(path)]
    return {path: (stamp, document) for path, stamp, document in shared_out(partial(_read, folder), new)}


def write_whole(path: Path, content: str | bytes) -> None:
    """Write a file so that nobody ever finds a part of it, also after the disk was full or the process was killed."""
    path.parent.mkdir(parents=True, exist_ok=True)
    begun = path.with_name(f"{path.name}.{os.getpid()}")
    try:
        begun.write_bytes(content.encode() if isinstance(content, str) else content)
        begun.replace(path)
    except BaseException:
        begun.unlink(missing_ok=True)
        raise


def _read(folder: Path, path: Path) -> tuple[Path, Stamp, Document]:
    stamp = stamp_of(path)
    return path, stamp, read_document(path, shown_path(path, folder))
