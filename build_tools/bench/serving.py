"""A server for the built site that compresses what is text, as any web server does."""

from __future__ import annotations

import gzip
import http.server
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

TEXT = {".html", ".css", ".js", ".json", ".svg", ".webmanifest", ".csv", ".ics"}


class _Compressing(http.server.SimpleHTTPRequestHandler):
    """Answers for one folder, quietly."""

    protocol_version = "HTTP/1.1"
    packed: dict[Path, bytes]

    def __init__(self, *given: object, packed: dict[Path, bytes], **more: object) -> None:
        self.packed = packed
        super().__init__(*given, **more)  # type: ignore[arg-type]

    def do_GET(self) -> None:
        """A file, compressed where it is text."""
        path = Path(self.translate_path(self.path))
        if not path.is_file():
            self.send_error(404)
            return
        content = path.read_bytes()
        self.send_response(200)
        if path.suffix in TEXT:
            content = self.packed.setdefault(path, gzip.compress(content, 9))
            self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Length", str(len(content)))
        self.send_header("Cache-Control", "max-age=31536000")
        self.end_headers()
        self.wfile.write(content)

    def log_message(self, format: str, *args: object) -> None:
        """Nothing."""


class _Server(http.server.ThreadingHTTPServer):
    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        """A browser that is shut leaves its lines open: nothing to tell."""


@contextmanager
def served(site: Path) -> Iterator[str]:
    """The address at which the folder is served, ending in ``/``."""
    handler = partial(_Compressing, directory=str(site), packed={})
    server = _Server(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()
        server.server_close()
