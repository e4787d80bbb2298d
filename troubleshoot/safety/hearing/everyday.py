"""Words of every day that are a slip of the fingers off a word of danger: they are no mistakes.

Found by holding the words of danger against a list of common English words (SCOWL, size 35): those
that one error makes another word of. A word that a danger is told in as well (bloody, smelly) is
left out.
"""

from __future__ import annotations

from typing import Final

_WORDS: Final = """
aced acing aided aiding aids ambiance analyze analyzed analyzes arched arching arcked arcking
ardent arenas attach bags baited baiting bans bard bards bared baring bars batter battered
battering batters beaker beakers beaks beard bearded bearding beards belated bellow bellowed
bellowing bellows bets bewared bewaring bided biding bids blazer blazers bleaker blocking bloomed
blooming blooms blueing bluest blustering boar boars booed booing boos bosoms bowing bows
breaching breadth breadths breather breathers broker brokers brooked brooking brooms brow brows
brunt budded budding bugled bugles bugling bums buns burger burgers bushed bushing busied bust
busted busting busts busying butted buttery butting buzzers cackling callings callus camping camps
canned canning cannon canoed capping carped carping carving cats cellos champed champing champs
chanted chanting chants chapped chapping charger chess chores cleanser cleansers clearer cleaver
clipping clocked clocking clod clods closer closest closet closets cloudy clover clovers coffined
coked coking collage collapsible collared collated compares comparing condense condensed condenses
conduct confection confided convection copped cord corded cording corked corking corned corning
cove covert coverts coves crackled crams cranked cranking craving creed crocks cued cuing currant
cutting dads daft dagger dancer dancers danker dared daring darted darting derive derived derives
deriving dipping dirtied dirtying discolored dive dived dives diving donated donating donors
donuts doped doted dots drafty dreaded dreading dreads dries drivel drivels driven driver drivers
droned drones droning drooped drooping dropping elastic elected election elective electrode
electron electronic emergence emergent emerging employe employed employers employes employing
exchange exchanged exchanges exclude excluded excludes excluding exclusion expanded expanding
expansion expended expending explain explained exploit exploited exploiting exploits explore
explored explorer explores exploring exported exposed exposing expulsion extinguished extinguishes
facets faeces fame famed fanned fanning farces farmed farming fated fating fats fawned fawning
feelings fees fended fending feted feting feuded feuding fiend fiends filed finer firmed firming
flailed flamingo flatted flatting fled fleeted fleeting fleets fling fluffed fluffing fluffs
flukes flung fluted flutes fluting fluxed fluxes fluxing fond font fonts footings forget forgo
forgoing foundling freeing freezers fried fries fuelled fuelling fund funded funding funds fussed
fusses fussing gabbed gage gaged gages gaging gashing gasped gasping gassed gasses gassing gavels
geed givens gnashed goners gowned gowning graved graves graving guested guesting guts gutted
handled handling hangings hared haring hart harts hated hating hats haven havens header headings
healer hearth hearths hearty heather heed helpings herd herded herding heresy heroes herpes
herring hinted hinting hired hiring hitting hoarded hoarding hoards hoed hoes hooted hooting
horned horsed horses horsing hosted hosting hotbed housed houses howled howling hugs humored
humoring humors hurtled hurtling huts jacked jots jumpier knowings labelling lambed lambing lamed
laming lander laps lays legged legging letting lilted lilting liners linings listening listing
livens livers livest livings loosen loosens looser loosest lugged lugging lunged lunging masking
math meal meals mental mete meted meteor meteors metes meting miens minced minces mincing minded
minding miners minted minting misusing moor moored mooring moors movers movies nauseated
nauseating neatly needled needling nestled nestling nets notching nothings ousted ousting outings
outsider outsiders overeating overhear overheard overhearing paddock paddocks paintings palate
palates pane panelled panelling panes panned panning pars parson pass pastas pate patents pates
pats pawned pawning pease pend pended pending penned penning permitted permitting persona phoney
phoneys phonied phonies phonying phrase phrased phrases phrasing pickling piking pined pining pint
pints pitied pitting pitying plains planed planing planted planting plants pleas pleasings pleated
pleating pled plopped plugging plumbed plumper plunged plunging pluses polled polling pooled
pooling portend pots pouted pouting powder powdered powdering powders pricking profane projection
proven punted punting puss putted qualifier quieted quieting quiets quilted quilting quilts
quitted quitting rafted rafting rage raged rages raging railings raised raises raising ranger
rangers ranked ranking ranted ranting ratings ratted ratting readied readying recovering redoing
reed refrigerated refrigerating relied relies rending resent resented resenting resents resting
rests riled riling rinses rinsing risers risked risking robber roes romped romping rooter rubier
rued rues rugs ruing rulers rulings rustled safest sake sale sales sanded sanding sands sapped
saying scald scalded scalding scalped scalping scattered scooted scooting scoots seas seating
seizing sell selling sells senior sensory servile sewing shied shingle shingled shingles shingling
shoed shooing shoots shopping shored shoring shouted shouting shouts shunted shunting shunts
shuttered shutting sics sidings sidled sidles sidling signalled signalling singes singing sings
sinking sipped sipping sited siting skeins skied skiing skinned skinning skis slicing slides
slipper slippers slit slits slopping sluiced smocked smocking snacked snacking snagging sneaked
sneaking snider sniffed snitch snitched snuffer soar soared soaring soars socked socking soldered
soldering solders solids somethings soothed soothing sopped sops sort sorted sorting sorts soured
souring sowed sowing sows spared sparkled spars spattered spayed spaying spilt spit spited spiting
spits splashed spliced splint splinted splinting splints splitting sponge sponged sponging sports
spouts stairs stanch standings stared startled stealing steals steaming stiffer stitch stitched
stoke stoked stokes stoking stomped stomping stomps stooped stooping stoops stoppers storing
strand stranded stranding strands stranger strangers strangest strangle strangled strangles
strangling strayed straying strays streaking streamed strings strung stun stuns sucking sued sues
suing sung supervisory supple surest surfed surfing surged surging swellings switcher tagging
taking teaches teaching testis thicker thinker thinner thorough threat thrust thudded thus tided
tides tiding tieing tinge tinged tinges tinging tipping tooled tooling tooted tooting topping
touchings touchy towed tripled tripling tripos trough troughs trued truing tuned tuning unfits
untied vets waiter waiters wakens walked walking waning wanted wanting warnings whirled whirling
whiten whitens whiter whitest wielded window windowing windows wined wining wins wist woks wonders
workings wriest wring writ writs
"""

_ABROAD: Final = "fait faits fuite mesure porte sans sola testee"
"""The same of French and Spanish, among 200 words of such work, from memory; flamme is flame."""

_AS_WRITTEN: Final = "aight alright aright"
"""The same of what people write for all right, which no such list holds: it is not alight."""

EVERYDAY: Final = frozenset(f"{_WORDS} {_ABROAD} {_AS_WRITTEN}".split())
