"""The command line as a person meets it: what is printed, where, and with which exit code."""

from __future__ import annotations

import argparse
import json
import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from urllib.request import urlopen

import pytest

from build_tools import progress
from build_tools.commands import serve, test
from build_tools.commands.site import settings_for
from build_tools.commands.usage_error import UsageError
from build_tools.environment import ROOT

pytestmark = pytest.mark.slow

PROCEDURES = ROOT / "procedures"
WAIT_SECONDS = 90.0


@dataclass(frozen=True)
class Ran:
    """A finished command."""

    code: int
    out: str
    err: str


def run(*arguments: str | Path, cwd: Path = ROOT) -> Ran:
    """Run the real command line. Nothing that a user does wrong may end in a traceback."""
    command = [sys.executable, "-m", "build_tools", *map(str, arguments)]
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    ran = subprocess.run(
        command, cwd=cwd, env=env, capture_output=True, text=True, check=False, stdin=subprocess.DEVNULL
    )
    assert "Traceback" not in ran.stderr
    return Ran(ran.returncode, ran.stdout, ran.stderr)


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A copy of the book, to be spoilt."""
    folder = tmp_path / "procedures"
    shutil.copytree(PROCEDURES, folder)
    return folder


def folder_of(book: Path, folder: Path, kept: Path) -> Path:
    """A folder from which commands take that book, and what takes long to make from the builds of this run."""
    folder.mkdir()
    settings_for(book, folder)
    (folder / ".cache").symlink_to(kept)
    return folder


# which command


@pytest.mark.parametrize("command", ["serve", "build", "check", "plan", "compute", "new", "pack", "test", "bench"])
def test_each_command_has_its_help(command: str) -> None:
    ran = run(command, "--help")
    assert ran.code == 0
    assert f"usage: python3 -m build_tools {command}" in ran.out
    assert f"python3 -m build_tools {command}" in ran.out.split("for example:")[1]


def test_the_help_lists_the_commands_and_exit_codes() -> None:
    ran = run("--help")
    assert ran.code == 0
    assert "name every mistake in the book" in ran.out
    assert "0 all is well, 1 the book has mistakes or a check failed, 2 called wrongly" in ran.out


def test_an_unknown_command_gets_the_nearest() -> None:
    assert run("biuld") == Ran(2, "", "there is no command 'biuld'\n    did you mean 'build'?\n")


def test_a_command_like_no_other_gets_the_list() -> None:
    ran = run("xyzzy")
    assert ran.code == 2
    assert "the commands are serve, build, check, plan, compute, new, pack, records, test, bench" in ran.err


def test_an_unknown_option_points_to_the_help() -> None:
    ran = run("check", "--strct")
    assert ran.code == 2
    assert ran.err.splitlines() == [
        "unrecognized arguments: --strct",
        "    see 'python3 -m build_tools --help'",
    ]


# check


def test_a_good_book_has_no_mistakes() -> None:
    ran = run("check")
    assert ran.code == 0
    assert ran.out == ""
    count = len([path for path in PROCEDURES.glob("*/*.yaml") if path.parent.name not in ("crew", "jobs")])
    assert f"in {count} procedures" in ran.err.splitlines()[-1]


def test_every_mistake_is_named_and_counted(book: Path) -> None:
    assert run("new", "plumbing/try-one", "--book", book).code == 0
    file = book / "plumbing" / "try-one.yaml"
    fill_in(file)
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("who: helper ", "who: helpr "), encoding="utf-8")
    tools = book / "reference" / "tools" / "more.yaml"
    tools.write_text("odd-tool:\n  title: Odd tool\n", encoding="utf-8")
    ran = run("check", "--book", book)
    assert ran.code == 1
    assert "procedures/plumbing/try-one.yaml:15:6: error: 'helpr' is not one of" in ran.err
    assert "    did you mean 'helper'?" in ran.err
    assert "procedures/reference/tools/more.yaml:2:3: error: the field 'use' is missing" in ran.err
    assert ran.err.splitlines()[-1].startswith("2 errors")


def test_a_folder_without_a_procedure_is_no_book(tmp_path: Path) -> None:
    """A mistyped folder does not pass as a book without mistakes, and nothing is written there."""
    ran = run("check", "--book", tmp_path)
    assert ran.code == 2
    assert f"there is no procedure in '{tmp_path}'" in ran.err
    assert not list(tmp_path.iterdir())


def test_a_warning_counts_under_strict_alone(book: Path) -> None:
    (book / "reference" / "values" / "more.yaml").write_text(
        "odd-height:\n  title: Odd height\n  quantity: 77 in\n  basis: this crew's rule\n  means: A height.\n",
        encoding="utf-8",
    )
    assert run("new", "plumbing/try-one", "--book", book).code == 0
    file = book / "plumbing" / "try-one.yaml"
    fill_in(file)
    text = file.read_text(encoding="utf-8")
    action = "Mark 77 in, the [](value:odd-height)."
    file.write_text(text.replace("Here is one action, as an order.", f'"{action}"'), encoding="utf-8")
    ran = run("check", "--book", book)
    assert ran.code == 0
    assert "warning: '77 in' repeats the crew standard 'odd-height'" in ran.err
    assert run("check", "--book", book, "--strict").code == 1


def test_a_folder_that_is_not_there_is_wrong_usage(tmp_path: Path) -> None:
    ran = run("check", "--book", tmp_path / "nowhere")
    assert ran == Ran(2, "", f"there is no folder '{tmp_path / 'nowhere'}' that the book could be read from\n")


# compute


def test_without_a_name_the_calculators_are_listed() -> None:
    ran = run("compute")
    assert ran.code == 0
    assert "    wax-ring " in ran.out


def test_an_answer_has_labels_units_working_and_sources() -> None:
    ran = run("compute", "wax-ring", "rise=1/2 in floor above flange", "recess=5/8 in", "ring=1 in")
    assert ran.code == 0
    assert "    Gap from flange to bowl: 1-1/8 in\n" in ran.out
    assert "working:\n    gap = recess + floor above flange: 5/8 in + 1/2 in = 1-1/8 in\n" in ran.out
    assert "cautions:\n" in ran.out
    assert "sources:\n    International Plumbing Code, 405.4.1" in ran.out
    assert "not settled by this:\n" in ran.out


def test_the_answer_for_programs_is_json() -> None:
    ran = run("compute", "wax-ring", "rise=12.7 mm floor above flange", "recess=5/8 in", "--json")
    assert ran.code == 0
    answer = json.loads(ran.out)
    assert answer["outputs"]["gap"] == {
        "label": "Gap from flange to bowl",
        "shown": "1-1/8 in",
        "value": pytest.approx(1.125),
        "unit": "in",
    }
    assert answer["inputs"]["rise"]["value"] == pytest.approx(0.5)


def test_inputs_may_stand_after_an_option() -> None:
    """People put options where they come to mind."""
    ran = run("compute", "wax-ring", "--json", "rise=1/2 in floor above flange")
    assert ran.code == 0
    assert json.loads(ran.out)["inputs"]["rise"]["value"] == 0.5


def test_an_input_left_out_starts_at_the_crew_standard(book: Path) -> None:
    standards = book / "reference" / "values"
    for file in standards.glob("*.yaml"):
        text = file.read_text(encoding="utf-8")
        file.write_text(text.replace("wax-ring.most_spacer", "wax-ring.other"), encoding="utf-8")
    (standards / "more.yaml").write_text(
        "stack:\n  title: Stack\n  quantity: 3/4 in\n  basis: this crew's rule\n  means: The tallest.\n"
        "  default_of: [wax-ring.most_spacer]\n",
        encoding="utf-8",
    )
    ran = run("compute", "wax-ring", "--json", "--book", book)
    assert json.loads(ran.out)["inputs"]["most_spacer"]["shown"] == "3/4 in"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["wax-rin"], "there is no calculator 'wax-rin'\n    did you mean 'wax-ring'?\n"),
        (["xyzzy"], "there is no calculator 'xyzzy'\n    'compute' without a name lists the calculators\n"),
        (["wax-ring", "ris=1"], "'ris' is not an input of 'wax-ring'; did you mean 'rise'?\n"),
        (["wax-ring", "rise"], "'rise' is not NAME=VALUE: write an input with its value, like rise_from=...\n"),
        (["wax-ring", "rise=1", "rise=2"], "'rise' is given twice\n"),
    ],
)
def test_a_wrong_call_is_told(arguments: list[str], said: str) -> None:
    assert run("compute", *arguments) == Ran(2, "", said)


@pytest.mark.parametrize("given", ["rise=99 in", "rise=2 lb", "rise=high", "ring=9 in"])
def test_a_value_that_is_refused_is_told(given: str) -> None:
    ran = run("compute", "wax-ring", given)
    assert (ran.code, ran.out) == (2, "")
    assert len(ran.err.splitlines()) == 1


def test_a_missing_input_shows_them_all() -> None:
    ran = run("compute", "lock-preparation")
    assert (ran.code, ran.out) == (2, "")
    message, _, inputs = ran.err.partition("\n\nthe inputs of 'lock-preparation':\n")
    assert "is not given" in message
    thickness = next(line for line in inputs.splitlines() if line.startswith("    thickness "))
    assert "must be given" in thickness
    assert "from 3/4 in to 3 in" in thickness
    assert "(crew standard)" in inputs


def test_a_call_without_inputs_that_is_refused_shows_them_all() -> None:
    ran = run("compute", "strip-floor-take-off")
    assert ran.code == 2
    assert "the inputs of 'strip-floor-take-off':\n" in ran.err


# new


def fill_in(file: Path) -> None:
    """Write something in every place that a starting file leaves open."""
    file.write_text(file.read_text(encoding="utf-8").replace("FILL IN", "Here is"), encoding="utf-8")


def test_a_new_procedure_passes_once_it_is_filled_in(book: Path) -> None:
    ran = run("new", "plumbing/set-faucet", "--book", book)
    assert ran.code == 0
    assert ran.out.startswith("procedures/plumbing/set-faucet.yaml is written")
    assert 'title: "Set faucet"' in (book / "plumbing" / "set-faucet.yaml").read_text(encoding="utf-8")
    checked = run("check", "--book", book)
    assert checked.code == 1
    open_places = [line for line in checked.err.splitlines() if line.startswith("procedures/plumbing/set-faucet.yaml:")]
    assert len(open_places) == 13
    assert all(line.endswith(" error: 'FILL IN' still stands here") for line in open_places)
    fill_in(book / "plumbing" / "set-faucet.yaml")
    checked = run("check", "--book", book)
    assert (checked.code, "set-faucet" in checked.err) == (0, False)


def test_every_commented_field_of_a_new_procedure_is_one(book: Path) -> None:
    """Taking the comment marks away leaves fields that the book knows."""
    run("new", "plumbing/set-faucet", "--book", book)
    file = book / "plumbing" / "set-faucet.yaml"
    lines = file.read_text(encoding="utf-8").splitlines()
    bare = [line.replace("# ", "", 1) if line.lstrip().startswith("# ") else line for line in lines[4:]]
    file.write_text("\n".join(bare) + "\n", encoding="utf-8")
    fill_in(file)
    mistakes = [line for line in run("check", "--book", book).err.splitlines() if "set-faucet.yaml" in line]
    assert [line for line in mistakes if "'NAME'" not in line] == []
    assert len(mistakes) == 2


def test_a_new_job_passes_once_it_is_filled_in(book: Path) -> None:
    ran = run("new", "jobs/garden-house", "--book", book)
    assert (ran.code, ran.out.splitlines()[0].partition(" is written")[0]) == (0, "procedures/jobs/garden-house.yaml")
    checked = run("check", "--book", book)
    assert checked.code == 1
    assert "procedures/jobs/garden-house.yaml:5:10: error: 'FILL IN' still stands here" in checked.err
    fill_in(book / "jobs" / "garden-house.yaml")
    checked = run("check", "--book", book)
    assert (checked.code, "garden-house" in checked.err) == (0, False)


def test_every_commented_field_of_a_new_job_is_one(book: Path) -> None:
    """Taking the comment marks away leaves fields that a job has."""
    run("new", "jobs/garden-house", "--book", book)
    file = book / "jobs" / "garden-house.yaml"
    lines = file.read_text(encoding="utf-8").splitlines()[3:]
    fields = re.compile(r"^( *)# ((?:- \{|  |[a-z_-]+:).*)")
    bare = [fields.sub(r"\1\2", line) for line in lines]
    file.write_text("\n".join(bare) + "\n", encoding="utf-8")
    fill_in(file)
    mistakes = [line for line in run("check", "--book", book).err.splitlines() if "garden-house.yaml" in line]
    assert [line for line in mistakes if "'NAME'" not in line] == []
    assert len(mistakes) == 4


def test_a_new_trade_is_added_by_the_lines_of_the_message(book: Path) -> None:
    """Whoever adds a trade is told the file and the lines, and with them the procedure is written."""
    ran = run("new", "painting/walls", "--book", book)
    file = book / "reference" / "trades" / "trades.yaml"
    message, known, hint, *lines = ran.err.splitlines()
    assert (ran.code, message) == (2, "there is no trade 'painting' in the book")
    assert known.startswith("    the trades of the book are concrete, doors, ")
    assert hint == "    for a new one, add these lines to procedures/reference/trades/trades.yaml and try again:"
    file.write_text(file.read_text(encoding="utf-8") + "\n".join(lines) + "\n", encoding="utf-8")
    assert run("new", "painting/walls", "--book", book).code == 0


def test_the_name_may_be_written_as_the_path_of_the_file(book: Path) -> None:
    assert run("new", "procedures/doors/set-hinge.yaml", "--book", book).code == 0
    assert (book / "doors" / "set-hinge.yaml").is_file()


def test_nothing_is_overwritten(book: Path) -> None:
    run("new", "plumbing/set-faucet", "--book", book)
    file = book / "plumbing" / "set-faucet.yaml"
    file.write_text("mine", encoding="utf-8")
    ran = run("new", "plumbing/set-faucet", "--book", book)
    assert ran == Ran(2, "", "procedures/plumbing/set-faucet.yaml is there already, and is left as it is\n")
    assert file.read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ("plumbng/set-faucet", "there is no trade 'plumbng' in the book\n    did you mean 'plumbing'?\n"),
        ("xyzzy/set-faucet", "there is no trade 'xyzzy' in the book\n    the trades of the book are concrete, "),
        ("plumbing/Set Faucet", "'Set Faucet' cannot be a name: small letters, digits and single hyphens"),
        ("plumbing/../doors", "'../doors' cannot be a name"),
        ("set-faucet", "'set-faucet' is not TRADE/NAME"),
        ("plumbing/index", "'index': it would take the place of the page of its trade"),
        ("doors/toilet-set", "'toilet-set' is taken: procedures/plumbing/toilet-set.yaml has that name"),
    ],
)
def test_a_name_that_cannot_be_is_told(given: str, said: str) -> None:
    ran = run("new", given)
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err


def test_a_bad_name_gets_a_better_one() -> None:
    assert "write 'plumbing/set-faucet'?" in run("new", "plumbing/Set Faucet").err


# build


def test_the_book_builds_without_a_warning(tmp_path: Path, kept: Path) -> None:
    here = folder_of(PROCEDURES, tmp_path / "here", kept)
    ran = run("build", "--strict", "--site", tmp_path / "site", cwd=here)
    assert ran.code == 0, ran.err
    assert (tmp_path / "site" / "index.html").is_file()
    assert f"pages in {tmp_path / 'site'}" in ran.out
    made = (tmp_path / "site").stat().st_ino
    again = run("build", "--strict", "--site", tmp_path / "site", cwd=here)
    assert again.code == 0
    assert again.out.endswith("as they were: nothing has changed\n")
    assert (tmp_path / "site").stat().st_ino == made


def test_a_mistake_stops_the_build(book: Path, tmp_path: Path) -> None:
    file = next(book.glob("plumbing/*.yaml"))
    file.write_text(file.read_text(encoding="utf-8").replace("\nwho: ", "\nwhom: ", 1), encoding="utf-8")
    ran = run("build", "--book", book, "--site", tmp_path / "site")
    assert ran.code == 1
    assert f"{file.name}:" in ran.err
    assert "there is no field 'whom' here" in ran.err
    assert not (tmp_path / "site" / "index.html").exists()


def test_a_folder_with_other_things_is_not_emptied(tmp_path: Path) -> None:
    (tmp_path / "letters.txt").write_text("keep")
    ran = run("build", "--site", tmp_path)
    assert ran.code == 2
    assert "holds other files than a site" in ran.err
    assert (tmp_path / "letters.txt").read_text() == "keep"


def test_a_site_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    ran = run("build", "--site", tmp_path / "file" / "site")
    assert ran == Ran(2, "", f"{tmp_path / 'file' / 'site'}: Not a directory\n")


@pytest.mark.parametrize("site", [ROOT, PROCEDURES, PROCEDURES / "site", ROOT.parent])
def test_the_site_is_never_written_over_the_book(site: Path) -> None:
    ran = run("build", "--site", site)
    assert ran.code == 2
    assert "that folder would be removed" in ran.err


# serve


@pytest.fixture
def taken() -> Iterator[int]:
    """A port that somebody listens at."""
    with socket.socket() as listener:
        listener.bind(("127.0.0.1", 0))
        listener.listen()
        yield listener.getsockname()[1]


def test_a_free_port_is_taken_as_it_is(taken: int) -> None:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        free = probe.getsockname()[1]
    assert serve.free_port("127.0.0.1", free) == free
    assert serve.free_port("127.0.0.1", taken) > taken


def test_with_every_port_taken_another_is_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(serve, "_is_free", lambda *_: False)
    with pytest.raises(UsageError, match="all taken; name another one with --port"):
        serve.free_port("127.0.0.1", 65530)


def test_a_strange_address_is_told() -> None:
    ran = run("serve", "--address", "203.0.113.7")
    assert ran == Ran(2, "", "'203.0.113.7' is no address of this machine; 127.0.0.1 and 0.0.0.0 always are\n")


@pytest.mark.parametrize("port", ["0", "65536", "http", "-1"])
def test_a_strange_port_is_told(port: str) -> None:
    ran = run("serve", f"--port={port}")
    assert ran.code == 2
    assert "is not a port: a whole number from 1 to 65535 is wanted" in ran.err


def test_the_preview_shows_what_is_saved_and_ends_quietly(book: Path, taken: int, tmp_path: Path, kept: Path) -> None:
    """The whole evening of an author: the port is taken, a page is read, a file is saved, Ctrl-C."""
    log = tmp_path / "log"
    command = [sys.executable, "-m", "build_tools", "--port", str(taken)]
    with log.open("w") as output:
        process = subprocess.Popen(
            command,
            cwd=folder_of(book, tmp_path / "here", kept),
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            stdin=subprocess.DEVNULL,
            stdout=output,
            stderr=output,
            start_new_session=True,
        )
    try:
        until = time.monotonic() + WAIT_SECONDS
        while "Serving on http://" not in log.read_text():
            assert process.poll() is None, log.read_text()
            assert time.monotonic() < until, log.read_text()
            time.sleep(0.2)
        said = log.read_text()
        assert f"port {taken} is taken; " in said
        address = said.partition("Serving on ")[2].split()[0]
        page = f"{address}plumbing/toilet-set.html"
        assert "livereload" in _get(page)
        file = book / "plumbing" / "toilet-set.yaml"
        text = file.read_text(encoding="utf-8")
        file.write_text(text.replace("\ntitle: ", "\ntitle: Anew ", 1), encoding="utf-8")
        while "Anew " not in _get(page):
            assert time.monotonic() < until, log.read_text()
            time.sleep(0.2)
    finally:
        os.killpg(process.pid, signal.SIGINT)
        code = process.wait(timeout=WAIT_SECONDS)
    assert code == 0
    assert "Traceback" not in log.read_text()


def test_a_preview_that_is_told_to_end_leaves_nothing(tmp_path: Path) -> None:
    """The signal goes to the one process that was started, as from a supervisor or a terminal that is shut, while it
    builds or serves: it ends well, the port is free, no folder is left. Killed outright, it holds no port either."""
    pages = tmp_path / "pages"
    pages.mkdir()
    (pages / "index.md").write_text("# Home\n")
    (tmp_path / "slow.py").write_text("import time\ndef on_pre_build(config): time.sleep(60)\n")
    for name, more in (("quick", ""), ("slow", "hooks: [slow.py]\n")):
        text = f"site_name: A\ndocs_dir: {pages}\ntheme: mkdocs\nplugins: []\n{more}"
        (tmp_path / f"{name}.yml").write_text(text)
    for number, settings, said in (
        (signal.SIGTERM, "quick", "Serving on"),
        (signal.SIGHUP, "slow", "Building documentation"),
        (signal.SIGKILL, "quick", "Serving on"),
    ):
        port = serve.free_port("127.0.0.1", 8700)
        log, folder = tmp_path / f"{number.name}.log", tmp_path / number.name
        folder.mkdir()
        process = _preview(tmp_path / f"{settings}.yml", port, folder, log)
        until = time.monotonic() + WAIT_SECONDS
        while said not in log.read_text():
            assert process.poll() is None and time.monotonic() < until, log.read_text()
            time.sleep(0.05)
        if settings == "quick":
            _get(f"http://127.0.0.1:{port}/")
        process.send_signal(number)
        code = process.wait(timeout=WAIT_SECONDS)
        assert serve.free_port("127.0.0.1", port) == port
        if number != signal.SIGKILL:
            assert (code, list(folder.iterdir())) == (0, []), log.read_text()
            assert "Traceback" not in log.read_text()


def _preview(settings: Path, port: int, folder: Path, log: Path) -> subprocess.Popen[bytes]:
    """``serve`` with other settings than the book's, which are there at once; ``folder`` is for what it puts aside."""
    code = (
        "import sys, pathlib; from build_tools.commands import cli, settings; "
        "settings.OWN = pathlib.Path(sys.argv[1]); cli.end_as_by_ctrl_c(); sys.exit(cli.main(sys.argv[2:]))"
    )
    command = [sys.executable, "-c", code, str(settings), "serve", "--port", str(port)]
    with log.open("w") as output:
        return subprocess.Popen(
            command,
            cwd=settings.parent,
            env={**os.environ, "TMPDIR": str(folder), "PYTHONPATH": str(ROOT)},
            stdin=subprocess.DEVNULL,
            stdout=output,
            stderr=output,
        )


def _get(address: str) -> str:
    with urlopen(address, timeout=WAIT_SECONDS) as answer:
        return str(answer.read().decode())


# test


def test_every_part_runs_and_one_failure_fails_the_run(
    monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    bad = ("timeit", "-n", "1", "-r", "1", "raise SystemExit(1)")
    good = ("timeit", "-n", "1", "-r", "1", "print('second ran')")
    monkeypatch.setattr(test, "CHECKS", {"first": bad, "second": good})
    monkeypatch.setattr(test, "have_browser", lambda: True)
    monkeypatch.setattr(test, "have_tools", lambda: True)
    assert test.run(argparse.Namespace(pytest_arguments=[])) == 1
    out = capfd.readouterr().out
    assert "second ran" in out
    assert out.splitlines()[-1] == "FAILED: first; passed: browser, browser tools, second"


def test_the_quick_run_leaves_out_what_is_slow(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """It needs no browser, keeps what Python compiles, and hands all other words to pytest."""
    ran: list[tuple[list[str], dict[str, str]]] = []

    def programs(command: list[str], env: dict[str, str], **_: object) -> subprocess.CompletedProcess[str]:
        ran.append((command[2:], env))
        return subprocess.CompletedProcess(command, 0)

    monkeypatch.setenv("PYTHONDONTWRITEBYTECODE", "1")
    monkeypatch.setattr(subprocess, "run", programs)
    monkeypatch.setattr(test, "have_browser", lambda: pytest.fail("no browser is wanted"))
    assert test.run(argparse.Namespace(pytest_arguments=["--quick", "-k", "ring"])) == 0
    assert capsys.readouterr().out.splitlines()[-1] == "passed: format, lint, types, tests"
    assert ran[-1][0] == [*test.CHECKS["tests"], "-m", "not slow", "--ignore=tests/browser", "-k", "ring"]
    assert "PYTHONDONTWRITEBYTECODE" not in ran[-1][1]


def test_a_missing_browser_fails_the_run(
    monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    monkeypatch.setattr(test, "CHECKS", {})
    monkeypatch.setattr(shutil, "which", lambda _: None)
    monkeypatch.setattr(test, "have_tools", partial(test.have_tools, tmp_path))
    (tmp_path / "package-lock.json").write_text("{}")
    assert test.run(argparse.Namespace(pytest_arguments=[])) == 1
    captured = capfd.readouterr()
    assert captured.out.splitlines()[-1] == "FAILED: browser, browser tools"
    assert captured.err == (
        "Chromium and its driver are missing, and the page tests need them: install 'chromium' and 'chromium-driver' "
        "(on Debian and Ubuntu: apt-get install chromium chromium-driver).\n"
        "npm is missing, and what looks at pages needs it: install Node.js with npm.\n"
    )


def test_as_root_on_debian_the_browser_is_installed(monkeypatch: pytest.MonkeyPatch) -> None:
    here: set[str] = {"apt-get"}
    ran: list[list[str]] = []

    def apt(title: str, command: list[str], settings: dict[str, str]) -> tuple[int, str]:
        ran.append(command)
        here.update({"chromium", "chromedriver"} if "install" in command else ())
        return 0, ""

    monkeypatch.setattr(shutil, "which", lambda name: name if name in here else None)
    monkeypatch.setattr(os, "geteuid", lambda: 0)
    monkeypatch.setattr(progress, "run", apt)
    assert test.have_browser()
    assert [command[1] for command in ran] == ["update", "install"]
    assert ran[1][-2:] == ["chromium", "chromium-driver"]


def test_a_browser_that_is_here_is_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(shutil, "which", lambda name: name)
    monkeypatch.setattr(progress, "run", lambda *_: pytest.fail("nothing is to be installed"))
    assert test.have_browser()


def test_the_ci_runs_that_command_and_nothing_else() -> None:
    lines = (ROOT / ".ci" / "run").read_text(encoding="utf-8").splitlines()
    assert lines[-1] == "exec python3 -m build_tools test"
