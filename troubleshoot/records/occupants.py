"""The note for the people in the building: what was found and what they do, in plain words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import markdown
from troubleshoot.records.report import accused
from troubleshoot.visit.telling.wording import who_repairs

Account = Mapping[str, Any]

LEAVE_IT: Final = (
    "Please leave the unit's switches, breakers and tag as they are: whoever looks after it has to "
    "see first why something opened."
)
IN_DANGER: Final = (
    "If you smell gas or something burning, or a carbon monoxide or smoke alarm sounds: go "
    "outside, take the others along, and call the emergency number from there."
)
CALL_AGAIN: Final = "If it comes back, call again and say the unit's name."


def occupants_note(
    knowledge: Knowledge, account: Account, extras: Mapping[str, Any], serves: str = ""
) -> str:
    """The note of one visit, in Markdown. `serves`: the rooms of the unit, where that is known."""
    return "\n".join(_note(knowledge, account, extras, serves))


def _note(
    knowledge: Knowledge, account: Account, extras: Mapping[str, Any], serves: str
) -> Iterator[str]:
    yield "# For the people in the building"
    yield ""
    yield f"{markdown(str(extras.get('title') or 'Visit'))}  "
    if serves:
        yield f"It serves: {markdown(serves)}  "
    if extras.get("words"):
        yield f'You said: "{markdown(extras["words"])}"  '
    if account.get("certifies"):
        yield f"{account['certifies']}  "
    yield ""
    yield from _dangers(knowledge, account, extras)
    yield "## What was found"
    yield ""
    yield from (f"- {markdown(line)}" for line in _found(knowledge, account))
    left = tuple(extras.get("left_off", ()))
    if left:
        yield ""
        yield "## What stays off"
        yield ""
        yield from (f"- {markdown(line)}" for line in left)
    yield ""
    yield "## What you can do"
    yield ""
    yield from (f"- {line}" for line in (CALL_AGAIN, LEAVE_IT, IN_DANGER))


def _dangers(knowledge: Knowledge, account: Account, extras: Mapping[str, Any]) -> Iterator[str]:
    """What stands, before anything else, in the words that it has everywhere."""
    stands = [row for row in account["cautions"] if row.get("stands")]
    for row in stands:
        yield from (f"**{markdown(line)}**  " for line in row["says"])
        yield ""
    if account["ending"] == "stopped" and not stands:
        for stop in _unlifted(extras.get("stops", ())):
            yield f"**The work was stopped for safety: {markdown(stop['what_to_do'])}**  "
            yield ""


def _unlifted(stops: Sequence[Account]) -> tuple[Account, ...]:
    return tuple(stop for stop in stops if not stop["reopened"])


def _found(knowledge: Knowledge, account: Account) -> Iterator[str]:
    """What the visit has come to, a sentence each."""
    made = [row for row in account.get("repairs", ()) if not row.get("before_visit")]
    for row in made:
        proved = "and it was read that it works" if row["proved"] else "and that is not proved yet"
        yield f"Repaired: {row['name']}, {proved}."
    if account["ending"] == "stopped":
        yield "The unit was stopped for safety, and stays off until it has been made safe."
        return
    if account["ending"] == "left":
        yield "The work is not finished yet."
        return
    if made:
        return
    cause = accused(knowledge, account)
    if account["ending"] == "named" and cause is not None:
        yield f"The cause is known: {cause.name}. It is not repaired yet."
        yield f"It is repaired by: {who_repairs(cause)}. About {cause.repair.minutes:.0f} minutes."
    elif account["ending"] == "nothing-wrong" and account["unexplained"]:
        yield "Something that was read stands out, and its cause is not known yet."
    elif account["ending"] == "nothing-wrong":
        stands = any(row.get("stands") for row in account["cautions"])
        yield f"Nothing wrong was found{' besides what stands above' if stands else ''}."
    else:
        yield "The cause is not known for sure yet; more has to be looked at."
    walked = account.get("round")
    if walked:
        bad = [row["point"] for row in walked["points"] if row["result"] == "abnormal"]
        yield from (f"Not as it should be: {point}." for point in bad)
