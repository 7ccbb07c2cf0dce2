"""``test``: format, lint, types and tests in one run, with the browser that the page tests drive."""

from __future__ import annotations

import argparse
import os
import shutil
import subprocess
import sys
from pathlib import Path

from build_tools import progress
from build_tools.commands.command import FAILURE, SUCCESS, Command
from build_tools.environment import ROOT

BROWSERS = ("chromium", "chromium-browser", "google-chrome")
DRIVERS = ("chromedriver",)
PACKAGES = ("chromium", "chromium-driver")
TOOLS = ROOT / "tests" / "browser" / "tools"
"""What the tests take from npm: its versions are pinned there."""
CHECKS: dict[str, tuple[str, ...]] = {
    "format": ("ruff", "format", "--check", "."),
    "lint": ("ruff", "check", "."),
    "types": ("mypy",),
    "scripts": ("tests.browser_script.check",),
    "tests": ("pytest", "-n", "2", "--dist", "worksteal", "--instafail"),
}
QUICK = ("-m", "not slow", "--ignore=tests/browser")
"""What the tests of ``--quick`` leave out: the marker is explained in ``pyproject.toml``."""
FROM_NPM = ("scripts",)
"""The checks whose tools npm brings; ``--quick`` leaves them out."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of ``test``, for its help: they are handed to pytest unread."""
    parser.add_argument(
        "--quick", action="store_true", help="without browser and built site: for each change on the way"
    )
    parser.add_argument("pytest_arguments", nargs="*", metavar="PYTEST ARGUMENT", help="handed to pytest as they are")


def run(arguments: argparse.Namespace) -> int:
    """Run every part, whatever the others say; 1 when any failed."""
    given = [word for word in arguments.pytest_arguments if word != "--quick"]
    quick = given != arguments.pytest_arguments
    passed = {} if quick else {"browser": have_browser(), "browser tools": have_tools()}
    # Each of the programs that tests start would compile all of its code again where none is kept.
    env = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    for name, command in CHECKS.items():
        if quick and name in FROM_NPM:
            continue
        words = [*command, *(QUICK if quick else ()), *given] if name == "tests" else command
        print(f"\n{name}: {' '.join(words)}", flush=True)
        code = subprocess.run([sys.executable, "-m", *words], cwd=ROOT, env=env, check=False).returncode
        passed[name] = code == 0
    print(f"\n{closing(passed)}", flush=True)
    return SUCCESS if all(passed.values()) else FAILURE


def closing(passed: dict[str, bool]) -> str:
    """The last line: what failed and what passed.

    >>> closing({"format": True, "tests": True})
    'passed: format, tests'
    >>> closing({"format": True, "tests": False})
    'FAILED: tests; passed: format'
    """
    good = [name for name, fine in passed.items() if fine]
    bad = [name for name, fine in passed.items() if not fine]
    parts = ([f"FAILED: {', '.join(bad)}"] if bad else []) + ([f"passed: {', '.join(good)}"] if good else [])
    return "; ".join(parts)


def have_browser() -> bool:
    """Whether Chromium and its driver are here; where we may, the system's packages bring them."""
    if _found():
        return True
    if shutil.which("apt-get") and hasattr(os, "geteuid") and os.geteuid() == 0:
        quietly = {"DEBIAN_FRONTEND": "noninteractive"}
        install = ["apt-get", "install", "--yes", "--no-install-recommends", *PACKAGES]
        for title, command in (("reading the package lists", ["apt-get", "update"]), ("installing Chromium", install)):
            code, printed = progress.run(title, command, quietly)
        if code == 0 and _found():
            return True
        print("\n".join(printed.strip().splitlines()[-5:]), file=sys.stderr)
    print(
        f"Chromium and its driver are missing, and the page tests need them: install '{PACKAGES[0]}' and "
        f"'{PACKAGES[1]}' (on Debian and Ubuntu: apt-get install {' '.join(PACKAGES)}).",
        file=sys.stderr,
    )
    return False


def have_tools(folder: Path = TOOLS) -> bool:
    """Whether what a folder takes from npm is here, as it is pinned; npm brings it where it is there."""
    kept = folder / "node_modules" / ".package-lock.json"
    if kept.is_file() and kept.stat().st_mtime >= (folder / "package-lock.json").stat().st_mtime:
        return True
    if not shutil.which("npm") and shutil.which("apt-get") and hasattr(os, "geteuid") and os.geteuid() == 0:
        progress.run("installing npm", ["apt-get", "install", "--yes", "--no-install-recommends", "npm"])
    if not shutil.which("npm"):
        print("npm is missing, and what looks at pages needs it: install Node.js with npm.", file=sys.stderr)
        return False
    command = ["npm", "ci", "--no-audit", "--no-fund", "--prefix", str(folder)]
    code, printed = progress.run("installing the tools from npm", command)
    if code:
        print("\n".join(printed.strip().splitlines()[-5:]), file=sys.stderr)
    return code == 0


def _found() -> bool:
    return any(map(shutil.which, BROWSERS)) and any(map(shutil.which, DRIVERS))


COMMAND = Command(
    name="test",
    help="check format, lint, types, and run the tests",
    description="Checks the format, lint and types of the code, then runs the tests. The page tests drive Chromium:\n"
    "as root on Debian it is installed where it is missing, elsewhere you are told what to install. '--quick' does\n"
    "all that takes no browser and no built site, in under a minute.",
    add_arguments=add_arguments,
    run=run,
    extras=("test",),
    examples=("test", "test --quick", "test -k wax_ring", "test tests/outside -x"),
)
