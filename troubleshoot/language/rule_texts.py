"""The texts in rule files and scenarios, with the line on which each stands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Final

from troubleshoot.knowledge.base import RuleFile, entries, read_base
from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.nodes import Located, LocatedMapping, LocatedValue
from troubleshoot.knowledge.shapes import (
    ListOf,
    NewId,
    OneOrMore,
    Pairs,
    Record,
    Shape,
    Tagged,
    Text,
)
from troubleshoot.knowledge.walking import Step, text_of, texts_of, value_at, walk
from troubleshoot.language.holes import letters, written
from troubleshoot.language.notes import HEARD, TYPED
from troubleshoot.language.program_texts import Found
from troubleshoot.outside.files import read_text
from troubleshoot.practice.deeds import FILE as DEEDS
from troubleshoot.practice.form import DEEDS_FILE, SCENARIO_FILE
from troubleshoot.practice.loading import scenario_paths, scenarios_folder


def rule_texts(folders: Sequence[Path]) -> Iterator[Found]:
    """Every text for people of the rule files in these folders, and the words that are typed."""
    files = read_base(folders).files
    typed = {word for file in files for word, _ in _typed(file)}
    said = {name for file in files if file.kind == "words" for name in _said(file.root)}
    for file in files:
        place = f"{Path(file.path).parents[file.name.count('/')].name}/{file.name}"
        for text, node, heard in _texts(FORMS[file.kind], file.root):
            note = HEARD if heard or file.kind == "synonyms" else ""
            if file.kind == "words" and _key_of(file.root, node) in typed:
                note = TYPED
            yield Found(written(text), f"{place}:{node.line}", note)
        for word, node in _only_shown(file):
            if "-" not in word and word not in typed | said:
                yield Found(word, f"{place}:{node.line}")
        for word, node in _typed(file):
            if "-" not in word and word not in said and letters(word):
                yield Found(word, f"{place}:{node.line}", TYPED)


def form_texts() -> Iterator[Found]:
    """What each key of a rule file or scenario means to its author."""
    of_practice = ((form.name, form) for form in (SCENARIO_FILE, DEEDS_FILE))
    for kind, form in (*FORMS.items(), *of_practice):
        for text in dict.fromkeys(_meanings(form)):
            yield Found(written(text), f"form of {kind}")


def _meanings(shape: Shape) -> Iterator[str]:
    if isinstance(shape, Record):
        for field in shape.fields:
            yield field.meaning
            yield from _meanings(field.shape)
    elif isinstance(shape, ListOf | OneOrMore):
        yield from _meanings(shape.item)
    elif isinstance(shape, Pairs):
        yield from _meanings(shape.value)
    elif isinstance(shape, Tagged):
        for _, option in shape.options:
            yield from _meanings(option)


def scenario_texts() -> Iterator[Found]:
    """Every text that an apprentice is shown of the shipped scenarios, and of deeds by feel."""
    deeds = scenarios_folder() / DEEDS
    files = [(SCENARIO_FILE, path) for path in scenario_paths().values()]
    for form, path in (*files, (DEEDS_FILE, deeds)):
        for text, node, _ in _texts(form, read_located(read_text(path), path.stem)):
            if letters(text) > 1:
                yield Found(written(text), f"scenarios/{path.name}:{node.line}")


def _texts(form: Shape, root: Located) -> Iterator[tuple[str, LocatedValue, bool]]:
    """(text, where it stands, whether it is only heard) for the texts of one file."""
    heard: set[int] = set()
    for step in walk(form, root):
        if isinstance(step.node, LocatedMapping) and step.inside:
            heard |= set(_heard_in(step.node))
        text = text_of(step.node) if isinstance(step.shape, Text) else None
        if text is not None and isinstance(step.node, LocatedValue):
            yield text, step.node, id(step.node) in heard


def _heard_in(entry: LocatedMapping) -> Iterator[int]:
    """The values under `words` and `gone` of an entry: what people say for it, or of its end."""
    words = value_at(entry, "words")
    inner = words.entries.values() if isinstance(words, LocatedMapping) else ()
    for node in (words, value_at(entry, "gone"), *(each.value for each in inner)):
        if node is not None:
            yield from (id(value) for _, value in texts_of(node))


def _typed(file: RuleFile) -> Iterator[tuple[str, LocatedValue]]:
    """Ids that people type as they are shown: outcomes, values of facts, areas, subsystems."""
    for step in walk(FORMS[file.kind], file.root):
        if isinstance(step.shape, NewId) and _is_outcome(step):
            yield from texts_of(step.node)
    facts = value_at(file.root, "facts") if file.kind == "equipment" else None
    for fact in getattr(facts, "items", ()):
        yield from texts_of(value_at(fact, "values"))
    for key in ("area", "subsystem"):
        node = value_at(file.root, key)
        if node is not None:
            yield from texts_of(node)


def _only_shown(file: RuleFile) -> Iterator[tuple[str, LocatedValue]]:
    """Ids that are shown and not typed: hazards, facts, nameplate values, quantities."""
    for kind, key in _SHOWN:
        if kind == file.kind:
            for entry in entries(file.root, key):
                yield from texts_of(value_at(entry, "id"))


_SHOWN: Final = (
    ("hazards", "hazards"),
    ("equipment", "facts"),
    ("equipment", "nameplate"),
    ("quantities", "quantities"),
    ("order-of-cautions", "kinds"),
    ("subsystems", "subsystems"),
)


def _is_outcome(step: Step) -> bool:
    return len(step.inside) > 2 and value_at(step.inside[-2], "outcomes") is not None


def _said(root: Located) -> Iterator[str]:
    """The ids of which words.yaml says how they are said."""
    words = value_at(root, "words")
    if isinstance(words, LocatedMapping):
        yield from words.entries


def _key_of(root: Located, node: LocatedValue) -> str:
    """The id of which a line of words.yaml says how it is said."""
    words = value_at(root, "words")
    entries = words.entries.items() if isinstance(words, LocatedMapping) else ()
    return next((key for key, entry in entries if entry.value is node), "")
