"""The wide net: everyday words that, said together, hint at a danger that no phrase names.

A hint stops nothing. Where one is heard and no hazard, it is asked whether there is a danger: so
words may stand here that are harmless more often than not. All of this is common practice, no
source: what callers, occupants and technicians say.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.safety.hearing.vocabulary import LEAST_STEM, stem

BODY: Final = "(body)"
VOLTS: Final = "(volts)"
IN_AIR: Final = "(ppm)"
"""What stands for a part of somebody's body, for volts that kill, for gas in the air."""
OVER_MANIFOLD, OVER_INLET = "overmanifold", "overinlet"
"""In place of a pressure that is over what burners, and what gas valves, are made for."""

LEAST_VOLTS, MOST_VOLTS = 100, 600
LEAST_PPM: Final = 10
MOST_AT_MANIFOLD, MOST_AT_INLET = 3.8, 14.0
"""Inches of water: what natural gas burns at, what a gas valve is made for; as the tests say."""


@frozen
class Hint:
    """Words of which one of each group is said in one piece; and what makes it harmless there.

    `denied_too`: a denial is part of it: not moving, cannot breathe. `hazard`: the one that it
    speaks of, where it is one alone.
    """

    groups: tuple[frozenset[str], ...]
    unless: frozenset[str]
    denied_too: bool
    hazard: str


def short_of(word: str) -> str:
    """A word without its ending and the letter that was doubled for it: grabbed is grab."""
    short = stem(word)
    is_doubled = len(short) > LEAST_STEM and short != word and short[-1] == short[-2]
    return short[:-1] if is_doubled and short[-1] not in "lsz" else short


def _group(words: str) -> frozenset[str]:
    return frozenset(map(short_of, words.split()))


def _hint(*groups: str, unless: str = "", denied_too: bool = False, of: str = "") -> Hint:
    return Hint(tuple(map(_group, groups)), _group(unless), denied_too, of)


_PARTS = (
    f"{BODY} hand finger thumb wrist eye eyebrow hair face chest skin lip cheek throat ankle elbow"
)
_CLOTHES = "sleeve cuff glove scarf lanyard necktie shirt jacket coat"
OWNED: Final = _group("my his her your their our")
PARTS_IF_OWNED: Final = _group(
    "head arm back leg foot feet neck heart shoulder mouth nose knee ear"
)
"""Parts of a body where it is said whose; else an arm is a damper's, a leg one of three."""

_PEOPLE = (
    "he hes she shes him her they me i im apprentice helper mate buddy partner somebody someone "
    "guy man woman lady kid tech boss worker roofer customer tenant janitor people everybody"
)
_SUPPLY = (
    "electric electrical electrics panel box switch breaker disconnect bus busbar wire wiring "
    "terminal contactor transformer fuse live board outlet socket gear"
)
_WARNING = "detector sniffer alarm monitor sensor"
_OF_FLAME = "igniter ignition burner furnace pilot element sensor rod spark trial"
_OF_SIGNALS = "board led light display code lamp thermostat time screen blue green"
_OF_GAS = "pipe union line joint shutoff gas refrigerant valve cock regulator fitting hose meter"
_NOISE = "bang boom crack pop crackle thump whoomp whump"
_SAFETY = "switch limit rollout float safety interlock"
_NO_PRESSURE = (
    "from away long wide deep above below off clearance duct diameter vent static suction "
    "discharge refrigerant head filter pipe"
)
"""Where inches are a length, or the pressure is not that of the gas."""

HINTS: Final = (
    # fire, smoke, glow, flash
    _hint("fire ablaze alight blaze",
          unless=f"{_OF_FLAME} alarm station department stage service "
          "drill inspector marshal extinguisher truck guy wall fired-up full-fire gas-fired",
          of="smoke-or-heat-now"),
    _hint("smoke smoky smoking smokin smoulder smolder haze hazy",
          unless="house test visual bettered",
          of="smoke-or-heat-now"),
    _hint("fireball caught-light flicker", of="smoke-or-heat-now"),
    _hint("glow glowin", unless=f"{_OF_FLAME} {_OF_SIGNALS}", of="smoke-or-heat-now"),
    _hint("orange red", "through behind slot louvre louver vent flicker", unless=_OF_SIGNALS,
          of="smoke-or-heat-now"),
    _hint("flash arc arcing", unless=f"{_OF_SIGNALS} point pitted fault glass sight rated "
          "label shield suit clothing boundary",
          of="smoke-or-heat-now"),
    _hint(_NOISE, "blue flash black smoke panel disconnect breaker contactor box face capacitor",
          of="smoke-or-heat-now"),
    _hint("flame burner fire lit burning", "no-call", unless="out off has have had get went go",
          denied_too=True, of="heat-will-not-stop"),
    _hint("crane boom jib bucket lift basket outrigger forklift", "wire line power energized live",
          unless="suction liquid drain set low thermostat clear away far panel cover",
          of="machine-on-a-line"),
    _hint("valve", "stay", "open", unless="call reversing expansion solenoid water float",
          of="gas-valve-does-not-close"),
    _hint("valve burner", "hung", "open lit burning", unless="reversing expansion damper",
          of="gas-valve-does-not-close"),
    _hint(OVER_MANIFOLD, "manifold", unless=f"propane lp lpg {_NO_PRESSURE}",
          of="over-fired-or-wrong-fuel"),
    _hint(OVER_INLET, "gas inlet manifold", unless=_NO_PRESSURE, of="gas-pressure-too-high"),
    _hint("flame", "onto over outside roll lick around front wires blow", unless=
          "sensor signal", of="rollout-tripped"),
    _hint("melt meltin sizzle spit", unless="ice snow frost solder defrost point",
          of="scorched-or-hot-wiring"),
    _hint("burn char scorch singe blister", f"now still {_PARTS} {_PEOPLE} insulation skin",
          unless="lunch dinner breakfast supper coffee toast food bit"),
    # somebody
    _hint("passed-out faint collapse unconscious unresponsive slump stumble stagger",
          of="somebody-hurt"),
    _hint("dizzy woozy lightheaded pale clutch choke gasp retch vomit groan moan seizure raving",
          unless="filter coil dirt leaves lint",
          of="somebody-hurt"),
    _hint("blister numb fluttering flutter palpitation", of="somebody-hurt"),
    _hint("singed", f"{BODY} eyebrows hair beard my his her", of="burns-and-eyes"),
    _hint("hurt injured bleeding blood ambulance paramedic hospital 911 unwell",
          of="somebody-hurt"),
    _hint("breath breathe breathing", denied_too=True, unless="building coil unit condenser",
          of="somebody-hurt"),
    _hint(_PEOPLE, "moving breathing answering responding talking waking", "not isnt wont cant "
          "stopped never arent doesnt aint", denied_too=True, unless="phone", of="somebody-hurt"),
    _hint("lies lying laying", "deck floor ground roof gravel", unless=
          "about filter tool hose pipe wire cable conduit leaf leaves water snow panel cover "
          "ladder bird cat dog hat tarp guard grille belt trash bag can bottle membrane fat flat",
          of="somebody-hurt"),
    _hint(_PEOPLE, "lying laying grey gray white blue sweating shaking confused sick groggy sleepy "
          "asleep trapped pinned crushed dangling hanging down-there fell fallen drowsy limp",
          unless="thermostat paint light fed-up", of="somebody-hurt"),
    _hint("gone went turned turning goes", "pale grey gray white blue", unless=
          f"thermostat {_OF_SIGNALS}", of="somebody-hurt"),
    _hint("head stomach chest", "ache sore pound pain thump tight spin swim",
          unless="pressure psi at-chest", of="somebody-hurt"),
    _hint("they", "gone", "white numb blue grey"),
    _hint("numb white frozen", "finger thumb toe ear cheek", unless="wire",
          of="refrigerant-on-skin"),
    # a part of somebody and what happens to it
    _hint(_PARTS, "got get caught catch wound wrap spray splash cut slice pinch jam stuck crush "
          "burn froze frozen white twitch ache swollen sting stream rub grab took take trap drag "
          "pull rip tore torn hit hurt across blue black stand standing stuff",
          unless="dirty bolt filter tight", of="somebody-hurt"),
    _hint(_CLOTHES, "caught catch wound wrap trap drag rip tore torn jam stuck burn suck smoulder",
          unless="pipe", of="caught-in-machine"),
    _hint("through", BODY, unless="filter"),
    _hint("fan shaft belt blade pulley wheel blower", "grab took ate bit caught catch", unless=
          "bearing filter leaf leaves rag screw a-bit into", of="caught-in-machine"),
    _hint("past by", BODY, "went flew shot", unless="filter"),
    # what somebody else hung there
    _hint("cut saw grind hacksaw bolt-cutter snip drill", "lock padlock tag hasp",
          unless="tube", of="lock-of-somebody-else"),
    # shock
    _hint("shock electrocute zap jolt tingle", unless="mount hazard label absorber price surprised",
          of="somebody-hurt"),
    _hint(VOLTS, "got", "hit zap nail", of="somebody-hurt"),
    _hint(VOLTS, "took", "off from", unless="side reading read meter l1 l2 leg",
          of="somebody-hurt"),
    _hint(VOLTS, "cabinet casing frame curb duct", "hot live", unless=
          "leg line side load lug l1 l2 l3 from", of="unexplained-voltage"),
    _hint("bite bit nip buzz kick poke", f"me him her {BODY} frame cabinet casing",
          unless="noise a-bit drill driver screw", of="unexplained-voltage"),
    _hint(VOLTS, f"{_PARTS} bit bite zap jolt through-me me him", of="somebody-hurt"),
    _hint(VOLTS, "took", "across", unless="l1 l2 l3 leg coil fuse terminal capacitor",
          of="somebody-hurt"),
    _hint("got", "hit nailed", unless="bill with by head", of="somebody-hurt"),
    # gas, monoxide, refrigerant
    _hint(_WARNING, "beep scream chirp wail ring sounding howl shriek blare trigger loud red",
          unless="battery"),
    _hint("sniffer detector", "crazy nuts wild berserk bananas haywire pegged", unless="battery"),
    _hint(f"{_WARNING} meter", "went-off going-off goes-off", unless="battery"),
    _hint(IN_AIR, unless="flue stack vent exhaust air-free co2 dioxide",
          of="carbon-monoxide-evacuate"),
    _hint("air", "thin foul choking heavy unbreathable", of="refrigerant-escaping"),
    _hint("hiss whistle spray squirt spurt", _OF_GAS, unless="expansion txv metering"),
    _hint("bubble", "soap huge big blow", of="gas-odour"),
    _hint("smell stink reek taste", "gas egg sulfur sulphur chemical metal rotten strong ladder "
          "ammonia propane", unless="told"),
    _hint("eye throat", "stream sting water burn"),
    # water where the current is
    _hint("water rain rainwater wet soak flood drip pour trickle puddle", _SUPPLY,
          unless="float pressure drain pan tower heater reset", of="wet-electrical"),
    # metal, supports, joints that no longer hold
    _hint("exchanger tube", "crack split daylight hole rust rot burn", unless=
          "drain condensate trap cap capillary hose tap suction discharge copper pitot",
          of="heat-exchanger-breach"),
    _hint("roof deck rail guardrail parapet ladder hatch floor", "crack soft sag spongy sink flex "
          "bounce sky daylight give loose gave broke broken rot rotten rust bent wobble cave",
          unless="leak"),
    # volts where there should be none, and what gets round a safety
    _hint(VOLTS, "still", "ground l1 l2 l3 lug disconnect leg terminal load", unless=
          "run call pull", of="live-now"),
    _hint(_SAFETY, "tie wedge jam prop glue nail jump jumper paperclip wirenut tape bridge strap "
          "shunt bypass loop", unless="drain", of="jumpered-safety"),
    _hint(_SAFETY, "lead wire clip", "ran run across bypass out around round", unless=
          "loose fell broke broken pull burn burnt", of="jumpered-safety"),
    _hint("fuse", "nail penny coin foil copper slug pipe bolt rod bridge jump jumper bypass"),
    _hint("lock tag", "my his her our their someone somebody", "pull cut took gone remove "
          "broke missing flip", unless="i we", of="live-now"),
    _hint("mercaptan odorant", of="gas-odour"),
    # what comes out of the flue into rooms, and what bursts
    _hint("fume", unless="paint glue hood"),
    _hint("exhaust",
          "into inside indoor intake back room classroom office store shop hall smell stink",
          unless="fan hood damper bathroom kitchen",
          of="carbon-monoxide-in-room"),
    _hint("flue chimney vent-pipe", "rust rot hole apart fell drop crack split separate disconnect "
          "gap", of="carbon-monoxide-in-room"),
    _hint("vent", "furnace burner heater heat", "fell apart drop separate disconnect blew",
          of="carbon-monoxide-in-room"),
    _hint("soot sooty", "wall ceiling flue vent vent-pipe room roof", unless="swept brush"),
    _hint("flame", "lazy yellow orange", unless="sensor signal code led wire dust"),
    _hint("capacitor", "bulge dome swell swollen ooze oil oily drip leak pop burst split"),
    _hint("cap", "bulge dome swell swollen ooze pop", unless="tube valve hose drain"),
    # weather and edges
    _hint("thunder lightning gust hail tornado", unless="protection arrester arrestor rod surge",
          of="lightning"),
    _hint("wind", "lift blew over edge nearly took rip knock", unless="motor",
          of="wind-or-slick-roof"),
    _hint("sky", "black dark"),
    _hint("edge parapet skylight ladder hatch", "over nearly slip fell stumble trip hang "
          "slid gave drop", unless="guard cover tag rack truck hook"),
    # what lets go
    _hint("let-go burst explode explosion erupt rupture shatter gave-way"),
    _hint("blew blown", "fitting hose cap seal gasket core plug lid", unless="out fuse dust"),
    _hint("whip flew flying"),
    _hint("fell fallen tumble topple", unless="pressure temperature voltage volt suction head psi "
          "overload limit calibration bill quote sales deal price"),
)  # fmt: skip

JOINED: Final = {
    ("passed", "out"): "passed-out",
    ("sick", "of"): "fed-up",
    **{("bolt", cutter): "bolt-cutter" for cutter in ("cutter", "cutters")},
    ("let", "go"): "let-go",
    **{(at, "how"): "surprised" for at in ("at", "shocked")},
    ("shocked", "to"): "surprised",
    ("smokes", "the"): "bettered",
    **{("no", what): "no-call" for what in ("call", "w", "w1", "w2")},
    ("lets", "go"): "let-go",
    ("gave", "way"): "gave-way",
    ("fire", "ball"): "fireball",
    ("vent", "pipe"): "vent-pipe",
    ("fired", "up"): "fired-up",
    ("fired", "it"): "fired-up",
    **{(fuel, "fired"): "gas-fired" for fuel in ("gas", "lp", "propane")},
    **{(how, "fire"): "full-fire" for how in ("high", "low")},
    ("a", "bit"): "a-bit",
    ("wire", "nut"): "wirenut",
    ("through", "me"): "through-me",
    ("air", "free"): "air-free",
    **{("chest", how): "at-chest" for how in ("height", "high", "level")},
    **{(has, "caught"): "caught-light" for has in ("has", "have", "just")},
    **{(how, "off"): f"{how}-off" for how in ("going", "goes", "went")},
}
"""Words that hint at something together."""

HINTING: Final = frozenset(
    word for hint in HINTS for group in hint.groups for word in group if word.isalpha()
)
"""Every word of the net, by its stem."""

HARMLESS: Final = frozenset(word for hint in HINTS for word in hint.unless)
"""Every word that makes one harmless: none of them is a mistyped one of the net."""
