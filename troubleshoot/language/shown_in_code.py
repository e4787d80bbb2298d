"""Which constants of the code are texts for people, and which are keys, patterns or names."""

from __future__ import annotations

import ast
import re
from typing import Final

from troubleshoot.language.holes import letters
from troubleshoot.language.sentences import is_text, name_of

SINGLE_WORDS: Final = (
    "cli/", "dialogue/", "practice/", "records/", "safety/", "visit/", "measure/",
    "knowledge/spoken.py", "knowledge/vocabulary.py", "quantities/calculations/",
    "reasoning/evidence/",
    "reasoning/unit/places",
)  # fmt: skip
"""Where one word by itself may be a text; elsewhere such words are keys and grammar."""


def word_may_stand(word: str, node: ast.AST, module: str) -> bool:
    """Whether a text without blanks is a word, and stands where words are shown or typed."""
    plain = re.fullmatch(r"\(?[A-Za-z][A-Za-z']*\)?[.:!?]?", word) is not None
    return plain and (module.startswith(SINGLE_WORDS) or is_command(node))


def is_inside(node: ast.AST) -> bool:
    """Whether a node belongs to a larger text, which is taken as a whole."""
    parent = getattr(node, "parent", None)
    while isinstance(parent, ast.FormattedValue | ast.IfExp):
        node, parent = parent, getattr(parent, "parent", None)
    if isinstance(parent, ast.JoinedStr):
        return True
    return isinstance(parent, ast.BinOp) and isinstance(parent.op, ast.Add)


_OF_CODE: Final = re.compile(r"[a-z0-9]+([_.:/-][\w.*:/-]+)+|[A-Z0-9]+(_[A-Z0-9]*)+|\W+|[\\^$|?*]")


def is_shown(node: ast.Constant) -> bool:
    """Whether a constant is a text that people may be shown, and no key, pattern or name."""
    value = node.value
    parent = getattr(node, "parent", None)
    if not isinstance(value, str) or not letters(value) or _is_docstring(node):
        return False
    if is_command(node):
        return False
    if isinstance(parent, ast.Compare | ast.Subscript | ast.MatchValue | ast.Attribute):
        return False
    if isinstance(parent, ast.Dict) and node in parent.keys:
        return False
    if isinstance(parent, ast.Call) and name_of(parent.func) in _NO_SCREEN:
        return False
    if isinstance(parent, ast.keyword) and parent.arg in _NO_WORDS:
        return False
    if _in_annotation(node) or _in_pattern(node):
        return False
    return not _OF_CODE.fullmatch(value.strip()) and (" " in value or _may_be_a_word(node))


_NO_SCREEN: Final = frozenset({
    "argument", "choice", "command", "compile", "count", "decode", "encode", "endswith", "field",
    "findall", "finditer", "frozenset", "fullmatch", "get", "getattr", "group", "hasattr",
    "import_module", "index", "isinstance", "key", "lstrip", "match", "name", "open", "option",
    "partition", "pop", "read_text", "reconfigure", "removeprefix", "removesuffix", "replace",
    "rstrip", "search", "setattr", "setdefault", "split", "startswith", "strip", "sub", "typevar",
    "written",
})  # fmt: skip
"""Calls whose words are no text for people."""

_NO_WORDS: Final = frozenset({"envvar", "prog_name", "errors", "encoding", "metavar", "mode"})


def _may_be_a_word(node: ast.AST) -> bool:
    """Whether a single word stands where texts are chosen, given back or listed."""
    value = getattr(node, "value", "")
    parent = getattr(node, "parent", None)
    if not re.fullmatch(r"\W*[A-Za-z][A-Za-z'0-9]*\W*", value):
        return False
    if isinstance(parent, ast.Dict):
        return True
    if isinstance(parent, ast.AnnAssign):
        return bool(value[0].isupper())
    if isinstance(parent, ast.keyword):
        return parent.arg == "source"
    if isinstance(parent, ast.Call):
        return name_of(parent.func) in ("counted", "told", "say")
    return isinstance(parent, ast.IfExp | ast.Return | ast.BoolOp | ast.Yield | ast.Tuple | ast.Set)


def _is_docstring(node: ast.AST) -> bool:
    return isinstance(getattr(node, "parent", None), ast.Expr)


def _in_annotation(node: ast.AST) -> bool:
    """Whether a constant stands in a type: `Literal["one", "two"]`, `Annotated[str, "..."]`."""
    while (parent := getattr(node, "parent", None)) is not None:
        if isinstance(parent, ast.AnnAssign) and node is parent.annotation:
            return True
        if isinstance(parent, ast.arg) or (
            isinstance(parent, ast.Subscript) and name_of(parent.value) in ("literal", "annotated")
        ):
            return True
        node = parent
    return False


def _in_pattern(node: ast.AST) -> bool:
    """Whether a constant is part of a regular expression."""
    while (parent := getattr(node, "parent", None)) is not None:
        if isinstance(parent, ast.Call) and name_of(parent.func) in ("compile", "fullmatch", "sub"):
            return True
        if isinstance(parent, ast.stmt):
            return False
        node = parent
    return False


def is_command(node: ast.AST) -> bool:
    """Whether a constant is what a person types at a prompt of a visit or of practice."""
    if not is_text(node) or not getattr(node, "module", "").startswith(PROMPTS):
        return False
    parent = node.parent  # type: ignore[attr-defined]
    if isinstance(parent, ast.Dict) and node in parent.keys:
        served = parent.values[parent.keys.index(node)]
        return _serves(served)
    if isinstance(parent, ast.AnnAssign):
        return name_of(parent.target).endswith("_word")
    if isinstance(parent, ast.Call) and name_of(parent.func) == "startswith":
        return _TYPED.match(ast.unparse(parent.func)) is not None
    if isinstance(parent, ast.Tuple | ast.Set) and _is_named_list(parent):
        return True
    compared = parent.parent if isinstance(parent, ast.Tuple) else parent  # type: ignore[attr-defined]
    return isinstance(compared, ast.Compare) and bool(_TYPED.match(ast.unparse(compared.left)))


def _is_named_list(node: ast.Tuple | ast.Set) -> bool:
    """Whether a list of short words has a name of its own: `YES = frozenset({"y", "yes"})`."""
    over = node.parent  # type: ignore[union-attr]
    if isinstance(over, ast.Call) and name_of(over.func) == "frozenset":
        over = over.parent  # type: ignore[attr-defined]
    words = [each.value for each in node.elts if isinstance(each, ast.Constant)]
    short = all(isinstance(word, str) and _SHORT.fullmatch(word) for word in words)
    is_named = isinstance(over, ast.Assign | ast.AnnAssign)
    return is_named and isinstance(over.parent, ast.Module) and short


_SHORT: Final = re.compile(r"[a-z?]{0,6}")


def _serves(node: ast.AST) -> bool:
    """Whether what a word leads to is a method that serves it."""
    own = isinstance(node, ast.Attribute) and ast.unparse(node).startswith("self._")
    return own or isinstance(node, ast.Lambda)


PROMPTS: Final = ("dialogue/", "cli/practice/")
_TYPED: Final = re.compile(r"(?:typed|word|more|answer|reply)\b")
