"""Deeds that make nothing safe: a device taken out of use, a makeshift, nothing found and left.

What is told of others and then put right is a result: had been jumpered, jumper removed; found
sealed with putty, made new.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.advice.devices import RELIEFS, SWITCHES, WATCHERS

_GETS_ROUND: Final = re.compile(
    r"\b(?:jump(?:er)?(?:ed|ing)|jump(?:er)?s? (?:put|fitted|installed|left)|by ?pass(?:ed|ing)|"
    r"hot ?wir(?:ed|ing)|strapped (?:out|across|over)|g[eo]t (?:round|around)|"
    r"(?:put|fitted|ran|left) (?:an? )?jumpers?|"
    r"wired (?:round|around|past|straight)|overr(?:ode|idden|iding)|defeat(?:ed|ing)|"
    r"cheat(?:ed|ing)|fooled|tricked|rigged|bridg(?:ed|ing)|shorted across|"
    r"(?:from )?one (?:terminal|side|leg|contact|pole)\b[^.;]{0,40}\bto the other)\b"
)
_DEVICE: Final = rf"(?:{SWITCHES}|{WATCHERS}|{RELIEFS}|flame rods?)"
_LED_ACROSS: Final = re.compile(
    r"\b(?:put|fitted|ran|laid|led|clipped|hung|twisted|left)"
    r" (?:(?:an?|the|my|his|some|bit|piece|length|of|short) ){0,3}"
    r"(?:straps?|leads?|wires?|links?|clips?|bridges?|paper ?clips?)"
    r" (?:across|over|between|round|around|past) [^.;,]{0,20}?"
    rf"(?:{_DEVICE}|terminals?|contacts?)\b"
)
_TAKES_OUT: Final = re.compile(
    r"\b(?:removed?|pulled|took (?:out|off|away)|took|taken out|unplugged|unhooked|disconnected|"
    r"disabled|deleted|cut out|unscrewed|switched off|turned off|silenced|muted)"
    r"(?: (?:the|a|an|its|that|his|our|bad|failed|faulty|old|tripped|high|main|both|all|gas)){0,3}"
    rf" {_DEVICE}\b(?! (?:hose|tube|tubing|cover|wire|jumper|tape|tap|line)s?\b)"
    rf"|\b{_DEVICE} (?:(?:is|was|were|has been|got|now) )*"
    r"(?:out of (?:the )?(?:circuit|loop|line)|removed|pulled|taken (?:out|off|away)|"
    r"unplugged|unhooked|disconnected|disabled|deleted|cut out|"
    r"(?:switched|turned) off|silenced|muted)\b"
)
_IN_AGAIN: Final = re.compile(
    r"\b(?:replac\w+|new|refitted|reinstalled|(?:put|fitted|set|plugged|wired|hooked|turned|"
    r"switched|screwed) (?:it |them )?(?:back|in|on)|back in|cleaned|swapped|exchanged|"
    r"reconnected|another|restored|re-?enabled|put right|rewired|corrected)\b"
)
_OF_OTHERS: Final = re.compile(
    r"\b(?:had|found|finds?|somebody|someone|some|they|last|previous|earlier|before us|was left|"
    r"old)\b"
)
_DENIED: Final = re.compile(
    r"\b(?:not|never|no|nothing|without|isn't|wasn't|didn't)(?: \w+){0,2} $"
)

_STUFF: Final = (
    r"(?:(?:chewing |bubble )?gum|(?:duct|electrical|insulating|masking|packing|sticky|vinyl) tape|"
    r"silicone|caulk|putty|glue|super ?glue|epoxy|rags?|cloth|(?:zip|cable|wire) ties?|string|wax|"
    r"(?:a )?(?:hose clamp|finger|thumb|cork|toothpick|pencil|plastic bag|bag|sock|foil)|"
    r"chewed \w+|cardboard|grease|mud|clay)"
)
_MAKESHIFT: Final = re.compile(
    r"\b(?:[gs][eo]t|seal|plug|capp|cap|patch|wrapp|cover|stopp|stuff|block|clos|fix|mend|repair|tap|glu|"
    rf"tied|held|fill|shut|clamp|smear|daub)\w*\b[^.;,]{{0,30}}\b(?:with|by|using|in) "
    rf"[^.;,]{{0,15}}{_STUFF}\b"
    r"|\b(?:duct|electrical|masking|chewing|bubble) ?-?(?:taped?|gum(?:med)?)\b|\bgummed\b"
    r"|\b(?:taped|glued|caulked|siliconed|epoxied)(?: up| over| off)?(?: the| a| it)?(?: \w+)? ?"
    r"(?:leak|hole|crack|pinhole|pipe|gas line|hose)s?\b"
    r"|\b(?:bodged|makeshift|cobbled|jury ?rigged)\b"
)

_FOUND_NONE: Final = re.compile(
    r"\b(?:found|finds|saw|seen|see|detected) (?:nothing|none|no (?:fault|leak|problem|cause|issue|"
    r"source|trouble|defect)s?)\b|\bno (?:fault|problem|cause|issue|source|trouble|defect|leak)s?"
    r"(?: \w+)? (?:found|seen|detected|there)\b"
    r"|\b(?:could|can|did|was|were) ?(?:not|n't)(?: be)?(?: able to)? "
    r"(?:find|found|locate|trace|see)\b|\bcame up empty\b|\bnothing to (?:do|find|repair|fix)\b"
    r"|\b(?:unable|failed) to (?:find|locate|trace|see)\b|\bleft it(?: alone| be| so| at that)?"
    r"\s*(?:$|[.,;])|\band (?:he |they )?left(?: site| the site| it)?\W*$|\bwalked away\b"
)
_REMEDY: Final = re.compile(
    r"\b(?:shut|clos(?:ed|ing)|lock(?:ed|ing)|tagged|capped|plugged|replac\w+|isolat\w+|repair\w+|"
    r"tighten\w+|torqued|remade|new|vent(?:ed|ing)|air(?:ed|ing)|clear(?:ed|ing)|purged|ventilat\w+|"
    r"fitted|renewed|sealed|reset|cleaned|wrenched|soldered|brazed|welded|disconnected|cut off|"
    r"released|switched|opened|dried|bled|put right|was (?:a|an|the|it|sewer)|it was)\b"
    r"(?! (?:an? )?(?:mistake|error|false|misunderst|mix))"
)

GOT_ROUND: Final = (
    "That gets round a device or takes it out of use, and makes nothing safe: have it undone first."
)
MAKESHIFT: Final = "That is a makeshift, and makes nothing safe: give how it was made right, or q."
NOTHING: Final = (
    "That says that nothing was found and nothing was done. The STOP stands until it is made "
    "safe: give what was done about it, or q."
)


def why_undone(said: str) -> str:
    """Why a deed, in small letters and single blanks, makes nothing safe; empty where it may."""
    round_it = any(not _DENIED.search(said[: at.start()]) for at in _GETS_ROUND.finditer(said))
    across = any(not _DENIED.search(said[: at.start()]) for at in _LED_ACROSS.finditer(said))
    if (round_it or across) and not _is_put_right(said):
        return GOT_ROUND
    taken_out = any(not _DENIED.search(said[: at.start()]) for at in _TAKES_OUT.finditer(said))
    if taken_out and not _IN_AGAIN.search(said):
        return GOT_ROUND
    if _MAKESHIFT.search(said) and not _is_put_right(said):
        return MAKESHIFT
    return NOTHING if _FOUND_NONE.search(said) and not _REMEDY.search(said) else ""


def _is_put_right(said: str) -> bool:
    """Whether it is told of others, and as made right since."""
    return bool(_OF_OTHERS.search(said) and _IN_AGAIN.search(said))
