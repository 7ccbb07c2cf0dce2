"""What is walked through, and what holds several: loops, comprehensions, lists, dicts, f-strings."""

from __future__ import annotations

import ast
import json
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from typing import NamedTuple

from build_tools.browser.compiler.expressions import SCALARS, Expressions, Js
from build_tools.browser.compiler.sources import local_name
from build_tools.browser.compiler.types import ANY, FLOAT, INT, NEVER, STR, Type, dict_of, joined, list_of

VIEWS = ("items", "keys", "values")
LAZY = ("enumerate", "range", "reversed", "zip")
"""Calls that give no list, but something to walk through at once."""


class Walk(NamedTuple):
    """What a loop runs over: script, the type of an item, and whether it is an array."""

    code: str
    item: Type
    is_array: bool = True


class Walks(Expressions):
    """Writes what is walked through."""

    def walk(self, node: ast.expr) -> Walk:
        """What can be walked through, as an array or as something that gives its items in turn."""
        if isinstance(node, ast.GeneratorExp):
            found = self.visit_ListComp(ast.copy_location(ast.ListComp(node.elt, node.generators), node))
            return Walk(found.code, found.type.item)
        if isinstance(node, ast.Call) and self.builtin(node) in LAZY:
            found_walk: Walk = getattr(self, f"_{self.builtin(node)}")(node)
            return found_walk
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in VIEWS:
            return self._view(node, node.func)
        given = self.expr(node)
        kind = given.type.kind
        if kind in SCALARS:
            self.refuse(node, f"a {kind} is nothing to walk through")
        if kind == "dict" and (given.type.digits or given.type.item not in (STR, ANY)):
            self.refuse(node, "a dict with figures as keys, which script puts in order of size: walk through a list")
        if kind in ("list", "tuple"):
            return Walk(given.code, given.type.item)
        if kind == "dict":
            return Walk(f"Object.keys({given.code})", given.type.item)
        return Walk(given.code, STR, False) if kind == "str" else Walk(self.helper("each", given.code), given.type.item)

    def array(self, node: ast.expr) -> Js:
        """The same as a list, for a method of arrays."""
        walk = self.walk(node)
        return Js(walk.code if walk.is_array else f"[...{walk.code}]", list_of(walk.item))

    def arguments(
        self, node: ast.Call, fewest: int, most: int, *names: str
    ) -> tuple[list[ast.expr], dict[str, ast.expr]]:
        """The arguments of a call by place and by name; refused where there are others or not so many."""
        named = {str(each.arg): each.value for each in node.keywords}
        if fewest <= len(node.args) <= most and named.keys() <= set(names):
            return node.args, named
        self.refuse(node, f"'{ast.unparse(node.func)}()' with these arguments")
        return [ast.copy_location(ast.List([]), node)] * most, {}

    def _view(self, node: ast.Call, called: ast.Attribute) -> Walk:
        self.arguments(node, 0, 0)
        owner = self.expr(called.value)
        if owner.type.kind not in ("dict", "any", "never") or owner.type.digits:
            self.refuse(node, f"'.{called.attr}()' of what is no dict with words as keys")
        value, at = owner.type.at(None), VIEWS.index(called.attr)
        item = (Type("tuple", (STR, value)), STR, value)[at]
        return Walk(f"Object.{('entries', 'keys', 'values')[at]}({owner.code})", item)

    def _enumerate(self, node: ast.Call) -> Walk:
        (source, *start), named = self.arguments(node, 1, 2, "start")
        walk = self.walk(source)
        code = self.helper("enumerate", walk.code, *(self.expr(each).code for each in (*start, *named.values())))
        return Walk(code, Type("tuple", (INT, walk.item)), False)

    def _range(self, node: ast.Call) -> Walk:
        given, _ = self.arguments(node, 1, 3)
        return Walk(self.helper("range", *(self.expr(each).code for each in given)), INT)

    def _reversed(self, node: ast.Call) -> Walk:
        (source,), _ = self.arguments(node, 1, 1)
        walk = self.walk(source)
        return Walk(f"[...{walk.code}].reverse()", walk.item)

    def _zip(self, node: ast.Call) -> Walk:
        given, _ = self.arguments(node, 1, len(node.args), "strict")
        walks = [self.walk(each) for each in given]
        return Walk(
            self.helper("zip", *(each.code for each in walks)), Type("tuple", tuple(each.item for each in walks)), False
        )

    # Comprehensions

    def visit_ListComp(self, node: ast.ListComp) -> Js:
        types: list[Type] = []

        def item() -> str:
            found = self.expr(node.elt)
            types.append(found.type)
            return found.code

        return Js(self.comprehension(node.generators, item, "map"), list_of(joined(types)))

    def visit_DictComp(self, node: ast.DictComp) -> Js:
        types: list[Type] = []

        def item() -> str:
            key, value = self.key(node.key), self.expr(node.value)
            types.append(value.type)
            return f"[{key}, {value.code}]"

        return Js(self.helper("dict", self.comprehension(node.generators, item, "map")), dict_of(joined(types)))

    def comprehension(self, parts: Sequence[ast.comprehension], item: Callable[[], str], method: str) -> str:
        """The loops of a comprehension, the items by a method of arrays: ``map``, ``some`` or ``every``."""
        part, *rest = parts
        source = self.array(part.iter)
        with self.scope():
            pattern = self.pattern(part.target, source.type.item)
            tests = [self.truth(each) for each in part.ifs]
            inner = self.comprehension(rest, item, method) if rest else item()
        test = f"({' && '.join(tests)})"
        if method == "map" and (tests or rest):
            inner = inner if rest else f"[{inner}]"
            return f"{source.code}.flatMap(({pattern}) => {f'{test} ? {inner} : []' if tests else inner})"
        if tests:
            inner = f"{test} && {inner}" if method == "some" else f"!{test} || {inner}"
        return f"{source.code}.{method}(({pattern}) => {inner})"

    @contextmanager
    def scope(self) -> Iterator[None]:
        """Names of a comprehension or a lambda."""
        self.scopes.append({})
        yield
        self.scopes.pop()

    def pattern(self, target: ast.expr, type: Type) -> str:
        """The names that items are taken apart into."""
        if isinstance(target, ast.Name):
            self.scopes[-1][target.id] = type
            return local_name(target.id)
        if not isinstance(target, ast.Tuple):
            return self.refuse(target, "a target that is no name").code
        return f"[{', '.join(self.pattern(each, type.at(at)) for at, each in enumerate(target.elts))}]"

    # Texts, lists, dicts

    def visit_JoinedStr(self, node: ast.JoinedStr) -> Js:
        parts = []
        for each in node.values:
            if isinstance(each, ast.Constant):
                parts.append(
                    json.dumps(each.value)[1:-1].replace("`", "\\`").replace("${", "\\${").replace("<", "\\u003c")
                )
            elif isinstance(each, ast.FormattedValue):
                if each.format_spec is not None or each.conversion != -1:
                    self.refuse(each, "a format in an f-string: call decimal() or another writer")
                parts.append(f"${{{self.text(each.value, self.expr(each.value))}}}")
        return Js(f"`{''.join(parts)}`", STR)

    def text(self, node: ast.expr, given: Js) -> str:
        """A value as Python writes it."""
        if given.type in (INT, STR):
            return given.code
        if given.type == FLOAT:
            return self.refuse(node, "a figure with a point as text: call decimal() or another writer").code
        if given.type.kind in ("list", "tuple", "dict", "record"):
            return self.refuse(node, f"a {given.type.kind} as text: write its parts").code
        return self.helper("str", given.code)

    def visit_List(self, node: ast.List) -> Js:
        items = [self._item(each) for each in node.elts]
        return Js(f"[{', '.join(each.code for each in items)}]", list_of(joined(each.type for each in items)))

    def visit_Tuple(self, node: ast.Tuple) -> Js:
        items = [self._item(each) for each in node.elts]
        types = tuple(each.type for each in items)
        is_open = any(isinstance(each, ast.Starred) for each in node.elts)
        return Js(f"[{', '.join(each.code for each in items)}]", Type("tuple", (joined(types),) if is_open else types))

    def _item(self, node: ast.expr) -> Js:
        if isinstance(node, ast.Starred):
            walk = self.walk(node.value)
            return Js(f"...{walk.code}", walk.item)
        return self.expr(node)

    def visit_Dict(self, node: ast.Dict) -> Js:
        parts, types, is_computed = [], [], any(not isinstance(key, ast.Constant | None) for key in node.keys)
        for key, value in zip(node.keys, map(self.expr, node.values), strict=True):
            if key is None:
                if is_computed:
                    self.refuse(node, "'**' beside keys that are worked out: fill the dict line by line")
                if value.type.digits:
                    self.refuse(node, "a dict with figures as keys can only be looked up")
                parts.append(f"...{value.code}")
                types.append(value.type.at(None))
            else:
                parts.append(f"[{self.key(key)}, {value.code}]" if is_computed else f"{self.key(key)}: {value.code}")
                types.append(value.type)
        inside = ", ".join(parts)
        return Js(self.helper("dict", f"[{inside}]") if is_computed else f"({{{inside}}})", dict_of(joined(types)))

    def key(self, node: ast.expr) -> str:
        """A key of a dict: a text, and none that script would put in another place."""
        found = self.expr(node)
        if found.type not in (STR, ANY, NEVER):
            self.refuse(node, "a key that is no text: use a text")
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and is_moved(node.value):
            self.refuse(node, "a key that script would put elsewhere in the dict: begin it with a letter")
        return found.code


def is_moved(key: str) -> bool:
    """Whether script gives a key of an object another place, or another meaning.

    >>> is_moved("12"), is_moved("1.5"), is_moved("__proto__")
    (True, False, True)
    """
    return key == "__proto__" or (key.isascii() and key.isdigit())
