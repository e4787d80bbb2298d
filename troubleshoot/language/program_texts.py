"""The texts in the program's own code: read off its syntax, so that nothing has to be marked.

A text stands in code beside the decision that it tells of, most often with holes. What is in a hole
is named after what fills it; where one of several words fills it, each way is a text of its own. A
piece that code joins to others (", once more") is a text with a hole where the others stand.
"""

from __future__ import annotations

import ast
import importlib.util
import inspect
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.checks import paragraphs_of_check
from troubleshoot.language.holes import Sentence, written
from troubleshoot.language.notes import COMMAND, HEARD
from troubleshoot.language.sentences import is_join, joint, name_of, sentences
from troubleshoot.language.shown_in_code import is_command, is_inside, is_shown, word_may_stand
from troubleshoot.outside.files import read_text

PACKAGE: Final = Path(__file__).resolve().parent.parent

NOT_SHOWN: Final = (
    "authoring/drawing.py", "authoring/path_drawing.py", "knowledge/advice/", "knowledge/forms/",
    "knowledge/model/", "knowledge/schema.py", "knowledge/shapes.py", "language/",
    "practice/form.py", "practice/starting.py", "quantities/make_saturation_tables.py",
    "reasoning/chaining/chains.py", "records/history/drawn.py", "records/page.py",
    "safety/hearing/vocabulary.py", "safety/hearing/words.py",
)  # fmt: skip
"""Words that are heard in sentences and never said, markup, and the form of files."""

ONLY_HEARD: Final = frozenset(
    {("safety/hearing/roles.py", "spoken"), ("safety/hearing/roles.py", "others")}
)
"""Tables of what people may say for something, by module and name."""

_CHECK: Final = re.compile(r"knowledge/checks/(?!_)\w+\.py")


@frozen
class Found:
    """One English text with its place; `note`: what a translator has to know of it."""

    english: str
    place: str
    note: str = ""


def program_texts() -> Iterator[Found]:
    """Every text of the program's own modules, and of the library that reads the command line."""
    for path in sorted(PACKAGE.rglob("*.py")):
        name = path.relative_to(PACKAGE).as_posix()
        if not name.startswith(NOT_SHOWN):
            yield from texts_of(read_text(path), f"troubleshoot/{name}")
    yield from _library_texts()


def texts_of(source: str, place: str) -> Iterator[Found]:
    """The texts of one module."""
    tree, inside = ast.parse(source), place.removeprefix("troubleshoot/")
    for node in ast.walk(tree):
        for child in ast.iter_child_nodes(node):
            child.parent, child.module = node, inside  # type: ignore[attr-defined]
    for node in ast.walk(tree):
        at = f"{place}:{getattr(node, 'lineno', 1)}"
        for english in dict.fromkeys(_of_node(node)):
            if " " in english or word_may_stand(english, node, inside):
                yield Found(english, at, _note(node, inside))
    if _CHECK.fullmatch(inside):
        for paragraph in paragraphs_of_check(ast.get_docstring(tree) or ""):
            yield Found(written(paragraph), f"{place}:1")


def _note(node: ast.AST, module: str) -> str:
    """What a translator has to know of a text that is typed, or only heard."""
    if is_command(node):
        return COMMAND
    while (parent := getattr(node, "parent", None)) is not None:
        if isinstance(parent, ast.AnnAssign) and (module, name_of(parent.target)) in ONLY_HEARD:
            return HEARD
        node = parent
    return ""


def _of_node(node: ast.AST) -> Iterator[str]:
    """The texts that begin at this node of the syntax."""
    if isinstance(node, ast.FunctionDef) and _is_cli_command(node):
        yield from _paragraphs(ast.get_docstring(node) or "")
    elif isinstance(node, ast.JoinedStr | ast.Constant | ast.BinOp) and not is_inside(node):
        if isinstance(node, ast.Constant):
            if is_command(node):
                yield str(node.value).strip()
            if not is_shown(node):
                return
        yield from sentences(node)
    elif isinstance(node, ast.Call) and is_join(node):
        yield from joint(node)


def _is_cli_command(node: ast.FunctionDef) -> bool:
    return any(
        isinstance(each, ast.Call) and name_of(each.func) in ("command", "group")
        for each in node.decorator_list
    )


def _paragraphs(doc: str) -> Iterator[str]:
    """A docstring as it is shown: each paragraph in one line."""
    for paragraph in inspect.cleandoc(doc).split("\n\n"):
        if paragraph.strip():
            yield written(" ".join(paragraph.split()))


def _library_texts() -> Iterator[Found]:
    """What click says itself, which its own source marks for translation."""
    found = importlib.util.find_spec("click")
    assert found is not None and found.origin is not None
    folder = Path(found.origin).parent
    for path in sorted(folder.glob("*.py")):
        for node in ast.walk(ast.parse(read_text(path))):
            if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name)):
                continue
            if node.func.id not in ("_", "ngettext"):
                continue
            for each in node.args:
                if isinstance(each, ast.Constant) and isinstance(each.value, str):
                    english = _QUOTED.sub(r"'{\1}'", " ".join(each.value.split()))
                    holes = Sentence.of(english).holes
                    if len(set(holes)) == len(holes):  # else it is for programmers
                        yield Found(english, f"click/{path.name}:{node.lineno}")


_QUOTED: Final = re.compile(r"\{(\w+)!r\}")
