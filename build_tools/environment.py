"""Makes the environment that everything else runs in: ``.venv`` in the checkout, with every pinned package.

Only the standard library is imported here, since this runs on a fresh machine. A stamp in ``.venv`` says what it was
made of; while that is still so, nothing is installed. Otherwise pip brings the environment up to date, and the
command starts again with the environment's own Python.
"""

from __future__ import annotations

import hashlib
import importlib.util
import json
import os
import re
import subprocess
import sys
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import NoReturn

from build_tools import progress

ROOT = Path(__file__).resolve().parent.parent
FOLDER = ROOT / ".venv"
MADE_OF = ("pyproject.toml", "constraints.txt")

NO_CONNECTION = re.compile(
    "NewConnectionError|NameResolutionError|ConnectTimeoutError|ProxyError|ReadTimeoutError|Read timed out"
    "|Failed to establish a new connection|Temporary failure in name resolution|Network is unreachable"
)
PIP_SETTINGS = {"PIP_USER": "0", "PIP_REQUIRE_VIRTUALENV": "0", "PIP_NO_INPUT": "1", "PYTHONNOUSERSITE": "1"}
"""Settings of the machine that would send the packages elsewhere than into the environment."""


class EnvironmentFailed(Exception):
    """The environment could not be made; the text says why and what to do."""


def enter(extras: Iterable[str], arguments: Sequence[str]) -> None:
    """Return when this already is the environment, up to date; otherwise make it so and start again inside it."""
    needed = frozenset(extras)
    inside = Path(sys.prefix).resolve() == FOLDER.resolve()
    if inside and is_current(FOLDER, fingerprint(ROOT, version_of(Path(sys.executable))), needed):
        return
    _start_again(ensure(needed), arguments)


def ensure(extras: frozenset[str]) -> Path:
    """The environment's Python, after installing what is missing."""
    # A .venv that is a link is shared with another checkout, and so is the lock that lies beside it.
    with _alone(FOLDER.resolve().parent / ".cache" / "environment.lock"):
        python = python_in(FOLDER)
        version = version_of(python)
        if version is None:
            _create(FOLDER)
            version = version_of(python)
            if version is None:
                raise EnvironmentFailed(
                    f"{FOLDER.name} was made, but its Python does not run: remove it and try again."
                )
        made_of = fingerprint(ROOT, version)
        if not is_current(FOLDER, made_of, extras):
            extras = extras | _stamp(FOLDER)[1]
            _install(python, extras)
            link_to_checkout(FOLDER)
            write_stamp(FOLDER, made_of, extras)
    return python


def fingerprint(root: Path, version: str | None) -> str:
    """A hash of all that decides what the environment holds: the pins and the Python, wherever the checkout lies."""
    total = hashlib.sha256(f"{version}\n".encode())
    for name in MADE_OF:
        total.update(hashlib.sha256((root / name).read_bytes()).digest())
    return total.hexdigest()


def is_current(folder: Path, made_of: str, extras: frozenset[str]) -> bool:
    """Whether the environment was made of exactly this, with at least these extras."""
    stamped, installed = _stamp(folder)
    return stamped == made_of and extras <= installed


def write_stamp(folder: Path, made_of: str, extras: frozenset[str]) -> None:
    """Note in the environment what it was made of; written last, so that a broken run leaves none."""
    text = json.dumps({"made_of": made_of, "extras": sorted(extras)})
    (folder / "stamp.json").write_text(text, encoding="utf-8")


def _stamp(folder: Path) -> tuple[str, frozenset[str]]:
    try:
        read = json.loads((folder / "stamp.json").read_text(encoding="utf-8"))
        return str(read["made_of"]), frozenset(str(extra) for extra in read["extras"])
    except (OSError, ValueError, KeyError, TypeError):
        return "", frozenset()


def python_in(folder: Path) -> Path:
    """The interpreter of an environment."""
    return folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def version_of(python: Path) -> str | None:
    """The interpreter's version when it runs, has pip and is new enough; else None."""
    if python == Path(sys.executable):
        return "{}.{}.{}".format(*sys.version_info[:3]) if importlib.util.find_spec("pip") else None
    ask = "import sys, pip; assert sys.version_info >= (3, 11); print('{}.{}.{}'.format(*sys.version_info[:3]))"
    try:
        asked = subprocess.run([str(python), "-c", ask], capture_output=True, text=True, check=False)
    except OSError:
        return None
    return asked.stdout.strip() if asked.returncode == 0 else None


def _create(folder: Path) -> None:
    """Make an empty environment with the Python that runs this."""
    for part in ("venv", "ensurepip"):
        if importlib.util.find_spec(part) is None:
            raise EnvironmentFailed(missing_part(part))
    python = getattr(sys, "_base_executable", None) or sys.executable
    code, printed = progress.run(f"making {folder.name}", [python, "-m", "venv", "--clear", str(folder)])
    if code != 0:
        raise EnvironmentFailed(missing_part("ensurepip") if "ensurepip" in printed else reason(printed))


def missing_part(part: str) -> str:
    """What to install when Python came without the part that makes environments."""
    package = f"python{sys.version_info[0]}.{sys.version_info[1]}-venv"
    return (
        f"This Python has no '{part}', which makes environments. Install it and run the same command again:\n"
        f"    on Debian and Ubuntu: apt-get install {package}\n"
        f"    elsewhere: a whole Python, 3.11 or later, from its makers has it."
    )


def _install(python: Path, extras: frozenset[str]) -> None:
    """Install the project, editable, with all pinned packages."""
    (FOLDER / "stamp.json").unlink(missing_ok=True)
    wanted = f"{ROOT}[{','.join(sorted(extras))}]" if extras else str(ROOT)
    command = [str(python), "-m", "pip", "install", "--disable-pip-version-check", "--progress-bar", "off"]
    command += ["--retries", "2", "--constraint", str(ROOT / "constraints.txt"), "--editable", wanted]
    code, printed = progress.run("installing packages", command, PIP_SETTINGS)
    if code != 0:
        raise EnvironmentFailed(reason(printed))


def link_to_checkout(folder: Path) -> None:
    """Lead the environment to the code of the checkout around it, by a path from its own place.

    pip's own link names the checkout that installed last. This one comes first, and holds in a checkout that was moved,
    and for each of several whose ``.venv`` is a link to one environment.
    """
    (packages,) = folder.glob("Lib/site-packages" if os.name == "nt" else "lib/python*/site-packages")
    up = os.path.relpath(folder.parent, packages)
    (packages / "checkout.pth").write_text(f"{up}\n", encoding="utf-8")


def reason(printed: str) -> str:
    """Why pip failed, in words, from what it printed."""
    if "CERTIFICATE_VERIFY_FAILED" in printed:
        return (
            "The packages could not be fetched: the connection's certificate is not trusted here.\n"
            "    Name your network's certificates in PIP_CERT, or set the machine's clock, and run it again."
        )
    if NO_CONNECTION.search(printed):
        return (
            "The packages could not be fetched: no connection to the package index.\n"
            "    Connect this machine to the network (behind a proxy, set HTTPS_PROXY) and run the same command again."
        )
    if "No space left on device" in printed:
        return "The disk is full: the environment takes about 500 MB."
    if found := re.search(r"No matching distribution found for (\S+)", printed):
        version = "{}.{}".format(*sys.version_info[:2])
        return (
            f"There is no package {found[1]} for Python {version} on this machine. Python 3.11 to 3.13 have them all."
        )
    last = "\n".join("    " + line for line in printed.strip().splitlines()[-12:])
    return f"The packages could not be installed. The last lines of pip:\n{last}"


def _start_again(python: Path, arguments: Sequence[str]) -> NoReturn:
    command = [str(python), "-m", "build_tools", *arguments]
    sys.stdout.flush()
    sys.stderr.flush()
    if os.name == "nt":
        sys.exit(subprocess.run(command, check=False).returncode)
    os.execv(command[0], command)


@contextmanager
def _alone(lock: Path) -> Iterator[None]:
    """Let one command at a time work on the environment; a second one waits."""
    if sys.platform == "win32":
        yield
        return
    import fcntl

    lock.parent.mkdir(parents=True, exist_ok=True)
    with lock.open("w") as handle:
        fcntl.flock(handle, fcntl.LOCK_EX)
        yield
