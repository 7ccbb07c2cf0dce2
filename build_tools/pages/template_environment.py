"""How the templates are read and filled: Jinja, spared what it would do again on each of a thousand pages."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from jinja2.runtime import Context
from markupsafe import escape

from build_tools.pages.words import words

TEMPLATES = Path(__file__).parent / "templates"
_WORD = re.compile(r"\{\{ t\.(\w+) \}\}")


class _Context(Context):
    """Calls what a template calls, and no more.

    Jinja looks first whether it wants to be given the context. Nothing that our templates call does, and a page calls
    some seven hundred times.
    """

    def call(
        self, called: Callable[..., Any], /, *args: Any, _loop_vars: Any = None, _block_vars: Any = None, **kwargs: Any
    ) -> Any:
        return called(*args, **kwargs)


class _Loader(FileSystemLoader):
    """Puts the fixed words into a template when it is read, so that ``{{ t.why }}`` is not looked up on each page."""

    def __init__(self, folder: Path, fixed: Mapping[str, str]) -> None:
        super().__init__(folder)
        self._fixed = fixed

    def get_source(self, environment: Environment, template: str) -> tuple[str, str, Callable[[], bool]]:
        source, path, fresh = super().get_source(environment, template)
        return _WORD.sub(self._word, source), path, fresh

    def _word(self, written: re.Match[str]) -> str:
        """The word; one that there is not is left, and complained of when the template is filled."""
        return str(escape(self._fixed[written[1]])) if written[1] in self._fixed else written[0]


class _Templates(Environment):
    context_class = _Context


@lru_cache
def template_environment(language: str = "en") -> Environment:
    """The templates of the pages in a language."""
    return _Templates(
        loader=_Loader(TEMPLATES, words(language)),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
