"""What several tests share: the built site, made once a run, and the option that renews golden files."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import settings

from build_tools.commands.site import BOOK
from tests.builds import build_site
from tests.once import once, shared_folder, solved_plans
from tests.site_pages import SitePage, read_site

SLOW = {"kept", "site", "browser", "browsers"}
"""The fixtures that build a site or start a browser."""
settings.register_profile("book", deadline=None, derandomize=True)
settings.register_profile("anew", deadline=None)
settings.load_profile("book")
# A busy machine is no mistake: how long a drawn case takes is not what these tests are about. The same cases are drawn
# each time, so that a run says something about the change; `--hypothesis-profile=anew` draws others.


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add our own option to pytest's."""
    parser.addoption("--update-golden", action="store_true", help="write the golden files anew in place of comparing")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark as slow what takes a fixture that is."""
    for item in items:
        if SLOW & set(getattr(item, "fixturenames", ())):
            item.add_marker("slow")


@pytest.fixture(scope="session")
def run_folder(tmp_path_factory: pytest.TempPathFactory, worker_id: str) -> Path:
    """A folder that all workers of this run share."""
    return shared_folder(tmp_path_factory, worker_id)


@pytest.fixture(scope="session")
def kept(run_folder: Path) -> Path:
    """Where the builds of this run keep what takes long to make: fonts, scripts, plots, plans.

    It begins empty but for the solved plans of earlier runs.
    """

    def make(folder: Path) -> None:
        folder.mkdir()
        (folder / "plans").symlink_to(solved_plans())

    return once(run_folder / "kept", make)


@pytest.fixture(scope="session")
def site(run_folder: Path, kept: Path) -> Path:
    """The folder of the built site, which all workers only read."""
    return once(run_folder / "site", lambda place: build_site(BOOK, place, kept))


@pytest.fixture(scope="session")
def pages(site: Path) -> dict[str, SitePage]:
    """Every page of the built site by its address from the top."""
    return read_site(site)
