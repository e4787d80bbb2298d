"""The report of a visit in Markdown: what was asked, what was found, what to do, what is open."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.outside.text import markdown
from troubleshoot.reasoning.unit.facts_said import as_typed, in_words
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.records.round_report import round_ending, round_report
from troubleshoot.safety.before_repair import caution_before, caution_before_any
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.cases.rows import READ_BESIDE_STOP, row_in_words
from troubleshoot.visit.telling.account import LEADING, NOBODY, NOT_IN_THE_FILE
from troubleshoot.visit.telling.as_read import as_computed, as_read
from troubleshoot.visit.telling.pack_told import pack_line
from troubleshoot.visit.telling.wording import (
    LIKELY,
    TAG_OUT,
    not_judged_line,
    percent,
    who_repairs,
)

Account = Mapping[str, Any]

_ENDINGS = {
    "named": "The cause is named.",
    "shortlist": "Not settled: a shortlist, with what would tell the causes apart.",
    "nothing-wrong": "Nothing wrong was found.",
    "not-examined": "Nothing was examined: the file answers nothing that was asked.",
    "outside": "The findings fit nothing in the rule base well.",
    "stopped": "The work was stopped for safety.",
    "left": "The visit was left before it was finished.",
}


def markdown_report(
    knowledge: Knowledge, account: Account, extras: Mapping[str, Any] | None = None
) -> str:
    """The report of one account.

    `extras` may hold `title`, `words` (the caller's), `unit` (facts and plate values as typed),
    `on_record` (the same from the register), `stops` (each STOP met, see `stops_account`),
    `left_before`, `left_off`, `refrigerant`, `notes`, `open_items` and `not_understood`
    (sentences). Whatever people wrote stands for itself: none of it is Markdown.
    """
    return "\n".join(_report(knowledge, account, extras or {}))


def _report(knowledge: Knowledge, account: Account, extras: Mapping[str, Any]) -> Iterator[str]:
    yield f"# {markdown(extras.get('title') or 'Visit to a rooftop unit')}"
    yield ""
    if account.get("certifies"):
        yield f"{account['certifies']}  "
        yield ""
    yield from _standing(account)
    complaint = knowledge.complaints.get(str(account["complaint"]))
    if extras.get("words"):
        yield f'Caller\'s words: "{markdown(extras["words"])}"  '
    if complaint is not None:
        yield f"Complaint: {markdown(complaint.says)}  "
    yield f"Ending: {_ending(account)}  "
    yield f"Time reckoned: {account['minutes']} minutes"
    yield from _list("Left off before this visit", extras.get("left_before", ()))
    yield from _list("How the unit was left", extras.get("left_off", ()))
    yield from _list("Stopped, and what came of it", _stops_met(knowledge, extras.get("stops", ())))
    repairs = (_repaired(knowledge, row) for row in account.get("repairs", ()))
    yield from _list("Repairs said, and their proof", repairs)
    yield from round_report(knowledge, account)
    yield from _causes(knowledge, account)
    yield from _readings(knowledge, account)
    yield from _list(_unread_title(account), _unread(knowledge, account))
    yield from _list("Not explained by the cause", _unexplained(knowledge, account))
    rows = account.get("not_judged", ())
    yield from _list("Not judged", (not_judged_line(knowledge, row) for row in rows))
    yield from _list("Not understood, counting for nothing", extras.get("not_understood", ()))
    yield from _list("Refrigerant added and recovered", extras.get("refrigerant", ()))
    yield from _list("Notes", extras.get("notes", ()))
    yield from _list("Open items", extras.get("open_items", ()))
    told = dict(extras.get("unit", {})).items()
    yield from _list("Unit", (in_words(knowledge, name, as_typed(value)) for name, value in told))
    kept = dict(extras.get("on_record", {})).items()
    rows = (in_words(knowledge, name, as_typed(value)) for name, value in kept)
    yield from _list("Unit, from the register", rows)
    yield from _list("Rules that the visit began with", extras.get("rules_of_the_day", ()))
    yield from _list("Rules of the site beside the program's", map(pack_line, knowledge.packs))
    yield ""
    yield (
        "Local codes, the unit's own instructions and licensed practice come before anything "
        "written here."
    )


def _ending(account: Account) -> str:
    """How it ended; nothing is called sound over a danger that was found and stands.

    Nor over a point of a round.
    """
    walked = round_ending(account)
    made_here = any(not row.get("before_visit") for row in account.get("repairs", ()))
    if made_here and account["ending"] != "stopped":
        return f"{walked}{_ending_repaired(account)}"
    if walked and account["ending"] not in ("stopped", "left"):
        return walked.rstrip()
    stands = any(row.get("stands") for row in account["cautions"])
    if stands and account["ending"] == "nothing-wrong":
        return "Nothing wrong was found besides what stands above."
    return f"{walked}{_ENDINGS[str(account['ending'])]}"


def _ending_repaired(account: Account) -> str:
    """The repair that was said last, with how likely its cause was then, and whether it is proved.

    A visit that goes on after it says so first.
    """
    last = account["repairs"][-1]
    chance = last.get("probability_when_said")
    called = f" ({percent(chance)} when it was said)" if chance else ""
    proved = "proved by what was read" if last["proved"] else "not proved"
    left = f"{_ENDINGS['left']} " if account["ending"] == "left" else ""
    return f"{left}Repaired: {last['name']}{called}; {proved}."


def _standing(account: Account) -> Iterator[str]:
    """The hazards that stand, before anything else, in the words they have everywhere."""
    for row in account["cautions"]:
        if row.get("stands"):
            yield from (f"**{markdown(line)}**  " for line in row["says"])
            yield ""


def _stops_met(knowledge: Knowledge, stops: Iterable[Account]) -> Iterator[str]:
    """Each STOP that halted the visit, in order; it stays here when it has been lifted."""
    for stop in stops:
        parts = [f"STOP, {knowledge.spoken(stop['id'])}"]
        if stop["reported"]:
            parts.append(f'reported: "{stop["reported"]}"')
        if stop["told"]:
            at = f" ({stop['told_at']})" if stop["told_at"] else ""
            parts.append(f"handed over, told: {stop['told']}{at}")
        if stop["called"]:
            parts.append(f"told or come: {stop['called']}")
        if stop["made_safe"]:
            result = stop["made_safe"]
            by = HandOverResult(**result).by_whom
            parts.append(f"made safe by {by}: {result['done']}")
            parts.append(f"shown by: {result['reading']} ({result['when']})")
        if stop["done_here"]:
            parts.append(f"made safe here: {stop['done_here']}")
        parts.extend(f"asked: {question} Said: yes" for question in stop["said_yes_to"])
        if stop["reopened"]:
            parts.append("reopened")
        yield "; ".join(parts)


def _repaired(knowledge: Knowledge, repair: Account) -> str:
    """One repair with what proves it, in the words that were typed."""
    at = f"said on {repair['said_at'][:16].replace('T', ' ')}" if repair["said_at"] else "as told"
    when = "made before the visit, " if repair.get("before_visit") else ""
    words = f' in the words: "{repair["words"]}"' if repair.get("words") else ""
    parts = [f"{repair['name']}, {when}{at}{words}"]
    for proof in repair["proofs"]:
        read = f'"{proof["read"]}"' if proof["read"] else "not taken"
        lacks = " (not proved)" if proof["read"] and not proof["proved"] else ""
        parts.append(f"proof, {proof['to_read']}: {read}{lacks}")
    for row in repair["read_after"]:
        test = knowledge.tests[row["test"]]
        where = f" at {row['at']}" if row["at"] else ""
        outcome = test.spoken_all(row["outcome"])
        read = f"{row['text']} ({outcome})" if row["text"] else outcome
        parts.append(f"read after it, {test.name}{where}: {read}")
    if repair["complaint_still_there"]:
        parts.append(f'complaint still there? "{repair["complaint_still_there"]}"')
    return "; ".join([*parts, "proved by what was read" if repair["proved"] else "not proved"])


def _causes(knowledge: Knowledge, account: Account) -> Iterator[str]:
    yield ""
    yield "## Causes"
    yield ""
    for cause in account["causes"][:6]:
        name = markdown(with_place(cause["name"], cause["at"]))
        yield f"- {percent(cause['probability'])}: {name}"
    for effect in account["effects"]:
        yield f"- an effect, find its cause: {markdown(with_place(effect['name'], effect['at']))}"
    fault = accused(knowledge, account)
    if fault is not None:
        named = account["ending"] == "named"
        texts = [proof.text for proof in fault.proof]
        yield from _repair(fault, account["proofs"] if named else texts)
    elif account["ending"] in ("shortlist", "outside"):
        yield from _who_repairs(knowledge, account)
    yield from _list("Causes behind it", (knowledge.faults[f].name for f in account["behind"]))
    yield from _list(
        "Would still tell them apart",
        (
            f"{with_place(knowledge.tests[row['test']].name, row['at'])} "
            f"(about {row['minutes']} min)"
            for row in account["would_separate"]
        ),
    )


def accused(knowledge: Knowledge, account: Account) -> Fault | None:
    """The fault whose repair is told: the one named, or behind a STOP one that is handed over."""
    likely = (c for c in account["causes"][:1] if c["probability"] >= LIKELY)
    shown = [knowledge.faults[row["id"]] for row in (*likely, *account["effects"])]
    if account["ending"] == "named":
        return shown[0]
    if account["ending"] == "stopped":
        return next((fault for fault in shown if fault.repair.hand_over), None)
    return None


def _repair(fault: Fault, proofs: Sequence[str]) -> Iterator[str]:
    yield ""
    yield "## Repair"
    yield ""
    if fault.repair.hand_over:
        yield f"**{TAG_OUT}**  "
    if before := caution_before(fault):
        yield f"**{markdown(before)}**  "
    yield f"{markdown(fault.repair.what)}  "
    yield f"Who: {who_repairs(fault)}. About {fault.repair.minutes:.0f} minutes.  "
    yield f"Why it failed: {markdown(fault.why)}  "
    yield f"If left: {markdown(fault.if_left)}"
    yield from _list("Proof readings to take afterwards", proofs)


def _who_repairs(knowledge: Knowledge, account: Account) -> Iterator[str]:
    """Who may repair each of the leading causes, and what stands before any of it."""
    leading = [knowledge.faults[row["id"]] for row in account["causes"][:LEADING]]
    if not leading:
        return
    yield ""
    yield "## Who may repair"
    yield ""
    if before := caution_before_any((fault, None) for fault in leading):
        yield f"**{markdown(before)}**  "
    for fault in leading:
        yield f"- {markdown(fault.name)}: {who_repairs(fault)}"


def _readings(knowledge: Knowledge, account: Account) -> Iterator[str]:
    if not account["asked"] and not account["computed"]:
        return
    yield ""
    yield "## Done and read, in order"
    yield ""
    timed = any(row["time"] for row in account["asked"])
    heads = (*(("when",) if timed else ()), "what", "where", "reading", "outcome", "counts")
    yield f"| {' | '.join(heads)} |"
    yield f"| {' | '.join('---' for _ in heads)} |"
    day = ""
    for row in account["asked"]:
        counts = "yes" if row["valid"] else "no"
        counts = NOT_IN_THE_FILE if row["said_by"] == NOBODY else counts
        when = _clock_time(row["time"], day)
        day = (row["time"] or day)[:10]
        read = as_read(knowledge, knowledge.tests[row["test"]], row["text"] or "")
        read += f", by {row['instrument']}" if row.get("instrument") else ""
        yield _table_row(knowledge, row, read, counts, (when,) if timed else ())
    for row in account["computed"]:
        reading = f"{as_computed(row['value'])} {row['unit']}"
        yield _table_row(knowledge, row, reading, "computed", ("",) if timed else ())


def _clock_time(time: str | None, day: str) -> str:
    """The hour and minute by the clock of the place, with the day where that is a new one."""
    if not time:
        return ""
    return time[11:16] if time[:10] == day else f"{time[:10]} {time[11:16]}"


def _table_row(
    knowledge: Knowledge,
    row: Mapping[str, Any],
    reading: str,
    counts: str,
    when: tuple[str, ...],
) -> str:
    test = knowledge.tests[row["test"]]
    outcome = test.spoken_all(row["outcome"])
    cells = (*when, test.name, row["at"] or "", reading, outcome, counts)
    return f"| {' | '.join(map(markdown, cells))} |"


def _unread_title(account: Account) -> str:
    stopped = account["ending"] == "stopped"
    return READ_BESIDE_STOP if stopped else "In the file, and never asked for"


def _unread(knowledge: Knowledge, account: Account) -> Iterator[str]:
    return (row_in_words(knowledge, row) for row in account.get("unread", ()))


def _unexplained(knowledge: Knowledge, account: Account) -> Iterator[str]:
    for row in account["unexplained"]:
        where = f" at {row['at']}" if row["at"] else ""
        test = knowledge.tests[row["test"]]
        yield f"{test.name}{where}: {test.spoken_all(row['outcome'])}"


def _list(title: str, lines: Any) -> Iterator[str]:
    rows = list(lines)
    if rows:
        yield ""
        yield f"## {title}"
        yield ""
        yield from (f"- {markdown(row)}" for row in rows)
