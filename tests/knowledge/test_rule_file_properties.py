"""What must hold for any rule file whatever: no other error, no change of meaning."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.knowledge.rule_data import as_yaml, data_for
from troubleshoot.knowledge.assembling import build_knowledge
from troubleshoot.knowledge.base import read_texts
from troubleshoot.knowledge.checks import essential_problems
from troubleshoot.knowledge.formatting import WIDTH, format_file, kind_of_content
from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.layout import RuleText
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.nodes import plain
from troubleshoot.knowledge.problems import Problem, RuleFileError
from troubleshoot.knowledge.reading_forms import read_form
from troubleshoot.knowledge.yaml_scalars import write_scalar

NAMES = {
    "tests": "tests/a.yaml",
    "fault": "faults/a/b.yaml",
    "procedures": "procedures/a.yaml",
    "unit": "units/a.yaml",
    **{k: f"{k}.yaml" for k in FORMS if k not in ("tests", "fault", "procedures", "unit")},
}
YAML_LIKE = st.lists(
    st.sampled_from(
        [
            *("a", "b: ", "- ", "\n", "  ", "    ", ": ", "? ", "{", "}", "[", "]", ", ", "'", '"'),
            *("&x ", "*x ", "!!str ", "---\n", "...\n", "%YAML 1.1\n", "# c", "|\n", ">-\n", "~"),
            *("010", "1.5", "true", "format: 1\n", "tests:\n", "fault: x\n", "\t", "\\", "\ufeff"),
        ]
    ),
    max_size=40,
).map("".join)
KINDS = st.sampled_from(sorted(FORMS))
some = settings(
    max_examples=25,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)


def said_of(kind: str, data: bytes) -> list[Problem]:
    """All that is said of one file of a kind."""
    base = read_texts([RuleText(NAMES[kind], NAMES[kind], 0, data)])
    return [*base.problems, *essential_problems(base)]


@given(
    KINDS,
    st.one_of(
        st.binary(max_size=200),
        st.text(max_size=200).map(lambda text: text.encode("utf-8", "surrogatepass")),
        YAML_LIKE.map(str.encode),
    ),
)
def test_any_bytes_give_problems_with_a_place_and_nothing_else(kind: str, data: bytes) -> None:
    for problem in said_of(kind, data):
        assert 1 <= problem.line <= data.count(b"\n") + 2
        assert problem.column >= 1
        assert problem.what and problem.instead
        assert "\n" not in str(problem)


@given(YAML_LIKE)
def test_formatting_anything_gives_a_file_or_our_own_error(text: str) -> None:
    try:
        formatted = format_file(text)
    except RuleFileError as error:
        assert error.problems
    else:
        assert format_file(formatted) == formatted


TREES = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(-9, 999), st.text("ab-: ", max_size=8)),
    lambda inner: st.one_of(
        st.lists(inner, max_size=4),
        st.dictionaries(
            st.sampled_from([field.key for form in FORMS.values() for field in form.fields]),
            inner,
            max_size=5,
        ),
    ),
    max_leaves=12,
)


@given(KINDS, st.dictionaries(st.text("abc", min_size=1), TREES), TREES)
def test_a_tree_of_the_wrong_form_gives_problems_and_nothing_else(
    kind: str, others: dict[str, Any], tree: Any
) -> None:
    keys = [field.key for field in FORMS[kind].fields]
    data = {**others, **dict.fromkeys(keys, tree)}
    problems = said_of(kind, as_yaml(data).encode())
    assert problems
    assert all(problem.line == 1 for problem in problems)


@pytest.mark.parametrize("kind", sorted(FORMS))
@some
@given(data=st.data())
def test_formatting_keeps_the_meaning_and_settles_at_once(kind: str, data: st.DataObject) -> None:
    text = as_yaml(data.draw(data_for(FORMS[kind])))
    before, problems = read_form(FORMS[kind], read_located(text, "x"), "x")
    assert problems == []
    formatted = format_file(text, kind=kind)
    after, problems = read_form(FORMS[kind], read_located(formatted, "x"), "x")
    assert problems == []
    assert format_file(formatted, kind=kind) == formatted
    assert build_knowledge([(kind, after)]) == build_knowledge([(kind, before)])


@given(
    st.one_of(
        st.text(st.characters(blacklist_categories=["Cc", "Cf", "Cs", "Zl", "Zp", "Cn", "Co"])),
        st.integers(-(10**14), 10**14),
        st.integers(-(10**9), 10**9).map(lambda number: number / 1000),
        st.booleans(),
        st.none(),
    ),
    st.booleans(),
)
def test_any_value_written_is_read_back(value: Any, in_brackets: bool) -> None:
    written = write_scalar(value, in_brackets=in_brackets)
    text = f"[{written}]" if in_brackets else f"- {written}"
    assert plain(read_located(text, "x")) == [value]


def test_the_kind_of_file_is_told_from_its_keys() -> None:
    for kind, form in FORMS.items():
        keys = {field.key: 1 for field in form.fields}
        assert kind_of_content(read_located(as_yaml(keys), "x")) == kind


@some
@given(data_for(FORMS["hazards"]))
def test_formatted_lines_fit_the_page_unless_one_word_is_longer(data: Any) -> None:
    for line in format_file(as_yaml(data)).splitlines():
        assert len(line) <= WIDTH or max(len(word) for word in line.split()) > 20
