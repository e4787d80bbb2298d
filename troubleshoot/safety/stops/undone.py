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
    r"wired (?:round|around|past|straight|across)|overr(?:ode|idden|iding)|defeat(?:ed|ing)|"
    r"cheat(?:ed|ing)|fooled|tricked|rigged|bridg(?:ed|ing)|shorted across|"
    r"(?:from )?one (?:terminal|side|leg|contact|pole)\b[^.;]{0,40}\bto the other)\b"
)
_SOUNDERS: Final = r"(?:sensors?|probes?|horns?|sirens?|buzzers?|beepers?|sounders?)"
_DEVICE: Final = rf"(?:{SWITCHES}|{WATCHERS}|{RELIEFS}|{_SOUNDERS}|flame rods?)"
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
_WATCHING: Final = rf"(?:{WATCHERS}|{_SOUNDERS})"
_UNWIRED: Final = re.compile(
    r"\b(?:pulled|took|cut|lifted|snipped|removed|slid|yanked|popped)(?: (?!and\b)\w+){0,2} "
    r"(?:wires?|leads?|plugs?|connectors?|fuses?|batter(?:y|ies))(?: (?!and\b)\w+){0,2} "
    rf"(?:off|from|of|at|to)(?: of)?(?: \w+){{0,2}} {_WATCHING}\b"
)
_SILENCED: Final = re.compile(
    # Of a device that was named before: the sensor acted up, so he unplugged it.
    rf"\b{_DEVICE}\b[^;.]{{0,50}}\b(?:unplugged|unhooked|disconnected|disabled|silenced|muted|"
    r"covered|bagged|taped(?: up| over)?|switched off|turned off|hushed|took out|took off|"
    r"pulled) (?:it|them)\b"
    rf"|\btook (?:the |that |its )?(?:\w+ )?{_DEVICE} (?:off|out|down|away)\b"
    rf"|\b(?:tied|wrapped|stuffed|taped|hung|pulled) it (?:over|on|onto|round|around|in|into)"
    rf"(?: \w+){{0,2}} {_DEVICE}\b"
    r"|\b(?:put|stuck|wrapped|slapped|placed|pulled|slipped|hung|took|used)(?: \w+){0,3} "
    r"(?:tape|bag|sock|plastic|foil|cap|rag|glove|cover|film|cup)s?(?: \w+)? "
    rf"(?:on|over|round|around|across)(?: \w+){{0,2}} {_DEVICE}\b"
    r"|\b(?:taped|bagged|covered|plugged|blocked|wrapped|stuffed)(?: up| over| off)?"
    rf"(?: the| a| its| that)?(?: \w+)? {_DEVICE}\b(?! (?:hose|tube|tubing|wire|jumper)s?\b)"
    rf"|\b(?:shut|shushed|hushed|quieted|killed)(?: \w+){{0,3}} {_DEVICE}(?: up| down| off)?\b"
    rf"|\bput(?: \w+){{0,2}} {_DEVICE} to sleep\b"
    r"|\b(?:moved|turned|pointed|hung|shifted|relocated|raised|carried|aimed)(?: \w+){0,2} "
    rf"(?:{_DEVICE}|{_WATCHING})\b[^.;]{{0,12}}\b(?:away|elsewhere|outside|farther|further|aside|"
    r"out of the way|somewhere else)\b"
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
    r"(?:furnace|stove|exhaust|muffler|refractory|fire)[ -]?(?:cement|putty|paste|sealant|wrap)|"
    r"cement|mortar|jb ?weld|silicone|caulk|putty|glue|super ?glue|epoxy|rags?|towels?|cloths?|"
    r"sponges?|foam|paper|string|wax|wood(?:en)? (?:plug|peg|wedge)s?|dowels?|corks?|"
    r"(?:zip|cable|wire)[ -]?ties?|magnets?|penn(?:y|ies)|wedges?|"
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
    r"|\btap(?:ed|ing)(?: up| over| round| around)?(?: the| a| both| that)? (?:\w+ )?"
    r"(?:joint|union|fitting|flare|elbow|tee|connection|pipe|valve)s?\b"
    r"|\b(?:with|put|wrapped|wound|stuck|ran)(?: \w+){0,2} (?<!ptfe )(?<!thread )tape "
    r"(?:over|on|round|around|across)\b(?! (?:\w+ )?threads?\b)"
    r"|\bwrapped(?: (?!threads?\b)\w+){0,3} (?:in|with) (?:\w+ )?(?<!ptfe )tape\b"
    r"|\btap(?:ed|ing)(?: up| over| off)?(?: the| a| that| all| both)? "
    r"(?:(?:bare|chafed|nicked|burnt|burned|rubbed|exposed|damaged|cut|hot|live|worn|skinned|"
    r"scorched|broken|loose) (?:\w+ )?)?(?:wires?|leads?|conductors?|cables?|splices?|"
    r"insulation)\b(?! (?:to|in|out of|back|away|down)\b)"
    r"|(?:\A|, |\band )(?:new |some |black )?tape (?:over|on|round|around|across) "
    r"(?!(?:\w+ )?threads?\b)"
    r"|\b(?:wires?|leads?|conductors?|splices?) (?:(?:was|were|is|are|now|all) )*taped\b"
    r"(?! (?:to|out of|back|away|down)\b)"
    r"|\bdoped?\b[^.;,]{0,12}\b(?:over|outside|on top)\b"
    rf"|\b(?:put|stuck|fitted|hung|used|slid|shoved|jammed|wedged)(?: \w+){{0,2}} {_STUFF}"
    rf"(?: \w+)? (?:on|over|round|around|in|into|under|behind|across)(?: \w+){{0,2}} {_DEVICE}\b"
    r"|\b(?:held|holding|holds) (?:in|shut|closed|down|open|made)\b[^.;,]{0,10}\b(?:with|by) "
    r"|\b(?:bodged|makeshift|cobbled|jury ?rigged)\b"
    rf"|\b{_STUFF} (?:(?:is |was |were )?(?:stuffed|jammed|wedged|pushed|shoved|crammed|packed|"
    r"knocked|rammed|tied|taped|put|stuck) )?(?:on|over|round|around|across|in|into)\b"
    r"|\b(?:wrapp|wound|put|tap|wind)\w*(?: (?:some|new|more|fresh))? (?:ptfe|thread|dope|"
    r"seal|sealing)\b(?: tape)?[^.;,]{0,8}\b(?:over|outside|round|around)\b"
    r"|\b(?:clamped|slid|put|pushed|slipped|fitted)\b[^.;,]{0,15}\b(?:hose|rubber|sleeve|bandage|"
    r"patch)\b[^.;,]{0,10}\b(?:over|on|round|around|across)\b"
)
_EXCHANGER: Final = re.compile(
    r"\b(?:patched|welded|brazed|soldered|sealed|cemented|caulked)\b[^.;]{0,40}"
    r"\b(?:exchangers?|fire ?box|combustion chamber|cells?)\b"
    r"|\b(?:exchangers?|fire ?box|combustion chamber)\b[^.;]{0,40}"
    r"\b(?:patched|welded|brazed|soldered|sealed|cemented|caulked)\b"
)
"""An exchanger is replaced, or proved sound by two ways; none is made tight where it stands."""

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
    out = (*_TAKES_OUT.finditer(said), *_SILENCED.finditer(said))
    taken_out = any(not _DENIED.search(said[: at.start()]) for at in out)
    if taken_out and not _IN_AGAIN.search(said):
        return GOT_ROUND
    if _MAKESHIFT.search(said) and not _is_put_right(said):
        return MAKESHIFT
    if _EXCHANGER.search(said) and not _IN_AGAIN.search(said):
        return MAKESHIFT
    return NOTHING if _FOUND_NONE.search(said) and not _REMEDY.search(said) else ""


def why_unwired(said: str) -> str:
    """Why a wire taken off what watches makes nothing safe, though other wires may be jumpers."""
    off = any(not _DENIED.search(said[: at.start()]) for at in _UNWIRED.finditer(said))
    return GOT_ROUND if off and not _IN_AGAIN.search(said) else ""


def _is_put_right(said: str) -> bool:
    """Whether it is told of others, and as made right since."""
    return bool(_OF_OTHERS.search(said) and _IN_AGAIN.search(said))
