"""Calls of Python's own functions."""

from __future__ import annotations

import ast

from build_tools.browser.compiler.expressions import Js
from build_tools.browser.compiler.sources import HOST, local_name, script_name
from build_tools.browser.compiler.types import BOOL, FLOAT, INT, NEVER, NUMBERS, STR, Type, dict_of, joined, list_of
from build_tools.browser.compiler.walks import LAZY, Walks

INSTEAD = {
    "filter": "write a comprehension", "isinstance": "annotate the type", "map": "write a comprehension",
    "next": "write a loop", "print": "give the text back", "repr": "write the text", "set": "use a list",
} | dict.fromkeys(LAZY, "walk through it at once, or put list() around it")  # fmt: skip


class Builtins(Walks):
    """Writes calls of Python's own functions: each ``call_`` method one of them."""

    def own_call(self, node: ast.Call, name: str) -> Js:
        """A call of one of them."""
        write = getattr(self, f"call_{name}", None)
        if write is None:
            return self.refuse(node, f"'{name}()'" + (f": {INSTEAD[name]}" if name in INSTEAD else ""))
        found: Js = write(node)
        return found

    def _one(self, node: ast.Call) -> Js:
        """The only argument."""
        return self.expr(self.arguments(node, 1, 1)[0][0])

    def call_abs(self, node: ast.Call) -> Js:
        given = self._one(node)
        return Js(f"{self.math('abs')}({given.code})", INT if given.type == BOOL else given.type)

    def call_len(self, node: ast.Call) -> Js:
        given = self._one(node)
        if given.type.kind in ("int", "float", "bool", "none", "record"):
            return self.refuse(node, f"'len()' of {given.type.kind}")
        code = f"{given.code}.length" if given.type.kind in ("list", "tuple") else self.helper("len", given.code)
        return Js(code, INT)

    def call_str(self, node: ast.Call) -> Js:
        given = self._one(node)
        code = self.text(node, given)
        return Js(f"`${{{code}}}`" if given.type == INT else code, STR)

    def call_bool(self, node: ast.Call) -> Js:
        given = self._one(node)
        test = self.truth_of(given)
        return Js(f"!!{test}" if given.type == STR else test, BOOL)

    def call_float(self, node: ast.Call) -> Js:
        given = self._one(node)
        if given.code.startswith('"'):
            return self.refuse(node, "'float()' of a written text: write the figure")
        return Js(given.code if given.type in NUMBERS else f"Number({given.code})", FLOAT)

    def call_int(self, node: ast.Call) -> Js:
        given = self._one(node)
        if given.type == STR:
            return self.refuse(node, "'int()' of a text: call float(), whose text is looked at before")
        return Js(f"{self.math('trunc')}({given.code})", INT)

    def call_round(self, node: ast.Call) -> Js:
        if len(node.args) != 1:
            return self.refuse(node, "'round()' to places: call rounded() or decimal() of calculators.writing")
        return Js(self.helper("round", self._one(node).code), INT)

    # Lists and dicts

    def call_list(self, node: ast.Call) -> Js:
        given, _ = self.arguments(node, 0, 1)
        if not given:
            return Js("[]", list_of(NEVER))
        walk = self.walk(given[0])
        return Js(f"[...{walk.code}]", list_of(walk.item))

    def call_tuple(self, node: ast.Call) -> Js:
        found = self.call_list(node)
        return Js(found.code, Type("tuple", found.type.of))

    def call_dict(self, node: ast.Call) -> Js:
        given, _ = self.arguments(node, 0, 1)
        if not given:
            return Js("({})", dict_of(NEVER))
        found = None if isinstance(given[0], ast.GeneratorExp | ast.Call) else self.expr(given[0])
        if found is not None and found.type.kind == "dict":
            return Js(f"({{...{found.code}}})", found.type)
        walk = self.walk(given[0])
        return Js(self.helper("dict", walk.code), dict_of(walk.item.at(1)))

    def call_sorted(self, node: ast.Call) -> Js:
        (source,), named = self.arguments(node, 1, 1, "key", "reverse")
        walk = self.walk(source)
        key = [self._key_of(named.get("key"), walk.item)] if named else []
        turned = [self.truth(named["reverse"])] if "reverse" in named else []
        return Js(self.helper("sorted", walk.code, *key, *turned), list_of(walk.item))

    def _key_of(self, node: ast.expr | None, item: Type) -> str:
        """What things are compared by: a function of a module, or a lambda."""
        if node is None:
            return "undefined"
        if isinstance(node, ast.Lambda) and ast.unparse(node.args).isidentifier():
            with self.scope():
                self.scopes[-1][node.args.args[0].arg] = item
                return f"({local_name(node.args.args[0].arg)}) => {self.expr(node.body).code}"
        if isinstance(node, ast.Name) and self.local(node.id) is None:
            source, origin = self.module.resolve(node.id)
            if source[1] in origin.functions and source not in HOST:
                self.uses.add(source)
                return script_name(source)
        return self.refuse(node, "'key=' of something else: give a lambda or a function of a module").code

    def call_min(self, node: ast.Call) -> Js:
        return self._extreme(node, "min")

    def call_max(self, node: ast.Call) -> Js:
        return self._extreme(node, "max")

    def _extreme(self, node: ast.Call, name: str) -> Js:
        given, named = self.arguments(node, 1, max(len(node.args), 1), "key", "default")
        items = [self.expr(each) for each in given] if len(given) > 1 else []
        if (
            items
            and not named
            and any(each.type in NUMBERS for each in items)
            and all(each.type != BOOL for each in items)
        ):
            return Js(
                f"{self.math(name)}({', '.join(each.code for each in items)})", joined(each.type for each in items)
            )
        source = ast.copy_location(ast.List(given), node) if items else given[0]
        walk = self.walk(source)
        if not named and walk.item in NUMBERS:
            return Js(f"{self.math(name)}(...{walk.code})", walk.item)
        default = [self.expr(named["default"])] if "default" in named else []
        code = self.helper(name, walk.code, self._key_of(named.get("key"), walk.item), *(each.code for each in default))
        return Js(code, joined([walk.item, *(each.type for each in default)]))

    def call_sum(self, node: ast.Call) -> Js:
        (source, *rest), named = self.arguments(node, 1, 2, "start")
        walk, start = self.array(source), [self.expr(each) for each in (*rest, *named.values())]
        made = joined([INT if walk.type.item == BOOL else walk.type.item, *(each.type for each in start)])
        if made.kind not in ("int", "float", "any", "never") or any(each.type not in NUMBERS for each in start):
            return self.refuse(node, "'sum()' of what are no figures: use a loop")
        return Js(self.helper("sum", walk.code, *(each.code for each in start)), made)

    def call_any(self, node: ast.Call) -> Js:
        return self._decided(node, "some")

    def call_all(self, node: ast.Call) -> Js:
        return self._decided(node, "every")

    def _decided(self, node: ast.Call, method: str) -> Js:
        """Whether one or every item is true; a generator stops at the first that decides."""
        (source,), _ = self.arguments(node, 1, 1)
        if isinstance(source, ast.GeneratorExp):
            return Js(self.comprehension(source.generators, lambda: self.truth(source.elt), method), BOOL)
        given = self.array(source)
        return Js(f"{given.code}.{method}((one) => {self.truth_of(Js('one', given.type.item))})", BOOL)
