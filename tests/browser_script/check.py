"""Lint and types of the page scripts, each as it is joined for a page: ``python3 -m tests.browser_script.check``.

ESLint and the TypeScript compiler (types from JSDoc; nothing is emitted) read joined files in a temporary folder. A
message names the piece and its line, as the editor opens it. Both tools come from npm, as ``tests/browser/tools`` pins
them.
"""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from build_tools.browser.compiler.sources import HOST, script_name
from build_tools.browser.form_script import JOINED, SCRIPTS, SINGLE, WORDS, pieces
from build_tools.commands.test import TOOLS

TYPES = SCRIPTS / "types"
"""Declarations: ``page.d.ts`` for scripts of pages, ``worker.d.ts`` for the service worker, ``compiled.d.ts`` for both
runtimes of compiled code."""
WORKER = ("offline", "offline_off")
"""The scripts that run as the service worker."""
OPTIONS = {
    "checkJs": True,
    "noEmit": True,
    "strict": True,
    "noImplicitAny": False,
    "target": "es2022",
    "moduleDetection": "legacy",
    "types": [],
}
DECLARED = re.compile(r"^declare (?:const|function) ([\w$]+)", re.MULTILINE)
TYPE_ERROR = re.compile(r"^(?P<file>[^\s(]+)\((?P<line>\d+),(?P<column>\d+)\): (?P<text>error .*)$", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Joined:
    """A script as a page runs it, and for each of its lines the piece and the line there."""

    name: str
    text: str
    places: list[tuple[Path, int]]


def all_joined(scripts: Path = SCRIPTS) -> Iterator[Joined]:
    """Every script of the site, in the scope that its pieces share."""
    for folders in JOINED:
        yield _join(_name(folders), pieces(*folders, scripts=scripts))
    for name in SINGLE:
        yield _join(name, [scripts / f"{name}.js"])
    helpers = scripts / "python.js"
    names = re.findall(r"^(?:const|function\*?) (\$\w+)", helpers.read_text(encoding="utf-8"), re.MULTILINE)
    used = f"void [{', '.join([*names, *(script_name(name) for name in HOST)])}];"
    yield _join("core", [helpers, scripts / "core.js"], f"{used} window.crew = crew;")
    yield _join("draw", [scripts / "draw.js"])


def _name(folders: tuple[str, ...]) -> str:
    """A script is named by the last of what it is joined from."""
    return folders[-1]


def _join(name: str, parts: list[Path], end: str = "") -> Joined:
    lines, places = ["(() => {", '"use strict";'], [(parts[0], 1)] * 2
    for piece in parts:
        found = piece.read_text(encoding="utf-8").replace(WORDS, "crewWords").splitlines()
        lines += found
        places += [(piece, number + 1) for number in range(len(found))]
    lines += [end, "})();", ""]
    return Joined(name, "\n".join(lines), [*places, *[(parts[-1], 1)] * 3])


def problems(scripts: Path = SCRIPTS) -> list[str]:
    """What both tools find, by piece and line."""
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder).resolve()
        joined = {f"{one.name}.js": one for one in all_joined(scripts)}
        types = "".join(path.read_text(encoding="utf-8") for path in (scripts / "types").glob("*.d.ts"))
        (root / "globals.json").write_text(json.dumps(dict.fromkeys(DECLARED.findall(types), "readonly")))
        for file, one in joined.items():
            (root / file).write_text(one.text, encoding="utf-8")
        found = [*_lint(root), *_types(root, list(joined), scripts / "types")]
        return sorted({_at(joined, scripts, *each) for each in found})


def _at(joined: dict[str, Joined], scripts: Path, file: str, line: int, column: int, text: str) -> str:
    """A message at its piece, with the joined script that it was found in."""
    if file not in joined:
        return f"{file}:{line}:{column}: {text}"
    piece, number = joined[file].places[line - 1]
    return f"{piece.relative_to(scripts.parent)}:{number}:{column}: {text} [in {joined[file].name}]"


def _lint(root: Path) -> Iterator[tuple[str, int, int, str]]:
    command = [_tool("eslint"), "--config", str(TOOLS / "eslint.config.mjs"), "--format", "json", "."]
    for file in json.loads(_printed(command, root)):
        for each in file["messages"]:
            yield Path(file["filePath"]).name, each["line"], each["column"], f"{each['message']} ({each['ruleId']})"


def _types(root: Path, files: list[str], types: Path) -> Iterator[tuple[str, int, int, str]]:
    workers = [file for file in files if file.removesuffix(".js") in WORKER]
    kinds = {
        "page": (
            ["dom", "dom.iterable", "dom.asynciterable", "es2022"],
            [each for each in files if each not in workers],
        ),
        "worker": (["webworker", "webworker.iterable", "es2022"], workers),
    }
    for kind, (libraries, own) in kinds.items():
        config = root / f"{kind}.json"
        given = [*own, *(str(types / f"{name}.d.ts") for name in (kind, *(["compiled"] if kind == "page" else [])))]
        config.write_text(json.dumps({"compilerOptions": OPTIONS | {"lib": libraries}, "files": given}))
        for each in TYPE_ERROR.finditer(_printed([_tool("tsc"), "--project", str(config), "--pretty", "false"], root)):
            yield each["file"], int(each["line"]), int(each["column"]), each["text"]


def _tool(name: str) -> str:
    path = TOOLS / "node_modules" / ".bin" / name
    if not path.exists() or not shutil.which("node"):
        raise FileNotFoundError(
            f"'{name}' is missing: `python3 -m build_tools test` brings it by npm, which needs Node.js"
        )
    return str(path)


def _printed(command: list[str], folder: Path) -> str:
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, encoding="utf-8", check=False)
    if done.returncode not in (0, 1, 2) or (done.returncode and not done.stdout):
        raise RuntimeError(f"{command[0]} failed: {done.stderr.strip()}")
    return done.stdout


def main() -> int:
    """Print what is found; 1 where there is something."""
    try:
        found = problems()
    except FileNotFoundError as missing:
        found = [str(missing)]
    print("\n".join(found) if found else "no problems in the page scripts")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
