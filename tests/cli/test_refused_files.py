"""Files that cannot be used are refused in a sentence that fits them, at once and no longer."""

from __future__ import annotations

from pathlib import Path

import pytest

from troubleshoot.cli import texts
from troubleshoot.cli.case_input import plain_of, read_text_of
from troubleshoot.cli.failures import Failure
from troubleshoot.reasoning.unit.equipment import InputRefused


@pytest.mark.parametrize("text", ["", "\n\n", "# nothing yet\n"])
def test_an_empty_case_is_told_what_a_case_holds(text: str, tmp_path: Path) -> None:
    """Regression: it was told to begin with format: 1, a key that no case has."""
    case = tmp_path / "case.yaml"
    case.write_text(text, "utf-8")
    with pytest.raises(InputRefused) as refused:
        plain_of(read_text_of(str(case)), str(case))
    (refusal,) = refused.value.refusals
    assert (refusal.problem, "format" in refusal.instead) == ("the file is empty", False)


def test_a_number_of_a_thousand_digits_is_not_told_whole(tmp_path: Path) -> None:
    case = tmp_path / "case.yaml"
    case.write_text(f"complaint: {'9' * 6000}\n", "utf-8")
    with pytest.raises(InputRefused) as refused:
        plain_of(read_text_of(str(case)), str(case))
    (refusal,) = refused.value.refusals
    assert refusal.problem == f"{'9' * 40}... is a number with too many digits"


def test_a_catalogue_that_cannot_be_written_is_refused_before_its_texts_are_gathered(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    gathered: list[str] = []
    monkeypatch.setattr(texts, "_texts_of_today", lambda: gathered.append("all") or ())
    with pytest.raises(Failure, match="cannot be written"):
        texts.write_catalogue(tmp_path / "nowhere" / "x.po")
    assert gathered == []
