"""Checks of what a sound unit reads, of relations between readings, and of typical units."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import FILES, said, write_files

SOUND = """\
format: 1
source: common practice, no source
days:
  - {subsystems: capacitors, conditions: {line-temperature: [50, 60]}}
sound:
  - {id: capacitance, reads: {of: capacitor-rated, times: 0.99}}
  - {id: capacitor-rated, reads: {is: 40}}
  - {id: line-temperature, reads: {of: evaporating-temperature, plus: 10}}
  - {id: evaporating-temperature, reads: {is: 40, when: {metering: txv}}}
"""
RELATIONS = """\
format: 1
relations:
  - id: line-above-coil
    must: {quantity: superheat, at-least: -0.7}
    where: {quantity: line-temperature, above: 0}
    says: the line is colder than the coil
    source: common practice, no source
"""
UNIT = """\
format: 1
unit: old-one
about: one that stands everywhere
serves: practice
facts: {metering: txv, circuits: 2}
plate:
  capacitor-rated: {capacitor condenser fan 1: 40 uF}
"""
ALL = {
    **FILES,
    "sound-unit.yaml": SOUND,
    "relations.yaml": RELATIONS,
    "units/old-one.yaml": UNIT,
}


def test_files_that_hold_together_pass(tmp_path: Path) -> None:
    assert said(write_files(tmp_path / "rules", ALL)) == []


@pytest.mark.parametrize(
    ("name", "old", "new", "message"),
    [
        ("sound-unit.yaml", "  - {id: capacitance, reads: {of: capacitor-rated, times: 0.99}}\n",
         "",
         "rules/tests/capacitors.yaml:30:5: what does capacitance read on a sound unit; add "
         "capacitance to sound-unit.yaml, or say there under none-because why [sound-readings]"),
        ("sound-unit.yaml", "reads: {is: 40, when: {metering: txv}}",
         "reads: {of: line-temperature}",
         "rules/sound-unit.yaml:9:35: evaporating-temperature is reckoned from itself; say one of "
         "them as a plain number [sound-readings]"),
        ("sound-unit.yaml", "{is: 40}}", "{is: 40}, none-because: nobody knows}",
         "rules/sound-unit.yaml:7:44: capacitor-rated has a sound number, and a reason why it has "
         "none; keep one of the two [sound-readings]"),
        ("sound-unit.yaml", "{of: evaporating-temperature", "{of: evaporating-temperatur",
         "rules/sound-unit.yaml:8:40: no reference is called evaporating-temperatur; did you mean "
         "evaporating-temperature [unknown-names]"),
        ("sound-unit.yaml", "id: capacitance,", "id: capacitanc,",
         "rules/sound-unit.yaml:6:10: no reference is called capacitanc; did you mean capacitance "
         "[unknown-names]"),
        ("sound-unit.yaml", "{of: capacitor-rated, times: 0.99}", "{times: 0.99}",
         "rules/sound-unit.yaml:6:31: unknown key times in way; "),
        ("sound-unit.yaml", "{of: capacitor-rated, times: 0.99}", "{formula: copy}",
         "rules/sound-unit.yaml:6:30: inputs is missing in number by a formula; "),
        ("sound-unit.yaml", "{is: 40}}", "{is: 40, of: capacitance}}",
         "rules/sound-unit.yaml:7:34: way has more than one of its possible keys; write exactly "
         "one of: is, of, formula [form]"),
        ("relations.yaml", "quantity: superheat", "quantity: superheet",
         "rules/relations.yaml:4:22: no quantity is called superheet; did you mean superheat "
         "[unknown-names]"),
        ("relations.yaml", "at-least: -0.7", "at-least: -0.7, relative-to: line-temperature",
         "rules/relations.yaml:4:5: relative to line-temperature, but how; write as: difference, "
         "percent-of, ... [known-quantities]"),
        ("units/old-one.yaml", "metering: txv", "metering: txw",
         "rules/units/old-one.yaml:5:9: txw is no value of metering; did you mean txv "
         "[typical-units]"),
        ("units/old-one.yaml", "40 uF", "40 V",
         "rules/units/old-one.yaml:7:3: capacitor-rated 40 V: "),
        ("units/old-one.yaml", "unit: old-one", "unit: new-one",
         "rules/units/old-one.yaml:2:1: the unit new-one stands in old-one.yaml; name the file "
         "new-one.yaml [typical-units]"),
        ("units/old-one.yaml", "metering: txv", "meetering: txv",
         "rules/units/old-one.yaml:5:9: no fact is called meetering; did you mean metering "
         "[unknown-names]"),
    ],
)  # fmt: skip
def test_a_slip_is_named_at_its_place(
    tmp_path: Path, name: str, old: str, new: str, message: str
) -> None:
    assert ALL[name].count(old) == 1
    folder = write_files(tmp_path / "rules", {**ALL, name: ALL[name].replace(old, new)})
    found = said(folder)
    assert any(problem.startswith(message) for problem in found), found


def test_rules_without_practice_need_no_sound_unit(tmp_path: Path) -> None:
    assert said(write_files(tmp_path / "rules", FILES)) == []
