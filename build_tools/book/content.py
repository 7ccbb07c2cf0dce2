"""What stands in a file that came from outside: read only where it is a file, and no more than was asked for.

A pipe would be waited for without end, and a device such as ``/dev/zero`` read until the memory is full.
"""

from __future__ import annotations

import errno
import stat
from pathlib import Path

NO_FILE = "is no file that can be read, but a folder, a pipe or a device"


class FileRefused(OSError):
    """A file that is not read; ``strerror`` says why, behind its name."""

    strerror: str


def content_of(path: Path, most: int) -> bytes:
    """The bytes of a regular file, or of the one that a link leads to.

    Raises NotTaken for a folder, a pipe, a device and more than ``most`` bytes, and OSError for what cannot be read.
    """
    if not stat.S_ISREG(path.stat().st_mode):
        raise FileRefused(errno.EINVAL, NO_FILE, str(path))
    with path.open("rb") as opened:
        raw = opened.read(most + 1)
    if len(raw) > most:
        raise FileRefused(errno.EFBIG, f"is too large: at most {most / 1e6:.0f} MB are read", str(path))
    return raw
