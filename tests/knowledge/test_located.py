"""Strict YAML: what is read, what is refused, in which words and at which place."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
import yaml

from troubleshoot.knowledge.located import MOST_DEPTH, read_located
from troubleshoot.knowledge.nodes import LocatedList, LocatedMapping, LocatedValue, plain
from troubleshoot.knowledge.problems import RuleFileError

CUT_OFF = "the text is cut off at ' #'; put the text in quotes, or the comment on a line of its own"


@pytest.fixture(params=["the C parser", "the pure parser"], autouse=True)
def _parser(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    if request.param == "the pure parser":
        monkeypatch.setattr(yaml, "__with_libyaml__", False)
    elif not yaml.__with_libyaml__:
        pytest.skip("this machine has no C parser")


def refused(text: str | bytes) -> list[str]:
    with pytest.raises(RuleFileError) as caught:
        read_located(text, "a.yaml")
    return str(caught.value).splitlines()


def test_values_keep_the_place_where_they_begin() -> None:
    root = read_located("a: 1\nb:\n  - x\n  - {c: true}\n", "a.yaml")
    assert isinstance(root, LocatedMapping)
    items = root.entries["b"].value
    assert isinstance(items, LocatedList)
    assert (root.entries["b"].line, root.entries["b"].column) == (2, 1)
    assert items.items[0] == LocatedValue("x", 3, 5)
    inner = items.items[1]
    assert isinstance(inner, LocatedMapping)
    assert inner.entries["c"].value == LocatedValue(True, 4, 9)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("yes", "yes"),
        ("no", "no"),
        ("on", "on"),
        ("off", "off"),
        ("true", True),
        ("false", False),
        ("null", None),
        ("~", None),
        ("", None),
        ("12", 12),
        ("-12", -12),
        ("0", 0),
        ("1.10", 1.1),
        ("-.5", -0.5),
        ("'010'", "010"),
        ('"12:30"', "12:30"),
        ("R-410A", "R-410A"),
        ("2026-11-25", "2026-11-25"),
        ("24-28 V", "24-28 V"),
        ("6 % of the rated value", "6 % of the rated value"),
        ("one\n  two", "one two"),
        (">-\n  one\n  two", "one two"),
    ],
)
def test_plain_words_mean_what_an_author_expects(text: str, value: object) -> None:
    assert plain(read_located(f"key: {text}\n", "a.yaml")) == {"key": value}


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("010", "010 is a number that begins with zero; write it out plainly, or quote it as text"),
        ("12:30", "12:30 is a number with colons; write it out plainly, or quote it as text"),
        ("0x1F", "0x1F is a number that is not decimal; write it out plainly, or quote it as text"),
        ("1_000", "1_000 is a number with underscores; write it out plainly, or quote it as text"),
        ("1e3", "1e3 is a number with an exponent; write it out plainly, or quote it as text"),
        (".inf", ".inf is a number without a value; write it out plainly, or quote it as text"),
        ("5.", "5. is a number that ends in a point; write it out plainly, or quote it as text"),
        ("True", "True with capitals; write true"),
        ("&a 1", "an anchor, &a; write the value out each time"),
        ("*a", "an alias, *a; write the value out again"),
        ("!!str a", "a tag, tag:yaml.org,2002:str; leave it out"),
        ("!a b", "a tag, !a; leave it out"),
        ("Fan #2 is weak", CUT_OFF),
        ("Fan # 2 is weak", CUT_OFF),
        ("one: two", "a colon inside unquoted text; put the text in quotes"),
        ("%x", "a text that begins with a special sign; put it in quotes"),
        ("'x' y", "a line that does not line up, or text after a closing quote; indent it like its "
         "neighbors; put the whole text in quotes"),
        ("\"\\q\"", "a backslash inside double quotes; use single quotes"),
        ("\"a\\e[2J\"", "the control character U+001B in the text; delete it"),
        ("\"a\\u202eb\"", "the right-to-left override U+202E in the text; delete it"),
        ("- a", "a dash in the wrong place; begin the list on a line of its own"),
    ],
)  # fmt: skip
def test_a_value_in_doubt_is_refused_in_one_sentence(text: str, message: str) -> None:
    lines = refused(f"key: {text}\n")
    assert len(lines) == 1
    place, _, said = lines[0].partition(": ")
    assert place.startswith("a.yaml:1:")
    assert said == message


def test_a_second_equal_key_names_both_lines() -> None:
    assert refused("a: 1\nb: 2\na: 3\n") == [
        "a.yaml:3:1: a stands twice, on line 1 and on line 3; keep one of them"
    ]


def test_all_problems_of_a_file_are_told_in_order() -> None:
    assert [line.split(": ")[0] for line in refused("a: 010\nb: &x 1\na: 2\n3: 4\n")] == [
        "a.yaml:1:4",
        "a.yaml:2:4",
        "a.yaml:3:1",
        "a.yaml:4:1",
    ]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "a.yaml:1:1: the file is empty; begin with format: 1"),
        ("# only a comment\n", "a.yaml:1:1: the file is empty; begin with format: 1"),
        ("a: 1\n--- \nb: 2\n", "a.yaml:2:1: a second document in one file; "
         "keep one document a file"),
        ("%YAML 1.1\n---\na: 1\n", "a.yaml:1:1: a % directive; leave it out"),
        ("a:\n\t- x\n", "a.yaml:2:1: a tab; indent with spaces"),
        ("a: 'x\n", "a.yaml:1:4: a quote that is never closed; close the quote"),
        ("a: 1\nbb\nc: 2\n", "a.yaml:3:1: a line without `key:`; write key: value, or use quotes"),
        ("[x]: 1\n", "a.yaml:1:1: a key that is no word; put the key in quotes"),
        ("true: 1\n", "a.yaml:1:1: the key true is no word; put the key in quotes"),
        ("a: \u202ex\n", "a.yaml:1:4: the right-to-left override U+202E in the text; delete it"),
        ("a: b\x07\n", "a.yaml:1:5: the control character U+0007 in the text; delete it"),
        (b"a: 1\nb: \xff\n", "a.yaml:2:1: this line is not UTF-8 text; save the file as UTF-8"),
        ("a" * 1_000_001, "a.yaml:1:1: the file is over 1000000 bytes; divide it into smaller "
         "files"),
        ("[" * 30, f"a.yaml:1:{MOST_DEPTH + 1}: more than {MOST_DEPTH} levels inside each other; "
         "flatten it"),
    ],
)  # fmt: skip
def test_a_file_in_doubt_is_refused_in_one_sentence(text: str | bytes, message: str) -> None:
    assert refused(text) == [message]


def test_too_many_values_are_refused() -> None:
    assert "the file holds too many values" in refused("[" + "1," * 100_001 + "]")[0]


def test_windows_line_ends_and_a_byte_order_mark_are_read() -> None:
    assert plain(read_located(b"\xef\xbb\xbfa: 1\r\nb: 2\r\n", "a.yaml")) == {"a": 1, "b": 2}


def test_a_comment_on_a_line_of_its_own_is_no_slip() -> None:
    assert plain(read_located("# why\na: x\n# why not\nb: [y] # fine\n", "a.yaml")) == {
        "a": "x",
        "b": ["y"],
    }


def _places(node: object) -> Iterator[tuple[int, int]]:
    if isinstance(node, LocatedMapping):
        for entry in node.entries.values():
            yield entry.line, entry.column
            yield from _places(entry.value)
    elif isinstance(node, LocatedList):
        for item in node.items:
            yield from _places(item)
    elif isinstance(node, LocatedValue):
        yield node.line, node.column


def test_columns_count_characters_not_bytes() -> None:
    root = read_located("µF °C: [é, x]\n", "a.yaml")
    assert list(_places(root)) == [(1, 1), (1, 9), (1, 12)]
