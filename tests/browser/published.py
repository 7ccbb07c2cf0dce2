"""The built site published in a folder of a server, as phones meet it: with new editions, cut lines and worse."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import cast

from build_tools.browser.offline import Edition, write_offline
from build_tools.pages.words import words
from tests.builds import change

UNDER = "crew/book"
"""The folder of the server in which the site lies: a published site seldom has a server of its own."""


class Published:
    """A site at ``address``; ``asked`` are the files that were asked for, ``cut`` says which break off half way."""

    def __init__(self, site: Path, folder: Path) -> None:
        self.root = folder / "served"
        self.site = self.root / UNDER
        shutil.copytree(site, self.site)
        self.asked: list[str] = []
        self.cut: Callable[[str], bool] = lambda path: False
        self.publish("2026-11-20T08:00Z")
        self._server: Server | None = None
        self.port = 0
        self.connect()

    @property
    def address(self) -> str:
        """Where the site is, with the last slash."""
        return f"http://127.0.0.1:{self.port}/{UNDER}/"

    def publish(self, date: str) -> Edition:
        """Write the list of what lies in the folder now, as the build does."""
        return write_offline(self.site, date, words("en"), "en")

    def publish_change(self, page: str, old: str, new: str, date: str) -> Edition:
        """Publish a new edition with one page changed."""
        change(self.site / page, old, new)
        return self.publish(date)

    def connect(self) -> None:
        """Serve; again at the same port after the line was cut."""
        self._server = Server(("127.0.0.1", self.port), partial(Handler, directory=str(self.root)))
        self._server.published = self
        self.port = self._server.server_port
        Thread(target=self._server.serve_forever, daemon=True).start()

    def disconnect(self) -> None:
        """No signal: nobody answers at the address."""
        if self._server:
            self._server.shutdown()
            self._server.server_close()
            self._server = None


class Server(ThreadingHTTPServer):
    """A server that knows what it publishes."""

    published: Published


class Handler(SimpleHTTPRequestHandler):
    """Serves files, notes what was asked for, and breaks off where it is told to."""

    def do_GET(self) -> None:
        """Answer with a file, or with half of it."""
        published = cast(Server, self.server).published
        path = self.path.split("?")[0].removeprefix(f"/{UNDER}/")
        published.asked.append(path)
        if published.cut(path):
            content = (published.site / path).read_bytes()
            self.send_response(200)
            self.send_header("Content-Length", str(len(content)))
            self.end_headers()
            self.wfile.write(content[: len(content) // 2])
            self.close_connection = True
        else:
            super().do_GET()

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""


def a_few(site: Path, folder: Path) -> Path:
    """A part of the site, for tests of how it is kept: the home page, one procedure, one trade, one calculator."""
    for pattern in (
        "index.html",
        "site.webmanifest",
        "plumbing/toilet-set.html",
        "power/*.html",
        "pictures/toilet*",
        *SHARED,
    ):
        for path in site.glob(pattern):
            if path.is_file():
                target = folder / path.relative_to(site)
                target.parent.mkdir(parents=True, exist_ok=True)
                shutil.copy(path, target)
    return folder


SHARED = (
    "assets/*",
    "assets/fonts/*",
    "assets/script/*",
    "assets/script/calculators/wa*",
)


@contextmanager
def published(site: Path, folder: Path) -> Iterator[Published]:
    """The site published in a folder of a test's own."""
    one = Published(site, folder)
    try:
        yield one
    finally:
        one.disconnect()
