"""A scenario to start from: a small one that holds together, for an author to change."""

from __future__ import annotations

import re
from typing import Final

_LINES: Final = """\
# A scenario of your own. Change every line; `troubleshoot practise {file}` plays it, and tells of
# whatever does not hold together. `troubleshoot practise schema` prints the JSON Schema of such
# files, for editors. A test that is not listed reads as on a sound unit.
format: 1
scenario: {name}
title: 'Tea rooms at an invented place, unit 1: runs all day'
subsystem: filters-coil-duct
difficulty: 1
call: 'It runs all day and the air is hardly moving.'
complaint: weak-airflow
unit:
  metering: txv
  refrigerant: R-410A
  supply-phase: three
  compressor-phase: three
  circuits: 1
  nameplate-volts: 208 V
  compressor-rla: 17.0 A
conditions: {{outdoor-temperature: 88 F, minutes-running: 25 min}}
readings:
  - {{test: air-filters, outcome: loaded, says: 'Grey and bowed in.'}}
  - {{test: filter-pressure-drop, text: 0.9 in wc}}
  - {{test: suction-pressure, text: 104 psig}}
  - {{test: suction-line-temperature, text: 43.0 F}}
  - {{test: return-air-temperature, text: 76 F}}
  - {{test: supply-air-temperature, text: 50.0 F}}
# What the readings come to, so that the checker can hold you to it.
works-out:
  - {{quantity: superheat, value: 9.6 F}}
  - {{quantity: air-split, value: 26.0 F}}
truth:
  faults:
    - {{fault: filters-loaded}}
  repair: New filters of the right size.
  proof: A fifth of an inch across them and a split of 20 F.
  proof-readings:
    - {{test: filter-pressure-drop, text: 0.2 in wc}}
teaches: A wide split with low suction is missing air.
source: common practice, no source
"""


def starting_scenario(file_name: str) -> str:
    """The text of a scenario to start from, named after its file."""
    stem = file_name.removesuffix(".yaml")
    name = "-".join(re.findall(r"[a-z0-9]+", stem.lower())) or "my-scenario"
    return _LINES.format(name=name, file=file_name)
