"""What can be wrong with an expression: a condition, an operand, a bound, an entry, an argument."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Sequence

IN = " in"
"""How what was done ends where something was left out of, or put into, a longer text."""

_OTHER = {"min": "max", "max": "min", "any": "all", "all": "any", "reversed": "tuple"}
_ANOTHER = '"~"'
"""A text that nobody types, and a sound pattern: one that is none is not even imported."""
_ORDER = re.compile(r"[<>]=?")
_NEAREST: dict[type[ast.cmpop], str] = {ast.Lt: "<=", ast.LtE: "<", ast.Gt: ">=", ast.GtE: ">"}


class Changes(ast.NodeVisitor):
    """Notes changes of a source; `found`: (start, end, new) -> (function, what was done, line).

    `scope`: the names of the classes and functions around what is looked at; outside of them
    `table` is what is assigned to.
    """

    def __init__(self, source: bytes, tree: ast.Module) -> None:
        self.source = source
        self.tree = tree
        self.found: dict[tuple[int, int, str], tuple[str, str, int]] = {}
        self.scope: list[str] = []
        self.table = "module"
        self.tables: set[str] = set()
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


class Expressions(Changes):
    """Changes every expression that it visits."""

    def _truth(self, node: ast.expr, never_only: bool = False) -> None:
        if not never_only:
            self._change(node, "always", "True")
        self._change(node, "never", "False")

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
                (start, end), ends = self._span(node), self._span(terms[at])[1]
                begins = self._span(terms[at + 1])[0]
                between = _ORDER.sub(nearest, self.source[ends:begins].decode())
                before, after = self.source[start:ends].decode(), self.source[begins:end].decode()
                self._change(node, "edge", f"({before}{between}{after})")
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
            self._change(node, "other", _ANOTHER)

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
            rest = ", ".join(_alone(e, self._text(e)) for e in node.elts if e is not element)
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
        """What else a set of names could hold: the words that the module names."""
        held = {self._text(element) for element in elements}
        for line in self.tree.body if all(isinstance(e, ast.Name) for e in elements) else ():
            if isinstance(line, ast.AnnAssign) and _is_word(line.value):
                name = self._text(line.target)
                yield from () if name in held else (name,)

    def visit_Dict(self, node: ast.Dict) -> None:
        entries = [
            f"{self._text(key)}: {self._text(value)}" if key else f"**({self._text(value)})"
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


def _is_word(node: ast.expr | None) -> bool:
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


def _alone(node: ast.expr, text: str) -> str:
    """An element as it may stand by itself: what is yielded stands in brackets."""
    return f"({text})" if isinstance(node, ast.Yield | ast.YieldFrom) else text
