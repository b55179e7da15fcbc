/**
 * Notes that talk people out of the protection that the work needs: bare hands, a handkerchief over the mouth.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import type { DutyWord } from "../../knowledge/duties.ts";
import type { Phrases } from "../../knowledge/phrases.ts";
import type { Action } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { needFor } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine, textOf } from "../spoken-words.ts";
import { toldLines } from "../told-lines.ts";
import { needsSuppliedAir } from "../two-part.ts";
import { clauseNaming, LOUD_MACHINE } from "../work-words.ts";

export const noteAgainstProtection: TradeRule = {
  id: "note-against-protection",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A note or the words of a step tell people to do without gloves, goggles, a mask, a respirator, ear protection or fresh air that the materials or the work of this recipe need, or with something that does not do its work.",
    why: "Whoever works from the sheet follows the note. A handkerchief, a paper mask or held breath stops no vapour, and what goes through the skin is felt too late.",
    remedy: "Take these words out, and state the duty that the work needs.",
    sources: ["29 CFR 1910.132 to 1910.138"],
  },
  failing: [
    {
      title: "Bare hands, and a handkerchief",
      text: `recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  note   "Spread the stripper with bare hands, it is quicker." #! note-against-protection
  note   "Work with bare arms, sleeves only get wet." #! note-against-protection
  note   "A wet handkerchief over the mouth is enough." #! note-against-protection
  step   strip with paint_stripper
  step   clean with water
}
`,
    },
    {
      title: "A head in the ammonia tent, and a cloth named in a description",
      text: `## Two saucers of strong ammonia in the tent overnight; stick your head in under the sheet and take a good sniff.
recipe fumed { #! note-against-protection
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  wait   24 h
}

## A damp hankie round the face keeps the smell off.
material strong "Stripper" { #! note-against-protection
  family paint stripper
}

recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with strong
  step   clean with water
}
`,
    },
    {
      title: "Windows shut against the dust, and a mask that fogs up",
      text: `recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  note   "Keep the windows shut so that no dust blows in." #! note-against-protection
  note   "Skip the mask, it fogs up your glasses." #! note-against-protection
  step   strip with paint_stripper
  step   clean with water
}
`,
    },
  ],
  passing: [
    {
      title: "Words that tell what becomes of those who skip them",
      text: `recipe filled {
  for    wood
  safety gloves, eye_protection, ventilate
  note   "A month of rash for those who skip the gloves."
  step   fill with epoxy_filler
  wait   until cured
}
`,
    },
    {
      title: "Words that ask for it, and a hand that feels for dust",
      text: `recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  note   "Never without gloves, and no handkerchief instead of the respirator."
  step   strip with paint_stripper
  step   clean with water
  note   "Feel the dry wood with your bare hand: no goo may be left."
  note   "Cover bare arms, and wash bare skin at once where a drop gets on it."
}
`,
    },
    {
      title: "Work that needs none",
      text: `recipe washed {
  for  wood
  note "No mask is needed for soap and water."
  step clean with soap
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onRun: ({ run, report }) => {
      for (const action of toldLines(run)) {
        const needed = talkedAway(action).flatMap((against) => {
          const duty =
            neededOf(run, against) ?? (isSniffed(action, against) ? "vapour_respirator" : undefined);
          return duty ? [{ against, duty }] : [];
        })[0];
        if (!needed) continue;
        const { against, duty } = needed;
        report(action, {
          headline: t`These words talk people out of ${against.what()}`,
          why: against.why(),
          remedy: t`Take the words out, and state \`safety ${duty}\` above the first line that needs it.`,
        });
      }
    },
  },
};

interface Against {
  readonly what: () => string;
  readonly why: () => string;
  /** Any of these being needed makes the words dangerous; the first that is decides what is to be stated. */
  readonly needed: readonly DutyWord[];
}

const HANDS: Against = {
  what: () => t`gloves`,
  why: () => t`The materials of this recipe go through the skin, or burn or dry it, before you feel it.`,
  needed: ["gloves"],
};
const EYES: Against = {
  what: () => t`goggles`,
  why: () => t`The work of this recipe splashes or throws what harms an eye for good.`,
  needed: ["eye_protection"],
};
const LUNGS: Against = {
  what: () => t`a mask`,
  why: () => t`A cloth, a paper mask or held breath stops no vapour and hardly any fine dust.`,
  needed: ["supplied_air", "vapour_respirator", "dust_mask"],
};
const VAPOUR: Against = { ...LUNGS, needed: ["supplied_air", "vapour_respirator"] };
const MASK: Against = {
  ...LUNGS,
  why: () => t`The work of this recipe fills the air with what harms the lungs.`,
};
const SUPPLIED: Against = {
  what: () => t`supplied air`,
  why: () => t`No cartridge can be relied on against sprayed isocyanate, and you do not smell when it fails.`,
  needed: ["supplied_air"],
};
const AIR: Against = {
  what: () => t`fresh air`,
  why: () => t`What evaporates stays in a closed room, and its vapour stuns, poisons or catches fire.`,
  needed: ["ventilate"],
};
const EARS: Against = {
  what: () => t`ear protection`,
  why: () => t`Nobody gets used to noise: what gets quieter is the hearing, and it does not come back.`,
  needed: ["hearing"],
};

const GLOVE = "glove|mitts|gauntlets";
const GOGGLE = "goggles|safety_glasses|face_shield|visor|eye_protection";
const MASKS = "mask|respirator";
const HOOD = "air_hood|air-fed_hood|supplied_air|fresh_air_hood|air_line_hood|hood";
const EAR =
  "muffs|ear_muffs|earmuffs|ear_plugs|earplugs|ear_defenders|hearing_protection|ear_protection|defenders";

/** Doing without it, saying that it is needless, taking it off for comfort. */
const doneWithout = (gear: string, but = "") => [
  `without .. ${gear} !nobody !never_open !tape ${but}`,
  `no|not|don't|needn't|never|rarely|seldom|hardly|nobody .. need|needed|wear|wore|bother|use|want|require|necessary .. ${gear} ${but}`,
  `no ${gear} ... only|must|smarts|hear|feel|quick|quicker|small|minute|outdoors|better|trouble|harmless ${but}`,
  `need|wear|want|require .. no ${gear} ${but}`,
  `no ${gear} .. needed|necessary|required|wanted|today|needs|here ${but}`,
  `${gear} .. not|unnecessary|aren't|isn't .. needed|necessary|required|wanted|worth ${but}`,
  `${gear} .. unnecessary|optional|superfluous|pointless|overkill|exaggerated|nonsense|beginners|sissies|wimps|cowards|amateurs|nuisance|clumsy|silly|hinder* ${but}`,
  `${gear} .. for .. show|looks|decoration|fun ${but}`,
  `${gear} .. make|makes .. clumsy|slow|blind|deaf|awkward ${but}`,
  `${gear} .. in the|your way ${but}`,
  `${gear} .. for|are_for those|people|anyone|folk .. who|with .. fear*|afraid|worry|nervous|scared|delicate|soft ${but}`,
  `forget|skip|ditch|omit|dispense|spare|save|lose .. ${gear} !on ${but}`,
  `leave|keep|left .. ${gear} .. off|out|aside|away|home|drawer|hook|car|shelf|box|peg|house ${but}`,
  `${gear} ... leave them|it|yours off|out|aside|home|drawer|hook|shelf ${but}`,
  `take|pull|slip|push|lift|pop ... ${gear} ... feel|see|smell|talk|speak|hear|breathe|breath|better|way|fog*|hot|nuisance|tight|uncomfortable|quicker|faster|awkward ${but}`,
  `${gear} .. come|came .. off once|after|when|as ${but} !gone !clear !left !done !finished !outside !room !cured !dry !washed`,
  `take|pull|slip|push off|down|up .. ${gear} !then !and !wash !before !outside !after !once !gone ${but}`,
];

const SPARE_MASK =
  "!mask_the !mask_off_the !mask_it !mask_them !mask_any !mask_out !mask_glass !masking !tape !taped !paper_off !frieze !carved";
const AT_MACHINE =
  "!lathe !router !saw !drill_press !machine !machines !spindle !planer !twice !again !torn !swollen !cotton !leather !longer_than";

const WEAK =
  "dust_mask|paper_mask|cloth_mask|cotton_mask|surgical_mask|medical_mask|disposable_mask|hygiene_mask|face_mask|simple_mask|ffp1|ffp2|ffp3|n95|p2_mask";
/** A mask for dust where dust is meant. */
const FOR_DUST =
  "!for_sanding !for_the_sanding !while_sanding !when_sanding !sanding_between !to_sand !sanding_dust !dry_sanding !sweep* !dusting";
const CLOTH =
  "hankie|neckerchief|tea_towel|flannel|dishcloth|pillowcase|snood|bandana|bandanna|handkerchief|hanky|scarf|kerchief|wet_cloth|damp_cloth|wet_towel|damp_towel|wet_rag|damp_rag|wet_sponge";
const PASSES_FOR =
  "enough|do|does|did|fine|plenty|suffice|serve|works|good|ok|okay|all_you_need|keeps|stops|protects|helps|saves|ample|right";
const CARTRIDGE =
  "cartridge_mask|cartridge_respirator|half_mask|paint_mask|charcoal_mask|carbon_mask|filter_mask|gas_mask|spray_mask|brown_cartridges|cartridges|dust_mask|paper_mask|normal_mask|ordinary_mask|vapour_mask|vapour_respirator";
const FUMES = "fumes|vapour|vapor|smell|solvent|mist|spray|stripper|stink|odour";

const OPENINGS = "window|skylight|shutters|vents|roof_light|rooflight|fanlight";
const DOORS = "shed|barn|door|garage|garage_door|room|shop|workshop|everything|booth|place|house|gate";
const DRAUGHTS =
  "dust|dusty|warm|warmth|heat|heating|cold|cool|draught|draft|draughty|smell|neighbour|neighbor|insects|flies|midges|damp|moist*|winter|frost|wind|rain|pollen|bloom";
const LATER =
  "!once !after !again !gone !cured !cabinet !drawer !drawers !cupboard !wardrobe !case !never_shut !tin !can !lid";
const CLOSED_IN =
  "bathroom|bathtub|bath|tub|shower|cellar|basement|cupboard|closet|pantry|tent|cabin|box_room|store_room|storeroom|storage_room|crawl_space|toilet|van|caravan|cubicle|booth|loft|attic|shed|room|garage|lock-up";

const covering = (verb: string): string =>
  ["", "any_", "all_", "the_", "your_"].map((word) => `${verb}_${word}bare`).join("|");
/** What is bare is to be covered, protected, washed or kept away, which is the opposite of working so. */
const COVERED_UP = `!${["cover", "cover_up", "protect", "wash", "rinse", "off", "away_from"].map(covering).join("|")}`;

/** What each says people out of, in the order in which it is asked. */
const AGAINST: readonly (readonly [Phrases, Against])[] = [
  [
    phrases(
      `bare|naked|ungloved|unprotected hand|finger|palm|skin|arms !feel !feeling !check !touch !test !never_with ${COVERED_UP}`,
      "spread|rub|scoop|wipe|smear|work|massage|lift|apply|push|dab|stir|fish ... with|by|using .. fingers|fingertip|fingernail|nails|hand|palm|thumb !gloved !glove !gloves !feel !dry !by_hand !cloth",
      "reach|dip|plunge|put|stick|hold .. hand|arm|fingers|in|into .. bath|tank|tray|stripper|lye|solution|acid|bleach|vat !gloved !glove !gloves !long",
      "barehanded|bare-handed|bare_handed !never_work",
      "sleeves .. reach .. into|in",
      "barrier_cream|hand_cream|petroleum_jelly|moisturiser|greasy_cream & enough|good|instead|do|does|replace*|before|beforehand|as !gloves_on !under",
      "tingles|stings|burns|itches ... bit|little|slightly|harmless|nothing|only ... skin|hand|fingers !rinse",
      "only tingles|stings|itches|burns",
      "if|when .. burns|stings|tingles|itches|gets ... skin|hand|fingers ... wipe|trousers|carry_on|go_on|ignore|rub|never_mind !rinse !water !wash",
      ...doneWithout(GLOVE, AT_MACHINE),
    ),
    HANDS,
  ],
  [
    phrases(
      "spectacles|reading_glasses|ordinary_glasses|own_glasses|sunglasses|sun_glasses|glasses .. enough|do|does|good|instead|serve|fine !drink* !wine",
      "squint|blink|turn_your_head|turn_your_face|shut_your_eyes|close_your_eyes ... splash*|pour*|spray*|chip*|flies|drips|scrap*",
      ...doneWithout(GOGGLE),
      "push|slide|lift .. goggles|visor up|back",
    ),
    EYES,
  ],
  [
    phrases(
      "hold|holding|pinch .. breath|nose",
      "breathe .. through|into .. shirt|sleeve|cloth|collar|scarf|nose|mouth",
      `${CLOTH} .. ${PASSES_FOR} !wipe* !dust_with`,
      "tie|tied|wear|put|pull|hold|held|wrap|wrapped|press .. bandana|bandanna|handkerchief|hanky|hankie|scarf|kerchief|neckerchief|cloth|towel|rag|sponge|shirt|collar|sleeve|t-shirt|flannel|dishcloth|pillowcase|sock|snood|jumper .. face|mouth|nose",
      "bandana|bandanna|handkerchief|hanky|hankie|scarf|kerchief|neckerchief|cloth|towel|rag|sponge|shirt|collar|sleeve|t-shirt|flannel|dishcloth|pillowcase|sock|snood|jumper .. over|before|round|around|across|in_front .. mouth|nose|face",
      "pull .. shirt|collar|jumper|pullover|sweater|scarf ... up|over ... nose|mouth|face",
    ),
    LUNGS,
  ],
  [
    phrases(
      `${WEAK} .. ${PASSES_FOR} ${FOR_DUST}`,
      `${WEAK} ... against|for|keeps|stops|from|with|in|when .. ${FUMES} ${FOR_DUST} !nor`,
      "stick|put|poke|pop|hold|bend|lean .. head|nose|face ... under|in|into|over|inside ... sniff|smell|breath|whiff !mask !respirator",
      "take|have|good|deep sniff|whiff|breath|lungful ... fumes|ammonia|tent|vapour|working|strong|enough !fresh_air !never",
      "sniff|inhale|smell .. it|can|tin|jar|mix|rag|lid|pot|stripper|hardener .. to|if|whether|see|tell|until !not_smell !wood",
      `${FUMES} .. harmless|nothing|mild|safe|pleasant|healthy|hurt_nobody|does_no_harm|do_no_harm|won't_hurt|never_hurt|never_killed|not_dangerous !gone`,
      "fumes|smell|vapour|vapor|stink ... never|won't|don't|doesn't|not|no ... hurt*|harm*|kill*|dangerous|matter",
      "used to .. fumes|smell|vapour|stink|odour|dust !before",
      "head .. swim|swims|spin|spins|spinning|aches|ache|heavy|thick ... carry_on|carry|go_on|break|passes|normal|coffee|aspirin|minute !stop !leave",
      "headache|dizzy|dizziness|light-headed|lightheaded|giddy|giddiness|nausea|queasy|tipsy|woozy|drowsy ... normal|carry_on|carry|go_on|going|goes_away|passes|pass|part|nothing|ignore|usual|coffee|harmless|fine|aspirin|happens|expected|tablet",
    ),
    VAPOUR,
  ],
  [
    phrases(
      `${CARTRIDGE} .. ${PASSES_FOR}|does_it ${FOR_DUST} !not_enough`,
      "wear|use|put|take .. half_mask|half_face|cartridge_mask|brown_cartridges|charcoal_mask|paint_mask|carbon_mask|cartridge_respirator|vapour_mask ... !under",
      "paper|dust|paint|ordinary|normal|half mask .. on|and",
      ...doneWithout(HOOD, "!spray_booth !cooker !cleaned !cabinet"),
    ),
    SUPPLIED,
  ],
  [phrases(...doneWithout(MASKS, SPARE_MASK)), MASK],
  [
    phrases(
      "blanket|towel|rug|cushion|sandbag|draught_excluder|draft_stopper|tape|newspaper|rag|rags|sacking ... along|under|across|against|at|in|into|round|around ... door|doors|door_frame|doorway|windows|window !outside !once !after !until !mask* !paint !out_of_doors",
      `kept|had|shut|closed|locked|nailed|jammed .. ${OPENINGS} .. shut|closed|tight|while|against|warm|lest ${LATER}`,
      `keep|leave|hold|have|with|stay .. ${OPENINGS} .. shut|closed|down|sealed|tight|locked ${LATER}`,
      `keep|leave|hold|have|with|work ... ${DOORS} .. shut|closed|down|sealed|tight|tightly ... ${DRAUGHTS} ${LATER}`,
      `with|keep|leave everything .. shut|closed|sealed|tight|tightly ${LATER}`,
      `keep|leave .. it all closed|shut|sealed|tight ${LATER}`,
      `close|shut|seal|block|tape|stuff|plug .. ${OPENINGS} ${LATER} !mask* !before !open_the !open_one !other_open`,
      `close|shut|seal|block|tape|stuff .. ${DOORS}|cracks|gaps ... ${DRAUGHTS} ${LATER} !mask*`,
      `${OPENINGS} .. stay|are|is|remain|must_be|can_be|kept .. shut|closed|sealed|tight ${LATER}`,
      `no need|reason .. open|air|ventilate .. ${OPENINGS}|room|door|air ${LATER} !until`,
      `don't|never|needn't|not|without .. need|open|opening|air|airing|ventilate|ventilating|have .. ${OPENINGS}|room|door|air|ventilate|air_the ${LATER} !until !before !leave !shut !close !compressed`,
      "ventilation|airing|fresh_air|extraction|ventilating .. not|unnecessary|isn't|superfluous|overrated ... needed|necessary|required|worth|summer|winter|here",
      "no ventilation|airing|fresh_air needed|necessary|required",
      "switch|turn|shut|leave|keep .. off .. fan|ventilation|ventilator|exhaust|extractor_fan|air_exchange !once !after !until !gone !before !dust_extractor !collector",
      "switch|turn|shut|leave|keep .. fan|ventilation|ventilator|exhaust|extractor_fan|air_exchange .. off !once !after !until !gone !before !collector",
      "fan|ventilation|ventilator|exhaust .. is|stays|stay|are off ... dust|mist|noise|cold|cool|cools|draught|draft|blows !until !before !lit !spark*",
      `switch|turn|shut|leave|keep .. extractor|extraction .. off ... ${DRAUGHTS}|noise|noisy|loud !once !after !until !gone !before`,
      `in|into .. ${CLOSED_IN} & door shut|closed|locked ${LATER}`,
      `in|into .. ${CLOSED_IN} .. no|without .. window|ventilation|draught|draft`,
      `no|without window|ventilation ... ${CLOSED_IN}`,
      `${CLOSED_IN} .. no|without window|ventilation|draught|draft`,
      `strip|do|work|spray|varnish|brush|lay|paint|put .. it|piece|chair|top|door|parts|in .. bathtub|bath_tub|bath|tub|shower !outdoors !mat !hot_water !cabinet`,
      "shut|lock|zip .. yourself|himself|herself|up .. in|into",
      "stay|sit|work|crawl|kneel|spray|brush .. in|inside|into|under .. closed|sealed|small|tiny|little|narrow|windowless|airtight .. tent|room|cupboard|closet|cabin|space|cellar|booth|box|cubicle",
      "plastic_sheet|plastic_sheeting|plastic|tarp|tarpaulin|polythene|dust_sheet ... crawl|inside|in_with|yourself_in",
      "fresh_air|draught|draft .. makes|spoils|ruins|is|brings .. bad|bloom|dust|dull|ruin*|spoil*|cold|wrinkle* !no",
    ),
    AIR,
  ],
  [
    phrases(
      ...doneWithout(EAR),
      "cotton_wool|cotton|tissue|paper|wax|fingers .. in|into .. ears .. do|enough|fine|will|works",
      "used to .. noise|din|racket|howl",
      "headphones|earbuds|ear_buds|music|radio ... drown*|louder|over|against|enough",
    ),
    EARS,
  ],
];

/** Oak is fumed in ammonia that no line names as a material. */
const isSniffed = (action: Action, against: Against): boolean =>
  against === VAPOUR && /\b(?:ammonia|formaldehyde|formalin)\b/iu.test(textOf(action) ?? "");

function talkedAway(action: Action): readonly Against[] {
  return AGAINST.flatMap(([said, against]) => (saidOnLine(action, said) === undefined ? [] : [against]));
}

function neededOf({ moments }: SurfaceRun, { needed }: Against): DutyWord | undefined {
  return needed.find((duty) => moments.some(({ action }) => isNeeded(action, duty)));
}

function isNeeded(action: Action, duty: DutyWord): boolean {
  if (duty === "supplied_air") return action.op === "layer" && needsSuppliedAir(action);
  // Most work that is loud says so in no table: who states ear protection knows why.
  if (duty === "hearing")
    return action.duties.has(duty) || clauseNaming(textOf(action) ?? "", LOUD_MACHINE) !== undefined;
  return needFor(action, duty) !== undefined;
}
