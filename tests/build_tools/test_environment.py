"""The environment: when it counts as current, what it is made of, and what is said when it cannot be made."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from io import StringIO
from pathlib import Path

import pytest

from build_tools import environment, progress
from build_tools.environment import EnvironmentFailed, fingerprint, is_current, reason, version_of, write_stamp

NONE: frozenset[str] = frozenset()
TEST = frozenset({"test"})


@pytest.fixture
def checkout(tmp_path: Path) -> Path:
    """A folder with the two files that an environment is made of."""
    (tmp_path / "pyproject.toml").write_text("[project]\n")
    (tmp_path / "constraints.txt").write_text("mkdocs==1.6.1\n")
    return tmp_path


def test_a_folder_without_a_stamp_is_not_current(tmp_path: Path) -> None:
    assert not is_current(tmp_path, "hash", NONE)
    assert not is_current(tmp_path / "absent", "hash", NONE)


def test_a_stamp_holds_for_its_extras_and_fewer(tmp_path: Path) -> None:
    write_stamp(tmp_path, "hash", TEST)
    assert is_current(tmp_path, "hash", TEST)
    assert is_current(tmp_path, "hash", NONE)
    write_stamp(tmp_path, "hash", NONE)
    assert not is_current(tmp_path, "hash", TEST)


def test_a_stamp_of_other_pins_does_not_hold(tmp_path: Path) -> None:
    write_stamp(tmp_path, "hash", TEST)
    assert not is_current(tmp_path, "another", TEST)


@pytest.mark.parametrize("text", ["", "no JSON", "[]", '{"made_of": "hash"}', '{"made_of": "hash", "extras": 3}'])
def test_a_damaged_stamp_does_not_hold(tmp_path: Path, text: str) -> None:
    (tmp_path / "stamp.json").write_text(text)
    assert not is_current(tmp_path, "hash", NONE)


def test_the_fingerprint_is_the_same_for_the_same(checkout: Path) -> None:
    assert fingerprint(checkout, "3.11.7") == fingerprint(checkout, "3.11.7")


@pytest.mark.parametrize("name", ["pyproject.toml", "constraints.txt"])
def test_the_fingerprint_follows_each_file(checkout: Path, name: str) -> None:
    before = fingerprint(checkout, "3.11.7")
    (checkout / name).write_text("changed\n")
    assert fingerprint(checkout, "3.11.7") != before


def test_the_fingerprint_follows_the_python(checkout: Path) -> None:
    assert fingerprint(checkout, "3.11.7") != fingerprint(checkout, "3.12.1")


def test_checkouts_at_two_places_ask_for_the_same_environment(checkout: Path, tmp_path: Path) -> None:
    """Else two that share one would each install it anew, in turn."""
    other = tmp_path / "other"
    other.mkdir()
    for name in environment.MADE_OF:
        (other / name).write_bytes((checkout / name).read_bytes())
    assert fingerprint(other, "3.11.7") == fingerprint(checkout, "3.11.7")


def test_each_checkout_runs_its_own_code(tmp_path: Path) -> None:
    """Also where two share an environment, and after one was moved."""
    one, two = tmp_path / "one", tmp_path / "two"
    for place in (one, two):
        (place / "build_tools").mkdir(parents=True)
        (place / "build_tools" / "__init__.py").touch()
    subprocess.run([sys.executable, "-m", "venv", "--without-pip", str(one / ".venv")], check=True)
    environment.link_to_checkout(one / ".venv")
    (two / ".venv").symlink_to(one / ".venv")
    assert [_code_of(place) for place in (one, two)] == [one, two]
    moved = one.rename(tmp_path / "moved")
    assert _code_of(moved) == moved


def _code_of(checkout: Path) -> Path:
    """The checkout whose code the Python of that checkout's environment finds, from any folder."""
    ask = [
        str(environment.python_in(checkout / ".venv")),
        "-I",
        "-c",
        "import build_tools; print(build_tools.__file__)",
    ]
    said = subprocess.run(ask, cwd=checkout.parent, capture_output=True, text=True, check=True).stdout
    return Path(said.strip()).parent.parent


def test_this_python_has_a_version_and_an_absent_one_none(tmp_path: Path) -> None:
    assert version_of(Path(sys.executable)) == "{}.{}.{}".format(*sys.version_info[:3])
    assert version_of(tmp_path / "python") is None


def test_a_python_that_fails_has_no_version(tmp_path: Path) -> None:
    broken = tmp_path / "python"
    broken.write_text("#!/bin/sh\nexit 1\n")
    broken.chmod(0o755)
    assert version_of(broken) is None


@pytest.fixture
def made(checkout: Path, monkeypatch: pytest.MonkeyPatch) -> list[list[str]]:
    """The programs that were run instead of real ones, with an environment that answers as this Python."""
    ran: list[list[str]] = []

    def run(title: str, command: list[str], settings: dict[str, str] | None = None) -> tuple[int, str]:
        ran.append(command)
        if "venv" in command:
            (checkout / ".venv" / "lib" / "python3" / "site-packages").mkdir(parents=True)
            environment.python_in(checkout / ".venv").parent.mkdir(parents=True)
            environment.python_in(checkout / ".venv").symlink_to(sys.executable)
        return 0, ""

    monkeypatch.setattr(environment, "ROOT", checkout)
    monkeypatch.setattr(environment, "FOLDER", checkout / ".venv")
    monkeypatch.setattr(progress, "run", run)
    return ran


def test_a_fresh_checkout_gets_an_environment_once(made: list[list[str]], checkout: Path) -> None:
    environment.ensure(NONE)
    assert [("venv" in command, "pip" in command) for command in made] == [(True, False), (False, True)]
    assert made[1][-1] == str(checkout)
    environment.ensure(NONE)
    assert len(made) == 2


def test_a_second_checkout_that_shares_it_installs_nothing(
    made: list[list[str]], checkout: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    environment.ensure(NONE)
    second = tmp_path / "second"
    second.mkdir()
    for name in environment.MADE_OF:
        (second / name).write_bytes((checkout / name).read_bytes())
    (second / ".venv").symlink_to(checkout / ".venv")
    monkeypatch.setattr(environment, "ROOT", second)
    monkeypatch.setattr(environment, "FOLDER", second / ".venv")
    environment.ensure(NONE)
    assert len(made) == 2
    assert not (second / ".cache").exists(), "both wait for one lock"


def test_extras_are_added_and_stay(made: list[list[str]], checkout: Path) -> None:
    environment.ensure(TEST)
    assert made[-1][-1] == f"{checkout}[test]"
    environment.ensure(NONE)
    assert len(made) == 2
    (checkout / "constraints.txt").write_text("changed\n")
    environment.ensure(NONE)
    assert made[-1][-1] == f"{checkout}[test]"


def test_a_failed_install_leaves_no_stamp(
    made: list[list[str]], checkout: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    environment.ensure(NONE)
    (checkout / "constraints.txt").write_text("changed\n")
    monkeypatch.setattr(progress, "run", lambda *_: (1, "ERROR: No space left on device"))
    with pytest.raises(EnvironmentFailed, match="disk is full"):
        environment.ensure(NONE)
    assert not (checkout / ".venv" / "stamp.json").exists()


@pytest.mark.parametrize("part", ["venv", "ensurepip"])
def test_a_python_without_the_parts_names_the_package(
    made: list[list[str]], monkeypatch: pytest.MonkeyPatch, part: str
) -> None:
    real = importlib.util.find_spec
    monkeypatch.setattr(importlib.util, "find_spec", lambda name: None if name == part else real(name))
    with pytest.raises(EnvironmentFailed, match=r"apt-get install python3\.\d+-venv"):
        environment.ensure(NONE)


@pytest.mark.parametrize(
    ("printed", "said"),
    [
        ("NewConnectionError('<...>: Failed to establish a new connection", "no connection to the package index"),
        ("[Errno -3] Temporary failure in name resolution", "no connection to the package index"),
        ("SSLError(SSLCertVerificationError(1, '[SSL: CERTIFICATE_VERIFY_FAILED]", "certificate is not trusted"),
        ("ERROR: No matching distribution found for numpy==2.4.6", "no package numpy==2.4.6 for Python 3."),
        ("OSError: [Errno 28] No space left on device", "The disk is full"),
        ("something\nnobody foresaw", "    nobody foresaw"),
    ],
)
def test_what_pip_says_is_told_in_words(printed: str, said: str) -> None:
    assert said in reason(printed)


def test_without_a_connection_a_package_is_not_said_to_be_missing() -> None:
    """Offline, pip ends with 'No matching distribution', which is not the reason."""
    printed = "ProxyError('Cannot connect to proxy.')\nERROR: No matching distribution found for mkdocs==1.6.1"
    assert "no connection" in reason(printed)


def test_progress_on_a_log_is_a_line_every_two_seconds() -> None:
    times = iter([0.0, 0.0, 0.5, 2.5, 9.0])
    log = StringIO()
    shown = progress.Progress("installing", log, lambda: next(times))
    for what in ("starting", "mkdocs", "pillow"):
        shown.show(what)
    shown.end("done")
    assert log.getvalue().splitlines() == [
        "[   0 s] installing: starting",
        "[   2 s] installing: pillow",
        "[   9 s] installing: done",
    ]


def test_a_program_gives_its_code_and_all_that_it_printed(capsys: pytest.CaptureFixture[str]) -> None:
    command = [sys.executable, "-c", "print('Collecting mkdocs==1.6.1'); raise SystemExit(3)"]
    assert progress.run("trying", command) == (3, "Collecting mkdocs==1.6.1\n")
    assert capsys.readouterr().err.endswith("trying: failed\n")


def test_nothing_but_the_standard_library_is_needed_before_the_environment(tmp_path: Path) -> None:
    """On a fresh machine the help and the making of the environment run with Python alone."""
    code = (
        "import sys; sys.path.insert(0, sys.argv[1]); from build_tools.commands import cli; "
        "outside = {name.partition('.')[0] for name in sys.modules} - set(sys.stdlib_module_names); "
        "print(sorted(outside - {'__main__', 'build_tools'}))"
    )
    command = [sys.executable, "-I", "-S", "-c", code, str(environment.ROOT)]
    ran = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"
