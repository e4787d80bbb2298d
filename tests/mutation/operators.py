"""What can be wrong with a line of code: every mutant of a module, made mechanically from its tree.

A mutant is one small change that a careless hand could make: a condition that always or never
holds, a bound moved by one, an operand, entry, argument, statement or loop left out, a set wider
by one, the other branch, the most permissive value returned. Words that people read are left alone,
as are annotations and assertions.
"""

# ruff: noqa: N802 - the names of visit methods are those of the standard library

from __future__ import annotations

import ast
from collections import Counter
from dataclasses import dataclass

from tests.mutation.expressions import IN, Expressions

_LONGEST_TEXT = 60


@dataclass(frozen=True, slots=True)
class Mutant:
    """One change of one module: `new` in place of the bytes from `start` to `end`."""

    name: str
    module: str
    function: str
    line: int
    start: int
    end: int
    new: str

    def applied(self, source: bytes) -> bytes:
        return source[: self.start] + self.new.encode() + source[self.end :]


def mutants_of(module: str, source: bytes) -> tuple[Mutant, ...]:
    """Every mutant of a module; `module` is its path within the package, as `safety/guards.py`.

    A name is `module:function:what:text`, so that it outlives a change elsewhere in the file; of a
    table it is `module:table:what`. What stands more than once in a function is numbered.
    """
    tree = ast.parse(source)
    maker = _Maker(source, tree)
    maker.visit(tree)
    seen: Counter[str] = Counter()
    made = []
    for (start, end, new), (function, what, line) in sorted(maker.found.items()):
        text = " ".join(source[start:end].decode().split())[:_LONGEST_TEXT]
        name = f"{module}:{function}:{what.removesuffix(IN)}"
        if function not in maker.tables or not what.endswith(IN):
            name += f":{text}"
        seen[name] += 1
        numbered = name if seen[name] == 1 else f"{name} #{seen[name]}"
        made.append(Mutant(numbered, module, function, line, start, end, new))
    return tuple(made)


class _Maker(Expressions):
    """Changes every statement of a module, and the expressions in it."""

    def __init__(self, source: bytes, tree: ast.Module) -> None:
        super().__init__(source, tree)
        self.bound: list[set[str]] = [set()]
        self.returns: list[tuple[str, str]] = []

    def visit_If(self, node: ast.If) -> None:
        self._truth(node.test)
        self.generic_visit(node)

    def visit_While(self, node: ast.While) -> None:
        self._truth(node.test, never_only=True)
        self.generic_visit(node)

    def _left_out(self, node: ast.stmt) -> None:
        self._change(node, "without", "pass")

    def visit_Expr(self, node: ast.Expr) -> None:
        if not isinstance(node.value, ast.Constant):
            self._left_out(node)
            self.generic_visit(node)

    def visit_Raise(self, node: ast.Raise) -> None:
        self._left_out(node)

    def visit_Continue(self, node: ast.Continue) -> None:
        self._left_out(node)

    def visit_Break(self, node: ast.Break) -> None:
        self._left_out(node)

    def visit_Assert(self, node: ast.Assert) -> None:
        """Only there for the type checker."""

    def visit_AugAssign(self, node: ast.AugAssign) -> None:
        self._left_out(node)
        self.visit(node.value)

    def visit_Assign(self, node: ast.Assign) -> None:
        if not self.scope and isinstance(node.value, ast.Subscript):
            return  # the name of a type
        names = {n.id for t in node.targets for n in ast.walk(t) if isinstance(n, ast.Name)}
        if names <= self.bound[-1]:
            self._left_out(node)
        self.bound[-1] |= names
        self._named(node.targets[0])
        self._value(node.value)
        self.visit(node.value)

    def _named(self, target: ast.expr) -> None:
        """Tables of a module are named by what they are assigned to."""
        if not self.scope:
            self.table = self._text(target)
            self.tables.add(self.table)

    def visit_AnnAssign(self, node: ast.AnnAssign) -> None:
        if isinstance(node.target, ast.Name):
            self.bound[-1].add(node.target.id)
        self._named(node.target)
        if node.value is not None:
            self._value(node.value)
            self.visit(node.value)

    def visit_For(self, node: ast.For) -> None:
        self._change(node.iter, "no turn of", "()")
        self.generic_visit(node)

    def visit_Return(self, node: ast.Return) -> None:
        if node.value is None:
            return
        annotation, state = self.returns[-1]
        self._value(node.value)
        if isinstance(node.value, ast.Call) and self._text(node.value.func) == "replace":
            annotation = ""  # each change left out by itself says more than all of them
        for kind, nothing in _NOTHING.items():
            if annotation.startswith(kind) or annotation.endswith(kind):
                for new in nothing:
                    self._change(node.value, f"{new or state} for", new or state)
        self.visit(node.value)

    def visit_ClassDef(self, node: ast.ClassDef) -> None:
        self.scope.append(node.name)
        self.bound.append(set())
        for statement in node.body:
            self.visit(statement)
        self.bound.pop()
        self.scope.pop()

    def visit_FunctionDef(self, node: ast.FunctionDef) -> None:
        arguments = {a.arg for a in (*node.args.args, *node.args.kwonlyargs)}
        annotation = ast.unparse(node.returns) if node.returns else ""
        state = next((n for n in ("state", "before", "one") if n in arguments), "None")
        self.scope.append(node.name)
        self.bound.append(set(arguments))
        self.returns.append((annotation, state))
        for default in (*node.args.defaults, *node.args.kw_defaults):
            if default is not None:
                self._value(default)
                self.visit(default)
        for statement in node.body:
            self.visit(statement)
        self.returns.pop()
        self.bound.pop()
        self.scope.pop()


_NOTHING: dict[str, tuple[str, ...]] = {
    "str": ('""',),
    "bool": ("True", "False"),
    "None": ("None",),
    "tuple[": ("()",),
    "frozenset[": ("frozenset()",),
    "WorkState": ("",),
    "VisitState": ("",),
}
"""How a function's return annotation begins or ends -> the most permissive values it can return;
an empty text stands for the state it was given."""
