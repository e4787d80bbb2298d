"""Words of a proof that tell no reading and no look: nobody came, it is hoped, it is still there.

Words are matched, not meaning: whatever else is said goes into the record as it stands.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.outside.text import as_said

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

_NOT_READ: Final = re.compile(
    r"\bno (reading|meter|gauge|gage|detector|instrument|sniffer|measure\w*|check|look|test)\b"
    r"|\b(not|never|didn't|wasn't|weren't|hasn't|nobody|nothing (was|were|has been))"
    r"( was| were| has| been| even)* "
    r"(use|used|look|looked|read|check|checked|measure|measured|tak(e|en)|test|tested|swept|"
    r"sweep|metered|meter|seen|see|inspected|inspect|switched on|turned on|working|work)\b"
    r"|\bwithout (an? |any )?(meter|gauge|gage|detector|instrument|reading|look|test|check)\w*"
    r"|\b(batter(y|ies)|meter|detector|sniffer|gauge|instrument|analy[sz]er)\b[^.;,]*\b(flat|"
    r"dead|empty|broken|in the (van|truck|shop|car)|at home|away|out of order|off|failed|"
    r"missing)\b|\bforg[eo]t(ten)?\b|\bskipped\b"
)
_COMMAND: Final = re.compile(
    r"^(do|because|why|why not|what if|tests|help|undo|skip)( |$)|^[?uswy]$"
)
_NOT_PUT_RIGHT: Final = re.compile(
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
)
_IN_PART: Final = re.compile(
    r"\b(for now|for the (moment|time being)|half ?way|pretty much|mostly|almost|nearly|better|"
    r"improved|slower|weaker|temporar(y|ily)|provisional(ly)?|good enough|more or less|"
    r"so far|less (gas|smell|smoke|now)|a (bit|little) (less|better))\b"
)
_NOBODY_CAME: Final = re.compile(
    rf"\b(nobody|no one|no-one|none of them)( \w+)? {_COME}\b"
    rf"|\b(nobody|no one|no-one) (at|in|from|of|on|with)( {_SAME}){{1,4}}? {_CAME}\b"
    rf"|\b(no|none|neither)( of)?( the| these| our)?( \w+)? {_PEOPLE}( \w+)? {_CAME}\b"
    r"|\b(not|never|hasn't|haven't|didn't)( \w+)? (been here|come|came|coming|arrived?|"
    r"turned up|turn up|show(ed)?( up)?|here yet|been there|called back|answer(ed)?)\b"
    r"|\b(on|by|over) the (phone|radio)\b|\bby phone\b|\bcall(ed)? back\b"
    r"|\bno[ -]?show\b"
)
_TO_COME: Final = re.compile(
    r"\b(will|shall|won't|going to|gonna|about to|to be (done|fixed|repaired|replaced|shut)|"
    r"plans? to|planned|promised|scheduled|on order|ordered|booked|awaiting|"
    r"wait(s|ing)? (for|on|until)|on (his|her|their|the) way|(is|are) coming|"
    r"should be here|(has|have|needs?) to be|must be)\b|'ll\b"
    r"|\bin (an?|one|two|three|a few|some|[0-9]+) (hour|day|week|month)s?\b"
    rf"|\b{_DAY}\b"
)
_HOPED: Final = re.compile(
    r"\b(hop(e|es|ed|ing|efully)|pray|guess(es|ed)?|suppos(e|ed|edly)|assum(e|es|ed|ing)|"
    r"presum\w+|probably|perhaps|maybe|might|possibly|(i|we|they|he|she) "
    r"(think|thinks|believes?|reckons?)|trust me|not sure|don't know|do not know|"
    r"should (be|hold|do)|no idea|fingers crossed|just in case|or did (they|he|she|we|it))\b"
)
_CALLED_NORMAL: Final = re.compile(
    r"\b(smells?|odou?rs?|gas|leaks?|alarm|bubbles?)\b[^.;]*\b(is|are|was|were|its|it's|just|"
    r"only)( \w+)? (normal|ok|okay|fine|usual|harmless|nothing|small|minor|common|"
    r"acceptable|tolerable|no (problem|worry|danger|issue))\b"
    r"|\b(always|usually) (smells?|smelled|leaks?|like)\b|\bnothing to worry\b"
    r"|\b(not|n't|never|no) (too |very )?(worried|concerned|bothered|worry|concern)\b"
    r"|\b(normal|usual|harmless|ok|small|little|slight|minor) (\w+ )?(smell|odou?r|leak)\b"
)
_STILL_THERE: Final = re.compile(
    r"(?<!no )(?<!no more )(?<!any )(?<!without )(?<!zero )(?<!for )(?<!of )(?<!not )(?<!or )"
    r"(?<!nothing )(?<!neither )(?<!nor )(?<!longer )(?<!stopped )(?<!never )"
    r"\b(bubbles|bubbling|foam(s|ing)|leaking|leaks|smells|smelled|smelt|reeks|smoking|"
    r"glowing|arcing|hissing)\b(?! (nothing|no|of nothing|none|clean|gone|stopped))"
    r"|\b(smoked|sparked|arced|glowed|leaked|hissed|bubbled|tripped)( \w+)? (only|just|briefly|"
    r"once|a (little|bit|second|moment)|for a (second|moment))\b"
    r"|\b(only|just|hardly|barely) (smoked|sparked|arced|glowed|leaked|hissed|bubbled)\b"
)
_NO_LOOK: Final = (
    _NOT_READ, _COMMAND, _NOT_PUT_RIGHT, _IN_PART, _NOBODY_CAME, _TO_COME, _HOPED, _CALLED_NORMAL,
    _STILL_THERE,
)  # fmt: skip
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
_ANOTHER_DAY: Final = re.compile(
    r"\byesterday\b|\blast (?:night|week|month|time|visit|year|season)\b"
    r"|\b(?:days?|weeks?|months?|years?) (?:ago|back)\b|\bthe (?:day|week|other day) before\b"
    r"|\bthe other day\b"
)
_ANOTHER_PLACE: Final = re.compile(
    r"\bat (?:home|my (?:house|place|desk)|(?:the )?other (?:unit|roof|site|job|building))\b"
    r"|\bin (?:the|my|our|his) (?:truck|van|car|cab|pickup)\b"
    r"|\b(?:on|at|of|in) (?:the |an)?other (?:unit|roof|site|job|building)\b"
    r"|\b(?:on|at|of|in|by) (?:the |an? )?(?:next|neighbou?r\w*|adjacent|another|different) "
    r"(?:unit|rtu|machine|roof|site|job|building|house|one)\b|\bnext door\b"
    r"|\b(?:in|on|across|down on) the (?:street|parking lot|lot)\b|\bupwind\b"
    r"|\b(?:at|by|near|outside) the (?:gate|fence|road|alley|entrance)\b(?! valve)"
    r"|\b(?:at|by|near|from|beside) (?:the|my|our|his) (?:truck|van|car|cab|pickup|ladder)\b"
    r"|(?<!zeroed )(?<!zeroed it )(?<!bumped )(?<!set )"
    r"\bin (?:the )?(?:fresh|open|outside|outdoor|clean) air\b|\bon the ground\b"
    r"|\b(?:[0-9]+|a few|ten|twenty|several) ?(?:ft|feet|foot|yards?|meters?|metres?|steps|paces) "
    r"(?:away|off|from|up|above|upwind)\b|\bfrom (?:a distance|afar|across|far)\b"
    r"|\bfar (?:away|off)\b"
)


def tells_no_look(typed: str) -> bool:
    """Whether these words are known to tell no reading and no look that shows it put right."""
    said = " ".join(as_said(typed).split())
    return any(pattern.search(said) for pattern in _NO_LOOK) or _is_a_defeat(as_said(typed))


def is_elsewhere(said: str) -> bool:
    """Whether a reading, in small letters, is of another day or place."""
    return _ANOTHER_DAY.search(said) is not None or _ANOTHER_PLACE.search(said) is not None


def _is_a_defeat(said: str) -> bool:
    """Whether a safety device was defeated, unless it was a way round found and taken away."""
    if _TAKEN_AWAY.search(said):
        return False
    # Its patterns are many, and most visits need none of them.
    from troubleshoot.knowledge.advice.done import defeat_in

    return bool(defeat_in(_WRONG_SIZE_OUT.sub(" ", said)))
