"""What several tests share: the built site, made once for each worker, and the option that renews golden files."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from hypothesis import settings

from build_tools.commands.site import BOOK
from build_tools.environment import ROOT
from tests.builds import build_site
from tests.site_pages import SitePage, read_site

PLANS = ROOT / ".cache" / "plans"
settings.register_profile("book", deadline=None, derandomize=True)
settings.register_profile("anew", deadline=None)
settings.load_profile("book")
# A busy machine is no mistake: how long a drawn case takes is not what these tests are about. The same cases are drawn
# each time, so that a run says something about the change; `--hypothesis-profile=anew` draws others.


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add our own option to pytest's."""
    parser.addoption("--update-golden", action="store_true", help="write the golden files anew in place of comparing")


@pytest.fixture(scope="session")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder where builds keep what takes long to make, such as the cut fonts.

    Plans that a build of this checkout made before are taken along: each lies under a digest of what went into it.
    """
    folder = tmp_path_factory.mktemp("kept")
    if PLANS.is_dir():
        shutil.copytree(PLANS, folder / PLANS.name)
    return folder


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory, kept: Path) -> Path:
    """The folder of the built site."""
    return build_site(BOOK, tmp_path_factory.mktemp("built") / "site", kept)


@pytest.fixture(scope="session")
def pages(site: Path) -> dict[str, SitePage]:
    """Every page of the built site by its address from the top."""
    return read_site(site)
