"""The folder of the site: written beside its place and put there when it is whole.

However a build ends early (killed, a full disk, a mistake), the site that was there stays, and the next build removes
what is left. Beside ``site`` lies ``.site-new`` while it is written, and ``.site-old`` from one rename to the next.
"""

from __future__ import annotations

import errno
import os
import shutil
import sys
import tempfile
from contextlib import suppress
from pathlib import Path

REFUSED = {
    getattr(errno, name)
    for name in "ENOSPC EDQUOT EFBIG EACCES EPERM EROFS ENOTDIR EEXIST ENOTEMPTY EBUSY EIO".split()
    if hasattr(errno, name)
}
"""What a disk refuses: full, not allowed, in the way. Any other failure is a mistake of ours."""
MOUNTED = "a disk is mounted there, which cannot be moved aside; name a folder in it"


class SiteFolder:
    """One place of a site, and what is written there. Whatever the disk refuses is raised as ``OSError``."""

    def __init__(self, place: Path) -> None:
        self.place = place = place.resolve()  # of a link, the folder that it leads to
        self._new, self._old = (place.with_name(f".{place.name}-{age}") for age in ("new", "old"))
        self._lock: int | None = None

    def check(self) -> None:
        """Raise now what :meth:`begin` would raise after the work is done; nothing is left behind."""
        above = next(folder for folder in self.place.parents if folder.exists())
        try:
            with tempfile.TemporaryFile(dir=above):
                pass
        except OSError as refused:
            raise OSError(refused.errno, refused.strerror, str(self.place)) from None
        if self.place.is_mount():
            raise OSError(errno.EBUSY, MOUNTED, str(self.place))

    def begin(self) -> Path:
        """An empty folder for the new site. A build of the same place that is writing is waited for."""
        self.place.parent.mkdir(parents=True, exist_ok=True)
        self._lock = _alone(self.place.parent)
        self._put_right()
        self._new.mkdir()
        if self.place.exists():
            shutil.copymode(self.place, self._new)
        return self._new

    def finish(self) -> Path:
        """Put the new site in its place."""
        if self.place.exists():
            self.place.rename(self._old)
        self._new.rename(self.place)
        self.drop()
        return self.place

    def drop(self) -> None:
        """Remove what is no site, also before a build has finished."""
        if self._lock is None:
            return
        lock, self._lock = self._lock, None
        try:
            self._put_right()
        finally:
            if lock >= 0:
                os.close(lock)

    def _put_right(self) -> None:
        """Whatever a build came to: the site in its place, and nothing beside it."""
        if self._old.exists() and not self.place.exists():
            self._old.rename(self.place)
        _remove(self._new)
        if self._old.exists():
            # Hidden files are no part of a site (.git, .htaccess), and MkDocs leaves them as well.
            for hidden in list(self._old.glob(".*")):
                if not (self.place / hidden.name).exists():
                    hidden.rename(self.place / hidden.name)
            self._old.rename(self._new)  # half removed, it would pass for a site
            _remove(self._new)


def refusal_text(refused: OSError, place: Path) -> str:
    """What the disk refused, in words.

    >>> refusal_text(OSError(errno.ENOSPC, "No space left on device"), Path("site"))
    'site cannot be written: No space left on device'
    """
    return f"{refused.filename or place} cannot be written: {refused.strerror}"


def _remove(folder: Path) -> None:
    with suppress(FileNotFoundError):
        shutil.rmtree(folder)


def _alone(folder: Path) -> int:
    """Hold the folder, after whoever holds it; the system lets go for a process that dies."""
    if sys.platform == "win32":
        return -1
    import fcntl

    held = os.open(folder, os.O_RDONLY)
    with suppress(OSError):  # a network disk may know no locks
        fcntl.flock(held, fcntl.LOCK_EX)
    return held
