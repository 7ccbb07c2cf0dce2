"""The names of a function: what each part uses, which are given a value, which are declared, where each begins."""

from __future__ import annotations

import ast

SCOPES = (ast.ListComp, ast.DictComp, ast.GeneratorExp, ast.SetComp, ast.Lambda)
"""What has names of its own."""


class Names:
    """What one walk through a function finds.

    >>> names = Names(ast.parse("x = 1\\nif x:\\n    y = x").body)
    >>> list(names.stored), names.beginning("y").lineno
    (['x', 'y'], 3)
    """

    def __init__(self, body: list[ast.stmt]) -> None:
        self.body = body
        self.stored: dict[str, None] = {}
        """The names that statements give a value, in their order."""
        self.annotations: dict[str, ast.expr] = {}
        """What is declared for a name."""
        self._used: dict[ast.AST, set[str]] = {}
        for each in body:
            self._read(each, is_own=True)

    def _read(self, node: ast.AST, is_own: bool) -> set[str]:
        """The names in a part, and in each of its parts."""
        used: set[str] = set()
        if isinstance(node, ast.Name):
            used.add(node.id)
            if is_own and isinstance(node.ctx, ast.Store):
                self.stored[node.id] = None
        else:
            if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                self.annotations[node.target.id] = node.annotation
            is_own = is_own and not isinstance(node, SCOPES)
            for part in ast.iter_child_nodes(node):
                used |= self._read(part, is_own)
        self._used[node] = used
        return used

    def beginning(self, name: str) -> ast.stmt | None:
        """The statement that a name begins with: always the first to give it a value where it is used, in its own
        block."""
        return self._beginning(self.body, name)

    def _beginning(self, block: list[ast.stmt], name: str) -> ast.stmt | None:
        using = [each for each in block if name in self._used[each]]
        first = using[0]
        target = (
            first.targets[0]
            if isinstance(first, ast.Assign) and len(first.targets) == 1
            else getattr(first, "target", None)
        )
        is_target = isinstance(target, ast.Name) and target.id == name
        if isinstance(first, ast.Assign | ast.AnnAssign) and first.value is not None:
            return first if is_target and name not in self._used[first.value] else None
        if len(using) > 1:
            return None
        if isinstance(first, ast.For) and is_target:
            return None if name in self._used[first.iter] else first
        blocks: list[list[ast.stmt]] = [getattr(first, "body", []), getattr(first, "orelse", [])]
        inner = [block for block in blocks if any(name in self._used[each] for each in block)]
        heads = [getattr(first, "test", None), getattr(first, "iter", None), target]
        is_in_head = any(name in self._used[each] for each in heads if each is not None)
        return self._beginning(inner[0], name) if len(inner) == 1 and not is_in_head else None
