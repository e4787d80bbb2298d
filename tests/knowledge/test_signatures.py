"""A caution that was taken away needs a signature; a signature names something and says why."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import CAPACITORS, Change, said, write_rules
from troubleshoot.knowledge.checks import check_rules
from troubleshoot.knowledge.load import load_rules

SECTION = "capacitance-one-side-off"
NEEDS = "    needs-state: [meter-proved, capacitors-discharged]\n"
GOOD = "{drops: gas-shut, by: senior technician, on: 2026-11-29, why: no gas comes near a fan}"


def signed(text: str) -> Change:
    return (CAPACITORS, NEEDS, f"{NEEDS}    signed: [{text}]\n")


def test_a_signature_becomes_part_of_the_test(tmp_path: Path) -> None:
    folder = write_rules(tmp_path, signed(GOOD))
    assert said(folder) == []
    (signature,) = load_rules(folder, cache=tmp_path / "cache").tests[SECTION].signed
    assert (signature.drops, signature.by, signature.on, signature.why) == (
        ("gas-shut",), "senior technician", "2026-11-29", "no gas comes near a fan",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        (
            "gas-shut",
            "gas-shot",
            "the signature drops gas-shot, which names nothing here; did you mean gas-shut",
        ),
        (
            "gas-shut",
            "meter-proved",
            "the signature drops meter-proved, which is still there; delete the signature",
        ),
        ("2026-11-29", "2026-11-31", "2026-11-31 is no day; write it as 2026-11-29"),
        ("2026-11-29", "yesterday", "yesterday is no day; write it as 2026-11-29"),
        (
            "no gas comes near a fan",
            "not needed",
            "the signature for gas-shut gives no reason; say why in 4 words or more",
        ),
    ],
)
def test_a_signature_nobody_could_be_asked_about_is_told(
    tmp_path: Path, old: str, new: str, message: str
) -> None:
    folder = write_rules(tmp_path, signed(GOOD.replace(old, new)))
    assert said(folder) == [f"rules/tests/capacitors.yaml:26:14: {message} [signatures]"]


def test_a_signature_without_a_name_is_refused_by_the_form(tmp_path: Path) -> None:
    folder = write_rules(tmp_path, signed(GOOD.replace("by: senior technician, ", "")))
    assert len(said(folder)) == 1
    assert "[form]" in said(folder)[0] and " by" in said(folder)[0]


def against(earlier: Path, now: Path) -> list[str]:
    problems = check_rules(now, load_rules(earlier, cache=earlier.parent / "cache"))
    return [
        str(problem).replace(f"{now.parent}/", "")
        for problem in problems
        if problem.check == "dropped-cautions"
    ]


def write_sign(word: str) -> str:
    return f"signed: [{{drops: {word}, by: ROLE, on: DATE, why: REASON}}]"


def test_what_is_gone_is_told_at_its_place_until_it_is_signed(tmp_path: Path) -> None:
    earlier = write_rules(tmp_path / "was", (CAPACITORS, NEEDS, NEEDS.replace("]", ", gas-shut]")))
    assert against(earlier, write_rules(tmp_path / "now")) == [
        f"rules/tests/capacitors.yaml:25:5: {SECTION} no longer needs gas-shut; "
        f"put it back, or sign it there: {write_sign('gas-shut')}"
    ]
    assert against(earlier, write_rules(tmp_path / "signed", signed(GOOD))) == []
    other = signed(GOOD.replace("gas-shut", "gauges-on"))
    assert len(against(earlier, write_rules(tmp_path / "other", other))) == 1


def test_a_hazard_signs_for_itself(tmp_path: Path) -> None:
    earlier = write_rules(tmp_path / "was")
    shorter = ("hazards.yaml", "Leave, and call from outside.", "Leave.")
    assert against(earlier, write_rules(tmp_path / "now", shorter)) == [
        "rules/hazards.yaml:12:5: gas-smell said 5 words and says 1 now; "
        f"put it back, or sign it there: {write_sign('what-to-do')}"
    ]
    why = "by: senior, on: 2026-11-29, why: one word is remembered best"
    text = f"Leave.\n    signed: [{{drops: what-to-do, {why}}}]"
    signs = ("hazards.yaml", "Leave, and call from outside.", text)
    assert against(earlier, write_rules(tmp_path / "signed", signs)) == []


def test_what_is_retired_is_signed_where_it_is_retired(tmp_path: Path) -> None:
    swans = (
        "\n  - id: swans\n    signal: NOTICE\n    when: [{complaint: smells-gas}]\n"
        "    what-to-do: Mind them.\n    source: common practice, no source\n"
    )
    last = (
        "    what-to-do: Lock it out and test every leg.\n    source: common practice, no source\n"
    )
    earlier = write_rules(tmp_path / "was", ("hazards.yaml", last, last + swans))
    assert against(earlier, write_rules(tmp_path / "now")) == [
        "rules/retired.yaml:1:1: the hazard swans and its cautions are gone; "
        f"put it back, or retire and sign it there: {write_sign('swans')}"
    ]
    why = "by: senior, on: 2026-11-29, why: no swans nest here any more"
    signs = ("retired.yaml", "[fan-section-bad]", f"[swans]\nsigned: [{{drops: swans, {why}}}]")
    now = write_rules(tmp_path / "signed", signs)
    assert against(earlier, now) == []
    assert "signatures" not in "".join(said(now))
    unretired = ("retired.yaml", "[fan-section-bad]", f"[]\nsigned: [{{drops: swans, {why}}}]")
    assert any(
        "names nothing here" in line for line in said(write_rules(tmp_path / "x", unretired))
    )
