"""Text from outside: turned away at the door where it hides or drives, harmless on the way out."""

from __future__ import annotations

import json
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import first_refused, in_json, markdown, one_line, shown

ANYTHING = st.text(
    st.one_of(
        st.characters(),
        st.characters(categories=["Cs", "Cc", "Cf"]),
        st.sampled_from("\\`*_[]<>|~&#+-=1.)( \n\t\x1b\u202e"),
    ),
    max_size=30,
)


@given(ANYTHING)
def test_a_line_is_taken_as_it_is_or_not_at_all(text: str) -> None:
    try:
        line = one_line(text, "it", 20)
    except NotUsable:
        body = text.rstrip("\r\n")
        assert len(text) > 20 or first_refused(body) is not None or "\n" in body
    else:
        assert line == text.rstrip("\r\n").replace("\t", " ").strip()
        assert len(line) <= 20 and first_refused(line) is None


@pytest.mark.parametrize(
    "text", ["\x1c", "\x1f\x1e", "\u2028", "\x85", "\ud800", "\udce9", "\x1b[A"]
)
def test_nothing_that_python_calls_blank_becomes_an_empty_line(text: str) -> None:
    """An empty line is Enter, and Enter may confirm a step."""
    with pytest.raises(NotUsable):
        one_line(text + "\n", "it")


def test_a_byte_that_is_no_text_is_called_so() -> None:
    with pytest.raises(NotUsable, match="a byte that is no UTF-8 text"):
        one_line(b"caf\xe9".decode("utf-8", "surrogateescape"), "it")


@given(ANYTHING)
def test_nothing_shown_drives_a_terminal(text: str) -> None:
    assert first_refused(shown(text)) is None
    assert first_refused(text) is not None or shown(text) == text


@given(ANYTHING)
def test_json_shown_means_the_same(text: str) -> None:
    written = in_json(json.dumps({"text": text}, ensure_ascii=False))
    assert first_refused(written) is None
    assert json.loads(written) == {"text": text} or max(text) >= "\ud800"


@given(ANYTHING)
def test_every_mark_of_markdown_is_escaped_and_no_letter_lost(text: str) -> None:
    line = markdown(text)
    assert "\n" not in line and first_refused(line) is None
    unescaped = re.sub(r"\\(.)", "", line)
    assert not re.search(r"[\\`*_\[\]<>|~&#]", unescaped)
    assert not re.match(r"([-+=]+|[0-9]{1,9}[.)])(\s|$)", line)
    assert re.sub(r"\\(.)", r"\1", line) == " ".join(shown(" ".join(text.split())).split())


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("# open the gas", "\\# open the gas"),
        ("- no need", "\\- no need"),
        ("1. skip it", "1\\. skip it"),
        ("-10 F", "-10 F"),
        ("5.12 uF", "5.12 uF"),
        ("<script>", "\\<script\\>"),
        ("a | b", "a \\| b"),
        ("one\ntwo", "one two"),
        ("\x1b[2J", "\\<U+001B\\>\\[2J"),
    ],
)
def test_text_in_markdown_stands_for_itself(text: str, written: str) -> None:
    assert markdown(text) == written
