import { isPast, negates } from "../knowledge/denials.ts";
import { saidIn } from "../knowledge/phrases.ts";
import { clausesOf } from "../knowledge/text-words.ts";
import { forRecentTexts, onceFor } from "../once.ts";
import { phrases } from "./spoken-classes.ts";

/** A kind of thing that texts name. Each is made once, so that answers can be remembered by it. */
export interface Words {
  readonly pattern: RegExp;
}

const words = (pattern: RegExp): Words => ({ pattern });

/** Burning off, blowlamps, gas rings. A torch alone may be a lamp to look with. */
export const OPEN_FLAME = words(
  /\bblow-?\s?(?:torch|lamp)(?:e?s)?\b|\b(?:gas|propane|butane|plumber['’]s|roofing|weed)[\s-]+(?:torch(?:es)?|burners?|flames?|rings?|hobs?|stoves?|cookers?)\b|\btorch(?:ed|ing)\b|\b(?:naked|open|bare|live)[\s-]+(?:flames?|lights?|fires?)\b|\b(?:have|having|light|lit|smoke|smoking|over)\s+(?:a|your|his|her|the|one['’]s)\s+(?:quick\s+|last\s+)?(?:smoke|cigarettes?|cigars?|pipe|fag)\b|\bbunsen\b|\bprimus\b|\bcamp(?:ing)?[\s-]+stove\b|\bspirit[\s-]+(?:lamp|burner|stove)\b|\bover\s+(?:a|the|an open)\s+(?:fire|flame|candle|burner)\b|\b(?:burn|burns|burnt|burned|burning|flame|flamed|flaming|singe|singed|singeing|char|charred|charring)\b(?:\s+\S+){0,5}?\s+(?:off|away)\b|\b(?:pass|play|hold|move|run|wave)\b(?:\s+\S+){0,4}?\s+flames?\b|\b(?:shou[\s-]+sugi[\s-]+ban|yakisugi)\b|\b(?:light|lit|ignite|set\s+fire\s+to|flamb[eé])\b(?:\s+\S+){0,4}?\s+(?:alcohol|spirits?|shellac|vapou?rs?|solvents?)\b/giu,
);

/** Something that is hot enough to light a vapour, or that warms what should not be warmed. */
export const HOT_PLACE = words(
  /\b(?:stove|wood[\s-]?burner|log[\s-]burner|hair[\s-]?dr[iy]er|radiator|(?:fan|gas|electric|space|patio|paraffin|kerosene|oil|water|infra-?\s?red)[\s-]+(?:heater|fire)|heater|boiler|furnace|fireplace|hearth|pilot[\s-]+(?:light|flame)|hot[\s-]?plate|hob|cooker|oven|gas[\s-]+ring|brazier|candle|fire(?:side)?)s?\b(?![\s-]+(?:doors?|escapes?|exits?|extinguishers?|blankets?|buckets?|brigade|alarms?|proof|watch|codes?|safe|resist\w*|covers?|shelf|shelves|grilles?|enamel|black|white|paint|polish|cleaners?|suits?|wax|screen|surround|tongs|irons?|dogs?|wood|place\s+(?:surround|screen))\b)/giu,
);

/** Charring wood on purpose. */
export const CHARRING = words(/\b(?:char|charred|charring|scorch\w*|shou[\s-]+sugi[\s-]+ban|yakisugi)\b/giu);

const FLAMMABLE_THINGS =
  /\b(?:oils?|turpentine|turps|spirits?|varnish(?:es)?|lacquers?|shellac|thinners?|solvents?|wax(?:es)?|beeswax|alcohol|stains?|polish|paints?)\b/iu;
const WARMS =
  /\b(?:warm|warms|warmed|warming|heat|heats|heated|heating|boil|boils|boiled|boiling|melt|melts|melted|melting|simmer\w*|cook\w*)\b/iu;

/** A tin set on a stove, a pan that is heated: whatever the order. */
const WARMED = phrases(
  "warm|heat|boil|melt|simmer|soften|cook|thin|keep|stand|put|set|place|bring|rest|stick|pop|leave ... varnish*|lacquer*|oil|wax|beeswax|turps|turpentine|spirits|thinner|stripper|shellac|tin|can|stain|polish ... on|over|onto|in|into|above .. HOB !glue !cured !away !tap !cold !off !out !bin",
  "warm|heat|boil|melt|simmer|soften|cook|thin|microwave ... varnish*|lacquer*|oil|wax|beeswax|turps|turpentine|spirits|thinner|stripper ... saucepan|frying_pan|pan|kettle !water !glue !away !off",
  "microwave|nuke .. varnish*|lacquer*|oil|wax|beeswax|turps|turpentine|spirits|thinner|stripper|it",
  "tin|can|varnish|oil|wax|lacquer ... warms|heats|melts|simmers|boils .. on|over .. HOB !glue !away",
  "heat|boil|simmer|cook .. oil|linseed|varnish|turps .. until|till ... smoke*|bubble*|foam*",
  "soften|melt|warm .. wax|shellac|polish|varnish .. over|with|by .. HOB|lighter|match|torch",
);

/** Smoking, candles, lighters, matches. */
export const SMALL_FLAME = phrases(
  "light|have|having|enjoy|puff*|roll|smoke|smoking|with|want|need .. cigarette|cigar|fag|ciggie|cheroot|roll-up !detector !alarm !burn !before !outside !outdoors !yard",
  "fag|smoke|cigarette|cigar|pipe while|between|during|as !outside !outdoors",
  "oil_lamp|candle|lantern|paraffin_lamp|tea_light .. gives|give|shows|show|burns|burn|lights|lit !stain* !holder*",
  "cigarette|smoke|smoking|fag break ... bench|shop|room|coats|beside|while|inside !outside !outdoors !away !yard",
  "cigarette|cigar|pipe|fag goes|go|helps|belongs|glows",
  "smokes|smoking .. pipe !heat* !stove",
  "like|love|may|can|free|allowed|fine to smoke .. while|as|at|during|in|between !outside !until",
  "smoke|smoking|smoker while|as|during|when|between|at|over|beside .. brush*|bench|coat|work*|paint*|varnish*|spray*|strip*|dries|oil*|wipe*|you|he|she|i !outside !until !starts !begins !oil",
  "smoking is|'s|seem* .. fine|ok|okay|allowed|right|harmless|safe",
  "ashtray ... bench|beside|near|hand|reach",
  "light|lit|set|put|place|stand|burn|burning|with|by|hold|work|warm .. candle|tea_light|tealight|oil_lamp|paraffin_lamp|hurricane_lamp|lantern !stain* !wax !off !out !soot !holder* !stick* !rub !runners !stub !end !unlit !cold !squeak* !screws",
  "by candlelight|candle_light|lamplight|oil_light",
  "hold|run|pass|wave|play|touch|flick|strike|use|put .. lighter|match|flame under|along|over|to|against|at|near|across|across_to|beneath",
  "strike|light|lit|hold .. match|matches .. under|against|near|over|to|beside|see|look|check",
  "flash|burn|warm|heat|singe|test*|check .. with|by|using .. match|lighter|flame|candle|cigarette_lighter",
  "holding|hold .. match|lighter to",
);

/** Paint burned off, whatever with. */
export const BURNED_OFF = phrases(
  "burn|burning|burnt|singe|flame .. paint|varnish|lacquer|finish|whiskers|fuzz|nibs|hairs|bristles .. off|away|out|with|down",
);

/** Paint heated until it smokes or chars. */
export const SMOKED = phrases(
  "heat|warm|scorch|gun|hot_air|torch|hold|cook ... until|till ... smoke|smokes|smoking|char|chars|browns|blackens !stop",
  "paint|coat|varnish|lead ... starts|start|begins|begin to .. smoke|char|brown !stop !before !never",
);

/** A flame passed over what is still wet. */
export const FLAME_ON_BUBBLES = phrases(
  "bubbles & torch|lighter|blowtorch|blow_torch|blowlamp|blow_lamp|flame|match !led",
);

const BURNT =
  "scraping|flakes|paint|painted|varnished|lacquered|stained|treated|varnish|varnish-soaked|rag|cloth|tin|cans|aerosol*|sludge|thinner|newspaper|papers|masking|dust|stripped-off|leftover*|old_panels|old_boards|particleboard|plywood|mdf|oily";

/** Waste of finishing that goes on a fire. Dust by itself is `sparks-and-dust`'s. */
export const BURNED_WASTE = phrases(
  `burn|burning|burnt|incinerate .. ${BURNT} ... FIRE|drum|yard|barrel|rid|garden|heat|kindling|outside !dust !off`,
  `throw|toss|chuck|put|stuff|feed|sling|fling|bung|dump|drop|pop|stick ... ${BURNT} ... into|in|on|onto|to .. FIRE !dust`,
  `feed|stoke|heat|light .. FIRE .. with ... ${BURNT}`,
  `${BURNT} .. go|goes|end|land|belong|can|may|get ... into|in|on|onto|to .. FIRE !dust`,
  `use|used|make|good|save|keep ... ${BURNT} ... firewood|kindling|fuel`,
  `burn .. whatever|what|rest|leftovers|scraps|offcuts ... paint*|panel*|varnish*|strip*|treated|old ... FIRE !clean !bare`,
  `${BURNT} ... heat|heats|warm|warms|fire|fuel .. shop|room|house|stove|workshop|hut !varnish_with`,
  `${BURNT} ... makes|is|are .. firewood|kindling`,
);

/** Whether a clause warms oil, wax, varnish or a solvent over a flame, or on or in something hot. */
export const warmsSomethingFlammable = (text: string): boolean =>
  saidIn(WARMED, text) !== undefined ||
  [clauseNaming(text, OPEN_FLAME), clauseNearHeat(text)].some(
    (clause) => clause !== undefined && WARMS.test(clause) && FLAMMABLE_THINGS.test(clause),
  );

/** Going near it, or putting something there. */
const NEAR =
  /\b(?:beside|besides|by|near|nearby|next\s+to|close\s+to|against|before|in\s+front\s+of|over|above|on|onto|at|under|into|in|round|around)\s+(?:(?:the|a|an|its|our|warm|hot|lit|glowing|iron|old|little|gas|running)\s+){0,4}$/iu;

/** The other way round: "light the stove next to it". */
const BESIDE_IT =
  /^\s+(?:\w+\s+){0,2}?(?:next\s+to|beside|close\s+to|near|under|in\s+front\s+of)\s+(?:it|them|this)\b/iu;
const HAIR_DRYER = /^hair/iu;
const WITH_IT = /\b(?:with|use|using)\s+(?:the|a|your)\s+(?:\w+\s+)?$/iu;

export const HEAT_GUN = words(
  /\bheat[\s-]?guns?\b|\bhot[\s-]?air(?:[\s-]+(?:guns?|strippers?|blowers?|pistols?))\b|\bhot[\s-]?air\b|\bheat[\s-]+strippers?\b/giu,
);

export const SANDING_MACHINE = words(
  /\b(?:belt|drum|edge|disc|disk|orbital|orbit|random[\s-]?orbit(?:al)?|palm|detail|delta|power|machine|finishing|eccentric|floor|spindle|stroke|wide-?belt)[\s-]+sand(?:er|ers|ing|ed)\b|\bsanders?\b|\bsanding[\s-]+machines?\b|\b(?:angle|disc)[\s-]+grinders?\b|\bgrinders?\b|\bwire[\s-]+(?:wheels?|brush\s+in\s+(?:a|the)\s+drill)\b|\bsand(?:ed|ing)?\s+(?:\S+\s+){0,4}?(?:by|with\s+(?:a|the))\s+machine\b|\brandom[\s-]?orbit(?:al|als)?\b/giu,
);

export const BLASTING = words(
  /\b(?:sand|shot|soda|bead|grit|abrasive|media|dry[\s-]?ice|ice|walnut[\s-]shell|glass|vapou?r)[\s-]?blast(?:ing|ed|er|s)?\b|\bblast(?:ed|ing)?\s+(?:\S+\s+){0,3}?with\b|\bneedle[\s-]?guns?\b/giu,
);

/** What is loud beside the ear: sanders, planers, pumps, guns that need a compressor. */
export const LOUD_MACHINE = words(
  new RegExp(
    `${SANDING_MACHINE.pattern.source}|${BLASTING.pattern.source}|\\b(?:planers?|thicknessers?|routers?|circular\\s+saws?|table\\s+saws?|chop\\s+saws?|chain\\s?saws?|compressors?|airless[\\s-]+(?:pumps?|rigs?|units?|machines?)|shop[\\s-]?vacs?|jointers?|spindle\\s+moulders?)\\b`,
    "giu",
  ),
);

const HEPA = /\bHEPA\b|\bH-?class\b|\bclass[\s-]?H\b|\bH1[34]\b/iu;
const WETTED =
  /\b(?:wet(?:ted|ting|ly)?|damp(?:ened|ed)?|mist(?:ed|ing)?|soak(?:ed|ing)?|moist(?:ened)?|spray(?:ed)?\s+with\s+water)\b/iu;

export const saysHepa = (text: string): boolean => HEPA.test(text);
export const saysWet = (text: string): boolean =>
  WETTED.test(text) && !/\b(?:not|never|no)\s+wet/iu.test(text);

const LIQUID =
  "(?:water|soapy\\swater|soap|white\\sspirits?|mineral\\sspirits?|naphtha|mineral\\soil|paraffin\\soil|oil)";
/** A drop of it, as a touch or a splash, wets no dust. */
const SANDED_WET = new RegExp(
  `^(?:by\\shand\\s|by\\shand,\\s|lightly\\s)?(?:wet\\b(?!\\swith\\sa\\s(?:drop|touch|dab|splash|dash))|with\\s(?:(?:some|plenty\\sof)\\s)?${LIQUID}\\b)|\\blubricated\\swith\\s(?:a\\slittle\\s)?${LIQUID}\\b|\\bkept\\s(?:dripping\\s)?wet\\b`,
  "iu",
);
/** Wiping before or after it throws no less dust, and a machine wetted with a drop throws it all the same. */
const NOT_SANDED_WET =
  /\b(?:wip\w*|wash\w*|clean\w*|rins\w*|after\w*|then|before|later|not|never|no|dry|machine|sander|orbital|power)\b/iu;

/** Whether the words of an abrasion say that it is done by hand with a liquid that binds the dust. */
export const saysSandedWet = (text: string): boolean => SANDED_WET.test(text) && !NOT_SANDED_WET.test(text);

/** The clause that names it and does not deny it, or undefined. */
export const clauseNaming = (text: string, words: Words): string | undefined =>
  text === "" ? undefined : namingClauses(words)(text);

const namingClauses = onceFor(({ pattern }: Words) =>
  forRecentTexts((text) =>
    clauses(text).find((clause) =>
      [...clause.matchAll(pattern)].some(
        (match) =>
          !isOfThePast(clause) &&
          !isDeniedBy(clause.slice(0, match.index)) &&
          !DENIED_AFTER.test(clause.slice(match.index + match[0].length)),
      ),
    ),
  ),
);

/** The clause that puts something near a hot place, and does not forbid it. */
export const clauseNearHeat = (text: string): string | undefined =>
  text === "" ? undefined : clausesNearHeat(text);

const clausesNearHeat = forRecentTexts((text) =>
  clauses(text).find((clause) =>
    [...clause.matchAll(HOT_PLACE.pattern)].some((match) => {
      const before = clause.slice(0, match.index);
      const after = clause.slice(match.index + match[0].length);
      const isNear =
        NEAR.test(before) || BESIDE_IT.test(after) || (HAIR_DRYER.test(match[0]) && WITH_IT.test(before));
      return isNear && !isOfThePast(clause) && !isDeniedBy(before) && !DENIED_AFTER.test(after);
    }),
  ),
);

const clauses = (text: string): readonly string[] =>
  text.split(/[;:!?\n]|\.(?=\s|$)|,\s*(?=(?:but|then|and\s+then|instead|just|only)\b)/iu);

const isOfThePast = (clause: string): boolean => clausesOf(clause).some(isPast);

/** A denial, or words that keep the work away from it or put it out. */
const isDeniedBy = (before: string): boolean => negates(before) || KEPT_AWAY.test(before);

const KEPT_AWAY =
  /\b(?:avoid\w*|forbid\w*|except|away\s+from|far\s+from|clear\s+of|off\s+the|beware|than|(?:put|blow|turn|switch|snuff)\w*\s+(?:out|off)|extinguish\w*|shut\w*\s+(?:down|off)|remove[ds]?|ban\w*|danger\w*)\b/iu;
const DENIED_AFTER =
  /^[^,]*?\b(?:(?:is|are|was|were|stays?|stay|kept|keep|must\s+be|be|being)\s+(?:\w+\s+){0,2}?(?:off|out|cold|forbidden|banned|prohibited|not|never|away|far|dangerous|disconnected)|(?:must|may|should|can|do|does|will)\s*n(?:o|['’])t|(?:must|may|should|can|will)\s+never|(?:turned|switched|put|shut|kept)\s+(?:off|out|away|down)|(?:stays?|is|are|left|lives?)\s+(?:in\s+(?:the|its)\s+(?:box|drawer|cupboard|case)|unplugged|at\s+home)|forbidden|prohibited|next\s+door|(?:that|which)?\s*(?:(?:is|are)\s+(?:not|never)|isn['’]t|aren['’]t)\s+(?:glowing|lit|hot|burning|on)|(?:when|once|after)\b[^,]*\bcured?)\b|^\s*(?:well\s+|far\s+)?away\b/iu;

/** The highest temperature that a text names, in °C. */
export function hottestC(text: string): number | undefined {
  const named = [
    ...text.matchAll(
      /(\d{2,4}(?:\.\d+)?)\s*(?:(?:°|º|deg(?:rees?)?\.?)\s*)?(C|F|Celsius|Fahrenheit|centigrade)\b/giu,
    ),
  ].map(([, number, unit]) => (/^f/iu.test(unit!) ? ((Number(number) - 32) * 5) / 9 : Number(number)));
  return named.length > 0 ? Math.max(...named) : undefined;
}
