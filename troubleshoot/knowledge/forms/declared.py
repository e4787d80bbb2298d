"""From a class of the model to its form: each annotated field becomes a key with its shape.

A type tells its own shape: a text, a number, true or false, one of a closed list of words, an
entry, a list of entries, one or more words. Whatever else may stand there the annotation says, and
where the object's fields are not the file's keys, one of the classes below.
"""

from __future__ import annotations

import sys
import types
from collections.abc import Callable, Iterator
from dataclasses import MISSING, InitVar, replace
from functools import cache
from typing import Annotated, Any, Final, Literal, Union, get_args, get_origin, get_type_hints

from troubleshoot.frozen import frozen_open
from troubleshoot.knowledge import model, shapes, vocabulary
from troubleshoot.knowledge.model import FactsNeeded, Finding
from troubleshoot.knowledge.shapes import (
    Choice,
    Facts,
    Field,
    Findings,
    ListOf,
    Member,
    Number,
    OneOrMore,
    Record,
    Shape,
    Text,
    Truth,
)


@frozen_open
class Key:
    """The key, where it is not the field's name."""

    key: str


@frozen_open
class After:
    """The key that this one is written after, where the class has another order."""

    key: str


@frozen_open
class Of:
    """No key of its own: this field is made from the value of another key."""

    key: str


@frozen_open
class Inside:
    """The key of a mapping in which the keys of several fields stand together."""

    key: str
    meaning: str = ""


@frozen_open
class Items:
    """How many entries a list of them has."""

    most: int = 400
    least: int = 0


_SHAPES: Final = get_args(shapes.Shape)
_PLAIN: Final[dict[Any, Shape]] = {
    str: Text(),
    bool: Truth(),
    float: Number(),
    Finding: Findings(),
    FactsNeeded: Facts(),
}


@frozen_open
class _Declared:
    """A field of a class and all that its annotation says."""

    name: str
    type: Any
    required: bool
    said: tuple[Any, ...]

    def says(self, kind: Any) -> Any:
        """The last thing of a kind that the annotation says, or nothing."""
        return next((each for each in reversed(self.said) if isinstance(each, kind)), None)

    @property
    def key(self) -> str:
        key = self.says(Key)
        return self.name.replace("_", "-") if key is None else str(key.key)

    @property
    def shape(self) -> Shape:
        said: Shape | None = self.says(_SHAPES)
        if said is not None:
            return said
        inferred = _shape_of(self.type)
        items = self.says(Items)
        if items is not None and isinstance(inferred, ListOf):
            return replace(inferred, least=items.least, most=items.most)
        return inferred

    @property
    def make(self) -> Callable[[Any], Any] | None:
        made: Callable[[Any], Any] | None = self.says(types.FunctionType)
        return made


@cache
def form_of(thing: type) -> Record:
    """The form of the entries that become objects of a class marked by `written`."""
    name, some_of, block = thing.WRITTEN  # type: ignore[attr-defined]
    declared = list(_declared(thing))
    fields = _in_order([each for each in declared if each.says(Of) is None])
    return Record(name, fields, some_of, block, thing, tuple(map(_member, declared)))


def _member(declared: _Declared) -> Member:
    inside, of = declared.says(Inside), declared.says(Of)
    key: str = declared.key if of is None else of.key
    keys = (key,) if inside is None else (inside.key, key)
    return Member(declared.name, keys, declared.shape, declared.make)


def _in_order(declared: list[_Declared]) -> tuple[Field, ...]:
    """The keys in the order in which they are written."""
    inside: dict[str, list[Field]] = {}
    fields: list[Field] = []
    for each in declared:
        field = Field(each.key, each.shape, each.says(str) or "", each.required)
        group = each.says(Inside)
        if group is None:
            fields.append(field)
            continue
        if group.key not in inside:
            fields.append(Field(group.key, Record(group.key, ()), group.meaning, required=True))
        inside.setdefault(group.key, []).append(field)
    for key, group in inside.items():
        keys = tuple(field.key for field in group)
        whole = Record(key, tuple(group), some_of=keys)
        fields = [replace(each, shape=whole) if each.key == key else each for each in fields]
    for each in declared:
        after = each.says(After)
        if after is not None:
            field = next(field for field in fields if field.key == each.key)
            fields.remove(field)
            fields.insert([field.key for field in fields].index(after.key) + 1, field)
    return tuple(fields)


def _declared(thing: type) -> Iterator[_Declared]:
    """The fields that authors fill in, in the order of the class."""
    hints = get_type_hints(thing, _names(thing), include_extras=True)
    for name, field in thing.__dataclass_fields__.items():  # type: ignore[attr-defined]
        hint = hints[name]
        hint = hint.type if isinstance(hint, InitVar) else hint
        if get_origin(hint) is Annotated:
            inner, *said = get_args(hint)
            required = field.default is MISSING and field.default_factory is MISSING
            yield _Declared(name, inner, required, tuple(said))


def _names(thing: type) -> dict[str, Any]:
    """Every name that annotations of a class may use."""
    from troubleshoot.knowledge.forms import pieces

    found: dict[str, Any] = {}
    for module in (vocabulary, shapes, pieces, model, sys.modules[thing.__module__]):
        found |= vars(module)
    own = {each.__name__: each for each in (Key, After, Of, Inside, Items)}
    return found | own | {"InitVar": InitVar}


def _shape_of(kind: Any) -> Shape:
    """The shape that a type tells of itself."""
    if kind in _PLAIN:
        return _PLAIN[kind]
    origin, inner = get_origin(kind), get_args(kind)
    if origin is Literal:
        return Choice(inner)
    if origin in (Union, types.UnionType):
        return _shape_of(next(each for each in inner if each is not types.NoneType))
    if origin is tuple:
        item = _shape_of(inner[0])
        return OneOrMore(item) if isinstance(item, Choice) else ListOf(item)
    return form_of(kind)
