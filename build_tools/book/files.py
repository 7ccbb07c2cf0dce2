"""The files of the book on disk: when each changed, how messages call it, reading many of them at once; writing."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from functools import partial
from os.path import realpath
from pathlib import Path

from build_tools.book.diagnostics import Diagnostic
from build_tools.book.parallel import parallel_map
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


def leads_out(path: Path, folder: Path) -> bool:
    """Whether a path is a link to what lies outside of the folder of the book."""
    return path.is_symlink() and not Path(realpath(path)).is_relative_to(realpath(folder))


def is_yaml(path: Path) -> bool:
    """Whether a file is one of the book."""
    return path.suffix in ENDINGS


OUTSIDE = "is a link out of the book's folder, and is not followed"
ENDINGS = (".yaml", ".yml")


def listed_files(folder: Path) -> tuple[list[Path], list[Diagnostic]]:
    """The files of a folder and of those in it, in order, and what cannot be read by its name alone.

    Hidden files are left out. No link to a folder is followed: it may lead around in a circle.
    """
    found: list[Path] = []
    diagnostics: list[Diagnostic] = []

    def refuse(path: Path, message: str, hint: str) -> None:
        diagnostics.append(Diagnostic(shown_path(path, folder), 1, 1, "error", message, hint))

    def unreadable(error: OSError) -> None:
        refuse(Path(error.filename), f"cannot be read: {error.strerror}", "let yourself read this folder")

    for here, folders, names in os.walk(folder, onerror=unreadable):
        folders[:] = [name for name in folders if not name.startswith(".")]
        for name in [*folders, *names]:
            path, ending = Path(here, name), Path(name).suffix
            if name.startswith("."):
                continue
            if not name.isprintable():
                refuse(path, "the name holds a sign that cannot be seen", "rename it, with letters, digits and hyphens")
                folders[:] = [one for one in folders if one != name]
            elif name in folders and path.is_symlink():
                refuse(path, "is a link to a folder, and what lies there is not read", "put the folder itself here")
            elif leads_out(path, folder):
                refuse(path, OUTSIDE, "put the file itself here")
            elif ending.lower() in ENDINGS and ending not in ENDINGS:
                refuse(
                    path,
                    f"ends in '{ending}', and is not read",
                    f"rename it: a file of the book ends in '{ENDINGS[0]}'",
                )
            elif name not in folders or ending in ENDINGS:
                found.append(path)
    return sorted(found), sorted(diagnostics)


def read_in_parallel(paths: Iterable[Path], folder: Path) -> dict[Path, tuple[Stamp, Document]]:
    """The files of a large book, read on every core; none of a small one."""
    new = [path for path in paths if is_yaml(path)]
    return {path: (stamp, document) for path, stamp, document in parallel_map(partial(_read, folder), new)}


def write_whole(path: Path, content: str | bytes) -> None:
    """Write a file so that nobody ever finds a part of it, also after the disk was full or the process was killed."""
    path.parent.mkdir(parents=True, exist_ok=True)
    begun = path.with_name(f"{path.name}.{os.getpid()}")
    with naming(path):
        try:
            begun.write_bytes(content.encode() if isinstance(content, str) else content)
            begun.replace(path)
        except BaseException:
            begun.unlink(missing_ok=True)
            raise


def hand_out(path: Path, content: bytes) -> None:
    """Write a file that somebody asked for: whole or not at all, but straight into a pipe or a device."""
    if path.exists() and not path.is_file():
        with naming(path):
            path.write_bytes(content)
    else:
        write_whole(Path(realpath(path)), content)


@contextmanager
def naming(path: Path) -> Iterator[None]:
    """What goes wrong inside is told with the name of that file: the system knows none where a disk is full."""
    try:
        yield
    except OSError as error:
        error.filename = str(path)
        raise


def _read(folder: Path, path: Path) -> tuple[Path, Stamp, Document]:
    stamp = stamp_of(path)
    return path, stamp, read_document(path, shown_path(path, folder))
