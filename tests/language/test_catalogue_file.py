"""Catalogue files: what is written reads back the same, and what is wrong is told with its line."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.language.catalogue_file import Entry, catalogue_text, read_catalogue
from troubleshoot.outside.refusal import NotUsable

LINE = st.text(
    st.characters(blacklist_categories=("Cc", "Cs", "Zl", "Zp", "Zs")), min_size=1, max_size=30
)
TEXTS = st.text(max_size=60)
ENTRIES = st.builds(
    Entry, TEXTS.filter(bool), TEXTS, st.lists(LINE, max_size=2).map(tuple),
    st.lists(LINE, max_size=2).map(tuple), st.just(()), st.booleans(),
)  # fmt: skip


@given(st.lists(ENTRIES, max_size=6))
def test_what_is_written_reads_back(entries: list[Entry]) -> None:
    assert list(read_catalogue(catalogue_text(entries), "a file")) == entries


def test_a_translator_may_write_as_such_files_are_written_elsewhere() -> None:
    text = (
        'msgid ""\nmsgstr "Language: xx\\n"\n\n# not sure of this\n#. note\n#: a.py:1 b.py:2\n'
        '#, fuzzy, python-brace-format\nmsgid ""\n"two "\n"lines"\nmsgstr ""\n"zwei \\"Zeilen\\""\n'
        '\n#~ msgid "gone"\n#~ msgstr "weg"\n'
    )
    (entry,) = read_catalogue(text, "a file")
    assert entry == Entry(
        "two lines", 'zwei "Zeilen"', ("a.py:1 b.py:2",), ("note",), ("not sure of this",), True
    )


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('msgid "a"\nmsgid "b"\n', "line 2: msgid is not expected here"),
        ('msgstr "a"\n', "line 1: msgstr is not expected here"),
        ('msgid "a"\n', "line 2: the file ends within an entry"),
        ('msgid a\nmsgstr ""\n', "line 1: no text in double quotes"),
        ('"a"\n', "line 1: a text without msgid or msgstr before it"),
        ('msgid "a"\nmsgstr "b\n', "line 2: no text in double quotes"),
        ('msgctxt "a"\n', "line 1: msgctxt is not expected here"),
    ],
)
def test_what_is_no_catalogue_is_refused_with_its_line(text: str, said: str) -> None:
    with pytest.raises(NotUsable, match=said):
        read_catalogue(text, "a file")
