"""Words that are no result of a hand-over: nobody came, nothing was done, or it was done wrongly.

Words are matched, not meaning. What is known to be an evasion is refused with its reason; whatever
else is said goes into the record as it stands, and the finding taken afresh decides.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.outside.text import as_said
from troubleshoot.safety.stops.no_remedy import why_no_remedy
from troubleshoot.safety.stops.undone import why_undone, why_unwired

_PUT_RIGHT: Final = "(repaired|fixed|mended|done|put right|needed|changed|touched|replaced)"
_COME: Final = r"(came|come|coming|arrived?|turned up|showed|show|here|there|been|answered?)"
_CAME: Final = r"(came|come|coming|arrived?|turned up|showed|show|answered?)(?! to (harm|grief))"
_PEOPLE: Final = (
    r"(them|fitters?|electricians?|technicians?|techs?|plumbers?|crews?|m[ae]n|guys?|utility|"
    r"company|contractors?)"
)
_SAME: Final = r"(?!when\b|until\b|till\b|before\b|after\b|since\b|while\b|as\b|and\b)\w+"
"""A word of the same clause: nobody at risk when the utility came is no word of who came."""
_CANNOT: Final = r"((could|can|did|was|were|would) ?(not|n't)( be)?( able to)?|cannot|unable to)"
_DAY: Final = (
    r"(tomorrow|tonight|next (week|time|visit|month|season|year)|"
    r"(by|until|till|this coming|next) (mon|tues|wednes|thurs|fri|satur|sun)day)"
)

_NOT_PUT_RIGHT: Final = (
    re.compile(
        r"\bstill (leak|smell|smok|burn|hot|live|wet|there|on fire|does|is)"
        rf"|\b(nothing|not|never|nobody)( (was|has|been|is|yet))* {_PUT_RIGHT}\b"
        r"|\b(did|done|doing) nothing\b|\b(nobody|no one|did not|didn't) (did|do|done)\b"
        r"|\bas (it|they) (is|was|are|were)\b|\bignor(e|ed|ing)\b"
        r"|\b(stays?|stayed|keeps?|kept|remains?) (leak|smell|smok|burn|live\b|wet\b|open\b)"
        rf"|\b{_CANNOT} (find where|find out|see where|say|tell|locate|reach|repair|fix|stop|shut|"
        r"close|turn)\b|\b(carr(y|ied)|go|went|keep|kept) on (with|regardless|as|anyway|running)\b"
        r"|\bno (repair|action|work)( was)?( done| taken)?\b"
        r"|\b(by itself|on its own|of itself)\b"
        r"|\b(fix|clear|heal|cur|seal|stopp|right|sort|mend)ed (itself|themselves)\b"
        r"|\breset (itself|themselves)\b|\b(left|leave|keep|kept) (it |them |the unit )?"
        r"(dripping|leaking|going|open|live|smelling|burning|bubbling|hissing|weeping|seeping|"
        r"smoking|arcing|foaming|passing)\b|\b(keep|kept) (it|them) running\b"
        r"|\b(left again|went home|drove (off|away))\b"
    ),
    "That says that it is not put right. The STOP stands until it is: give what was done about "
    "it, or q.",
)
_NOTHING_FOUND: Final = (
    re.compile(r"\b(nothing|not|never|nobody)( (was|has|been|yet))* found\b"),
    _NOT_PUT_RIGHT[1],
)
_IN_PART: Final = (
    re.compile(
        r"\b(for now|for the (moment|time being)|half ?way|pretty much|mostly|almost|nearly|better|"
        r"improved|slower|weaker|temporar(y|ily)|provisional(ly)?|good enough|more or less|"
        r"so far|less (gas|smell|smoke|now)|a (bit|little) (less|better))\b"
    ),
    "That says that it is put right in part or for a time. The STOP stands until it is wholly: "
    "give what was done then, or q.",
)
_NOBODY_CAME: Final = (
    re.compile(
        rf"\b(nobody|no one|no-one|none of them)( \w+)? {_COME}\b"
        rf"|\b(nobody|no one|no-one) (at|in|from|of|on|with)( {_SAME}){{1,4}}? {_CAME}\b"
        rf"|\b(no|none|neither)( of)?( the| these| our)?( \w+)? {_PEOPLE}( \w+)? {_CAME}\b"
        r"|\b(not|never|hasn't|haven't|didn't)( \w+)? (been here|come|came|coming|arrived?|"
        r"turned up|turn up|show(ed)?( up)?|here yet|been there|called back|answer(ed)?)\b"
        r"|\b(on|by|over) the (phone|radio)\b|\bby phone\b|\bcall(ed)? back\b"
        r"|\bno[ -]?show\b"
    ),
    "That says that nobody came for it. Only whoever it was handed over to can make it safe: give "
    "what they found and did, or q.",
)
_TO_COME: Final = (
    re.compile(
        r"\b(will|shall|won't|going to|gonna|about to|to be (done|fixed|repaired|replaced|shut)|"
        r"plans? to|planned|promised|scheduled|on order|ordered|booked|awaiting|"
        r"wait(s|ing)? (for|on|until)|on (his|her|their|the) way|(is|are) coming|"
        r"should be here|(has|have|needs?) to be|must be)\b|'ll\b"
        r"|\bin (an?|one|two|three|a few|some|[0-9]+) (hour|day|week|month)s?\b"
        rf"|\b{_DAY}\b"
    ),
    "That is still to come. Give what has been done and seen, and only that; or q.",
)
_HOPED: Final = (
    re.compile(
        r"\b(hop(e|es|ed|ing|efully)|pray|guess(es|ed)?|suppos(e|ed|edly)|assum(e|es|ed|ing)|"
        r"presum\w+|probably|perhaps|maybe|might|possibly|(i|we|they|he|she) "
        r"(think|thinks|believes?|reckons?)|trust me|not sure|don't know|do not know|"
        r"should (be|hold|do)|no idea|fingers crossed|just in case|or did (they|he|she|we|it))\b"
    ),
    "That is hoped or guessed, and nobody can rest on it. Give what was found and done, and what "
    "was seen.",
)
_CALLED_NORMAL: Final = (
    re.compile(
        r"\b(smells?|odou?rs?|gas|leaks?|alarm|bubbles?)\b[^.;]*\b(is|are|was|were|its|it's|just|"
        r"only)( \w+)? (normal|ok|okay|fine|usual|harmless|nothing|small|minor|common|"
        r"acceptable|tolerable|no (problem|worry|danger|issue))\b"
        r"|\b(always|usually) (smells?|smelled|leaks?|like)\b|\bnothing to worry\b"
        r"|\b(not|n't|never|no) (too |very )?(worried|concerned|bothered|worry|concern)\b"
        r"|\b(normal|usual|harmless|ok|small|little|slight|minor) (\w+ )?(smell|odou?r|leak)\b"
    ),
    "No smell, leak or alarm is normal. Give what was found to cause it and what was done about "
    "it, or q.",
)
_NOT_READ: Final = (
    re.compile(
        r"\bno (reading|meter|gauge|gage|detector|instrument|sniffer|measure\w*|check|look|test)\b"
        r"|\b(not|never|didn't|wasn't|weren't|hasn't|nobody|nothing (was|were|has been))"
        r"( was| were| has| been| even)* "
        r"(use|used|look|looked|read|check|checked|measure|measured|tak(e|en)|test|tested|swept|"
        r"sweep|metered|meter|seen|see|inspected|inspect|switched on|turned on|working|work)\b"
        r"|\bwithout (an? |any )?(meter|gauge|gage|detector|instrument|reading|look|test|check)\w*"
        r"|\b(batter(y|ies)|meter|detector|sniffer|gauge|instrument|analy[sz]er)\b[^.;,]*\b(flat|"
        r"dead|empty|broken|in the (van|truck|shop|car)|at home|away|out of order|off|failed|"
        r"missing)\b|\bforg[eo]t(ten)?\b|\bskipped\b"
    ),
    "That says that nothing was read or looked at. Have it read, then give what was shown.",
)
_STILL_THERE: Final = (
    re.compile(
        r"(?<!no )(?<!no more )(?<!any )(?<!without )(?<!zero )(?<!for )(?<!of )(?<!not )(?<!or )"
        r"(?<!nothing )(?<!neither )(?<!nor )(?<!longer )(?<!stopped )(?<!never )"
        r"\b(bubbles|bubbling|foam(s|ing)|leaking|leaks|smells|smelled|smelt|reeks|smoking|"
        r"glowing|arcing|hissing)\b(?! (nothing|no|of nothing|none|clean|gone|stopped))"
        r"|\b(smoked|sparked|arced|glowed|leaked|hissed|bubbled|tripped)( \w+)? (only|just|briefly|"
        r"once|a (little|bit|second|moment)|for a (second|moment))\b"
        r"|\b(only|just|hardly|barely) (smoked|sparked|arced|glowed|leaked|hissed|bubbled)\b"
    ),
    "That shows that the danger is still there. The STOP stands until a reading or look is sound.",
)

_COMMAND: Final = (
    re.compile(r"^(do|because|why|why not|what if|tests|help|undo|skip)( |$)|^[?uswy]$"),
    "That reads like a command of the visit, which waits until this is told: give it in words, "
    "or q.",
)

_NEITHER: Final = (
    _COMMAND,
    _NOT_PUT_RIGHT,
    _IN_PART,
    _NOBODY_CAME,
    _TO_COME,
    _HOPED,
    _CALLED_NORMAL,
)
_NO_RESULT: Final = (*_NEITHER, _NOTHING_FOUND)
_NO_LOOK: Final = (_NOT_READ, *_NEITHER, _STILL_THERE)

_DEED: Final = re.compile(
    r"\b(?!(?:licensed|qualified|certified|supposed|tired|need|used)\b)\w{2,}ed\b"
    r"|\b(shut|put|set|cut|let|bled|found|made|took|taken|built|hung|held|brought|swept|wound|"
    r"drove|led|left|lit|met|ran|run|sent|tied|gone|went|off|out|clear|open|dry|cold|away|down|"
    r"over|back|tight|new|remade|rebuilt|undone|done|driven|drawn|blown|blew|torn|tore|broke|"
    r"broken|got|gave|given|kept|said|is|was|were|are)\b"
)
"""A word for something done, found or as it is now."""

_LEFT_THERE: Final = (
    r"\b(jumpers?|bypass(es)?|bridges?|tape|wedges?|straps?|links?|plugs?|clips?|wires?|rags?|"
    r"towels?|sponges?|bags?|pegs?|corks?)\b"
)
_TAKEN_AWAY: Final = re.compile(
    rf"{_LEFT_THERE}[^.;]{{0,25}}\b(removed|taken (out|off|away)|pulled|cut out|gone|off again)\b"
    rf"|\b(removed|took|pulled|cut out|taken) [^.;]{{0,25}}{_LEFT_THERE}"
    r"(?! (and \w+ it )?(over|on|onto|round|around|across)\b(?![^.;]*\b(off|out|away)\b))"
)
"""A way round that somebody had left and that is gone again."""
_WRONG_SIZE: Final = (
    r"(?:oversized?|bigger|larger|wrong(?:[- ]size)?)(?: \w+)?(?: amp)? (?:fuse|breaker)s?"
)
_WRONG_SIZE_OUT: Final = re.compile(
    rf"\b{_WRONG_SIZE} (?:(?:was|were|is|has been) )?(?:taken out|removed|pulled|replaced)\b"
    rf"|\b(?:took out|removed|pulled|replaced) (?:the |an? )?{_WRONG_SIZE}\b"
)
"""A protection larger than its circuit's that somebody had left, and that is out again."""


def why_no_result(typed: str) -> str:
    """Why these words tell nothing that was done; empty where they are not known to be such."""
    said = _plain(typed)
    if why := _reason(said, _NO_RESULT) or _why_a_defeat(typed) or why_unwired(said):
        return why
    return "" if _TAKEN_AWAY.search(said) else why_undone(said) or why_no_remedy(said)


def why_no_look(typed: str) -> str:
    """Why these words tell no reading and no look that shows it safe; empty as above."""
    return _reason(_plain(typed), _NO_LOOK) or _why_a_defeat(typed)


def _plain(typed: str) -> str:
    return " ".join(as_said(typed).split())


def _reason(said: str, reasons: tuple[tuple[re.Pattern[str], str], ...]) -> str:
    return next((why for pattern, why in reasons if pattern.search(said)), "")


def _why_a_defeat(typed: str) -> str:
    """What a safety device was defeated by, unless it was a way round found and taken away."""
    if _TAKEN_AWAY.search(as_said(typed)):
        return ""
    # Its patterns are many, and a visit that nothing stops needs none of them.
    from troubleshoot.knowledge.advice.done import defeat_in

    found = defeat_in(_WRONG_SIZE_OUT.sub(" ", as_said(typed)))
    return f"That is {found}, and makes nothing safe: have it undone first." if found else ""


def tells_a_deed(typed: str) -> bool:
    """Whether anything is told as done, found, or as it is now."""
    return _DEED.search(as_said(typed)) is not None
