"""A small invented rule base that passes every check, and ways to spoil it in one place."""

from __future__ import annotations

from pathlib import Path

from troubleshoot.knowledge.checks import check_rules

Change = tuple[str, str, str]
"""(file, text that stands in it once, text to put instead)."""

FILES = {
    "quantities.yaml": """\
format: 1
quantities:
  - {id: capacitance, unit: uF, per: capacitor, meaning: microfarads of one section}
  - {id: line-temperature, unit: F, per: circuit, meaning: suction line}
  - {id: evaporating-temperature, unit: F, per: circuit, meaning: coil}
  - id: superheat
    unit: F-diff
    per: circuit
    meaning: line above evaporating temperature
    computed: [{formula: difference, inputs: [line-temperature, evaporating-temperature]}]
""",
    "equipment.yaml": """\
format: 1
facts:
  - {id: metering, values: [fixed-orifice, txv], asks: 'How is it metered?'}
  - {id: circuits, values: [one, two-or-more], counts: circuit, asks: 'How many circuits?'}
  - {id: fan-phase, values: [single, three], asks: 'Which phase has the fan?'}
nameplate:
  - {id: capacitor-rated, unit: uF, per: capacitor, from: nameplate, meaning: on the can}
implies:
  - {when: {fan-phase: three}, then: {metering: txv}}
""",
    "limits.yaml": """\
format: 1
limits:
  - id: warm-line
    applies-to: refrigerant readings
    bounds: [{quantity: line-temperature, above: 80}]
    source: common practice, no source
""",
    "hazards.yaml": """\
format: 1
hazards:
  - id: stored-charge
    signal: WARNING
    when: [{work-state: locked-out}]
    what-to-do: Bleed each section through a resistor and meter it.
    source: common practice, no source

  - id: gas-smell
    signal: DANGER
    when: [{complaint: smells-gas}]
    what-to-do: Leave, and call from outside.
    stop: {scope: whole-job, covers: everything until the gas is found}
    defer-to: the gas utility
    source: common practice, no source
""",
    "complaints.yaml": """\
format: 1
complaints:
  - id: fan-dead
    says: The fan on the roof stands still
    words: [fan stopped, fan not turning]
    first-tests: [capacitor-look]
    faults: [fan-capacitor-weak]
    impossible-for: [low-charge]
    source: common practice, no source

  - id: smells-gas
    says: It smells of gas
    faults: [low-charge]
    hazards-first: [gas-smell]
    all-clear: area-cleared
    source: common practice, no source
""",
    "round.yaml": """\
format: 1
points:
  - id: sections
    number: 1
    point: Every capacitor section
    season: [spring]
    tests: [capacitance-one-side-off]
    limit: within six per cent
    source: common practice, no source
drift-alarms:
  - id: sections-fall
    quantity: capacitance
    text: Loses more than it should in a year
    change: 3
    unit: uF
    source: common practice, no source
""",
    "sources.yaml": """\
format: 1
sources:
  - {id: invented-standard, published: An invented standard, used-for: the tolerance}
""",
    "retired.yaml": """\
format: 1
retired: [fan-section-bad]
aliases: [{from: {fan-section: weak}, to: {capacitance-one-side-off: low}}]
""",
    "procedures/electrical.yaml": """\
format: 1
procedures:
  - id: swollen-and-low
    when:
      all:
        - {finding: {capacitor-look: swollen}}
        - {finding: {capacitance-one-side-off: [low, open]}}
    then: {derives: can-worn-out}
    reason: The can is worn out.
    source: common practice, no source

  - id: worn-out-twice
    when: {derived: can-worn-out}
    then: {look-first: [capacitance-one-side-off]}
    reason: Look at the other section too.
    source: common practice, no source

  - id: warm-line-says-little
    when: {state: warm-line}
    then:
      void: {tests: [superheat], for-faults: [low-charge]}
    reason: The circuit has not settled.
    source: common practice, no source
""",
    "tests/capacitors.yaml": """\
format: 1
area: capacitors
tests:
  - id: capacitor-look
    name: Look at the can
    kind: look
    per: capacitor
    how: [Look at it from outside.]
    minutes: 1
    choose: several
    healthy: sound
    outcomes:
      - {id: sound, means: flat top}
      - {id: swollen, means: top domed}
      - {id: oil, means: oil about it}
    source: common practice, no source

  - id: capacitance-one-side-off
    name: Capacitance, one side off
    kind: measurement
    per: capacitor
    how: [Bleed it., Read it.]
    meter: capacitance-meter
    work-state: locked-out
    needs-state: [capacitors-discharged]
    after: [capacitor-look]
    minutes: 6
    healthy: normal
    severity: [[low, open]]
    reads: [{quantity: capacitance}]
    outcomes:
      - id: normal
        means: within six per cent
        limits:
          - quantity: capacitance
            relative-to: capacitor-rated
            as: percent-difference
            between: [-6, 6]
        source: invented-standard
      - id: high
        limits:
          - quantity: capacitance
            relative-to: capacitor-rated
            as: percent-difference
            above: 6
      - id: low
        limits:
          - quantity: capacitance
            relative-to: capacitor-rated
            as: percent-difference
            below: -6
      - id: open
        limits: [{quantity: capacitance, reads: zero}]
    source: common practice, no source
""",
    "tests/refrigerant.yaml": """\
format: 1
area: refrigerant
tests:
  - id: line-temperature
    name: Suction line temperature
    kind: input
    per: circuit
    reads: [{quantity: line-temperature}]
    outcomes: []

  - id: evaporating-temperature
    name: Evaporating temperature
    kind: input
    per: circuit
    reads: [{quantity: evaporating-temperature}]
    outcomes: []

  - id: superheat
    name: Superheat
    kind: computed
    per: circuit
    healthy: [normal-txv, normal-fixed]
    outcomes:
      - id: low
        limits:
          - {quantity: superheat, below: 4, when: {metering: txv}}
          - {quantity: superheat, below: 8, when: {metering: fixed-orifice}}
      - id: normal-txv
        exists-when: {metering: txv}
        limits: [{quantity: superheat, between: [4, 25]}]
      - id: normal-fixed
        exists-when: {metering: fixed-orifice}
        limits: [{quantity: superheat, between: [8, 25]}]
      - id: high
        limits: [{quantity: superheat, above: 25}]
    source: common practice, no source

  - id: area-cleared
    name: Somebody has cleared the area
    kind: step
    outcomes:
      - {id: cleared}
      - {id: not-cleared}
    source: common practice, no source
""",
    "faults/capacitors/fan-capacitor-weak.yaml": """\
format: 1
fault: fan-capacitor-weak
name: Fan capacitor weak
subsystem: capacitors
is: cause
how-common: very-common
per: condenser-fan-capacitor
exists-when: {fan-phase: single}
evidence:
  almost-always:
    - capacitance-one-side-off: [low, open]
  sometimes:
    - capacitor-look: swollen
  never:
    - capacitance-one-side-off: normal
repair:
  what: Fit one of the same microfarads and volts.
  minutes: 25
  part-cost: under-50
  who: {all: [electrical]}
proof: [{text: Microfarads right, finding: {capacitance-one-side-off: normal}}]
look-alikes: [low-charge]
source: common practice, no source
examples:
  - name: weak section
    names-it: true
    complaint: fan-dead
    unit: {fan-phase: single, capacitor-rated: 5 uF}
    readings:
      - {test: capacitance-one-side-off, at: capacitor condenser fan 1, text: 2.1 uF}
  - name: another fault
    names-it: false
    readings:
      - {test: superheat, outcome: high}
""",
    "faults/refrigerant/low-charge.yaml": """\
format: 1
fault: low-charge
name: Low charge
subsystem: refrigerant
is: cause
how-common: common
per: circuit
evidence:
  often:
    - superheat: high
overrides:
  - when: {metering: txv}
    evidence:
      often:
        - superheat: [normal-txv, high]
repair:
  what: Find the leak, mend it, weigh the charge in.
  minutes: 180
  part-cost: 250-to-1000
  who: {any: [refrigerant]}
proof: [{text: Superheat right}]
source: common practice, no source
examples:
  - name: hot line
    names-it: true
    readings:
      - {test: superheat, outcome: high}
  - name: weak can
    names-it: false
    readings:
      - {test: capacitance-one-side-off, at: capacitor condenser fan 1, outcome: low}
""",
}

WEAK = "faults/capacitors/fan-capacitor-weak.yaml"
LOW_CHARGE = "faults/refrigerant/low-charge.yaml"
CAPACITORS = "tests/capacitors.yaml"
REFRIGERANT = "tests/refrigerant.yaml"
ELECTRICAL = "procedures/electrical.yaml"


def write_rules(folder: Path, *changes: Change) -> Path:
    """Write the small rule base with changes, and return its folder."""
    files = dict(FILES)
    for name, old, new in changes:
        assert files[name].count(old) == 1, f"{old!r} stands {files[name].count(old)} times"
        files[name] = files[name].replace(old, new)
    return write_files(folder / "rules", files)


def write_files(folder: Path, files: dict[str, str]) -> Path:
    """Write named files below a folder, and return the folder."""
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return folder


def said(folder: Path, *packs: Path) -> list[str]:
    """What the checks say of a folder of rules, with short paths and the check's id."""
    problems = check_rules([folder, *packs])
    parent = f"{folder.parent}/"
    return [f"{problem} [{problem.check}]".replace(parent, "") for problem in problems]
