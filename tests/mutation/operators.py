"""What can be wrong with a line of code: every mutant of a module, made mechanically from its tree.

A mutant is one small change that a careless hand could make: a condition that always or never
holds, a bound moved by one, an operand, entry, argument, statement or loop left out, a set wider
by one, the other branch, the most permissive value returned. Words that people read are left alone,
as are annotations and assertions.
"""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

_OTHER = {"min": "max", "max": "min", "any": "all", "all": "any", "reversed": "tuple"}
_NEAREST: dict[type[ast.cmpop], str] = {ast.Lt: "<=", ast.LtE: "<", ast.Gt: ">=", ast.GtE: ">"}
_LONGEST_TEXT = 60
_IN = " in"


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
    """Every mutant of a module; `module` is its path within the package, as `visit/guards.py`.

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
        name = f"{module}:{function}:{what.removesuffix(_IN)}"
        if function not in maker.tables or not what.endswith(_IN):
            name += f":{text}"
        seen[name] += 1
        numbered = name if seen[name] == 1 else f"{name} #{seen[name]}"
        made.append(Mutant(numbered, module, function, line, start, end, new))
    return tuple(made)


class _Maker(ast.NodeVisitor):
    """Walks a tree; `found`: (start, end, new text) -> (function, what was done, line)."""

    def __init__(self, source: bytes, tree: ast.Module) -> None:
        self.source = source
        self.tree = tree
        self.found: dict[tuple[int, int, str], tuple[str, str, int]] = {}
        self.scope: list[str] = []
        self.table = "module"
        self.tables: set[str] = set()
        self.bound: list[set[str]] = [set()]
        self.returns: list[tuple[str, str]] = []
        lines = source.splitlines(keepends=True)
        self.starts = [0]
        for line in lines:
            self.starts.append(self.starts[-1] + len(line))

    def _span(self, node: ast.expr | ast.stmt | ast.keyword) -> tuple[int, int]:
        assert node.end_lineno is not None and node.end_col_offset is not None
        start = self.starts[node.lineno - 1] + node.col_offset
        return start, self.starts[node.end_lineno - 1] + node.end_col_offset

    def _text(self, node: ast.expr | ast.keyword) -> str:
        start, end = self._span(node)
        return self.source[start:end].decode()

    def _change(self, node: ast.expr | ast.stmt, what: str, new: str) -> None:
        start, end = self._span(node)
        if self.source[start:end].decode() != new:
            place = (".".join(self.scope) or self.table, what, node.lineno)
            self.found.setdefault((start, end, new), place)

    # Conditions and truth values

    def _truth(self, node: ast.expr, never_only: bool = False) -> None:
        if not never_only:
            self._change(node, "always", "True")
        self._change(node, "never", "False")

    def visit_If(self, node: ast.If) -> None:
        self._truth(node.test)
        self.generic_visit(node)

    def visit_While(self, node: ast.While) -> None:
        self._truth(node.test, never_only=True)
        self.generic_visit(node)

    def visit_comprehension(self, node: ast.comprehension) -> None:
        for condition in node.ifs:
            self._truth(condition)
        self.generic_visit(node)

    def visit_IfExp(self, node: ast.IfExp) -> None:
        self._change(node, "first", f"({self._text(node.body)})")
        self._change(node, "second", f"({self._text(node.orelse)})")
        self.generic_visit(node)

    def visit_BoolOp(self, node: ast.BoolOp) -> None:
        word = " and " if isinstance(node.op, ast.And) else " or "
        for operand in node.values:
            rest = word.join(f"({self._text(v)})" for v in node.values if v is not operand)
            self._change(node, f"without {self._shown(operand)} in", f"({rest})")
        self.generic_visit(node)

    def visit_Compare(self, node: ast.Compare) -> None:
        terms = [node.left, *node.comparators]
        for at, compared in enumerate(node.ops):
            nearest = _NEAREST.get(type(compared))
            if nearest is not None:
                before = self.source[self._span(node)[0] : self._span(terms[at])[1]].decode()
                after = self.source[self._span(terms[at + 1])[0] : self._span(node)[1]].decode()
                self._change(node, "edge", f"({before} {nearest} {after})")
        self.generic_visit(node)

    def _value(self, node: ast.expr | None) -> None:
        """A truth value that is kept, returned or given."""
        if isinstance(node, ast.Compare) or (
            isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not)
        ):
            self._truth(node)
        elif isinstance(node, ast.BoolOp):
            if any(isinstance(v, ast.Compare | ast.UnaryOp) for v in node.values):
                self._truth(node)
        elif isinstance(node, ast.Constant) and isinstance(node.value, bool):
            self._change(node, "other", str(not node.value))

    # Values

    def visit_Constant(self, node: ast.Constant) -> None:
        if isinstance(node.value, int | float) and not isinstance(node.value, bool):
            self._change(node, "more", repr(node.value + 1))
            self._change(node, "less", f"({node.value - 1!r})")
        elif isinstance(node.value, str) and not self.scope:
            self._change(node, "other", '"?"')

    def visit_BinOp(self, node: ast.BinOp) -> None:
        self._change(node, "left of", f"({self._text(node.left)})")
        if isinstance(node.op, ast.BitOr | ast.BitAnd | ast.Add):
            self._change(node, "right of", f"({self._text(node.right)})")
        self.generic_visit(node)

    def visit_JoinedStr(self, node: ast.JoinedStr) -> None:
        """Words that people read."""

    def _elements(self, node: ast.Tuple | ast.List | ast.Set) -> None:
        if isinstance(node, ast.Tuple | ast.List) and not isinstance(node.ctx, ast.Load):
            return
        opened, closed = ("{", "}") if isinstance(node, ast.Set) else ("[", "]")
        if isinstance(node, ast.Tuple):
            opened, closed = "(", ",)"
        for element in node.elts:
            rest = ", ".join(self._text(e) for e in node.elts if e is not element)
            new = f"{opened}{rest}{closed}"
            if not rest:
                new = {ast.Set: "set()", ast.List: "[]", ast.Tuple: "()"}[type(node)]
            self._change(node, f"without {self._shown(element)} in", new)

    def visit_Tuple(self, node: ast.Tuple) -> None:
        self._elements(node)
        self.generic_visit(node)

    def visit_List(self, node: ast.List) -> None:
        self._elements(node)
        self.generic_visit(node)

    def visit_Set(self, node: ast.Set) -> None:
        self._elements(node)
        for extra in () if self.scope else self._candidates(node.elts):
            kept = ", ".join(map(self._text, node.elts))
            self._change(node, f"with {extra} in", f"{{{kept}, {extra}}}")
        self.generic_visit(node)

    def _candidates(self, elements: Sequence[ast.expr]) -> Iterator[str]:
        """What else a module's set could hold: the names, or words, of the same module."""
        held = {self._text(element) for element in elements}
        if all(isinstance(element, ast.Name) for element in elements):
            for line in self.tree.body:
                if isinstance(line, ast.AnnAssign) and _is_word(line.value):
                    name = self._text(line.target)
                    yield from () if name in held else (name,)
        elif all(map(_is_word, elements)):
            sets = [each for each in ast.walk(self.tree) if isinstance(each, ast.Set)]
            for each in sets:
                if all(map(_is_word, each.elts)):
                    yield from sorted({self._text(e) for e in each.elts} - held)

    def visit_Dict(self, node: ast.Dict) -> None:
        entries = [
            f"{self._text(key)}: {self._text(value)}" if key else f"**{self._text(value)}"
            for key, value in zip(node.keys, node.values, strict=True)
        ]
        for at, entry in enumerate(entries):
            rest = ", ".join(entries[:at] + entries[at + 1 :])
            self._change(node, f"without {entry.partition(chr(10))[0][:40]} in", f"{{{rest}}}")
        for value in node.values:
            self._value(value)
            self.visit(value)

    def _shown(self, node: ast.expr) -> str:
        return " ".join(self._text(node).split())[:40]

    def visit_Call(self, node: ast.Call) -> None:
        if isinstance(node.func, ast.Name) and node.func.id in _OTHER:
            self._change(node.func, "swapped", _OTHER[node.func.id])
        given: list[ast.expr | ast.keyword] = [*node.args, *node.keywords]
        for each in given:
            named = isinstance(each, ast.keyword)
            if named or (not self.scope and each is node.args[-1] and len(node.args) > 1):
                rest = ", ".join(self._text(g) for g in given if g is not each)
                what = each.arg if isinstance(each, ast.keyword) else self._text(each)
                self._change(node, f"without {what} in", f"{self._text(node.func)}({rest})")
            self._value(each.value if isinstance(each, ast.keyword) else each)
        self.generic_visit(node)

    # Statements

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


def _is_word(node: ast.expr | None) -> bool:
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


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
