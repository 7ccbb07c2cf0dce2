"""A function of the subset as script.

Its types are found while it is written: a first time with the types that are declared, and again until what the names
are given no longer changes them.
"""

from __future__ import annotations

import ast
from collections.abc import Iterable
from dataclasses import dataclass

from build_tools.book.diagnostics import Diagnostic
from build_tools.browser.compiler.calls import Calls
from build_tools.browser.compiler.expressions import Js
from build_tools.browser.compiler.names import Names
from build_tools.browser.compiler.refusals import instead
from build_tools.browser.compiler.sources import Module, Name, local_name, script_name
from build_tools.browser.compiler.types import ANY, NEVER, STR, Type, families_of, join, list_of
from calculators.declaration import Calculator

ROUNDS = 12


@dataclass(frozen=True, slots=True)
class WrittenFunction:
    """A function or a constant in script, and the names of others that it uses."""

    code: str
    uses: frozenset[Name] = frozenset()


def write_function(module: Module, name: str) -> tuple[WrittenFunction, list[Diagnostic]]:
    """A function of a module in script, and what of it the page cannot run."""
    function = _Function(module, module.functions[name])
    code = function.write()
    found = {(getattr(node, "lineno", 1), getattr(node, "col_offset", 0) + 1, text) for node, text in function.refused}
    problems = [Diagnostic(module.file, line, column, "error", text) for line, column, text in sorted(found)]
    return WrittenFunction(code, frozenset(function.uses)), problems


class _Function(Calls):
    """Writes the statements of one function."""

    def __init__(self, module: Module, tree: ast.FunctionDef) -> None:
        super().__init__(module)
        self.tree = tree
        self.hints = module.hints(tree.name)
        arguments = tree.args
        self.parameters = [*arguments.posonlyargs, *arguments.args, *arguments.kwonlyargs]
        self.declared = {each.arg: self.hints.get(each.arg, ANY) for each in self.parameters}
        names = Names(tree.body)
        self.declared |= {name: module.hint(each) for name, each in names.annotations.items()}
        self.given: dict[str, Type] = dict.fromkeys(names.stored, NEVER)
        self.begins: dict[ast.AST, set[str]] = {}
        for name in self.given.keys() - {each.arg for each in self.parameters}:
            self.begins.setdefault(names.beginning(name) or tree, set()).add(name)

    def write(self) -> str:
        for _ in range(ROUNDS):
            before = self.given | self.declared
            self.locals, self.temps, self.uses, self.refused = dict(before), 0, set(), []
            body = self.block(self.tree.body)
            if self.given | self.declared == before:
                break
        else:
            self.refuse(self.tree, "names whose types do not settle: annotate them")
        if not _returns(self.tree.body) and any(
            isinstance(each, ast.Return) and each.value for each in ast.walk(self.tree)
        ):
            body += "return null;\n"
        arguments = self.tree.args
        is_wrapped = self.tree.decorator_list and not isinstance(self.module.names[self.tree.name], Calculator)
        if arguments.vararg or arguments.kwarg or is_wrapped:
            self.refuse(self.tree, "'*args', '**kwargs' or a decorator: write the parameters out")
        own = [local_name(name) for name in self.given if name in self.begins.get(self.tree, ())]
        own += [f"${number + 1}" for number in range(self.temps)]
        start = f"let {', '.join(own)};\n" if own else ""
        name = script_name((self.module.name, self.tree.name))
        return f"const {name} = ({', '.join(self._parameters())}) => {{\n{start}{body}}};"

    def _parameters(self) -> Iterable[str]:
        arguments = self.tree.args
        required = len(arguments.posonlyargs) + len(arguments.args) - len(arguments.defaults)
        defaults = [*[None] * required, *arguments.defaults, *arguments.kw_defaults]
        self.locals = {}
        for each, default in zip(self.parameters, defaults, strict=True):
            if default is None:
                yield local_name(each.arg)
                continue
            if not isinstance(default, ast.Constant | ast.Name | ast.BinOp | ast.UnaryOp):
                self.refuse(default, "a default that can change: give None or a constant")
            yield f"{local_name(each.arg)} = {self.expr(default).code}"

    # What names are given

    def note(self, name: str, type: Type) -> None:
        if any(name in scope for scope in self.scopes) or name in self.declared or name not in self.given:
            return
        self.given[name] = join(self.given[name], type)

    def assign(self, target: ast.expr, value: str, type: Type, source: ast.expr | None = None) -> str:
        """A statement that gives a target a value."""
        if isinstance(target, ast.Name):
            if source is not None:
                self.fitting(source, Js(value, type), self.declared.get(target.id, ANY))
            self.note(target.id, type)
            return f"{local_name(target.id)} = {value};\n"
        if isinstance(target, ast.Tuple):
            later: list[str] = []
            return f"{self.places(target, type, later)} = {value};\n{''.join(later)}"
        if isinstance(target, ast.Subscript):
            return self._put(target, value, type)
        self.refuse(target, f"{ast.unparse(target)} is changed: build a new record")
        return ""

    def places(self, target: ast.expr, type: Type, later: list[str]) -> str:
        """Where the parts of a value go; what is no name waits for ``later``."""
        if isinstance(target, ast.Name):
            self.note(target.id, type)
            return local_name(target.id)
        if isinstance(target, ast.Tuple):
            parts = [self.places(each, type.at(at), later) for at, each in enumerate(target.elts)]
            return f"[{', '.join(parts)}]"
        if not isinstance(target, ast.Subscript):
            self.refuse(target, instead(target))
        kept = self.temp()
        later.append(self.assign(target, kept, type))
        return kept

    def _put(self, target: ast.Subscript, value: str, type: Type) -> str:
        owner = self.expr(target.value)
        self.must_be_own(target.value)
        if isinstance(target.slice, ast.Slice) or owner.type.kind in ("str", "tuple", "record", "int", "float", "bool"):
            self.refuse(target, f"a part of a {owner.type.kind} is changed: build a new one")
            return ""
        is_written = isinstance(target.slice, ast.Constant)
        is_key = owner.type.kind == "dict" or (is_written and self.expr(target.slice).type == STR)
        place = self.key(target.slice) if is_key else self.expr(target.slice).code
        if isinstance(target.value, ast.Name) and owner.type.kind in ("dict", "list"):
            self.note(target.value.id, Type("dict", (STR, type)) if owner.type.kind == "dict" else list_of(type))
        if isinstance(target.value, ast.Name) and is_written:
            return f"{owner.code}[{place}] = {value};\n"
        return f"{self.helper('put', value, owner.code, place)};\n"

    # Statements

    def let(self, node: ast.AST) -> str:
        """What stands before names that begin with a statement."""
        return "let " if node in self.begins else ""

    def block(self, statements: list[ast.stmt]) -> str:
        found = [self.visit(each) for each in statements]
        return "".join(each for each in found if isinstance(each, str))

    def visit_Pass(self, node: ast.Pass) -> str:
        return ""

    def visit_Break(self, node: ast.Break) -> str:
        return "break;\n"

    def visit_Continue(self, node: ast.Continue) -> str:
        return "continue;\n"

    def visit_Expr(self, node: ast.Expr) -> str:
        return "" if isinstance(node.value, ast.Constant) else f"{self.expr(node.value).code};\n"

    def visit_Return(self, node: ast.Return) -> str:
        if node.value is None:
            return "return null;\n"
        given = self.fitting(node.value, self.expr(node.value), self.hints.get("return", ANY))
        return f"return {given.code};\n"

    def visit_Assign(self, node: ast.Assign) -> str:
        value = self.expr(node.value)
        if len(node.targets) == 1:
            return self.let(node) + self.assign(node.targets[0], value.code, value.type, node.value)
        kept = self.temp()
        assigned = [self.assign(target, kept, value.type, node.value) for target in node.targets]
        return f"{kept} = {value.code};\n{''.join(assigned)}"

    def visit_AnnAssign(self, node: ast.AnnAssign) -> str:
        if node.value is None:
            return ""
        value = self.expr(node.value)
        return self.let(node) + self.assign(node.target, value.code, value.type, node.value)

    def visit_AugAssign(self, node: ast.AugAssign) -> str:
        """``x += y``: of figures and texts a new value, of a list that is known for one more in the same list."""
        place = node.target
        if isinstance(place, ast.Attribute) or isinstance(getattr(place, "slice", None), ast.Slice | ast.Call):
            self.refuse(place, "a target that is no name and no plain place")
            return ""
        before = self.expr(ast.parse(ast.unparse(place), mode="eval").body)
        if before.type.kind == "list" and isinstance(node.op, ast.Add) and isinstance(place, ast.Name):
            more = self.array(node.value)
            self.note(place.id, more.type)
            return f"{before.code}.push(...{more.code});\n"
        value = self.expr(node.value)
        if not families_of(before.type, value.type) & {"number", "text"} and before.type.kind != "tuple":
            self.refuse(node, "'+=' of what may be a list: annotate it, or write the sum out")
        made = self.binary(node, node.op, before, value)
        return self.assign(place, made.code, made.type)

    def visit_If(self, node: ast.If) -> str:
        test, body = self.truth(node.test), self.block(node.body)
        other = f" else {{\n{self.block(node.orelse)}}}" if node.orelse else ""
        return f"if ({test}) {{\n{body}}}{other}\n"

    def visit_While(self, node: ast.While) -> str:
        if node.orelse:
            self.refuse(node, "'else' of a loop: use a yes-or-no")
        return f"while ({self.truth(node.test)}) {{\n{self.block(node.body)}}}\n"

    def visit_For(self, node: ast.For) -> str:
        if node.orelse:
            self.refuse(node, "'else' of a loop: use a yes-or-no")
        walk = self.walk(node.iter)
        later: list[str] = []
        target = self.places(node.target, walk.item, later)
        return f"for ({self.let(node)}{target} of {walk.code}) {{\n{''.join(later)}{self.block(node.body)}}}\n"


def _returns(body: list[ast.stmt]) -> bool:
    """Whether a block ends with ``return`` whichever way it goes."""
    last = body[-1]
    if isinstance(last, ast.If):
        return bool(last.orelse) and _returns(last.body) and _returns(last.orelse)
    return isinstance(last, ast.Return)
