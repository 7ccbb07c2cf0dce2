"""The folder of the site: whole at every moment, however a build ends, and said in words where it cannot be written."""

from __future__ import annotations

import errno
import os
import random
import resource
import shutil
import signal
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort

from build_tools.book.files import write_whole
from build_tools.commands.site import settings_for
from build_tools.site_folder import MOUNTED, SiteFolder
from tests.builds import copy_book

pytestmark = pytest.mark.filterwarnings("ignore:.*multi-threaded:DeprecationWarning")  # the tests' own forks
FILES = 40
KILLS = 60


def publish(place: Path, edition: str, until: Callable[[], object] = lambda: None) -> None:
    """A small build of that edition."""
    folder = SiteFolder(place)
    folder.check()
    new = folder.begin()
    for number in range(FILES):
        (new / f"{number}.html").write_text(edition)
    until()
    folder.finish()


def edition_of(place: Path) -> str:
    """The edition that lies there, which must be whole."""
    texts = [file.read_text() for file in place.glob("*.html")]
    assert len(texts) == FILES and len(set(texts)) == 1
    return texts[0]


def in_a_child(work: Callable[[], object]) -> int:
    """Fork, and do the work there; the child's id."""
    child = os.fork()
    if child == 0:
        try:
            work()
        finally:
            os._exit(0)
    return child


def kill(child: int) -> None:
    """As the system does when it is out of memory."""
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """A site that lies there, and a hidden file that is none of it."""
    place = tmp_path / "site"
    publish(place, "first")
    (place / ".htaccess").write_text("theirs")
    return place


def test_a_site_is_replaced_and_nothing_is_left_beside(place: Path) -> None:
    place.chmod(0o750)
    publish(place, "second")
    assert edition_of(place) == "second"
    assert [path.name for path in place.parent.iterdir()] == ["site"]
    assert (place / ".htaccess").read_text() == "theirs", "MkDocs leaves hidden files as well"
    assert place.stat().st_mode & 0o777 == 0o750


@pytest.mark.slow
def test_killed_at_any_moment_the_site_is_whole(place: Path) -> None:
    """Builds are killed all over their length; the old or the new site lies there, and the next build is whole."""
    began = time.perf_counter()
    publish(place, "timed")
    length = time.perf_counter() - began
    drawn = random.Random(5)
    before = "timed"
    for number in range(KILLS):
        child = in_a_child(partial(publish, place, f"edition {number}"))
        time.sleep(drawn.uniform(0, 1.5 * length))
        kill(child)
        if place.exists():  # else it was between its two moves, and the next build goes on from there
            assert edition_of(place) in (before, f"edition {number}")
            before = edition_of(place)
        if number % 10 == 9:
            before = f"after {number}"
            publish(place, before)
            assert (place / ".htaccess").is_file()
            assert [path.name for path in place.parent.iterdir()] == ["site"]


@pytest.mark.parametrize("after", [1, 2, 3, 4])
def test_killed_between_its_moves_the_next_build_puts_it_right(place: Path, after: int) -> None:
    """After each of the renames of which putting a site in its place consists, even if the next build fails."""

    def dies() -> None:
        renames = 0
        rename = Path.rename

        def counted(path: Path, target: Path) -> Path:
            nonlocal renames
            moved = rename(path, target)
            renames += 1
            if renames == after:
                os.kill(os.getpid(), signal.SIGKILL)
            return moved

        Path.rename = counted  # type: ignore[method-assign, assignment]
        publish(place, "second")

    _, status = os.waitpid(in_a_child(dies), 0)
    assert os.waitstatus_to_exitcode(status) == -signal.SIGKILL
    failing = SiteFolder(place)
    failing.begin()
    failing.drop()
    assert edition_of(place) == ("first" if after == 1 else "second")
    assert (place / ".htaccess").is_file()
    assert [path.name for path in place.parent.iterdir()] == ["site"]


def test_two_builds_of_one_place_follow_each_other(place: Path) -> None:
    """The second waits while the first writes; neither finds the other's files."""

    def ten(name: str) -> None:
        for number in range(10):
            publish(place, f"{name} {number}")

    children = [in_a_child(partial(ten, name)) for name in "ab"]
    for child in children:
        assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 0
    assert edition_of(place) in ("a 9", "b 9")
    assert [path.name for path in place.parent.iterdir()] == ["site"]


def test_a_file_is_never_half_written(tmp_path: Path) -> None:
    """What is kept between builds: a part of it would pass for the whole the next time."""
    kept = tmp_path / "kept.json"
    write_whole(kept, "old")
    with full_disk(1000), pytest.raises(OSError, match="too large"):
        write_whole(kept, "x" * 2000)
    assert [(path.name, path.read_text()) for path in tmp_path.iterdir()] == [("kept.json", "old")]


@contextmanager
def full_disk(limit: int) -> Iterator[None]:
    """No file can grow beyond so many bytes, whoever writes it: the tests may run as root, who may do anything else."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (limit, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


@pytest.fixture(scope="module")
def build_into(tmp_path_factory: pytest.TempPathFactory, kept: Path) -> Iterator[Callable[[Path], None]]:
    """Builds the book without its jobs into a place, as ``mkdocs build`` does, from a second time on in a second."""
    folder = tmp_path_factory.mktemp("book")
    book = copy_book(folder)
    shutil.rmtree(book / "jobs")
    settings = settings_for(book, folder, cache=str(kept))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(MkDocsConfig.plugins, "plugin_cache", {})

        def build_it(place: Path) -> None:
            config = load_config(str(settings), site_dir=str(place))
            config.plugins.on_startup(command="build", dirty=False)
            try:
                build(config)
            finally:
                config.plugins.on_shutdown()

        yield build_it


def test_the_build_leaves_the_site_as_it_was_or_whole(
    build_into: Callable[[Path], None], tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    """A first build on a full disk, one that is killed while it writes, one on a full disk over a site."""
    place = tmp_path / "site"
    with full_disk(50_000), pytest.raises(Abort, match="Nothing was built"):
        build_into(place)
    assert caplog.messages[-1].endswith("cannot be written: File too large")
    assert list(tmp_path.iterdir()) == []
    build_into(place)
    before = told(place)
    assert len(before) > 100
    for files in (1, 40, 160):
        child = in_a_child(lambda: build_into(place))
        while sum(len(names) for _, _, names in os.walk(tmp_path / ".site-new")) < files:
            time.sleep(0.002)
        kill(child)
        assert told(place) == before
        assert (tmp_path / ".site-new").is_dir()
    with full_disk(50_000), pytest.raises(Abort):
        build_into(place)
    assert told(place) == before
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def told(site: Path) -> dict[str, int]:
    """The files of a site with their sizes."""
    return {path.relative_to(site).as_posix(): path.stat().st_size for path in site.rglob("*") if path.is_file()}


def test_a_folder_that_cannot_be_written_is_told(
    build_into: Callable[[Path], None],
    tmp_path: Path,
    caplog: pytest.LogCaptureFixture,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Before anything is done: a file is in the way, the disk takes nothing, a disk is mounted at the place."""
    (tmp_path / "file").touch()
    place = tmp_path / "site"
    cases = [(tmp_path / "file" / "site", "Not a directory"), (place, "Read-only file system"), (place, MOUNTED)]
    for at, why in cases:
        with monkeypatch.context() as patch:
            if why == MOUNTED:
                patch.setattr(Path, "is_mount", lambda path: path == place)
            elif at == place:
                patch.setattr(tempfile, "TemporaryFile", refuse)
            with pytest.raises(Abort):
                build_into(at)
        assert caplog.messages[-1].endswith(f": {at} cannot be written: {why}")
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


def refuse(**_: object) -> None:
    """A disk that can only be read."""
    raise OSError(errno.EROFS, os.strerror(errno.EROFS), "some name")
