"""Hands and heads: behind covers, at what is live or turns, over what turns."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.checks.implied.implication import OPENS, Implication, words

_COVER: Final = (
    r"(?:covers?|panels?|lids?|guards?|grilles?|(?:access|blower|burner|control|unit|cabinet|filter|"
    r"compressor)(?: section)? doors?|(?:blower|burner|control|compressor) "
    r"(?:compartment|section|box))\b"
)
_PARTS: Final = (
    r"(?:lugs?|terminals?|contacts|contactors?|(?:contact(?:or)? )?plungers?|bus ?bars?|wires?|"
    r"wiring|belts?|blades?|shafts?|burner tubes?)\b"
)
_INSIDE: Final = (
    r"in(?:to|side)? (?:the |a )?(?:(?:control|electrical|blower|burner|compressor|fan) )?"
    r"(?:unit|cabinet|panel|box|housing|casing|section|compartment)\b"
)
_TURNS: Final = (
    r"(?:(?:blower )?wheels?|blowers?|fans?(?! (?:switch|setting|button|control|relay|mode))|"
    r"blades?|belts?|pulleys?|sheaves?|shafts?|bearings?)\b"
)
_A_HAND: Final = (
    r"(?:by hand|with (?:a|an|the|your|one|both|two) (?:\w+ )?(?:hands?|fingers?|thumbs?))"
)
_BODY: Final = r"(?:hands?|fingers?|arms?|thumb|knuckles?|palm|ear|head|face|nose)\b"
_ON_PAPER: Final = r"(?![^.;]*\b(?:drawing|diagram|chart|scheme)\b)"
_HANDS_IN: Final = words(
    rf"{OPENS}[^.;,]{{0,40}}?\b{_COVER}",
    r"reach (?:down |up |over )?(?:a |your |the |one )?(?:hand |arm |finger )?"
    r"(?:in|into|past|through|behind|under|round|around)\b",
    r"(?:put|stick|slip|slide|get|hold|lay|rest) (?:a|an|your|the|one|both) (?:bare |flat )?"
    rf"{_BODY}[^.;,]{{0,30}}?(?:{_INSIDE}|{_PARTS}|{_COVER})",
    rf"(?:feel|touch|press|tug|wiggle|nip|tighten|squeeze|push|test|probe|meter|poke|wipe|brush|"
    rf"trace)\b[^.;,]{{0,30}}?\b{_PARTS}{_ON_PAPER}",
    r"at the (?:line|load) side",
    rf"(?:spin|rock|roll|swing|nudge|flick|push|turn|move|twirl)\b[^.;,]{{0,30}}?\b{_TURNS}"
    rf"[^.;,]{{0,30}}?\b{_A_HAND}\b",
    rf"give (?:the|a|each|its) [^.;,]{{0,20}}?\b{_TURNS} an? (?:\w+ )?(?:turn|spin|push|nudge)\b",
    rf"(?:look|peer|peek|shine|see|stick|lean|put)\b[^.;,]{{0,30}}?\b(?:behind|under|inside|"
    rf"past|into) (?:the |a |its )?(?:\w+ )?{_COVER}",
    rf"(?:look|peer|peek|shine|stick|lean|put)\b[^.;,]{{0,30}}?\b{_INSIDE}",
    rf"(?:loosen|undo|tighten|oil|grease|wipe|clean|brush|poke)\b[^.;,]{{0,30}}?\b{_TURNS}",
    rf"(?:feel|touch) (?:the |a |each |its )?(?:\w+ )?{_TURNS}(?! air\b)",
)
_OVER_IT: Final = words(
    rf"(?:lean|bend|stoop|reach|stand|hold|put|kneel|crouch|squat)\b[^.;,]{{0,30}}?"
    rf"\b(?:over|above) (?:the |a |an )?(?:\w+ ){{0,2}}?{_TURNS}",
)

HANDS: Final = (
    Implication(
        of="a cover that is opened, or hands on what lies behind it",
        why="live and turning parts are behind the covers, and nobody is told of them there",
        source="29 CFR 1910.333(a)(1); 29 CFR 1910.219, from memory",
        words=_HANDS_IN,
        work_states=("locked-out", "energised-open", "running-open"),
    ),
    Implication(
        of="a head or a hand over what turns",
        why="hair, a sleeve or a lamp goes in where a fan or a belt runs or starts",
        source="29 CFR 1910.219; 29 CFR 1910.212(a), from memory",
        words=_OVER_IT,
        hazards=("rotating-parts",),
        work_states=("locked-out", "running", "running-open", "energised-open"),
    ),
)
