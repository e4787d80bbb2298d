"""Invented rule files made from the forms themselves, for property tests."""

from __future__ import annotations

import json
from typing import Any

from hypothesis import strategies as st

from troubleshoot.knowledge.shapes import (
    Anything,
    Choice,
    Exactly,
    Facts,
    Findings,
    Later,
    ListOf,
    Name,
    NewId,
    Number,
    OneOrMore,
    Pairs,
    Percent,
    Record,
    Shape,
    Tagged,
    Text,
    Truth,
    Word,
)

_TRICKY = "ab Z09.,:;#-_'\"{}[]()&*!|>%@`?~=<+/\\$µé°\n"
_TEXTS = st.text(_TRICKY, min_size=1, max_size=140).filter(str.strip)
_IDS = st.from_regex(r"[a-z0-9]{1,8}(-[a-z0-9]{1,8}){0,2}", fullmatch=True)
_WORDS = st.from_regex(r"[A-Za-z0-9.]{1,6}(-[A-Za-z0-9.]{1,6}){0,2}", fullmatch=True)


def data_for(shape: Shape, depth: int = 0) -> st.SearchStrategy[Any]:
    """Values that fit a shape, smaller the deeper they stand."""
    if isinstance(shape, Text):
        return _TEXTS.map(lambda text: text[: shape.longest])
    if isinstance(shape, NewId):
        return _IDS
    if isinstance(shape, Name):
        return st.one_of(_IDS, _TEXTS)
    if isinstance(shape, Word):
        return _WORDS
    if isinstance(shape, Choice):
        return st.sampled_from(shape.options)
    if isinstance(shape, Number):
        return _numbers(shape)
    if isinstance(shape, Exactly):
        return st.just(shape.number)
    if isinstance(shape, Percent):
        return st.integers(shape.least, shape.most).map(lambda number: f"{number} %")
    if isinstance(shape, Truth):
        return st.booleans()
    if isinstance(shape, Anything):
        return st.one_of(_TEXTS, st.integers(-99, 99), st.lists(_TEXTS, max_size=2))
    return _collection(shape, depth)


def as_yaml(data: Any) -> str:
    """The data as JSON, which is YAML too, and nothing like our own style."""
    return json.dumps(data, ensure_ascii=False)


def _numbers(shape: Number) -> st.SearchStrategy[Any]:
    least = -1000 if shape.least is None else shape.least
    most = 1000 if shape.most is None else shape.most
    whole = st.integers(int(least), int(most))
    if shape.whole:
        return whole
    return st.one_of(whole, st.integers(int(least * 100), int(most * 100)).map(lambda n: n / 100))


def _collection(shape: Shape, depth: int) -> st.SearchStrategy[Any]:
    more = 2 if depth < 2 else 1
    if isinstance(shape, ListOf):
        most = max(shape.least, min(shape.most, more))
        return st.lists(data_for(shape.item, depth + 1), min_size=shape.least, max_size=most)
    if isinstance(shape, OneOrMore):
        item = data_for(shape.item, depth + 1)
        return st.one_of(item, st.lists(item, max_size=more))
    if isinstance(shape, Pairs):
        key, value = data_for(shape.key, depth + 1), data_for(shape.value, depth + 1)
        least, most = shape.least, max(shape.least, min(shape.most, more))
        return st.dictionaries(key, value, min_size=least, max_size=most)
    if isinstance(shape, Findings):
        return _mappings(shape.least, min(shape.most, 2))
    if isinstance(shape, Facts):
        return _mappings(1, 2)
    if isinstance(shape, Tagged):
        options = [option for _, option in shape.options]
        if shape.name == "condition" and depth > 4:
            options = options[-2:]
        others = [] if shape.otherwise is None else [shape.otherwise]
        return st.one_of(*(data_for(option, depth + 1) for option in (*others, *options)))
    if isinstance(shape, Later):
        return st.deferred(lambda: data_for(shape.get(), depth + 1))
    assert isinstance(shape, Record)
    return _records(shape, depth)


def _mappings(least: int, most: int) -> st.SearchStrategy[Any]:
    words = st.one_of(_WORDS, st.lists(_WORDS, min_size=1, max_size=3))
    return st.dictionaries(_IDS, words, min_size=least, max_size=most)


def _records(shape: Record, depth: int) -> st.SearchStrategy[Any]:
    needed = {f.key: data_for(f.shape, depth + 1) for f in shape.fields if f.required}
    others = {f.key: data_for(f.shape, depth + 1) for f in shape.fields if not f.required}
    made = st.fixed_dictionaries(needed, optional=others)
    if not shape.some_of:
        return made
    one = st.sampled_from(shape.some_of).flatmap(
        lambda key: st.fixed_dictionaries({**needed, key: others[key]})
    )
    return one if depth > 2 else st.one_of(one, made.filter(lambda d: set(shape.some_of) & set(d)))
