"""The canonical style of rule files: golden pages, comments, and what cannot be kept."""

from __future__ import annotations

import pytest

from tests.knowledge.small_rules import FILES
from troubleshoot.knowledge.formatting import format_file
from troubleshoot.knowledge.problems import RuleFileError

ROUGH = """\
# Whose card this is.

#   Kept as it stands.
repair: {who: {any: [refrigerant]}, part-cost: "250-to-1000", minutes: 180,
  what: "Find the leak with a detector or soap, mend it, pull and hold a vacuum, weigh the charge in, and note the weight in the log."}
fault: low-charge
is: cause
name: "Low charge: from a leak"
source: ['common practice, no source']
format: 1
how-common: common
subsystem: refrigerant
exists-when: {heat: ["on"]}
evidence:
  never: []
  often: [{superheat: [high]}, {any-of: [{sight-glass: [bubbles, empty]}, {oil-marks: seen}]}]
  almost-always: [{subcooling: [low, zero]}]
examples:
  - {readings: [{outcome: high, test: superheat}], names-it: true, name: hot line}
  - {readings: [{outcome: low, test: superheat}, {test: subcooling, text: '2 F'}], names-it: false, name: 'cold, wet line'}
"""  # noqa: E501
SMOOTH = """\
# Whose card this is.

#   Kept as it stands.
format: 1
fault: low-charge
name: 'Low charge: from a leak'
subsystem: refrigerant
is: cause
how-common: common
exists-when: {heat: 'on'}
evidence:
  almost-always:
    - subcooling: [low, zero]
  often:
    - superheat: high
    - any-of:
        - {sight-glass: [bubbles, empty]}
        - {oil-marks: seen}
  never: []
repair:
  what: >-
    Find the leak with a detector or soap, mend it, pull and hold a vacuum, weigh the charge in, and
    note the weight in the log.
  minutes: 180
  part-cost: 250-to-1000
  who: {any: [refrigerant]}
source: common practice, no source
examples:
  - name: hot line
    names-it: true
    readings: [{test: superheat, outcome: high}]
  - name: cold, wet line
    names-it: false
    readings:
      - {test: superheat, outcome: low}
      - {test: subcooling, text: 2 F}
"""


def test_a_rough_card_comes_out_in_the_canonical_style() -> None:
    rough = ROUGH.replace(
        "source: [common practice, no source]", "source: ['common practice, no source']"
    )
    assert format_file(rough) == SMOOTH
    assert format_file(SMOOTH) == SMOOTH


def test_windows_line_ends_come_out_plain() -> None:
    assert format_file(SMOOTH.replace("\n", "\r\n")) == SMOOTH


@pytest.mark.parametrize("name", sorted(FILES))
def test_the_small_rules_settle_at_once(name: str) -> None:
    formatted = format_file(FILES[name])
    assert format_file(formatted) == formatted
    assert formatted.startswith("format: 1\n")


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("format: 1\n# below\nretired: []\n", "2:1"),
        ("format: 1 # beside\nretired: []\n", "1:11"),
        ("format: 1\nretired: [] # beside\n", "2:13"),
        ("format: 1\nretired:\n  # within\n  - a\n", "3:3"),
        ("format: 1\nretired: [a, # within\n  b]\n", "2:14"),
        ("format: 1\nretired: []\n\n# at the end\n", "4:1"),
    ],
)
def test_a_comment_that_would_be_lost_is_refused_at_its_place(text: str, place: str) -> None:
    with pytest.raises(RuleFileError) as caught:
        format_file(text, "a.yaml")
    assert str(caught.value) == (
        f"a.yaml:{place}: a comment that formatting would lose; move it to the top of the file"
    )


@pytest.mark.parametrize(
    "published",
    ["'a # b'", '"a # b"', "a#b", ">-\n      a # b\n      # c", "|\n      # a\n      b"],
)
def test_a_hash_inside_a_text_is_no_comment(published: str) -> None:
    text = f"format: 1\nsources:\n  - id: a\n    published: {published}\n"
    assert "#" in format_file(text).split("published:")[1]


def test_a_comment_beside_the_sign_of_a_folded_text_is_no_part_of_it() -> None:
    text = "format: 1\nsources:\n  - id: a\n    published: >- # lost\n      text\n"
    with pytest.raises(RuleFileError, match=r"a\.yaml:4:19: a comment"):
        format_file(text, "a.yaml")


def test_a_file_that_does_not_fit_its_form_is_refused() -> None:
    with pytest.raises(RuleFileError, match=r"a\.yaml:2:10: retired must be a list"):
        format_file("format: 1\nretired: a\n", "a.yaml")


def test_a_complaint_that_lists_faults_as_before_is_written_in_grades() -> None:
    old = (
        "format: 1\ncomplaints:\n  - id: hot\n    says: It is hot\n    faults: [a, b, c]\n"
        "    also: d\n    impossible-for: [e]\n    first-tests: [t]\n"
    )
    new = (
        "format: 1\ncomplaints:\n  - id: hot\n    says: It is hot\n    first-tests: [t]\n"
        "    brought-by: {almost-always: [a], often: [b, c], seldom: [d], never: [e]}\n"
    )
    assert format_file(old, kind="complaints") == new
    assert format_file(new, kind="complaints") == new
