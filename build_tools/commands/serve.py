"""``serve``: build the book, serve it on this machine, and build again whenever a file is saved."""

from __future__ import annotations

import argparse
import errno
import os
import socket
import sys

from build_tools.commands.command import FAILURE, SUCCESS, Command, add_book, book_folder
from build_tools.commands.site import add_jobs, extra_of, mkdocs
from build_tools.commands.usage_error import UsageError

TRIES = 50


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The options of ``serve``."""
    parser.add_argument(
        "--port", type=_port, default=8000, help="the port (8000, if left out; the next one when taken)"
    )
    parser.add_argument(
        "--address",
        default="127.0.0.1",
        help="the address to serve on (127.0.0.1, this machine alone; 0.0.0.0 also for a phone on the same network)",
    )
    parser.add_argument("--strict", action="store_true", help="stop at warnings as well")
    add_jobs(parser)
    add_book(parser)


def _port(text: str) -> int:
    if not text.isdecimal() or not 1 <= int(text) <= 65535:
        raise argparse.ArgumentTypeError(f"'{text}' is not a port: a whole number from 1 to 65535 is wanted")
    return int(text)


def run(arguments: argparse.Namespace) -> int:
    """Serve until Ctrl-C or a signal to end; 1 when the book has mistakes at the start."""
    book = book_folder(arguments)
    port = free_port(arguments.address, arguments.port)
    if port != arguments.port:
        print(f"port {arguments.port} is taken; {port} is used instead", file=sys.stderr)
    address = f"[{arguments.address}]" if ":" in arguments.address else arguments.address
    print(f"building the book; then it is served at {address}:{port} until Ctrl-C", file=sys.stderr)
    strict = ["--strict"] if arguments.strict else []
    try:
        code = mkdocs(["serve", "--dirty", "--dev-addr", f"{address}:{port}", *strict], book, **extra_of(arguments))
    except KeyboardInterrupt:
        return SUCCESS
    return SUCCESS if code == 0 else FAILURE


def free_port(address: str, first: int) -> int:
    """The first port from ``first`` on that nobody listens at."""
    for port in range(first, min(first + TRIES, 65536)):
        try:
            if _is_free(address, port):
                return port
        except PermissionError:
            raise UsageError(f"port {port} is not open to you; take one from 1024 on: --port 8000") from None
        except (OSError, UnicodeError):
            raise UsageError(f"'{address}' is no address of this machine; 127.0.0.1 and 0.0.0.0 always are") from None
    raise UsageError(f"the ports from {first} on are all taken; name another one with --port")


def _is_free(address: str, port: int) -> bool:
    family, kind, protocol, _, place = socket.getaddrinfo(address, port, type=socket.SOCK_STREAM)[0]
    with socket.socket(family, kind, protocol) as probe:
        if os.name != "nt":
            # As the server does: a port that was left a moment ago counts as free.
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind(place)
        except OSError as error:
            if error.errno == errno.EADDRINUSE:
                return False
            raise
    return True


COMMAND = Command(
    name="serve",
    help="serve the book on this machine, and build again at each save (also without a command)",
    description="Builds the book and serves it, printing the address. When a file of the book is saved, the pages are\n"
    "built again and the browser shows them. Ctrl-C ends it.",
    add_arguments=add_arguments,
    run=run,
    examples=("serve", "serve --port 9000", "serve --address 0.0.0.0", "serve --for crew"),
)
